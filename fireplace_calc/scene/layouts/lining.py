"""What the fire sees: firebrick as it is laid, or refractory with its joints."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil, hypot

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork import Layout, lay_brickwork
from fireplace_calc.brickwork.courses.of_brick import lining_gauge
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.brickwork.work import lining_bricks
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.records import FaceLayout, Point
from fireplace_calc.takeoff.goods import LONGEST

SECTION_JOINT = INCH / 8
"""Between refractory sections, as drawn. [m]"""
GENERAL = 1.2
"""Laid of what no layout of its own says. [m]"""
FRONT: Point = (0.0, -1.0, 0.0)
UP: Point = (0.0, 0.0, 1.0)


def lining_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """Floor, back, raked back and sides, and the ends of the lining beside the opening.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
    """
    work = lay_brickwork(geometry)
    for layout in work.layouts:
        yield from _brick_by_brick(geometry, layout)
    if not work.lining:
        yield from _sections(geometry)
    course = lining_bricks(geometry).unit
    row = course.height + course.joint
    rings = [
        _box(k * (course.length + course.joint) + j * row, j * row, course.length, course.height)
        for j in range(6)
        for k in range(4)
    ]
    wide = 4 * (course.length + course.joint)
    yield FaceLayout("firebrick", (0.0, 0.0, geometry.frame.slab_top), wide, 6 * row, tuple(rings))


def _brick_by_brick(geometry: Geometry, layout: Layout) -> Iterator[FaceLayout]:
    """One face of firebrick where it stands, as it is counted; the ends beside the opening look the
    same way as the back and go with it.
    """
    rings = [np.array(piece.ring) for piece in layout.pieces]
    name = layout.face.name
    if name == "back":
        rings += _ends_beside(geometry)
    if not rings:
        return
    corners = np.concatenate(rings)
    low, size = corners.min(axis=0), np.ptp(corners, axis=0)
    for origin, along, up, normal in _planes(geometry, name, float(low[0]), float(low[1])):
        yield FaceLayout(
            *("firebrick", origin, float(size[0]), float(size[1])),
            tuple(ring - low for ring in rings),
            along=along,
            up=up,
            normal=normal,
            repeats=False,
        )


def _planes(
    geometry: Geometry, name: str, left: float, low: float
) -> Iterator[tuple[Point, Point, Point, Point]]:
    """Where a face's lower left corner stands, the way it is laid along and up, and where it looks.
    A side's first number runs back along the splay.
    """
    f = geometry.frame
    if name == "floor":
        # The floor is drawn from the front of the lining on.
        yield (left, low, f.hearth), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), UP
    elif name == "back":
        yield (left, f.depth, low), (1.0, 0.0, 0.0), UP, FRONT
    elif name == "raked back":
        long = hypot(1.0, f.lean)
        at = low / long
        up, normal = (0.0, -f.lean / long, 1 / long), (0.0, -1 / long, -f.lean / long)
        yield (left, f.depth - f.lean * at, f.back_bend + at), (1.0, 0.0, 0.0), up, normal
    else:
        long = hypot(1.0, f.side_slope)
        for side in (-1.0, 1.0):
            along = (-side * f.side_slope / long, 1 / long, 0.0)
            # The lining begins at the opening, or behind a facing; there the side does.
            x, y = side * f.half_width + along[0] * left, f.lining_front + along[1] * left
            yield (x, y, low), along, UP, (-side / long, -f.side_slope / long, 0.0)


def _ends_beside(geometry: Geometry) -> list[Array]:
    """Ends of the bricks of the sides, course by course, beside the opening."""
    f, unit = geometry.frame, lining_bricks(geometry).unit
    thick = geometry.design.firebox.lining_thickness * hypot(1.0, f.side_slope)
    return [
        _box(at, course.bottom, thick - unit.joint, course.height)
        for course in lining_gauge(geometry)
        for at in (f.half_width + unit.joint / 2, -f.half_width - thick + unit.joint / 2)
    ]


def _sections(geometry: Geometry) -> Iterator[FaceLayout]:
    """Refractory, joint by joint as on the elevation; no section is longer than one that is handy.

    A set's pieces stand for themselves: only the beds are told here.
    """
    f = geometry.frame
    levels = [f.hearth, *section_joints(geometry), f.throat]
    alone = geometry.design.piece_set is not None
    back, thick = f.half_at(f.depth), geometry.design.firebox.lining_thickness
    edge = f.half_width + thick * hypot(1.0, f.side_slope)
    inner = [] if alone else _shared(-back, back)
    across = [-edge, *inner, edge] if inner else [-edge, edge]
    side = hypot(1.0, f.side_slope) * f.depth
    yield _bands(levels, across, (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), FRONT)
    for origin, along, _, normal in _planes(geometry, "side", 0.0, 0.0):
        yield _bands(levels, [0.0, side] if alone else _shared(0.0, side), origin, along, normal)
    if not alone:
        floor_levels = _shared(0.0, f.depth)
        wide = _shared(-f.half_width, f.half_width)
        yield _bands(floor_levels, wide, (0.0, f.lining_front, f.hearth), (1.0, 0.0, 0.0), UP)
    yield _bands(levels, [-GENERAL, GENERAL], (0.0, 0.0, 0.0), None, None)


def _shared(low: float, high: float) -> list[float]:
    """A length in as many equal ones as the list counts, by their ends. [m]"""
    many = max(ceil((high - low) / LONGEST - ROUNDING), 1)
    return [low + (high - low) * k / many for k in range(many + 1)]


def _bands(
    levels: Sequence[float],
    across: Sequence[float],
    origin: Point,
    along: Point | None,
    normal: Point | None,
) -> FaceLayout:
    """Rectangles between joints, counted from the first of each."""
    left, low, half = across[0], levels[0], SECTION_JOINT / 2
    rings = [
        _box(a - left + half, b - low + half, c - a - 2 * half, d - b - 2 * half)
        for b, d in pairwise(levels)
        for a, c in pairwise(across)
        if d - b > 2 * SECTION_JOINT and c - a > 2 * SECTION_JOINT
    ]
    flat = normal == UP
    x, y, z = origin
    if along is not None:
        x, y = x + along[0] * left, y + along[1] * left + (low if flat else 0.0)
    return FaceLayout(
        *("refractory", (x, y, z if flat else z + low)),
        *(across[-1] - left, levels[-1] - low),
        tuple(rings),
        along=along,
        up=None if along is None else (0.0, 1.0, 0.0) if flat else UP,
        normal=normal,
        repeats=along is None,
    )


def _box(left: float, low: float, wide: float, high: float) -> Array:
    right, top = left + wide, low + high
    return np.array([(left, low), (right, low), (right, top), (left, top)])
