"""Rain cap and spark arrester over the flue, as the roof view draws them."""

import numpy as np
import pytest

from fireplace_calc import change
from fireplace_calc.base.units import INCH, SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import HEIGHT, WHOLE, WIDTH, single
from fireplace_calc.drawing.roof.cap import PLATE, clear_height, draw_cap, over_flue
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet, View
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


def test_what_is_not_told_is_drawn_as_high_as_the_liner_is_wide():
    """Four square flues' worth of air over the flue's outline is its side; so is a cube of mesh."""
    cap, mesh = {"chimney.rain_cap": "yes"}, {"chimney.arrester": "yes"}
    for changes, plate in ((cap, PLATE), (mesh, 0.0), (cap | mesh, PLATE)):
        made = build_geometry(change(Design(), changes))
        side = made.frame.bore.width
        assert side == pytest.approx(made.frame.bore.depth)
        assert over_flue(made) == pytest.approx(side + plate)
        assert clear_height(made) == pytest.approx(side)
    wide = build_geometry(change(Design(), mesh | {"flue.size": "8.5x18"}))
    assert over_flue(wide) == pytest.approx(min(wide.frame.bore.width, wide.frame.bore.depth))


def test_lines_of_a_cap_over_a_mesh():
    """A plate of 1 in, 1-1/2 over the liner either side; nine wires up and three across between."""
    told = {
        "chimney.rain_cap": "yes",
        "chimney.rain_cap_area": "900 in2",
        "chimney.arrester": "yes",
    }
    made, sheet = build_geometry(change(Design(), told)), Sheet(WIDTH, HEIGHT)
    view = View(sheet, 0.0, 0.0, 1 / INCH)
    draw_cap(view, made, 10 * INCH, 18 * INCH, made.frame.liner_top)
    low = made.frame.liner_top / INCH
    high = low + over_flue(made) / INCH
    fine = [np.round(line, 4).tolist() for line in sheet.lines["fine", "ink"]]
    assert [line[0][0] for line in fine if line[0][0] == line[1][0]] == [*range(10, 19)]
    across = [line for line in fine if line[0][1] == line[1][1]]
    tall = high - 1 - low
    assert [line[0][1] for line in across] == pytest.approx([low + tall * k / 4 for k in (1, 2, 3)])
    assert all((line[0][0], line[1][0]) == (10, 18) for line in across)
    (plate,) = [
        polygon[0] for (_, tone), ps in sheet.fills.items() if tone == "steel" for polygon in ps
    ]
    assert (plate.min(axis=0), plate.max(axis=0)) == (
        pytest.approx((8.5, high - 1)),
        pytest.approx((19.5, high)),
    )
    guessed = Sheet(WIDTH, HEIGHT)
    made = build_geometry(change(Design(), {"chimney.rain_cap": "yes"}))
    draw_cap(View(guessed, 0.0, 0.0, 1 / INCH), made, 10 * INCH, 18 * INCH, made.frame.liner_top)
    assert {weight for weight, _ in guessed.lines} == {"hidden"} and not guessed.fills


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
