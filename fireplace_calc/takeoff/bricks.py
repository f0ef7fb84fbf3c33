"""Masonry units with their joints, and the first count of firebrick course by course.

Brick, block and firebrick alike: a piece of so much length, height and depth, laid with a joint. The layout brick by
brick, with its herringbones and its cut list, is another matter; this is the count to order from.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from math import floor, hypot

from fireplace_calc.parts import Geometry
from fireplace_calc.units import CUFT, INCH, to_si

SLIVER = INCH / 8
"""A gap no wider than this is made up in the joints; wider, it takes a cut piece. [m]"""


@dataclass(frozen=True, slots=True)
class Unit:
    """A piece as it is laid: its face is ``length`` by ``height``, its bed is ``depth``; ``joint`` all round. [m]"""

    length: float
    height: float
    depth: float
    joint: float

    @property
    def volume(self) -> float:
        """Of the bare piece. [m3]"""
        return self.length * self.height * self.depth

    @property
    def module(self) -> float:
        """Wall face that one piece fills with its joints. [m2]"""
        return (self.length + self.joint) * (self.height + self.joint)

    @property
    def per_area(self) -> float:
        """Pieces to a square metre of wall one piece thick. [1/m2]"""
        return 1 / self.module

    @property
    def per_volume(self) -> float:
        """Pieces to a cubic metre of solid work, joints on every side. [1/m3]"""
        return 1 / (self.module * (self.depth + self.joint))

    @property
    def joint_volume(self) -> float:
        """Mortar to one piece in a wall one piece thick: bed and head joint, nothing spilt. [m3]"""
        return (self.module - self.length * self.height) * self.depth


@dataclass(frozen=True, slots=True)
class Laid:
    """Units in a wall or a mass: pieces to the cubic metre [1/m3], and what share of the volume they fill [-]."""

    unit: Unit
    wythes: int
    per_volume: float
    share: float


def in_mass(unit: Unit) -> Laid:
    """Units in work many pieces thick."""
    return Laid(unit, 0, unit.per_volume, unit.per_volume * unit.volume)


def in_wall(unit: Unit, thickness: float) -> Laid:
    """Units in a wall of a given thickness: as many wythes as come nearest, the rest mortar; a piece too deep is split.

    >>> round(in_wall(COMMON, 4 * INCH).per_volume * 4 * INCH * (12 * INCH) ** 2, 2)
    6.16
    """
    wythes = max(round((thickness + unit.joint) / (unit.depth + unit.joint)), 1)
    depth = min(unit.depth, (thickness - (wythes - 1) * unit.joint) / wythes)
    count = wythes / (unit.module * thickness)
    return Laid(replace(unit, depth=depth), wythes, count, count * unit.length * unit.height * depth)


COMMON = Unit(8 * INCH, 2.25 * INCH, 3.75 * INCH, 0.5 * INCH)
"""Common brick with 1/2 in joints: NAVEDTRA 14045, chapter 4, table 4-5 (read)."""

WALL_MEASURE = 22.5 / CUFT
"""Brick by old wall measure, a way of pricing and no count: USDA FB 1889, p. 44 (read twice). [1/m3]"""

CORELESS = 0.27 * CUFT / (7.625 * INCH * 7.625 * INCH * 15.625 * INCH)
"""Share of a hollow 8 in block that is concrete: Masonry Magazine June 1989, p. 10, measured (read). [-]"""


def block(geometry: Geometry) -> Unit:
    """The base block of a design."""
    base = geometry.design.base
    return Unit(base.block_length, base.block_height, base.block_width, base.bed)


@lru_cache(maxsize=256)
def firebrick(brick: str, thickness: float, joint: float) -> Laid:
    """How the chosen straight is laid to make a lining of a given thickness.

    Flat (4-1/2 in bed), on edge (2-1/2 in bed, its broad side to the fire) or as headers, whichever comes nearest.

    >>> laid = firebrick("9 x 4-1/2 x 2-1/2 in", 4.5 * INCH, INCH / 8)
    >>> round(laid.unit.height / INCH, 3), round(laid.unit.depth / INCH, 3)
    (2.5, 4.5)
    """
    sides = brick.removesuffix("in").split("x")
    long, wide, thick = (to_si(f"{side.strip()} in", "length", "Firebrick") for side in sides)
    ways = [Unit(long, thick, wide, joint), Unit(long, wide, thick, joint), Unit(wide, thick, long, joint)]

    def miss(unit: Unit) -> float:
        wythes = max(round((thickness + joint) / (unit.depth + joint)), 1)
        return round(abs(wythes * unit.depth + (wythes - 1) * joint - thickness), 6)

    return in_wall(min(ways, key=miss), thickness)


@dataclass(frozen=True, slots=True)
class Tally:
    """Pieces of some courses, and the bare face they show, whole and cut. [m2]"""

    whole: int = 0
    cut: int = 0
    whole_face: float = 0.0
    cut_face: float = 0.0


def added(tallies: Iterable[Tally]) -> Tally:
    """Several tallies as one."""
    tallies = list(tallies)
    return Tally(sum(t.whole for t in tallies), sum(t.cut for t in tallies), sum(t.whole_face for t in tallies),
                 sum(t.cut_face for t in tallies))


def course(length: float, height: float, unit: Unit, first: float) -> Tally:
    """One course laid from one end.

    Parameters
    ----------
    length : float
        Of the course. [m]
    height : float
        Of its pieces; lower than the unit where the course closes a wall. [m]
    unit : Unit
        What is laid.
    first : float
        Length of the first piece: a whole one or, in running bond, a half one every other course. [m]

    Returns
    -------
    Tally
        Whole and cut pieces.

    Examples
    --------
    >>> course(4 * COMMON.length + 3 * COMMON.joint, COMMON.height, COMMON, COMMON.length).whole
    4
    """
    whole = cut = 0
    laid, left = 0.0, length
    if first < unit.length:
        laid = min(first, length)
        cut, left = 1, length - first - unit.joint
    if left > 0:
        whole = floor((left + unit.joint + 1e-9) / (unit.length + unit.joint))
        left -= whole * (unit.length + unit.joint)
        if left > max(unit.joint, SLIVER) or whole + cut == 0:
            cut, laid = cut + 1, laid + left
    if height < unit.height - SLIVER:
        return Tally(0, whole + cut, 0.0, (whole * unit.length + laid) * height)
    return Tally(whole, cut, whole * unit.length * height, laid * height)


def rises(total: float, unit: Unit) -> Iterator[tuple[float, float]]:
    """Courses that make up a height: the middle of each, and how high its pieces are; the last is cut to fit. [m]"""
    at = 0.0
    while total - at > max(unit.joint, SLIVER) or at == 0.0 < total:
        high = min(unit.height, total - at)
        yield at + high / 2, high
        at += unit.height + unit.joint


def face(courses: Iterable[tuple[float, float]], unit: Unit, bond: str) -> Tally:
    """All courses of a face, given the length and the height of each. [m]"""
    half = unit.length if bond == "stack" else (unit.length - unit.joint) / 2
    return added(course(length, height, unit, half if number % 2 else unit.length)
                 for number, (length, height) in enumerate(courses))


Faces = list[tuple[int, list[tuple[float, float]]]]
"""How many faces are alike, and the length and the height of each course of one. [m]"""


def lining_faces(geometry: Geometry, unit: Unit) -> Faces:
    """Courses of the one back and the two sides, read off the level cuts of the firebox. [m]"""
    frame, firebox = geometry.frame, geometry.by_name["firebox lining"].cuts

    def outline(z: float) -> tuple:
        return next(cut for solid in firebox if (cut := solid.cut(z)) is not None)

    bottom, slope = frame.slab_top, hypot(1.0, frame.lean)
    upright = frame.back_bend - bottom
    back = []
    for up, high in rises(upright + (frame.throat - frame.back_bend) * slope, unit):
        _, _, right, left = outline(bottom + (up if up <= upright else upright + (up - upright) / slope))
        back.append((right[0] - left[0], high))
    side = []
    for up, high in rises(frame.throat - bottom, unit):
        _, front, rear, _ = outline(bottom + up)
        side.append((hypot(front[0] - rear[0], rear[1] - front[1]), high))
    return [(1, back), (2, side)]


def floor_face(geometry: Geometry, unit: Unit) -> Faces:
    """Rows of the firebox floor, from the opening to the back. [m]"""
    return [(1, [(2 * geometry.frame.half_at(y), high) for y, high in rises(geometry.frame.depth, unit)])]
