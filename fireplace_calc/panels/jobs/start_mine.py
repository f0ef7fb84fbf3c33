"""Start mine: a dozen questions, a drawing that grows with every answer, and at the end what was
taken for granted.
"""

from __future__ import annotations

from typing import Any

import ipywidgets as w

from fireplace_calc.base.places import Place
from fireplace_calc.base.units import InputError
from fireplace_calc.editing.starting.questions import QUESTIONS, StartQuestion
from fireplace_calc.editing.starting.start import Start, places
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.checks import Assumed
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.workbench.field_box import FieldBox
from fireplace_calc.report.assumed_inputs import label_of, value_in_words
from fireplace_calc.rules import PACKS

ASKED = "asked-{}"
"""Word of the reader under which an answer is kept with the job."""
UNNAMED = "My fireplace"
SKIPPED = "not answered"
ANOTHER = "another station"
KNOWN = 200
"""Steps whose answers are remembered, to be shown again when one goes back. [-]"""


class StartMine(Fold):
    """The questions, each with what came of its answer under it."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.start, self.fresh = Start(units=panel.units), True
        self.job = panel.session.job
        self.known: list[Start] = []
        self.rows = {question.key: QuestionRow(question, self) for question in QUESTIONS}
        self.hint, self.out = w.HTML(), w.HTML()
        self.assumed = Assumed(panel)
        self.again = button("Start another one", self.begin)
        asked = row(box for made in self.rows.values() for box in made.widgets)
        asked.add_class("fp-asked")
        self.widget = w.VBox(
            [
                row([self.again]),
                self.hint,
                asked,
                self.out,
                self.assumed.widget,
            ]
        )
        self._take_up()

    def begin(self) -> None:
        """Ask from the beginning; the job that is open stays as it is kept."""
        self.start, self.fresh, self.known = Start(units=self.panel.units), True, []
        self.update()

    def answer(self, key: str, text: str) -> None:
        """Take one answer; what does not fit is said under its question."""
        session, asked = self.panel.session, self.rows[key]
        before = Start(units=session.units) if self.fresh else self._now()
        try:
            made = before.answer(key, text, PACKS)
        except InputError as why:
            asked.refuse(str(why))
            return
        self._put(made, f"{asked.question.words} {text.strip() or SKIPPED}")
        if key == "book" and text in PACKS:
            session.pack = text
            self.panel.show_job()

    def move(self, station: int, found: tuple[Place, ...]) -> None:
        """Stand at another of the stations that were found."""
        self._put(self._now().at(found[station]), f"Station {found[station].name}")

    def _now(self) -> Start:
        """The answers, on the design as it stands: somebody may have changed it elsewhere."""
        session = self.panel.session
        return Start(session.design, self.start.answers, session.units)

    def _put(self, start: Start, did: str) -> None:
        session, panel = self.panel.session, self.panel
        name = start.answers.get("name", "").strip()
        if self.fresh and session.jobs is not None:
            if not panel.attempt(lambda: session.start_job(name or UNNAMED, start.design)):
                return
        else:
            session.put(start.design, did=did)
            if name and session.job and name != self.start.answers.get("name", ""):
                panel.attempt(lambda: session.rename_job(name))
        first, self.fresh, self.start = self.fresh, False, start
        self.job = session.job
        self.known = [*self.known, start][-KNOWN:]
        self._keep_answers()
        if first:
            panel.show_job()
        else:
            panel.catch_up()
        self.update()

    def _keep_answers(self) -> None:
        words = self.panel.session.words
        for question in QUESTIONS:
            words.pop(ASKED.format(question.key), None)
        words.update({ASKED.format(key): text for key, text in self.start.answers.items()})

    def _take_up(self) -> None:
        """Go on with the answers of the job that is open, if it has any."""
        words = self.panel.session.words
        answers = {
            question.key: words[ASKED.format(question.key)]
            for question in QUESTIONS
            if ASKED.format(question.key) in words
        }
        self.job, self.fresh, self.known = self.panel.session.job, not answers, []
        self.start = Start(self.panel.session.design, answers, self.panel.units)

    def _follow(self) -> None:
        """The answers of another job, or of a step that was gone back to."""
        session = self.panel.session
        if session.job != self.job:
            self._take_up()
        elif not self.fresh and session.design != self.start.design:
            like = [start for start in self.known if start.design == session.design]
            if like:
                self.start = like[-1]
                self._keep_answers()
                self.panel.keep()

    # -- what is shown ----------------------------------------------------------------------------
    def update(self) -> None:
        """The answers, what came of them, and what is taken for granted."""
        self._follow()
        panel, start = self.panel, Start(units=self.panel.units) if self.fresh else self._now()
        for made in self.rows.values():
            made.show(start)
        left = len(start.left())
        self.hint.value = html.remark(self._where(left))
        self.again.layout.display = "none" if self.fresh else ""
        out = [
            f"{label_of(key)} {value_in_words(panel.design, key, panel.units)}"
            for key, _ in start.worked_out()
        ]
        self.out.value = (
            html.remark(f"Worked out from your answers: {'; '.join(out)}. Check them.")
            if out
            else ""
        )
        self.assumed.widget.layout.display = "none" if self.fresh else ""
        if not self.fresh:
            self.assumed.update()

    def _where(self, left: int) -> str:
        session = self.panel.session
        if self.fresh and session.jobs is not None:
            return (
                "The first answer begins a job of its own, from a plain fireplace; what you have"
                " stays as it is kept. Leave out what you do not know yet."
            )
        if left:
            return (
                f"{left} question{'s' * (left != 1)} left. Leave out what you do not know: it is"
                " assumed, and listed below."
            )
        return "All answered. Below is what was assumed: say so where it is right."


class QuestionRow:
    """One question: a box or a list, and under it what came of the answer.

    Attributes
    ----------
    box : FieldBox
        Where the answer goes; its ``note`` is what came of it.
    stations : FieldBox
        Other weather stations to stand at, where the question is for the place.
    """

    def __init__(self, question: StartQuestion, fold: StartMine) -> None:
        self.question, self.fold, self.quiet = question, fold, False
        self.box = FieldBox(
            kind="choice" if question.only else "text",
            description=question.words,
            tooltip=question.words,
            placeholder=f"such as {question.hint}" if question.hint else "",
            options=self._options(fold.panel.units),
        )
        self.box.observe(self._changed, "value")
        self.stations = FieldBox(
            kind="choice",
            description="Another weather station",
            tooltip="Stations that bear the name that was typed.",
            options=(ANOTHER,),
            value=ANOTHER,
        )
        self.found: tuple[Place, ...] = ()
        self.stations.layout.display = "none"
        self.stations.observe(self._moved, "value")
        self.widgets = [self.box, self.stations] if question.key == "place" else [self.box]

    def _options(self, units: str) -> tuple[str, ...]:
        if self.question.key == "book":
            return ("", *PACKS)
        return (*[""] * self.question.only, *self.question.choices(units))

    def _changed(self, event: dict[str, Any]) -> None:
        if not self.quiet:
            self.fold.answer(self.question.key, event["new"] or "")

    def _moved(self, event: dict[str, Any]) -> None:
        if not self.quiet and event["new"] != ANOTHER:
            self.fold.move(self.stations.options.index(event["new"]) - 1, self.found)

    def refuse(self, why: str) -> None:
        """Say at the question what was wrong with its answer, which stays there to be mended."""
        self.box.wrong = f"Not changed. {why}"

    def show(self, start: Start) -> None:
        """The answer as it stands, and what came of it."""
        key, box = self.question.key, self.box
        reason = start.decided_by_set(self.question)
        self.quiet = True
        if box.options != (options := self._options(start.units)):
            box.options = options
        text = start.answers.get(key, "")
        if self.question.only and text not in options:
            text = ""
        if box.value != text:
            box.value = text
        box.disabled, box.wrong = bool(reason), ""
        box.tooltip = reason or self.question.words
        box.note = start.became(self.question) if key in start.answers else ""
        if key == "place":
            self._show_stations(text, start)
        self.quiet = False

    def _show_stations(self, text: str, start: Start) -> None:
        if not start.design.site.place or not text:
            self.found = ()
        elif text not in {place.name for place in self.found}:
            self.found = places(text)
        names = (ANOTHER, *map(_station, self.found))
        if self.stations.options != names:
            self.stations.options, self.stations.value = names, ANOTHER
        self.stations.layout.display = "" if len(self.found) > 1 else "none"


def _station(place: Place) -> str:
    return ", ".join(filter(None, (place.name, place.state, place.country)))
