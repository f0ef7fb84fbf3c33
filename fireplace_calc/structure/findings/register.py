"""What the loads say of a design, as findings. Engineering judgement, not a stamped design: each
rests on a figure and names it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.rules.book import worst_first
from fireplace_calc.rules.core import JUDGEMENT, Finding
from fireplace_calc.rules.tracing.resting import hold
from fireplace_calc.structure.findings import (
    arched,
    bearing,
    earthquake,
    facing,
    load_bearing,
    makers,
    seat,
    stability,
)
from fireplace_calc.structure.findings.follows import GROUNDS

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

RULES = (
    *stability.RULES,
    *earthquake.RULES,
    *load_bearing.RULES,
    *arched.RULES,
    *bearing.RULES,
    *makers.RULES,
    *facing.RULES,
    *seat.RULES,
)


def judgement(structure: Structure, named: bool = False) -> tuple[Finding, ...]:
    """Every finding on the structure, worst first.

    Parameters
    ----------
    structure : Structure
    named : bool
        Whether what passes carries the inputs it rests on that nobody has entered.

    Returns
    -------
    tuple of Finding
        ``edition`` says that it is engineering judgement, ``clause`` in which mode the number was
        found.
    """
    return worst_first(
        hold(RULES, structure, structure.design, GROUNDS)
        if named
        else (rule.check(structure, JUDGEMENT) for rule in RULES)
    )
