"""Mortar that each piece asks for when it is set: its bed, the joints to what stands beside it, and
the nest round a tongue. [m3]

The solids are those that are drawn and ordered, so that cards and list have the same mortar.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fireplace_calc.build.setting.setting_order import SettingStep
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.volumes import perpends, socket_room, tongue_volume
from fireplace_calc.geometry.from_set.mortar_beds import Solids, bed_solids, joint_solids
from fireplace_calc.pieces.records import SetPiece


@dataclass(frozen=True, slots=True)
class StepMortar:
    """Mortar of one piece.

    Attributes
    ----------
    name : str
        Of the piece.
    bed : float
        Under it, to the bore where it nests. [m3]
    joints : float
        Upright, to what stands beside it when it is set, and down through the bed. [m3]
    nest : float
        In its socket, round the tongue under it. [m3]
    """

    name: str
    bed: float
    joints: float
    nest: float

    @property
    def volume(self) -> float:
        """All of it. [m3]"""
        return self.bed + self.joints + self.nest


def mortar_of_steps(made: Assembly, steps: Iterable[SettingStep]) -> tuple[StepMortar, ...]:
    """Mortar of every piece, in the order they are set.

    Parameters
    ----------
    made : Assembly
    steps : iterable of SettingStep
        Of this assembly; the lining is left out, its mortar is ``build.lining_work``'s.

    Returns
    -------
    tuple of StepMortar
        Together the mortar of the set's parts. What a piece adds to the joints of its lift is
        what the joints of all that stand take with it, less what they took without it.
    """
    standing: list[list[SetPiece]] = [[] for _ in made.lifts]
    whole = tuple(tuple(p.piece for p in lift) for lift in made.by_lift)
    upright = [_upright(made, number) for number in range(len(made.lifts))]
    found = []
    for step in steps:
        one = step.placed
        if one is None:
            continue
        here, beside = whole[one.lift], standing[one.lift]
        before = perpends(here, tuple(beside))
        beside.append(one.piece)
        every = perpends(here)
        more = perpends(here, tuple(beside)) - before
        joints = upright[one.lift] * (more / every if every else 0.0)
        below = made.by_lift[one.lift - 1] if one.lift else ()
        bed = _volume(bed_solids(one, _pieces(below), _under(made, one.lift), 0.0, 0.0))
        found.append(StepMortar(step.name, bed, joints, _nest(one, below)))
    return tuple(found)


def _pieces(placed: Iterable[Placed]) -> tuple[SetPiece, ...]:
    return tuple(p.piece for p in placed)


def _under(made: Assembly, lift: int) -> float:
    """Level that a lift is bedded on. [m]"""
    return made.tops[lift - 1] if lift else made.start


def _volume(solids: Solids) -> float:
    adds, cuts = solids
    return sum(s.volume for s in adds) - sum(s.volume for s in cuts)


def _upright(made: Assembly, lift: int) -> float:
    """Mortar of a lift's upright joints. [m3]"""
    below = _pieces(made.by_lift[lift - 1]) if lift else ()
    return _volume(joint_solids(made.by_lift[lift], below, _under(made, lift), 0.0, 0.0))


def _nest(one: Placed, below: tuple[Placed, ...]) -> float:
    """What the socket leaves round the tongue that stands in it. [m3]"""
    room = socket_room(one.piece)
    return room - sum(tongue_volume(b.piece) for b in below) if room else 0.0
