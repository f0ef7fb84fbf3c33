"""The sheet of the rods: the whole height in strips, what is in courses, what comes out odd."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.assessment import Assessment
from fireplace_calc.brickwork.courses import odd_courses
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import MIDDLE, SMALL, TITLE_ROOM, title
from fireplace_calc.drawing.plates.sizes import SCALES, Paper
from fireplace_calc.drawing.rods.marked_lanes import lanes, named_levels
from fireplace_calc.drawing.rods.rod_figure import StripDrawing
from fireplace_calc.drawing.rods.strips import CONTINUED, on_sheets, plan_rod, reach, strip_width
from fireplace_calc.drawing.sheets.lettering import in_rows
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.takeoff.cost import Price

HEAD = 7.0
"""Over a strip, for the names of its lanes. [mm]"""
ROW = 3.9
"""[mm]"""
HOW = (
    "Mark a batten from these levels.",
    "Each runs from the finished floor and is rounded once.",
    "Set the batten by FLOOR and HEARTH.",
    "Figures are tops of courses; the finer line is the top of a bed.",
    "* cut, or not of the usual height.",
    "Brick behind the face is not marked; over the face, numbers are those of the chimney's brick.",
)
"""Of these as many as there is room for, from the first on."""
MORE = "More courses come out odd: see the cut list."


def plates(
    result: Assessment, units: str, on: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """Storey rods of a design on one sheet, on more where the paper is small.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    prices : dict or None
        Not asked for here.
    """
    geometry = result.geometry
    marked_lanes, names = lanes(geometry), named_levels(geometry)
    field = on.field
    high = field.top - field.bottom - HEAD - TITLE_ROOM - 4.0
    wide, foot = field.right - field.left, field.bottom + TITLE_ROOM + 4.0
    plan = plan_rod(marked_lanes, names, units, wide, high, geometry.frame.shoulder_top)
    scale = SCALES[units].get(plan.denominator, f"1:{plan.denominator:g}")
    made: list[Plate] = []
    keys = {id(plan.strips[-1]): "flue_rod", id(plan.strips[0]): "rod"}
    for strips in on_sheets(plan, marked_lanes, wide):
        sheet, drawn = Sheet(on.width, on.height), []
        widths = [strip_width(plan, strip, marked_lanes) for strip in strips]
        spare = max(wide - sum(widths), 0.0) / len(strips)
        left = field.left
        for strip, each in zip(strips, widths, strict=True):
            left += spare / 2
            drawing = StripDrawing(sheet, plan, strip, left, (foot, foot + high), units)
            drawing.draw(marked_lanes, names)
            key = keys.get(id(strip), "")
            mark, name = marked(key) if key else ("", CONTINUED)
            title(sheet, (left, field.bottom), mark, name, scale, reach(strip, units))
            drawn += [key] if key else []
            left += each + spare / 2
        _words(sheet, on.strip, result, units)
        made.append(Plate("Storey rods", sheet, scale, plan.denominator, drawn))
    return made


def _words(sheet: Sheet, cell: Cell, result: Assessment, units: str) -> None:
    """How to use it, and what comes out odd: as much as there is room for."""
    wide = cell.right - cell.left
    y = cell.top
    sheet.text(cell.left, y - MIDDLE, "The rod", size=MIDDLE, ha="left", bold=True)
    y -= MIDDLE + 1.6
    room = int((y - cell.bottom) / ROW)
    odd = odd_courses(result.geometry, units)
    fitting = (in_rows(" ".join(HOW[:n]), wide, SMALL) for n in range(len(HOW), 0, -1))
    more = in_rows(MORE, wide, SMALL)
    kept = len(more) if odd else 0
    rows = next((told for told in fitting if len(told) + kept <= room), [])
    for left, text in zip(range(len(odd) - 1, -1, -1), odd, strict=True):
        told = in_rows(text, wide, SMALL)
        if len(rows) + len(told) + (len(more) if left else 0) > room:
            rows += more if len(rows) + len(more) <= room else []
            break
        rows += told
    for row in rows:
        y -= ROW
        sheet.text(cell.left, y, row, size=SMALL, ha="left")
