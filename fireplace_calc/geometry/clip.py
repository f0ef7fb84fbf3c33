"""Outlines cut by one another: the little plane geometry that layouts, drawings and contacts need.
A ring runs counter-clockwise. [m]
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.geometry.solids import Point
from fireplace_calc.geometry.solids import Polygon as Ring


def cut_off(ring: Sequence[Point], a: Point, b: Point) -> list[Point]:
    """What of a ring lies left of the line from ``a`` to ``b``. [m]"""
    ax, ay = a
    dx, dy = b[0] - ax, b[1] - ay
    kept: list[Point] = []
    px, py = ring[-1]
    before = dx * (py - ay) - dy * (px - ax)
    for x, y in ring:
        here = dx * (y - ay) - dy * (x - ax)
        if (before >= 0) != (here >= 0):
            t = before / (before - here)
            kept.append((px + t * (x - px), py + t * (y - py)))
        if here >= 0:
            kept.append((x, y))
        px, py, before = x, y, here
    return kept


def overlap(
    ring: Iterable[Point], zone: Sequence[Point], sides: Iterable[int] | None = None
) -> list[Point]:
    """What of a ring lies in a convex zone (Sutherland and Hodgman); ``sides`` are those of the
    zone that can matter.

    >>> overlap([(0, 0), (2, 0), (2, 2), (0, 2)], [(1, 1), (3, 1), (3, 3), (1, 3)])
    [(1.0, 1.0), (2.0, 1.0), (2, 2), (1.0, 2.0)]
    """
    kept = list(ring)
    for k in range(len(zone)) if sides is None else sides:
        if len(kept) < 3:
            return []
        kept = cut_off(kept, zone[k - 1], zone[k])
    return kept if len(kept) > 2 else []


def tidy(ring: Sequence[Point]) -> Ring:
    """The same ring without points that coincide or lie on a straight side; nothing when no area is
    left.
    """
    if len(ring) < 3:
        return ()
    points, (px, py) = [], ring[-1]
    for x, y in ring:
        if abs(x - px) > ROUNDING or abs(y - py) > ROUNDING:
            points.append((x, y))
        px, py = x, y
    if len(points) < 3:
        return ()
    kept, (ax, ay) = [], points[-1]
    for k, (x, y) in enumerate(points):
        bx, by = points[k + 1 - len(points)]
        if abs((x - ax) * (by - y) - (y - ay) * (bx - x)) > ROUNDING * (
            abs(bx - ax) + abs(by - ay)
        ):
            kept.append((x, y))
        ax, ay = x, y
    return tuple(kept) if len(kept) > 2 else ()


def joined(lower: Ring, upper: Ring, level: float) -> Ring | None:
    """Two convex rings that meet along a level line, as one ring; nothing when they only touch at a
    point or not at all.
    """
    under = _along(lower, level, rising=False)
    over = _along(upper, level, rising=True)
    if under is None or over is None:
        return None
    (i, right, left), (j, start, end) = under, over
    if min(right, end) - max(left, start) <= ROUNDING:
        return None
    first = lower[i + 1 :] + lower[: i + 1]
    second = upper[j + 1 :] + upper[: j + 1]
    return tidy(first + second)


def _along(ring: Ring, level: float, rising: bool) -> tuple[int, float, float] | None:
    """The side of a ring that lies on a level, running to the right or to the left: its number and
    its ends.
    """
    for k, (x, y) in enumerate(ring):
        ex, ey = ring[(k + 1) % len(ring)]
        if (
            abs(y - level) < ROUNDING
            and abs(ey - level) < ROUNDING
            and abs(ex - x) > ROUNDING
            and (ex > x) == rising
        ):
            return k, x, ex
    return None
