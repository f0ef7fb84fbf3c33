"""A face of random rubble: stones of many sizes fitted to one another, with no courses. One patch
of them comes again to all sides, so that a wall that grows keeps its stones.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH

WIDE, HIGH = 2.4, 2.1
"""The patch. [m]"""
STONES = 108
"""In a patch: a stone shows half a square foot. [-]"""
FLAT = 0.72
"""How much closer stones lie above one another than side by side: rubble lies on its bed. [-]"""
ROUNDS = 6
"""How often every stone is moved toward its own middle; more makes them all alike. [-]"""
JOINT = 0.55 * INCH
"""Between two stones. [m]"""
UNEVEN = 0.009
"""How much stones differ: the most that a squared distance is shifted by. [m2]"""


@lru_cache(maxsize=1)
def random_rubble() -> tuple[Array, ...]:
    """The stones of one patch, each without its joint.

    Returns
    -------
    tuple of array, each (n, 2)
        Corners counter-clockwise; stones at an end reach over it, and come again ``WIDE`` or
        ``HIGH`` on. [m]
    """
    return tuple(_inset(cell, JOINT / 2) for cell in _patch())


@lru_cache(maxsize=1)
def _patch() -> tuple[Array, ...]:
    """The stones with half a joint all round."""
    lot = np.random.default_rng(11)
    stretch = np.array([1.0, 1 / FLAT])
    size = np.array([WIDE, HIGH]) * stretch
    middles = lot.random((STONES, 2)) * size
    weight = UNEVEN * lot.random(STONES)
    for k in range(ROUNDS):
        cells = _cells(middles, weight * k / ROUNDS, size)
        middles = np.array([_middle(cell) for cell in cells])
    return tuple(cell / stretch for cell in _cells(middles, weight, size))


def rubble_around(left: float, right: float, bottom: float, top: float) -> list[Array]:
    """The stones of a face, counted from nought.

    Parameters
    ----------
    left, right, bottom, top : float
        Of the face. [m]

    Returns
    -------
    list of array, each (n, 2)
        They may reach past the ends. [m]
    """
    return _around(random_rubble(), left, right, bottom, top)


def random_joints(left: float, right: float, bottom: float, top: float) -> Array:
    """The middle of every joint of such a face.

    Parameters
    ----------
    left, right, bottom, top : float
        Of the face. [m]

    Returns
    -------
    array, (k, 2, 2)
        Segments of ``(x, z)``, each once; they may reach past the ends. [m]
    """
    once = {}
    for ring in _around(_patch(), left, right, bottom, top):
        for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
            once[tuple(np.round(a + b, 5))] = (a, b)
    return np.array(list(once.values())).reshape(-1, 2, 2)


def _around(
    patch: tuple[Array, ...], left: float, right: float, bottom: float, top: float
) -> list[Array]:
    found = []
    for i in range(int(np.floor(left / WIDE)) - 1, int(np.ceil(right / WIDE)) + 1):
        for k in range(int(np.floor(bottom / HIGH)) - 1, int(np.ceil(top / HIGH)) + 1):
            for ring in patch:
                here = ring + (i * WIDE, k * HIGH)
                low, high = here.min(axis=0), here.max(axis=0)
                if (high > (left, bottom)).all() and (low < (right, top)).all():
                    found.append(here)
    return found


def _cells(middles: Array, weight: Array, size: Array) -> list[Array]:
    """What lies nearer to each middle than to any other, by distance squared less its weight, on
    a patch that closes on itself.
    """
    shifts = np.array([(i, k) for i in (-1, 0, 1) for k in (-1, 0, 1)]) * size
    all_middles = (middles[None] + shifts[:, None]).reshape(-1, 2)
    all_weights = np.tile(weight, 9)
    reach = 3.5 * float(np.sqrt(size.prod() / len(middles)))
    cells = []
    for here, mine in zip(middles, weight, strict=True):
        away = all_middles - here
        far = (away**2).sum(axis=1)
        near = np.flatnonzero((far > 1e-12) & (far < reach**2))
        cell = here + np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)]) * reach
        for k in near[np.argsort(far[near])].tolist():
            # On the border both distances squared less their weights are equal.
            border = (far[k] + mine - all_weights[k]) / 2
            cell = _kept(cell, away[k], float(border + away[k] @ here))
        cells.append(cell)
    return cells


def _kept(ring: Array, normal: Array, level: float) -> Array:
    """What of a convex ring lies where ``normal`` times a point is at most ``level``."""
    depth = ring @ normal - level
    if (depth <= 0).all():
        return ring
    after, next_depth = np.roll(ring, -1, axis=0), np.roll(depth, -1)
    kept = []
    for a, b, da, db in zip(ring, after, depth.tolist(), next_depth.tolist(), strict=True):
        if da <= 0:
            kept.append(a)
        if (da < 0) != (db < 0) and da != db:
            kept.append(a + (b - a) * da / (da - db))
    return np.array(kept)


def _middle(ring: Array) -> Array:
    """Middle of area of a convex ring."""
    a, b = ring - ring[0], np.roll(ring, -1, axis=0) - ring[0]
    cross = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    middle: Array = ring[0] + ((a + b) * cross[:, None]).sum(axis=0) / (3 * cross.sum())
    return middle


def _inset(ring: Array, by: float) -> Array:
    """A convex ring with every side moved inward; counter-clockwise."""
    along = np.roll(ring, -1, axis=0) - ring
    outward = np.stack([along[:, 1], -along[:, 0]], 1)
    outward /= np.maximum(np.linalg.norm(along, axis=1), 1e-12)[:, None]
    made = ring
    for normal, corner in zip(outward, ring, strict=True):
        made = _kept(made, normal, float(normal @ corner) - by)
    return made
