"""Where things lie in the outline of a piece."""

from __future__ import annotations

from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.polygons import Polygon


def middle(ring: Polygon) -> Pair:
    """Centroid of a polygon. [m]"""
    (x0, y0), whole, x, y = ring[0], 0.0, 0.0, 0.0
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        turn = (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
        whole += turn
        x += turn * (ax + bx - 2 * x0) / 3
        y += turn * (ay + by - 2 * y0) / 3
    return (x0 + x / whole, y0 + y / whole) if abs(whole) > 1e-12 else (x0, y0)


def spans(ring: Polygon, level: float) -> bool:
    """Whether a level passes through a polygon. [m]"""
    return min(y for _, y in ring) <= level <= max(y for _, y in ring)


def inside(ring: Polygon, point: Pair) -> bool:
    """Whether a point lies in a polygon. [m]"""
    x, y = point
    crossed = False
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            crossed = not crossed
    return crossed
