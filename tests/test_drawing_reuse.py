"""A view that is not drawn again must be one that would come out the same."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import SETS as SHIPPED
from fireplace_calc.base.units import InputError
from fireplace_calc.design.firebox import BRICKS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import CELLS, HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import draw_view, reads, view_sheet
from fireplace_calc.drawing.composed.live import live_views, roof_limits


def content(sheet):
    """Everything on a sheet, as plain comparable values."""
    lines = {key: [np.round(p, 6).tolist() for p in runs] for key, runs in sheet.lines.items()}
    fills = {
        key: [[np.round(r, 6).tolist() for r in rings] for rings in polygons]
        for key, polygons in sheet.fills.items()
    }
    return (
        lines,
        fills,
        np.round(sheet.fine_lines(), 6).tolist(),
        [(n.text, round(n.x, 6), round(n.y, 6), n.ink) for n in sheet.labels],
    )


MOVES = st.sampled_from(
    [
        {"opening.width": "40 in"},
        {"opening.extension": "9 in"},
        {"opening.hood": "6 in"},
        {"flue.sections": 21},
        {"firebox.jamb": "13 in"},
        {"hearth.front": "25 in"},
        {"chimney.overhang": "1 in"},
        {"roof.pitch": "9:12"},
        {"house.ceiling": "11 ft"},
        {"surround.face": "stone"},
        {"throat.damper": "flue top"},
        {"clearance.side": "3 in"},
        {"base.hearth_level": "3 in"},
        {"lintel.height": "3 in"},
        {"smoke_chamber.height": "33 in"},
        {"site.grade": "20 in"},
        {"chimney.gap": "1 in"},
        {"roof.nearby": [{"name": "dormer", "distance": "6 ft", "level": "18 ft"}]},
        {"flue.casing": "3 in"},
        {"surround.trim": [{"name": "shelf", "distance": "13 in"}]},
        {"mantel.family": "shelf"},
        {"mantel.family": "paneled overmantel", "mantel.material": "stone"},
        {"mantel.family": "beam on corbels", "surround.face_height": "to the mantel"},
        {"chimney.masonry": "stone"},
        {"firebox.rake": "5 in"},
        {"chimney.location": "exterior"},
        {"firebox.masonry": "stone"},
        {"smoke_chamber.lining": "firebrick"},
        {"method": "modular"},
        {"hearth.material": "concrete"},
        {"chimney.cap_material": "stone"},
        {"flue.section_height": "18 in"},
        {"firebox.bond": "stack"},
        {"firebox.floor_bond": "herringbone 45"},
        {"firebox.joint": "1/4 in"},
        {"firebox.brick": BRICKS[1]},
        {"throat.depth": "5 in"},
        {"base.block_height": "8 in"},
        {"firebox.back_width": "19 in"},
        {"firebox.vertical_back": "15 in"},
    ]
)


@settings(deadline=None, max_examples=120, suppress_health_check=list(HealthCheck))
@given(designs(), MOVES, st.sampled_from(sorted(CELLS)))
def test_views_that_read_the_same_look_the_same(design, move, view):
    try:
        before, after = assess(design), assess(change(design, move))
    except InputError:
        return
    limits = [roof_limits(r.findings) for r in (before, after)]
    if reads(view, before.geometry, limits[0]) == reads(view, after.geometry, limits[1]):
        a, b = (
            draw_view(view, CELLS[view], r.geometry, "feet-inches", told)
            for r, told in zip((before, after), limits, strict=True)
        )
        assert content(a) == content(b)


@pytest.mark.parametrize(
    ("move", "again"),
    [
        ({"opening.width": "43 in"}, {"front", "plan"}),
        ({"opening.extension": "7 in"}, {"front", "section", "roof"}),
        ({"flue.sections": 22}, {"roof"}),
    ],
)
def test_only_what_a_slider_moves_is_drawn_again(boathouse, move, again):
    before, after = assess(boathouse), assess(change(boathouse, move))
    made = {
        view
        for view, cell in CELLS.items()
        if view_sheet(view, cell, before.geometry, "feet-inches", roof_limits(before.findings))
        is not view_sheet(view, cell, after.geometry, "feet-inches", roof_limits(after.findings))
    }
    assert made == again


def test_a_picture_painted_piece_by_piece_is_the_picture_painted_whole(boathouse):
    kept = Picture(WIDTH, HEIGHT)
    for sections in (20, 21, 25):
        for width in ("42 in", "60 in"):
            r = assess(change(boathouse, {"flue.sections": sections, "opening.width": width}))
            shown = list(live_views("all", r.geometry, "feet-inches", r.findings))
            assert np.array_equal(kept.draw(shown), Picture(WIDTH, HEIGHT).draw(shown))


def test_what_another_view_painted_over_is_painted_again(boathouse):
    """One large view lies over all four cells; nothing of it stays under them."""
    r = assess(boathouse)
    four = list(live_views("all", r.geometry, "feet-inches", r.findings))
    large = list(live_views("section", r.geometry, "feet-inches", r.findings))
    kept = Picture(WIDTH, HEIGHT)
    first = kept.draw(four).copy()
    assert not np.array_equal(kept.draw(large), first)
    assert np.array_equal(kept.draw(four), first)


SETS = [
    {"pieces.set": "middling"},
    {"pieces.set": "middling", "opening.head": "segmental"},
    {"pieces.set": "small"},
    {"pieces.set": "wide"},
]
SET_MOVES = [
    {"pieces.gap": "1 in", "pieces.around": "3-1/8 in"},
    {"pieces.facing": "3-1/8 in", "pieces.gap": "1 in"},
    {"pieces.opening_wanted": "29-1/2 in"},
    {"pieces.set": "wide"},
    {"opening.extension": "12 in"},
    {"opening.width": "24 in"},
    {"flue.sections": 22},
    {"chimney.gap": "1 in"},
    {"base.hearth_level": "6 in"},
    {"surround.face": "stone"},
]


@pytest.mark.parametrize("view", sorted(CELLS))
@pytest.mark.parametrize("first", SETS, ids=lambda c: "-".join(c.values()))
def test_views_of_a_set_that_read_the_same_look_the_same(first, view):
    one = assess(change(Design(), first))
    for move in SET_MOVES:
        other = assess(change(one.design, move))
        keys = [reads(view, r.geometry, roof_limits(r.findings)) for r in (one, other)]
        if keys[0] == keys[1]:
            drawn = [
                content(
                    draw_view(view, CELLS[view], r.geometry, "feet-inches", roof_limits(r.findings))
                )
                for r in (one, other)
            ]
            assert drawn[0] == drawn[1], move


def test_a_set_with_another_rebate_is_drawn_again(tmp_path):
    """The rebate's corner stands elsewhere; every length that is read off stays."""
    text = (SHIPPED / "middling.toml").read_text(encoding="utf-8")
    other = text.replace("[9, 3], [5, 23.75]", "[9, 6], [5, 23.75]")
    assert other != text
    (tmp_path / "mine.toml").write_text(other, encoding="utf-8")
    (tmp_path / "job.toml").write_text('[pieces]\nset = "mine"\n', encoding="utf-8")
    one = assess(change(Design(), {"pieces.set": "middling"}))
    two = assess(load(tmp_path / "job.toml"))
    plans = [draw_view("plan", CELLS["plan"], r.geometry, "feet-inches") for r in (one, two)]
    assert content(plans[0]) != content(plans[1])
    assert reads("plan", one.geometry) != reads("plan", two.geometry)
