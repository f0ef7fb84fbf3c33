"""The live panel: three sliders in front, one picture that follows, and everything else in folds
below it.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import PAPERS, UNITS, button, dropdown, row
from fireplace_calc.panels.controls.controls import Lead
from fireplace_calc.panels.controls.everything import Everything
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.folds.folds import LONG_REST, REST, Fold
from fireplace_calc.panels.live_design import LiveDesign
from fireplace_calc.panels.memory import send_promptly, settle_memory
from fireplace_calc.panels.picture.view_pane import VIEWS, pointable
from fireplace_calc.panels.session import Session
from fireplace_calc.rules import PACKS

LEADS = ("opening.width", "opening.extension", "flue.sections")
"""The sliders in front."""


class Panel(LiveDesign):
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
    jobs : path, optional
        Folder of all jobs, which every notebook shares, instead of ``keep``: the job that was open
        last is opened again.
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
        jobs: str | os.PathLike[str] | None = None,
    ) -> None:
        super().__init__(Session(design, pack, units, keep, jobs), view, stamp)
        self.listed, self.refused = self.design, set[str]()
        self.words = w.HTML()
        self.words.add_class("fireplace-summary")
        inputs = all_inputs()
        self.leads = {key: Lead(key, inputs[key], self.on_slider, self.set_input) for key in leads}
        self.everything = Everything(self)
        self.named = tuple(FOLDS if folds is None else folds)
        self.folds: dict[str, Fold] = {}
        self.pointer = dropdown(
            "Show a check", pointable(self.pack), "", self._point, "29em", "8em"
        )
        self.viewer = dropdown("View", VIEWS, view, self.set_view, "15.5em", "3.5em")
        self.choosers: dict[str, w.Dropdown] = {}
        self.accordion = w.Accordion(
            children=[w.VBox() for _ in self.named],
            titles=[FOLDS[name][0] for name in self.named],
            selected_index=0 if self.named else None,
        )
        self.accordion.observe(lambda _: self._unfolded(), "selected_index")
        self.widget = self._lay_out()
        self.show_inputs(every=True)
        self.redraw()
        if self.session.said:
            self.say(html.remark(self.session.said) + self.answer)
        settle_memory()
        send_promptly()

    # -- what the reader does ---------------------------------------------------------------------
    def set_input(self, key: str, value: Any) -> None:
        """Take one new input; a bad one changes nothing, is answered in one sentence and stands in
        its box till the next change.
        """
        if not self.set_inputs({key: value}):
            self.refused.add(key)

    def undo(self) -> None:
        """Take the last change back."""
        self._step(self.session.undo, "Nothing left to undo.")

    def redo(self) -> None:
        """Take a change that was taken back again."""
        self._step(self.session.redo, "Nothing to redo.")

    def _step(self, step: Callable[[], bool], otherwise: str) -> None:
        """Follow a step, or say that there is none: a button that went dead would drop the
        keyboard's focus.
        """
        done: list[bool] = []
        if not self.attempt(lambda: done.append(step())):
            return
        if done[0]:
            self.catch_up()
        else:
            self.say(html.remark(otherwise))

    def open(self, name: str) -> None:
        """Unfold one fold, as a click on its heading does."""
        self.accordion.selected_index = self.named.index(name)

    def set_view(self, view: str) -> None:
        """Draw another view."""
        self.view_pane.view = view
        if self.view_pane.marked:
            self.pointer.value = ""  # comes back here through _point
        else:
            self.view_pane.frame()
            self.redraw()

    def set_pack(self, pack: str) -> None:
        """Check against another book."""
        self.session.pack = pack
        self.pointer.options = pointable(pack)
        self.redraw()

    def show_job(self) -> None:
        """Show all of another job, with the code and the units of its own."""
        for name, chooser in self.choosers.items():
            chooser.value = getattr(self.session, name)
        super().show_job()

    def _point(self, key: str | None) -> None:
        if (key or "") != self.view_pane.marked:
            self.set_marked(key)

    # -- what follows -----------------------------------------------------------------------------
    def followers(self) -> tuple[tuple[float, Callable[[], None]], ...]:
        """The words at once, what takes longer a little later. [s]"""
        return (REST, self.update), (LONG_REST, self.on_idle)

    def update(self) -> None:
        """The sentence under the picture, and the open fold."""
        self.words.value = html.sentence(self.result, self.units)
        self._tell_open(REST)

    def on_idle(self) -> None:
        """What takes longer: evenings, other books, remedies."""
        self._tell_open(LONG_REST)
        self.view_pane.on_idle(self.result, self.units)

    def _unfolded(self) -> None:
        for rest in (REST, LONG_REST):
            self._follow(partial(self._tell_open, rest))

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

    def show_inputs(self, every: bool = False) -> None:
        """Bring those controls up to date whose record has changed or whose input was refused, or
        every one.
        """
        before, self.listed = self.listed, self.design

        def stale(key: str) -> bool:
            group = key.partition(".")[0]
            changed = getattr(before, group) is not getattr(self.design, group)
            changed |= before.piece_set is not self.design.piece_set
            return every or changed or key in self.refused

        for key, lead in self.leads.items():
            if stale(key):
                lead.show(value_of(self.design, key), self.units)
        for key in filter(stale, self.everything.controls):
            self.everything.show(key)
        self.refused.clear()

    # -- how it is laid out -----------------------------------------------------------------------
    def _lay_out(self) -> w.Widget:
        size = ("15.5em", "3.5em")
        paper = dropdown("Paper", PAPERS, "light", self.set_paper, *size)
        paper.add_class("fireplace-paper")  # the page's own theme chooses it, through jupyter/
        packs = {name: name for name in PACKS}
        choices = [
            self.viewer,
            self.choosers.setdefault(
                "units", dropdown("Units", UNITS, self.units, self.set_units, *size)
            ),
            self.choosers.setdefault(
                "pack", dropdown("Code", packs, self.pack, self.set_pack, *size)
            ),
            paper,
            self.pointer,
        ]
        tools = row(
            [
                *choices,
                button("Undo", self.undo),
                button("Redo", self.redo),
                button("Start again", lambda: self.put(self.session.first)),
            ]
        )
        controls = w.VBox([*(lead.widget for lead in self.leads.values()), tools])
        controls.add_class("fireplace-controls")
        picture = self.view_pane.board.widget
        page = w.VBox(
            [w.HTML(html.STYLE), controls, self.said, picture, self.words, self.accordion]
        )
        page.add_class("fireplace-panel")
        return page

    def __str__(self) -> str:
        return f"Live panel: {self.session.first.name}"


def panel(design: Design, **how: Any) -> Panel:
    """A live panel for one design; put it last in a cell."""
    return Panel(design, **how)
