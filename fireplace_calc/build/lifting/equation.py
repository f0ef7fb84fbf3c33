"""How heavy a lift may be, and who lifts it: the lifting equation of NIOSH, revised 1991
(publication 94-110).

It is worked in inches and pounds, as its first edition prints it; 51 lb and 23 kg are not quite the
same.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import inf

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, POUND, InputError
from fireplace_calc.build.lifting.frequency import SELDOM, frequency_multiplier
from fireplace_calc.build.lifting.multipliers import (
    exceeds,
    grip_multiplier,
    height_multiplier,
    reach_multiplier,
    require_finite,
    travel_multiplier,
    twist_multiplier,
)

LOAD = 51 * POUND
"""What one person may lift where everything is at its best: the load constant. [kg]"""
ONE, TWO, HOIST, UNKNOWN = "one person", "two people", "hoist", "not checked"


def reach_for(depth: float, height: float) -> float:
    """Reach when it was not measured: half the load before the hands can close on it.

    Parameters
    ----------
    depth : float
        Of the load, away from the body. [m]
    height : float
        Of the hands over the floor. [m]

    Returns
    -------
    float
        8 in and half the depth, from 10 in up; 10 in and half the depth below. [m]

    Examples
    --------
    >>> round(reach_for(12 * INCH, 30 * INCH) / INCH), round(reach_for(12 * INCH, 0) / INCH)
    (14, 16)
    """
    low = require_finite("Height of the hands", height) < 10 * INCH * (1 - ROUNDING)
    return (10 if low else 8) * INCH + require_finite("Depth of the load", depth) / 2


@dataclass(frozen=True, slots=True)
class LiftingTask:
    """How a load is lifted.

    Attributes
    ----------
    lifts : float
        How often. [1/min]
    duration : str
        At a time: ``short``, ``moderate`` or ``long``.
    grip : str
        ``good``, ``fair`` or ``poor``.
    twist : float
        How far one turns. [rad]
    """

    lifts: float = SELDOM
    duration: str = "long"
    grip: str = "fair"
    twist: float = 0.0


DEFAULT_TASK = LiftingTask()
"""Seldom, all day long, with a fair grip, straight ahead."""


def recommended_weight(
    reach: float,
    height: float,
    origin: float,
    travel: float,
    task: LiftingTask = DEFAULT_TASK,
    tabled: bool = False,
) -> float:
    r"""Weight nearly every healthy person may lift, judged at one end of the lift.

    Parameters
    ----------
    reach, height : float
        Of the hands at the end that is judged. [m]
    origin : float
        Height of the hands where the load is taken. [m]
    travel : float
        Up or down. [m]
    task : LiftingTask
        Frequency, duration, grip and twist.
    tabled : bool
        With multipliers as the printed tables round them.

    Returns
    -------
    float
        Zero where no lift by hand is acceptable. [kg]

    Notes
    -----
    .. math:: RWL = LC \cdot HM \cdot VM \cdot DM \cdot AM \cdot FM \cdot CM

    One person, two hands, smooth, on good footing.

    References
    ----------
    Waters, Putz-Anderson and Garg, Applications Manual for the Revised NIOSH Lifting Equation,
    NIOSH publication 94-110, 1994 (read; the tables of frequency and grip partly from memory).
    """
    return (
        LOAD
        * reach_multiplier(reach, tabled)
        * height_multiplier(height, tabled)
        * travel_multiplier(travel, tabled)
        * twist_multiplier(task.twist, tabled)
        * frequency_multiplier(task.lifts, task.duration, origin)
        * grip_multiplier(task.grip, height)
    )


@lru_cache(maxsize=4096)
def weight_limit(
    taken: tuple[float, float],
    put: tuple[float, float],
    task: LiftingTask = DEFAULT_TASK,
    tabled: bool = False,
) -> float:
    """Weight for a piece that is put down with care, as in masonry every piece is: the smaller of
    both ends.

    Parameters
    ----------
    taken, put : tuple of float
        Reach and height of the hands at the origin and at the destination. [m]
    task : LiftingTask
        Frequency, duration, grip and twist.
    tabled : bool
        With multipliers as printed.

    Returns
    -------
    float
        For one person. [kg]
    """
    travel = abs(put[1] - taken[1])
    return min(
        recommended_weight(reach, height, taken[1], travel, task, tabled)
        for reach, height in (taken, put)
    )


@lru_cache(maxsize=1)
def _teams() -> dict[int, float]:
    return {int(r["people"]): float(r["share_of_sum"]) for r in rows("lifting_teams.csv")}


def capacity(one: float, people: int) -> float:
    """What several people may lift together: two carry two thirds of their sum, three a half.

    Parameters
    ----------
    one : float
        Limit of one. [kg]
    people : int
        1 to 3; more do not work together well. [-]

    Returns
    -------
    float
        Of the team. [kg]

    Examples
    --------
    >>> round(capacity(20.0, 2), 1), capacity(20.0, 3)
    (26.7, 30.0)
    """
    if people not in _teams():
        raise InputError(
            f"People at one lift is {people}, but 1 to 3 can be reckoned with; take a hoist.",
            "People",
            "1 to 3",
            people,
        )
    return people * require_finite("Limit of one", one) * _teams()[people]


def lifting_index(weight: float, allowed: float) -> float:
    """Lifting index: up to 1 is fine, to 3 is a raised risk, beyond a high one; without end where
    nothing is allowed.

    Parameters
    ----------
    weight, allowed : float
        What is lifted, and what may be. [kg]

    Returns
    -------
    float
        Their ratio. [-]
    """
    return require_finite("Weight", weight) / allowed if allowed > 0 else inf


def how_lifted(weight: float | None, one: float) -> str:
    """Who lifts it.

    Parameters
    ----------
    weight : float or None
        Of the piece, unknown where only its maker knows. [kg]
    one : float
        Limit of one person, the smaller of both ends. [kg]

    Returns
    -------
    str
        ``one person``, ``two people``, ``hoist``, or ``not checked``.
    """
    if weight is None:
        return UNKNOWN
    if not exceeds(lifting_index(weight, one), 1.0):
        return ONE
    return TWO if not exceeds(lifting_index(weight, capacity(one, 2)), 1.0) else HOIST
