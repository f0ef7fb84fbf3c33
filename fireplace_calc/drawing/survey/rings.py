"""Lines of a sketch: points in meters, and how heavy each is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from fireplace_calc.drawing.sheets.sheet import Pair

Ring = list[Pair]
Line = tuple[Ring, str]
"""Points [m] and the weight of the line."""


def closed(points: Iterable[Iterable[float]]) -> Ring:
    """A polygon as a line that comes back to its start.

    Parameters
    ----------
    points : iterable
        [m]
    """
    ring = [(float(x), float(y)) for x, y in points]
    return [*ring, ring[0]]


def clipped(points: Ring, window: tuple[float, float, float, float]) -> Iterator[Ring]:
    """Those stretches of a line that lie in a window.

    Parameters
    ----------
    points : list of pair
        [m]
    window : left, bottom, right, top
        [m]
    """
    run: Ring = []
    for a, b in pairwise(points):
        part = _stretch(a, b, window)
        if part is None:
            continue
        if run and run[-1] != part[0]:
            yield run
            run = []
        run = [*run, part[1]] if run else [*part]
    if run:
        yield run


Box = tuple[float, float, float, float]


def _stretch(a: Pair, b: Pair, window: Box) -> tuple[Pair, Pair] | None:
    """A straight stretch, cut off at the edges of a window; nothing where it passes by."""
    first, last = 0.0, 1.0
    for start, end, low, high in (
        (a[0], b[0], window[0], window[2]),
        (a[1], b[1], window[1], window[3]),
    ):
        run = end - start
        if run == 0:
            if not low <= start <= high:
                return None
            continue
        near, far = sorted(((low - start) / run, (high - start) / run))
        first, last = max(first, near), min(last, far)
    if first >= last:
        return None
    at = [(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])) for t in (first, last)]
    return (a if first == 0 else at[0]), (b if last == 1 else at[1])
