"""Tops on the marks of the tape, and still no joint outside its range. [m]"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.pieces.joints.taut_string import Ranges, least_departure
from fireplace_calc.pieces.joints.wanted_levels import RankedGate, settle_gates

SPLIT = 1e-6
"""Share of a mark that a range may end beyond it and still hold it: what floats lose. [-]"""


def tops_on_tape(
    ranges: Ranges, wanted: Sequence[RankedGate], start: float, tick: float
) -> Array | None:
    """Tops that all lie on marks.

    Parameters
    ----------
    ranges : Ranges
        Of the lifts. [m]
    wanted : sequence of RankedGate
        Levels that are wanted. [m]
    start : float
        Level that the first lift is set on; it need not lie on a mark. [m]
    tick : float
        From mark to mark. [m]

    Returns
    -------
    array, shape (n,), or None
        Levels of the tops; nothing where a range holds no whole number of marks. [m]

    Notes
    -----
    Ranges and wanted levels are drawn in to the marks they hold, and the plan is made within those.
    Then every top goes to the nearest mark, halves upward. Two tops that are at least a whole
    number of marks apart still are afterwards, and the same for at most, so no joint leaves its
    range. Rounding joints one by one would add up instead.
    """
    base = start / tick
    shift = np.zeros(len(ranges.least))
    shift[0] = base
    low = np.ceil(ranges.least / tick + shift - SPLIT)
    high = np.floor(ranges.most / tick + shift + SPLIT)
    if (low > high).any():
        return None
    counts = [_whole(place, tick) for place in wanted]
    gates, _ = settle_gates(low - shift, high - shift, counts, base)
    drawn = Ranges(low - shift, ranges.wanted / tick, high - shift, ranges.pull)
    tops = np.floor(base + np.cumsum(least_departure(drawn, gates, base)) + 0.5 + SPLIT)
    for n in range(len(tops)):
        under = tops[n - 1] if n else 0.0
        tops[n] = min(max(tops[n], under + low[n]), under + high[n])
    return np.asarray(tops * tick)


def _whole(place: RankedGate, tick: float) -> RankedGate:
    """A wanted level as the marks within its tolerance, or else the nearest one."""
    low, high = np.ceil(place.low / tick - SPLIT), np.floor(place.high / tick + SPLIT)
    if low > high:
        low = high = np.floor((place.low + place.high) / 2 / tick + 0.5)
    return RankedGate(place.place, float(low), float(high), place.rank)
