"""A fault on site to find in the picture, and questions to check oneself."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told, offered, picked


class SiteScreen:
    """The fourth screen.

    Parameters
    ----------
    reader : LessonReader

    Attributes
    ----------
    guesses : list of int
        Options that were taken, in order, each once. [-]
    """

    name = "site"

    def __init__(self, reader: LessonReader) -> None:
        self.reader, self.guesses = reader, list[int]()
        self.acts = {"guess": self._guess, "again": self._again}

    def _guess(self, message: Mapping[str, Any]) -> None:
        at = int(message["at"])
        if not self.solved and at not in self.guesses:
            self.guesses.append(at)

    def _again(self, _: Mapping[str, Any]) -> None:
        self.guesses = []

    @property
    def solved(self) -> bool:
        """Whether the fault has been found."""
        options = self.reader.lesson.fault.options
        return bool(self.guesses) and options[self.guesses[-1]].right

    @property
    def moment(self) -> LessonMoment:
        """As it was built."""
        return self.reader.at(self.reader.lesson.fault.values)

    def lead(self) -> tuple[str, str]:
        """What the fault is called, as soon as it is found."""
        return self.moment.said(self.reader.lesson.fault.title) if self.solved else "On site.", ""

    def told(self) -> Told:
        """What is asked, what was guessed; after the right guess the cause and the cure."""
        held, fault = self.moment, self.reader.lesson.fault
        told: Told = {
            "ask": held.said(fault.ask),
            "options": offered(fault.options, held, dict.fromkeys(self.guesses)),
            "guesses": len(self.guesses),
            "solved": self.solved,
        }
        if self.guesses:
            told["reply"] = picked(fault.options, self.guesses[-1], held)
        if self.solved:
            told |= {"told": held.said(fault.told), "cure": held.said(fault.cure)}
        return told

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The fault; over it, once it is found, how it should be."""
        fault = self.reader.lesson.fault
        shows = fault.solved if self.solved else fault.shows
        return self.reader.picture(self.moment, (*shows, fault.draw))


class CheckScreen:
    """The fifth screen.

    Parameters
    ----------
    reader : LessonReader

    Attributes
    ----------
    at : int
        Question in front, from nought. [-]
    taken : dict
        Options that were taken, in order, by question. [-]
    """

    name = "check"

    def __init__(self, reader: LessonReader) -> None:
        self.reader, self.at = reader, 0
        self.taken: dict[int, list[int]] = {}
        self.acts = {"answer": self._answer, "question": self._turn}

    def _answer(self, message: Mapping[str, Any]) -> None:
        taken, at = self.taken.setdefault(self.at, []), int(message["at"])
        if at in taken:
            taken.remove(at)
        taken.append(at)

    def _turn(self, message: Mapping[str, Any]) -> None:
        self.at = int(message["at"]) % len(self.reader.lesson.question)

    @property
    def moment(self) -> LessonMoment:
        """What the question is about."""
        return self.reader.at(self.reader.lesson.question[self.at].values)

    def lead(self) -> tuple[str, str]:
        """Nothing: the question stands beside the picture."""
        return "", ""

    def told(self) -> Told:
        """One question, and what is answered to the option that was taken last."""
        questions, held = self.reader.lesson.question, self.moment
        asked, taken = questions[self.at], self.taken.get(self.at, [])
        first = [self.taken[k][0] for k, one in enumerate(questions) if self.taken.get(k)]
        told: Told = {
            "at": self.at,
            "count": len(questions),
            "ask": held.said(asked.ask),
            "options": offered(asked.options, held, dict.fromkeys(taken)),
            "answered": len(first),
        }
        if taken:
            told["reply"] = picked(asked.options, taken[-1], held)
        return told

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The place that the question is about, without figures that would tell the answer."""
        return self.reader.picture(self.moment, ("plain",))
