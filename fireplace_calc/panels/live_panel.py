"""The live panel: three sliders in front, one picture that follows, and everything else in folds
below it.
"""

from __future__ import annotations

import asyncio
import os
from collections.abc import Callable, Sequence
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.controls import Lead
from fireplace_calc.panels.controls.everything import Everything
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.folds.folds import LONG_REST, REST, Fold
from fireplace_calc.panels.memory import send_promptly, settle_memory
from fireplace_calc.panels.picture.view_pane import VIEWS, ViewPane, pointable
from fireplace_calc.panels.session import Session
from fireplace_calc.rules import PACKS

LEADS = ("opening.width", "opening.extension", "flue.sections")
"""The sliders in front."""
PAPERS = {"Light": "light", "Dark": "dark", "Print": "print"}
UNITS = {"Feet and inches": FEET_INCHES, "Millimetres": MILLIMETRES}


class Panel:
    """Everything about one design, live.

    Parameters
    ----------
    design : Design
        The example: ``Start again`` comes back to it.
    pack : str
        Which code to check against.
    units : str
        ``feet-inches`` or ``millimetres``.
    view : str
        What is drawn first, one of ``VIEWS``.
    folds : sequence of str, optional
        Which folds there are, by their names in ``FOLDS``, the first one open; all of them when
        left out.
    keep : path, optional
        Folder that keeps design and options after every change and gives them back when the panel
        is opened again.
    leads : sequence of str
        Inputs with a slider in front.
    stamp : callable, optional
        A number to paint into the picture, from the design: for a benchmark that has to know which
        picture it sees.
    """

    def __init__(
        self,
        design: Design,
        pack: str = DEFAULT_PACK,
        units: str = FEET_INCHES,
        view: str = "all",
        folds: Sequence[str] | None = None,
        keep: str | os.PathLike[str] | None = None,
        leads: Sequence[str] = LEADS,
        stamp: Callable[[Design], int] | None = None,
    ):
        self.session = Session(design, pack, units, keep)
        self.view_pane = ViewPane(view, stamp)
        self.waiting: dict[Callable[[], None], asyncio.TimerHandle] = {}
        self.due: asyncio.Handle | None = None
        self.listed, self.refused = self.design, set()
        self._worked: Assessment | None = None
        self.said, self.words = w.HTML(), w.HTML()
        self.words.add_class("fireplace-summary")
        inputs = all_inputs()
        self.leads = {key: Lead(key, inputs[key], self.on_slider, self.set_input) for key in leads}
        self.everything = Everything(self)
        self.named = tuple(FOLDS if folds is None else folds)
        self.folds: dict[str, Fold] = {}
        self.widget = self._lay_out()
        self._show_inputs()
        self.redraw()
        if self.session.said:
            self.said.value = html.remark(self.session.said)
        settle_memory()
        send_promptly()

    @property
    def design(self) -> Design:
        """As it stands now."""
        return self.session.design

    @property
    def pack(self) -> str:
        """Book it is checked against."""
        return self.session.pack

    @property
    def units(self) -> str:
        """The reader's units."""
        return self.session.units

    @property
    def result(self) -> Assessment:
        """Everything about the design as it stands, worked out when it is first asked for after a
        change.
        """
        if (
            self._worked is None
            or self._worked.design is not self.design
            or self._worked.pack != self.pack
        ):
            self._worked = assess(self.design, self.pack)
        return self._worked

    # -- what the reader does ---------------------------------------------------------------------
    def set_input(self, key: str, value: Any) -> None:
        """Take one new input; a bad one changes nothing, is answered in one sentence and stands in
        its box till the next change.
        """
        if not self.set_inputs({key: value}):
            self.refused.add(key)

    def set_inputs(self, changes: dict[str, Any]) -> bool:
        """Take several new inputs together, or none of them."""
        if taken := self._take(changes):
            self._catch_up()
        return taken

    def on_slider(self, key: str, value: Any) -> None:
        """Take a slider's place now and draw as soon as the kernel has answered, so that the hand
        is not kept waiting.
        """
        if self._take({key: value}, run=key) and self.due is None:
            try:
                self.due = asyncio.get_running_loop().call_soon(self._catch_up)
            except RuntimeError:
                self._catch_up()

    def put(self, design: Design) -> None:
        """Show another design."""
        self.session.put(design)
        self._catch_up()

    def undo(self) -> None:
        """Take the last change back."""
        self._stepped(self.session.undo(), "There is no change left to take back.")

    def redo(self) -> None:
        """Take a change that was taken back again."""
        self._stepped(self.session.redo(), "There is no change to bring back.")

    def _stepped(self, done: bool, otherwise: str) -> None:
        """Follow a step, or say that there is none: a button that went dead would drop the
        keyboard's focus.
        """
        if done:
            self._catch_up()
        else:
            self.said.value = html.remark(otherwise)

    def open(self, name: str) -> None:
        """Unfold one fold, as a click on its heading does."""
        self.accordion.selected_index = self.named.index(name)

    def _take(self, changes: dict[str, Any], run: str = "") -> bool:
        return self.attempt(lambda: self.session.take(changes, run))

    def attempt(self, act: Callable[[], Any]) -> bool:
        """Do something that may be refused; the refusal is said in one sentence and nothing is
        changed.
        """
        try:
            act()
        except InputError as error:
            self.said.value = html.trouble(str(error))
            return False
        return True

    def _catch_up(self) -> None:
        """Bring result, picture and controls up to the design."""
        if self.due is not None:
            self.due.cancel()
            self.due = None
        self.redraw()
        self._show_inputs(self.listed)
        self.listed = self.design

    def redraw(self) -> None:
        """The picture; the assessment and its words follow when the hand rests."""
        drawn = self.view_pane.lead(self.design, self.pack, self.units)
        remark = self.view_pane.remark if drawn else self.view_pane.follow(self.result, self.units)
        if self.said.value != remark:
            self.said.value = remark
        self.attempt(self.session.keep)
        self._soon(REST, self.update)
        self._soon(LONG_REST, self.on_idle)

    def _soon(self, rest: float, act: Callable[[], None]) -> None:
        """Let a moving hand have the picture; the rest follows when it rests."""
        if act in self.waiting:
            self.waiting.pop(act).cancel()
        try:
            self.waiting[act] = asyncio.get_running_loop().call_later(rest, act)
        except RuntimeError:
            act()

    def update(self) -> None:
        """The sentence under the picture, and the open fold."""
        self.words.value = html.sentence(self.result, self.units)
        self._tell_open(REST)

    def on_idle(self) -> None:
        """What takes longer: evenings, other books, remedies."""
        self._tell_open(LONG_REST)
        self.view_pane.on_idle(self.result, self.units)

    def _tell_open(self, rest: float) -> None:
        chosen = self.accordion.selected_index
        if chosen is None:
            return
        name = self.named[chosen]
        if name not in self.folds:
            self.folds[name] = FOLDS[name][1](self)
            self.accordion.children[chosen].children = [self.folds[name].widget]
        if self.folds[name].rest == rest:
            self.folds[name].update()

    # -- how it is laid out -----------------------------------------------------------------------
    def _lay_out(self) -> w.Widget:
        self.pointer = self._choice("Show a check", pointable(self.pack), "", self._set_marked)
        self.pointer.layout.width, self.pointer.style.description_width = "29em", "8em"
        self.viewer = self._choice("View", VIEWS, self.view_pane.view, self._set_view)
        self.paper = self._choice("Paper", PAPERS, "light", self._set_paper)
        self.paper.add_class(
            "fireplace-paper"
        )  # the page's own theme chooses it, through jupyter/labextension
        tools = w.HBox(
            [
                self.viewer,
                self._choice("Units", UNITS, self.units, self._set_units),
                self._choice("Code", {name: name for name in PACKS}, self.pack, self._set_pack),
                self.paper,
                self.pointer,
                self._button("Undo", self.undo),
                self._button("Redo", self.redo),
                self._button("Start again", lambda: self.put(self.session.first)),
            ],
            layout=w.Layout(flex_flow="row wrap"),
        )
        self.accordion = w.Accordion(
            children=[w.VBox() for _ in self.named],
            titles=[FOLDS[name][0] for name in self.named],
            selected_index=0 if self.named else None,
        )
        self.accordion.observe(
            lambda _: [self._tell_open(rest) for rest in (REST, LONG_REST)], "selected_index"
        )
        controls = w.VBox([*(lead.widget for lead in self.leads.values()), tools])
        controls.add_class("fireplace-controls")
        page = w.VBox(
            [
                w.HTML(html.STYLE),
                controls,
                self.said,
                self.view_pane.board.widget,
                self.words,
                self.accordion,
            ]
        )
        page.add_class("fireplace-panel")
        return page

    def _choice(
        self, label: str, options: dict[str, str], value: str, act: Callable[[str], None]
    ) -> w.Dropdown:
        made = w.Dropdown(
            options=options,
            value=value,
            description=label,
            layout=w.Layout(width="15.5em"),
            style={"description_width": "3.5em"},
        )
        made.add_class("fireplace-tool")
        made.observe(lambda event: act(event["new"]), "value")
        return made

    def _button(self, label: str, act: Callable[[], None]) -> w.Button:
        made = w.Button(description=label, layout=w.Layout(width="auto"))
        made.on_click(lambda _: act())
        return made

    def _show_inputs(self, before: Design | None = None) -> None:
        """Bring the controls up to date; given the design before, only those of records that
        changed.
        """

        def stale(key: str) -> bool:
            group = key.partition(".")[0]
            return (
                before is None
                or key in self.refused
                or getattr(before, group) is not getattr(self.design, group)
            )

        for key, lead in self.leads.items():
            if stale(key):
                group, _, name = key.partition(".")
                lead.show(getattr(getattr(self.design, group), name), self.units)
        for key in filter(stale, self.everything.controls):
            self.everything.show(key)
        self.refused.clear()

    def _set_view(self, view: str) -> None:
        self.view_pane.view = view
        if self.view_pane.marked:
            self.pointer.value = ""  # comes back here through _set_marked
        else:
            self.view_pane.frame()
            self.redraw()

    def _set_marked(self, key: str | None) -> None:
        if (key or "") != self.view_pane.marked:
            self.view_pane.marked = key or ""
            self.view_pane.frame()
            self.redraw()

    def _set_units(self, units: str) -> None:
        self.session.units = units
        self._show_inputs()
        self.redraw()

    def _set_pack(self, pack: str) -> None:
        self.session.pack = pack
        self.pointer.options = pointable(pack)
        self.redraw()

    def _set_paper(self, paper: str) -> None:
        self.view_pane.board.picture.set_theme(paper)
        self.redraw()

    def _repr_mimebundle_(self, **kwargs: Any) -> dict:
        shown = self.widget._repr_mimebundle_(**kwargs)
        return {**shown, "text/plain": f"Live panel: {self.session.first.name}"}


def panel(design: Design, **how: Any) -> Panel:
    """A live panel for one design; put it last in a cell."""
    return Panel(design, **how)
