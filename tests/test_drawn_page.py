"""A drawing as the page is sent it: the same Figure as lines and letters, as SVG, PDF and PNG."""

import io
import json
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from matplotlib.backend_bases import GraphicsContextBase
from matplotlib.colors import to_hex
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.patches import Circle, Rectangle
from matplotlib.path import Path
from matplotlib.textpath import TextPath
from matplotlib.transforms import Affine2D
from strategies import designs

from fireplace_calc import assess, drawing
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing import single
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.page import glyphs
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.page.page_renderer import PageCanvas, PageRenderer, _chords
from fireplace_calc.drawing.page.sheet_artist import SheetArtist, sheet_figure
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.canvas import paint
from fireplace_calc.drawing.sheets.ink_layers import layers
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES
from fireplace_calc.geometry.builder import build_geometry


def unpacked(told, body):
    """Points [mm] and run lengths, read as a page reads them."""
    count = told["count"]
    points = np.frombuffer(body[: 4 * count], "<i2").reshape(-1, 2) / told["grain"]
    unlike, runs = iter(np.frombuffer(body[4 * count :], "<u2").tolist()), []
    for *_, number, each in told["pens"]:
        runs += [each or next(unlike) for _ in range(number)]
    assert list(unlike) == []
    return points, np.array(runs, int)


@pytest.mark.parametrize("bold", [False, True])
def test_the_file_holds_the_letters_of_the_font(bold):
    """Against matplotlib's TextPath, its curves finely cut. A chord leaves its curve by a ninth of
    a thirty-second of a capital at most.
    """
    prop = FontProperties(family="DejaVu Sans", weight="bold" if bold else "normal")
    for letter in glyphs.LETTERS:
        advance, *rings = glyphs.glyph(letter, bold)
        wide = TextPath((0, 0), f"{letter}|", size=1 / 0.73, prop=prop).vertices[:, 0].max()
        bar = TextPath((0, 0), "|", size=1 / 0.73, prop=prop).vertices[:, 0].max()
        assert advance == pytest.approx(1000 * (wide - bar), abs=0.6), letter
        if letter == " ":
            assert rings == []
            continue
        shape = TextPath((0, 0), letter, size=1 / 0.73, prop=prop)
        fine = [r / 500 for r in Path(shape.vertices * 500, shape.codes).to_polygons()]
        ours = [np.reshape(ring, (-1, 2)) / 1000 for ring in rings]
        assert len(ours) == len(fine), letter
        off = 1 / 32 / 9 + 0.0005
        for ring, wanted in zip(ours, fine, strict=True):
            assert np.abs(ring.min(0) - wanted.min(0)).max() < off, letter
            assert np.abs(ring.max(0) - wanted.max(0)).max() < off, letter
            round_it = np.hypot(*np.diff(wanted, axis=0).T).sum()
            assert _area(ring) == pytest.approx(_area(wanted), abs=round_it * off), letter


def _area(ring):
    x, y = np.asarray(ring).T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2


def test_a_letter_that_the_file_lacks_is_drawn_and_sent_along():
    sheet = Sheet(100, 50)
    sheet.text(50, 20, "Größe 3\u2126", bold=True)
    told, _ = page_message(sheet, "light", Cell(0, 0, 100, 50))
    assert sorted(told["glyphs"]) == ["b\u00df", "b\u00f6", "b\u2126"]
    assert all(len(glyph) > 1 for glyph in told["glyphs"].values())
    for key, (advance, *_) in told["glyphs"].items():
        prop = FontProperties(family="DejaVu Sans", weight="bold")
        both = (TextPath((0, 0), text, size=1 / 0.73, prop=prop) for text in (f"{key[1]}|", "|"))
        wide, bar = (path.vertices[:, 0].max() for path in both)
        assert advance == pytest.approx(1000 * (wide - bar), abs=0.6), key
    sheet.labels[0] = Sheet(100, 50).text(50, 20, "plain")
    assert "glyphs" not in page_message(sheet, "light", Cell(0, 0, 100, 50))[0]


@settings(deadline=None, max_examples=20, suppress_health_check=list(HealthCheck))
@given(
    designs(), st.sampled_from(["front", "section", "plan", "roof"]), st.sampled_from(list(THEMES))
)
def test_a_message_holds_every_line_and_letter_of_its_sheet(design, view, theme):
    """Against the sheet's own layers: each point within half a step of 1/64 mm."""
    sheet = single(view, build_geometry(design), FEET_INCHES)
    cell = Cell(10.0, 20.0, 290.0, 180.0)
    told, body = page_message(sheet, theme, cell)
    assert told["box"] == [10.0, 20.0, 280.0, 160.0]
    points, runs = unpacked(told, body)
    drawn = list(layers(sheet, THEMES[theme], letters=False))
    wanted = np.concatenate([layer.path.vertices for layer in drawn]) - (10.0, 20.0)
    assert np.abs(points - wanted).max() <= 0.5 / told["grain"] + 1e-9
    starts = [np.flatnonzero(layer.path.codes == Path.MOVETO) for layer in drawn]
    ends = [len(layer.path.codes) for layer in drawn]
    wanted_runs = [np.diff(np.append(s, e)) for s, e in zip(starts, ends, strict=True)]
    assert runs.tolist() == np.concatenate(wanted_runs).tolist()
    assert [pen[-2] for pen in told["pens"]] == [len(s) for s in starts]
    assert [pen[0] or pen[1] for pen in told["pens"]] == [n.face or n.edge for n in drawn]
    assert [pen[2] for pen in told["pens"]] == pytest.approx([n.width for n in drawn])
    assert [n[2] for n in told["labels"]] == [label.text for label in sheet.labels]
    for (x, y, _, size, turned, bold, ink), n in zip(told["labels"], sheet.labels, strict=True):
        at = lettering.base(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold)
        assert (x, y) == pytest.approx(at, abs=0.006)
        assert (size, turned, bold) == (pytest.approx(n.size), n.turned, n.bold)
        assert ink == getattr(THEMES[theme], n.ink)


@pytest.mark.parametrize("view", ["front", "section", "plan", "roof", "room"])
def test_a_figure_hands_the_page_what_a_message_holds(boathouse, view):
    """The short way of a slider and the Figure's own way are one."""
    sheet = single(view, build_geometry(boathouse), FEET_INCHES)
    drawn = PageCanvas(sheet_figure(sheet, "dark")).drawn()
    told, body = page_message(sheet, "dark", Cell(0, 0, sheet.width, sheet.height))
    assert drawn.pens[0][0] == THEMES["dark"].paper
    assert drawn.pens[1:] == told["pens"]
    assert drawn.labels == told["labels"]
    points = np.concatenate(drawn.points[1:])
    assert np.abs(unpacked(told, body)[0] - points).max() <= 0.5 / told["grain"] + 1e-9


@pytest.mark.parametrize(
    ("form", "begins"), [("svg", b"<?xml"), ("pdf", b"%PDF"), ("png", b"\x89PNG")]
)
def test_the_same_figure_is_saved_in_other_forms(boathouse, form, begins):
    out = io.BytesIO()
    sheet = single("front", build_geometry(boathouse), FEET_INCHES)
    sheet_figure(sheet).savefig(out, format=form)
    assert out.getvalue().startswith(begins)
    assert len(out.getvalue()) > 10_000


class CountsDown(PageRenderer):
    """A renderer whose heights count from above, as an SVG's do."""

    def flipy(self):
        return True


def test_texts_stand_where_they_stood_when_heights_count_from_above(boathouse):
    sheet = single("plan", build_geometry(boathouse), FEET_INCHES)
    drawn = []
    for renderer in (PageRenderer, CountsDown):
        made = renderer(sheet.width, sheet.height)
        SheetArtist(sheet).draw(made)
        drawn.append(made.drawn.labels)
    up, down = drawn
    assert [n[0] for n in up] == [n[0] for n in down]
    assert [sheet.height - n[1] for n in up] == pytest.approx([n[1] for n in down], abs=0.011)


def test_a_hidden_sheet_draws_nothing(boathouse):
    sheet = single("plan", build_geometry(boathouse), FEET_INCHES)
    artist, renderer = SheetArtist(sheet), PageRenderer(sheet.width, sheet.height)
    artist.set_visible(False)
    artist.draw(renderer)
    assert renderer.drawn.pens == renderer.drawn.labels == []


def test_a_large_paper_stays_within_sixteen_bits():
    sheet = Sheet(3000, 2000)
    sheet.line([(0, 0), (3000, 2000)])
    told, body = page_message(sheet, "light", Cell(0, 0, 3000, 2000))
    assert unpacked(told, body)[0].tolist() == [[0, 0], [3000, 2000]]


def test_other_artists_reach_the_page_too():
    """A curve as chords within a hundredth of its radius, a clip as its rectangle, a closed run
    ending where it began.
    """
    figure = Figure((4, 2))
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    axes.set_xlim(0, 4)
    axes.set_ylim(0, 2)
    axes.add_patch(Circle((2, 1), 0.5, facecolor="none", edgecolor="#ff0000"))
    axes.add_patch(Rectangle((3, 1), 5, 0.5, facecolor="#00ff0080", edgecolor="none"))
    axes.text(1, 1, "there", rotation=90, weight="bold")
    drawn = PageCanvas(figure).drawn()
    (_, circle, box) = drawn.points
    middle = np.array([50.8, 25.4])
    assert np.hypot(*(circle - middle).T) == pytest.approx(12.7, abs=0.01)
    assert circle[0] == pytest.approx(circle[-1])
    assert drawn.pens[2][0] == "#00ff0080"
    assert drawn.pens[2][6] == [0.0, 0.0, 101.6, 50.8]
    assert box[-1] == pytest.approx(box[0])
    assert [(n[2], n[4], n[5]) for n in drawn.labels] == [("there", True, True)]


def test_an_image_is_refused():
    figure = Figure()
    figure.figimage(np.zeros((4, 4)))
    with pytest.raises(NotImplementedError, match="lines and letters"):
        PageCanvas(figure).drawn()


def test_a_first_picture_asks_no_font(boathouse, monkeypatch):
    def no_font(*_, **__):
        raise AssertionError("a letter was asked of the font")

    monkeypatch.setattr(TextPath, "__init__", no_font)
    glyphs.glyph.cache_clear()
    lettering._glyph.cache_clear()
    lettering.outline.cache_clear()
    for view in ("front", "section", "plan", "roof"):
        sheet = single(view, build_geometry(boathouse), FEET_INCHES)
        page_message(sheet, "light", Cell(0, 0, sheet.width, sheet.height))


def test_a_first_picture_loads_no_view_that_is_not_shown():
    """In an interpreter of its own: what the room, the arch and the staging need takes as long as
    the four elevations do.
    """
    code = (
        "import sys, fireplace_calc.drawing.page.message, fireplace_calc.drawing.page.stage\n"
        "print(*(m for m in sys.modules if m.startswith('fireplace_calc.drawing')))"
    )
    loaded = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert "fireplace_calc.drawing.views.section_view" in loaded.stdout
    for late in ("staging_picture", "arch_view", "room_view", "brick_layout"):
        assert late not in loaded.stdout


def test_a_path_that_leaves_nothing_to_be_seen_is_not_sent():
    renderer, pen = PageRenderer(100.0, 100.0), GraphicsContextBase()
    line = Path([(0.0, 0.0), (1.0, 2.0)])
    pen.set_linewidth(0.0)
    renderer.draw_path(pen, line, Affine2D(), None)
    renderer.draw_path(pen, Path(np.empty((0, 2))), Affine2D(), (1.0, 0.0, 0.0))
    pen.set_linewidth(2.0)
    renderer.draw_path(pen, Path(np.empty((0, 2))), Affine2D(), None)
    assert renderer.drawn.pens == renderer.drawn.points == []
    renderer.draw_path(pen, line, Affine2D(), None)
    pen.set_linewidth(0.0)
    renderer.draw_path(pen, line, Affine2D(), (1.0, 0.0, 0.0))
    assert [pen[:3] for pen in renderer.drawn.pens] == [
        [None, "#000000", round(2 / 72 * 25.4, 3)],
        ["#ff0000", None, 0.0],
    ]


def test_a_path_without_codes_is_one_run_from_its_first_point():
    points, starts = _chords(Path([(0.0, 0.0), (1.0, 2.0), (3.0, 2.0)]), Affine2D().scale(10.0))
    assert points.tolist() == [[0, 0], [10, 20], [30, 20]] and starts.tolist() == [0]
    points, starts = _chords(Path(np.empty((0, 2))), Affine2D())
    assert points.shape == (0, 2) and starts.tolist() == []


def test_the_font_gives_the_file_as_it_is():
    """A line a letter, plain and bold in turn, the space no more than its width."""
    text, kept = glyphs.written(), glyphs.FILE.read_text(encoding="utf-8")
    made, table = json.loads(text), json.loads(kept)
    assert [*made] == [*table] == [key + one for key in "rb" for one in glyphs.LETTERS]
    assert text.count("\n") == kept.count("\n") == len(table)
    for name, wanted in table.items():
        for one, other in zip(made[name], wanted, strict=True):
            assert np.abs(np.subtract(one, other)).max() <= 1, name
    assert glyphs.glyph_of_font(" ", False) == glyphs.glyph_table()["r "]
    assert len(glyphs.glyph_of_font(" ", True)) == 1


def test_a_sheet_is_painted_onto_axes_layer_by_layer():
    """A tone, a thin line and a broken one; widths in points of 1/72 in, dashes in line widths."""
    sheet, theme = Sheet(120.0, 80.0), THEMES["dark"]
    sheet.fill([np.array([(10.0, 10.0), (30.0, 10.0), (30.0, 30.0)])], "brick")
    sheet.line([(0, 0), (50, 40)], "seen")
    sheet.line([(0, 5), (50, 45)], "hidden", "soft")
    axes = Figure().subplots()
    paint(axes, sheet, "dark")
    assert axes.get_xlim() == (0.0, 120.0) and axes.get_ylim() == (0.0, 80.0)
    assert axes.get_aspect() == 1.0 and not axes.axison
    made = list(layers(sheet, theme))
    assert [patch.get_zorder() for patch in axes.patches] == [1, 2, 3] and len(made) == 3
    for patch, layer in zip(axes.patches, made, strict=True):
        assert np.array_equal(patch.get_path().vertices, layer.path.vertices)
        assert patch.get_fill() == bool(layer.face) and patch.get_joinstyle() == "miter"
        assert patch.get_linewidth() == pytest.approx(layer.width * 72 / 25.4)
        assert to_hex(patch.get_facecolor()) == (layer.face or "#000000")
        assert patch.get_edgecolor()[3] == bool(layer.edge)
        if layer.edge:
            assert to_hex(patch.get_edgecolor()) == layer.edge
        assert patch.get_capstyle() == ("butt" if layer.dashes else "round")
        broken = (0, tuple(d / layer.width for d in layer.dashes)) if layer.dashes else "solid"
        assert patch.get_linestyle() == broken
    assert [layer.dashes is None for layer in made] in ([True, True, False], [True, False, True])


@pytest.mark.parametrize("view", ["front", "section", "plan", "roof"])
def test_each_elevation_can_be_painted_onto_axes(boathouse, view, monkeypatch):
    geometry = build_geometry(boathouse)
    painted = []
    monkeypatch.setattr(drawing, "paint", lambda *asked: painted.append(asked))
    axes = object()
    getattr(drawing, view)(axes, geometry)
    getattr(drawing, view)(axes, geometry, "millimetres", "print")
    for (where, sheet, theme), (units, wanted) in zip(
        painted, ((FEET_INCHES, "light"), ("millimetres", "print")), strict=True
    ):
        assert where is axes and theme == wanted
        assert sheet.labels == single(view, geometry, units).labels


def test_clearances_over_the_roof_are_painted_with_their_limits(boathouse, monkeypatch):
    made, painted = assess(boathouse), []
    monkeypatch.setattr(drawing, "paint", lambda *asked: painted.append(asked[1]))
    limits = roof_limits(made.findings)
    drawing.roof(object(), made.geometry, limits=limits)
    drawing.roof(object(), made.geometry)
    with_them, without = ([label.text for label in sheet.labels] for sheet in painted)
    wanted = single("roof", made.geometry, FEET_INCHES, limits)
    assert with_them == [label.text for label in wanted.labels] != without
