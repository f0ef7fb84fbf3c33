"""What the level and the tape said at each hold point: a record that only grows. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from math import isfinite
from typing import Self

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.joints.joint_plan import place_of
from fireplace_calc.pieces.joints.rise import Rise

FARTHEST = 100.0
"""No level or error of a chimney is farther off. [m]"""
LONGEST_WORDS = 200
"""Letters of a name or a note. [-]"""
MOST_TOPS = 2_000
"""Entries of one record. [-]"""
LENGTHS = ("level", "left_right", "front_back", "plumb")
WORDS = ("lift", "by", "note")


@dataclass(frozen=True, slots=True)
class MeasuredTop:
    """One lift at its hold point.

    Attributes
    ----------
    lift : str
        Its name in the chain.
    level : float
        Of its top, over the datum. [m]
    when : datetime
        When it was measured.
    by : str
        Who measured.
    left_right : float or None
        How much the right side lies higher than the left; nothing where not measured. [m]
    front_back : float or None
        How much the back lies higher than the front. [m]
    plumb : float or None
        How far it stands from the plumb line, the worse face. [m]
    again : bool
        Whether it was lifted off with all that stood on it, and set again.
    note : str
    """

    lift: str
    level: float
    when: datetime
    by: str = ""
    left_right: float | None = None
    front_back: float | None = None
    plumb: float | None = None
    again: bool = False
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse what nobody can have measured."""
        for name in LENGTHS:
            value = getattr(self, name)
            if value is None and name != "level":
                continue
            number = isinstance(value, (int, float)) and not isinstance(value, bool)
            if not number or not isfinite(value) or abs(value) > FARTHEST:
                raise self._wrong(name, value, f"a length of at most {FARTHEST:g} m")
        for name in WORDS:
            value = getattr(self, name)
            fits = isinstance(value, str) and value.isprintable() and len(value) <= LONGEST_WORDS
            if not fits or (name == "lift" and not value.strip()):
                raise self._wrong(name, value, f"a line of at most {LONGEST_WORDS} letters")
        if not isinstance(self.when, datetime) or _seconds_off(self.when):
            raise self._wrong("when", self.when, "a day and an hour, such as 2027-05-03T10:40:00")
        if not isinstance(self.again, bool):
            raise self._wrong("again", self.again, "true or false")

    def _wrong(self, name: str, value: object, wanted: str) -> InputError:
        told = f"{name} of {shown(self.lift)} is {shown(value)}, but {wanted} is wanted."
        return InputError(told[0].upper() + told[1:], name, wanted, value)


@dataclass(frozen=True, slots=True)
class AsBuilt:
    """All that was measured on one job, in the order it was entered.

    Attributes
    ----------
    job : str
    start : float or None
        Level that the first lift is set on, as measured; nothing where nobody has. [m]
    tops : tuple of MeasuredTop
    """

    job: str = ""
    start: float | None = None
    tops: tuple[MeasuredTop, ...] = ()

    def __post_init__(self) -> None:
        """Refuse what the record cannot hold."""
        if not isinstance(self.job, str) or not self.job.isprintable():
            raise InputError("The job's name is no line of text.", "job", "a line", self.job)
        if self.start is not None and not abs(self.start) <= FARTHEST:
            raise InputError(
                f"The start is {shown(self.start)} m, but a level within {FARTHEST:g} m is wanted.",
                "start",
                f"within {FARTHEST:g} m",
                self.start,
            )
        if len(self.tops) > MOST_TOPS:
            raise InputError(
                f"The record has {len(self.tops)} entries, but holds at most {MOST_TOPS}.",
                "tops",
                f"at most {MOST_TOPS}",
                len(self.tops),
            )

    def with_top(self, top: MeasuredTop) -> Self:
        """The record with one more entry; nothing is ever taken out."""
        return replace(self, tops=(*self.tops, top))

    def standing(self, chain: Sequence[Rise]) -> tuple[tuple[int, MeasuredTop], ...]:
        """Lifts that stand and were measured, from the base up, each as it was measured last.

        A lift that was set again takes with it what was measured above it before.

        Parameters
        ----------
        chain : sequence of Rise
            Of the whole job. [m]

        Returns
        -------
        tuple of (int, MeasuredTop)
            Number of the lift [-] and its entry.

        Raises
        ------
        InputError
            When an entry names no lift of the chain.
        """
        found: dict[int, MeasuredTop] = {}
        for top in self.tops:
            place = place_of(chain, top.lift)
            if top.again:
                found = {n: one for n, one in found.items() if n < place}
            found[place] = top
        return tuple(sorted(found.items()))


def _seconds_off(when: datetime) -> bool:
    """Whether its zone is no whole number of minutes, which no file can hold."""
    zone = when.utcoffset()
    return zone is not None and zone.total_seconds() % 60 != 0
