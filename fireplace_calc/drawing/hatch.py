"""Hatching: lines and dots clipped to polygons with holes, by scan lines."""

from __future__ import annotations

from math import cos, radians, sin

import numpy as np

from fireplace_calc.drawing.style import Hatch


def lines_in(rings: list[np.ndarray], angle: float, gap: float, shift: float = 0.0) -> np.ndarray:
    """Parallel lines inside a polygon.

    Parameters
    ----------
    rings : list of array, each (n, 2)
        Outline and holes; what lies inside an odd number of them is hatched. [mm]
    angle : float
        Of the lines, from the horizontal. [deg]
    gap, shift : float
        Between lines, and of the first one. [mm]

    Returns
    -------
    array, (k, 2, 2)
        Segments. [mm]
    """
    c, s = cos(radians(angle)), sin(radians(angle))
    turn = np.array([[c, -s], [s, c]])
    a = np.concatenate(rings) @ turn
    b = np.empty_like(a)
    b[:-1] = a[1:]
    ends = np.cumsum([len(ring) for ring in rings])
    b[ends - 1] = a[np.concatenate([[0], ends[:-1]])]
    low, high = a[:, 1].min(), a[:, 1].max()
    levels = np.arange(np.ceil((low - shift) / gap), np.floor((high - shift) / gap) + 1) * gap + shift + 1e-7
    if not levels.size:
        return np.empty((0, 2, 2))
    over = (a[:, 1][None, :] <= levels[:, None]) != (b[:, 1][None, :] <= levels[:, None])
    row, edge = np.nonzero(over)
    y = levels[row]
    along = (y - a[edge, 1]) / (b[edge, 1] - a[edge, 1])
    x = a[edge, 0] + along * (b[edge, 0] - a[edge, 0])
    order = np.lexsort((x, row))
    points = np.stack([x[order], y[order]], axis=1)
    return points.reshape(-1, 2, 2) @ turn.T


def hatch_lines(rings: list[np.ndarray], hatch: Hatch) -> np.ndarray:
    """All segments of a hatch inside a polygon, dots as very short ones. [mm]"""
    found = [lines_in(rings, angle, hatch.gap) for angle in hatch.angles]
    if hatch.pair:
        found += [lines_in(rings, angle, hatch.gap, hatch.pair) for angle in hatch.angles]
    if hatch.dots:
        found.append(_dots(rings, hatch.gap))
    return np.concatenate(found) if found else np.empty((0, 2, 2))


def _dots(rings: list[np.ndarray], gap: float) -> np.ndarray:
    """Scattered dots, the same ones every time: points along scan lines, thinned by their own position."""
    rows = lines_in(rings, 0.0, gap * 0.7)
    if not len(rows):
        return rows
    start, end, y = rows[:, 0, 0], rows[:, 1, 0], rows[:, 0, 1]
    index = np.rint(y / (gap * 0.7))
    shift = (index * 0.618034 % 1.0) * gap
    first, last = np.ceil((start - shift) / gap), np.floor((end - shift) / gap)
    counts = np.maximum(last - first + 1, 0).astype(int)
    which = np.repeat(np.arange(len(rows)), counts)
    step = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    x = (first[which] + step) * gap + shift[which]
    stray = np.sin(x * 12.9898 + y[which] * 78.233) * gap * 0.22
    x = np.clip(x + stray, start[which], end[which])
    level = y[which]
    return np.stack([np.stack([x - 0.1, level], 1), np.stack([x + 0.1, level], 1)], 1)
