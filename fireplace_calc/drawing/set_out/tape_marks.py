"""Lengths as a tape has them: every place is rounded once, from its datum, so that sums hold."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import floor

from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.drawing.views.layout import length

EVEN = 1e-6
"""Of a mark: halves are rounded up, whatever the last digit of a float says. [-]"""


def on_tape(value: float, units: str) -> float:
    """A place at the nearest mark of the reader's tape: sixteenths, or whole millimeters.

    Parameters
    ----------
    value : float
        From its datum. [m]
    units : str

    Returns
    -------
    float
        [m]
    """
    mark = INCH / 16 if units == FEET_INCHES else MM
    return floor(value / mark + 0.5 + EVEN) * mark


def gap_texts(stops: Sequence[float], units: str) -> list[str]:
    """What stands in the gaps of a dimension string.

    Parameters
    ----------
    stops : sequence of float
        Places from one datum, rising: center line, face or floor. [m]
    units : str

    Returns
    -------
    list of str
        One for each gap; their sums are the places again, each rounded once.
    """
    marks = [on_tape(stop, units) for stop in stops]
    return [length(high - low, units) for low, high in pairwise(marks)]


def told_apart(stops: Sequence[float], units: str) -> list[float]:
    """Places without those that fall on the mark of another. [m]

    Parameters
    ----------
    stops : sequence of float
        [m]
    units : str
    """
    kept: dict[float, float] = {}
    for stop in sorted(stops):
        kept.setdefault(round(on_tape(stop, units), 6), stop)
    return list(kept.values())
