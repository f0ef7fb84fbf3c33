"""Masonry units with their joints: brick, block and firebrick alike are so long, so high, so deep,
and laid with a joint.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import pick
from fireplace_calc.base.tables.bricks import brick_sizes
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import is_assumed
from fireplace_calc.geometry.parts import Geometry

LEAST_CUT = INCH / 8
"""A gap no wider than this is made up in the joints; wider, it takes a cut piece: our own habit.
[m]
"""
LEAST_CLOSER = 3 * INCH
"""No block is cut shorter or narrower: it and the one beside it are cut to halves of what they fill
together: our own habit. [m]
"""


@dataclass(frozen=True, slots=True)
class Unit:
    """A piece as it is laid: its face is ``length`` by ``height``, its bed is ``depth``; ``joint``
    all round, unless the ``bed`` differs. [m]
    """

    length: float
    height: float
    depth: float
    joint: float
    bed: float | None = None

    @property
    def course(self) -> float:
        """Height of a course with its bed. [m]"""
        return self.height + (self.joint if self.bed is None else self.bed)

    @property
    def volume(self) -> float:
        """Of the bare piece. [m3]"""
        return self.length * self.height * self.depth

    @property
    def module(self) -> float:
        """Wall face that one piece fills with its joints. [m2]"""
        return (self.length + self.joint) * self.course

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
class UnitMasonry:
    """Units as they are laid in a wall or a mass.

    Attributes
    ----------
    unit : Unit
    wythes : int
        Of a wall; 0 in a mass. [-]
    per_volume : float
        Pieces to a cubic metre of the work. [1/m3]
    share : float
        Of the volume, that the pieces fill. [-]
    """

    unit: Unit
    wythes: int
    per_volume: float
    share: float


def in_mass(unit: Unit) -> UnitMasonry:
    """Units in work many pieces thick.

    Parameters
    ----------
    unit : Unit

    Returns
    -------
    UnitMasonry
    """
    return UnitMasonry(unit, 0, unit.per_volume, unit.per_volume * unit.volume)


def in_wall(unit: Unit, thickness: float) -> UnitMasonry:
    """Units in a wall of a given thickness: as many wythes as come nearest, the rest mortar; a
    piece too deep is split.

    Parameters
    ----------
    unit : Unit
    thickness : float
        Of the wall. [m]

    Returns
    -------
    UnitMasonry

    Examples
    --------
    >>> round(in_wall(COMMON, 4 * INCH).per_volume * 4 * INCH * (12 * INCH) ** 2, 2)
    6.16
    """
    wythes = max(round((thickness + unit.joint) / (unit.depth + unit.joint)), 1)
    depth = min(unit.depth, (thickness - (wythes - 1) * unit.joint) / wythes)
    count = wythes / (unit.module * thickness)
    return UnitMasonry(
        replace(unit, depth=depth), wythes, count, count * unit.length * unit.height * depth
    )


COMMON = Unit(8 * INCH, 2.25 * INCH, 3.75 * INCH, 0.5 * INCH)
"""Common brick with 1/2 in joints: NAVEDTRA 14045, chapter 4, table 4-5 (read)."""


@lru_cache(maxsize=256)
def brick_of(name: str, joint: float | None) -> Unit:
    """A building brick of the table.

    Parameters
    ----------
    name : str
        By the trade's name.
    joint : float or None
        Bed and head; unknown takes those it is made for. [m]

    Returns
    -------
    Unit

    Examples
    --------
    >>> round(brick_of("modular", None).per_area * (12 * INCH) ** 2, 9)  # to the square foot
    6.75
    """
    size = pick(brick_sizes(), name, "Brick")
    if joint is not None:
        return Unit(size.length, size.height, size.width, joint)
    bed = size.course - size.height
    return Unit(size.length, size.height, size.width, size.joint, bed)


def facing_brick(design: Design) -> Unit:
    """The brick that shows in the room, as it is laid."""
    return brick_of(design.brick.facing, design.brick.facing_joint)


def common_brick(design: Design) -> Unit:
    """The brick of all other work, as it is laid."""
    return brick_of(design.brick.common, design.brick.common_joint)


def block(geometry: Geometry) -> Unit:
    """The base block of a design."""
    return block_of(geometry.design)


def block_of(design: Design) -> Unit:
    """The same of a design that is not built."""
    base = design.base
    return Unit(base.block_length, base.block_height, base.block_width, base.bed)


def brick_sides(brick: str) -> tuple[float, float, float]:
    """Length, width and thickness of a straight by its name.

    Parameters
    ----------
    brick : str
        ``9 x 4-1/2 x 2-1/2 in``.

    Returns
    -------
    tuple of float
        [m]
    """
    sides = brick.removesuffix("in").split("x")
    long, wide, thick = (to_si(f"{side.strip()} in", "length", "Firebrick") for side in sides)
    return long, wide, thick


@lru_cache(maxsize=256)
def firebrick(brick: str, thickness: float, joint: float) -> UnitMasonry:
    """How the chosen straight is laid to make a lining of a given thickness.

    Parameters
    ----------
    brick : str
        Nominal size, ``9 x 4-1/2 x 2-1/2 in``.
    thickness : float
        Of the lining. [m]
    joint : float
        Between the bricks. [m]

    Returns
    -------
    UnitMasonry
        Flat (4-1/2 in bed), on edge (2-1/2 in bed, its broad side to the fire) or as headers,
        whichever comes nearest.

    Examples
    --------
    >>> laid = firebrick("9 x 4-1/2 x 2-1/2 in", 4.5 * INCH, INCH / 8)
    >>> round(laid.unit.height / INCH, 3), round(laid.unit.depth / INCH, 3)
    (2.5, 4.5)
    """
    long, wide, thick = brick_sides(brick)
    positions = [
        Unit(long, thick, wide, joint),
        Unit(long, wide, thick, joint),
        Unit(wide, thick, long, joint),
    ]

    def miss(unit: Unit) -> float:
        wythes = max(round((thickness + joint) / (unit.depth + joint)), 1)
        return round(abs(wythes * unit.depth + (wythes - 1) * joint - thickness), 6)

    return in_wall(min(positions, key=miss), thickness)


CHAMBER, CHIMNEY = "firebox.masonry", "chimney.masonry"
"""What says of what the walls of the smoke chamber and of the chimney are built."""


def laid_unit(design: Design, walls: str) -> Unit | None:
    """What some walls are laid in.

    Parameters
    ----------
    design : Design
    walls : str
        ``CHAMBER`` or ``CHIMNEY``.

    Returns
    -------
    Unit or None
        None where they are not laid in units of one size: stone, concrete. [m]
    """
    masonry = design.firebox.masonry if walls == CHAMBER else design.chimney.masonry
    if masonry in ("stone", "concrete"):
        return None
    hollow = masonry in ("block", "hollow grouted solid", "hollow ungrouted")
    return block_of(design) if hollow else common_brick(design)


def corbel_size(design: Design, name: str, walls: str) -> float | None:
    """One size of a corbelled unit.

    Parameters
    ----------
    design : Design
    name : str
        ``course``, ``unit_height`` or ``unit_bed``, an input of the smoke chamber.
    walls : str
        ``CHAMBER`` or ``CHIMNEY``.

    Returns
    -------
    float or None
        As it was entered, unknown too; until somebody does, of what the walls are laid in. [m]
    """
    told: float | None = getattr(design.smoke_chamber, name)
    if not is_assumed(design, "smoke_chamber", name):
        return told
    unit = laid_unit(design, walls)
    if unit is None:
        return None
    return {"course": unit.course, "unit_height": unit.height, "unit_bed": unit.depth}[name]
