"""Which bed joints, each within its range, bring the tops to the levels that are wanted. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.tape import ticks
from fireplace_calc.pieces.joints.tape_rounding import SPLIT, tops_on_tape
from fireplace_calc.pieces.joints.taut_string import Ranges, least_departure
from fireplace_calc.pieces.joints.wanted_levels import (
    Conflict,
    RankedGate,
    WantedLevel,
    conflict_words,
    settle_gates,
)

FINEST_BY_CHOICE = 2
"""How many of the tape's marks are tried for the sake of a wanted level; a finer one is taken only
where a range holds no other. [-]
"""


@dataclass(frozen=True, slots=True)
class JointPlan:
    """Levels to build to, from the base up, one entry a lift.

    Attributes
    ----------
    chain : tuple of Rise
    wanted : tuple of WantedLevel
    start : float
        Level that the first lift is set on. [m]
    start_name : str
        What it is called.
    units : str
        Of the tape and of what is said.
    rises : tuple of float
        From top to top, of least departure, not rounded. [m]
    tops : tuple of float
        On marks of the tape: what is built to. [m]
    tick : float
        From mark to mark; nought where no tape has a mark for every top, which then are not
        rounded. [m]
    conflicts : tuple of Conflict
        Levels that the joints cannot all reach.
    """

    chain: tuple[Rise, ...]
    wanted: tuple[WantedLevel, ...]
    start: float
    start_name: str
    units: str
    rises: tuple[float, ...]
    tops: tuple[float, ...]
    tick: float
    conflicts: tuple[Conflict, ...]

    @property
    def rounded_rises(self) -> tuple[float, ...]:
        """From top to top as it is built. [m]"""
        below = (self.start, *self.tops[:-1])
        return tuple(top - under for top, under in zip(self.tops, below, strict=True))

    @property
    def departures(self) -> tuple[float, ...]:
        """How much more than wanted each lift rises as it is built. [m]"""
        return tuple(
            rise - one.wanted for rise, one in zip(self.rounded_rises, self.chain, strict=True)
        )

    @property
    def unmet(self) -> tuple[str, ...]:
        """What could not be met, a sentence or two each, in the plan's units."""
        off = [self.top_of(level.lift) - level.level for level in self.wanted]
        return tuple(
            conflict_words(c, self.wanted, off, self.start_name, self.units) for c in self.conflicts
        )

    def top_of(self, lift: str) -> float:
        """Level to build a lift to. [m]

        Raises
        ------
        InputError
            When the chain has no such lift.
        """
        return self.tops[place_of(self.chain, lift)]

    def joints_under(self, lift: str) -> tuple[tuple[str, float], ...]:
        """Mark and bed of each piece of a lift, as it is built. [m]

        Raises
        ------
        InputError
            When the chain has no such lift.
        """
        number = place_of(self.chain, lift)
        return self.chain[number].joints(self.rounded_rises[number])


def place_of(chain: Sequence[Rise], lift: str) -> int:
    """Number of a lift in its chain.

    Parameters
    ----------
    chain : sequence of Rise
    lift : str
        Its name.

    Returns
    -------
    int
        From nought. [-]

    Raises
    ------
    InputError
        When the chain has no such lift.
    """
    for number, one in enumerate(chain):
        if one.name == lift:
            return number
    names = ", ".join(one.name for one in chain)
    raise InputError(
        f"There is no lift {shown(lift)}; the lifts are {names}. Was it spelled otherwise?",
        "lift",
        names,
        lift,
    )


def plan_joints(
    chain: Sequence[Rise],
    wanted: Sequence[WantedLevel] = (),
    start: float = 0.0,
    units: str = FEET_INCHES,
    start_name: str = "the start",
) -> JointPlan:
    """Plan the joints of a chain of lifts.

    Parameters
    ----------
    chain : sequence of Rise
        From the base up, at least one. [m]
    wanted : sequence of WantedLevel
        Tops that are to come to a level. [m]
    start : float
        Level that the first lift is set on. [m]
    units : str
        ``feet-inches`` rounds tops to 1/16 in, ``millimetres`` to 1 mm; finer only where ranges or
        wanted levels ask for it.
    start_name : str
        What the start is called in a sentence.

    Returns
    -------
    JointPlan
        No joint is outside its range, ever. What cannot be met is missed as little as can be, rank
        by rank, and said.

    Raises
    ------
    InputError
        When the chain is empty, a name stands twice, a wanted level names no lift, or the start is
        no number.

    Notes
    -----
    Least sum of squared departures from the wanted rises, each times its ``pull``
    (``taut_string``), through gates that ``wanted_levels`` settles. A chain only: a piece that
    breaks joint over two courses is no lift.
    """
    chain, wanted = tuple(chain), tuple(wanted)
    _checked(chain, start)
    ranges = _ranges(chain)
    places = [_gate(chain, level) for level in wanted]
    gates, conflicts = settle_gates(ranges.least, ranges.most, places, start)
    rises = least_departure(ranges, gates, start)
    exact = start + np.cumsum(rises)
    tops, tick = _rounded(ranges, places, start, ticks(units), exact)
    return JointPlan(
        chain,
        wanted,
        start,
        start_name,
        units,
        tuple(rises.tolist()),
        tuple(tops.tolist()),
        tick,
        conflicts,
    )


def settled_misses(
    chain: Sequence[Rise], wanted: Sequence[WantedLevel], start: float
) -> tuple[float, ...]:
    """How far beyond its tolerance each wanted level has to be missed, at the least.

    Parameters
    ----------
    chain : sequence of Rise
        At least one. [m]
    wanted : sequence of WantedLevel
        [m]
    start : float
        Level that the first lift is set on. [m]

    Returns
    -------
    tuple of float
        In the order of ``wanted``; nought where the joints reach it. [m]
    """
    chain = tuple(chain)
    ranges = _ranges(chain)
    asked = [_gate(chain, level) for level in wanted]
    gates, _ = settle_gates(ranges.least, ranges.most, asked, start)
    return tuple(
        max(one.low - gate.low, gate.high - one.high, 0.0)
        for one, gate in zip(asked, gates, strict=True)
    )


def _checked(chain: tuple[Rise, ...], start: float) -> None:
    if not isfinite(start):
        raise InputError(
            f"The start is {shown(start)}, which is no level.", "start", "a level in m", start
        )
    names = [one.name for one in chain]
    twice = next((name for name in names if names.count(name) > 1), None)
    if not chain or twice is not None:
        came = f"{shown(twice)} twice" if chain else "none"
        raise InputError(
            f"A joint plan needs lifts by different names, from the base up; there is {came}.",
            "chain",
            "at least one lift, each name once",
            names,
        )


def _ranges(chain: tuple[Rise, ...]) -> Ranges:
    table = np.array([(r.least, r.wanted, r.most, r.pull) for r in chain], dtype=float).T
    return Ranges(table[0], table[1], table[2], table[3])


def _gate(chain: tuple[Rise, ...], level: WantedLevel) -> RankedGate:
    low, high = level.level - level.tolerance, level.level + level.tolerance
    return RankedGate(place_of(chain, level.lift), low, high, level.rank)


def _rounded(
    ranges: Ranges,
    wanted: Sequence[RankedGate],
    start: float,
    marks: Sequence[float],
    exact: Array,
) -> tuple[Array, float]:
    """Tops on the coarsest marks that serve the wanted levels as well as exact tops do, give or
    take half a coarse mark. [m]
    """
    allowed = _misses(wanted, exact) + marks[0] * (0.5 + SPLIT)
    found: tuple[Array, float] = exact, 0.0
    for number, tick in enumerate(marks):
        tops = tops_on_tape(ranges, wanted, start, tick)
        if tops is None:
            continue
        found = tops, tick
        if number + 1 >= FINEST_BY_CHOICE or np.all(_misses(wanted, tops) <= allowed):
            break
    return found


def _misses(wanted: Sequence[RankedGate], tops: Array) -> Array:
    """How far beyond its tolerance each wanted top is. [m]"""
    told = ((p.low - tops[p.place], tops[p.place] - p.high, 0.0) for p in wanted)
    return np.array([max(one) for one in told])
