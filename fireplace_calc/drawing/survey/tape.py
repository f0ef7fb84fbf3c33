"""How an arrow is told: from where to where a tape is held, once or on both sides. [m]"""

from __future__ import annotations

from collections.abc import Callable

from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.parts import Geometry

TapeSpan = tuple[Pair, Pair]
Hold = Callable[[Geometry], tuple[TapeSpan, ...]]
"""One arrow for each reading that has its own place; else one."""
Held = tuple[tuple[str, Hold], ...]
"""Sketch, and from where to where on it."""


def across(z: Callable[[Geometry], float], half: Callable[[Geometry], float]) -> Hold:
    """Level, over the center line.

    Parameters
    ----------
    z, half : callable
        From a geometry: at which level, and how far to each side. [m]
    """
    return lambda g: (((-half(g), z(g)), (half(g), z(g))),)


def both(one: Callable[[Geometry], TapeSpan]) -> Hold:
    """The same on the left, then on the right."""

    def hold(g: Geometry) -> tuple[TapeSpan, ...]:
        (a, b), (c, d) = one(g)
        return ((-a, b), (-c, d)), ((a, b), (c, d))

    return hold


def upright(x: float, low: float, high: float) -> tuple[TapeSpan, ...]:
    """Straight up.

    Parameters
    ----------
    x, low, high : float
        Where, and from which level to which. [m]
    """
    return (((x, low), (x, high)),)
