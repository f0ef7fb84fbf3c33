"""Plan of the chimney: two flues and the masonry between them, cut over the shoulder."""

from __future__ import annotations

from itertools import pairwise

from fireplace_calc.design.second_flue import APPLIANCE, FIREPLACE
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    fit,
    key,
    length,
    roomy,
    title,
)
from fireplace_calc.geometry.parts import Geometry

WHOSE = {FIREPLACE: "another fireplace", APPLIANCE: "heating appliance"}
CUT = ("chimney walls", "flue casing", "flue liner", "second flue casing", "second flue liner")


def has_second_flue(geometry: Geometry) -> bool:
    """Whether there is a second flue to show."""
    return geometry.frame.second is not None


def cut_level(geometry: Geometry) -> float:
    """Where the chimney is cut: over shoulder and offset, through both flues, under the crown.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m]
    """
    f = geometry.frame
    low = max(f.shoulder_top, f.offset_top, f.second.start if f.second else f.shoulder_top)
    return (min(low, f.crown_bottom) + f.crown_bottom) / 2


def chimney(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the chimney's plan into a cell of a sheet; the room is below."""
    f = geometry.frame
    z = cut_level(geometry)
    middle = f.shift_at(z) + f.stack_middle
    left, right = middle - f.stack_half, middle + f.stack_half
    front, back = f.flue_y - f.stack_depth, f.flue_y + f.stack_depth
    view, denominator = fit(
        sheet, cell, (left, front, right, back), (24, 24, 52 if roomy(cell) else 8, 8), scales
    )
    for name in CUT:
        if (part := geometry.parts_by_name.get(name)) is not None:
            adds, holes = part.plan(z)
            view.cut([*adds, *holes], part.material, "cut" if name == "chimney walls" else "seen")
    _names(view, geometry, z)
    _strings(view, cell, geometry, units, z)
    if roomy(cell):
        key(sheet, view.at(right, 0)[0] + 10.0, cell.bottom + 12, cell.right - 3)
    name = name_scale(denominator) if name_scale else ""
    title(sheet, cell, "Plan of the chimney", name)
    return view


def _names(view: View, geometry: Geometry, z: float) -> None:
    """Whose each flue is, written into it where there is room."""
    f, second = geometry.frame, geometry.design.second_flue.serves
    flues = [(f.shift_at(z), f.bore.width, "this fireplace")]
    if f.second is not None:
        flues.append((f.shift_at(z) + f.second.x, f.second.bore.width, WHOSE[second]))
    for x, wide, whose in flues:
        (left, y), (right, _) = view.at(x - wide / 2, f.flue_y), view.at(x + wide / 2, f.flue_y)
        lines = [whose] if width(whose, SMALL) < 0.9 * (right - left) else whose.split()
        if max(width(line, SMALL) for line in lines) < 0.9 * (right - left):
            for k, line in enumerate(lines):
                up = y + 4.0 * ((len(lines) - 1) / 2 - k)
                view.sheet.text((left + right) / 2, up, line, SMALL, va="middle")


def _strings(view: View, cell: Cell, geometry: Geometry, units: str, z: float) -> None:
    """Wall, flue, masonry between, flue, wall; then the whole, and how deep."""
    f = geometry.frame
    at, middle = f.shift_at(z), f.shift_at(z) + f.stack_middle
    left, right = middle - f.stack_half, middle + f.stack_half
    front, back = f.flue_y - f.stack_depth, f.flue_y + f.stack_depth
    cavities = [(at, f.cavity_half)]
    if f.second is not None:
        cavities.append((at + f.second.x, f.second.cavity_half))
    edges = sorted(x + side * half for x, half in cavities for side in (-1, 1))
    stops = [left, *edges, right]
    places = [(a, b) for a, b in pairwise(stops)]
    kept = [stops[0], *(b for a, b in places if b - a > 1e-6)]
    foot = view.at(0, front)[1]
    limits = (cell.left + 2, cell.right - 2)
    used = chain(
        view.sheet,
        [view.at(x, 0)[0] for x in kept],
        [length(b - a, units) for a, b in pairwise(kept)],
        foot - 5.0,
        limits=limits,
        feet=[foot - 0.8] * len(kept),
    )
    ends = [view.at(x, 0)[0] for x in (left, right)]
    chain(view.sheet, ends, [length(right - left, units)], foot - 5.0 - used, limits=limits)
    chain(
        view.sheet,
        [view.at(0, y)[1] for y in (front, back)],
        [length(back - front, units)],
        view.at(left, 0)[0] - 5.0,
        along="y",
        side=-1,
        limits=(cell.bottom + 9, cell.top - 2),
        feet=[view.at(left, 0)[0] - 0.8] * 2,
    )
