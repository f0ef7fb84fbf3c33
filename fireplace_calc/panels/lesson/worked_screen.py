"""A worked example, one step at a time; each adds its mark to the picture."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.lessons.course.sums import Amount, work_out
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told


class WorkedScreen:
    """The third screen.

    Parameters
    ----------
    reader : LessonReader

    Attributes
    ----------
    at : int
        The step that was told last, from nought. [-]
    """

    name = "worked"

    def __init__(self, reader: LessonReader) -> None:
        self.reader, self.at = reader, 0
        self.acts = {"step": self._step}

    def _step(self, message: Mapping[str, Any]) -> None:
        self.at = min(max(int(message["at"]), 0), len(self.reader.lesson.worked.step) - 1)

    @property
    def moment(self) -> LessonMoment:
        """The example's own place of the controls."""
        return self.reader.at(self.reader.lesson.worked.values)

    def lead(self) -> tuple[str, str]:
        """What is worked out."""
        return self.moment.said(self.reader.lesson.worked.title), ""

    def told(self) -> Told:
        """Steps so far, with their sums."""
        held, worked = self.moment, self.reader.lesson.worked
        more: dict[str, Amount] = {}
        steps = []
        for one in worked.step[: self.at + 1]:
            if one.name and one.answer != "":
                more[one.name] = work_out(one.answer, {**held.names, **more})
            steps.append({"say": held.said(one.say, more), "sum": held.said(one.sum, more)})
        return {
            "steps": steps,
            "at": self.at,
            "count": len(worked.step),
        }

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The picture with the marks of the step."""
        return self.reader.picture(self.moment, self.reader.lesson.worked.step[self.at].shows)
