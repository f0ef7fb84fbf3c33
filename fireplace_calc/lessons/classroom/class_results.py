"""The results of a class: a row for every question of every student, and what was hard.

An answer counts as the trainer's own program finds it, not as the student's file says.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from fireplace_calc.lessons.answers.exercise_records import Exercise
from fireplace_calc.lessons.answers.replying import check
from fireplace_calc.lessons.classroom.class_records import SchoolClass, figures_digest
from fireplace_calc.lessons.classroom.student_work import (
    RIGHT,
    WRONG,
    Attempt,
    StepStanding,
    StudentWork,
    standing,
)

NOT_RECOGNIZED = "not recognized"
UNREADABLE = "could not be read"


@dataclass(frozen=True, slots=True)
class ResultRow:
    """One question of one student.

    Attributes
    ----------
    name : str
        Of the student.
    number, step : int
        Of exercise and step, from 1 on. [-]
    kind, title, prompt : str
        Of the exercise, and what was asked.
    begun : bool
        Whether anything was answered or asked for.
    stands : StepStanding
    """

    name: str
    number: int
    step: int
    kind: str
    title: str
    prompt: str
    begun: bool
    stands: StepStanding


@dataclass(frozen=True, slots=True)
class HardStep:
    """How one question went over the class.

    Attributes
    ----------
    title, prompt : str
    begun, first, done : int
        Students who began it, had it right at first, have it right now. [-]
    wrong, hints, workings : int
        Wrong answers and help of all together. [-]
    """

    title: str
    prompt: str
    begun: int
    first: int
    done: int
    wrong: int
    hints: int
    workings: int


@dataclass(frozen=True, slots=True)
class HardCause:
    """One mistake over the class: where, what was done, how many students, how often. [-]"""

    title: str
    cause: str
    students: int
    times: int


def result_rows(room: SchoolClass, works: Mapping[str, StudentWork]) -> Iterator[ResultRow]:
    """Every question of every student, in the order of the roster.

    Parameters
    ----------
    room : SchoolClass
    works : mapping of str to StudentWork
        By name; who is missing has not begun.

    Yields
    ------
    ResultRow
    """
    for name in room.places:
        work = works.get(name, StudentWork(room.task.key, name, ""))
        for number, drawn in enumerate(room.task.draw_all(room.seed(name)), 1):
            kind, which = room.task.parts[number - 1]
            part, figures = f"{kind} {which}", figures_digest(drawn, answers=False)
            mine = tuple(
                _checked(one, drawn, room.task.units)
                for one in work.attempts
                if (one.part, one.figures) == (part, figures) and one.step <= len(drawn.steps)
            )
            for n, step in enumerate(drawn.steps, 1):
                begun = any(one.step == n for one in mine)
                stands = standing(replace(work, attempts=mine), part, figures, n)
                yield ResultRow(name, number, n, kind, drawn.title, step.ask, begun, stands)


def _checked(one: Attempt, drawn: Exercise, units: str) -> Attempt:
    """An answer with the verdict and the cause that it has here."""
    if one.what not in (RIGHT, WRONG) or one.step < 1:
        return one
    found = check(drawn.steps[one.step - 1], one.text, units)
    cause = "" if found.right else found.mistake or NOT_RECOGNIZED
    cause = UNREADABLE if cause == "unreadable" else cause
    return replace(one, what=RIGHT if found.right else WRONG, cause=cause)


def hard_steps(rows: Iterable[ResultRow]) -> tuple[HardStep, ...]:
    """Every question over the class, the hardest first: the one that fewest of those who began it
    had right at first.
    """
    grouped: dict[tuple[str, str], list[ResultRow]] = {}
    for row in rows:
        grouped.setdefault((row.title, row.prompt), []).append(row)
    made = [
        HardStep(
            *where,
            sum(row.begun for row in found),
            sum(row.stands.first for row in found),
            sum(row.stands.done for row in found),
            sum(row.stands.wrong for row in found),
            sum(row.stands.hints for row in found),
            sum(row.stands.workings for row in found),
        )
        for where, found in grouped.items()
    ]
    return tuple(sorted(made, key=lambda one: one.first / one.begun if one.begun else 2.0))


def hard_causes(rows: Iterable[ResultRow]) -> tuple[HardCause, ...]:
    """Every mistake over the class, the one that most students made first."""
    times: Counter[tuple[str, str]] = Counter()
    who: dict[tuple[str, str], set[str]] = {}
    for row in rows:
        for cause in row.stands.causes:
            times[row.title, cause] += 1
            who.setdefault((row.title, cause), set()).add(row.name)
    made = [HardCause(*where, len(who[where]), many) for where, many in times.items()]
    return tuple(sorted(made, key=lambda one: (-one.students, -one.times, one.title, one.cause)))
