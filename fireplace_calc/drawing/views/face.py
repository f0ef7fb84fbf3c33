"""What of the masonry shows in the face, coursed in the brick that is ordered for it."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.arch_ring import laid_arch
from fireplace_calc.brickwork.face_bond import FaceBond, face_bond, lapped
from fireplace_calc.brickwork.unit import common_brick, facing_brick
from fireplace_calc.brickwork.work import lining_bricks
from fireplace_calc.drawing.sheets.hatch import bonded, coursing
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box, overlap
from fireplace_calc.takeoff.facing import jamb_foot, jambs_show

STONE, TILE = (8 * INCH, 15 * INCH), (6 * INCH, 6 * INCH)
"""Height and length of face stones and tiles, as drawn. [m]"""


def coursed_face(geometry: Geometry) -> FaceBond:
    """How the face is coursed: brick in its bond, stone and tile as they are drawn.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    FaceBond
        [m]
    """
    d = geometry.design
    if d.surround.face in ("stone", "tile"):
        return lapped(*(STONE if d.surround.face == "stone" else TILE))
    return face_bond(facing_brick(d), d.brick.facing_bond)


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
    bond = coursed_face(geometry)
    if bond.name == "running":
        return coursing(rings, holes, origin, bond.course * scale, bond.module * scale)
    heads = [(at * scale, rows) for at, rows in bond.heads]
    sizes = bond.course * scale, bond.module * scale, bond.repeat
    return bonded(rings, holes, origin, *sizes, heads)


def lining_course(geometry: Geometry) -> float:
    """Height of a section, or of a course of common brick, where no firebrick is laid. [m]"""
    d = geometry.design
    return d.firebox.section_height if d.method == "modular" else common_brick(d).course


def section_joints(geometry: Geometry) -> list[float]:
    """Level of every joint between refractory sections over the hearth: the beds of a set, or one
    a section. [m]
    """
    f = geometry.frame
    if f.beds:
        return [high for _, high in f.beds if f.hearth < high < f.throat - CONTACT_GAP]
    height = lining_course(geometry)
    return [float(z) for z in np.arange(f.hearth + height, f.throat, height)]


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


def voussoirs(geometry: Geometry, inner: Array, outer: Array) -> Iterator[Array]:
    """Joints of a brick arch: between the bricks of each ring, and between the rings.

    Parameters
    ----------
    geometry : Geometry
        With a brick arch; any other yields nothing.
    inner, outer : array, each (n, 2)
        Soffit and back of the ring, from one end to the other. [mm]

    Yields
    ------
    array, (k, 2, 2)
        Segments. [mm]
    """
    laid = laid_arch(geometry)
    steps = np.arange(len(inner))
    for ring in laid.rings if laid else ():
        at = np.linspace(0, len(inner) - 1, ring.round + 1)
        low, high = (inner + share * (outer - inner) for share in (ring.inner, ring.outer))
        yield np.stack(
            [np.stack([np.interp(at, steps, c[:, k]) for k in (0, 1)], 1) for c in (low, high)], 1
        )
        if ring.outer < 1:
            yield np.stack([high[:-1], high[1:]], 1)


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
    course = lining_bricks(geometry).unit.course if lining == "firebrick" else 0.0
    course = course or d.firebox.section_height + (d.firebox.joint or 0.0)
    beds = np.arange(f.slab_top + course, f.spring - 1e-6, course)
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
    for course, top in zip(laid.courses, laid.coursing.tops, strict=True) if laid else ():
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
    for name in ("hearth extension base", "hearth extension bed"):
        part = geometry.by_name.get(name)
        if part is not None and part.top > 0.005:
            yield part.material, box(-half, half, max(part.bottom, 0.0), part.top)
