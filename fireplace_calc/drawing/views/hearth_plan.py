"""Plan at the hearth: what is set out on the slab."""

from __future__ import annotations

from math import sqrt

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.drawing.annotation.beside_plan import STUD, plan_strings, plan_words
from fireplace_calc.drawing.sheets.dimensions import notes, room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import cut_parts
from fireplace_calc.drawing.views.laid_bricks import floor_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    fit,
    key,
    roomy,
    title,
)
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.in_room.cut_corner import CutCorner
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Polygon, box, overlap
from fireplace_calc.geometry.solids import level_cuts
from fireplace_calc.proportion import corner_of_room

CUT = ("firebox lining", "firebox walls", "masonry round the set")
"""Parts that the plan cuts."""
PLAN_WORDS = 225.0
"""Width from which words and key stand beside the plan: it is wide itself. [mm]"""


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
    words = plan_words(geometry, units, gap_side, gap_back, talk)
    wide = plan_half(geometry)
    view, denominator = fit(
        sheet,
        cell,
        (-wide, -d.hearth.front - 0.02, wide, f.block_back + gap_back + STUD + 0.02),
        (room_for(text for _, text in words) + 6.0, 19, 57 if talk else 17, 11),
        scales,
    )
    draw_hearth_plan(view, geometry, plan_cut(geometry))
    plan_strings(view, cell, geometry, units, wide, gap_back)
    tips = sorted(((view.at(*place), text) for place, text in words), key=lambda tip: tip[0][1])
    notes(sheet, tips, view.at(-wide, 0)[0] - 3.0, side=-1, limits=(cell.bottom + 10, cell.top - 3))
    if talk:
        key(sheet, view.at(wide, 0)[0] + 14.0, cell.bottom + 12, cell.right - 3)
    title(sheet, cell, "Plan at the hearth", name_scale(denominator) if name_scale else "")
    return view


def plan_half(geometry: Geometry) -> float:
    """How far the plan reaches from the center line: framing, hearth, or a seat beside it. [m]"""
    f, d = geometry.frame, geometry.design
    hearth = f.half_width + d.hearth.side + max(d.seat.left, d.seat.right)
    return max(f.block_half + (d.clearance.side or 0.0) + STUD, hearth) + 0.02


def plan_cut(geometry: Geometry) -> float:
    """Level at which the plan is cut, a little over the hearth. [m]"""
    f = geometry.frame
    return f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))


def draw_hearth_plan(view: View, geometry: Geometry, z: float) -> None:
    """Draw hearth, firebox, walls and the framing round them, cut at a level.

    Parameters
    ----------
    view : View
    geometry : Geometry
    z : float
        [m]
    """
    gap = geometry.design.clearance
    _floor(view, geometry)
    cut_parts(view, _walls(geometry, z))
    _second_flue(view, geometry, z)
    _framing(view, geometry, gap.side or 0.0, gap.back or 0.0, plan_half(geometry))


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
    if geometry.frame.second is None:
        return
    named = geometry.by_name
    for name in ("gap round second liner", "second flue casing", "second flue liner"):
        if (part := named.get(name)) is None:
            continue
        adds, holes = part.plan(z)
        for outside, inside in zip(adds, holes, strict=True):
            if part.material == "air":
                view.seen(outside, "paper", "cut")
                wall = view.sheet.hatched.get(geometry.parts_by_name["firebox walls"].material)
                if wall is not None:
                    wall.append(view.ring(outside))  # a hole in its hatching
            else:
                view.cut([outside, inside], part.material, "seen")


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
            geometry.parts_by_name["hearth extension"].material,
            "seen",
            layer=-2,
        )
        _seat(view, geometry)
    else:
        view.path([(-f.half_width, 0.0), (f.half_width, 0.0)], "seen")


def _seat(view: View, geometry: Geometry) -> None:
    """A seat beside the hearth from above; what stands under it is dashed."""
    for name, weight in zip(SEAT[::2], ("seen", "hidden"), strict=True):
        if (part := geometry.parts_by_name.get(name)) is None:
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
    if (corner := corner_of_room(geometry)) is not None:
        _corner_walls(view, corner, x0, box(-wide, wide, wall, y0 + STUD))
        return
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


def _corner_walls(view: View, corner: CutCorner, beside: float, zone: Polygon) -> None:
    """The wall across a corner from its masonry out, and of the room's walls behind it what comes
    into the plan; all of it framed.

    Parameters
    ----------
    view : View
    corner : CutCorner
    beside : float
        From the center line to the framing beside the masonry. [m]
    zone : Polygon
        What the plan shows. [m]
    """
    (x, y), wall, thick = corner.corner, corner.wall, sqrt(2) * STUD
    for way, end in ((-1, corner.left), (1, corner.right)):
        across = [
            (way * beside, wall),
            (end, wall),
            (end, wall + STUD),
            (way * beside, wall + STUD),
        ]
        slanting = [(end, wall), (end + way * thick, wall), (x, y + thick), (x, y)]
        for ring in (across, slanting) if way * end > beside + ROUNDING else (slanting,):
            shown = overlap(ring, zone)
            if len(shown) > 2:
                view.cut([tuple(shown)], "timber", "seen")
