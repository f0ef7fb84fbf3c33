"""The trade's own rules for two flues in one chimney."""

from __future__ import annotations

from fireplace_calc.rules.comparing import Compared, at_least, inches, not_applicable, unknown
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.practice import PRACTICE
from fireplace_calc.rules.second_area import ONE_FLUE, TOPS_APART, tops_apart


def _several(facts: Facts) -> Compared | None:
    if facts.anchorage.n_flues is None:
        return unknown("The number of flues")
    return not_applicable(ONE_FLUE) if facts.anchorage.n_flues < 2 else None


@PRACTICE.rule("PRA-24", "notes on chimneys", "Tops of two flues apart", "in", "tops_apart")
def crossing_smoke(facts: Facts) -> Compared:
    """Where two flues end level, smoke of the lit one is drawn down the cold one."""
    if outcome := _several(facts):
        return outcome
    apart = tops_apart(facts)
    if apart is None:
        return unknown("How much higher one flue ends than the other")
    return at_least(apart, TOPS_APART, "Level tops want a slab on edge between them.")


@PRACTICE.rule(
    "PRA-25", "page on chimney walls", "Masonry between two flues", "in", "wythe_between_flues"
)
def withe(facts: Facts) -> Compared:
    """A full brick between the liners keeps each flue's smoke to itself."""
    return _several(facts) or at_least(
        facts.wythe_between_flues, inches(3.75), "A brick laid flat, bonded into the walls."
    )


@PRACTICE.rule(
    "PRA-26",
    "page on chimney walls",
    "Stagger of two flues' liner joints",
    "in",
    "liner_joint_stagger",
)
def staggered(facts: Facts) -> Compared:
    """Joints side by side make one leak of two."""
    return _several(facts) or at_least(facts.stack.liner_joint_stagger, inches(7))
