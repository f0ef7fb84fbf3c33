"""The joint plan for what is left once part of it stands, and what no joint cures any more. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.pieces.joints.joint_plan import (
    JointPlan,
    place_of,
    plan_joints,
    settled_misses,
)
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.tape import tape_text, ticks
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.what_is_left import LostLevel, Replan


def replan(
    chain: Sequence[Rise],
    wanted: Sequence[WantedLevel],
    built: AsBuilt,
    start: float = 0.0,
    units: str = FEET_INCHES,
    tape: str = "",
) -> Replan:
    """Plan what is left from the last top that was measured.

    Parameters
    ----------
    chain : sequence of Rise
        Of the whole job, from the base up. [m]
    wanted : sequence of WantedLevel
        Of the whole job. [m]
    built : AsBuilt
        What was measured; its own start goes before ``start``.
    start : float
        Level that the first lift is set on. [m]
    units : str
        Of what is said: ``feet-inches`` or ``millimetres``.
    tape : str
        Whose marks the tops are rounded to: that of the story pole, where it is another.

    Returns
    -------
    Replan
        No joint of it is outside its range. What cannot be met any more is named with the lift that
        has to come off again.

    Raises
    ------
    InputError
        When a level or an entry names no lift of the chain.
    """
    chain, wanted, tape = tuple(chain), tuple(wanted), tape or units
    begin = start if built.start is None else built.start
    standing = built.standing(chain)
    last, level, name = -1, begin, ""
    if standing:
        last, top = standing[-1]
        level, name = top.level, top.lift
    plan = plan_above(chain, wanted, last, level, name, tape) if last + 1 < len(chain) else None
    lost = _lost(chain, wanted, standing, begin, plan, tape)
    if plan is not None and tape != units:
        plan = replace(plan, units=units, tick=0.0)  # said to the nearest mark of the other tape
    return Replan(
        name, level, plan, lost, _doubts(chain, wanted, standing, begin, units, tape), units
    )


def plan_above(
    chain: Sequence[Rise],
    wanted: Sequence[WantedLevel],
    last: int,
    level: float,
    name: str,
    units: str,
) -> JointPlan:
    """The joint plan of the lifts over one that stands.

    Parameters
    ----------
    chain : sequence of Rise
        Of the whole job. [m]
    wanted : sequence of WantedLevel
        Of the whole job. [m]
    last : int
        Number of the lift that stands, not the top one; -1 for none. [-]
    level : float
        Of its top, or of the start. [m]
    name : str
        Of the lift; empty for the start.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    JointPlan
    """
    above = [w for w in wanted if place_of(chain, w.lift) > last]
    below = f"the top of {name} as measured" if name else "the start"
    return plan_joints(chain[last + 1 :], above, level, units, below)


def _lost(
    chain: tuple[Rise, ...],
    wanted: tuple[WantedLevel, ...],
    standing: Sequence[tuple[int, MeasuredTop]],
    start: float,
    plan: JointPlan | None,
    tape: str,
) -> tuple[LostLevel, ...]:
    """Levels that come farther off than they had to from the start, by half a mark and more."""
    if not standing:
        return ()
    tops = dict(standing)
    under = [(-1, start, "the start"), *((n, t.level, f"the top of {t.lift}") for n, t in standing)]
    places = [place_of(chain, w.lift) for w in wanted]
    slack = ticks(tape)[0] / 2 + ROUNDING

    @cache
    def least_miss(number: int) -> dict[int, float]:
        """What each level over one of those that stand has to miss when all above is set again."""
        last, at, _ = under[number]
        above = [n for n, place in enumerate(places) if place > last]
        misses = settled_misses(chain[last + 1 :], [wanted[n] for n in above], at)
        return dict(zip(above, misses, strict=True))

    found: list[LostLevel] = []
    for n, (w, place) in enumerate(zip(wanted, places, strict=True)):
        due = least_miss(0)[n]
        if place in tops:
            off = tops[place].level - w.level
            beyond = abs(off) - w.tolerance
        elif plan is not None and place > under[-1][0]:
            off, beyond = plan.top_of(w.lift) - w.level, least_miss(len(under) - 1)[n]
        else:
            continue
        if beyond > due + slack:
            # From the start it misses no more than is due, so there is always one.
            last, _, name = next(
                under[k]
                for k in reversed(range(len(under)))
                if under[k][0] < place and least_miss(k)[n] <= due + ROUNDING
            )
            found.append(LostLevel(w, off, place in tops, chain[last + 1].name, name))
    return tuple(found)


def _doubts(
    chain: tuple[Rise, ...],
    wanted: tuple[WantedLevel, ...],
    standing: Sequence[tuple[int, MeasuredTop]],
    start: float,
    units: str,
    tape: str,
) -> tuple[str, ...]:
    """What cannot be right, or is not known."""
    said: list[str] = []
    below, under, name = -1, start, "the start"
    slack = ticks(tape)[0] / 2 + ROUNDING
    for place, top in standing:
        between = chain[below + 1 : place + 1]
        least, most = sum(r.least for r in between), sum(r.most for r in between)
        rise = top.level - under
        if not least - slack <= rise <= most + slack:
            low, high, came = (tape_text(x, units) for x in (least, most, rise))
            said.append(
                f"From {name} to the top of {top.lift} it measures {came}; the joints allow {low} "
                f"to {high}. Measure again: a piece is over or under size, or a bed is out of its "
                "range."
            )
        below, under, name = place, top.level, f"the top of {top.lift}"
    measured = {place for place, _ in standing}
    for w in wanted:
        place = place_of(chain, w.lift)
        if place < below and place not in measured:
            said.append(
                f"The top of {w.lift} stands but was not measured: its level is not checked."
            )
    return tuple(said)
