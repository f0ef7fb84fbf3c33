"""Pieces where they stand: lift on lift, with the joint under each. [m]"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.joints.rise import rise_of
from fireplace_calc.pieces.records import SetPiece


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece where it stands.

    Attributes
    ----------
    piece : SetPiece
    lift : int
        Counted from the base, from nought. [-]
    number : int
        The how-manieth of its mark. [-]
    bed : float
        Thickness of the joint under it. [m]
    level : float
        Of its underside. [m]
    """

    piece: SetPiece
    lift: int
    number: int
    bed: float
    level: float

    @property
    def name(self) -> str:
        """Mark and number: ``WL.2``."""
        return f"{self.piece.mark}.{self.number}"

    @property
    def top(self) -> float:
        """Level of its upper bed. [m]"""
        return self.level + self.piece.height


@dataclass(frozen=True, eq=False)
class Assembly:
    """A set as it stands; two are the same only where they are one, so that what is known of one is
    kept by it.

    Attributes
    ----------
    lifts : tuple of ChosenLift
    tops : tuple of float
        Level of each lift's top. [m]
    start : float
        What the first bed lies on. [m]
    placed : tuple of Placed
        SetLift by lift.
    """

    lifts: tuple[ChosenLift, ...]
    tops: tuple[float, ...]
    start: float
    placed: tuple[Placed, ...]

    @cached_property
    def by_lift(self) -> tuple[tuple[Placed, ...], ...]:
        """What stands in each lift."""
        made: list[list[Placed]] = [[] for _ in self.lifts]
        for one in self.placed:
            made[one.lift].append(one)
        return tuple(map(tuple, made))

    @cached_property
    def counted(self) -> Counter[SetPiece]:
        """How many of every piece, from the base up. [-]"""
        return Counter(p.piece for p in self.placed)

    def first(self, *roles: str) -> int | None:
        """Number of the lowest lift that holds a piece of one of these roles. [-]"""
        return next((p.lift for p in self.placed if p.piece.role in roles), None)


def assemble(lifts: Sequence[ChosenLift], rises: Sequence[float], start: float = 0.0) -> Assembly:
    """Stand the pieces on each other.

    Parameters
    ----------
    lifts : sequence of ChosenLift
    rises : sequence of float
        From top to top, one a lift. [m]
    start : float
        What the first bed lies on. [m]

    Returns
    -------
    Assembly
    """
    placed: list[Placed] = []
    tops: list[float] = []
    count: Counter[str] = Counter()
    level = start
    for number, (lift, rise) in enumerate(zip(lifts, rises, strict=True)):
        for piece in lift.pieces:
            count[piece.mark] += 1
            bed = rise - piece.height
            placed.append(Placed(piece, number, count[piece.mark], bed, level + bed))
        level += rise
        tops.append(level)
    return Assembly(tuple(lifts), tuple(tops), start, tuple(placed))


def as_wanted(lifts: Sequence[ChosenLift], start: float = 0.0) -> Assembly:
    """The pieces with every joint as their makers want it.

    Parameters
    ----------
    lifts : sequence of ChosenLift
    start : float
        What the first bed lies on. [m]
    """
    return assemble(lifts, [_as_wanted(lift) for lift in lifts], start)


def _as_wanted(lift: ChosenLift) -> float:
    """Rise of a lift when its beds come as near as they can to what is wanted. [m]"""
    rise = rise_of(lift.name, lift.pieces)
    return min(max(rise.wanted, rise.least), rise.most)
