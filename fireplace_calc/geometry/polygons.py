"""Polygons in a plane: their area, and what is left when one is cut by another.

The little that layouts, drawings and contacts need. A ring runs counter-clockwise. [m]

Written here and not taken from a geometry library: a layout cuts hundreds of small rings while a
slider moves, and on plain floats one cut costs a fifth of what a library of compiled shapes takes
to wrap its corners and hand them back. The tests hold every function against such a library.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fireplace_calc.base.tolerances import ROUNDING

Point = tuple[float, float]
Polygon = tuple[Point, ...]


def area(polygon: Polygon) -> float:
    """Area inside a simple polygon.

    Parameters
    ----------
    polygon : Polygon
        Corners in order, either way round. [m]

    Returns
    -------
    float
        Always positive. [m2]

    Notes
    -----
    Half the sum of cross products of neighboring corners (the shoelace formula).

    Examples
    --------
    >>> area(((0, 0), (2, 0), (2, 1), (0, 1)))
    2.0
    """
    return abs(signed_area(polygon))


def box(x0: float, x1: float, y0: float, y1: float) -> Polygon:
    """Rectangle from its four sides.

    Parameters
    ----------
    x0, x1, y0, y1 : float
        Left, right, front and back. [m]

    Returns
    -------
    Polygon
        Counter-clockwise from the left front. [m]
    """
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def chords(polygon: Polygon, x: float) -> list[tuple[float, float]]:
    """Where a line front to back enters and leaves a polygon, convex or not.

    Parameters
    ----------
    polygon : Polygon
        Corners in order. [m]
    x : float
        Where the line stands. [m]

    Returns
    -------
    list of tuple
        Pairs of y, front to back; empty where it passes by. [m]

    Examples
    --------
    >>> chords(((0, 0), (3, 0), (3, 3), (0, 3), (0, 2), (2, 2), (2, 1), (0, 1)), 1)
    [(0.0, 1.0), (2.0, 3.0)]
    """
    found = []
    px, py = polygon[-1]
    for qx, qy in polygon:
        if (px <= x) != (qx <= x):
            found.append(py + (x - px) * (qy - py) / (qx - px))
        px, py = qx, qy
    found.sort()
    return list(zip(found[::2], found[1::2], strict=True))


def signed_area(polygon: Sequence[Point]) -> float:
    """Area inside a simple polygon, negative where its corners run clockwise.

    Parameters
    ----------
    polygon : sequence of Point
        Corners in order. [m]

    Returns
    -------
    float
        [m2]

    Examples
    --------
    >>> signed_area(((0, 0), (0, 1), (2, 1), (2, 0)))
    -2.0
    """
    double = 0.0
    px, py = polygon[-1]
    for x, y in polygon:
        double += px * y - x * py
        px, py = x, y
    return double / 2


def is_convex(polygon: Polygon) -> bool:
    """Whether a ring turns one way only; points on a straight side count for nothing.

    Parameters
    ----------
    polygon : Polygon
        Corners in order, either way round. [m]
    """
    turns = [
        (bx - ax) * (cy - by) - (by - ay) * (cx - bx)
        for (ax, ay), (bx, by), (cx, cy) in zip(
            polygon, polygon[1:] + polygon[:1], polygon[2:] + polygon[:2], strict=True
        )
    ]
    slack = ROUNDING * max(abs(t) for t in turns)
    return min(turns) >= -slack or max(turns) <= slack


def chord(polygon: Polygon, x: float) -> tuple[float, float] | None:
    """Where a line front to back enters a polygon first and leaves it last.

    Parameters
    ----------
    polygon : Polygon
        Corners in order; of a convex one that is all there is to say. [m]
    x : float
        Where the line stands. [m]

    Returns
    -------
    tuple of float or None
        Two values of y, the smaller first; none where it passes by. [m]
    """
    found = chords(polygon, x)
    return (found[0][0], found[-1][1]) if found else None


def cut_off(ring: Sequence[Point], a: Point, b: Point) -> list[Point]:
    """What of a ring lies left of a line.

    Parameters
    ----------
    ring : sequence of Point
        Corners in order; the ring may be open or closed, convex or not. [m]
    a, b : Point
        The line runs from the first to the second. [m]

    Returns
    -------
    list of Point
        Empty when nothing lies left of it. [m]
    """
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
    """What of a ring lies in a convex zone.

    Parameters
    ----------
    ring : iterable of Point
        Corners in order. [m]
    zone : sequence of Point
        Corners of a convex ring, counter-clockwise. [m]
    sides : iterable of int, optional
        Those sides of the zone that can matter, by the number of their end point. [-]

    Returns
    -------
    list of Point
        Empty when less than a triangle is left. [m]

    References
    ----------
    I. E. Sutherland and G. W. Hodgman, Reentrant polygon clipping, Communications of the ACM 17
    (1974), 32-42.

    Examples
    --------
    >>> overlap([(0, 0), (2, 0), (2, 2), (0, 2)], [(1, 1), (3, 1), (3, 3), (1, 3)])
    [(1.0, 1.0), (2.0, 1.0), (2, 2), (1.0, 2.0)]
    """
    kept = list(ring)
    for k in range(len(zone)) if sides is None else sides:
        if len(kept) < 3:
            return []
        kept = cut_off(kept, zone[k - 1], zone[k])
    return kept if len(kept) > 2 else []


def tidy(ring: Sequence[Point]) -> Polygon:
    """The same ring without points that coincide or lie on a straight side.

    Parameters
    ----------
    ring : sequence of Point
        Corners in order. [m]

    Returns
    -------
    Polygon
        Empty when no area is left. [m]
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
    for (x, y), (bx, by) in zip(points, (*points[1:], points[0]), strict=True):
        if abs((x - ax) * (by - y) - (y - ay) * (bx - x)) > ROUNDING * (
            abs(bx - ax) + abs(by - ay)
        ):
            kept.append((x, y))
        ax, ay = x, y
    return tuple(kept) if len(kept) > 2 else ()


def joined(lower: Polygon, upper: Polygon, level: float) -> Polygon | None:
    """Two convex rings that meet along a level line, as one ring.

    Parameters
    ----------
    lower, upper : Polygon
        Corners counter-clockwise. [m]
    level : float
        Of the line they meet on. [m]

    Returns
    -------
    Polygon or None
        Nothing when they only touch at a point or not at all. [m]
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


def _along(ring: Polygon, level: float, rising: bool) -> tuple[int, float, float] | None:
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
