"""The page's canvas in a real browser against Agg's dots of the same Figure."""

import base64
import io
import os

import numpy as np
import pytest
from bench.browser import ROOT, chromium, page
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from PIL import Image
from strategies import designs

from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.page.glyphs import LETTERS, glyph_table
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.page.sheet_artist import sheet_figure
from fireplace_calc.drawing.page.stage import DENSITY, stage_cells, stage_views
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES
from fireplace_calc.geometry.builder import build_geometry

pytestmark = pytest.mark.skipif(
    chromium() is None and os.environ.get("FIREPLACE_BROWSER_TEST") != "required",
    reason="no Chromium here",
)
PAINTING = ROOT / "fireplace_calc" / "panels" / "picture" / "painting.js"
PAINT = """([told, body, wide, high, paper, times]) => {
  const bytes = Uint8Array.from(atob(body), (c) => c.charCodeAt(0));
  const odd = new Uint8Array(bytes.length + 1); // a message may begin at an odd address
  odd.set(bytes, 1);
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [wide, high];
  words.clear();
  const sheet = unpackSheet(told, new DataView(odd.buffer, 1));
  for (let k = 0; k < times; k++) paintSheet(canvas, sheet, window.glyphs, paper);
  return canvas.toDataURL('image/png').split(',')[1];
}"""
NEAR = 48
"""Of 255: what two ways of smoothing the edge of a line may differ by. A line of half a dot is one
dot of half its ink here, and two of a quarter in Agg. [-]
"""
APART = 0.001
"""Share of dots that may lie farther apart than that from all their neighbors. [-]"""


@pytest.fixture(scope="module")
def canvas():
    """Paints a sheet in a browser and gives its dots, (high, wide, 3)."""
    with page(400, 300) as view:
        view.set_content("<title>canvas</title>")
        view.add_script_tag(content=PAINTING.read_text())
        view.evaluate("(glyphs) => { window.glyphs = glyphs; }", glyph_table())

        def painted(sheet, theme, dots, size=None, times=1):
            cell = Cell(0.0, 0.0, sheet.width, sheet.height)
            told, body = page_message(sheet, theme, cell)
            size = size or [round(sheet.width * dots), round(sheet.height * dots)]
            sent = [told, base64.b64encode(body).decode(), *size]
            sent += [THEMES[theme].paper, times]
            return read(base64.b64decode(view.evaluate(PAINT, sent)))

        yield painted


def read(png):
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(int)


def agg(sheet, theme, dots):
    """The same Figure by matplotlib's own raster."""
    figure, out = sheet_figure(sheet, theme), io.BytesIO()
    dpi = 25.4 * dots
    wide, high = (round(side * dots) + 0.01 for side in (sheet.width, sheet.height))
    figure.set_size_inches(wide / dpi, high / dpi)  # a float must not lose the last dot
    figure.savefig(out, format="png", dpi=dpi)
    return read(out.getvalue())


def beyond(one, other):
    """Dots of one picture that are lighter or darker than anything the other has on them or beside
    them, by more than antialiasing.
    """
    padded = np.pad(other, ((1, 1), (1, 1), (0, 0)), mode="edge")
    near = np.lib.stride_tricks.sliding_window_view(padded, (3, 3), axis=(0, 1))
    low, high = near.min(axis=(-1, -2)), near.max(axis=(-1, -2))
    return ((one < low - NEAR) | (one > high + NEAR)).any(axis=-1)


def agree(ours, theirs):
    assert ours.shape == theirs.shape
    assert beyond(ours, theirs).mean() <= APART
    assert beyond(theirs, ours).mean() <= APART
    assert np.abs(ours.mean(axis=(0, 1)) - theirs.mean(axis=(0, 1))).max() < 1.0


@settings(
    deadline=None,
    max_examples=16,
    suppress_health_check=list(HealthCheck),
    phases=[Phase.explicit, Phase.generate],  # each try takes half a second
)
@given(
    designs(),
    st.sampled_from(["front", "section", "plan", "roof", "room", "detail"]),
    st.sampled_from(SYSTEMS),
    st.sampled_from(["light", "dark"]),
    st.sampled_from([1, 2]),
)
def test_the_page_draws_what_agg_draws(canvas, design, view, units, theme, density):
    """Random designs, both papers, both densities: lines on the same dots, letters alike."""
    stage = stage_cells(view, 640, 420)
    made = build_geometry(design)
    ((_, _, sheet),) = stage_views(view, made, units, (), (), stage)
    dots = DENSITY * density
    agree(canvas(sheet, theme, dots), agg(sheet, theme, dots))


@pytest.mark.parametrize("density", [1, 2])
@pytest.mark.parametrize("theme", ["light", "dark"])
@pytest.mark.parametrize("times", [1, 3])
def test_letters_agree(canvas, theme, density, times):
    """Every letter of the table, plain and bold, level and turned, and what is kept as dots from
    the second time on.
    """
    sheet = Sheet(180.0, 100.0)
    for row, start in enumerate(range(0, len(LETTERS), 24)):
        sheet.text(20.0, 90.0 - 12.0 * row, LETTERS[start : start + 24], ha="left")
        sheet.text(20.0, 84.0 - 12.0 * row, LETTERS[start : start + 24], ha="left", bold=True)
    sheet.text(6.0, 50.0, "Turned 1'-6 3/4\" ½", turned=True)
    dots = 3.5 * density
    painted = canvas(sheet, theme, dots, times=times)
    agree(painted, agg(sheet, theme, dots))
    if times > 1:
        assert np.abs(painted - canvas(sheet, theme, dots)).max() <= 8


def test_a_letter_that_the_table_lacks_is_painted(canvas):
    sheet = Sheet(100.0, 40.0)
    sheet.text(50.0, 20.0, "\u03a9 \u00df \u00f6", bold=True)
    agree(canvas(sheet, "light", 7.0), agg(sheet, "light", 7.0))


@pytest.mark.parametrize("density", [1, 2])
def test_level_and_upright_lines_fill_whole_dots(canvas, density):
    """By eye of a ruler: a fine line is one dot wide (two at most) and as dark as its ink allows,
    never two gray ones.
    """
    sheet = Sheet(100.0, 40.0)
    sheet.line([(10.0, 7.3), (90.0, 7.3)], "seen")
    dots = DENSITY * density
    drawn = canvas(sheet, "light", dots)
    column = drawn[:, drawn.shape[1] // 2, 0]
    dark = np.flatnonzero(column < 255)
    assert len(dark) == np.ceil(0.25 * dots)
    assert column[dark].max() < 255 * (1 - 0.25 * dots / np.ceil(0.25 * dots)) + 40


@pytest.mark.parametrize("pen", ["flag", "plane"])
def test_a_line_of_a_dot_and_a_little_is_as_dark_as_aggs(canvas, pen):
    """At one density a flashing's line is a dot and four tenths: one whole dot with a faint edge on
    either side, not two gray ones.
    """
    sheet = Sheet(100.0, 40.0)
    sheet.line([(10.0, 7.3), (90.0, 7.3)], pen)
    ours, theirs = canvas(sheet, "light", DENSITY), agg(sheet, "light", DENSITY)
    assert np.abs(ours[:, 180].min(axis=0) - theirs[:, 180].min(axis=0)).max() <= 8


def test_a_fault_in_the_painting_is_seen(canvas):
    """A line moved by two dots, or a letter left out, is not within antialiasing."""
    sheet, moved, mute = Sheet(100.0, 60.0), Sheet(100.0, 60.0), Sheet(100.0, 60.0)
    for one, at in ((sheet, 10.0), (moved, 10.6), (mute, 10.0)):
        one.line([(10.0, at), (90.0, at)], "cut")
        if one is not mute:
            one.text(50.0, 30.0, "Front elevation", size=6.0)
    drawn = canvas(sheet, "light", 3.5)
    for wrong in (moved, mute):
        with pytest.raises(AssertionError):
            agree(drawn, agg(wrong, "light", 3.5))


def test_a_sheet_stands_in_the_middle_of_a_canvas_of_another_shape(canvas):
    """As large as it goes, paper round it."""
    sheet = Sheet(100.0, 50.0)
    sheet.fill([np.array([(0, 0), (100, 0), (100, 50), (0, 50)])], "steel")
    drawn = canvas(sheet, "light", 3.0, [300, 250])
    inside = (drawn != 255).any(axis=-1)
    rows, columns = np.flatnonzero(inside.any(1)), np.flatnonzero(inside.any(0))
    assert (rows[0], rows[-1], columns[0], columns[-1]) == (50, 199, 0, 299)
