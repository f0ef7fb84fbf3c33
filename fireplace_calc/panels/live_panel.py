"""The live panel: the reader's inputs in front, one picture that follows, the verdicts under it,
and everything else in tabs beside it.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.everything import Everything
from fireplace_calc.panels.folds.contents import DESIGNER, FOLDS, JOBS, tabs
from fireplace_calc.panels.folds.folds import LONG_REST, REST, Fold
from fireplace_calc.panels.memory import send_promptly, settle_memory
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.workbench.bench import Bench

LEADS = ("opening.width", "opening.extension", "flue.sections")
"""In front for who builds it."""
CLIENT_LEADS = ("opening.width", "opening.standard_height", "base.hearth_level", "surround.face")
"""In front for who will sit before it."""


class Panel(Bench):
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
        Which folds there are, by their names in ``FOLDS``; all of them when left out.
    keep : path, optional
        Folder that keeps design and options after every change and gives them back when the panel
        is opened again.
    leads : sequence of str, optional
        Inputs in front; the reader's own when left out.
    jobs : path, optional
        Folder of all jobs, which every notebook shares, instead of ``keep``: the job that was open
        last is opened again.
    stamp : callable, optional
        A number to tell with the picture, from the design: for a benchmark that has to know which
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
        leads: Sequence[str] | None = None,
        stamp: Callable[[Design], int] | None = None,
        jobs: str | os.PathLike[str] | None = None,
    ) -> None:
        self.named = tuple(FOLDS if folds is None else folds)
        self.tabs = tabs(self.named)
        usual = CLIENT_LEADS if self.named == DESIGNER else LEADS
        super().__init__(
            Session(design, pack, units, keep, jobs),
            view,
            usual if leads is None else leads,
            stamp,
        )
        self.everything = Everything(self)
        self.folds: dict[str, Fold] = {}
        self.asking = True
        self.redraw()
        if self.session.said:
            self.say(html.remark(self.session.said) + self.answer)
        self.page.first = self.told()
        settle_memory()
        send_promptly()

    # -- what the reader does ---------------------------------------------------------------------
    def refuse_elsewhere(self, key: str, why: str) -> None:
        """At its box, where that has been made."""
        if key in self.everything.controls:
            self.everything.controls[key].refuse(self.refused[key])
        else:
            super().refuse_elsewhere(key, why)

    def question(self) -> dict[str, Any] | None:
        """What is asked when the page is opened: go on, start one, or look at the example."""
        session = self.session
        if not session.asks or session.jobs is None or not self.asking:
            return None
        listed = session.jobs.jobs()
        choices = []
        if session.job:
            choices.append(["stay", f"Go on with {self.design.name}"])
        elif listed:
            choices.append(["go on", f"Go on with {listed[0].name}"])
        named = {"new": "Start mine", "start": "All my jobs"}
        choices += [[name, words] for name, words in named.items() if name in self.named]
        if not session.job:
            choices.append(["stay", "Look at the example"])
        return {"words": "Whose fireplace is it to be?", "choices": choices}

    def answer_question(self, name: str) -> None:
        """Do what was chosen; it is asked once."""
        self._asked()
        session = self.session
        if name == "go on" and session.jobs is not None:
            key = session.jobs.jobs()[0].key
            if self.attempt(lambda: session.open_job(key)):
                self.show_job()
        elif name in self.named:
            self.open(name)

    def _asked(self) -> None:
        """Ask no more: it has been answered, or the reader has found the list of jobs himself."""
        self.asking = False
        self.page.send({"question": None})

    def show_job(self) -> None:
        """Show all of another job, with the code and the units of its own."""
        self._asked()
        super().show_job()

    def open(self, name: str) -> None:
        """Open one fold in its tab; none, and the drawing stands alone."""
        name = name if name in self.named else ""
        self.opened = name
        if name in JOBS:
            self._asked()
        for rest in (REST, LONG_REST):
            self._follow(partial(self._tell_open, rest))
        self.content.children = (self.folds[name].widget,) if name in self.folds else ()
        self.page.send({"opened": name})

    # -- what follows -----------------------------------------------------------------------------
    def _draw(self) -> str:
        """What is open leads, since that is looked at; then the picture."""
        failed = ""
        if self.opened in self.folds:
            try:
                self.folds[self.opened].lead()
            except Exception as fault:
                failed = self._failed("What is open shows an earlier design", fault)
        return super()._draw() + failed

    def followers(self) -> tuple[tuple[float, Callable[[], None]], ...]:
        """The words at once, what takes longer a little later. [s]"""
        return (REST, self.update), (LONG_REST, self.on_idle)

    def update(self) -> None:
        """The strip under the picture, and the open fold."""
        self.page.send({"strip": self.told_strip()})
        self._tell_open(REST)

    def on_idle(self) -> None:
        """What takes longer: evenings, other books, remedies."""
        self._tell_open(LONG_REST)
        self.view_pane.on_idle(self.result, self.units)
        if not self.judged:
            self.judged = True
            self.page.send({"strip": self.told_strip()})

    def _tell_open(self, rest: float) -> None:
        if not self.opened:
            return
        if self.opened not in self.folds:
            self.folds[self.opened] = FOLDS[self.opened][1](self)
        if self.folds[self.opened].rest == rest:
            self.folds[self.opened].update()

    def show_inputs(self, every: bool = False) -> None:
        """Bring those controls up to date whose record has changed or whose input was refused, or
        every one.
        """
        before, self.listed = self.listed, self.design

        def stale(key: str) -> bool:
            group = key.partition(".")[0]
            changed = getattr(before, group) is not getattr(self.design, group)
            changed |= before.piece_set is not self.design.piece_set
            return every or changed or key in self.refused or key in self.moved

        fields = self.told_fields(filter(stale, self.leads))
        self.page.send({"fields": fields, "done": True})
        for key in filter(stale, self.everything.controls):
            self.everything.show(key)
        self.refused.clear()
        self.moved.clear()
        if before.name != self.design.name:
            self.send_lists()

    def __str__(self) -> str:
        return f"Live panel: {self.session.first.name}"


def panel(design: Design, **how: Any) -> Panel:
    """A live panel for one design; put it last in a cell."""
    return Panel(design, **how)
