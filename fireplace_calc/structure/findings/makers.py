"""What the maker of a set allows: no code says it, and none lifts it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source
from fireplace_calc.rules.comparing import NOT_CHECKED, Compared, at_most, not_applicable
from fireplace_calc.rules.core import Rule, filing

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

MAKER = Source("the maker's own limit, as the set's file tells it", "told")
SET = "by the maker of the set"
WITHOUT = "The fireplace is built without a set of pieces."

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


def _allowed(structure: Structure, limit: str, found: float) -> Compared:
    """Against a limit of the set's file; not checked where it tells none."""
    made = structure.design.piece_set
    if made is None:
        return not_applicable(WITHOUT)
    most = getattr(made.limits, limit)
    if most is None:
        note = "The set's file tells no limit; ask its maker."
        return Compared(NOT_CHECKED, found, None, note=note)
    by = made.limits.approved_by
    return at_most(found, most, f"More needs the approval of {by}." if by else "")


@judged("STR-30", SET, "Raise of the firebox", "in", MAKER, over=True)
def raise_of_set(structure: Structure) -> Compared:
    """A firebox raised farther than its maker tried may smoke, and its walls lean."""
    return _allowed(structure, "raise_most", structure.design.opening.extension)


@judged("STR-31", SET, "Flue over the hearth", "in", MAKER, over=True)
def stack_of_set(structure: Structure) -> Compared:
    """Every piece of the stack stands on the throat and the lintel below it."""
    frame = structure.frame
    return _allowed(structure, "stack_most", frame.liner_top - frame.hearth)
