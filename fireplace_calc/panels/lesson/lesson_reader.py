"""Who reads a lesson: which lesson, in which book's words, in which units."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Protocol

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.drawing.lessons.lesson_pictures import lesson_picture
from fireplace_calc.drawing.page.stage import DENSITY
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course_lesson
from fireplace_calc.lessons.course.moments import LessonMoment, moment
from fireplace_calc.lessons.course.records import BOOKS, COUNTRIES, CourseLesson
from fireplace_calc.lessons.course.sums import Given

STAGE = (760.0, 640.0)
"""Of the picture in a window of 1280 by 800, until the page tells its own. [px]"""


@dataclass
class LessonReader:
    """One lesson in front of somebody.

    Attributes
    ----------
    key, book, units : str
    wide, high, screen : float
        Of the picture, and the height of the screen that letters are measured by. [px]
    """

    key: str
    book: str = BOOKS[0]
    units: str = FEET_INCHES
    wide: float = STAGE[0]
    high: float = STAGE[1]
    screen: float = 768.0
    kept: dict[Any, list[tuple[Cell, Sheet]]] = field(default_factory=dict)
    held: LessonMoment | None = None

    @property
    def lesson(self) -> CourseLesson:
        """In the words of the book's country."""
        return course_lesson(self.key, country_of(self.book))

    def at(self, values: Mapping[str, Given] | None = None) -> LessonMoment:
        """One place of the controls."""
        return moment(self.key, values, self.book, self.units)

    def picture(self, held: LessonMoment, shows: tuple[str, ...]) -> list[tuple[Cell, Sheet]]:
        """The lesson's picture on this page; the very same sheet as long as nothing changed."""
        wanted = (id(held), shows, self.wide, self.high, self.screen)
        if wanted not in self.kept:
            sizes = (one / DENSITY for one in (self.wide, self.high, self.screen))
            # the moment is held too, so that its id is nobody else's
            self.kept = {wanted: lesson_picture(held, shows, *sizes)}
            self.held = held
        return self.kept[wanted]


def printed_units(book: str) -> str:
    """Units that a book is printed in.

    Parameters
    ----------
    book : str
        Name of a pack.
    """
    return FEET_INCHES if country_of(book) == COUNTRIES[0] else MILLIMETRES


Told = dict[str, Any]
"""What the page is told."""


class LessonScreen(Protocol):
    """One screen of the page."""

    name: str

    @property
    def acts(self) -> Mapping[str, Callable[[Mapping[str, Any]], object]]:
        """What the page may ask of it, by name."""
        ...

    def lead(self) -> tuple[str, str]:
        """What stands over the picture: a heading, and a sentence."""
        ...

    def told(self) -> Told:
        """What stands beside the picture."""
        ...

    def sheets(self) -> list[tuple[Cell, Sheet]]:
        """The picture."""
        ...


def aim_of(lesson: CourseLesson) -> tuple[str, str]:
    """The lead of screens that have none of their own."""
    return f"{lesson.minutes} minutes.", lesson.aim


def plates(held: LessonMoment) -> list[Told]:
    """The cards of a place: letter, figure and clause as the reader's book has them.

    Parameters
    ----------
    held : LessonMoment

    Returns
    -------
    list of dict
    """
    return [
        {
            "letter": mark.letter,
            "figure": mark.figure,
            "text": held.said(mark.rule.text),
            "clause": mark.clause,
            "from": held.said(mark.rule.measured_from),
            "note": mark.note,
            "decides": len(held.marks) > 1 and mark is held.decides and mark.need is not None,
        }
        for mark in held.marks
    ]


def picked(options: Any, at: int, held: LessonMoment) -> Told:
    """What is answered to the option that somebody took."""
    return {"right": options[at].right, "text": held.said(options[at].told), "at": at}


def offered(options: Any, held: LessonMoment, tried: Mapping[int, Any]) -> list[Told]:
    """Options to choose from, and whether each was tried."""
    return [{"say": held.said(one.say), "tried": k in tried} for k, one in enumerate(options)]
