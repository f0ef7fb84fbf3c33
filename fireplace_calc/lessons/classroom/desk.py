"""A student's desk: what his page may know, and nothing of the key.

An exercise is drawn anew for every question, answer and hint, and let go again at once. So neither
the page nor anything that it holds has an answer in it before the student has found it.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from fireplace_calc.design.records import Design
from fireplace_calc.lessons.answers.exercise_records import Exercise
from fireplace_calc.lessons.answers.replying import Reply, check
from fireplace_calc.lessons.classroom.class_records import ClassTask, figures_digest
from fireplace_calc.lessons.classroom.kept_work import add_attempt, own_work_folder, read_work
from fireplace_calc.lessons.classroom.student_work import (
    HELPED,
    RIGHT,
    WRONG,
    Attempt,
    StepStanding,
    StudentWork,
    as_answer,
    standing,
)
from fireplace_calc.lessons.classroom.tickets import seed_of
from fireplace_calc.lessons.exercise_figure import ExerciseFigure, FigureSize, FigureWord
from fireplace_calc.lessons.fault_hunt.hunting import counted

NOT_YET = "Not yet."
MARKS = "abcdefgh"
"""Letters of the steps, as on paper."""
ALWAYS = -1
"""Step of what a drawing shows whatever is asked. [-]"""
T = TypeVar("T", FigureSize, FigureWord)


@dataclass(frozen=True, slots=True)
class AskedStep:
    """One step as the page shows it.

    Attributes
    ----------
    ask : str
    unit : str
        What a bare number is taken to be in; empty for a count and a choice.
    options : tuple of str
        Of a choice.
    stands : StepStanding
    """

    ask: str
    unit: str
    options: tuple[str, ...]
    stands: StepStanding


@dataclass(frozen=True, slots=True)
class AskedExercise:
    """One exercise as the page shows it.

    Attributes
    ----------
    title, story : str
    given : tuple of (str, str, str)
        Group where there is one, name, and figure in the reader's units.
    steps : tuple of AskedStep
    figure : ExerciseFigure or None
        With the answers that are found; the others are question marks.
    search : Design or None
        What is to be looked through; its steps are answered from one list, in any order.
    """

    title: str
    story: str
    given: tuple[tuple[str, str, str], ...]
    steps: tuple[AskedStep, ...]
    figure: ExerciseFigure | None
    search: Design | None = None

    @property
    def done(self) -> int:
        """Steps answered right. [-]"""
        return sum(step.stands.done for step in self.steps)


def as_far_as(figure: ExerciseFigure | None, done: Collection[int]) -> ExerciseFigure | None:
    """A drawing without the answers that are not found yet, all of which may be shown.

    Parameters
    ----------
    figure : ExerciseFigure or None
        With all of them.
    done : collection of int
        Steps that are answered right, from nought on. [-]

    Returns
    -------
    ExerciseFigure or None
        What is not found is a letter and a question mark; working that is not done is left out.
    """
    if figure is None:
        return None

    def told(one: T) -> T:
        if one.step < 0 or one.step in done:
            return replace(one, step=ALWAYS)
        return replace(one, step=ALWAYS, text=f"{MARKS[one.step]} ?")

    return replace(
        figure,
        lines=tuple(
            replace(one, step=ALWAYS) for one in figure.lines if one.step < 0 or one.step in done
        ),
        sizes=tuple(map(told, figure.sizes)),
        words=tuple(map(told, figure.words)),
    )


class Desk:
    """One student at work.

    Parameters
    ----------
    task : ClassTask
    home : path
        Folder of all students' work.
    name, ticket : str
        As they stand on the slip.

    Raises
    ------
    InputError
        When they do not belong together, or the folder cannot be written.
    """

    def __init__(self, task: ClassTask, home: Path, name: str, ticket: str) -> None:
        self.task = task
        self.folder = own_work_folder(home, task.key, name, ticket)
        self.work: StudentWork = read_work(self.folder)
        self._seed = seed_of(ticket, name)

    def asked(self, number: int) -> AskedExercise:
        """One exercise; the number counts from 1. [-]"""
        drawn, units = self.task.draw(self._seed, number), self.task.units
        part, figures = self._part(number), figures_digest(drawn, answers=False)
        steps = tuple(
            AskedStep(
                step.ask,
                step.unit(units),
                step.options,
                standing(self.work, part, figures, n),
            )
            for n, step in enumerate(drawn.steps, 1)
        )
        given = tuple((one.group, one.name, one.shown(units)) for one in drawn.given)
        done = {n for n, step in enumerate(steps) if step.stands.done}
        figure = as_far_as(drawn.figure, done)
        search = drawn.design if drawn.any_order else None
        return AskedExercise(drawn.title, drawn.story, given, steps, figure, search)

    def answer(self, number: int, step: int, text: str) -> Reply:
        """Take an answer, keep it, and reply as far as the trainer lets the page help.

        Parameters
        ----------
        number, step : int
            Of exercise and step, from 1 on. [-]
        text : str
            In a search it counts for the fault that it names, and twice the same counts once.

        Raises
        ------
        InputError
            When it cannot be kept.
        """
        drawn = self.task.draw(self._seed, number)
        text = as_answer(text, drawn.steps[step - 1].options)
        if drawn.any_order:
            step = self._meant(number, drawn, text)
        found = check(drawn.steps[step - 1], text, self.task.units)
        what = RIGHT if found.right else WRONG
        figures = figures_digest(drawn, answers=False)
        made = Attempt(self._part(number), figures, step, what, text, found.mistake)
        if not (drawn.any_order and self._tried(made)):
            self._add(made)
        bare = self.task.helps == "none" and not found.right and found.mistake != "unreadable"
        reply = Reply(False, NOT_YET, found.mistake) if bare else found
        return self._counted(number, drawn, reply) if drawn.any_order else reply

    @property
    def helps(self) -> tuple[str, ...]:
        """What help a student may ask for."""
        return {"none": (), "hints": HELPED[:2], "working": HELPED}[self.task.helps]

    def help_with(self, number: int, step: int, what: str) -> str:
        """A hint or the working; that it was asked for is kept.

        Parameters
        ----------
        number, step : int
            Of exercise and step, from 1 on. [-]
        what : str
            One of ``helps``.

        Raises
        ------
        InputError
            When it cannot be kept.
        """
        if what not in self.helps:
            return "Your trainer has not opened this help."
        drawn = self.task.draw(self._seed, number)
        if drawn.any_order:
            step = self._meant(number, drawn)
        asked, figures = drawn.steps[step - 1], figures_digest(drawn, answers=False)
        self._add(Attempt(self._part(number), figures, step, what))
        if what == HELPED[2]:
            return f"{asked.working} The answer is {asked.answer(self.task.units)}."
        return asked.more if what == HELPED[1] else asked.hint

    # -- a search ---------------------------------------------------------------------------------
    def _meant(self, number: int, drawn: Exercise, text: str | None = None) -> int:
        """The fault that a guess names; else the first that is still to be found. [-]"""
        if text is not None:
            for n, one in enumerate(drawn.steps, 1):
                if check(one, text, self.task.units).right:
                    return n
        left = self._to_find(number, drawn)
        return left[0] if left else 1

    def _to_find(self, number: int, drawn: Exercise) -> list[int]:
        part, figures = self._part(number), figures_digest(drawn, answers=False)
        steps = range(1, len(drawn.steps) + 1)
        return [n for n in steps if not standing(self.work, part, figures, n).done]

    def _tried(self, made: Attempt) -> bool:
        """Whether the same was guessed before, of whichever fault."""
        before = [replace(one, step=made.step) for one in self.work.attempts]
        return made in before

    def _counted(self, number: int, drawn: Exercise, reply: Reply) -> Reply:
        part, figures = self._part(number), figures_digest(drawn, answers=False)
        guesses = [
            one
            for one in self.work.attempts
            if (one.part, one.figures) == (part, figures) and one.what in (RIGHT, WRONG)
        ]
        return counted(reply, len(guesses), len(self._to_find(number, drawn)))

    # ---------------------------------------------------------------------------------------------
    def _part(self, number: int) -> str:
        kind, which = self.task.parts[number - 1]
        return f"{kind} {which}"

    def _add(self, attempt: Attempt) -> None:
        self.work = add_attempt(self.folder, attempt)
