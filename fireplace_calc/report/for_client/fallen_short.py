"""What falls short, counted in one place for every strip, option and paper."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.report.sentences import PLURALS, asked, compared
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED

JUDGED = "in draft and structure"
"""What the count of the judged is called wherever it stands."""


def by_code(number: int) -> str:
    """What the count of the code is called.

    Parameters
    ----------
    number : int
        How many fall short. [-]
    """
    return f"{FALLS_SHORT if number == 1 else PLURALS[FALLS_SHORT]} by code"


@dataclass(frozen=True, slots=True)
class Shortfall:
    """What falls short of one design, and how much of the code has no answer.

    Attributes
    ----------
    code, draft, structure : tuple of Finding
        What falls short by the code, and by judgement on draft and structure.
    open : int
        Checks of the code that are not checked. [-]
    """

    code: tuple[Finding, ...]
    draft: tuple[Finding, ...]
    structure: tuple[Finding, ...]
    open: int

    @property
    def judged(self) -> tuple[Finding, ...]:
        """Those of draft and structure."""
        return (*self.draft, *self.structure)

    @property
    def all(self) -> tuple[Finding, ...]:
        """Those of the code before those of draft and structure."""
        return (*self.code, *self.judged)

    @property
    def headline(self) -> str:
        """How many there are of each, in the words of the strip."""
        counted = f"{len(self.code)} {by_code(len(self.code))}, {len(self.judged)} {JUDGED}"
        return f"{counted}, {self.open} {PLURALS[NOT_CHECKED]}"


def shortfall(result: Assessment) -> Shortfall:
    """What falls short of a design, code, draft and structure. The draft is worked out for it."""
    return Shortfall(
        tuple(f for f in result.findings if f.verdict == FALLS_SHORT),
        tuple(f for f in result.judgement if f.verdict == FALLS_SHORT),
        tuple(f for f in result.structure.findings if f.verdict == FALLS_SHORT),
        result.counts.get(NOT_CHECKED, 0),
    )


def figures(finding: Finding, units: str = FEET_INCHES) -> str:
    """What there is and what is wanted, without the check's name; its own words where there are no
    figures.
    """
    provided, wanted = compared(finding, units)[0], asked(finding, units)
    wanted = wanted if finding.numbers or not wanted else f"wanted: {wanted}"
    return ", ".join(filter(None, (provided, wanted))) or finding.said


def short_words(finding: Finding, units: str = FEET_INCHES) -> str:
    """What falls short, and by which figures, in a line."""
    return f"{finding.title}: {figures(finding, units)}"
