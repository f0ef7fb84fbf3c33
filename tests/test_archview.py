"""The arch drawn large: its line of thrust is the one worked out, and nothing lies across anything."""

import numpy as np
import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import HEIGHT, WHOLE, WIDTH
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.arch_view import arch, has_arch

EXTREMES = [
    {},
    {"opening.rise": "9 in", "opening.width": "80 in", "lintel.height": "8 in"},
    {"opening.width": "24 in", "opening.rise": "2 in"},
    {"opening.extension": "24 in", "opening.rise": "6 in"},
]


def arched(**more):
    return assess(change(Design(), {"opening.head": "segmental", "opening.rise": "5 in", **more}))


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("more", EXTREMES)
def test_the_line_drawn_is_the_line_worked_out(more, units):
    result, sheet = arched(**more), Sheet(WIDTH, HEIGHT)
    view = arch(sheet, WHOLE, result.geometry, units)
    found = result.structure.arch
    wanted = np.array([view.at(x, z) for x, z in found.line_points])
    runs = [line for weights in sheet.lines.values() for line in weights]
    assert any(len(run) == len(wanted) and np.allclose(run, wanted) for run in runs)
    assert wanted[0, 0] < wanted[-1, 0] and wanted[0, 1] == pytest.approx(wanted[-1, 1])
    assert not collisions(sheet)
    said = " ".join(label.text for label in sheet.labels)
    assert ("keeps to" in said) == found.line.inside and f"{found.line.eccentricity:.2f}" in said


def test_only_a_design_with_an_arch_has_the_view():
    assert has_arch(arched().geometry)
    assert not has_arch(assess(Design()).geometry)


@pytest.mark.parametrize(("told", "doubted"), [({}, True), ({"loads.in_triangle": "no"}, False)])
def test_the_sheet_says_not_checked_where_the_findings_do(told, doubted):
    """The middle third was said to be kept to while STR-16 waited for the load on the arch."""
    result, sheet = arched(**told), Sheet(WIDTH, HEIGHT)
    arch(sheet, WHOLE, result.geometry, "feet-inches")
    said = {f.key: f.verdict for f in result.structure.findings}
    assert doubted == (said["STR-16"] == "not checked")
    for key, words in (
        ("STR-16", "line of thrust"),
        ("STR-17", "by friction"),
        ("STR-18", "against tipping"),
    ):
        line = next(label.text for label in sheet.labels if words in label.text)
        assert ("not checked" in line) == (said[key] == "not checked"), line


@pytest.mark.parametrize(("wide", "inside"), [(179.9, False), (180.0, True)])
def test_the_thrust_is_written_into_the_opening_where_there_is_room(wide, inside):
    """Else beside the arch, with a leader to the middle of its line."""
    result, sheet = arched(), Sheet(wide + 4, 200.0)
    view = arch(sheet, Cell(2.0, 2.0, 2.0 + wide, 198.0), result.geometry, "feet-inches")
    (label,) = [one for one in sheet.labels if one.text.startswith("thrust ")]
    points = result.structure.arch.line_points
    middle = view.at(*points[len(points) // 2])
    thrust = result.structure.arch.line.thrust
    assert label.text == f"thrust {round(thrust / 4.4482216):d} lbf"
    if inside:
        assert (label.x, label.ha, label.va) == (
            pytest.approx(view.at(0.0, 0.0)[0]),
            "center",
            "top",
        )
        below = result.geometry.frame.opening_top - 0.08
        assert label.y == pytest.approx(view.at(0.0, below)[1])
    else:
        assert label.ha == "left" and label.x > view.at(result.geometry.frame.block_half, 0.0)[0]
        ends = [line[n] for lines in sheet.lines.values() for line in lines for n in (0, -1)]
        assert any(np.allclose(end, middle) for end in ends)
