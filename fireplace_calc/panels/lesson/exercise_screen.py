"""Exercises of a lesson: a step at a time, with hint, bigger hint and full working."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.lessons.board import MID
from fireplace_calc.drawing.lessons.exercise_pictures import exercise_picture
from fireplace_calc.drawing.page.stage import DENSITY
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons import Exercise, ExerciseStep, Reply, check, exercise
from fireplace_calc.lessons.answers.given_figures import given_rows, given_table
from fireplace_calc.lessons.exercise_kinds import LEVELS, kinds_of
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told, aim_of

HELPS = ("hint", "more", "working")
"""What helps with a step, the least first."""


_exercise = lru_cache(maxsize=32)(exercise)


class ExerciseScreen:
    """The sixth screen.

    Parameters
    ----------
    reader : LessonReader

    Attributes
    ----------
    kind : int
        Which of the lesson's kinds, from nought. [-]
    level, seed, step : int
        Of what is asked. [-]
    replies : dict
        What was answered last to each step that was tried, and what was typed.
    helped : dict
        What help was given last for a step.
    done : set
        Steps that are solved or were worked out in full. [-]
    """

    name = "exercises"

    def __init__(self, reader: LessonReader) -> None:
        self.reader, self.kind, self.level, self.seed = reader, 0, LEVELS[0], 1
        self.kept: dict[tuple[object, ...], list[tuple[Cell, Sheet]]] = {}
        self._clear()
        self.acts = {
            "kind": lambda m: self._choose(kind=int(m["at"])),
            "level": lambda m: self._choose(level=int(m["at"])),
            "another": lambda _: self._choose(seed=self.seed + 1),
            "typed": self._typed,
            "help": self._help,
            "onward": lambda m: self._onward(int(m["at"])),
        }

    def _clear(self) -> None:
        self.step, self.replies = 0, dict[int, tuple[str, Reply]]()
        self.helped, self.done = dict[int, str](), set[int]()

    @property
    def kinds(self) -> tuple[str, ...]:
        """The lesson's kinds that the reader's book has figures for; all where it has none."""
        listed = self.reader.lesson.exercises
        return tuple(k for k in listed if k in kinds_of(self.reader.book)) or listed

    def _drawn(self) -> tuple[Exercise | None, str]:
        """The exercise in the reader's book and units, or why there is none."""
        reader, kinds = self.reader, self.kinds
        if not kinds:
            return None, "This lesson has no exercise."
        kind = kinds[self.kind]
        try:
            return _exercise(kind, self.seed, reader.book, self.level, reader.units), ""
        except InputError as error:  # a book without such a figure
            return None, str(error)

    @property
    def task(self) -> Exercise | None:
        """The exercise in front."""
        return self._drawn()[0]

    def _choose(self, kind: int | None = None, level: int = 0, seed: int = 0) -> None:
        self.kind = self.kind if kind is None else kind
        self.level, self.seed = level or self.level, seed or self.seed
        self._clear()

    @property
    def asked(self) -> ExerciseStep | None:
        """The step in front."""
        task = self.task
        return task.steps[self.step] if task else None

    def _typed(self, message: Mapping[str, Any]) -> None:
        asked, text = self.asked, str(message["text"])
        if asked is None:
            return
        reply = check(asked, text, self.reader.units)
        self.replies[self.step] = (text, reply)
        self.helped.pop(self.step, None)
        if reply.right:
            self.done.add(self.step)

    def _help(self, message: Mapping[str, Any]) -> None:
        self.helped[self.step] = str(message["name"])
        if message["name"] == HELPS[-1]:
            self.done.add(self.step)

    def _onward(self, step: int) -> None:
        task = self.task
        if task and 0 <= step < len(task.steps):
            self.step = step

    def lead(self) -> tuple[str, str]:
        """Title, number and story."""
        task = self.task
        if task is None:
            return aim_of(self.reader.lesson)
        return f"{task.title}, no. {self.seed}.", task.story

    def told(self) -> Told:
        """The exercise and its step."""
        task, trouble = self._drawn()
        told: Told = {
            "kinds": len(self.kinds),
            "kind": self.kind,
            "levels": list(LEVELS),
            "level": self.level,
            "seed": self.seed,
            "trouble": trouble,
        }
        if task is None:
            return told
        asked = task.steps[self.step]
        help_given = self.helped.get(self.step)
        typed, reply = self.replies.get(self.step, ("", None))
        given = [(one.name, one.shown(self.reader.units)) for one in task.given]
        table = given_table(given)
        told |= {
            "given": [f"{name}: {figure}" for name, figure in given_rows(given)],
            "table": table and table._asdict(),
            "step": self.step,
            "steps": len(task.steps),
            "ask": asked.ask,
            "unit": asked.unit(self.reader.units),
            "options": list(asked.options),
            "typed": typed,
            "done": self.step in self.done,
        }
        if help_given:
            told["reply"] = {"right": None, "text": getattr(asked, help_given), "name": help_given}
        elif reply:
            told["reply"] = {"right": reply.right, "text": reply.text, "name": "answer"}
        return told

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The exercise's drawing as far as its step; the lesson's own where there is none."""
        task, reader = self.task, self.reader
        if task is None:
            return reader.picture(reader.at(), ("plain",))
        wide, high, screen = (one / DENSITY for one in (reader.wide, reader.high, reader.screen))
        wanted = (id(task), self.step, self.step in self.done, wide, high, screen)
        if wanted not in self.kept:
            sheet = exercise_picture(
                task, wide, high, self.step, self.step in self.done, MID * screen
            )
            self.kept = {wanted: [(Cell(0.0, 0.0, wide, high), sheet)]}
        return self.kept[wanted]
