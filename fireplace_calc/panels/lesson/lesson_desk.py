"""The lesson page's kernel side: what the page asks for is done, and what follows is sent."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.drawing.page.glyphs import glyph_table
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course, course_lesson
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.panels.lesson.course_contents import told_contents
from fireplace_calc.panels.lesson.exercise_screen import ExerciseScreen
from fireplace_calc.panels.lesson.lesson_page import LessonPage
from fireplace_calc.panels.lesson.lesson_reader import (
    LessonReader,
    LessonScreen,
    Told,
    printed_units,
)
from fireplace_calc.panels.lesson.rule_screen import RuleScreen
from fireplace_calc.panels.lesson.site_screen import CheckScreen, SiteScreen
from fireplace_calc.panels.lesson.why_screen import WhyScreen
from fireplace_calc.panels.lesson.worked_screen import WorkedScreen
from fireplace_calc.panels.picture.live_stage import LiveStage

SCREENS = {
    "rule": "Rule",
    "why": "Why",
    "worked": "Worked",
    "site": "On site",
    "check": "Check",
    "exercises": "Exercises",
}
"""The screens of a lesson, in order, and what they are called."""
CONTENTS = "contents"
UNIT_NAMES = [[FEET_INCHES, "Feet"], [MILLIMETRES, "Metric"]]
"""Systems of units, and what the narrow list calls them."""


class LessonDesk:
    """One lesson at a time, and the contents of the course.

    Parameters
    ----------
    key : str
        Of a lesson; empty opens the contents.
    book : str
        Name of a pack, one of the lesson's books.
    units : str
        ``feet-inches`` or ``millimetres``.

    Attributes
    ----------
    page : LessonPage
    screens : dict
        By name.
    screen : str
        The one in front, or ``contents``.
    seen : dict
        Names of screens that were opened, by lesson.
    """

    def __init__(self, key: str, book: str = BOOKS[0], units: str = FEET_INCHES) -> None:
        self.page = LessonPage(glyphs=glyph_table())
        self.stage = LiveStage(self.page)
        self.theme, self.seen = "light", dict[str, set[str]]()
        self.reader = LessonReader(key or course()[0], book, units)
        self.screen = next(iter(SCREENS)) if key else CONTENTS
        self.screens: dict[str, LessonScreen] = {}
        self._open()
        self.page.first = self.told()
        self.page.on_msg(lambda _, message, __: self._heard(message))

    def _open(self) -> None:
        """Make the screens of the lesson in front anew."""
        made = (RuleScreen, WhyScreen, WorkedScreen, SiteScreen, CheckScreen, ExerciseScreen)
        self.screens = {one.name: one(self.reader) for one in made}

    # -- what the reader does ---------------------------------------------------------------------
    def _heard(self, message: Mapping[str, Any]) -> None:
        """Do what the page asks for, and answer with all that it shows."""
        acts = {
            "hello": lambda _: setattr(self.stage, "heard", True),
            "size": self._resize,
            "screen": lambda m: self.turn(m["name"]),
            "lesson": lambda m: self.teach(m["name"]),
            "book": lambda m: self.set_book(m["name"]),
            "units": lambda m: self.set_units(m["name"]),
            "paper": lambda m: self._set_theme(m["name"]),
        }
        do = message["do"]
        act = acts.get(do) or self.screens[self.screen].acts[do]
        act(message)
        told = self.told(everything=do == "hello")
        bodies = told.pop("bodies")
        self.page.send({**told, "done": True}, bodies)

    def _resize(self, message: Mapping[str, Any]) -> None:
        reader = self.reader
        reader.wide, reader.high = float(message["wide"]), float(message["high"])
        reader.screen = float(message["screen"])

    def _set_theme(self, name: str) -> None:
        self.theme = name
        self.stage.set_theme(name)

    def turn(self, screen: str) -> None:
        """Open another screen, or the contents."""
        self.screen = screen

    def teach(self, key: str) -> None:
        """Open another lesson at its first screen."""
        reader = self.reader
        reader.key = key
        books = reader.lesson.books
        if reader.book not in books:
            reader.book = books[0]
        self._open()
        self.turn(next(iter(SCREENS)))

    def set_book(self, book: str) -> None:
        """Tell the lesson in another book's words and units; its controls go back to their
        start.
        """
        self.reader.book, self.reader.units = book, printed_units(book)
        self._open()

    def set_units(self, units: str) -> None:
        """Give every figure in other units."""
        self.reader.units = units

    # -- what the page is told --------------------------------------------------------------------
    def told(self, everything: bool = True) -> Told:
        """What the page shows as it stands; of the picture everything, or what has changed."""
        reader, before = self.reader, dict(self.stage.shown)
        lesson = reader.lesson
        told: Told = {
            "screen": self.screen,
            "theme": self.theme,
            "screens": [[name, title] for name, title in SCREENS.items()],
            "book": {"options": [[one, one] for one in lesson.books], "value": reader.book},
            "units": {"options": UNIT_NAMES, "value": reader.units},
        }
        if self.screen == CONTENTS:
            self.stage.show([])
            told["contents"] = told_contents(reader.book, self.seen)
        else:
            self.seen.setdefault(reader.key, set()).add(self.screen)
            screen = self.screens[self.screen]
            told |= {
                "key": reader.key,
                "title": lesson.title,
                "number": lesson.number,
                "next": self._next(lesson.next),
                "lead": screen.lead(),
                "shown": screen.told(),
            }
            self._draw(screen)
        now = self.stage.shown
        fresh = [name for name in now if everything or now[name] is not before.get(name)]
        stage, bodies = self.stage.message(fresh)
        return told | {"stage": stage, "bodies": bodies}

    def _next(self, key: str) -> list[str]:
        """Key and title of the lesson that follows, where there is one."""
        if key not in course():
            return []
        return [key, course_lesson(key, country_of(self.reader.book)).title]

    def _draw(self, screen: LessonScreen) -> None:
        cells = screen.sheets()
        share = 1.0 / len(cells)
        heard, self.stage.heard = self.stage.heard, False  # sent with the words, not before
        self.stage.show(
            (f"{screen.name}-{k}", (0.0, k * share, 1.0, share), cell, sheet)
            for k, (cell, sheet) in enumerate(cells)
        )
        self.stage.heard = heard
