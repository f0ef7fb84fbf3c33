"""Plan at the hearth: what is set out on the slab."""

from __future__ import annotations

from fireplace_calc.drawing.sheet import Sheet, View
from fireplace_calc.drawing.strings import chain, notes, room_for
from fireplace_calc.drawing.views import LADDER, Cell, fit, length, title
from fireplace_calc.parts import Geometry
from fireplace_calc.solids import Polygon
from fireplace_calc.units import INCH

STUD = 3.5 * INCH
"""Depth of the framing drawn round the masonry. [m]"""


def plan(sheet: Sheet, cell: Cell, geometry: Geometry, units: str, scales=LADDER, name_scale=None) -> None:
    """Draw the plan into a cell of a sheet; the room is below."""
    f, d = geometry.frame, geometry.design
    gap_side, gap_back = d.clearance.side or 0.0, d.clearance.back or 0.0
    airs = [((-f.block_half - gap_side / 2, f.block_back * 0.8), _air(d.clearance.side, units)),
            ((-f.half_at(f.depth) * 0.6, f.block_back + gap_back / 2), _air(d.clearance.back, units))]
    wide = max(f.block_half + gap_side + STUD, f.half_width + d.hearth.side) + 0.02
    view, denominator = fit(sheet, cell, (-wide, -d.hearth.front - 0.02, wide, f.block_back + gap_back + STUD + 0.02),
                            (room_for(text for _, text in airs) + 6.0, 19, 17, 11), scales)
    z = f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))
    for part in geometry.parts:
        adds, cuts = part.plan(z)
        if adds and part.name in ("firebox lining", "firebox walls"):
            ring = view.ring(notched(adds[0], cuts[0]))
            sheet.fill([ring], part.material, part.material)
            sheet.line(ring, "cut", closed=True)
    _floor(view, geometry)
    _framing(view, geometry, gap_side, gap_back)
    _strings(view, cell, geometry, units, wide, gap_back)
    tips = [(view.at(*place), text) for place, text in airs]
    notes(sheet, tips, view.at(-wide, 0)[0] - 3.0, side=-1, limits=(cell.bottom + 10, cell.top - 3))
    title(sheet, cell, "Plan at the hearth", name_scale(denominator) if name_scale else "")


def notched(outside: Polygon, inside: Polygon) -> Polygon:
    """One ring of a block and a niche in its front; both run front left, front right, back right, back left."""
    a, b = outside, inside
    return (b[1], a[1], a[2], a[3], a[0], b[0], b[3], b[2])


def _floor(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    a, b = f.half_at(0.0), f.half_at(f.depth)
    view.seen([(-a, 0.0), (a, 0.0), (b, f.depth), (-b, f.depth)], "firebrick", "fine", layer=-2)
    view.path([(-f.half_at(f.throat_front), f.throat_front), (f.half_at(f.throat_front), f.throat_front)], "hidden")
    view.path([(-f.half_at(f.throat_back), f.throat_back), (f.half_at(f.throat_back), f.throat_back)], "hidden")
    if d.hearth.front > 0:
        half = f.half_width + d.hearth.side
        view.seen([(-half, -d.hearth.front), (half, -d.hearth.front), (half, 0.0), (-half, 0.0)], "stone", "seen", layer=-2)


def _framing(view: View, geometry: Geometry, side: float, back: float) -> None:
    """Studs beside and behind, each its air space away."""
    f = geometry.frame
    x0, y0 = f.block_half + side, f.block_back + back
    for s in (-1, 1):
        view.seen([(s * x0, 0.0), (s * (x0 + STUD), 0.0), (s * (x0 + STUD), y0 + STUD), (s * x0, y0 + STUD)], "wood", "fine", layer=-2)
    view.seen([(-x0, y0), (x0, y0), (x0, y0 + STUD), (-x0, y0 + STUD)], "wood", "fine", layer=-2)


def _strings(view: View, cell: Cell, geometry: Geometry, units: str, wide: float, back: float) -> None:
    f, d = geometry.frame, geometry.design
    sheet, limits = view.sheet, (cell.left + 2, cell.right - 2)
    foot = view.at(0, -d.hearth.front)[1]
    xs = [-f.half_width - d.hearth.side, -f.half_width, f.half_width, f.half_width + d.hearth.side]
    if d.hearth.front <= 0 or d.hearth.side <= 0:
        xs = [-f.half_width, f.half_width]
    texts = [length(b - a, units) for a, b in zip(xs, xs[1:], strict=False)]
    chain(sheet, [view.at(x, 0)[0] for x in xs], texts, foot - 4.6, limits=limits, feet=[foot - 0.5] * len(xs))
    half = f.back_width / 2
    top = view.at(0, f.block_back + back + STUD)[1]
    chain(sheet, [view.at(x, 0)[0] for x in (-half, half)], [length(f.back_width, units)], top + 3.0, side=1, limits=limits)
    ys = [-d.hearth.front, 0.0, f.depth, f.block_back] if d.hearth.front > 0 else [0.0, f.depth, f.block_back]
    x = view.at(wide, 0)[0] + 6.5
    texts = [length(b - a, units) for a, b in zip(ys, ys[1:], strict=False)]
    chain(sheet, [view.at(0, y)[1] for y in ys], texts, x, along="y", side=1, limits=(cell.bottom + 8, cell.top - 2))


def _air(gap: float | None, units: str) -> str:
    return "air unknown" if gap is None else f"air {length(gap, units)}"
