"""Why the rule is there, what three books say of it, trade words, and what can hurt."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.build.notes import cautions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import moment
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told, printed_units

PARTS = ("Reasons and books", "Words and cautions")
"""What is told one after the other, since both together are more than a screen."""


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

    def told(self) -> Told:
        """Reasons and readings, and the books side by side; or words and cautions."""
        held, lesson = self.reader.at(), self.reader.lesson
        told: Told = {"parts": list(PARTS), "part": self.part}
        if self.part == 0:
            return told | {
                "why": [
                    {
                        "letter": rule.letter,
                        "text": held.said(rule.why),
                        "reading": held.said(rule.reading),
                    }
                    for rule in lesson.rule
                ],
                "books": [self._row(book) for book in lesson.books],
            }
        warned = [one for one in cautions() if one.topic in lesson.cautions]
        return told | {
            "words": [[name.replace("_", " "), text] for name, text in lesson.words.items()],
            "cautions": [[one.topic, one.what] for one in warned],
        }

    def _row(self, book: str) -> list[Any]:
        """One book: its name, and of each card the figure as it is printed, and the clause; or that
        it has none.
        """
        held = moment(self.reader.key, None, book, printed_units(book))
        return [book, [[m.letter, m.figure or m.note, m.clause] for m in held.marks]]

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The picture that the lesson opens with."""
        return self.reader.picture(self.reader.at(), self.reader.lesson.shows)
