"""A check shown where it is measured: from here to there on its view, with how far it would have to
reach and the clause.
"""

from __future__ import annotations

from collections.abc import Callable
from math import hypot

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, from_unit
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.composed.marked_places import PLACES
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.front_elevation import front
from fireplace_calc.drawing.views.hearth_plan import plan
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.rules import Finding

HEAD, ROW, FOOT = 4.8, 4.2, 4.0
"""Of the caption over the view: height of a row in bold, of a row under it, and air. [mm]"""
LENGTHS = ("in", "ft", "mm", "m")
DRAW: dict[str, Callable[..., View]] = {
    "plan": plan,
    "section": section,
    "front": front,
    "roof": roof,
}


def can_show(finding: Finding) -> bool:
    """Whether a finding is a length that has a place on a view."""
    return finding.key in PLACES and finding.unit in LENGTHS and isinstance(finding.provided, float)


def marked(
    finding: Finding, geometry: Geometry, units: str = FEET_INCHES, paper: Cell = WHOLE
) -> Sheet:
    """The view a check belongs to, with the check on it.

    Parameters
    ----------
    finding : Finding
        One that ``can_show``.
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.
    paper : Cell
        Whose width and height the sheet has. [mm]

    Returns
    -------
    Sheet
        What is there runs between two cross strokes; a third stroke stands where what is asked
        would end.
    """
    if not isinstance(finding.provided, float):
        raise ValueError(f"{finding.key} measures no length on a view.")
    name, place = PLACES[finding.key]
    sheet = Sheet(paper.right - paper.left, paper.top - paper.bottom)
    top = _caption(sheet, finding, finding.provided, units)
    view = DRAW[name](sheet, Cell(0.0, 0.0, sheet.width, top), geometry, units)
    start, end = place(geometry)
    short = finding.verdict == "falls short"
    ink = "bad" if short else "good"
    _stroke(view, start, end, ink, top)
    required = finding.required if isinstance(finding.required, float) else None
    length = hypot(end[0] - start[0], end[1] - start[1])
    if required and length > 0:
        share = from_unit(required, finding.unit) / length
        _cross(
            view,
            start,
            end,
            (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])),
            3.2,
            ink,
            top,
        )
    return sheet


def _caption(sheet: Sheet, finding: Finding, provided: float, units: str) -> float:
    """What is measured and by which clause, at the head of the sheet; the level under it. [mm]"""
    required = finding.required if isinstance(finding.required, float) else None
    told = show(from_unit(provided, finding.unit), "length", units)
    asked = (
        ""
        if required is None
        else f", {show(from_unit(required, finding.unit), 'length', units)} required"
    )
    words = f"{finding.key}  {finding.title}: {told}{asked}, {finding.said}"
    origin = (
        f"{finding.clause}, {finding.edition}. Measured between the cross strokes; the long"
        " stroke marks what is required."
    )
    y = sheet.height - 1.4
    for row in lettering.in_rows(words, sheet.width - 8.0, TITLE, True):
        y -= HEAD
        sheet.text(4.0, y, row, size=TITLE, ha="left", bold=True)
    y -= HEAD - ROW
    for row in lettering.in_rows(origin, sheet.width - 8.0, SMALL):
        y -= ROW
        sheet.text(4.0, y, row, size=SMALL, ha="left")
    return y - FOOT / 2


def _stroke(view: View, start: Pair, end: Pair, ink: str, top: float) -> None:
    view.path([start, end], "flag", ink)
    for place in (start, end):
        _cross(view, start, end, place, 1.8, ink, top)


def _cross(
    view: View, start: Pair, end: Pair, place: Pair, half: float, ink: str, top: float
) -> None:
    """A stroke square to the measured line, left out where it would leave the sheet or cross a
    figure. [mm]
    """
    (x0, y0), (x1, y1), (x, y) = view.at(*start), view.at(*end), view.at(*place)
    long = hypot(x1 - x0, y1 - y0) or 1.0
    u, v = -(y1 - y0) / long * half, (x1 - x0) / long * half
    left, right, low, high = x - abs(u) - 0.4, x + abs(u) + 0.4, y - abs(v) - 0.4, y + abs(v) + 0.4
    on_sheet = left > 0 and right < view.sheet.width and low > 0 and high < top
    if on_sheet and not any(
        a < right and left < c and b < high and low < d
        for a, b, c, d in (n.extent for n in view.sheet.labels)
    ):
        view.sheet.line([(x - u, y - v), (x + u, y + v)], "flag", ink)
