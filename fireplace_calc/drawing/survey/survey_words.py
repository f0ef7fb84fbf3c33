"""A survey as paragraphs and tables: what is dangerous, doubtful, measured, assumed and unseen."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.report.assumed_inputs import not_entered
from fireplace_calc.survey.beside import BESIDE_HEADINGS, beside_drawn, beside_words
from fireplace_calc.survey.doubts import doubt_rows
from fireplace_calc.survey.from_survey import Surveyed
from fireplace_calc.survey.reading import LEFT_OUT, UNREACHED, WRONG
from fireplace_calc.survey.unseen import UNSEEN

SIGN_COLUMNS = (Column("Seen", 30), Column("What it means, and what to do", 70))
DOUBT_COLUMNS = (
    Column("What is doubtful, and why", 26),
    Column("Verdict", 16),
    Column("Check", 58),
)
BESIDE_COLUMNS = tuple(
    Column(name, share) for name, share in zip(BESIDE_HEADINGS, (7, 22, 41, 16, 14), strict=True)
)
UNSEEN_COLUMNS = (
    Column("What", 32),
    Column("What it decides", 30),
    Column("How to find out", 38),
)


def doubt_parts(
    told: Surveyed, result: Assessment, units: str = FEET_INCHES
) -> Iterator[str | Table]:
    """What comes first: signs of trouble, and what a raised opening makes doubtful.

    Parameters
    ----------
    told : Surveyed
    result : Assessment
        Of the design that was measured.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    if told.signs:
        rows = tuple((one.entry.spec.label, one.entry.sign) for one in told.signs)
        yield Table("Signs of trouble that were seen", SIGN_COLUMNS, rows)
    yield Table(
        "What is doubtful",
        DOUBT_COLUMNS,
        doubt_rows(result, units),
        before=f"Checked as measured, against {result.pack}.",
    )


def survey_parts(told: Surveyed, drawn: Design, units: str = FEET_INCHES) -> Iterator[str | Table]:
    """What was measured beside what is drawn, and what nobody knows.

    Parameters
    ----------
    told : Surveyed
    drawn : Design
        Of the job, or the usual one.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    rows = tuple(beside_words(row, units) for row in beside_drawn(told, drawn))
    if rows:
        yield Table(
            "Measured beside drawn",
            BESIDE_COLUMNS,
            rows,
            before=f"Drawn: {drawn.name}. Usual: nobody has entered it.",
        )
    yield from told.said
    yield from gaps(told)
    yield Table("Not seen by this survey", UNSEEN_COLUMNS, tuple(tuple(one) for one in UNSEEN))


def gaps(told: Surveyed) -> Iterator[str]:
    """What was not reached, not looked at, or only partly read; and what is assumed.

    Parameters
    ----------
    told : Surveyed
    """
    for state, words in (
        (UNREACHED, "Cannot be reached"),
        (WRONG, "Cannot be read, and left out"),
        (LEFT_OUT, "Not looked at"),
    ):
        names = [one.entry.key for one in told.of_state(state)]
        if names:
            yield f"{words}: {', '.join(names)}."
    partly = [one.entry.key for one in told.readings.values() if one.lacking]
    if partly:
        yield f"Measured at one place of several: {', '.join(partly)}."
    if told.assumed:
        yield not_entered(told.assumed)
