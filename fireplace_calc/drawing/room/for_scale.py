"""Somebody standing there, for scale."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.room.eye import Eye
from fireplace_calc.drawing.sheets.sheet import Pair, View
from fireplace_calc.proportion import proportion_figures

_HALF = np.array(
    [
        (0.0, 1.0),
        (0.026, 0.992),
        (0.042, 0.962),
        (0.042, 0.918),
        (0.030, 0.882),
        (0.027, 0.852),
        (0.058, 0.834),
        (0.105, 0.818),
        (0.128, 0.785),
        (0.136, 0.715),
        (0.141, 0.630),
        (0.149, 0.540),
        (0.150, 0.470),
        (0.142, 0.432),
        (0.127, 0.440),
        (0.123, 0.480),
        (0.120, 0.540),
        (0.113, 0.620),
        (0.100, 0.715),
        (0.090, 0.640),
        (0.086, 0.590),
        (0.094, 0.530),
        (0.098, 0.465),
        (0.092, 0.380),
        (0.074, 0.285),
        (0.076, 0.215),
        (0.062, 0.100),
        (0.054, 0.042),
        (0.078, 0.010),
        (0.070, 0.0),
        (0.024, 0.0),
        (0.020, 0.042),
        (0.024, 0.110),
        (0.016, 0.215),
        (0.020, 0.285),
        (0.008, 0.400),
        (0.0, 0.462),
    ]
)
"""Right half of somebody standing, crown to crotch, in parts of the height."""


def _smooth(ring: np.ndarray, steps: int = 3) -> np.ndarray:
    """A closed curve through every point of a ring (Catmull and Rom)."""
    a, b, c, d = (np.roll(ring, shift, axis=0)[:, None, :] for shift in (1, 0, -1, -2))
    t = np.linspace(0.0, 1.0, steps, endpoint=False)[None, :, None]
    curve: Array = (
        b
        + (c - a) * t / 2
        + (a - 2.5 * b + 2 * c - d / 2) * t**2
        + (1.5 * (b - c) + (d - a) / 2) * t**3
    ).reshape(-1, 2)
    return curve


_BODY = _smooth(np.concatenate([_HALF, _HALF[-2:0:-1] * (-1.0, 1.0)]))


def person(view: View, x: float, floor: float, height: float = 1.75) -> None:
    """Somebody standing there, for scale; feet on ``floor``, middle at ``x``. [m]"""
    body = np.stack([_BODY[:, 0], np.maximum(_BODY[:, 1], 0.0)], axis=1)
    view.seen(body * height + (x, floor), "person", "fine", layer=-1, ink="soft")


def somebody(view: View, eye: Eye, stands: Pair) -> Array:
    """A person on the floor of a room as an eye sees it; the ring that hides what lies behind.

    Parameters
    ----------
    view : View
    eye : Eye
    stands : float, float
        Across and toward the back. [m]

    Returns
    -------
    array (k, 2)
        [mm]
    """
    x, y = stands
    ((at, floor),) = eye.see([(x, y, 0.0)])
    person(view, at, floor, proportion_figures()["stature"][0] * eye.size(y))
    return view.sheet.fills[-1, "person"][-1][0]
