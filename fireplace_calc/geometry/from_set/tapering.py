"""What stands between the outlines of a lift at its foot, half way up and at its head. [m]"""

from __future__ import annotations

from functools import lru_cache
from math import dist

from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.geometry.solids import Loft, prism

STRAIGHT = 1e-5
"""Rings nearer than this to the middle of two others are it. [m]"""


def between(lower: Polygon, middle: Polygon, upper: Polygon, low: float, high: float) -> Loft:
    """A loft where the outline changes evenly; else the one half way up, all the way.

    Parameters
    ----------
    lower, middle, upper : Polygon
        Outlines at foot, half way and head. [m]
    low, high : float
        Levels. [m]

    Returns
    -------
    Loft
    """
    if len(lower) == len(middle) == len(upper):
        over = in_step(lower, upper)
        half = tuple(((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(lower, over, strict=True))
        if max(map(dist, half, in_step(half, middle))) < STRAIGHT:
            return Loft(low, high, lower, over)
    return prism(low, high, middle)


def in_step(lower: Polygon, upper: Polygon) -> Polygon:
    """The upper ring turned so that its corners stand over those of the lower.

    Parameters
    ----------
    lower, upper : Polygon
        Of equally many corners. [m]

    Returns
    -------
    Polygon
        [m]
    """
    turns = (upper[k:] + upper[:k] for k in range(len(upper)))
    return min(turns, key=lambda ring: sum(map(dist, lower, ring)))


@lru_cache(maxsize=1024)
def alike(one: Polygon, other: Polygon) -> bool:
    """Whether two rings are the same but for what an offset leaves.

    Parameters
    ----------
    one, other : Polygon
        [m]
    """
    return len(one) == len(other) and max(map(dist, one, in_step(one, other))) < STRAIGHT / 10


def matched(lower: tuple[Polygon, ...], upper: tuple[Polygon, ...]) -> tuple[Polygon, ...]:
    """Of the upper rings, for each lower one, that which stands nearest over it.

    Parameters
    ----------
    lower, upper : tuple of Polygon
        [m]

    Returns
    -------
    tuple of Polygon
        [m]
    """

    def middle(ring: Polygon) -> tuple[float, float]:
        return sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring)

    return tuple(min(upper, key=lambda u: dist(middle(u), middle(ring))) for ring in lower)
