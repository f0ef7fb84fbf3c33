"""Numbers to work out, step by step; each answer has its reply under it."""

from __future__ import annotations

from html import escape

import ipywidgets as w

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.lessons import KINDS, Exercise, ExerciseStep, Reply, check
from fireplace_calc.lessons import exercise as draw_exercise
from fireplace_calc.panels.controls.choices import dropdown
from fireplace_calc.panels.teaching.replies import reply_html


class Numbers:
    """One exercise of one student.

    Parameters
    ----------
    seed : str
        Tells one student from the next.
    pack : str
        One of ``lessons.TAUGHT``.
    units : str
        ``feet-inches`` or ``millimetres``.
    """

    def __init__(self, seed: str, pack: str, units: str) -> None:
        self.seed, self.pack, self.units, self.kind = seed, pack, units, next(iter(KINDS))
        self.task: Exercise = draw_exercise(self.kind, seed, pack, units=units)
        self.story, self.steps = w.HTML(), w.VBox()
        self.lines: list[AnswerLine] = []
        titles = {draw_exercise(kind, seed, pack).title: kind for kind in KINDS}
        self.chooser = dropdown("Exercise", titles, self.kind, self.choose, "28em")
        self.widget = w.VBox([self.chooser, self.story, self.steps])
        self.choose(self.kind)

    def draw(self, seed: str, pack: str, units: str) -> None:
        """Take another student, book or unit system; the answers begin empty."""
        self.seed, self.pack, self.units = seed, pack, units
        self.choose(self.kind)

    def choose(self, kind: str) -> None:
        """Take another exercise."""
        self.kind, self.task = kind, draw_exercise(kind, self.seed, self.pack, units=self.units)
        given = "".join(
            f"<li>{escape(g.name)}: <b>{escape(g.shown(self.units))}</b></li>"
            for g in self.task.given
        )
        self.story.value = (
            f'<div class="why"><h3>{escape(self.task.title)}</h3><p>{escape(self.task.story)}</p>'
            f"<ul>{given}</ul></div>"
        )
        while len(self.lines) < len(self.task.steps):
            self.lines.append(AnswerLine())
        for line, step in zip(self.lines, self.task.steps, strict=False):
            line.ask(step, self.units)
        shown = self.lines[: len(self.task.steps)]
        self.steps.children = [widget for line in shown for widget in (line.box, line.reply)]


class AnswerLine:
    """A box for an answer and the reply under it, shown again with other questions."""

    def __init__(self) -> None:
        self.step: ExerciseStep | None = None
        self.units = FEET_INCHES
        self.reply = w.HTML()
        self.box = w.Text(
            continuous_update=False,
            layout=w.Layout(width="46em"),
            style={"description_width": "30em"},
        )
        self.box.add_class("asked")
        self.box.observe(lambda event: self.answer(event["new"]), "value")

    def ask(self, step: ExerciseStep, units: str) -> None:
        """Put a question; what was answered before goes."""
        self.step, self.units = step, units
        self.box.description = step.ask
        self.box.placeholder = "a whole number" if step.kind == "count" else "with its unit"
        self.box.value = self.reply.value = ""

    def answer(self, text: str) -> Reply | None:
        """Take an answer; an empty one clears the reply."""
        found = check(self.step, text, self.units) if self.step and text.strip() else None
        self.reply.value = reply_html(found)
        return found
