"""Rises of least departure that pass a row of gates: a string pulled taut, exact. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array


@dataclass(frozen=True, slots=True)
class Ranges:
    """A chain of lifts as arrays, from the base up, one entry a lift.

    Attributes
    ----------
    least, wanted, most : array
        Rise from top to top. [m]
    pull : array
        How much its departure counts. [-]
    """

    least: Array
    wanted: Array
    most: Array
    pull: Array


@dataclass(frozen=True, slots=True)
class Gate:
    """Levels that a top has to pass between.

    Attributes
    ----------
    place : int
        Number of the lift, from nought. [-]
    low, high : float
        Level over the datum. [m]
    """

    place: int
    low: float
    high: float


def least_departure(ranges: Ranges, gates: Sequence[Gate], start: float) -> Array:
    r"""Rises whose departures from the wanted ones have the least sum of squares.

    Parameters
    ----------
    ranges : Ranges
        Of n lifts, at least one. [m]
    gates : sequence of Gate
        They can be passed (``wanted_levels.settle_gates`` sees to that). [m]
    start : float
        Level that the first lift is set on. [m]

    Returns
    -------
    array, shape (n,)
        Each within its range, every gate passed. [m]

    Notes
    -----
    .. math:: \min \sum_i p_i (r_i - w_i)^2, \quad
       r_i(t) = \min(\max(w_i + t / p_i,\ l_i),\ u_i)

    The string has one tension t between two gates, and none over the last. As a function of the
    tension above it, the level of a gate is the sum of the rises, cut off at the gate's ends: a
    broken line that never falls. So sums, cuts and inverses are exact, and going down from the free
    end each gate tells the tension below it.
    """
    joined = _joined(gates)
    ends = [gate.place + 1 for gate in joined]
    count = len(ranges.least)
    firsts = [0, *ends]
    low_knots = (ranges.least - ranges.wanted) * ranges.pull
    high_knots = (ranges.most - ranges.wanted) * ranges.pull
    tensions, levels = np.array([0.0]), np.array([start])
    legs: list[tuple[slice, Array, Array, Gate]] = []
    for first, gate in zip(firsts, joined, strict=False):
        here = slice(first, gate.place + 1)
        knots = np.unique(np.concatenate([tensions, low_knots[here], high_knots[here]]))
        levels = np.interp(knots, tensions, levels) + _rises(ranges, here, knots).sum(axis=0)
        legs.append((here, knots, levels, gate))
        cuts = [
            np.interp(x, levels, knots) for x in (gate.low, gate.high) if levels[0] < x < levels[-1]
        ]
        tensions = np.unique(np.concatenate([knots, cuts]))
        levels = np.clip(np.interp(tensions, knots, levels), gate.low, gate.high)
    out = np.empty(count)
    free = slice(firsts[-1], count)
    out[free] = _rises(ranges, free, np.array([0.0]))[:, 0]
    target = float(np.interp(0.0, tensions, levels))
    for here, knots, levels, _ in reversed(legs):
        # Where the level stays while the tension grows, any such tension gives the same rises.
        tension = np.interp(target, levels, knots)
        out[here] = _rises(ranges, here, np.array([tension]))[:, 0]
        target -= float(out[here].sum())
    return out


def _rises(ranges: Ranges, here: slice, tensions: Array) -> Array:
    """Rises of some lifts (down) at some tensions (across). [m]"""
    drawn = ranges.wanted[here, None] + tensions / ranges.pull[here, None]
    return np.asarray(np.clip(drawn, ranges.least[here, None], ranges.most[here, None]))


def _joined(gates: Sequence[Gate]) -> list[Gate]:
    """Gates from the base up, those of one top made one."""
    found: dict[int, Gate] = {}
    for gate in sorted(gates, key=lambda g: g.place):
        other = found.get(gate.place, gate)
        low, high = max(gate.low, other.low), min(gate.high, other.high)
        middle = (low + high) / 2
        found[gate.place] = Gate(gate.place, min(low, middle), max(high, middle))
    return list(found.values())
