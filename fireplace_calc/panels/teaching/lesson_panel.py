"""A live lesson: the reason behind a rule, a picture that moves, and what three books say of the
same design.
"""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.geometry.bore import flue_bore, liners
from fireplace_calc.lessons import LESSONS, Lesson
from fireplace_calc.lessons.seven_lessons import LINER
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import PAPERS, UNITS, button, dropdown, row
from fireplace_calc.panels.controls.controls import Control, Lead
from fireplace_calc.panels.live_design import LiveDesign
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.teaching.lesson_tables import cautions, compared_books, found_table
from fireplace_calc.panels.teaching.look import STYLE
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import DOES_NOT_APPLY

REST = 0.15
"""How long a hand rests before the words are sent. [s]"""
NO_MARK = {"the view": ""}


class Lecture(LiveDesign):
    """One lesson at a time over one design.

    Parameters
    ----------
    design : Design
        To begin with; ``Start again`` comes back to it.
    lesson : str
        Key of the first one, in ``LESSONS``.
    units : str
        ``feet-inches`` or ``millimetres``.
    pack : str
        The American code, edition or state, that is taught.
    """

    def __init__(
        self,
        design: Design,
        lesson: str = "flue",
        units: str = FEET_INCHES,
        pack: str = DEFAULT_PACK,
    ) -> None:
        super().__init__(Session(design, pack, units), "all")
        self.lesson = LESSONS[lesson]
        self.why, self.checks, self.books, self.warnings = w.HTML(), w.HTML(), w.HTML(), w.HTML()
        self.movers: dict[str, Lead | Control] = {}
        self.liner = dropdown("Liner", list(liners()), None, self._take_liner, "24em", "9em")
        self.quiet = False
        self.moving = w.VBox()
        titles = {one.title: key for key, one in LESSONS.items()}
        self.chooser = dropdown("Lesson", titles, lesson, self.teach)
        self.pointer = dropdown("Show", NO_MARK, "", self.set_marked, "36em")
        self.widget = self._lay_out()
        self.teach(lesson)

    # -- what the reader does ---------------------------------------------------------------------
    def teach(self, key: str) -> None:
        """Begin a lesson; the design stays as it was left."""
        self.lesson = lesson = LESSONS[key]
        self.chooser.value = key
        self.moving.children = [self._mover(name) for name in lesson.inputs]
        self.show_inputs()
        self.why.value = _reasons(lesson)
        self.warnings.value = html.flow([cautions(lesson)])
        rules = {rule.key: rule.title for rule in PACKS[self.pack].rules}
        marks = [mark for mark in lesson.marks if mark in rules]
        self.pointer.options = NO_MARK | {f"{rules[mark]} ({mark})": mark for mark in marks}
        applies = {f.key for f in self.result.findings if f.verdict != DOES_NOT_APPLY}
        self.view_pane.view = lesson.view
        self.pointer.value = next((mark for mark in lesson.marks if mark in applies), "")
        self.set_marked(self.pointer.value)

    def _take_liner(self, name: str | None) -> None:
        if name and not self.quiet:
            self.set_inputs(liners()[name])

    # -- what follows -----------------------------------------------------------------------------
    def followers(self) -> tuple[tuple[float, Callable[[], None]], ...]:
        """The words, once. [s]"""
        return ((REST, self.update),)

    def update(self) -> None:
        """What the checks of this lesson and the books say."""
        result, lesson = self.result, self.lesson
        tables = []
        if lesson.view == "draft":
            title = "Will it draw? Engineering judgement, not code"
            tables.append(found_table(title, result.judgement, self.units))
        found = {f.key: f for f in result.findings if f.verdict != DOES_NOT_APPLY}
        bound = [found[key] for key in lesson.rules if key in found]
        tables.append(found_table(f"What {self.pack} says of this design", bound, self.units))
        self.checks.value = html.flow(tables)
        self.books.value = html.flow([compared_books(self.design, lesson, self.pack, self.units)])
        self.view_pane.on_idle(result, self.units)

    def show_inputs(self, every: bool = False) -> None:
        """Bring the controls of the lesson up to the design."""
        for key in self.lesson.inputs:
            if key in self.movers:
                self.movers[key].show(value_of(self.design, key), self.units)
        now = f"{self.design.flue.shape} {flue_bore(self.design.flue).label} in"
        self.quiet = True
        self.liner.value = now if now in self.liner.options else None
        self.quiet = False

    # -- how it is laid out -----------------------------------------------------------------------
    def _mover(self, key: str) -> w.Widget:
        """The control of one input, made when a lesson first wants it and shown again after."""
        if key == LINER:
            return self.liner
        if key not in self.movers:
            spec = all_inputs()[key]
            slides = spec.kind in ("length", "count") and not spec.optional
            self.movers[key] = (
                Lead(key, spec, self.on_slider, self.set_input)
                if slides
                else Control(key, spec, self.set_input)
            )
        return self.movers[key].widget

    def _lay_out(self) -> w.Widget:
        paper = dropdown("Paper", PAPERS, "light", self.set_paper, "12em", "4em")
        paper.add_class("fireplace-paper")
        tools = row(
            [
                self.chooser,
                self.pointer,
                dropdown("Units", UNITS, self.units, self.set_units, "16em", "4em"),
                paper,
                button("Start again", lambda: self.put(self.session.first)),
            ]
        )
        page = w.VBox(
            [
                w.HTML(html.STYLE + STYLE),
                tools,
                self.why,
                self.moving,
                self.said,
                self.view_pane.board.widget,
                self.checks,
                self.books,
                self.warnings,
            ]
        )
        page.add_class("fireplace-panel")
        page.add_class("fireplace-lesson")
        return page

    def __str__(self) -> str:
        return f"Live lessons: {', '.join(one.title for one in LESSONS.values())}"


def _reasons(lesson: Lesson) -> str:
    paragraphs = "".join(f"<p>{escape(p)}</p>" for p in lesson.why)
    return f'<div class="why"><h3>{escape(lesson.title)}</h3>{paragraphs}</div>'


def lesson(design: Design, **how: Any) -> Lecture:
    """The seven lessons over one design; put it last in a cell."""
    return Lecture(design, **how)
