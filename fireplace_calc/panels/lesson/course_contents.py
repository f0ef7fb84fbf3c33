"""The course as a list: each lesson with its aim, what comes before it, and how far somebody is."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course, course_lesson
from fireplace_calc.panels.lesson.lesson_reader import Told


def told_contents(book: str, seen: Mapping[str, Collection[str]]) -> list[Told]:
    """Every lesson in the order in which it is taught.

    Parameters
    ----------
    book : str
        In whose words.
    seen : mapping
        Names of the screens that were opened, by lesson.

    Returns
    -------
    list of dict
        ``key``, ``number``, ``title``, ``minutes``, ``aim``, ``needs`` (numbers of lessons
        to take first) and ``seen``, how many screens were opened. [-]
    """
    lessons = {key: course_lesson(key, country_of(book)) for key in course()}
    return [
        {
            "key": key,
            "number": one.number,
            "title": one.title,
            "minutes": one.minutes,
            "aim": one.aim,
            "needs": [lessons[need].number for need in one.needs if need in lessons],
            "seen": len(seen.get(key, ())),
        }
        for key, one in lessons.items()
    ]
