"""A face of coursed rubble: courses of uneven height, stones of uneven length, the same ones every
time it is drawn.
"""

from __future__ import annotations

from functools import lru_cache
from math import ceil, floor

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.units import INCH

COURSES = tuple(h * INCH for h in (7.0, 5.0, 8.5, 6.0, 9.0, 5.5, 7.5))
"""Heights of courses in turn, with their joints (as drawn). [m]"""
SHORT, LONG = 8 * INCH, 20 * INCH
"""Lengths of stones, with their joints (as drawn). [m]"""
WAVER = 0.3 * INCH
"""How far a joint strays from its line. [m]"""
JOINT = 0.45 * INCH
"""Between two stones, where it is told apart from them. [m]"""
PATCH = 2.0
"""Stones are laid out for whole patches and kept, so that a wall that grows by a little is not laid
out again. [m]
"""


def _stray(*numbers: Number) -> Array:
    """Numbers from nought to one that look drawn by lot but follow from where they stand."""
    stray: Array = (
        np.abs(
            np.sin(sum(n * k for n, k in zip(numbers, (12.9898, 78.233, 37.719), strict=False)))
            * 43758.5453
        )
        % 1.0
    )
    return stray


def rubble(left: float, right: float, bottom: float, top: float) -> np.ndarray:
    """Joints of a wall of coursed rubble; a bed joint runs at nought, and courses count from there
    up and down.

    Parameters
    ----------
    left, right, bottom, top : float
        Of the face. [m]

    Returns
    -------
    array, (k, 2, 2)
        Segments of ``(x, z)``; they may reach past the ends by a stone. [m]
    """
    wide = ceil(max(-left, right) / PATCH)
    made: Array = _patch(wide, floor(bottom / PATCH), ceil(top / PATCH))
    low, high = made.min(axis=1), made.max(axis=1)
    shown: Array = made[
        (high[:, 0] > left) & (low[:, 0] < right) & (high[:, 1] > bottom) & (low[:, 1] < top)
    ]
    return shown


def rubble_stones(left: float, right: float, bottom: float, top: float) -> list[Array]:
    """The stones between those joints, each without its joint.

    Parameters
    ----------
    left, right, bottom, top : float
        Of the face. [m]

    Returns
    -------
    list of array, each (4, 2)
        Corners counter-clockwise; they may reach past the ends. [m]
    """
    wide = ceil(max(-left, right) / PATCH)
    foot, head, under, over, middle, split = _laid(wide, floor(bottom / PATCH), ceil(top / PATCH))

    def between(low: Array, high: Array, foot_at: Array, head_at: Array) -> Array:
        return np.stack(
            [
                np.stack([foot_at[:, :-1], low[:, :-1]], -1),
                np.stack([foot_at[:, 1:], low[:, 1:]], -1),
                np.stack([head_at[:, 1:], high[:, 1:]], -1),
                np.stack([head_at[:, :-1], high[:, :-1]], -1),
            ],
            2,
        )

    mean = (foot + head) / 2
    # A stone that is split lies under and over one level; its halves meet the mean of its ends.
    level = np.concatenate([middle, middle[:, -1:]], axis=1)
    whole = between(under, over, foot, head)[~split]
    lower, upper = between(under, level, foot, mean)[split], between(level, over, mean, head)[split]
    lower[:, 2:, 1] = upper[:, :2, 1] = middle[split][:, None]
    quads = _without_joint(np.concatenate([whole, lower, upper]))
    low, high = quads.min(axis=1), quads.max(axis=1)
    shown = (high > (left, bottom)).all(axis=1) & (low < (right, top)).all(axis=1)
    return list(quads[shown])


def _without_joint(quads: Array) -> Array:
    """Each corner brought in by half a joint, along both sides."""
    inward = np.array([(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)]) * JOINT / 2
    return quads + inward


@lru_cache(maxsize=16)
def _laid(wide: int, low: int, high: int) -> tuple[Array, Array, Array, Array, Array, BoolArray]:
    """Of so many patches: ends of the stones along their bed and their head, those two levels at
    each end, the level a stone is split at, and whether it is.
    """
    whole = sum(COURSES)
    first, last = floor(low * PATCH / whole), ceil(high * PATCH / whole)
    beds = first * whole + np.concatenate([[0.0], np.cumsum(np.tile(COURSES, last - first))])
    row = np.arange(float(len(beds) - 1))[:, None] + first * len(COURSES)
    n = np.arange(float(ceil(wide * PATCH / SHORT) + 1))[None, :]
    ahead, behind = (
        np.cumsum(SHORT + (LONG - SHORT) * _stray(n + 1, row, side), axis=1) for side in (0, 1)
    )
    x = (_stray(row, 3.0) - 0.5) * SHORT + np.concatenate(
        [-behind[:, ::-1], np.zeros_like(row), ahead], axis=1
    )
    which = np.arange(-n.size, n.size + 1.0)[None, :]
    foot, head = (x + WAVER * (2 * _stray(which, row + k) - 1) for k in (0.25, 0.75))
    under, over = (
        z[:, None] + WAVER * (_stray(which, row + k) - 0.5)
        for z, k in ((beds[:-1], 0.1), (beds[1:], 1.1))
    )
    split = (_stray(which[:, :-1], row + 0.5) > 0.72) & (beds[1:] - beds[:-1] > 6.5 * INCH)[:, None]
    middle = under[:, :-1] + (over - under)[:, :-1] * (0.42 + 0.16 * _stray(which[:, :-1], row))
    return foot, head, under, over, middle, split


@lru_cache(maxsize=16)
def _patch(wide: int, low: int, high: int) -> Array:
    """Every joint of so many patches to either side, from one level to another."""
    foot, head, under, over, middle, split = _laid(wide, low, high)
    mean = (foot + head) / 2
    return np.concatenate(
        [
            _segments(foot[:, :-1], under[:, :-1], foot[:, 1:], under[:, 1:]),
            _segments(foot, under, head, over),
            _segments(mean[:, :-1][split], middle[split], mean[:, 1:][split], middle[split]),
        ]
    )


def _segments(x0: np.ndarray, z0: np.ndarray, x1: np.ndarray, z1: np.ndarray) -> np.ndarray:
    return np.stack([x0.ravel(), z0.ravel(), x1.ravel(), z1.ravel()], 1).reshape(-1, 2, 2)
