"""A live lesson: the reason behind a rule, a picture that moves, and what three books say of the
same design.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterable
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK, assess
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.editing.changes import all_inputs, change
from fireplace_calc.geometry.bore import flue_bore
from fireplace_calc.lessons import LESSONS, Lesson, liners, warned
from fireplace_calc.lessons.course import LINER
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.controls import Control, Lead
from fireplace_calc.panels.picture.view_pane import ViewPane
from fireplace_calc.report.books import SIDE_BY_SIDE, side_by_side
from fireplace_calc.report.sentences import SIGNS, answer, asked, compared
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY

UNITS = {"Feet and inches": FEET_INCHES, "Millimetres": MILLIMETRES}
PAPERS = {"Light": "light", "Dark": "dark", "Print": "print"}
BOOKS = ("us", "canada", "uk")
"""Columns of the books that a lesson sets side by side."""
REST = 0.15
"""How long a hand rests before the words are sent. [s]"""
FOUND = (
    Column("Verdict", 12),
    Column("Check", 30),
    Column("There", 13),
    Column("Asked", 13),
    Column("Clause", 18),
    Column("Why", 54),
)
STYLE = """<style>
.fireplace-lesson .why p { margin: .25em 0 .5em; line-height: 1.5; max-width: 62em; }
.fireplace-lesson .widget-dropdown, .fireplace-lesson .widget-text, .fireplace-lesson .widget-inline-hbox { max-width: 100%; }
.fireplace-lesson h3 { margin: .2em 0; }
.fireplace-lesson .reply { border-left: 4px solid currentColor; padding: .25em .7em; margin: .1em 0 .5em; line-height: 1.4; }
.fireplace-lesson .reply.right { font-weight: 600; }
.fireplace-lesson .asked > .widget-label { text-align: left; justify-content: flex-start !important; }
</style>"""


def dropdown(
    label: str,
    options: Any,
    value: Any,
    act: Callable[[Any], None],
    wide: str = "22em",
    name: str = "6em",
) -> w.Dropdown:
    """A list to choose from, with its label."""
    made = w.Dropdown(
        options=options,
        value=value,
        description=label,
        layout=w.Layout(width=wide),
        style={"description_width": name},
    )
    made.observe(lambda event: act(event["new"]), "value")
    return made


class Lecture:
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
    ):
        self.first, self.design, self.units, self.pack, self.lesson = (
            design,
            design,
            units,
            pack,
            LESSONS[lesson],
        )
        self.view_pane = ViewPane("all")
        self.due: asyncio.Handle | None = None
        self.waiting: asyncio.TimerHandle | None = None
        self.why, self.said, self.checks, self.books, self.warnings = (
            w.HTML(),
            w.HTML(),
            w.HTML(),
            w.HTML(),
            w.HTML(),
        )
        self.movers: dict[str, Lead | Control] = {}
        self.liner: w.Dropdown | None = None
        self.quiet = False
        self.moving = w.VBox()
        self.chooser = dropdown(
            "Lesson", {one.title: key for key, one in LESSONS.items()}, lesson, self.teach
        )
        self.pointer = dropdown("Show", {"the view": ""}, "", self._point, wide="36em")
        self.widget = self._lay_out()
        self.teach(lesson)

    # -- what the reader does ---------------------------------------------------------------------
    def teach(self, key: str) -> None:
        """Begin a lesson; the design stays as it was left."""
        self.lesson = lesson = LESSONS[key]
        self.chooser.value = key
        self._make_movers(lesson)
        self.why.value = (
            f'<div class="why"><h3>{escape(lesson.title)}</h3>'
            + "".join(f"<p>{escape(p)}</p>" for p in lesson.why)
            + "</div>"
        )
        self.warnings.value = html.flow(
            [
                Table(
                    "Take care",
                    (Column("About", 10), Column("What", 100), Column("Source, confidence", 40)),
                    tuple(
                        (
                            c.topic,
                            c.what if c.number is None else f"{c.what} ({c.number:g} {c.unit})",
                            f"{c.source}, {c.confidence}",
                        )
                        for c in warned(lesson)
                    ),
                )
            ]
        )
        rules = {rule.key: rule.title for rule in PACKS[self.pack].rules}
        self.pointer.options = {"the view": ""} | {
            f"{rules[mark]} ({mark})": mark for mark in lesson.marks if mark in rules
        }
        applies = {
            f.key for f in assess(self.design, self.pack).findings if f.verdict != DOES_NOT_APPLY
        }
        self.view_pane.view = lesson.view
        self.pointer.value = next((mark for mark in lesson.marks if mark in applies), "")
        self._point(self.pointer.value)

    def set_input(self, key: str, value: Any) -> None:
        """Take one input; a bad one changes nothing and is answered in a sentence."""
        if self._take({key: value}):
            self._catch_up()

    def on_slider(self, key: str, value: Any) -> None:
        """Take a slider's place now, draw when the kernel has answered."""
        if self._take({key: value}) and self.due is None:
            try:
                self.due = asyncio.get_running_loop().call_soon(self._catch_up)
            except RuntimeError:
                self._catch_up()

    def put(self, design: Design) -> None:
        """Show another design."""
        self.design = design
        self._catch_up()

    def _take(self, changes: dict[str, Any]) -> bool:
        try:
            self.design = change(self.design, changes)
        except InputError as error:
            self.said.value = html.trouble(str(error))
            return False
        return True

    def _catch_up(self) -> None:
        if self.due is not None:
            self.due.cancel()
            self.due = None
        self.redraw()
        self._show_inputs()

    def redraw(self) -> None:
        """Picture first; the words follow when the hand rests."""
        self.said.value = ""
        if not self.view_pane.lead(self.design, self.pack, self.units):
            self.said.value = self.view_pane.follow(assess(self.design, self.pack), self.units)
        if self.waiting is not None:
            self.waiting.cancel()
        try:
            self.waiting = asyncio.get_running_loop().call_later(REST, self.update)
        except RuntimeError:
            self.update()

    def update(self) -> None:
        """What the checks of this lesson and the books say."""
        result = assess(self.design, self.pack)
        air = (
            [self._table("Will it draw? Engineering judgement, not code", result.judgement)]
            if self.lesson.view == "draft"
            else []
        )
        bound = [
            f
            for key in self.lesson.rules
            for f in result.findings
            if f.key == key and f.verdict != DOES_NOT_APPLY
        ]
        self.checks.value = html.flow(
            [*air, self._table(f"What {self.pack} says of this design", bound)]
        )
        self.books.value = html.flow([self._compared()])
        self.view_pane.on_idle(result, self.units)

    # -- what it says -----------------------------------------------------------------------------
    def _table(self, title: str, findings: Iterable[Finding]) -> Table:
        return Table(
            title,
            FOUND,
            tuple(
                (
                    f"{SIGNS[f.verdict]} {f.verdict}",
                    f"{f.title} ({f.key})",
                    compared(f, self.units)[0],
                    asked(f, self.units),
                    f"{f.clause}, {f.edition}",
                    " ".join(text for text in (f.why, f.note) if text),
                )
                for f in findings
            ),
        )

    def _compared(self) -> Table:
        chosen = [list(SIDE_BY_SIDE).index(book) for book in BOOKS]
        names = [self.pack if book == "us" else SIDE_BY_SIDE[book] for book in BOOKS]
        rows = tuple(
            (q.text, *(answer(q.answers[k], self.units) for k in chosen), q.why)
            for q in side_by_side(self.design, {"us": self.pack})
            if q.text in self.lesson.questions
        )
        return Table(
            "The same question to three books",
            (
                Column("Question", 22),
                *(Column(name, 30) for name in names),
                Column("Why they differ", 38),
            ),
            rows,
        )

    # -- how it is laid out -----------------------------------------------------------------------
    def _lay_out(self) -> w.Widget:
        again = w.Button(description="Start again")
        again.on_click(lambda _: self.put(self.first))
        paper = dropdown("Paper", PAPERS, "light", self._set_paper, "12em", "4em")
        paper.add_class("fireplace-paper")
        tools = w.Box(
            [
                self.chooser,
                self.pointer,
                dropdown("Units", UNITS, self.units, self._set_units, "16em", "4em"),
                paper,
                again,
            ],
            layout=w.Layout(flex_flow="row wrap"),
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

    def _make_movers(self, lesson: Lesson) -> None:
        self.movers, self.liner, inputs = {}, None, all_inputs()
        shown: list[w.Widget] = []
        for key in lesson.inputs:
            if key == LINER:
                self.liner = dropdown("Liner", list(liners()), None, self._line, "24em", "9em")
                shown.append(self.liner)
            elif inputs[key].kind in ("length", "count") and not inputs[key].optional:
                self.movers[key] = Lead(key, inputs[key], self.on_slider, self.set_input)
            else:
                self.movers[key] = Control(key, inputs[key], self.set_input)
            if key in self.movers:
                shown.append(self.movers[key].widget)
        self.moving.children = shown
        self._show_inputs()

    def _show_inputs(self) -> None:
        for key, mover in self.movers.items():
            group, _, name = key.partition(".")
            mover.show(getattr(getattr(self.design, group), name), self.units)
        if self.liner is not None:
            now = f"{self.design.flue.shape} {flue_bore(self.design.flue).label} in"
            self.quiet = True
            self.liner.value = now if now in self.liner.options else None
            self.quiet = False

    def _line(self, name: str | None) -> None:
        if name and not self.quiet and self._take(liners()[name]):
            self._catch_up()

    def _point(self, mark: str | None) -> None:
        self.view_pane.marked = mark or ""
        self.view_pane.frame()
        self.redraw()

    def _set_units(self, units: str) -> None:
        self.units = units
        self._catch_up()

    def _set_paper(self, paper: str) -> None:
        self.view_pane.board.picture.set_theme(paper)
        self.redraw()

    def _repr_mimebundle_(self, **kwargs: Any) -> dict:
        return {
            **self.widget._repr_mimebundle_(**kwargs),
            "text/plain": f"Live lessons: {', '.join(one.title for one in LESSONS.values())}",
        }


def lesson(design: Design, **how: Any) -> Lecture:
    """The six lessons over one design; put it last in a cell."""
    return Lecture(design, **how)
