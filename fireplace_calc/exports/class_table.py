"""The results of a class as one table: CSV, and a spreadsheet whose sums follow what is changed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from fireplace_calc.base.resources import made_by
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.exports.stored_formulas import ColumnKind, Formula, StoredBook
from fireplace_calc.lessons.classroom.class_results import (
    ResultRow,
    hard_causes,
    hard_steps,
)
from fireplace_calc.report.csv_files import csv_text, harmless

CSV, BOOK = "results.csv", "results.xlsx"
ANSWERS = (
    ColumnKind("Student", 26),
    ColumnKind("Exercise", 9),
    ColumnKind("Topic", 30),
    ColumnKind("Question", 9),
    ColumnKind("Asked", 46),
    ColumnKind("Begun", 8),
    ColumnKind("Right", 8),
    ColumnKind("Right at first", 8),
    ColumnKind("Wrong answers", 9),
    ColumnKind("Hints", 8),
    ColumnKind("Workings", 9),
    ColumnKind("Answered last", 18),
    ColumnKind("Mistakes", 70),
)
SUMMED = "FGHIJK"
"""Letters of the columns that are added up."""
STUDENTS = (
    ColumnKind("Student", 26),
    ColumnKind("Questions", 10),
    *ANSWERS[5:11],
    ColumnKind("Share right", 10, "0 %"),
)
HARD = (
    ColumnKind("Topic", 30),
    ColumnKind("Asked", 46),
    ColumnKind("Students who began", 10),
    ColumnKind("Right at first", 8),
    ColumnKind("Right", 8),
    ColumnKind("Wrong answers", 9),
    ColumnKind("Hints", 8),
    ColumnKind("Workings", 9),
    ColumnKind("Share right at first", 10, "0 %"),
)
CAUSES = (
    ColumnKind("Topic", 30),
    ColumnKind("Mistake", 80),
    ColumnKind("Students", 9),
    ColumnKind("Times", 8),
)


def answer_cells(row: ResultRow) -> tuple[Any, ...]:
    """One question of one student under ``ANSWERS``; yes is 1, no is 0."""
    stands = row.stands
    return (
        row.name,
        row.number,
        row.title,
        row.step,
        row.prompt,
        int(row.begun),
        int(stands.done),
        int(stands.first),
        stands.wrong,
        stands.hints,
        stands.workings,
        stands.last,
        " | ".join(stands.causes),
    )


def write_results(rows: Iterable[ResultRow], folder: Path) -> tuple[Path, Path]:
    """Write the table as CSV and as a spreadsheet, each whole or not at all.

    Parameters
    ----------
    rows : iterable of ResultRow
    folder : path
        The trainer's; it is there.

    Returns
    -------
    tuple of path
        Both files.

    Raises
    ------
    InputError
        When one cannot be written.
    """
    found = list(rows)
    headings = [one.heading for one in ANSWERS]
    write_whole(folder / CSV, csv_text(headings, map(answer_cells, found)))
    write_whole(folder / BOOK, _book(found).content())
    return folder / CSV, folder / BOOK


def _book(rows: Sequence[ResultRow]) -> StoredBook:
    made = StoredBook()
    made.book.properties.creator, made.book.properties.title = made_by(), "Results of a class"
    _students(made, rows)
    _table(made, "Answers", ANSWERS, map(answer_cells, rows))
    _table(made, "Hard questions", HARD, map(_hard_cells, _numbered(hard_steps(rows))))
    causes = ((c.title, c.cause, c.students, c.times) for c in hard_causes(rows))
    _table(made, "Mistakes", CAUSES, causes)
    return made


def _numbered(found: Iterable[Any]) -> Iterable[tuple[int, Any]]:
    return enumerate(found, 2)


def _hard_cells(numbered: tuple[int, Any]) -> tuple[Any, ...]:
    number, one = numbered
    share = one.first / one.begun if one.begun else None
    text = f'=IF(C{number}=0,"",D{number}/C{number})'
    counts = (one.begun, one.first, one.done, one.wrong, one.hints, one.workings)
    return one.title, one.prompt, *counts, Formula(text, share)


def _students(made: StoredBook, rows: Sequence[ResultRow]) -> None:
    """What each has reached, added up from the answers, and the whole class under it."""
    names = list(dict.fromkeys(row.name for row in rows))
    listed: list[list[Any]] = []
    first = 2
    for number, name in enumerate(names, 2):
        own = [answer_cells(row) for row in rows if row.name == name]
        last = first + len(own) - 1
        sums = [Formula(f"=COUNT(Answers!F{first}:F{last})", float(len(own)))]
        for letter in SUMMED:
            value = float(sum(one["ABCDEFGHIJK".index(letter)] for one in own))
            sums.append(Formula(f"=SUM(Answers!{letter}{first}:{letter}{last})", value))
        share = Formula(f"=D{number}/B{number}", (sums[2].value or 0.0) / (sums[0].value or 1.0))
        listed.append([name, *sums, share])
        first = last + 1
    total = len(names) + 2
    whole: list[Any] = ["The class"]
    for column in range(1, 8):
        letter = "ABCDEFGH"[column]
        value = sum(one[column].value or 0.0 for one in listed)
        whole.append(Formula(f"=SUM({letter}2:{letter}{total - 1})", value))
    whole.append(Formula(f"=D{total}/B{total}", whole[3].value / whole[1].value))
    _table(made, "Students", STUDENTS, [*listed, whole], bold=total)


def _table(
    made: StoredBook,
    title: str,
    columns: Sequence[ColumnKind],
    rows: Iterable[Sequence[Any]],
    bold: int = 0,
) -> None:
    sheet = made.sheet(title)
    made.headed(sheet, 1, columns)
    for number, cells in enumerate(rows, 2):
        for column, (content, kind) in enumerate(zip(cells, columns, strict=True), 1):
            made.put(sheet, number, column, harmless(content), kind.shown, bold=number == bold)
