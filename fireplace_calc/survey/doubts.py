"""What a hand that raised the opening leaves doubtful, first things first."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.report.sentences import sentence, sign
from fireplace_calc.rules import Finding
from fireplace_calc.rules.book import RANK
from fireplace_calc.rules.comparing import DOES_NOT_APPLY

COLUMNS = ("us", "canada", "uk", "practice", "others")


class Raised(NamedTuple):
    """Something that a raised opening asks more of.

    Attributes
    ----------
    name : str
    why : str
    questions : tuple of str
        Rows of ``data/questions.csv`` that answer it, whatever the book.
    judged : tuple of str
        Keys of findings on draft and structure.
    """

    name: str
    why: str
    questions: tuple[str, ...]
    judged: tuple[str, ...] = ()


RAISED: tuple[Raised, ...] = (
    Raised(
        "Flue for the opening",
        "A raised opening is a bigger one; the flue stayed as it was.",
        ("Flue for the opening",),
        ("DRF-02", "DRF-03", "DRF-04"),
    ),
    Raised(
        "Throat",
        "The lintel came up, the throat did not.",
        ("Throat over the opening", "Throat and flue", "Damper"),
    ),
    Raised(
        "Top over the roof",
        "A bigger opening wants more height, and the top stands where it stood.",
        (
            "Least height of the chimney",
            "Top over the roof at the chimney",
            "Top over what stands near",
        ),
    ),
    Raised(
        "Lintel",
        "It was taken out and set again, under masonry that hung meanwhile.",
        ("What carries the opening",),
        ("STR-09", "STR-10", "STR-11", "STR-12", "STR-13"),
    ),
    Raised(
        "Hearth and mantel",
        "A bigger opening throws farther, and the mantel is nearer to it.",
        ("Hearth in front", "Hearth beside", "Mantel"),
    ),
)


@lru_cache(maxsize=1)
def _keys() -> dict[str, tuple[str, ...]]:
    """Keys of every book's rules, by the question they answer."""
    return {
        row["question"]: tuple(key for column in COLUMNS for key in row[column].split())
        for row in rows("questions.csv")
    }


def raised_findings(result: Assessment, of: Raised) -> tuple[Finding, ...]:
    """What the reader's book, draft and structure say of one of them, worst first.

    Parameters
    ----------
    result : Assessment
        Of the design that was measured.
    of : Raised

    Returns
    -------
    tuple of Finding
        Without what does not apply.
    """
    wanted = {key for question in of.questions for key in _keys()[question]} | set(of.judged)
    found = [
        finding
        for key, finding in every_finding(result).items()
        if key in wanted and finding.verdict != DOES_NOT_APPLY
    ]
    return tuple(sorted(found, key=lambda f: (RANK[f.verdict], not f.on_assumption)))


def doubt_rows(result: Assessment, units: str = FEET_INCHES) -> tuple[tuple[str, str, str], ...]:
    """What is doubtful, as rows of words.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of (str, str, str)
        What and why, verdict, finding in a sentence.
    """
    told = []
    for one in RAISED:
        found = raised_findings(result, one)
        about = f"{one.name}. {one.why}"
        if not found:
            told.append((about, "", f"{result.pack} has no figure for it."))
        for n, finding in enumerate(found):
            verdict = f"{sign(finding)} {finding.said}"
            told.append((about if n == 0 else "", verdict, sentence(finding, units)))
    return tuple(told)
