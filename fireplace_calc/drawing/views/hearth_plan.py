"""Plan at the hearth: what is set out on the slab."""

from __future__ import annotations

from itertools import pairwise

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.sheets.dimensions import chain, notes, room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import cut_parts
from fireplace_calc.drawing.views.laid_bricks import floor_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    fit,
    key,
    length,
    lining_word,
    roomy,
    title,
)
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.geometry.solids import level_cuts

CUT = ("firebox lining", "firebox walls", "masonry round the set")
"""Parts that the plan cuts."""
PLAN_WORDS = 225.0
"""Width from which words and key stand beside the plan: it is wide itself. [mm]"""
STUD = 3.5 * INCH
"""Depth of the framing drawn round the masonry. [m]"""


def plan(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the plan into a cell of a sheet; the room is below."""
    f, d = geometry.frame, geometry.design
    gap_side, gap_back = d.clearance.side or 0.0, d.clearance.back or 0.0
    talk = roomy(cell, PLAN_WORDS)
    words = _words(geometry, units, gap_side, gap_back, talk)
    wide = (
        max(
            f.block_half + gap_side + STUD,
            f.half_width + d.hearth.side + max(d.seat.left, d.seat.right),
        )
        + 0.02
    )
    view, denominator = fit(
        sheet,
        cell,
        (-wide, -d.hearth.front - 0.02, wide, f.block_back + gap_back + STUD + 0.02),
        (room_for(text for _, text in words) + 6.0, 19, 57 if talk else 17, 11),
        scales,
    )
    _floor(view, geometry)
    z = f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))
    cut_parts(view, _walls(geometry, z))
    _second_flue(view, geometry, z)
    _framing(view, geometry, gap_side, gap_back, wide)
    _strings(view, cell, geometry, units, wide, gap_back)
    tips = sorted(((view.at(*place), text) for place, text in words), key=lambda tip: tip[0][1])
    notes(sheet, tips, view.at(-wide, 0)[0] - 3.0, side=-1, limits=(cell.bottom + 10, cell.top - 3))
    if talk:
        key(sheet, view.at(wide, 0)[0] + 14.0, cell.bottom + 12, cell.right - 3)
    title(sheet, cell, "Plan at the hearth", name_scale(denominator) if name_scale else "")
    return view


def _walls(geometry: Geometry, z: float) -> list[tuple[Part, list[Polygon]]]:
    """Lining, walls and what stands round a set, each as rings in plan. [m]"""
    cut = [p for p in geometry.parts if p.name in CUT]
    if geometry.design.piece_set is not None:
        return [(part, plan_rings(part, z)) for part in cut]
    plans = [(part, part.plan(z)) for part in cut]
    return [(part, [_notched(adds[0], holes[0])]) for part, (adds, holes) in plans if adds]


def _notched(outside: Polygon, inside: Polygon) -> Polygon:
    """One ring of a block and a niche in its front; both run front left, front right, back right,
    back left.
    """
    a, b = outside, inside
    return (b[1], a[1], a[2], a[3], a[0], b[0], b[3], b[2])


def _second_flue(view: View, geometry: Geometry, z: float) -> None:
    """A flue that passes the firebox on its way up: its gap, its casing, its liner."""
    for name in ("gap round second liner", "second flue casing", "second flue liner"):
        if (part := geometry.by_name.get(name)) is None:
            continue
        adds, holes = part.plan(z)
        for outside, inside in zip(adds, holes, strict=True):
            if part.material == "air":
                view.seen(outside, "paper", "cut")
                wall = view.sheet.hatched.get(geometry.by_name["firebox walls"].material)
                if wall is not None:
                    wall.append(view.ring(outside))  # a hole in its hatching
            else:
                view.cut([outside, inside], part.material, "seen")


def _words(
    geometry: Geometry, units: str, side: float, back: float, talk: bool
) -> list[tuple[tuple[float, float], str]]:
    """Air spaces always; with room to talk, what everything is. [m]"""
    f, d = geometry.frame, geometry.design
    words = [
        ((-f.block_half - side / 2, f.block_back * 0.8), _air(d.clearance.side, units)),
        ((-f.half_at(f.depth) * 0.6, f.block_back + back / 2), _air(d.clearance.back, units)),
    ]
    if not talk:
        return words
    if (out := d.breast.stands_out) is not None:
        said = f"face {length(out, units)} out of the wall" if out else "face flush with the wall"
        words.append(((-f.block_half - side - STUD, min(out, f.block_back + back)), said))
    if off := d.breast.off_center:
        to = "right" if off > 0 else "left"
        said = f"center {length(abs(off), units)} {to} of the wall's middle"
        words.append(((0.0, f.block_back + back + STUD / 2), said))
    lining = d.firebox.lining_thickness
    words += [
        ((-f.block_half - side - STUD / 2, f.block_back + back), "framing"),
        (
            (-(f.block_half + f.half_at(f.depth / 2)) / 2 - lining / 2, f.depth * 0.55),
            "firebox wall",
        ),
        ((-f.half_at(f.depth * 0.42) - lining / 2, f.depth * 0.42), lining_word(geometry)),
        ((-f.half_at(f.throat_back) * 0.6, (f.throat_front + f.throat_back) / 2), "throat above"),
        ((-f.half_at(0.0) * 0.8, f.depth * 0.1), _floor_word(geometry)),
    ]
    if d.hearth.front > 0:
        thick, of = length(d.hearth.thickness, units), geometry.by_name["hearth extension"].material
        words.append(
            ((-f.half_width * 0.9, -d.hearth.front * 0.5), f"hearth extension, {thick} {of}")
        )
    for sign, reach, stored in d.seat.stretches()[:1]:
        at = sign * (f.half_width + d.hearth.side + reach / 2)
        top = length(f.extension_top if d.seat.height is None else d.seat.height, units)
        said = f"seat, {top} high" + (", wood store under it" if stored else "")
        words.append(((at, -d.hearth.front * 0.75), said))
    return words


def _floor_word(geometry: Geometry) -> str:
    """What the fire is laid on, as it is called in plan."""
    return {"base plates": "base plate"}.get(geometry.under_fire.name, "firebox floor")


def _floor(view: View, geometry: Geometry) -> None:
    f, d, paving = geometry.frame, geometry.design, geometry.under_fire
    rings = paving.plan(f.hearth)[0]
    if paving.name != "firebox floor":  # base plates reach under the walls
        a, b = f.half_width, f.half_at(f.depth)
        right = ((a, 0.0), (a, f.lining_front), (b, f.depth))
        rings = [(*right, *((-x, y) for x, y in right[::-1]))]
    view.sheet.fill([view.ring(ring) for ring in rings], paving.material, layer=-2)
    floor_lines(view, geometry)
    for y in (f.throat_front, f.throat_back):
        half = f.half_at(y) if d.piece_set is None else f.throat_width / 2
        view.path([(-half, y), (half, y)], "hidden")
    if d.hearth.front > 0:
        half = f.half_width + d.hearth.side
        view.seen(
            box(-half, half, -d.hearth.front, 0.0),
            geometry.by_name["hearth extension"].material,
            "seen",
            layer=-2,
        )
        _seat(view, geometry)
    else:
        view.path([(-f.half_width, 0.0), (f.half_width, 0.0)], "seen")


def _seat(view: View, geometry: Geometry) -> None:
    """A seat beside the hearth from above; what stands under it is dashed."""
    for name, weight in zip(SEAT[::2], ("seen", "hidden"), strict=True):
        if (part := geometry.by_name.get(name)) is None:
            continue
        for solid in part.adds if weight == "seen" else part.cuts:
            (ring,) = level_cuts(solid, (solid.bottom + solid.top) / 2)
            if weight == "seen":
                view.seen(ring, part.material, "seen", layer=-2)
            else:
                view.path([*ring, ring[0]], "hidden")


def _framing(view: View, geometry: Geometry, side: float, back: float, wide: float) -> None:
    """Framed wall beside and behind, cut, each its air space away; beside the masonry it begins at
    the face of the wall that the breast stands out of.
    """
    f, out = geometry.frame, geometry.design.breast.stands_out
    x0, y0 = f.block_half + side, f.block_back + back
    wall = out or 0.0
    pieces = [box(-x0 - STUD, x0 + STUD, y0, y0 + STUD)]
    if wall < y0 - ROUNDING:
        pieces = [
            box(-x0 - STUD, -x0, wall, y0 + STUD),
            box(x0, x0 + STUD, wall, y0 + STUD),
            box(-x0, x0, y0, y0 + STUD),
        ]
    for piece in pieces:
        view.cut([piece], "timber", "seen")
    if out is not None:
        for x in (-x0, x0):
            view.path([(x, wall), (wide if x > 0 else -wide, wall)], "cut")


def _strings(
    view: View, cell: Cell, geometry: Geometry, units: str, wide: float, back: float
) -> None:
    f, d = geometry.frame, geometry.design
    sheet, limits = view.sheet, (cell.left + 2, cell.right - 2)
    foot = view.at(0, -d.hearth.front)[1]
    xs = [-f.half_width - d.hearth.side, -f.half_width, f.half_width, f.half_width + d.hearth.side]
    if d.hearth.front <= 0 or d.hearth.side <= 0:
        xs = [-f.half_width, f.half_width]
    for sign, reach, _ in d.seat.stretches():
        xs.append(sign * (f.half_width + d.hearth.side + reach))
    xs.sort()
    texts = [length(b - a, units) for a, b in pairwise(xs)]
    chain(
        sheet,
        [view.at(x, 0)[0] for x in xs],
        texts,
        foot - 4.6,
        limits=limits,
        feet=[foot - 0.5] * len(xs),
    )
    half = f.back_width / 2
    top = view.at(0, f.block_back + back + STUD)[1]
    chain(
        sheet,
        [view.at(x, 0)[0] for x in (-half, half)],
        [length(f.back_width, units)],
        top + 3.0,
        side=1,
        limits=limits,
        name="back",
    )
    ys = (
        [-d.hearth.front, 0.0, f.depth, f.block_back]
        if d.hearth.front > 0
        else [0.0, f.depth, f.block_back]
    )
    feet = [view.at(wide if y >= 0 else f.half_width + d.hearth.side, 0)[0] for y in ys]
    texts = [length(b - a, units) for a, b in pairwise(ys)]
    chain(
        sheet,
        [view.at(0, y)[1] for y in ys],
        texts,
        view.at(wide, 0)[0] + 6.5,
        along="y",
        side=1,
        limits=(cell.bottom + 8, cell.top - 2),
        feet=feet,
    )


def _air(gap: float | None, units: str) -> str:
    return "air unknown" if gap is None else f"air {length(gap, units)}"
