"""Front elevation: what the room sees."""

from __future__ import annotations

from math import asin, cos, sin

import numpy as np

from fireplace_calc.brickwork.arch_ring import voussoirs
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.drawing.annotation.beside_front import front_foot, front_levels, front_strings
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.room.for_scale import person
from fireplace_calc.drawing.sheets.hatch import lines_in
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import clip_top
from fireplace_calc.drawing.views.face import (
    block_front,
    draw_face,
    draw_front,
    hearth_front,
    hood_ring,
    jamb_ends,
    open_ring,
    seat_fronts,
)
from fireplace_calc.drawing.views.laid_bricks import front_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    fit,
    level,
    roomy,
    title,
)
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.mantel.on_face import mantel_parts, trim_boxes
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box, overlap
from fireplace_calc.takeoff.facing import head_shows

ARCH_STEPS = 24
ALONE = 1e5
"""So far apart that there is one line. [mm]"""


def front(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the front elevation into a cell of a sheet; the window comes back for whoever marks
    something on it.
    """
    f, d = geometry.frame, geometry.design
    ceiling = max(d.house.ceiling, f.opening_top + 0.3)
    top = max(ceiling, *(z for _, z in lintel_ring(geometry))) if head_shows(geometry) else ceiling
    wide = front_half(geometry) + 0.08
    marks = (
        level_marks(front_levels(geometry, ceiling), lambda z: level(z, units))
        if roomy(cell)
        else []
    )
    right = level_room(marks, False) + 9.0 if marks else 3.0
    view, denominator = fit(
        sheet,
        cell,
        (-wide, front_foot(geometry) - 0.02, wide + 0.72, top),
        (20, 22, right, 3),
        scales,
    )
    view.path([(-wide - 0.05, 0.0), (wide + 0.72, 0.0)], "ground")
    view.path([(-wide - 0.05, ceiling), (wide + 0.72, ceiling)], "cut")
    draw_front_masonry(view, geometry, ceiling)
    person(view, wide + 0.36, 0.0)
    front_strings(view, cell, geometry, units, wide)
    edge = view.at(wide + 0.72, 0)[0]
    levels(
        sheet,
        [(view.at(0, z)[1], value, name) for z, value, name in marks],
        [edge + 1.0] * len(marks),
        edge + 6.5,
        limits=(cell.bottom + 10, cell.top - 3),
    )
    title(sheet, cell, "Front elevation", name_scale(denominator) if name_scale else "")
    return view


def front_half(geometry: Geometry) -> float:
    """How far the front reaches from the center line: breast, hearth, a seat or trim beside it.
    [m]
    """
    f, d = geometry.frame, geometry.design
    beside = f.half_width + d.hearth.side + max(d.seat.left, d.seat.right)
    return max(f.block_half, beside, *(right for _, (_, right, _, _) in trim_boxes(geometry)))


def draw_front_masonry(view: View, geometry: Geometry, top: float) -> None:
    """Draw breast, firebox, lintel, hearth and mantel as the room sees them.

    Parameters
    ----------
    view : View
    geometry : Geometry
    top : float
        Level at which the drawing ends. [m]
    """
    _breast(view, geometry, top)
    _firebox(view, geometry)
    _lintel(view, geometry)
    _hearth(view, geometry)


def breast_ring(geometry: Geometry, ceiling: float) -> Polygon:
    """Breast and stack, up to the ceiling; a flue led aside takes its stack along. [m]"""
    f = geometry.frame
    tops = [z for z in (f.offset_bottom, f.offset_top) if f.shoulder_top < z < f.crown_bottom]
    rising = [f.shoulder_top, *tops, f.crown_bottom]
    return clip_top(
        (
            (-f.block_half, 0.0),
            (f.block_half, 0.0),
            (f.block_half, f.block_top),
            *((f.shift_at(z) + f.stack_middle + f.stack_half, z) for z in rising),
            *((f.shift_at(z) + f.stack_middle - f.stack_half, z) for z in rising[::-1]),
            (-f.block_half, f.block_top),
        ),
        ceiling,
    )


def opening_ring(geometry: Geometry) -> Polygon:
    """Clear opening as seen from the front. [m]"""
    f, w = geometry.frame, geometry.frame.half_width
    if f.spring >= f.opening_top:
        return ((-w, f.hearth), (w, f.hearth), (w, f.opening_top), (-w, f.opening_top))
    return ((-w, f.hearth), (w, f.hearth), *_arc(geometry))


def _arc(geometry: Geometry, grow: float = 0.0) -> Polygon:
    """Intrados of a segmental head from right to left; grown, its extrados. [m]"""
    f = geometry.frame
    w, rise = f.half_width, f.opening_top - f.spring
    radius = (w * w + rise * rise) / (2 * rise)
    half = asin(min(w / radius, 1.0))
    centre = f.opening_top - radius
    return tuple(
        ((radius + grow) * sin(a), centre + (radius + grow) * cos(a))
        for a in np.linspace(half, -half, ARCH_STEPS + 1)
    )


def lintel_ring(geometry: Geometry) -> Polygon:
    """What carries the wall over the opening, as seen from the front. [m]"""
    f, lintel = geometry.frame, geometry.design.lintel
    half, top = f.half_width + (lintel.bearing or 0.0), f.opening_top + lintel.height
    if f.spring >= f.opening_top:
        return box(-half, half, f.opening_top, top)
    if geometry.design.piece_set is None:
        return (*_arc(geometry), *reversed(_arc(geometry, lintel.height)))
    return (
        (-half, f.spring),
        *reversed(_arc(geometry)),
        (half, f.spring),
        (half, top),
        (-half, top),
    )


def _breast(view: View, geometry: Geometry, ceiling: float) -> None:
    f, d = geometry.frame, geometry.design
    ring = view.ring(breast_ring(geometry, ceiling))
    view.sheet.fill([ring], "face", layer=-5)
    view.sheet.line(ring, "seen", closed=True)
    holes = [opening_ring(geometry), *(ring for _, ring in _trim(geometry))]
    if head_shows(geometry):
        holes.append(lintel_ring(geometry))
    for end, beds in jamb_ends(geometry):
        holes.append(end)
        material = geometry.facing_fire.material
        view.seen(end, material, "seen", layer=-3)
        view.sheet.hatches.append(beds * view.scale + (view.x0, view.y0))
    if d.hearth.front > 0 and f.extension_top > 0:
        half = f.half_width + d.hearth.side
        holes.append(box(-half, half, -0.1, f.extension_top))
    faced = view.ring(clip_top(breast_ring(geometry, ceiling), face_end(geometry, ceiling)))
    draw_face(view, geometry, [faced], [view.ring(hole) for hole in holes])


def _firebox(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    opening = opening_ring(geometry)
    ring, bare = view.ring(opening), view.ring(open_ring(geometry, opening))
    view.sheet.fill([ring], "soot", layer=-3)
    low, top, bend = f.half_at(f.depth), f.opening_top, min(f.back_bend, f.opening_top)
    high = f.half_at(f.back_at(top))
    back = overlap(
        ((-low, f.hearth), (low, f.hearth), (low, bend), (high, top), (-high, top), (-low, bend)),
        opening,
    )
    lining = geometry.facing_fire.material
    fired = lining == "firebrick" or d.method == "laid"
    tone = "steel" if lining == "steel" else "firebrick" if fired else "refractory"
    view.seen(back, tone, "fine", layer=-2)
    if bend < top:
        half = low
        if f.spring < bend:
            rising = np.array(_arc(geometry)[: ARCH_STEPS // 2 + 1])
            half = min(low, float(np.interp(bend, rising[:, 1], rising[:, 0])))
        view.path([(-half, bend), (half, bend)], "fine")
    if lining == "firebrick":
        front_lines(view, geometry, bare)
    elif lining != "steel":
        levels = (view.at(0, z)[1] for z in section_joints(geometry))
        view.sheet.hatches += [lines_in([bare], 0.0, ALONE, level) for level in levels]
    view.sheet.line(ring, "cut", closed=True)
    if hood := hood_ring(geometry, opening):
        view.seen(hood, "metal", "seen", layer=1)


def _lintel(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    arched, shape = f.spring < f.opening_top, lintel_ring(geometry)
    if not head_shows(geometry):
        view.path([*shape, shape[0]], "hidden")
        return
    head = geometry.parts_by_name.get("arch") or geometry.parts_by_name["lintel"]
    view.seen(shape, head.material, "seen", layer=-1)
    if arched and geometry.design.piece_set is None:
        curves = (view.ring(_arc(geometry, grow)) for grow in (0.0, d.lintel.height))
        view.sheet.hatches += voussoirs(geometry, *curves)


def _hearth(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    if d.hearth.front > 0:
        half, bottom = f.half_width + d.hearth.side, f.extension_top - d.hearth.thickness
        material = geometry.parts_by_name["hearth extension"].material
        view.seen(box(-half, half, bottom, f.extension_top), material, "seen", layer=1)
        for under, ring in hearth_front(geometry):
            draw_front(view, geometry, under, ring)
            if under == "block":
                view.sheet.hatches.append(block_front(geometry) * view.scale + view.at(0, 0))
    for under, ring in seat_fronts(geometry):
        draw_front(view, geometry, under, ring)
    for tone, ring in _trim(geometry):
        view.seen(ring, tone, "seen", layer=2)


def _trim(geometry: Geometry) -> list[tuple[str, Polygon]]:
    """Every piece of mantel and trim as it is seen from the front, with its tone. [m]"""
    return [(part.tone, run.front) for part in mantel_parts(geometry) for run in part.group.runs]
