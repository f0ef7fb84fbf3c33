"""A course of base block in plan: full lengths from each corner, one closer where they meet,
corners lapped course by course.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from fireplace_calc.brickwork.unit import LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import Polygon, box


@dataclass(frozen=True)
class BlockCourse:
    """One course: outlines of its blocks, and which are cut. [m]"""

    blocks: tuple[tuple[Polygon, bool], ...]

    @cached_property
    def whole(self) -> int:
        """Full blocks. [-]"""
        return sum(not cut for _, cut in self.blocks)

    @cached_property
    def cut(self) -> int:
        """Cut blocks, halves counted in. [-]"""
        return len(self.blocks) - self.whole


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


def block_ring(half: float, deep: float, unit: Unit, parity: int) -> BlockCourse:
    """One course of the base walls.

    Parameters
    ----------
    half : float
        Half the width of the base. [m]
    deep : float
        Front to back. [m]
    unit : Unit
        Block: ``length`` along the wall, ``depth`` its thickness. [m]
    parity : int
        0 or 1: whether front and back run through the corners, or the sides do. [-]

    Returns
    -------
    BlockCourse
        Outlines in plan. [m]
    """
    w, j = unit.depth, unit.joint
    through = parity % 2 == 0
    across = (-half, half) if through else (-half + w + j, half - w - j)
    along = (w + j, deep - w - j) if through else (0.0, deep)
    made = [
        (box(a, b, y, y + w), cut) for y in (0.0, deep - w) for a, b, cut in _run(*across, unit)
    ]
    made += [
        (box(x, x + w, a, b), cut) for x in (-half, half - w) for a, b, cut in _run(*along, unit)
    ]
    return BlockCourse(tuple(made))
