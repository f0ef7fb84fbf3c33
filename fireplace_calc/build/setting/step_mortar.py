"""Mortar that each piece asks for when it is set: its bed, the joints to what stands beside it, and
the nest round a tongue. [m3]
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fireplace_calc.build.setting.setting_order import SettingStep
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.sections import SKIN, contact_area, section
from fireplace_calc.geometry.assembled.volumes import nest, perpends
from fireplace_calc.pieces.records import SetPiece


@dataclass(frozen=True, slots=True)
class StepMortar:
    """Mortar of one piece.

    Attributes
    ----------
    name : str
        Of the piece.
    bed : float
        Under it. [m3]
    joints : float
        Upright, to what stands beside it when it is set. [m3]
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
        Of this assembly; the lining is left out, its mortar is not worked out here.

    Returns
    -------
    tuple of StepMortar
        Together the beds, upright joints and nests of ``geometry.assembled.volumes``.
    """
    standing: list[list[SetPiece]] = [[] for _ in made.lifts]
    whole = tuple(tuple(p.piece for p in lift) for lift in made.by_lift)
    found = []
    for step in steps:
        one = step.placed
        if one is None:
            continue
        beside = standing[one.lift]
        before = perpends(whole[one.lift], tuple(beside))
        beside.append(one.piece)
        # What the joints of all that stands take with it, less what they took without it.
        joints = perpends(whole[one.lift], tuple(beside)) - before
        below = made.by_lift[one.lift - 1] if one.lift else ()
        nested = sum(nest(one.piece, b.piece, one.bed) for b in below)
        found.append(StepMortar(step.name, _bed(one, below), joints, nested))
    return tuple(found)


def _bed(one: Placed, below: tuple[Placed, ...]) -> float:
    if not one.lift:
        return one.bed * float(section(one.piece, SKIN).area())
    return one.bed * sum(contact_area(one.piece, b.piece) for b in below)
