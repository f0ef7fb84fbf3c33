"""The rule, live: cards, verdict, controls, and things to try."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.lessons.course.place_values import places_of, written
from fireplace_calc.lessons.course.records import LessonControl
from fireplace_calc.lessons.course.sums import Given, work_out
from fireplace_calc.panels.lesson.lesson_reader import LessonReader, Told, aim_of, plates


class RuleScreen:
    """The first screen.

    Parameters
    ----------
    reader : LessonReader

    Attributes
    ----------
    places : dict
        Where each control stands, counted from its lower end. [-]
    """

    name = "rule"

    def __init__(self, reader: LessonReader) -> None:
        self.reader = reader
        self.reaches = {one.name: places_of(one) for one in reader.lesson.control}
        self.places = {one.name: self._nearest(one, one.start) for one in reader.lesson.control}
        self.see, self.trouble = "", ""
        self.acts = {"slide": self._slide, "try": self._try}

    @property
    def moment(self) -> LessonMoment:
        """The lesson as the controls have it."""
        return self.reader.at(self.values)

    @property
    def values(self) -> dict[str, Given]:
        """Every control by name. [SI]"""
        return {name: self._value(name, at) for name, at in self.places.items()}

    def _value(self, name: str, at: int) -> Given:
        value = self.reaches[name][at]
        return value if isinstance(value, str) else float(value)

    def _nearest(self, control: LessonControl, given: Given) -> int:
        """Place of a control that comes nearest to a value."""
        reach = self.reaches[control.name]
        if control.choices:
            return reach.index(str(given))
        wanted = work_out(given).value
        return min(range(len(reach)), key=lambda at: abs(float(reach[at]) - wanted))

    def _slide(self, message: Mapping[str, Any]) -> None:
        self._put({message["name"]: int(message["at"])}, "")

    def _try(self, message: Mapping[str, Any]) -> None:
        chosen = self.reader.lesson.tries[int(message["at"])]
        controls = {one.name: one for one in self.reader.lesson.control}
        places = {name: self._nearest(controls[name], value) for name, value in chosen.set.items()}
        self._put(places, chosen.see)

    def _put(self, places: Mapping[str, int], see: str) -> None:
        before, self.trouble = self.places, ""
        self.places = {**self.places, **places}
        try:
            self.moment.assessment  # noqa: B018, a design that cannot be says so here
        except InputError as error:
            self.places, self.trouble = before, f"Not changed. {error}"
        else:
            self.see = see

    def lead(self) -> tuple[str, str]:
        """What is seen after something was tried; else the aim."""
        return ("", self.moment.said(self.see)) if self.see else aim_of(self.reader.lesson)

    def told(self) -> Told:
        """Cards, verdict, controls, things to try."""
        held, lesson = self.moment, self.reader.lesson
        known = held.need is not None and held.open is None
        return {
            "cards": plates(held),
            "verdict": {"text": held.verdict, "short": held.short if known else None},
            "controls": [self._told_control(one, held) for one in lesson.control],
            "tries": [held.said(one.do) for one in lesson.tries],
            "trouble": self.trouble,
        }

    def _told_control(self, control: LessonControl, held: LessonMoment) -> Told:
        amount = held.values.get(control.name)
        said = written(amount, held.units, control.name) if amount else held.chosen[control.name]
        told = {
            "name": control.name,
            "label": held.said(control.label),
            "most": len(self.reaches[control.name]) - 1,
            "at": self.places[control.name],
            "said": said,
        }
        return told | ({"choices": list(control.choices)} if control.choices else {})

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The house as the controls have it."""
        return self.reader.picture(self.moment, self.reader.lesson.shows)
