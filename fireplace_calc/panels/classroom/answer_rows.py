"""One question of a student's exercise: a box or a list for the answer, help, and the reply."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

import ipywidgets as w

from fireplace_calc.lessons import Reply
from fireplace_calc.lessons.classroom.desk import AskedStep
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.teaching.replies import prompt_html, reply_html

HELP_NAMES = {"hint": "Hint", "bigger hint": "Bigger hint", "working": "Full working"}
CHOOSE = "choose"
WRITTEN = {"in": "inches"}
"""A unit that would read as another word after "in"."""


class AnswerRow:
    """A question as it stands on the page; it knows nothing of the answer.

    Parameters
    ----------
    mark : str
        Letter of the question.
    step : AskedStep
        What is asked, and the answer that was given last.
    helps : sequence of str
        What help may be asked for.
    answered : callable
        Takes what was typed or chosen.
    asked_for : callable
        Takes the name of the help.
    counted : bool
        Whether every answer counts: then a list is answered by a button, not by looking down it.
    """

    def __init__(
        self,
        mark: str,
        step: AskedStep,
        helps: Sequence[str],
        answered: Callable[[str], None],
        asked_for: Callable[[str], None],
        counted: bool,
    ) -> None:
        self.answered = answered
        question = w.HTML(f'<div class="asks"><b>{mark})</b> {escape(step.ask)}</div>')
        done = prompt_html("\u2713 Answered right.") if step.stands.done else ""
        self.reply, self.said = w.HTML(done), w.HTML()
        self.box = _box(f"Answer {mark}", step, "calc(100% - 4px)" if counted else "22em")
        if counted:
            checked = [button("Check my answer", lambda: self._heard(self.box.value))]
        else:
            checked = []
            self.box.observe(lambda event: self._heard(event["new"]), "value")
        helped = [
            button(f"{HELP_NAMES[name]} {mark}", lambda name=name: asked_for(name))  # type: ignore[misc]
            for name in helps
        ]
        self.widget = w.VBox([question, row([self.box, *checked, *helped]), self.reply, self.said])

    def show_reply(self, reply: Reply) -> None:
        """Right or wrong, and why."""
        self.reply.value = reply_html(reply)

    def show_help(self, text: str) -> None:
        """A hint or the working."""
        self.said.value = prompt_html(text)

    def _heard(self, text: str) -> None:
        if text.strip() and text != CHOOSE:
            self.answered(text)


def _box(label: str, step: AskedStep, most: str) -> w.Text | w.Dropdown:
    """A list for a choice, else a box to type into."""
    wide, style = w.Layout(width=most, max_width="100%"), {"description_width": "7em"}
    if step.options:
        last = step.stands.last if step.stands.last in step.options else CHOOSE
        options = [CHOOSE, *step.options]
        return w.Dropdown(options=options, value=last, description=label, layout=wide, style=style)
    return w.Text(
        value=step.stands.last,
        placeholder=f"in {WRITTEN.get(step.unit, step.unit)}" if step.unit else "a whole number",
        description=label,
        continuous_update=False,
        layout=wide,
        style=style,
    )
