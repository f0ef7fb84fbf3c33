"""A course of block in plan: round a core, full lengths from each corner and one closer where they
meet; or a solid layer, row by row. Corners lap course by course.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import ceil
from typing import NamedTuple

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.unit import LEAST_CLOSER, LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import Polygon, box

Extent = tuple[float, float, float, float]
"""Left, right, front, back. [m]"""


class Run(NamedTuple):
    """Blocks end to end along one line: full ones from both ends, and what is cut in the middle.

    Attributes
    ----------
    start, end : float
        Of the line. [m]
    unit : Unit
        The full block. [m]
    full : int
        Full ones from both ends, one more at the start where they are odd. [-]
    rest : tuple of float
        Lengths of those between them. [m]
    sawn : bool
        Whether those are cut.
    """

    start: float
    end: float
    unit: Unit
    full: int
    rest: tuple[float, ...]
    sawn: bool

    @property
    def cut(self) -> tuple[float, ...]:
        """Lengths of the cut ones. [m]"""
        return self.rest if self.sawn else ()

    @property
    def whole(self) -> int:
        """Full ones. [-]"""
        return self.full if self.sawn else self.full + len(self.rest)

    @property
    def blocks(self) -> Iterator[tuple[float, float, bool]]:
        """Where each begins and ends [m], and whether it is cut."""
        length, joint = self.unit.length, self.unit.joint
        at, before = self.start, self.full - self.full // 2
        for _ in range(before):
            yield at, at + length, False
            at += length + joint
        for one in self.rest:
            yield at, at + one, self.sawn
            at += one + joint
        at = self.end - (self.full - before) * (length + joint) + joint
        for _ in range(self.full - before):
            yield at, at + length, False
            at += length + joint


class BlockRow(NamedTuple):
    """One run of a course, between two lines.

    Attributes
    ----------
    run : Run
    low, high : float
        Near and far side of it. [m]
    across : bool
        Whether it runs from left to right; else from front to back.
    ripped : bool
        Whether all of it is cut along its length.
    """

    run: Run
    low: float
    high: float
    across: bool
    ripped: bool = False

    def outlines(self) -> Iterator[tuple[Polygon, bool]]:
        """Each block in plan [m], and whether it is cut."""
        for a, b, cut in self.run.blocks:
            sides = (a, b, self.low, self.high) if self.across else (self.low, self.high, a, b)
            yield box(*sides), cut or self.ripped


@dataclass(frozen=True, eq=False)
class BlockCourse:
    """One course of block; two are the same only where they are one and the same.

    Attributes
    ----------
    unit : Unit
        The full block. [m]
    rows : tuple of BlockRow
        Of which it is made.
    """

    unit: Unit
    rows: tuple[BlockRow, ...]

    @cached_property
    def blocks(self) -> tuple[tuple[Polygon, bool], ...]:
        """Outline of each in plan [m], and whether it is cut."""
        return tuple(block for row in self.rows for block in row.outlines())

    @cached_property
    def _sums(self) -> tuple[int, tuple[float, ...], tuple[float, float]]:
        whole, lengths, full, rest = 0, list[float](), 0.0, 0.0
        for run, low, high, _, ripped in self.rows:
            cut = [b - a for a, b, _ in run.blocks] if ripped else run.cut
            if cut:
                lengths += cut
                rest += sum(cut) * (high - low)
            if not ripped:
                whole += run.whole
                full += run.whole * (high - low)
        return whole, tuple(lengths), (full * self.unit.length, rest)

    @property
    def whole(self) -> int:
        """Full blocks. [-]"""
        return self._sums[0]

    @property
    def lengths(self) -> tuple[float, ...]:
        """What each cut one takes of a block's length, in the order of ``blocks``. [m]"""
        return self._sums[1]

    @property
    def cut(self) -> int:
        """Cut blocks, halves counted in. [-]"""
        return len(self.lengths)

    @property
    def areas(self) -> tuple[float, float]:
        """Of the whole blocks and of the cut ones, in plan. [m2]"""
        return self._sums[2]

    def __add__(self, other: BlockCourse) -> BlockCourse:
        return BlockCourse(self.unit, self.rows + other.rows)


def _run(start: float, end: float, unit: Unit) -> Run:
    """Blocks along one wall: full ones from both ends, a closer in the middle, or two of one length
    where it would be too short to be cut. [m]
    """
    step, least = unit.length + unit.joint, LEAST_CUT + ROUNDING
    full = max(ceil((end - start - unit.length - least) / step), 0)
    last = end - start - full * step
    if full and least < last < LEAST_CLOSER - ROUNDING:
        half = (last + unit.length) / 2
        return Run(start, end, unit, full - 1, (half, half), True)
    rest = (last,) if last > least else ()
    return Run(start, end, unit, full, rest, last < unit.length - LEAST_CUT)


@lru_cache(maxsize=64)
def block_ring(
    half: float, deep: float, unit: Unit, parity: int, middle: float = 0.0
) -> BlockCourse:
    """One course of walls round a core.

    Parameters
    ----------
    half : float
        Half their width, outside. [m]
    deep : float
        Front to back, outside. [m]
    unit : Unit
        Block: ``length`` along the wall, ``depth`` its thickness. [m]
    parity : int
        0 or 1: whether front and back run through the corners, or the sides do. [-]
    middle : float
        Right of the section line. [m]

    Returns
    -------
    BlockCourse
        Outlines in plan. [m]
    """
    w, j = unit.depth, unit.joint
    through = parity % 2 == 0
    low, high = middle - half, middle + half
    across = (low, high) if through else (low + w + j, high - w - j)
    along = (w + j, deep - w - j) if through else (0.0, deep)
    front, side = _run(*across, unit), _run(*along, unit)
    return BlockCourse(
        unit,
        (
            *(BlockRow(front, y, y + w, True) for y in (0.0, deep - w)),
            *(BlockRow(side, x, x + w, False) for x in (low, high - w)),
        ),
    )


@lru_cache(maxsize=64)
def block_layer(area: Extent, unit: Unit, parity: int) -> BlockCourse:
    """One course of solid block work.

    Parameters
    ----------
    area : tuple of float
        Left, right, front, back. [m]
    unit : Unit
        Block: ``length`` along its row, ``depth`` across it. [m]
    parity : int
        0 or 1: whether rows run from left to right, or front to back. [-]

    Returns
    -------
    BlockCourse
        Rows from the front, or from the left; the last one is ripped where it has to be, the last
        two alike where it would be too thin. [m]
    """
    left, right, front, back = area
    start, end, low, high = area if parity % 2 == 0 else (front, back, left, right)
    across, run, rows = parity % 2 == 0, _run(start, end, unit), []
    while high - low > LEAST_CUT:
        far = min(low + unit.depth, high)
        rest = high - far - unit.joint
        if LEAST_CUT < rest < LEAST_CLOSER - ROUNDING:
            far = low + (unit.depth + rest) / 2
        rows.append(BlockRow(run, low, far, across, far - low < unit.depth - LEAST_CUT))
        low = far + unit.joint
    return BlockCourse(unit, tuple(rows))


def round_a_hole(area: Extent, hole: Extent, unit: Unit, parity: int) -> BlockCourse:
    """A solid layer round a flue: before it, behind it and on both sides.

    Parameters
    ----------
    area, hole : tuple of float
        Left, right, front, back. [m]
    unit : Unit
        Block. [m]
    parity : int
        As for ``block_layer``. [-]

    Returns
    -------
    BlockCourse
    """
    left, right, front, back = area
    near, far = max(hole[0], left), min(hole[1], right)
    low, high = max(hole[2], front), min(hole[3], back)
    if far <= near or high <= low:
        return block_layer(area, unit, parity)
    whole = BlockCourse(unit, ())
    for strip in (
        (left, right, front, low),
        (left, near, low, high),
        (far, right, low, high),
        (left, right, high, back),
    ):
        whole += block_layer(strip, unit, parity)
    return whole
