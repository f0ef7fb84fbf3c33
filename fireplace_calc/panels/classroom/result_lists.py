"""The results of a class as tables on the trainer's page."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.lessons.classroom.class_results import ResultRow, hard_causes, hard_steps

MOST_ROWS = 12
"""Of what was hard. [-]"""
STUDENTS = (
    Column("Student", 30),
    Column("Questions", 12),
    Column("Begun", 10),
    Column("Right", 10),
    Column("Right at first", 12),
    Column("Wrong answers", 12),
    Column("Hints", 10),
)
HARD = (
    Column("Topic", 26),
    Column("Asked", 39),
    Column("Began", 9),
    Column("Right at first", 10),
    Column("Right", 9),
    Column("Wrong answers", 10),
    Column("Hints", 9),
)
CAUSES = (
    Column("Topic", 26),
    Column("What was done", 38),
    Column("Students", 12),
    Column("Times", 10),
)


def result_tables(rows: Sequence[ResultRow]) -> Iterable[Table]:
    """Students, the hardest questions, and the commonest mistakes.

    Parameters
    ----------
    rows : sequence of ResultRow
    """
    yield Table("Students", STUDENTS, tuple(_students(rows)))
    hard = [one for one in hard_steps(rows) if one.begun][:MOST_ROWS]
    told = (
        (one.title, one.prompt, *map(str, (one.begun, one.first, one.done, one.wrong, one.hints)))
        for one in hard
    )
    if hard:
        yield Table("What was hard, the hardest first", HARD, tuple(told))
    causes = tuple(
        (one.title, one.cause, str(one.students), str(one.times))
        for one in hard_causes(rows)[:MOST_ROWS]
    )
    if causes:
        yield Table("What was done wrong, the commonest first", CAUSES, causes)


def _students(rows: Sequence[ResultRow]) -> Iterable[tuple[str, ...]]:
    for name in dict.fromkeys(row.name for row in rows):
        own = [row for row in rows if row.name == name]
        counts = (
            len(own),
            sum(row.begun for row in own),
            sum(row.stands.done for row in own),
            sum(row.stands.first for row in own),
            sum(row.stands.wrong for row in own),
            sum(row.stands.hints for row in own),
        )
        yield (name, *map(str, counts))
