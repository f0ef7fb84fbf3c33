"""Levels that tops are wanted at, and what to do when the joints cannot reach them all. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.base.messages import shown
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.joints.tape import tape_text, ticks
from fireplace_calc.pieces.joints.taut_string import Gate

START = -1
"""Number of the level that the first lift is set on. [-]"""


@dataclass(frozen=True, slots=True)
class WantedLevel:
    """Where the top of a lift is wanted.

    Attributes
    ----------
    lift : str
        Its name in the chain.
    level : float
        Over the datum. [m]
    tolerance : float
        How far off will do. [m]
    rank : int
        Rank 1 is met before rank 2; equal ranks share what is missing. [-]
    """

    lift: str
    level: float
    tolerance: float = 0.0
    rank: int = 1

    def __post_init__(self) -> None:
        """Refuse what is no level."""
        if not isfinite(self.level):
            raise InputError(
                f"The level wanted for {self.lift} is {shown(self.level)}, which is no level.",
                self.lift,
                "a level in m",
                self.level,
            )
        if not 0 <= self.tolerance < float("inf"):
            raise InputError(
                f"The tolerance of {self.lift} is {shown(self.tolerance)} m, but nought or more is "
                "wanted: it counts up and down.",
                self.lift,
                "nought or more",
                self.tolerance,
            )
        if self.rank < 1:
            raise InputError(
                f"The rank of {self.lift} is {shown(self.rank)}, but 1 or more is wanted; rank 1 "
                "is met first.",
                self.lift,
                "1 or more",
                self.rank,
            )


@dataclass(frozen=True, slots=True)
class RankedGate:
    """A level that is wanted, by the number of its lift.

    Attributes
    ----------
    place : int
        Number of its lift, from nought. [-]
    low, high : float
        What will do. [m]
    rank : int
        Rank 1 first. [-]
    """

    place: int
    low: float
    high: float
    rank: int


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two levels between which the joints cannot do what is asked.

    Attributes
    ----------
    lower, upper : int
        Numbers of the two among the wanted levels; ``START`` is the start. [-]
    given : float
        What lies between them at most, or at least. [m]
    missing : float
        How much more is asked where the upper comes too low, how much less where it comes too high,
        tolerances already used. [m]
    too_low : bool
        Whether the joints are too thin for what is asked; else they are too thick.
    miss : tuple of float
        How far the lower and the upper one end beyond their tolerance. [m]
    """

    lower: int
    upper: int
    given: float
    missing: float
    too_low: bool
    miss: tuple[float, float]


def settle_gates(
    least: Array, most: Array, wanted: Sequence[RankedGate], start: float
) -> tuple[tuple[Gate, ...], tuple[Conflict, ...]]:
    """Gates that can all be passed: wanted levels, opened as far as they have to be.

    Parameters
    ----------
    least, most : array, shape (n,)
        Rises of the lifts. [m]
    wanted : sequence of RankedGate
        In any order. [m]
    start : float
        Level that the first lift is set on. [m]

    Returns
    -------
    tuple of (tuple of Gate, tuple of Conflict)
        A gate for each wanted level, in their order, and what stood in the way. [m]

    Notes
    -----
    Levels of one chain can all be held when any two of them can: the upper no higher over the lower
    than the fullest joints between them bring it, and no nearer than the thinnest do. Of one rank
    the greatest miss is made as small as it can be, then the next greatest, and so on; what the
    ranks before were given stays.
    """
    ends = np.array([0, *(p.place + 1 for p in wanted)])
    gaps = _Gaps(
        _between(least, ends),
        _between(most, ends),
        np.array([start, *(p.low for p in wanted)]),
        np.array([start, *(p.high for p in wanted)]),
        (ends[:, None] <= ends) & ~np.eye(len(ends), dtype=bool),
    )
    ranks = np.array([0, *(p.rank for p in wanted)])
    settled, conflicts = ranks == 0, []
    for rank in sorted({p.rank for p in wanted}):
        opened = ranks == rank
        while opened.any() and (worst := gaps.worst(settled, opened)) is not None:
            conflicts.append(worst)
            for n, miss in zip((worst.lower, worst.upper), worst.miss, strict=True):
                if opened[n - START]:
                    gaps.fix(n - START, miss)
                settled[n - START], opened[n - START] = True, False
        settled |= opened
    gates = tuple(
        Gate(p.place, float(low), float(high))
        for p, low, high in zip(wanted, gaps.low[1:], gaps.high[1:], strict=True)
    )
    return gates, tuple(conflicts)


def _between(rises: Array, ends: IntArray) -> Array:
    """From each level (down) to each other (across), by these rises. [m]"""
    levels = np.concatenate([[0.0], np.cumsum(rises)])[ends]
    return np.asarray(levels - levels[:, None])


@dataclass(frozen=True, slots=True)
class _Gaps:
    """Levels, the start first, and what the joints give between each two. [m]

    ``low`` and ``high`` are what will do, and are drawn together where a level has to be missed.
    """

    least: Array
    most: Array
    low: Array
    high: Array
    pairs: BoolArray

    def worst(self, settled: BoolArray, opened: BoolArray) -> Conflict | None:
        """The two levels that force the greatest miss on one that is still open, if any does."""
        held = settled | opened
        sharing = opened[:, None].astype(float) + opened
        among = self.pairs & held[:, None] & held & (sharing > 0)
        too_low = self.low - self.high[:, None] - self.most
        too_high = self.least - (self.high - self.low[:, None])
        missing = np.maximum(too_low, too_high)
        each = np.where(among, missing / np.maximum(sharing, 1.0), -np.inf)
        i, j = (int(n) for n in np.unravel_index(int(each.argmax()), each.shape))
        miss, low = float(each[i, j]), bool(too_low[i, j] >= too_high[i, j])
        if miss <= ROUNDING:
            return None
        up = miss if low else -miss
        return Conflict(
            i + START,
            j + START,
            float((self.most if low else self.least)[i, j]),
            float(missing[i, j]),
            low,
            (up * float(opened[i]), -up * float(opened[j])),
        )

    def fix(self, number: int, miss: float) -> None:
        """Hold a level to the one place that is left to it, so far beyond what will do."""
        end = self.high[number] if miss > 0 else self.low[number]
        self.low[number] = self.high[number] = end + miss


def conflict_words(
    conflict: Conflict,
    wanted: Sequence[WantedLevel],
    off: Sequence[float],
    start_name: str,
    units: str,
) -> str:
    """One conflict as a sentence or two.

    Parameters
    ----------
    conflict : Conflict
    wanted : sequence of WantedLevel
        In the order that ``settle_gates`` had them in.
    off : sequence of float
        How much higher than wanted each comes as it is built. [m]
    start_name : str
        What the start is called.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
    """
    numbers = (conflict.lower, conflict.upper)
    names = [start_name if n == START else f"the top of {wanted[n].lift}" for n in numbers]
    sign = 1 if conflict.too_low else -1
    given, missing, asked = (
        tape_text(x, units)
        for x in (
            conflict.given,
            conflict.missing,
            conflict.given + sign * conflict.missing,
        )
    )
    between = f"From {names[0]} to {names[1]}"
    if wanted[conflict.upper].lift == names[0].removeprefix("the top of "):
        said = f"{names[1]} is wanted at two levels that are {missing} too far apart."
        said = said[0].upper() + said[1:]
    elif conflict.too_low:
        said = f"{between} the fullest joints reach {given}; {asked} is wanted: {missing} short."
    else:
        said = f"{between} the thinnest joints take {given}; {asked} is wanted: {missing} too much."
    told = [
        f"{name} comes {tape_text(abs(off[n]), units)} {'high' if off[n] > 0 else 'low'}"
        for n, name, miss in zip(numbers, names, conflict.miss, strict=True)
        if miss and abs(off[n]) > wanted[n].tolerance + ticks(units)[0] / 2
    ]
    end = ", ".join(told)
    return f"{said} {end[0].upper()}{end[1:]}." if end else said
