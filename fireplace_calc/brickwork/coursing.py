"""Courses that come out even: firebrick to the underside of the smoke shelf, block to the underside
of the hearth slab.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, chain, repeat
from math import ceil, floor

from fireplace_calc.base.units import INCH

SIXTEENTH = INCH / 16
"""To what a mason reads a tape. [m]"""
THICKEST = INCH / 2
"""Widest joint of a firebox that is still laid and not filled. [m]"""
BED = (INCH / 4, INCH / 2)
"""Narrowest and widest bed of block between courses: common practice, no source. [m]"""
FIRST_BED = (INCH / 4, 3 * INCH / 4)
"""The bed on the footing may take up more: 1/4 to 3/4 in, from memory of the masonry specification.
[m]
"""
HALF_HIGH = 3.625 * INCH
"""Half-high block: nominal 4 in less a 3/8 in joint. [m]"""
SPLIT = 1.625 * INCH
"""Solid block for packing: nominal 2 in less a 3/8 in joint; that it is sold so is from memory. [m]
"""
LEAST_SAWN = 2 * INCH
"""Lowest course a block is sawn down to: our own habit. [m]"""


@dataclass(frozen=True, slots=True)
class EvenCourses:
    """Courses that make up a height.

    Attributes
    ----------
    courses : int
        How many. [-]
    joint : float
        Of each, its bed. [m]
    fits : bool
        Whether the joint is no wider than a firebox allows.
    """

    courses: int
    joint: float
    fits: bool


def even_courses(height: float, unit: float, joint: float) -> EvenCourses:
    """The joint nearest to the chosen one that makes whole courses fill a height, each with its
    bed.

    Parameters
    ----------
    height : float
        From the slab to the underside of the smoke shelf. [m]
    unit : float
        Height of one brick as it lies. [m]
    joint : float
        Target. [m]

    Returns
    -------
    EvenCourses
        With a joint between nothing and 1/2 in where one does it; else the nearest that fills the
        height, which does not fit.

    Examples
    --------
    >>> even = even_courses(10 * (2.5 + 0.125) * INCH, 2.5 * INCH, 0.2 * INCH)
    >>> even.courses, round(even.joint / INCH, 3), even.fits
    (10, 0.125, True)
    """
    numbers = {max(floor(height / (unit + joint)), 1), max(ceil(height / (unit + joint)), 1)}
    options = [
        EvenCourses(n, height / n - unit, -1e-9 <= height / n - unit <= THICKEST + 1e-9)
        for n in numbers
    ]
    return min(options, key=lambda even: (not even.fits, abs(even.joint - joint)))


def _is_level(miss: float) -> bool:
    """Whether a miss is no more than a tape shows. [m]"""
    return abs(miss) <= SIXTEENTH / 2 + 1e-9


@dataclass(frozen=True, slots=True)
class Coursing:
    """How block brings a height level.

    Attributes
    ----------
    whole, half, packing : int
        Courses of full block, of half-high block and of packing. [-]
    sawn : float
        Height of one course of block sawn down, where nothing else comes out; else nothing. [m]
    first_bed, bed : float
        On the footing, and between courses. [m]
    height : float
        Height that comes out, beds counted in. [m]
    target : float
        Height to be reached. [m]
    block : float
        Height of a full block. [m]
    """

    whole: int
    half: int
    packing: int
    sawn: float
    first_bed: float
    bed: float
    height: float
    target: float
    block: float

    @property
    def miss(self) -> float:
        """By how much it is too high, negative when too low. [m]"""
        return self.height - self.target

    @property
    def level(self) -> bool:
        """Whether it comes out to 1/16 in."""
        return _is_level(self.miss)

    @property
    def courses(self) -> int:
        """All courses. [-]"""
        return self.whole + self.half + self.packing + (self.sawn > 0)

    @property
    def pieces(self) -> tuple[tuple[str, float], ...]:
        """From the bottom up: ``block``, ``sawn``, ``half-high`` or ``packing``; how high. [m]"""
        return (
            (("block", self.block),) * self.whole
            + (("sawn", self.sawn),) * (self.sawn > 0)
            + (("half-high", HALF_HIGH),) * self.half
            + (("packing", SPLIT),) * self.packing
        )

    @property
    def tops(self) -> tuple[float, ...]:
        """Top of each course over what the first stands on. [m]"""
        beds = chain([self.first_bed], repeat(self.bed))
        rises = (bed + high for bed, (_, high) in zip(beds, self.pieces, strict=False))
        return tuple(accumulate(rises))


def _beds(height: float, pieces: float, courses: int, bed: float) -> tuple[float, float]:
    """Bed on the footing and bed between courses, to 1/16 in, that come level with a height, the
    target bed kept as nearly as they can; else what comes nearest. [m]
    """
    if courses == 0:
        return 0.0, 0.0
    narrow, wide = round(BED[0] / SIXTEENTH), round(BED[1] / SIXTEENTH)
    between = [bed] if courses == 1 else [bed, *(k * SIXTEENTH for k in range(narrow, wide + 1))]
    left = [(height - pieces - (courses - 1) * b, b) for b in between]
    options = [
        (min(max(round(a / SIXTEENTH) * SIXTEENTH, FIRST_BED[0]), FIRST_BED[1]), a, b)
        for a, b in left
    ]

    def order(beds: tuple[float, float, float]) -> tuple[float, float, float]:
        first, exact, other = beds
        off = abs(first - exact)
        return (0.0 if _is_level(off) else off), abs(other - bed) + abs(first - bed), off

    first, _, other = min(options, key=order)
    return first, other


@lru_cache(maxsize=64)
def block_coursing(height: float, block: float, bed: float) -> Coursing:
    """Full block, a half-high course and packing under the slab, with beds a mason can lay, that
    bring a height level.

    Parameters
    ----------
    height : float
        From the footing, or the floor, to the underside of what the block carries. [m]
    block : float
        Height of one block, actual. [m]
    bed : float
        Target between courses. [m]

    Returns
    -------
    Coursing
        The fewest pieces that are within 1/16 in, the target bed kept where it can be; else what
        comes nearest.

    Examples
    --------
    >>> made = block_coursing(40 * INCH, 7.625 * INCH, 0.375 * INCH)
    >>> made.whole, made.half, made.packing, round(made.bed / INCH, 4), made.level
    (5, 0, 0, 0.375, True)
    """
    options = [
        _coursed(height, block, bed, whole, half, packing)
        for half in (0, 1)
        for packing in range(5)
        for whole in _whole_numbers_about(
            (height - half * HALF_HIGH - packing * SPLIT) / (block + bed)
        )
    ]
    if not any(one.level for one in options):
        options += [
            _sawn(height, block, bed, whole, half)
            for half in (0, 1)
            for whole in _whole_numbers_about((height - half * HALF_HIGH) / (block + bed))
        ]

    def order(one: Coursing) -> tuple[float, ...]:
        off = 0.0 if one.level else abs(one.miss)
        return (
            off,
            one.sawn > 0,
            one.half + one.packing,
            abs(one.bed - bed) + abs(one.first_bed - bed),
            abs(one.miss),
        )

    return min(options, key=order)


def _whole_numbers_about(number: float) -> set[int]:
    return {max(floor(number), 0), max(ceil(number), 0)}


def _coursed(
    height: float, block: float, bed: float, whole: int, half: int, packing: int, sawn: float = 0.0
) -> Coursing:
    courses = whole + half + packing + (sawn > 0)
    pieces = whole * block + half * HALF_HIGH + packing * SPLIT + sawn
    first, between = _beds(height, pieces, courses, bed)
    return Coursing(
        whole,
        half,
        packing,
        sawn,
        first,
        between,
        pieces + first + max(courses - 1, 0) * between,
        height,
        block,
    )


def _sawn(height: float, block: float, bed: float, whole: int, half: int) -> Coursing:
    """With one course of block sawn to what is left, to 1/16 in."""
    left = height - whole * block - half * HALF_HIGH - (whole + half + 1) * bed
    return _coursed(
        height,
        block,
        bed,
        whole,
        half,
        0,
        min(max(round(left / SIXTEENTH) * SIXTEENTH, LEAST_SAWN), block),
    )
