"""One lift as the joint plan sees it: how far its tops may stand over the tops below. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Protocol

from fireplace_calc.base.messages import shown
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.pieces.joints.tape import tape_text


class BedRange(Protocol):
    """How thick a bed may be. [m]"""

    @property
    def least(self) -> float:
        """The thinnest. [m]"""

    @property
    def wanted(self) -> float:
        """What the mason aims at. [m]"""

    @property
    def most(self) -> float:
        """The fullest. [m]"""


class Bedded(Protocol):
    """A piece that is set on a bed."""

    @property
    def mark(self) -> str:
        """What is written on it."""

    @property
    def height(self) -> float:
        """From bed to bed. [m]"""

    @property
    def bed(self) -> BedRange:
        """The bed under it. [m]"""


@dataclass(frozen=True, slots=True)
class Rise:
    """One lift: how far its tops stand over those of the lift below, joint and pieces together.

    Attributes
    ----------
    name : str
        Of the lift; no other of its chain has it.
    least, wanted, most : float
        From top to top. What is wanted may lie beyond the ends where pieces of different height
        share a lift. [m]
    pull : float
        How much its departure counts: the number of its pieces. [-]
    members : tuple of (str, float)
        Mark and height from bed to bed of each piece; empty where only the rise is known. [m]
    """

    name: str
    least: float
    wanted: float
    most: float
    pull: float = 1
    members: tuple[tuple[str, float], ...] = ()

    def __post_init__(self) -> None:
        """Refuse what no mason could lay."""
        told = (self.least, self.wanted, self.most)
        if not all(isfinite(value) for value in told) or not 0 <= self.least <= self.most:
            raise InputError(
                f"The rise of {self.name} is {shown(told)} m, but least, wanted and most are "
                "wanted, the least no less than nought and the most no less than the least; were "
                "two of them swapped?",
                self.name,
                "least, wanted and most",
                told,
            )
        if not 0 < self.pull < float("inf"):
            raise InputError(
                f"The pull of {self.name} is {shown(self.pull)}, but a number over nought is "
                "wanted: how many pieces the lift has.",
                self.name,
                "over nought",
                self.pull,
            )

    def joints(self, rise: float) -> tuple[tuple[str, float], ...]:
        """Mark and bed of each piece when the lift rises so far. [m]"""
        return tuple((mark, rise - height) for mark, height in self.members)


def rise_of(name: str, pieces: Sequence[Bedded], units: str = FEET_INCHES) -> Rise:
    """The rise of a lift whose pieces all come level at the top.

    Parameters
    ----------
    name : str
        Of the lift.
    pieces : sequence of Bedded
        At least one. Heights and beds in meters.
    units : str
        Of the message.

    Returns
    -------
    Rise
        Its range is what all beds allow; it is drawn to the mean of what they want.

    Raises
    ------
    InputError
        When no top suits all of them: names the two pieces and the measure.

    Notes
    -----
    The sum of squares of all beds' departures is that of the lift's rise from the mean of what they
    want, times the number of pieces, plus what no plan can change.
    """
    if not pieces:
        raise InputError(f"Lift {name} has no piece; at least one is wanted.", name, "pieces", 0)
    tall = max(pieces, key=lambda p: p.height + p.bed.least)
    short = min(pieces, key=lambda p: p.height + p.bed.most)
    least, most = tall.height + tall.bed.least, short.height + short.bed.most
    if least > most + ROUNDING:
        high, low, gap = (tape_text(x, units) for x in (least, most, least - most))
        raise InputError(
            f"Lift {name}: {tall.mark} and {short.mark} cannot come level. {tall.mark} on its "
            f"thinnest bed is {high}, {short.mark} on its fullest only {low}: {gap} too much. "
            "Check both heights, from bed to bed.",
            name,
            f"pieces whose tops come level within {low}",
            least,
        )
    mean = sum(p.height + p.bed.wanted for p in pieces) / len(pieces)
    members = tuple((p.mark, p.height) for p in pieces)
    return Rise(name, least, mean, max(least, most), len(pieces), members)
