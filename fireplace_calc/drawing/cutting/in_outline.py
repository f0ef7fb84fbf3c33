"""Where things lie in the outline of a piece: its middle, its mark, leaders that pass over it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.polygons import Polygon

CLEAR, TAIL = 0.9, 1.4
"""Between a mark and the sides of its piece, and over and under it, where letters have tails. [mm]
"""


SIDES = {"left": (0, -1), "right": (0, 1), "below": (1, -1), "above": (1, 1)}
"""Axis that runs away from each side, and which way. [-]"""
NEAR, INTO = 0.003, 0.3
"""Corners so near to the outermost one count with it [m], and how far a leader goes from there to
the middle of its piece. [-]
"""
TRIED = sorted(
    ((u / 10, v / 10) for u in range(-4, 5) for v in range(-4, 5)), key=lambda uv: hypot(*uv)
)
"""Places of a mark in its piece, from the middle out, in widths and heights of the piece. [-]"""


def middle(ring: Polygon) -> Pair:
    """Centroid of a polygon. [m]"""
    (x0, y0), whole, x, y = ring[0], 0.0, 0.0, 0.0
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        turn = (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
        whole += turn
        x += turn * (ax + bx - 2 * x0) / 3
        y += turn * (ay + by - 2 * y0) / 3
    return (x0 + x / whole, y0 + y / whole) if abs(whole) > 1e-12 else (x0, y0)


def bounds(ring: Polygon) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of a polygon. [m]"""
    xs, ys = zip(*ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


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
    wide, high = _half(mark, k)
    around = [(x + u * wide, y + v * high) for u in (-1, 0, 1) for v in (-1, 0, 1)]
    return all(inside(ring, point) for point in around)


def _half(mark: str, k: float) -> Pair:
    """Half of what a mark takes up, across and upright. [m]"""
    return (width(mark, SMALL) / 2 + CLEAR) / k, (SMALL / 2 + TAIL) / k


def mark_places(ring: Polygon, mark: str, k: float) -> Iterator[Pair]:
    """Where a mark has room in a piece, its middle first. [m]"""
    (x, y), (left, low, right, top) = middle(ring), bounds(ring)
    half, up = _half(mark, k)
    for u, v in TRIED:
        at = (x + u * (right - left), y + v * (top - low))
        within = left <= at[0] - half and at[0] + half <= right
        if within and low <= at[1] - up and at[1] + up <= top and holds_mark(ring, mark, k, at):
            yield at


def passes_over(at: Pair, half: float, start: Pair, end: Pair) -> bool:
    """Whether a leader passes over a mark, tried at points along it. [mm]"""
    (x, y), (x0, y0), (x1, y1) = at, start, end
    wide, high = half + CLEAR, SMALL / 2 + CLEAR
    if not (min(x0, x1) - wide < x < max(x0, x1) + wide):
        return False
    if not (min(y0, y1) - high < y < max(y0, y1) + high):
        return False
    return any(
        abs(x0 + t * (x1 - x0) - x) < wide and abs(y0 + t * (y1 - y0) - y) < high
        for t in (n / 40 for n in range(41))
    )


def all_crossed(ring: Polygon, mark: str, k: float, leaders: Sequence[tuple[Pair, Pair]]) -> bool:
    """Whether a leader runs over every place that a mark has in a piece. [mm]"""
    half, (x, y) = width(mark, SMALL) / 2, middle(ring)
    if not any(passes_over((x * k, y * k), half, *one) for one in leaders):
        return False
    return all(
        any(passes_over((u * k, v * k), half, *one) for one in leaders)
        for u, v in mark_places(ring, mark, k)
    )


def toward(ring: Polygon, side: str) -> Pair:
    """Where a leader from one side ends in a piece: near its edge there, so that it crosses no
    other mark. [m]
    """
    axis, way = SIDES[side]
    most = max(way * point[axis] for point in ring)
    near = [point for point in ring if most - way * point[axis] < NEAR]
    (x, y), count = middle(ring), len(near)
    edge = (sum(point[0] for point in near) / count, sum(point[1] for point in near) / count)
    return (edge[0] + INTO * (x - edge[0]), edge[1] + INTO * (y - edge[1]))
