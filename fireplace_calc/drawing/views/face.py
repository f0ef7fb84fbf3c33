"""What of the masonry shows in the face, coursed in the brick that is ordered for it."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.courses.of_brick import lining_gauge
from fireplace_calc.brickwork.seen.coursing_of_face import coursed_face
from fireplace_calc.brickwork.seen.stone_face import stone_joints
from fireplace_calc.drawing.sheets.hatch import bonded, coursing
from fireplace_calc.drawing.sheets.hidden_lines import clipped
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box, overlap
from fireplace_calc.takeoff.facing import jamb_foot, jambs_show

COVERED = "covered"
"""What stands under the finish of the breast: no material of its own is seen."""


def face_joints(
    geometry: Geometry,
    rings: list[np.ndarray],
    holes: list[np.ndarray],
    origin: tuple[float, float],
    scale: float,
) -> Array:
    """Joints of the face, set out from the middle of the hearth.

    Parameters
    ----------
    geometry : Geometry
    rings, holes : list of array, each (n, 2)
        The face, and what stands before it. [mm]
    origin : tuple of float
        The middle of the hearth on the sheet. [mm]
    scale : float
        Millimeters of the sheet to a metre. [mm/m]

    Returns
    -------
    array, (k, 2, 2)
        Segments. [mm]
    """
    surround = geometry.design.surround
    if surround.face == "stone":
        (left, bottom), (right, top) = (
            (np.concatenate(rings).min(axis=0) - origin) / scale,
            (np.concatenate(rings).max(axis=0) - origin) / scale,
        )
        joints = stone_joints(surround.stone_bond, (left, right, bottom, top))
        return clipped(joints * scale + origin, rings, holes)
    bond = coursed_face(geometry)
    if bond.name == "running":
        return coursing(rings, holes, origin, bond.course * scale, bond.module * scale)
    heads = [(at * scale, rows) for at, rows in bond.heads]
    sizes = bond.course * scale, bond.module * scale, bond.repeat
    return bonded(rings, holes, origin, *sizes, heads)


def hood_ring(geometry: Geometry, opening: Polygon) -> Polygon:
    """A metal hood as it is seen from the front; empty where there is none. [m]

    Parameters
    ----------
    geometry : Geometry
    opening : Polygon
        Of the masonry, as it is seen from the front. [m]
    """
    f = geometry.frame
    if f.hood <= 0:
        return ()
    return tuple(overlap(opening, box(-f.half_width, f.half_width, f.clear_top, f.opening_top)))


def open_ring(geometry: Geometry, opening: Polygon) -> Polygon:
    """What stays open under a hood, likewise; all of the opening where there is none. [m]"""
    f = geometry.frame
    if f.hood <= 0:
        return opening
    return box(-f.half_width, f.half_width, f.hearth, f.clear_top)


def hood_level(geometry: Geometry) -> dict[str, float]:
    """Underside of a hood by its name; empty where there is none. [m]"""
    return {"hood": geometry.frame.clear_top} if geometry.frame.hood > 0 else {}


def jamb_ends(geometry: Geometry) -> Iterator[tuple[Polygon, Array]]:
    """Ends of the lining that show in a brick face beside the opening.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Polygon, array (k, 2, 2)
        Outline of one end, and the bed joints across it. [m]
    """
    f, d = geometry.frame, geometry.design
    lining = geometry.facing_fire.material
    if not jambs_show(geometry):
        return
    low = jamb_foot(geometry)
    thick = d.firebox.lining_thickness * (1 + f.side_slope**2) ** 0.5
    courses = (
        lining_gauge(geometry)
        if lining == "firebrick"
        else course_list(geometry).of("firebox lining")
    )
    beds = [course.top for course in courses if course.top < f.spring - 1e-6]
    for side in (-1, 1):
        a, b = sorted((side * f.half_width, side * (f.half_width + thick)))
        rows = [[(a, z), (b, z)] for z in beds if z > low + 1e-6]
        yield box(a, b, low, f.spring), np.array(rows, dtype=float).reshape(-1, 2, 2)


def block_front(geometry: Geometry) -> Array:
    """Joints of the block in the front of a raised hearth, as it is laid.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    array, (k, 2, 2)
        Segments, in the plane of that front. [m]
    """
    laid, low, made = lay_brickwork(geometry).extension_block, 0.0, []
    levels = course_list(geometry).of("hearth extension base")
    for course, (_, _, _, top, *_) in zip(laid.courses, levels, strict=False) if laid else ():
        front = min((ring[0][1] for ring, _ in course.blocks), default=0.0)
        row = sorted((ring[0][0], ring[1][0]) for ring, _ in course.blocks if ring[0][1] == front)
        if row:
            made.append([(row[0][0], top), (row[-1][1], top)])
        made += [[(x, low), (x, top)] for _, x in row[:-1]]
        low = top
    return np.array(made, dtype=float).reshape(-1, 2, 2)


def hearth_front(geometry: Geometry) -> Iterator[tuple[str, Polygon]]:
    """What the front of a raised hearth is made of under its finished layer, from the floor up.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    str, Polygon
        Material, and outline seen from the room. [m]
    """
    f, d = geometry.frame, geometry.design
    half = f.half_width + d.hearth.side
    under = f.extension_top - d.hearth.thickness
    if d.hearth.faced and under > 0.005:
        yield COVERED, box(-half, half, 0.0, under)
        return
    for name in ("hearth extension base", "hearth extension bed"):
        part = geometry.parts_by_name.get(name)
        if part is not None and part.top > 0.005:
            yield part.material, box(-half, half, max(part.bottom, 0.0), part.top)


def seat_fronts(geometry: Geometry) -> Iterator[tuple[str, Polygon]]:
    """The front of a seat beside the hearth, from the floor up: what stands beside a wood store,
    the bed over it, the slab.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    str, Polygon
        Material, and outline seen from the room. [m]
    """
    f, d = geometry.frame, geometry.design
    if not d.seat.drawn:
        return
    slab, bed, base = (geometry.parts_by_name.get(name) for name in SEAT)
    near, half = f.half_width + d.hearth.side, d.seat.niche_width / 2
    for sign, reach, stored in d.seat.stretches():
        ends, middle = [near, near + reach], near + reach / 2
        if d.hearth.faced and not stored and slab is not None:
            left, right = sorted(sign * x for x in ends)
            yield COVERED, box(left, right, 0.0, slab.bottom)
            yield slab.material, box(left, right, slab.bottom, slab.top)
            continue
        if base is not None:
            stops = [near, middle - half, middle + half, near + reach] if stored else ends
            for a, b in zip(stops[::2], stops[1::2], strict=True):
                left, right = sorted((sign * a, sign * b))
                yield COVERED if d.hearth.faced else base.material, box(left, right, 0.0, base.top)
        left, right = sorted(sign * x for x in ends)
        for part in (bed, slab):
            if part is not None:
                covered = d.hearth.faced and part is bed
                tone = COVERED if covered else part.material
                yield tone, box(left, right, part.bottom, part.top)


def draw_face(
    view: View, geometry: Geometry, rings: list[np.ndarray], holes: list[np.ndarray]
) -> None:
    """Courses of the face in the room, whole ones counted from the hearth; plaster has none.

    Parameters
    ----------
    view : View
    geometry : Geometry
    rings, holes : list of array, each (n, 2)
        The face, and what stands before it. [mm]
    """
    if geometry.design.surround.face != "plaster":
        origin = view.at(0.0, geometry.frame.hearth)
        view.sheet.hatches.append(face_joints(geometry, rings, holes, origin, view.scale))


def draw_front(view: View, geometry: Geometry, under: str, ring: Polygon) -> None:
    """A front of hearth or seat, in its material or under the finish of the breast.

    Parameters
    ----------
    view : View
    geometry : Geometry
    under : str
        Its material, or ``COVERED``.
    ring : Polygon
        [m]
    """
    view.seen(ring, "face" if under == COVERED else under, "seen", layer=1)
    if under == COVERED:
        draw_face(view, geometry, [view.ring(ring)], [])
