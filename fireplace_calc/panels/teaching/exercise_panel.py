"""The exercise desk: numbers to work out step by step, a fault to find in a drawing, and the sheets
of a class.
"""

from __future__ import annotations

import os
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.drawing.composed.live import live_views
from fireplace_calc.drawing.papers.class_papers import CAUTION, class_writing
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons import (
    KINDS,
    TAUGHT,
    ExerciseStep,
    Reply,
    check,
    exercise,
    figures,
    guess,
    planted,
    seeds_of,
    suspects,
)
from fireplace_calc.panels import html
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.teaching.lesson_panel import STYLE, UNITS, dropdown

SHEET, KEY = "chimney-rules-sheets.pdf", "chimney-rules-key.pdf"
VIEWS = {
    "All four views": "all",
    "Front elevation": "front",
    "Section": "section",
    "Plan": "plan",
    "Against the roof": "roof",
}
WRAP = {"flex_flow": "row wrap"}


def told(reply: Reply | None) -> str:
    """A reply, said aloud by a screen reader when it comes."""
    if reply is None:
        return ""
    sign, kind = ("✓", "right") if reply.right else ("✗", "wrong")
    return (
        f'<div class="reply {kind}" role="status" aria-live="polite">{sign}'
        f" {escape(reply.text)}</div>"
    )


def said(text: str) -> str:
    """Something to know, said aloud when it comes."""
    return (
        f'<div class="reply" role="status" aria-live="polite">{escape(text)}</div>' if text else ""
    )


class Practice:
    """Exercises of one student, and the sheets of a class.

    Parameters
    ----------
    seed : int or str
        Tells one student from the next.
    units : str
        ``feet-inches`` or ``millimetres``.
    pack : str
        One of ``TAUGHT``.
    faults : int
        Planted in the design to look through. [-]
    folder : path
        Where the sheets of a class are written.
    """

    def __init__(
        self,
        seed: int | str = 1,
        units: str = FEET_INCHES,
        pack: str = DEFAULT_PACK,
        faults: int = 1,
        folder: str | os.PathLike[str] = ".",
    ):
        self.seed, self.units, self.pack, self.faults, self.folder = (
            str(seed),
            units,
            pack,
            faults,
            Path(folder),
        )
        self.kind, self.view, self.found = next(iter(KINDS)), "all", set()
        self.trouble, self.story, self.figures, self.verdict = (
            w.HTML(),
            w.HTML(),
            w.HTML(),
            w.HTML(),
        )
        self.job = Job("students")
        self.steps = w.VBox()
        self.answers: list[tuple[w.Text, w.HTML]] = []
        self.board = Board()
        self.suspect = dropdown(
            "Which rule is broken?", self._suspects(), "", lambda _: None, "44em", "11em"
        )
        self.widget = self._lay_out()
        self.draw()

    # -- what the reader does ---------------------------------------------------------------------
    def draw(self) -> None:
        """Draw the exercises of the seed afresh."""
        self.task = exercise(self.kind, self.seed, self.pack)
        self.fault_finding = planted(self.seed, self.faults, self.pack)
        self.found.clear()
        self.verdict.value = self.trouble.value = ""
        self._show_task()
        self._show_hunt()

    def answer(self, number: int, text: str) -> Reply | None:
        """Take the answer to one step; the reply stands under it."""
        found = check(self.task.steps[number], text, self.units) if text.strip() else None
        self.answers[number][1].value = told(found)
        return found

    def accuse(self, key: str) -> Reply | None:
        """Take a guess at the rule that is broken."""
        if not key:
            self.verdict.value = said("Choose a rule first.")
            return None
        found = guess(self.fault_finding, key, self.units)
        if found.right:
            self.found.add(key)
        left = len(self.fault_finding.findings) - len(self.found)
        rest = f" {left} more to find." if left else " Nothing else is broken."
        self.verdict.value = told(Reply(found.right, found.text + rest) if found.right else found)
        return found

    def write(self, key: bool) -> Path:
        """Write the class's sheets, or the key to them, beside the notebook, student by student."""
        path = self.folder / (KEY if key else SHEET)

        def steps() -> Steps:
            yield from class_writing(
                seeds_of(self.students.value), path, self.units, key, self.pack, faults=self.faults
            )

        self.job.run(
            steps,
            lambda: (
                f"{path.name} is written: {len(seeds_of(self.students.value))} students, one seed"
                " each."
            ),
        )
        return path

    # -- what is shown ----------------------------------------------------------------------------
    def _show_task(self) -> None:
        task = self.task
        given = "".join(
            f"<li>{escape(g.name)}: <b>{escape(g.shown(self.units))}</b></li>" for g in task.given
        )
        self.story.value = (
            "<div"
            f' class="why"><h3>{escape(task.title)}</h3><p>{escape(task.story)}</p><ul>{given}</ul></div>'
        )
        self.answers = [
            (self._box(step, number), w.HTML()) for number, step in enumerate(task.steps)
        ]
        self.steps.children = [widget for pair in self.answers for widget in pair]

    def _box(self, step: ExerciseStep, number: int) -> w.Text:
        box = w.Text(
            description=step.prompt,
            continuous_update=False,
            placeholder="a whole number" if step.kind == "count" else "with its unit",
            layout=w.Layout(width="46em"),
            style={"description_width": "30em"},
        )
        box.add_class("asked")
        box.observe(lambda event: self.answer(number, event["new"]), "value")
        return box

    def _show_hunt(self) -> None:
        self.board.frame(self.view != "all")
        self.board.show(
            live_views(self.view, build_geometry(self.fault_finding.design), self.units, ())
        )
        rows = figures(self.fault_finding, self.units)
        half = -(-len(rows) // 2)
        pairs = tuple(
            (*rows[k], *(rows[k + half] if k + half < len(rows) else ("", "", "")))
            for k in range(half)
        )
        many = "one rule" if self.faults == 1 else f"{self.faults} rules"
        self.figures.value = html.flow(
            [
                Table(
                    f"This design breaks {many} of {self.pack} and no other",
                    (Column("Part", 18), Column("Figure", 34), Column("", 26)) * 2,
                    pairs,
                )
            ]
        )

    # -- how it is laid out -----------------------------------------------------------------------
    def _lay_out(self) -> w.Widget:
        seed = w.Text(
            value=self.seed,
            description="Your seed",
            continuous_update=False,
            layout=w.Layout(width="15em"),
            style={"description_width": "6em"},
        )
        seed.observe(lambda event: self._set(seed=event["new"].strip()), "value")
        many = w.BoundedIntText(
            value=self.faults,
            min=1,
            max=4,
            description="Faults",
            layout=w.Layout(width="10em"),
            style={"description_width": "4em"},
        )
        many.observe(lambda event: self._set(faults=event["new"]), "value")
        top = w.Box(
            [
                seed,
                dropdown(
                    "Units", UNITS, self.units, lambda units: self._set(units=units), "16em", "4em"
                ),
                dropdown("Code", TAUGHT, self.pack, lambda pack: self._set(pack=pack)),
            ],
            layout=w.Layout(**WRAP),
        )
        titles = {exercise(kind, self.seed, self.pack).title: kind for kind in KINDS}
        numbers = w.VBox(
            [
                dropdown("Exercise", titles, self.kind, lambda kind: self._set(kind=kind), "28em"),
                self.story,
                self.steps,
            ]
        )
        accuse = w.Button(description="Check my answer")
        accuse.on_click(lambda _: self.accuse(self.suspect.value))
        fault_finding = w.VBox(
            [
                w.Box(
                    [
                        dropdown(
                            "View",
                            VIEWS,
                            self.view,
                            lambda view: self._set(view=view),
                            "18em",
                            "4em",
                        ),
                        many,
                    ],
                    layout=w.Layout(**WRAP),
                ),
                self.board.widget,
                w.Box([self.suspect, accuse], layout=w.Layout(**WRAP)),
                self.verdict,
                self.figures,
            ]
        )
        self.students = w.Text(
            value="1-24",
            description="Seeds of the class",
            layout=w.Layout(width="24em"),
            continuous_update=False,  # letter by letter, a click on a button could overtake the last one
            style={"description_width": "10em"},
        )
        buttons = [
            w.Button(description="Write class sheets"),
            w.Button(description="Write the key"),
        ]
        for button, key in zip(buttons, (False, True), strict=True):
            button.on_click(lambda _, key=key: self.write(key))
        trainer = w.VBox(
            [
                html_line(
                    "One sheet a student, each with other numbers and another fault; the key holds"
                    " every answer. The files are written beside this notebook. Units, code and"
                    " number of faults are those chosen here."
                ),
                w.Box([self.students, *buttons], layout=w.Layout(**WRAP)),
                self.job.widget,
            ]
        )
        folds = w.Accordion(
            children=[numbers, fault_finding, trainer],
            titles=("Numbers to work out", "Find the fault", "Sheets for a class"),
            selected_index=0,
        )
        page = w.VBox([w.HTML(html.STYLE + STYLE), top, self.trouble, folds, html_line(CAUTION)])
        page.add_class("fireplace-panel")
        page.add_class("fireplace-lesson")
        return page

    def _suspects(self) -> dict[str, str]:
        return {"choose": ""} | suspects(self.pack)

    def _set(self, **chosen: Any) -> None:
        """Take another seed, exercise, view, code, number of faults or unit system; what cannot be
        drawn changes nothing.
        """
        before = {name: getattr(self, name) for name in chosen}
        for name, value in chosen.items():
            setattr(self, name, value)
        try:
            if "view" in chosen:
                self._show_hunt()
            elif "kind" in chosen:
                self.task = exercise(self.kind, self.seed, self.pack)
                self._show_task()
            else:
                if "pack" in chosen:
                    self.suspect.options = self._suspects()
                self.draw()
        except InputError as error:
            for name, value in before.items():
                setattr(self, name, value)
            self.trouble.value = html.trouble(str(error))

    def _repr_mimebundle_(self, **kwargs: Any) -> dict:
        return {
            **self.widget._repr_mimebundle_(**kwargs),
            "text/plain": f"Exercise desk, seed {self.seed}",
        }


def html_line(text: str) -> w.HTML:
    """A sentence of plain text."""
    return w.HTML(html.remark(text))


def practice(seed: int | str = 1, **how: Any) -> Practice:
    """Exercises of one seed; put it last in a cell."""
    return Practice(seed, **how)
