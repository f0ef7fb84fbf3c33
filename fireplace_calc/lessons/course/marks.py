"""Have and need of one rule: what the engine's finding says, in the reader's book."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import FEET_INCHES, INCH, from_unit
from fireplace_calc.lessons.course.records import LessonRule
from fireplace_calc.lessons.course.sums import NUMBER, Amount, work_out
from fireplace_calc.report.books import COLUMNS
from fireplace_calc.rules import Finding
from fireplace_calc.rules.book import RANK
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, NOT_CHECKED

KINDS = {
    **dict.fromkeys(("in", "ft", "m", "mm"), "length"),
    **dict.fromkeys(("in2", "ft2", "m2", "mm2"), "area"),
    **dict.fromkeys(("ft/s", "m/s"), "air speed"),
    **dict.fromkeys(("lb", "kg"), "mass"),
    "deg": "angle",
    "Pa": "pressure",
    "K": "difference",
}
"""Unit of a finding to the kind of quantity it is; other units are bare numbers."""
_SPELLED = {"in2": "sq in", "ft2": "sq ft", "deg": "degrees", "mm2": "sq mm"}
_INCHES = ("in", "ft", "in2", "ft2", "ft/s", "lb")
_LOOSE = INCH / 16 + 1e-9
"""What an exact rule lets pass, either way. [m]"""


@dataclass(frozen=True)
class LessonMark:
    """One rule at one place of the controls.

    Attributes
    ----------
    rule : LessonRule
    finding : Finding or None
        The engine's; nothing where no code stands behind the rule, or the book has none.
    have, need : float or None
        In SI; nothing where the book is silent or nobody has checked. [SI]
    kind : str
        Of both.
    at_most : bool
        Need is not to be passed.
    short : bool
    figure, clause : str
        As a card shows them.
    note : str
        Why there is no figure.
    """

    rule: LessonRule
    finding: Finding | None = None
    have: float | None = None
    need: float | None = None
    kind: str = NUMBER
    at_most: bool = False
    short: bool = False
    figure: str = ""
    clause: str = ""
    note: str = ""

    @property
    def letter(self) -> str:
        """Of its rule."""
        return self.rule.letter

    @property
    def unchecked(self) -> bool:
        """Whether the rule applies and nobody could hold it against the place."""
        return self.finding is not None and self.finding.verdict == NOT_CHECKED

    @property
    def gap(self) -> float:
        """What is missing, or too much; nothing where it holds. [SI]"""
        if not self.short or self.have is None or self.need is None:
            return 0.0
        return abs(self.have - self.need)

    @property
    def spare(self) -> float:
        """What there is over need, as a share of need: the rule with the least decides. [-]"""
        if self.have is None or self.need is None:
            return float("inf")
        over = self.need - self.have if self.at_most else self.have - self.need
        return over / max(abs(self.need), 1e-9)


@cache
def questions() -> dict[str, dict[str, str]]:
    """Rows of ``data/questions.csv`` by their question."""
    return {row["question"]: row for row in rows("questions.csv")}


def keys_in(rule: LessonRule, book: str) -> tuple[str, ...]:
    """Keys of a rule in one book, from its row of questions and its own list.

    Parameters
    ----------
    rule : LessonRule
    book : str
        Name of a pack.
    """
    if rule.question not in questions():
        return rule.keys
    column = next((held for name, held in COLUMNS.items() if book.startswith(name)), "others")
    found = questions()[rule.question][column].split()
    return tuple(key for key in found if not rule.keys or key in rule.keys)


def mark_of(
    rule: LessonRule, found: Assessment, names: Mapping[str, Amount], units: str
) -> LessonMark:
    """Hold one rule against a place of the controls.

    Parameters
    ----------
    rule : LessonRule
    found : Assessment
    names : mapping
        What sums may name. [SI]
    units : str
        The reader's.

    Returns
    -------
    LessonMark
    """
    if rule.need:
        return _worked_mark(rule, names, units)
    keys = keys_in(rule, found.pack)
    applying = [one for one in findings_for(found, keys) if one.verdict != DOES_NOT_APPLY]
    if not applying:
        silent = "This book gives no figure." if not keys else "The rule does not apply here."
        return LessonMark(rule, note=silent)
    finding = applying[0]
    if finding.numbers is None or finding.verdict == NOT_CHECKED:
        note = finding.note or "There is no figure to compare."
        return LessonMark(
            rule, finding, short=finding.verdict == FALLS_SHORT, clause=finding.clause, note=note
        )
    kind = KINDS.get(finding.unit, NUMBER)
    have, need = (
        _moved(Amount(from_unit(one, finding.unit), kind), rule, names) for one in finding.numbers
    )
    sign = (finding.numbers[0] - finding.numbers[1]) * (finding.margin or 0.0)
    return LessonMark(
        rule,
        finding,
        have.value,
        need.value,
        have.kind,
        sign < 0,
        finding.verdict == FALLS_SHORT,
        _figure(finding, units),
        finding.clause,
    )


def _worked_mark(rule: LessonRule, names: Mapping[str, Amount], units: str) -> LessonMark:
    """Of a rule that no code gives: its own sums."""
    have, need = work_out(rule.have, names), work_out(rule.need, names)
    over = have.value - need.value
    past = over if rule.most else -over
    short = abs(over) > _LOOSE if rule.exact else past > 1e-9
    figure = show(need.value, _shown_kind(need.kind), units)
    return LessonMark(
        rule, None, have.value, need.value, have.kind, rule.most, short, figure, rule.source
    )


def _moved(amount: Amount, rule: LessonRule, names: Mapping[str, Amount]) -> Amount:
    """A figure of the finding where the picture measures it."""
    if rule.times:
        both = {"figure": amount, "times": work_out(rule.times, names)}
        amount = work_out("figure * times", both)
    if rule.plus:
        amount = Amount(amount.value + work_out(rule.plus, names).value, amount.kind)
    return amount


def findings_for(found: Assessment, keys: tuple[str, ...]) -> list[Finding]:
    """Findings of some keys, worst first; those of draft and structure among them.

    Parameters
    ----------
    found : Assessment
    keys : tuple of str
    """
    held = list(found.findings)
    if any(key.startswith("DRF") for key in keys):
        held += found.judgement
    if any(key.startswith("STR") for key in keys):
        held += found.structure.findings
    return sorted((one for one in held if one.key in keys), key=lambda one: RANK[one.verdict])


def _shown_kind(kind: str) -> str:
    return "count" if kind == NUMBER else kind


def _figure(finding: Finding, units: str) -> str:
    """The limit as the book prints it; in the reader's units where the book has others."""
    _, need = finding.numbers or (0.0, 0.0)
    kind = KINDS.get(finding.unit)
    own = (finding.unit in _INCHES) == (units == FEET_INCHES)
    if kind is None or own or kind in ("angle", "pressure"):
        if own and kind and (finding.unit == "in" and need % 1 or round(need, 2) != need):
            return show(from_unit(need, finding.unit), kind, units)
        return f"{round(need, 2):g} {_SPELLED.get(finding.unit, finding.unit)}"
    return show(from_unit(need, finding.unit), kind, units)
