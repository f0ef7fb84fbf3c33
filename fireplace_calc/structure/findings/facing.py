"""Findings on the angle that carries the facing before the pieces of a set."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.rules.comparing import Compared, at_most, not_applicable, unknown
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.angle_of_facing import FacingAngle, facing_angle
from fireplace_calc.structure.figures import source

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

ANGLE = "facing of a set"

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


def _bent(structure: Structure) -> FacingAngle | Compared:
    """The angle under its load, or why there is none to check."""
    design = structure.design
    around = design.pieces
    if design.piece_set is None or around.facing <= 0:
        return not_applicable("No facing stands before the pieces of a set.")
    if around.facing_head is None:
        return unknown("What carries the facing over the opening", "pieces.facing_head")
    legs = around.facing_angle(design.opening.head)
    if legs is None:
        return unknown("How strong it is, since it is no angle,")
    if around.angle_bearing is None:
        return unknown("The bearing of the facing angle", "pieces.angle_bearing")
    return facing_angle(design, structure.frame, legs)


@judged(
    "STR-32",
    ANGLE,
    "Bending of the angle under the facing",
    "psi",
    source("steel bending"),
    over=True,
)
def angle_bending(structure: Structure) -> Compared:
    """The lintel of the set stands behind the gap and carries none of the facing."""
    bent = _bent(structure)
    return bent if isinstance(bent, Compared) else at_most(bent.stress, bent.allowed)


@judged(
    "STR-33",
    ANGLE,
    "Sag of the angle under the facing",
    "in",
    source("lintel deflection ratio"),
    over=True,
)
def angle_sag(structure: Structure) -> Compared:
    """Facing brick cracks long before steel yields."""
    bent = _bent(structure)
    if isinstance(bent, Compared):
        return bent
    return at_most(bent.deflection, bent.deflection_limit)
