"""Where boxes of different sizes stand in a rectangle: wherever there is room, or as one reads."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from fireplace_calc.drawing.plates.figure import BETWEEN

UNDER = 5.0
"""From a title to the figure in the row under it. [mm]"""

MIXED = 24
"""Orders that are tried besides where something stands in the rectangle already. [-]"""

Box = tuple[float, float, float, float]
Size = tuple[float, float]
Place = tuple[float, float]
Placing = Callable[[Sequence[Size], float, float], list[Place] | None]


def places(
    sizes: Sequence[Size], wide: float, high: float, taken: Sequence[Box] = ()
) -> list[Place] | None:
    """Where boxes stand in a rectangle, from its upper left corner: in their order where that
    goes, else the tallest first; round what stands there, others are tried too.

    Parameters
    ----------
    sizes : sequence of (width, height)
        [mm]
    wide, high : float
        Of the rectangle. [mm]
    taken : sequence of box
        What stands in it already: left, top, right, low, to the right and down. [mm]

    Returns
    -------
    list of (float, float) or None
        Left and top of each, to the right and down [mm]; None where they do not fit.

    Notes
    -----
    What is free is kept as the largest rectangles; each box takes the highest and leftmost that
    holds it, or the one that it fills best (J. Jylanki, A thousand ways to pack the bin, 2010,
    maximal rectangles; from memory).

    Examples
    --------
    >>> places([(40, 30), (40, 20)], 100, 40)
    [(0.0, 0.0), (48.0, 0.0)]
    """
    if any(w > wide + 1e-9 or h > high + 1e-9 for w, h in sizes):
        return None
    free = [(0.0, 0.0, wide + BETWEEN, high + BETWEEN)]
    for left, top, right, low in taken:
        free = _without(free, (left, top, right + BETWEEN, low + BETWEEN))
    told = list(range(len(sizes)))
    tall, large, broad = (
        sorted(told, key=lambda n: (-by[n], n))
        for by in ([h for _, h in sizes], [w * h for w, h in sizes], [w for w, _ in sizes])
    )
    tried = [(told, False), (tall, False), (tall, True)]
    if taken:  # what is left has many corners
        drawn = Random(len(sizes))
        mixed = [drawn.sample(told, len(told)) for _ in range(MIXED)]
        tried += [(order, close) for order in (large, broad, *mixed) for close in (False, True)]
    for order, close in tried:
        found = _placed(sizes, order, free, close)
        if found is not None:
            return found
    return None


def in_rows(
    sizes: Sequence[Size], wide: float, high: float, under: float = UNDER
) -> list[Place] | None:
    """Where boxes stand one after the other, row under row, as one reads; what is left of the width
    is shared out between those of a row, and of the height between the rows.

    Parameters
    ----------
    sizes : sequence of (width, height)
        [mm]
    wide, high : float
        Of the rectangle. [mm]
    under : float
        Between two rows, at least. [mm]

    Returns
    -------
    list of (float, float) or None
        Left and top of each, to the right and down [mm]; None where they do not fit.

    Examples
    --------
    >>> in_rows([(40, 30), (40, 20), (60, 20)], 100, 90)
    [(0.0, 0.0), (60.0, 0.0), (0.0, 70.0)]
    """
    if any(w > wide + 1e-9 for w, _ in sizes):
        return None
    rows = _lowest_rows(sizes, wide, under)
    tall = [max(h for _, h in row) for row in rows]
    if sum(tall) + under * (len(rows) - 1) > high + 1e-9:
        return None
    found: list[Place] = []
    top, apart = 0.0, (high - sum(tall)) / max(len(rows) - 1, 1)
    for row, low in zip(rows, tall, strict=True):
        left, beside = 0.0, (wide - sum(w for w, _ in row)) / max(len(row) - 1, 1)
        for w, _ in row:
            found.append((left, top))
            left += w + beside
        top += low + apart
    return found


def _placed(
    sizes: Sequence[Size], order: Sequence[int], free: Sequence[Box], close: bool
) -> list[Place] | None:
    found: list[Place] = [(0.0, 0.0)] * len(sizes)
    for n in order:
        w, h = sizes[n][0] + BETWEEN, sizes[n][1] + BETWEEN
        fitting = [
            (min(right - left - w, low - top - h) if close else 0.0, top, left)
            for left, top, right, low in free
            if right - left >= w - 1e-9 and low - top >= h - 1e-9
        ]
        if not fitting:
            return None
        _, top, left = min(fitting)
        found[n] = (left, top)
        free = _without(free, (left, top, left + w, top + h))
    return found


def _without(free: Sequence[Box], taken: Box) -> list[Box]:
    """What is free once a box is taken out: left, top, right, low of each; none within another."""
    a, b, c, d = taken
    made: list[Box] = []
    for left, top, right, low in free:
        if a >= right or c <= left or b >= low or d <= top:
            made.append((left, top, right, low))
            continue
        made += [
            box
            for box in (
                (left, top, a, low),
                (c, top, right, low),
                (left, top, right, b),
                (left, d, right, low),
            )
            if box[2] - box[0] > 1e-9 and box[3] - box[1] > 1e-9
        ]
    made = list(dict.fromkeys(made))
    return [
        one
        for one in made
        if not any(
            other != one
            and other[0] <= one[0]
            and other[1] <= one[1]
            and other[2] >= one[2]
            and other[3] >= one[3]
            for other in made
        )
    ]


def _lowest_rows(sizes: Sequence[Size], wide: float, under: float) -> list[list[Size]]:
    """Boxes that fit a width, in the lowest rows that hold them, the first ones full."""
    found: list[tuple[float, list[list[Size]]]] = [(0.0, [])]
    for end in range(1, len(sizes) + 1):
        tried = []
        for start in range(end):
            row = list(sizes[start:end])
            if sum(w + BETWEEN for w, _ in row) - BETWEEN <= wide + 1e-9:
                high, rows = found[start]
                tried.append((high + max(h for _, h in row) + under, [*rows, row]))
        found.append(min(reversed(tried), key=lambda one: round(one[0], 6)))
    return found[-1][1]


def in_columns(sizes: Sequence[Size], wide: float, high: float) -> list[Place] | None:
    """The same one under the other, column beside column. [mm]

    Examples
    --------
    >>> in_columns([(40, 30), (40, 20), (60, 20)], 120, 60)
    [(0.0, 0.0), (0.0, 40.0), (60.0, 0.0)]
    """
    found = in_rows([(h, w) for w, h in sizes], high, wide, BETWEEN)
    return None if found is None else [(x, y) for y, x in found]


def spread_out(sizes: Sequence[Size], wide: float, high: float) -> list[Place]:
    """Places wherever there is room, moved apart over all of the rectangle. [mm]"""
    spots = places(sizes, wide, high) or [(0.0, 0.0)] * len(sizes)
    pairs = list(zip(sizes, spots, strict=True))
    across = min(((wide - w) / x for (w, _), (x, _) in pairs if x), default=1.0)
    down = min(((high - h) / y for (_, h), (_, y) in pairs if y), default=1.0)
    return [(x * max(across, 1.0), y * max(down, 1.0)) for x, y in spots]
