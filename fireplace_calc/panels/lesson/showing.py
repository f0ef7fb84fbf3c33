"""A lesson, or the whole course, as the last line of a notebook's cell."""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course_lesson
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.panels.lesson.lesson_desk import LessonDesk
from fireplace_calc.panels.lesson.lesson_page import LessonPage


def show_lesson(key: str = "", book: str = BOOKS[0], units: str = FEET_INCHES) -> LessonPage:
    """The page of a lesson; put it last in a cell.

    Parameters
    ----------
    key : str
        Name of a lesson; without it the contents of the course open.
    book : str
        Name of a pack: one of those that the lesson sets side by side.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    LessonPage

    Raises
    ------
    InputError
        When there is no such lesson, book or system of units.
    """
    allowed = course_lesson(key, country_of(book)).books if key else BOOKS
    for name, value, known in (("Book", book, allowed), ("Units", units, SYSTEMS)):
        if value not in known:
            listed = ", ".join(known)
            raise InputError(
                f"{name} is {value!r}, but a lesson has {listed}.", name, listed, value
            )
    return LessonDesk(key, book, units).page
