"""A lesson at one place of its controls: the design, have and need, what decides, what is said."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from itertools import product
from typing import Any

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course_lesson
from fireplace_calc.lessons.course.marks import LessonMark, mark_of
from fireplace_calc.lessons.course.measures import LessonNames
from fireplace_calc.lessons.course.place_values import (
    amount_of,
    filled,
    input_of,
    places_of,
)
from fireplace_calc.lessons.course.records import BOOKS, CourseLesson
from fireplace_calc.lessons.course.sums import NUMBER, Amount, Given, work_out


@dataclass(frozen=True)
class LessonMoment:
    """One place of the controls.

    Attributes
    ----------
    lesson : CourseLesson
    book, units : str
    values : mapping
        Controls and values by name. [SI]
    chosen : mapping
        Controls that are choices, by name.
    """

    lesson: CourseLesson
    book: str
    units: str
    values: Mapping[str, Amount]
    chosen: Mapping[str, str]

    @cached_property
    def design(self) -> Design:
        """What the controls make of the picture's design."""
        base = _kept_design(self.lesson.picture.design)
        names = LessonNames(self.values)
        return change(
            base,
            {
                key: input_of(given, names, self.chosen)
                for key, given in self.lesson.picture.fixed.items()
            },
        )

    @cached_property
    def assessment(self) -> Assessment:
        """Of the design, in the reader's book."""
        return assess(self.design, self.book)

    @cached_property
    def extremes(self) -> tuple[LessonMoment, ...]:
        """The same with every control at one of its ends, so that a picture can stand still."""
        fixed = {
            name: amount
            for name, amount in self.values.items()
            if name in self.lesson.picture.values
        }
        told = _SameLesson(self.lesson)
        return _extremes(told, tuple(sorted(fixed.items())), self.book, self.units)

    @cached_property
    def marks(self) -> tuple[LessonMark, ...]:
        """Have and need of each rule, in the order of the cards."""
        names = LessonNames(self.values, lambda: self.assessment)
        return tuple(mark_of(rule, self.assessment, names, self.units) for rule in self.lesson.rule)

    def of(self, letter: str) -> LessonMark:
        """Have and need of the rule with this letter."""
        return next(mark for mark in self.marks if mark.letter == letter)

    @cached_property
    def decides(self) -> LessonMark:
        """The rule that has least to spare."""
        return min(self.marks, key=lambda mark: (not mark.short, mark.spare))

    @property
    def need(self) -> float | None:
        """Of the rule that decides. [SI]"""
        return self.decides.need

    @property
    def short(self) -> bool:
        """Whether any rule falls short."""
        return any(mark.short for mark in self.marks)

    @property
    def open(self) -> LessonMark | None:
        """A rule that nobody could check, where none falls short: then nothing is said to hold."""
        return None if self.short else next((one for one in self.marks if one.unchecked), None)

    @cached_property
    def names(self) -> LessonNames:
        """What texts and sums may name: values, measures, and have, need and gap of each rule."""
        given = dict(self.values)
        for mark in (*self.marks, None):
            own = mark or self.decides
            tail = f"_{own.letter}" if mark else ""
            if own.have is not None and own.need is not None:
                given |= {
                    f"have{tail}": Amount(own.have, own.kind),
                    f"need{tail}": Amount(own.need, own.kind),
                    f"gap{tail}": Amount(own.gap, own.kind),
                }
        return LessonNames(given, lambda: self.assessment)

    def said(self, text: str, more: Mapping[str, Amount] | None = None) -> str:
        """A text with its names and sums worked out, in the reader's units.

        Parameters
        ----------
        text : str
        more : mapping, optional
            Names beside the moment's own. [SI]
        """
        names = LessonNames({**self.names.given, **(more or {})}, self.names.measured)
        return filled(text, names, self.chosen, self.units)

    @cached_property
    def verdict(self) -> str:
        """What is said under the picture."""
        own = self.decides
        if self.open:
            return f"Not checked. {self.open.note}"
        if own.have is None or own.need is None:
            return own.note
        parts = [self.lesson.verdict.get(own.letter, "")]
        parts.append(self.lesson.verdict["short" if own.short else "meets"])
        return self.said(" ".join(part for part in parts if part))


@cache
def _kept_design(name: str) -> Design:
    """A design that came with the package: every place of the controls begins from it."""
    return load(example(name))


class _SameLesson:
    """A lesson that equals itself alone: what is kept of it is asked for by the same record."""

    def __init__(self, lesson: CourseLesson) -> None:
        self.lesson = lesson

    def __hash__(self) -> int:
        return id(self.lesson)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _SameLesson) and other.lesson is self.lesson


@lru_cache(maxsize=16)
def _extremes(
    told: _SameLesson, fixed: tuple[tuple[str, Amount], ...], book: str, units: str
) -> tuple[LessonMoment, ...]:
    """The same for every place of the controls, so it is worked out once."""
    lesson = told.lesson
    ends = [
        [(one.name, place) for place in (places_of(one)[0], places_of(one)[-1])]
        for one in lesson.control
    ]
    return tuple(
        _moment(lesson, {**dict(fixed), **dict(picked)}, book, units) for picked in product(*ends)
    )


@dataclass(frozen=True)
class WorkedMoment:
    """One step of a worked example, filled in: words, sum, and what the picture shows."""

    at: LessonMoment
    say: str
    sum: str
    shows: tuple[str, ...]


def worked_moments(
    lesson: str | CourseLesson, book: str = BOOKS[0], units: str = FEET_INCHES
) -> tuple[WorkedMoment, ...]:
    """The steps of a lesson's worked example.

    Parameters
    ----------
    lesson : str or CourseLesson
    book, units : str
        The reader's.
    """
    told = course_lesson(lesson, country_of(book)) if isinstance(lesson, str) else lesson
    at = moment(told, told.worked.values, book, units)
    more: dict[str, Amount] = {}
    made = []
    for step in told.worked.step:
        if step.name and step.answer != "":
            names = LessonNames({**at.names.given, **more}, at.names.measured)
            more[step.name] = work_out(step.answer, names)
        made.append(WorkedMoment(at, at.said(step.say, more), at.said(step.sum, more), step.shows))
    return tuple(made)


def moment(
    lesson: str | CourseLesson,
    values: Mapping[str, Given] | None = None,
    book: str = BOOKS[0],
    units: str = FEET_INCHES,
) -> LessonMoment:
    """A lesson at one place of its controls.

    Parameters
    ----------
    lesson : str or CourseLesson
        Its key, or the lesson itself.
    values : mapping, optional
        Controls, or values of the picture, by name: a text with its unit, a number in SI, or a
        choice; what is left out stands where the lesson opens. [SI]
    book : str
        Name of a pack.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    LessonMoment

    Raises
    ------
    InputError
        For a name the lesson does not know, or a design that cannot be.
    """
    told = course_lesson(lesson, country_of(book)) if isinstance(lesson, str) else lesson
    given = dict(values or {})
    known = {control.name for control in told.control} | set(told.picture.values)
    listed = ", ".join(sorted(known))
    for name in given:
        if name not in known:
            raise InputError(
                f"{name!r} is no control of the lesson; it has {listed}.", name, listed, name
            )
    if isinstance(lesson, str):
        return _kept_moment(lesson, tuple(sorted(given.items())), book, units)
    return _moment(told, given, book, units)


@lru_cache(maxsize=64)
def _kept_moment(
    key: str, given: tuple[tuple[str, Given], ...], book: str, units: str
) -> LessonMoment:
    return _moment(course_lesson(key, country_of(book)), dict(given), book, units)


def _moment(lesson: CourseLesson, given: Mapping[str, Any], book: str, units: str) -> LessonMoment:
    chosen: dict[str, str] = {}
    held: dict[str, Amount] = {}
    for control in lesson.control:
        value = given.get(control.name, control.start)
        if control.choices:
            chosen[control.name] = str(value)
            continue
        kind = work_out(control.start).kind
        held[control.name] = amount_of(value, kind, held)
    for name, formula in lesson.picture.values.items():
        if name not in held:  # a control of the same name goes before a value
            held[name] = amount_of(given.get(name, formula), NUMBER, held)
    return LessonMoment(lesson, book, units, held, chosen)
