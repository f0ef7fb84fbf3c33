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


class AnswerRow:
    """A question as it stands on the page; it knows nothing of the answer.

    Parameters
    ----------
    mark : str
        Letter of the question.
    helps : sequence of str
        What help may be asked for.
    answered : callable
        Takes what was typed or chosen.
    asked_for : callable
        Takes the name of the help.
    """

    def __init__(
        self,
        mark: str,
        helps: Sequence[str],
        answered: Callable[[str], None],
        asked_for: Callable[[str], None],
    ) -> None:
        self.mark, self.answered, self.quiet = mark, answered, False
        self.question, self.reply, self.said = w.HTML(), w.HTML(), w.HTML()
        wide, style = w.Layout(width="22em"), {"description_width": "7em"}
        label = f"Answer {mark}"
        self.box = w.Text(description=label, continuous_update=False, layout=wide, style=style)
        self.list = w.Dropdown(options=[CHOOSE], description=label, layout=wide, style=style)
        for one in (self.box, self.list):
            one.observe(lambda event: self._heard(event["new"]), "value")
        helped = [
            button(f"{HELP_NAMES[name]} {mark}", lambda name=name: asked_for(name))  # type: ignore[misc]
            for name in helps
        ]
        self.line = row([self.box, self.list, *helped])
        self.widget = w.VBox([self.question, self.line, self.reply, self.said])

    def ask(self, step: AskedStep) -> None:
        """Put the question, with the answer that was given last; replies to earlier ones go."""
        self.quiet = True
        self.question.value = f'<div class="asks"><b>{self.mark})</b> {escape(step.ask)}</div>'
        listed = bool(step.options)
        self.box.layout.display, self.list.layout.display = ("none", "") if listed else ("", "none")
        self.box.placeholder = f"in {step.unit}" if step.unit else "a whole number"
        self.list.options = [CHOOSE, *step.options]
        if listed:
            self.list.value = step.stands.last if step.stands.last in step.options else CHOOSE
        self.box.value = "" if listed else step.stands.last
        done = "✓ Answered right." if step.stands.done else ""
        self.reply.value, self.said.value = prompt_html(done) if done else "", ""
        self.quiet = False

    def show_reply(self, reply: Reply) -> None:
        """Right or wrong, and why."""
        self.reply.value = reply_html(reply)

    def show_help(self, text: str) -> None:
        """A hint or the working."""
        self.said.value = prompt_html(text)

    def _heard(self, text: str) -> None:
        if not self.quiet and text.strip() and text != CHOOSE:
            self.answered(text)
