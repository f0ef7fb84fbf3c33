"""One design on the workbench's page: what the page asks for is done, and what follows is sent."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.marked_check import can_show
from fireplace_calc.drawing.page.glyphs import glyph_table
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import UNITS
from fireplace_calc.panels.controls.keeping import NOTE
from fireplace_calc.panels.controls.liner_choice import LINER, LINER_INPUTS
from fireplace_calc.panels.live_design import LiveDesign
from fireplace_calc.panels.picture.live_stage import LiveStage
from fireplace_calc.panels.picture.view_pane import VIEWS, ViewPane, pointable
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.workbench.bench_page import BenchPage, StageAnswer
from fireplace_calc.panels.workbench.front_fields import given, given_instead, told_field
from fireplace_calc.panels.workbench.stage_view import StageView
from fireplace_calc.panels.workbench.strip import told_strip
from fireplace_calc.report.yard.kept_list import kept_prices
from fireplace_calc.rules import PACKS


class Bench(LiveDesign):
    """A design with its controls, stage and strip on one page.

    Parameters
    ----------
    session : Session
        The design, its past, and the folder that keeps it.
    view : str
        What is drawn first, one of ``VIEWS``.
    leads : sequence of str
        Inputs in front, by dotted key.
    stamp : callable, optional
        A number to tell with the picture, from the design: for a benchmark.

    Attributes
    ----------
    page : BenchPage
    stage : LiveStage
    refused : dict
        What was wrong with an answer that still stands in its box, by the input's key.
    moved : set
        Inputs that a hand has moved since the page was last told of them: a set of pieces may have
        put them back.
    """

    tabs: Sequence[Any] = ()
    """Tabs beside the drawing: key, heading, and the folds in it with theirs."""

    def __init__(
        self,
        session: Session,
        view: str,
        leads: Sequence[str],
        stamp: Callable[[Design], int] | None = None,
    ) -> None:
        self.page = BenchPage(glyphs=glyph_table())
        self.stage = LiveStage(self.page)
        super().__init__(session, view, stamp)
        self.leads, self.opened = tuple(leads), ""
        self.words = ""
        self.listed, self.refused = self.design, dict[str, str]()
        self.notes: dict[str, str] = {}
        self.moved, self.judged = set[str](), False
        self.content = w.VBox()
        self.content.add_class("fp-content")
        self.content.add_class("fireplace-panel")
        grid = w.Box([self.page, self.content])
        grid.add_class("fp-grid")
        self.widget = w.Box([grid])
        self.widget.add_class("fp-bench")
        self.page.on_msg(lambda _, message, __: self._heard(message))

    # -- what the reader does ---------------------------------------------------------------------
    def _heard(self, message: Mapping[str, Any]) -> None:
        """Do what the page asks for."""
        do, name = message["do"], message.get("name", "")
        acts: dict[str, Callable[[], object]] = {
            "hello": self._hello,
            "size": lambda: self._resize(message["wide"], message["high"]),
            "slide": lambda: self.on_slider(message["key"], message["value"]),
            "type": lambda: self.set_input(message["key"], message["value"]),
            "view": lambda: self._choose_view(name),
            "units": lambda: self.set_units(name),
            "pack": lambda: self.set_pack(name),
            "paper": lambda: self.set_paper(name),
            "undo": self.undo,
            "redo": self.redo,
            "again": lambda: self.put(self.session.first),
            "tab": lambda: self.open(name),
            "jump": lambda: self._jump(message["key"]),
            "answer": lambda: self.answer_question(name),
        }
        acts[do]()

    def _hello(self) -> None:
        self.stage.heard = True
        first = self.told()
        bodies = first.pop("bodies")
        self.page.send(first, bodies)

    def _resize(self, wide: float, high: float) -> None:
        if self.view_pane.resize(wide, high):
            self._draw()

    def set_input(self, key: str, value: Any) -> None:
        """Take one new input; a bad one changes nothing, is answered in one sentence and stands in
        its box till the next change.
        """
        self._take(key, given(key, value, self.units))

    def on_slider(self, key: str, value: Any) -> None:
        """Take a slider's place now and draw as soon as the kernel has answered, so that the hand
        is not kept waiting. [in, mm or -]
        """
        self.moved.add(key)
        changes = given(key, value, self.units, slid=True)
        try:
            self.session.take(changes, run=key)
        except InputError as error:
            self.refuse(key, str(error))
        else:
            self._note(key, changes)
            self.catch_up_soon()

    def _take(self, key: str, changes: Mapping[str, Any]) -> None:
        self.moved.add(key)
        try:
            self.session.take(changes)
        except InputError as error:
            self.refuse(key, str(error))
        else:
            self._note(key, changes)
            self.catch_up()

    def _note(self, key: str, changes: Mapping[str, Any]) -> None:
        """Say at the field where a set gave another measure than was asked."""
        self.notes = {key: given_instead(self.design, key, changes)}

    def refuse(self, key: str, why: str) -> None:
        """Say at the field what was wrong with it."""
        self.refused[key] = f"Not changed. {why}"
        if key in self.leads:
            self.page.send({"wrong": {key: self.refused[key]}, "done": True})
        else:
            self.refuse_elsewhere(key, why)

    def refuse_elsewhere(self, key: str, why: str) -> None:
        """Say what was wrong with an input that does not stand in front."""
        self.say(html.trouble(why))

    def question(self) -> dict[str, Any] | None:
        """Something to ask over the stage: words, and choices with theirs."""

    def answer_question(self, name: str) -> None:
        """Do what was chosen."""

    def open(self, name: str) -> None:
        """Open one fold in its tab; none, and the drawing stands alone."""

    def undo(self) -> None:
        """Take the last change back, or first an entry that was refused."""
        if self.refused:
            self.show_inputs()
        else:
            super().undo()

    def show_job(self) -> None:
        """Show all of another job, with the code and the units of its own."""
        super().show_job()
        self.send_lists()

    def set_view(self, view: str) -> None:
        """Draw another view."""
        self.view_pane.view, self.view_pane.marked = view, ""
        self.redraw()
        self.send_lists()

    def set_pack(self, pack: str) -> None:
        """Check against another book."""
        self.session.pack = pack
        self.redraw()
        self.send_lists()

    def set_units(self, units: str) -> None:
        """Show everything in other units."""
        super().set_units(units)
        self.send_lists()

    def set_marked(self, key: str | None) -> None:
        """Show one check where it is measured, or the view again."""
        super().set_marked(key)
        self.send_lists()

    def _choose_view(self, name: str) -> None:
        if name in pointable(self.pack).values():
            self.set_marked(name)
        else:
            self.set_view(name)

    def _jump(self, key: str) -> None:
        """To where a check is measured, or to what is said of it; a second time back again."""
        if key == self.view_pane.marked:
            self.set_marked("")
        elif key in pointable(self.pack).values() and self._measured(key):
            self.set_marked(key)
        else:
            if self.view_pane.marked:
                self.set_marked("")
            fold = {"DRF": "draft", "STR": "structure"}.get(key.partition("-")[0], "checks")
            self.open(fold)
            self.page.send({"line": key})

    def _measured(self, key: str) -> bool:
        return any(can_show(f) for f in self.result.findings if f.key == key)

    # -- what the page is told --------------------------------------------------------------------
    def told_fields(self, keys: Iterable[str]) -> list[dict[str, Any]]:
        """Some inputs in front, as the page shows them."""
        told = [told_field(key, self.design, self.units) for key in keys]
        return [one | {"note": self._note_at(one["key"])} for one in told]

    def _note_at(self, key: str) -> str:
        kept = key in self.kept or (key == LINER and LINER_INPUTS[0] in self.kept)
        return " ".join(filter(None, (self.notes.get(key), NOTE if kept else "")))

    def told_strip(self) -> dict[str, Any]:
        """The strip, as the page shows it."""
        self.words = html.sentence(self.result, self.units)
        told = told_strip(
            self.result,
            self.units,
            kept_prices(self.session.words),
            self.view_pane.marked,
            self.judged,
        )
        return told | {"said": html.plain(self.words)}

    def _lists(self) -> dict[str, Any]:
        views = [[name, label] for label, name in VIEWS.items()]
        checks = [[key, label] for label, key in pointable(self.pack).items() if key]
        return {
            "name": self.design.name,
            "again": self.session.jobs is None,
            "view": {
                "options": {"Views": views, "Where a check is measured": checks},
                "value": self.view_pane.marked or self.view_pane.view,
            },
            "units": {"options": [[n, label] for label, n in UNITS.items()], "value": self.units},
            "pack": {"options": [[name, name] for name in PACKS], "value": self.pack},
        }

    def send_lists(self) -> None:
        """Bring the lists of the bar up to what is chosen."""
        self.page.send({"lists": self._lists()})

    def told(self) -> dict[str, Any]:
        """All that the page shows, as it stands."""
        stage, bodies = self.stage.message()
        return {
            "tabs": list(self.tabs),
            "lists": self._lists(),
            "fields": self.told_fields(self.leads),
            "strip": self.told_strip(),
            "stage": stage,
            "bodies": bodies,
            "opened": self.opened,
            "question": self.question(),
        }

    # -- how it is made --------------------------------------------------------------------------
    def make_pane(self, view: str, stamp: Callable[[Design], int] | None) -> ViewPane:
        """The stage of the page."""
        return StageView(self.stage, view, stamp)

    def make_answer(self) -> StageAnswer:
        """Over the stage."""
        return StageAnswer(self.page)
