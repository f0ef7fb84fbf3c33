"""Hatching: lines and dots clipped to polygons with holes, by scan lines.

Our own: a painter's hatch repeats one tile of fixed size, whatever the scale, and cannot leave out
what stands in front; here the lines keep their millimeters on paper, and all lines of one hatch are
cut in one pass over all edges.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, radians, sin

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.sheets.style import Hatch


def lines_in(
    rings: list[np.ndarray],
    angle: float,
    gap: float,
    shift: float = 0.0,
    holes: Sequence[np.ndarray] = (),
) -> np.ndarray:
    """Parallel lines inside a polygon.

    Parameters
    ----------
    rings : list of array, each (n, 2)
        What lies inside an odd number of them is hatched. [mm]
    angle : float
        Of the lines, from the horizontal. [deg]
    gap, shift : float
        Between lines, and of the first one. [mm]
    holes : list of array, each (n, 2)
        Kept free; they may overlap each other and the outline. [mm]

    Returns
    -------
    array, (k, 2, 2)
        Segments. [mm]
    """
    c, s = cos(radians(angle)), sin(radians(angle))
    turn: Array = np.array([[c, -s], [s, c]])
    all_rings = [*rings, *holes]
    a = np.concatenate(all_rings) @ turn
    b = np.empty_like(a)
    b[:-1] = a[1:]
    sizes = [len(ring) for ring in all_rings]
    ends = np.cumsum(sizes)
    b[ends - 1] = a[ends - sizes]
    low, high = a[:, 1].min(), a[:, 1].max()
    levels = (
        np.arange(np.ceil((low - shift) / gap), np.floor((high - shift) / gap) + 1) * gap
        + shift
        + 1e-7
    )
    if not levels.size:
        return np.empty((0, 2, 2))
    # (level, edge): an edge is crossed where its ends lie on different sides of the level
    under = a[:, 1] <= levels[:, None]
    row, edge = np.nonzero(under != (b[:, 1] <= levels[:, None]))
    y = levels[row]
    x = a[edge, 0] + (y - a[edge, 1]) / (b[edge, 1] - a[edge, 1]) * (b[edge, 0] - a[edge, 0])
    # left to right along each level, crossings pair up: in, out, in, out
    order = np.lexsort((x, row))
    points = np.stack([x[order], y[order]], axis=1)
    if not len(holes):
        segments: Array = points.reshape(-1, 2, 2) @ turn.T
        return segments
    # with holes: ring 0 is the outline, 1 and up the holes; odd crossings so far means inside
    whose = np.repeat([0] * len(rings) + [*range(1, len(holes) + 1)], sizes)[edge[order]]
    inside = np.cumsum(whose[:, None] == np.arange(len(holes) + 1), axis=0) % 2 == 1
    drawn = np.nonzero(inside[:, 0] & ~inside[:, 1:].any(axis=1))[0]
    found = np.stack([points[drawn], points[drawn + 1]], axis=1)
    kept: Array = found[found[:, 1, 0] - found[:, 0, 0] > 1e-9] @ turn.T
    return kept


def coursing(
    rings: list[np.ndarray],
    holes: list[np.ndarray],
    origin: tuple[float, float],
    course: float,
    unit: float,
) -> np.ndarray:
    """Bed joints, and head joints in running bond, of a face of units.

    Parameters
    ----------
    rings, holes : list of array, each (n, 2)
        The face, and what stands in front of it. [mm]
    origin : tuple of float
        Where a head joint meets a bed joint. [mm]
    course, unit : float
        Height of a course and length of a unit, each with its joint. [mm]

    Returns
    -------
    array, (k, 2, 2)
        Segments. [mm]
    """
    beds = lines_in(rings, 0.0, course, origin[1] % course, holes)
    upright = lines_in(rings, 90.0, unit / 2, -origin[0], holes)
    # every other one stands half a unit aside, in the odd courses
    wanted = np.rint(2 * (upright[:, 0, 0] - origin[0]) / unit) % 2
    return np.concatenate([beds, _heads(upright, wanted, 2, origin[1], course)])


def bonded(
    rings: list[np.ndarray],
    holes: list[np.ndarray],
    origin: tuple[float, float],
    course: float,
    module: float,
    repeat: int,
    heads: Sequence[tuple[float, Sequence[int]]],
) -> np.ndarray:
    """The same in any bond.

    Parameters
    ----------
    rings, holes : list of array, each (n, 2)
        The face, and what stands in front of it. [mm]
    origin : tuple of float
        From where the bond is set out. [mm]
    course, module : float
        Height of a course, and after how much of it its joints come again. [mm]
    repeat : int
        After how many courses they do. [-]
    heads : sequence of float and sequence of int
        Where a head joint stands in the module [mm], and in which courses of the repeat.

    Returns
    -------
    array, (k, 2, 2)
        Segments. [mm]
    """
    found = [lines_in(rings, 0.0, course, origin[1] % course, holes)]
    for at, rows in heads:
        upright = lines_in(rings, 90.0, module, -origin[0] - at, holes)
        if len(rows) == repeat:
            found.append(upright)
            continue
        for row in rows:
            wanted = np.full(len(upright), row)
            found.append(_heads(upright, wanted, repeat, origin[1], course))
    return np.concatenate(found)


def _heads(
    upright: np.ndarray, wanted: np.ndarray, repeat: int, origin: float, course: float
) -> np.ndarray:
    """Of each upright line what stands in its own course of every so many, (k, 2, 2). [mm]"""
    x, low, high = upright[:, 0, 0], upright[:, :, 1].min(axis=1), upright[:, :, 1].max(axis=1)
    first, last = np.floor((low - origin) / course), np.ceil((high - origin) / course)
    first += (wanted - first) % repeat
    counts = np.maximum(np.ceil((last - first) / repeat), 0).astype(int)
    which, step = counted(counts)
    row = first[which] + repeat * step
    bottom = np.maximum(origin + row * course, low[which])
    top = np.minimum(origin + (row + 1) * course, high[which])
    heads: Array = np.stack([np.stack([x[which], bottom], 1), np.stack([x[which], top], 1)], 1)
    kept: Array = heads[top - bottom > 0.05]
    return kept


def counted(counts: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """So many of each: of which one every one is, and its number among its own.

    >>> [each.tolist() for each in counted(np.array([2, 0, 3]))]
    [[0, 0, 2, 2, 2], [0, 1, 0, 1, 2]]
    """
    which = np.repeat(np.arange(len(counts)), counts)
    return which, np.arange(len(which)) - np.repeat(np.cumsum(counts) - counts, counts)


def hatch_lines(rings: list[np.ndarray], hatch: Hatch, size: float = 1.0) -> np.ndarray:
    """All segments of a hatch inside a polygon, so many times as wide apart as usual, dots as very
    short ones. [mm]
    """
    gap = hatch.gap * size
    found = [lines_in(rings, angle, gap) for angle in hatch.angles]
    if hatch.pair:
        found += [lines_in(rings, angle, gap, hatch.pair) for angle in hatch.angles]
    if hatch.dots:
        found.append(_dots(rings, gap))
    return np.concatenate(found) if found else np.empty((0, 2, 2))


def _dots(rings: list[np.ndarray], gap: float) -> np.ndarray:
    """Scattered dots, the same ones every time: points along scan lines, thinned by their own
    position.
    """
    rows = lines_in(rings, 0.0, gap * 0.7)
    start, end, y = rows[:, 0, 0], rows[:, 1, 0], rows[:, 0, 1]
    index = np.rint(y / (gap * 0.7))
    shift = (index * 0.618034 % 1.0) * gap
    first, last = np.ceil((start - shift) / gap), np.floor((end - shift) / gap)
    counts = np.maximum(last - first + 1, 0).astype(int)
    which, step = counted(counts)
    x = (first[which] + step) * gap + shift[which]
    stray = np.sin(x * 12.9898 + y[which] * 78.233) * gap * 0.22
    x = np.clip(x + stray, start[which], end[which])
    level = y[which]
    return np.stack([np.stack([x - 0.1, level], 1), np.stack([x + 0.1, level], 1)], 1)
