"""Why the rule is there, what three books say of it, trade words, and what can hurt."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.build.notes import cautions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import moment
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told, aim_of, printed_units

PARTS = ("Reasons", "Books", "Words", "Take care")
"""What is told one after the other, since all together are more than a screen."""
DEFER = "Local codes, their officials and licensed practice decide."


def explained(name: str, said: str) -> list[str]:
    """A word and what it means; where a country has another word for the thing, that one.

    Examples
    --------
    >>> explained("bed_joint", "the mortar under a piece")
    ['bed joint', 'the mortar under a piece']
    >>> explained("draft", "draught: the pull of warm gas in the flue")
    ['draught', 'the pull of warm gas in the flue']
    """
    own, colon, meant = said.partition(": ")
    return [own, meant] if colon else [name.replace("_", " "), said]


class WhyScreen:
    """The second screen.

    Parameters
    ----------
    reader : LessonReader
    """

    name = "why"

    def __init__(self, reader: LessonReader) -> None:
        self.reader, self.part = reader, 0
        self.acts = {"part": self._turn}

    def _turn(self, message: Mapping[str, Any]) -> None:
        self.part = int(message["at"])

    def lead(self) -> tuple[str, str]:
        """How long it takes, and what somebody can do then."""
        return aim_of(self.reader.lesson)

    def told(self) -> Told:
        """One part: reasons and readings, the books side by side, words, or cautions."""
        held, lesson = self.reader.at(), self.reader.lesson
        told: Told = {"parts": list(PARTS), "part": self.part}
        if self.part == 0:
            told["why"] = [
                {
                    "letter": rule.letter,
                    "from": held.said(rule.measured_from),
                    "text": held.said(rule.why),
                    "reading": held.said(rule.reading),
                }
                for rule in lesson.rule
            ]
        elif self.part == 1:
            told["books"] = [self._row(book) for book in lesson.books]
        elif self.part == 2:
            told["list"] = [explained(name, said) for name, said in lesson.words.items()]
        else:
            told["list"] = [
                [one.topic, one.figured(self.reader.units)]
                for one in cautions(self.reader.book)
                if one.topic in lesson.cautions
            ]
            told["last"] = DEFER
        return told

    def _row(self, book: str) -> list[Any]:
        """One book: its name, and of each card the figure as it is printed, and the clause; or that
        it has none.
        """
        held = moment(self.reader.key, None, book, printed_units(book))
        return [book, [[m.letter, m.figure or m.note, m.clause] for m in held.marks]]

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The picture that the lesson opens with."""
        return self.reader.picture(self.reader.at(), self.reader.lesson.shows)
