"""Where things lie in the outline of a piece: its middle, its mark, leaders that pass over it."""

from __future__ import annotations

from math import hypot

from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.polygons import Polygon

CLEAR, TAIL = 0.9, 1.4
"""Between a mark and the sides of its piece, and over and under it, where letters have tails. [mm]
"""


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


def holds_mark(ring: Polygon, mark: str, k: float, at: Pair | None = None) -> bool:
    """Whether a mark has room in a piece, at its middle or elsewhere: all round its box lies
    within.
    """
    x, y = at or middle(ring)
    wide, high = (width(mark, SMALL) / 2 + CLEAR) / k, (SMALL / 2 + TAIL) / k
    around = [(x + u * wide, y + v * high) for u in (-1, 0, 1) for v in (-1, 0, 1)]
    return all(inside(ring, point) for point in around)


def mark_places(ring: Polygon, mark: str, k: float) -> list[Pair]:
    """Where a mark has room in a piece, its middle first. [m]"""
    (x, y), found = middle(ring), []
    wide, high = (max(p[n] for p in ring) - min(p[n] for p in ring) for n in (0, 1))
    steps = [n / 10 for n in range(-4, 5)]
    for u, v in sorted(((u, v) for u in steps for v in steps), key=lambda uv: hypot(*uv)):
        at = (x + u * wide, y + v * high)
        if holds_mark(ring, mark, k, at):
            found.append(at)
    return found


def passes_over(at: Pair, half: float, start: Pair, end: Pair) -> bool:
    """Whether a leader passes over a mark, tried at points along it. [mm]"""
    return any(
        abs(start[0] + t * (end[0] - start[0]) - at[0]) < half + 0.3
        and abs(start[1] + t * (end[1] - start[1]) - at[1]) < SMALL / 2 + 0.6
        for t in (n / 40 for n in range(41))
    )
