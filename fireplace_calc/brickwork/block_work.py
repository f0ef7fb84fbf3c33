"""The block of a base, course by course: how each is laid, and how many blocks that takes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from fireplace_calc.brickwork.coursing import Coursing, block_coursing
from fireplace_calc.brickwork.cut_stock import bricks_for
from fireplace_calc.brickwork.ring import BlockCourse, Extent, block_layer, block_ring, round_a_hole
from fireplace_calc.brickwork.unit import Unit
from fireplace_calc.geometry.parts import Part
from fireplace_calc.geometry.solids import Solid, level_cuts

NOTHING: Extent = (0.0, 0.0, 0.0, 0.0)
"""Of a part that is not there. [m]"""


@dataclass(frozen=True, slots=True)
class LaidBlock:
    """Block brought to a height.

    Attributes
    ----------
    coursing : Coursing
        What stands on what.
    unit : Unit
        The full block. [m]
    courses : tuple of BlockCourse
        From the bottom up, one for each of ``coursing.pieces``.
    """

    coursing: Coursing
    unit: Unit
    courses: tuple[BlockCourse, ...]

    @property
    def fits(self) -> float:
        """Share of what is laid that the part has room for: where beds cannot take up what is over,
        the last course is drawn too high. [-]
        """
        coursing = self.coursing
        return min(coursing.target / coursing.height, 1.0) if coursing.height > 0 else 0.0

    def count(self) -> dict[str, BlockCount]:
        """Blocks of each kind of course that is there.

        Returns
        -------
        dict of BlockCount
            By ``block``, ``half-high`` and ``packing``; courses sawn to height are of ``block``. A
            block sawn to height, or ripped along its row, takes one of its own; of a length cut
            short the rest is used again where it is long enough.
        """
        alike = Counter(zip(self.coursing.pieces, self.courses, strict=True))
        kinds = dict.fromkeys("block" if of == "sawn" else of for of, _ in self.coursing.pieces)
        return {kind: self._counted(kind, alike) for kind in kinds}

    def _counted(
        self, kind: str, alike: dict[tuple[tuple[str, float], BlockCourse], int]
    ) -> BlockCount:
        """Blocks of one kind; how many courses are of one kind, one height [m] and one plan. [-]"""
        whole, areas, cut_volume, taken = 0, 0.0, 0.0, list[float]()
        for ((of, height), course), times in alike.items():
            if of == kind:
                whole += course.whole * times
                areas += course.areas[0] * height * times
                cut_volume += course.areas[1] * height * times
                taken += course.lengths * times
            elif of == "sawn" and kind == "block":
                cut_volume += sum(course.areas) * height * times
                taken += (*course.lengths, *(self.unit.length,) * course.whole) * times
        return BlockCount(whole, areas, cut_volume, tuple(taken), self.unit.length)


@dataclass(frozen=True, slots=True)
class BlockCount:
    """Blocks of one kind.

    Attributes
    ----------
    whole : int
        Whole blocks. [-]
    whole_volume, cut_volume : float
        That whole and cut ones fill, cores counted in. [m3]
    lengths : tuple of float
        What each cut one takes of a block's length. [m]
    length : float
        Of a block. [m]
    """

    whole: int
    whole_volume: float
    cut_volume: float
    lengths: tuple[float, ...]
    length: float

    @property
    def pieces(self) -> int:
        """Cut blocks. [-]"""
        return len(self.lengths)

    @property
    def blocks_for_cuts(self) -> int:
        """Blocks that the cut ones come out of. [-]"""
        return bricks_for(self.lengths, self.length)


def lay_block(part: Part, unit: Unit) -> LaidBlock:
    """Lay a part in block, from what it stands on.

    Parameters
    ----------
    part : Part
        Upright all the way, with or without a core and a second flue beside it.
    unit : Unit
        The full block. [m]

    Returns
    -------
    LaidBlock
    """
    coursing = block_coursing(part.top - part.bottom, unit.height, unit.joint)
    middle = (part.bottom + part.top) / 2
    cores = [solid for solid in part.cuts if solid not in part.aside]
    outer, core = _at(part.adds, middle) or NOTHING, _at(cores, middle)
    flues: list[Extent | None] = [None] * coursing.courses
    if part.aside:
        beds = [part.bottom, *(min(part.bottom + top, part.top) for top in coursing.tops)]
        flues = [_at(part.aside, (low + high) / 2) for low, high in pairwise(beds)]
    places = [(flue, k % 2) for k, flue in enumerate(flues)]
    made = {place: _laid(outer, core, place[0], unit, place[1]) for place in set(places)}
    return LaidBlock(coursing, unit, tuple([made[place] for place in places]))


def _at(solids: Iterable[Solid], level: float) -> Extent | None:
    """Left, right, front and back of the first of some solids at a level. [m]"""
    for solid in solids:
        for ring in level_cuts(solid, level):
            xs, ys = zip(*ring, strict=True)
            return min(xs), max(xs), min(ys), max(ys)
    return None


@lru_cache(maxsize=64)
def _laid(
    outer: Extent, core: Extent | None, flue: Extent | None, unit: Unit, parity: int
) -> BlockCourse:
    """Walls round the core; what is left beside them is solid, but for a flue in it."""
    if core is None:
        return round_a_hole(outer, flue, unit, parity) if flue else block_layer(outer, unit, parity)
    left, right, front, back = outer
    low, high = core[0] - unit.depth, core[1] + unit.depth
    made = block_ring((high - low) / 2, back - front, unit, parity, (low + high) / 2)
    for strip in ((left, low - unit.joint), (high + unit.joint, right)):
        area = (*strip, front, back)
        made += round_a_hole(area, flue, unit, parity) if flue else block_layer(area, unit, parity)
    return made
