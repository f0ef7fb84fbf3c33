"""Exercises of a lesson: a step at a time, with hint, bigger hint and full working."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.lessons.board import MID
from fireplace_calc.drawing.lessons.exercise_pictures import exercise_picture
from fireplace_calc.drawing.page.stage import DENSITY
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons import Exercise, ExerciseStep, Reply, check, exercise
from fireplace_calc.lessons.exercise_kinds import LEVELS
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told

HELPS = ("hint", "more", "working")
"""What helps with a step, the least first."""


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
        self.task: Exercise | None = None
        self.trouble = ""
        kinds = self.reader.lesson.exercises
        if not kinds:
            return
        try:
            self.task = exercise(
                kinds[self.kind], self.seed, self.reader.book, self.level, self.reader.units
            )
        except InputError as error:  # a book without such a figure
            self.trouble = str(error)

    def _choose(self, kind: int | None = None, level: int = 0, seed: int = 0) -> None:
        self.kind = self.kind if kind is None else kind
        self.level, self.seed = level or self.level, seed or self.seed
        self._clear()

    def refresh(self) -> None:
        """The same exercise in the reader's units, from its first step."""
        self._clear()

    @property
    def asked(self) -> ExerciseStep | None:
        """The step in front."""
        return self.task.steps[self.step] if self.task else None

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
        if self.task and 0 <= step < len(self.task.steps):
            self.step = step

    def told(self) -> Told:
        """The exercise and its step."""
        told: Told = {
            "kinds": len(self.reader.lesson.exercises),
            "kind": self.kind,
            "levels": list(LEVELS),
            "level": self.level,
            "seed": self.seed,
            "trouble": self.trouble,
        }
        asked, task = self.asked, self.task
        if asked is None or task is None:
            return told
        help_given = self.helped.get(self.step)
        typed, reply = self.replies.get(self.step, ("", None))
        told |= {
            "title": task.title,
            "story": task.story,
            "given": [f"{one.name}: {one.shown(self.reader.units)}" for one in task.given],
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
        """The figure with a question mark, and the working as far as it is done."""
        reader = self.reader
        wide, high, screen = (one / DENSITY for one in (reader.wide, reader.high, reader.screen))
        if self.task is None:
            return reader.picture(reader.at(), ("plain",))
        sheet = exercise_picture(
            self.task, wide, high, self.step, self.step in self.done, MID * screen
        )
        return [(Cell(0.0, 0.0, wide, high), sheet)]
