"""A polygon as convex ones: what reads outlines as convex takes a rebated one in pieces. [m]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.geometry.polygons import Point, Polygon, is_convex, signed_area


def _turn(a: Point, b: Point, c: Point) -> float:
    """Twice the area of a triangle, positive where it turns left. [m2]"""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _ears(ring: Polygon) -> list[Polygon]:
    """Triangles of a counter-clockwise ring, one ear clipped after another."""
    rest, found = list(ring), []
    while len(rest) > 3:
        for k in range(len(rest)):
            a, b, c = rest[k - 1], rest[k], rest[(k + 1) % len(rest)]
            if _turn(a, b, c) <= 0:
                continue
            others = (p for p in rest if p not in (a, b, c))
            if not any(
                _turn(a, b, p) >= 0 and _turn(b, c, p) >= 0 and _turn(c, a, p) >= 0 for p in others
            ):
                found.append((a, b, c))
                break
        # Where there is no ear, all that is left lies on one line: whichever point goes.
        del rest[k]
    return [*found, tuple(rest)]


def _merged(one: Polygon, other: Polygon) -> Polygon | None:
    """Two rings that share a side as one, where that is convex."""
    for i, a in enumerate(one):
        b = one[(i + 1) % len(one)]
        for j, c in enumerate(other):
            if c == b and other[(j + 1) % len(other)] == a:
                first = one[i + 1 :] + one[: i + 1]
                made = first + (other + other)[j + 2 : j + len(other)]
                return made if is_convex(made) else None
    return None


@lru_cache(maxsize=2048)
def convex_parts(polygon: Polygon) -> tuple[Polygon, ...]:
    """Convex polygons that together are this one and do not overlap.

    Parameters
    ----------
    polygon : Polygon
        Simple, either way round. [m]

    Returns
    -------
    tuple of Polygon
        Counter-clockwise; itself when it is convex. [m]

    References
    ----------
    S. Hertel and K. Mehlhorn, Fast triangulation of simple polygons, Lecture Notes in Computer
    Science 158 (1983), 207-218: of a triangulation every diagonal that is not needed is dropped.

    Examples
    --------
    >>> len(convex_parts(((0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3))))
    2
    """
    ring = polygon if signed_area(polygon) > 0 else polygon[::-1]
    if is_convex(ring):
        return (ring,)
    found = [t for t in _ears(ring) if signed_area(t) > ROUNDING**2]
    merging = True
    while merging:
        merging = False
        for i in range(len(found)):
            for j in range(i):
                made = _merged(found[j], found[i])
                if made is not None:
                    found[j] = made
                    del found[i]
                    merging = True
                    break
            if merging:
                break
    return tuple(found)
