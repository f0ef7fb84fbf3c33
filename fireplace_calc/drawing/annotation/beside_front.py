"""What is written beside the live front elevation."""

from __future__ import annotations

from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.sheet import Cell, View
from fireplace_calc.drawing.views.face import hood_level
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry


def front_foot(geometry: Geometry) -> float:
    """Lowest level drawn: the floor, or the underside of a hearth let into it. [m]"""
    f, d = geometry.frame, geometry.design
    return min(0.0, f.extension_top - d.hearth.thickness) if d.hearth.front > 0 else 0.0


def front_levels(geometry: Geometry, ceiling: float) -> dict[str, float]:
    """Levels at the side of the front by their names. [m]"""
    f, d = geometry.frame, geometry.design
    named = {"floor": 0.0, "hearth": f.hearth, "opening top": f.opening_top} | hood_level(geometry)
    if f.spring < f.opening_top:
        named["spring line"] = f.spring
    named["arch" if "arch" in geometry.parts_by_name else "lintel top"] = (
        f.opening_top + d.lintel.height
    )
    for part in mantel_parts(geometry):
        left, right, _, low, _ = part.group.runs[0].bounds
        if left < 0 < right and not part.name.startswith("overmantel"):
            named[f"underside of {part.name}"] = low
    if f.block_top < ceiling - 0.05:
        named["shoulder"] = f.block_top
    named["ceiling"] = ceiling
    return named


def front_strings(view: View, cell: Cell, geometry: Geometry, units: str, wide: float) -> None:
    """Strings of the widths under the floor, and of the heights at the left."""
    f, d, sheet = geometry.frame, geometry.design, view.sheet
    floor = view.at(0, front_foot(geometry))[1]
    stops = [view.at(x, 0)[0] for x in (-f.block_half, -f.half_width, f.half_width, f.block_half)]
    line = floor - 4.5
    limits = (cell.left + 2, cell.right - 2)
    jamb = length(f.block_half - f.half_width, units)
    used = chain(
        sheet,
        stops,
        [jamb, length(2 * f.half_width, units), jamb],
        line,
        limits=limits,
        feet=[floor - 0.6] * 4,
    )
    chain(
        sheet, [stops[0], stops[-1]], [length(2 * f.block_half, units)], line - used, limits=limits
    )
    at = [f.hearth, f.hearth + d.opening.standard_height, f.opening_top]
    texts = [length(d.opening.standard_height, units), length(d.opening.extension, units)]
    if d.opening.extension < 1e-9:
        at, texts = at[:2], texts[:1]
    if f.hearth > 1e-9:
        at, texts = [0.0, *at], [length(f.hearth, units), *texts]
    x = view.at(-wide, 0)[0] - 2.0
    stops = [view.at(0, z)[1] for z in at]
    foot = view.at(-f.block_half, 0)[0]
    limits = (floor - 2.5, cell.top - 2)  # the strings along the floor stand under that
    used = chain(
        sheet, stops, texts, x, along="y", side=-1, limits=limits, feet=[foot] * len(stops)
    )
    if len(texts) > 1:
        chain(
            sheet,
            [stops[0], stops[-1]],
            [length(f.opening_top - at[0], units)],
            x - used,
            along="y",
            side=-1,
            limits=limits,
        )
