"""The tables under a lesson: what the checks found, what three books say, what to take care of."""

from __future__ import annotations

from collections.abc import Iterable

from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.lessons import Lesson, warned
from fireplace_calc.report.books import SIDE_BY_SIDE, side_by_side
from fireplace_calc.report.sentences import answer, answers_rest, asked, compared, sign
from fireplace_calc.rules import Finding

BOOKS = ("us", "canada", "uk")
"""Columns of the books that a lesson sets side by side."""
FOUND = (
    Column("Verdict", 17),
    Column("Check", 30),
    Column("Provided", 13),
    Column("Required", 13),
    Column("Clause", 18),
    Column("Why", 49),
)
CARE = (Column("About", 10), Column("What", 100), Column("Source, confidence", 40))


def found_table(title: str, findings: Iterable[Finding], units: str) -> Table:
    """Findings, one a row, in the reader's units."""
    rows = (
        (
            f"{sign(f)} {f.said}",
            f"{f.title} ({f.key})",
            compared(f, units)[0],
            asked(f, units),
            f"{f.clause}, {f.edition}",
            " ".join(text for text in (f.why, f.note) if text),
        )
        for f in findings
    )
    return Table(title, FOUND, tuple(rows))


def compared_books(design: Design, lesson: Lesson, pack: str, units: str) -> Table:
    """The lesson's questions with the answer of each book; ``pack`` is the American one."""
    chosen = [list(SIDE_BY_SIDE).index(book) for book in BOOKS]
    names = [pack if book == "us" else SIDE_BY_SIDE[book] for book in BOOKS]
    asked_all = [q for q in side_by_side(design, {"us": pack}) if q.text in lesson.questions]
    rows = tuple((q.text, *(answer(q.answers[k], units) for k in chosen), q.why) for q in asked_all)
    books = (Column(name, 30) for name in names)
    columns = (Column("Question", 22), *books, Column("Why they differ", 38))
    answers = (q.answers[k] for q in asked_all for k in chosen)
    title, rests = "The same question to three books", answers_rest(answers)
    return Table(title, columns, rows, before=rests)


def cautions(lesson: Lesson) -> Table:
    """What can hurt somebody who puts the lesson into practice."""
    rows = (
        (
            c.topic,
            c.what if c.number is None else f"{c.what} ({c.number:g} {c.unit})",
            f"{c.source}, {c.confidence}",
        )
        for c in warned(lesson)
    )
    return Table("Take care", CARE, tuple(rows))
