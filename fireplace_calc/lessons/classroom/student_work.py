"""What one student has done, and where it stands: a list that only grows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.file_text import quoted
from fireplace_calc.editing.jobs.names import one_line
from fireplace_calc.lessons.answers.written import LONGEST_ANSWER

RIGHT, WRONG, HELPED = "right", "wrong", ("hint", "bigger hint", "working")
"""What an entry may say: an answer that is right or not, or help that was asked for."""
MOST_ENTRIES = 500
"""Of one student; some twenty answers to every question. [-]"""


@dataclass(frozen=True, slots=True)
class Attempt:
    """One answer, or one piece of help.

    Attributes
    ----------
    part : str
        Kind of exercise, and which of its kind: ``hearth 1``.
    figures : str
        Digest of the exercise's givens.
    step : int
        From 1 on. [-]
    what : str
        ``right`` or ``wrong``, or one of ``HELPED``.
    text : str
        The answer as it was typed.
    cause : str
        The mistake that was recognized in it, if any.
    """

    part: str
    figures: str
    step: int
    what: str
    text: str = ""
    cause: str = ""


@dataclass(frozen=True)
class StudentWork:
    """All that a student's file holds.

    Attributes
    ----------
    key : str
        Of the class.
    name, ticket : str
    attempts : tuple of Attempt
        In their order.
    """

    key: str
    name: str
    ticket: str
    attempts: tuple[Attempt, ...] = ()


@dataclass(frozen=True, slots=True)
class StepStanding:
    """How one step of one exercise stands.

    Attributes
    ----------
    done : bool
        Answered right.
    first : bool
        Answered right at first, with no help before.
    wrong, hints, workings : int
        Answers that were not right, and help asked for, until it was done. [-]
    causes : tuple of str
        Mistakes that were recognized.
    last : str
        The answer given last.
    """

    done: bool
    first: bool
    wrong: int
    hints: int
    workings: int
    causes: tuple[str, ...]
    last: str


def standing(work: StudentWork, part: str, figures: str, step: int) -> StepStanding:
    """Where one step stands.

    Parameters
    ----------
    work : StudentWork
    part, figures : str
        Of the exercise, as in ``Attempt``.
    step : int
        From 1 on. [-]

    Examples
    --------
    >>> one = Attempt("hearth 1", "ab", 2, "wrong", "16 in", "The raise was forgotten.")
    >>> two = Attempt("hearth 1", "ab", 2, "right", "20 in")
    >>> found = standing(StudentWork("", "Ann", "", (one, two)), "hearth 1", "ab", 2)
    >>> found.done, found.first, found.wrong, found.last
    (True, False, 1, '20 in')
    """
    before: list[Attempt] = []
    done, last = False, ""
    for one in work.attempts:
        if (one.part, one.figures, one.step) != (part, figures, step):
            continue
        last = one.text or last
        done = done or one.what == RIGHT
        if done:
            break
        before.append(one)
    told = [one.what for one in before]
    return StepStanding(
        done,
        done and not before,
        told.count(WRONG),
        told.count(HELPED[0]) + told.count(HELPED[1]),
        told.count(HELPED[2]),
        tuple(one.cause for one in before if one.cause),
        last,
    )


def work_text(work: StudentWork, made_by: str) -> str:
    """The file of a student's work."""
    rows = [
        f"    {quoted([one.part, one.figures, one.step, one.what, one.text, one.cause])},\n"
        for one in work.attempts
    ]
    return (
        "# What a student has answered, in order. Written by the student's page; no answer of the"
        " key stands here.\n"
        f"class = {quoted(work.key)}\nname = {quoted(work.name)}\nticket = {quoted(work.ticket)}\n"
        f"made_by = {quoted(made_by)}\nattempts = [\n{''.join(rows)}]\n"
    )


def work_of(told: Mapping[str, Any], where: str) -> StudentWork:
    """A student's work as its file tells it.

    Parameters
    ----------
    told : mapping
        The file, read as TOML.
    where : str
        Its name, for the message.

    Raises
    ------
    InputError
        When it is not as the page writes it.
    """
    words = [told.get(name) for name in ("class", "name", "ticket")]
    rows = told.get("attempts")
    good = all(isinstance(word, str) for word in words) and isinstance(rows, list)
    made = []
    for row in rows if good and isinstance(rows, list) else ():
        kinds = [type(cell) for cell in row] if isinstance(row, list) else []
        good = (
            good and kinds == [str, str, int, str, str, str] and row[3] in (RIGHT, WRONG, *HELPED)
        )
        if good:
            made.append(Attempt(*row))
    if not good:
        raise InputError(
            f"{where} is not as the student's page writes it. It is left as it is.",
            "work",
            "as it was written",
            where,
        )
    key, name, ticket = map(str, words)
    return StudentWork(key, name, ticket, tuple(made))


def as_answer(text: str, options: Sequence[str] = ()) -> str:
    """An answer on one line, as much of it as is kept; one of the options is kept whole."""
    return text if text in options else one_line(text, LONGEST_ANSWER)
