"""Courses that come out level, found by trying every bed to the sixteenth of an inch; and a course of block walked round."""

from __future__ import annotations

from dataclasses import dataclass

from naive.bricks import GAP, SAWN, Laid
from naive.reading import IN

TICK = IN / 16
HALF_HIGH, SPLIT = 3.625 * IN, 1.625 * IN
"""Nominal 4 in and 2 in pieces, less a 3/8 in joint."""


@dataclass(frozen=True)
class Stacked:
    """So many pieces of each kind, with these beds, and by how much they miss the height."""

    whole: int
    half: int
    packing: int
    sawn: float
    first: float
    bed: float
    miss: float

    @property
    def off(self) -> float:
        """Nothing when it is out by no more than half a sixteenth: a mason reads no finer."""
        return 0.0 if abs(self.miss) <= TICK / 2 + 1e-9 else abs(self.miss)


def stack(high: float, block: float, bed: float) -> Stacked:
    """Fewest odd pieces that come out level, the wanted bed kept where it can be; else what comes nearest.

    Beds are 1/4 to 1/2 in, the first 1/4 to 3/4. Whole block, one half-high course, packing of up to four; and where none of
    that is level, a course of block sawn to what is left.
    """
    tried = _tried(high, block, bed, 0.0, range(5))
    if all(one.off for one in tried):
        tried += _sawn(high, block, bed)
    return min(
        tried,
        key=lambda one: (
            one.off,
            one.sawn > 0,
            one.half + one.packing,
            abs(one.bed - bed) + abs(one.first - bed),
            abs(one.miss),
        ),
    )


def _tried(
    high: float, block: float, bed: float, sawn: float, packings: range, wholes: range | None = None
) -> list[Stacked]:
    found = []
    for whole in range(int(high / block) + 2) if wholes is None else wholes:
        for half in (0, 1):
            for packing in packings:
                pieces, courses = (
                    whole * block + half * HALF_HIGH + packing * SPLIT + sawn,
                    whole + half + packing + (sawn > 0),
                )
                if courses == 0:
                    found.append(Stacked(0, 0, 0, 0.0, 0.0, 0.0, -high))
                    continue
                for between in [bed] if courses == 1 else {bed, *(k * TICK for k in range(4, 9))}:
                    for first in (k * TICK for k in range(4, 13)):
                        made = pieces + first + (courses - 1) * between
                        found.append(
                            Stacked(whole, half, packing, sawn, first, between, made - high)
                        )
    return found


def _sawn(high: float, block: float, bed: float) -> list[Stacked]:
    found = []
    for whole in range(int(high / (block + bed)) + 2):
        for half in (0, 1):
            left = high - whole * block - half * HALF_HIGH - (whole + half + 1) * bed
            cut = min(max(round(left / TICK) * TICK, 2 * IN), block)
            found += [
                one
                for one in _tried(high, block, bed, cut, range(1), range(whole, whole + 1))
                if one.half == half
            ]
    return found


def even(high: float, unit: float, joint: float) -> tuple[int, float]:
    """Courses, each with its bed, that fill a height with the joint nearest to the wanted one; joints from nothing to 1/2 in first."""
    tried = [
        (n, high / n - unit)
        for n in range(1, int(high / unit) + 3)
        if n - 1 < high / (unit + joint) < n + 1
    ]
    return min(tried, key=lambda one: (not -1e-9 <= one[1] <= IN / 2 + 1e-9, abs(one[1] - joint)))


def ring(
    half: float, deep: float, unit: Laid, odd: bool
) -> list[tuple[float, float, float, float, bool]]:
    """Left, front, right, back of every block of one course, and whether it is cut: corners lapped in turn, one closer a wall."""
    w, j = unit.deep, unit.joint
    across, along = (
        ((-half, half), (w + j, deep - w - j))
        if not odd
        else ((-half + w + j, half - w - j), (0.0, deep))
    )
    found = []
    for a, b, cut in _wall(*across, unit):
        found += [(a, 0.0, b, w, cut), (a, deep - w, b, deep, cut)]
    for a, b, cut in _wall(*along, unit):
        found += [(-half, a, -half + w, b, cut), (half - w, a, half, b, cut)]
    return sorted(found)


def _wall(start: float, end: float, unit: Laid) -> list[tuple[float, float, bool]]:
    """Whole blocks from both ends by turns, and what closes the middle."""
    number = 0
    while end - start - number * (unit.long + unit.joint) > unit.long + GAP:
        number += 1
    step = unit.long + unit.joint
    rest = end - start - number * step
    pair = (
        number > 0 and GAP < rest < 3 * IN - 1e-9
    )  # too short to cut: two alike fill it with a neighbor
    number -= pair
    left, right = (number + 1) // 2, number // 2
    found = [(start + k * step, start + k * step + unit.long, False) for k in range(left)]
    found += [(end - k * step - unit.long, end - k * step, False) for k in range(right)]
    a, b = start + left * step, end - right * step
    if pair:
        middle = (a + b) / 2
        return found + [
            (a, middle - unit.joint / 2, True),
            (middle + unit.joint / 2, b, True),
        ]
    return found + ([(a, b, b - a < unit.long - GAP)] if b - a > GAP else [])


def solid(
    left: float, front: float, right: float, back: float, unit: Laid, odd: bool
) -> list[tuple[float, float, float, float, bool]]:
    """The same of a course that has no core: rows from the front, by turns from the left, the last ripped to what is left."""
    if odd:
        turned = solid(front, left, back, right, unit, False)
        return sorted((b, a, d, c, cut) for a, b, c, d, cut in turned)
    found, at = [], front
    while back - at > GAP:
        deep = min(unit.deep, back - at)
        both = back - at - unit.joint  # of this row and the next, were it the last
        if unit.deep + GAP < both < unit.deep + 3 * IN - 1e-9:
            deep = both / 2
        ripped = deep < unit.deep - GAP
        found += [(a, at, b, at + deep, cut or ripped) for a, b, cut in _wall(left, right, unit)]
        at += deep + unit.joint
    return sorted(found)


def cut_lengths(half: float, deep: float, unit: Laid, odd: bool) -> list[float]:
    """What the closers of one course round a core take of a block's length: two walls alike each way."""
    w = unit.deep + unit.joint
    spans = [(-half + w, half - w), (0.0, deep)] if odd else [(-half, half), (w, deep - w)]
    return [b - a for span in spans * 2 for a, b, cut in _wall(*span, unit) if cut]


def put_up(high: float, piece: float, bed: float) -> tuple[int, float]:
    """Pieces put up one by one, each on a bed, until what is left over the next bed is a hair or at most 1/8 in; the last is cut.

    How many, and what part of the height is no piece.
    """
    number, level, filled = 0, 0.0, 0.0
    while high - level - bed > IN / 8 + 1e-9:
        level += bed
        takes = min(piece, high - level)
        number, level, filled = number + 1, level + takes, filled + takes
    return number, 1 - filled / high


def gauge(bottom: float, top: float, high: float, bed: float) -> list[float]:
    """Tops of the courses of a wall, its beds all made a little more or less so that it comes out, within what can be laid:
    1/4 to 1/2 in, or 1/16 in off a bed that lies outside of that; else as they are, the last one cut, and none of 1/8 in."""
    number = max(round((top - bottom) / (high + bed)), 1)
    even = (top - bottom - number * high) / number
    if max(min(IN / 4, bed - TICK), 0.0) - 1e-9 <= even <= max(IN / 2, bed + TICK) + 1e-9:
        return [bottom + k * (even + high) for k in range(1, number + 1)]
    found, z = [], bottom
    while top - z - bed > IN / 8 + 1e-9:
        z = min(z + bed + high, top)
        found.append(z)
    if len(found) > 1 and GAP < top - found[-2] - bed < SAWN - 1e-9:  # no saw gives that: two alike
        under = found[-3] if len(found) > 2 else bottom
        found[-2] = top - (top - under - 2 * bed) / 2 - bed
    return found
