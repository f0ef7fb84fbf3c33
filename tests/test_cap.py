"""Rain cap and spark arrester over the flue, as the roof view draws them."""

import numpy as np
import pytest

from fireplace_calc import change
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import HEIGHT, WHOLE, WIDTH, single
from fireplace_calc.drawing.roof.cap import PLATE, clear_height, over_flue
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.geometry.builder import build_geometry

CAPS = [
    {"chimney.rain_cap": "yes"},
    {"chimney.arrester": "yes"},
    {"chimney.rain_cap": "yes", "chimney.arrester": "yes"},
    {"chimney.rain_cap": "yes", "chimney.rain_cap_area": "800 in2"},
    {"flue.sections": 40, "chimney.rain_cap": "yes"},
]


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("changes", CAPS)
def test_what_is_drawn_ends_where_it_stands_and_crosses_no_word(changes, units):
    made, sheet = build_geometry(change(Design(), changes)), Sheet(WIDTH, HEIGHT)
    view = roof(sheet, WHOLE, made, units)
    top = view.at(0, made.frame.liner_top + over_flue(made))[1]
    assert over_flue(made) > 0
    assert any(
        np.isclose(line[:, 1].max(), top, atol=1e-6)
        for lines in sheet.lines.values()
        for line in lines
    )
    assert top < HEIGHT and not collisions(sheet)


def test_a_cap_stands_as_high_as_its_free_area_needs():
    """Open perimeter by clear height, less posts: 800 in2 round a 13 x 13 liner of 11-1/4 in
    inside.
    """
    made = build_geometry(
        change(Design(), {"chimney.rain_cap": "yes", "chimney.rain_cap_area": "800 in2"})
    )
    bore = made.frame.bore
    assert clear_height(made) * 2 * (bore.width + bore.depth) == pytest.approx(800 * 0.0254**2)
    assert over_flue(made) == pytest.approx(clear_height(made) + PLATE)


def test_nothing_stands_there_unasked():
    plain = build_geometry(Design())
    assert (
        over_flue(plain) == 0
        and over_flue(build_geometry(change(Design(), {"chimney.rain_cap": "unknown"}))) == 0
    )
    lines = [len(lines) for lines in single("roof", plain, "millimetres").lines.values()]
    capped = [
        len(lines)
        for lines in single(
            "roof", build_geometry(change(Design(), CAPS[2])), "millimetres"
        ).lines.values()
    ]
    assert sum(capped) > sum(lines)
