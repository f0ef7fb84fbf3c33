"""Who lifts a piece of a set to its bed: the same rule as for every other lift of the work."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, inf

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.build.lift_parts import WITHIN_REACH
from fireplace_calc.build.lifting.equation import (
    HOIST,
    ONE,
    LiftingTask,
    capacity,
    how_lifted,
    lifting_index,
    reach_for,
    weight_limit,
)
from fireplace_calc.build.lifting.lift_list import HEAVY_UNIT
from fireplace_calc.build.lifting.multipliers import exceeds
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.solids import extent, piece_weight

GRIP = "poor"
"""Smooth, wide, no handles. [-]"""


@dataclass(frozen=True, slots=True)
class Handling:
    """How one piece comes to its bed.

    Attributes
    ----------
    weight : float
        As weighed, or by volume and density. [kg]
    weighed : bool
        Which of the two.
    verdict : str
        ``one person``, ``two people`` or ``hoist``.
    index : float
        Strain by the lifting equation, for those who lift: at most 1 is fine. [-]
    stand : float
        Level one stands on to set it. [m]
    lifted : float
        From where it is picked up to its bed. [m]
    """

    weight: float
    weighed: bool
    verdict: str
    index: float
    stand: float
    lifted: float


def handling_of(one: Placed, work: Work, start: float) -> Handling:
    """Who lifts a piece.

    Parameters
    ----------
    one : Placed
    work : Work
        Pick-up height, reach, pace, and the height of a staging lift.
    start : float
        Level of the floor that the lowest piece is set from. [m]

    Returns
    -------
    Handling

    Notes
    -----
    By weight alone: one person up to 20 kg, two up to two thirds of twice that, a hoist beyond, or
    where hands do not reach. The index is the strain at its bed; hands hold a piece at half its
    height, all day long: our own habit, on the safe side.
    """
    weight, (x0, x1, y0, y1, _, tall) = piece_weight(one.piece), extent(one.piece)
    deep = min(x1 - x0, y1 - y0, tall)
    task = LiftingTask(work.lifts, "long", GRIP)

    def hands(height: float) -> tuple[float, float]:
        return max(work.carry, reach_for(deep, height)), height

    step = floor((one.level - start + WITHIN_REACH + CONTACT_GAP) / work.lift_height)
    options = []
    for number in {max(step, 0), max(step - 1, 0)}:
        stand = start + number * work.lift_height
        put = hands(max(one.level - stand, 0.0) + tall / 2)
        options.append((weight_limit(hands(work.stack_height), put, task), stand))
    allowed, stand = max(options)
    verdict = how_lifted(weight, HEAVY_UNIT if allowed > 0 else 0.0)
    if verdict == HOIST:
        index = 0.0
    else:
        index = lifting_index(weight, allowed if verdict == ONE else capacity(allowed, 2))
    lifted = max(one.level - start - work.stack_height, 0.0)
    return Handling(weight, one.piece.weighed is not None, verdict, index, stand, lifted)


def strained(handling: Handling) -> bool:
    """Whether a lift is a strain although light enough: pile or floor are too low for the bed."""
    return handling.index < inf and exceeds(handling.index, 1.0)
