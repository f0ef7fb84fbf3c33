"""A course of block in plan: round a core, full lengths from each corner and one closer where they
meet; or a solid layer, row by row. Corners lap course by course.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

from fireplace_calc.brickwork.unit import LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import Polygon, box

Extent = tuple[float, float, float, float]
"""Left, right, front, back. [m]"""


@dataclass(frozen=True)
class BlockCourse:
    """One course of block.

    Attributes
    ----------
    blocks : tuple of polygon and bool
        Outline of each in plan [m], and whether it is cut.
    lengths : tuple of float
        What each cut one takes of a block's length, in the same order. [m]
    """

    blocks: tuple[tuple[Polygon, bool], ...]
    lengths: tuple[float, ...]

    @cached_property
    def whole(self) -> int:
        """Full blocks. [-]"""
        return len(self.blocks) - self.cut

    @property
    def cut(self) -> int:
        """Cut blocks, halves counted in. [-]"""
        return len(self.lengths)

    @cached_property
    def areas(self) -> tuple[float, float]:
        """Of the whole blocks and of the cut ones, in plan. [m2]"""
        sums = [0.0, 0.0]
        for ring, cut in self.blocks:
            (left, front), (right, back) = ring[0], ring[2]
            sums[cut] += (right - left) * (back - front)
        return sums[0], sums[1]

    def __add__(self, other: BlockCourse) -> BlockCourse:
        return BlockCourse(self.blocks + other.blocks, self.lengths + other.lengths)


def _run(start: float, end: float, unit: Unit) -> list[tuple[float, float, bool]]:
    """Blocks along one wall: full ones from both ends, a closer in the middle. [m]"""
    left, right, step = start, end, unit.length + unit.joint
    made, low = [], True
    while right - left > unit.length + LEAST_CUT:
        if low:
            made.append((left, left + unit.length, False))
            left += step
        else:
            made.append((right - unit.length, right, False))
            right -= step
        low = not low
    if right - left > LEAST_CUT:
        made.append((left, right, right - left < unit.length - LEAST_CUT))
    return sorted(made)


def _course(made: list[tuple[Polygon, bool, float]]) -> BlockCourse:
    return BlockCourse(
        tuple((ring, cut) for ring, cut, _ in made), tuple(long for _, cut, long in made if cut)
    )


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
    made = [
        (box(a, b, y, y + w), cut, b - a)
        for y in (0.0, deep - w)
        for a, b, cut in _run(*across, unit)
    ]
    made += [
        (box(x, x + w, a, b), cut, b - a)
        for x in (low, high - w)
        for a, b, cut in _run(*along, unit)
    ]
    return _course(made)


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
        Rows from the front, or from the left; the last one is ripped where it has to be. [m]
    """
    left, right, front, back = area
    start, end, low, high = area if parity % 2 == 0 else (front, back, left, right)
    made = []
    while high - low > LEAST_CUT:
        far = min(low + unit.depth, high)
        ripped = far - low < unit.depth - LEAST_CUT
        for a, b, cut in _run(start, end, unit):
            ring = box(a, b, low, far) if parity % 2 == 0 else box(low, far, a, b)
            made.append((ring, cut or ripped, b - a))
        low += unit.depth + unit.joint
    return _course(made)


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
    whole = BlockCourse((), ())
    for strip in (
        (left, right, front, low),
        (left, near, low, high),
        (far, right, low, high),
        (left, right, high, back),
    ):
        whole += block_layer(strip, unit, parity)
    return whole
