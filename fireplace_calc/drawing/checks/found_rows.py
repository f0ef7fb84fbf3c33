"""Findings as rows: clause, check, what is there, what is asked, how that is known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fireplace_calc.drawing.plates.bands import Together, heading, row
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.sentences import asked, compared
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import MEETS, NOT_CHECKED
from fireplace_calc.rules.tracing.known import UNKNOWN

NAMES = ("Clause", "Check", "Provided", "Required", "Known")
TABLE = tuple(map(Column, NAMES, (29.0, 70.0, 30.0, 37.0, 22.0)))
JUDGED = tuple(map(Column, NAMES, (29.0, 83.0, 21.0, 34.0, 21.0)))
"""Of findings on draft and structure, whose names are longer."""
SHORT = (Column("Clause", 27), Column("Check", 60), Column("Required", 36))
"""Where nothing is known of most: what is there stands with what is required."""
LONG = 26
"""A list of allowed words with more letters is counted where it is met and room is short. [-]"""


@dataclass(frozen=True, slots=True)
class Fullness:
    """How much is said; less where a sheet is short of room.

    Attributes
    ----------
    notes : bool
        Notes of what meets.
    allowed : bool
        All words that a met clause allows, not only how many.
    keys : bool
        Under which key the check stands in the workbook, and long clauses in full.
    every : int
        A line under every so many rows. [-]
    enter : bool
        What could be entered, and why, of what is not checked.
    waits : bool
        Notes of what is not checked.
    why : bool
        Why a check is made that falls short.
    columns : bool
        What is not checked in all columns, not in the shorter ones.
    sections : bool
        A heading for each section of the code.
    """

    notes: bool = True
    allowed: bool = True
    keys: bool = True
    every: int = 1
    enter: bool = True
    waits: bool = True
    why: bool = True
    columns: bool = True
    sections: bool = True


LEVELS = (
    Fullness(),
    Fullness(notes=False),
    Fullness(False, allowed=False),
    Fullness(False, False, keys=False),
    Fullness(False, False, False, every=3),
    Fullness(False, False, False, 3, enter=False),
    Fullness(False, False, False, 3, False, waits=False),
    Fullness(False, False, False, 3, False, False, why=False),
    Fullness(False, False, False, 3, False, False, False, columns=False),
    Fullness(False, False, False, 99, False, False, False, columns=False),
    Fullness(False, False, False, 99, False, False, False, True, sections=False),
    Fullness(False, False, False, 99, False, False, False, False, sections=False),
)
"""From all there is to say to what must be said."""
ON_SMALL = Fullness(notes=False, enter=False)
"""On small paper, where a sheet more costs little."""


def head(wide: float, columns: tuple[Column, ...] = TABLE) -> list[Together]:
    """Names of the columns. [mm]"""
    names = [column.heading for column in columns]
    return row(columns, names, wide, bold=True, weight="seen", leads=True)


def found_row(
    finding: Finding,
    known: str,
    units: str,
    wide: float,
    say: Fullness,
    columns: tuple[Column, ...] = TABLE,
    weight: str = "fine",
) -> list[Together]:
    """One finding as a row, with what is to be said of it under its name. [mm]"""
    short = columns is SHORT
    wanted, there = asked(finding, units), compared(finding, units)[0]
    words = wanted.split(" or ")
    counted = finding.verdict == MEETS or short
    if not say.allowed and counted and len(words) > 2 and len(wanted) > LONG:
        wanted = f"one of {len(words)} allowed"
    clause = finding.clause if say.keys else short_clause(finding)
    texts = [clause, f"{finding.title} ({finding.key})" if say.keys else finding.title]
    if short:
        texts.append("; ".join(filter(None, (there and f"{there}, {known}", wanted))))
    else:
        texts += [there or ("" if finding.verdict == MEETS else UNKNOWN), wanted, known]
    return row(columns, texts, wide, under=_said(finding, say), weight=weight)


def short_clause(finding: Finding) -> str:
    """The first clause, not where else it stands; with a star where a state or province amends it.

    >>> from fireplace_calc import Design, assess
    >>> found = assess(Design(), "US IRC 2024 California").findings
    >>> [(f.clause, short_clause(f)) for f in found if f.key == "SEI-02"]
    [('R1001.3.1; R1003.3.1, California', 'R1001.3.1*')]
    """
    place = finding.edition.partition(" ")[2]
    amended = bool(place) and finding.clause.endswith(f", {place}")
    whole = finding.clause.removesuffix(" mode").removesuffix(f", {place}")
    first = whole.partition(";")[0].partition(" (")[0]
    return first.replace("exception", "ex.") + "*" * amended


def _said(finding: Finding, say: Fullness) -> str:
    """Notes and reasons of a finding as far as there is room for them."""
    more = (finding.why, to_enter(finding))
    if finding.verdict == MEETS:
        parts: tuple[str, ...] = (finding.note,) if say.notes else ()
    elif finding.verdict == NOT_CHECKED:
        parts = (finding.note if say.waits else "", *(more if say.enter else ()))
    else:
        parts = (finding.note, *(more if say.why else ()))
    return " ".join(_sentence(text) for text in parts if text)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]


def listed(
    title: str,
    findings: Sequence[Finding],
    known: Mapping[str, str],
    units: str,
    wide: float,
    say: Fullness,
    columns: tuple[Column, ...] = TABLE,
) -> list[Together]:
    """Findings under a heading; nothing where there are none. [mm]"""
    made = [heading(title, wide, over=1.0)]
    for n, finding in enumerate(findings, 1):
        weight = "fine" if n % say.every == 0 or n == len(findings) else ""
        made += found_row(finding, known[finding.key], units, wide, say, columns, weight)
    return made if findings else []
