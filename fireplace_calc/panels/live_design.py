"""One design under a reader's hands: a change is taken, kept and drawn, and the words follow when
the hand rests.
"""

from __future__ import annotations

import asyncio
import logging
from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.keeping import kept_inputs
from fireplace_calc.panels.picture.view_pane import ViewPane
from fireplace_calc.panels.session import Session

LOG = logging.getLogger(__name__)
"""Where our own faults go, with their trace; the reader gets one sentence."""


class LiveDesign(ABC):
    """What a panel and a lesson have in common.

    Parameters
    ----------
    session : Session
        The design, its past, and the folder that keeps it.
    view : str
        What is drawn first, one of ``view_pane.VIEWS``.
    stamp : callable, optional
        A number to paint into the picture, from the design: for a benchmark.

    Attributes
    ----------
    said : HTML
        Answers to what was done last, and where the work is kept when that is not where it was
        asked to be.
    widget : Widget
        The page.
    """

    widget: w.Widget

    def __init__(
        self, session: Session, view: str, stamp: Callable[[Design], int] | None = None
    ) -> None:
        self.session, self.view_pane = session, self.make_pane(view, stamp)
        self.said = self.make_answer()
        self.answer = self.notice = ""
        self.waiting: dict[Callable[[], None], asyncio.TimerHandle] = {}
        self.due: asyncio.Handle | None = None
        self._worked: Assessment | None = None

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
    def kept(self) -> frozenset[str]:
        """Inputs that no mend may move."""
        return kept_inputs(self.session.words)

    @property
    def result(self) -> Assessment:
        """Everything about the design as it stands, worked out when it is first asked for after a
        change.
        """
        made = self._worked
        if made is None or made.design is not self.design or made.pack != self.pack:
            made = self._worked = assess(self.design, self.pack)
        return made

    # -- what the reader does ---------------------------------------------------------------------
    def set_input(self, key: str, value: Any) -> None:
        """Take one new input; a bad one changes nothing and is answered in one sentence."""
        self.set_inputs({key: value})

    def set_inputs(self, changes: Mapping[str, Any]) -> bool:
        """Take several new inputs together, or none of them."""
        if taken := self.attempt(lambda: self.session.take(changes)):
            self.catch_up()
        return taken

    def on_slider(self, key: str, value: Any) -> None:
        """Take a slider's place now and draw as soon as the kernel has answered, so that the hand
        is not kept waiting.
        """
        if self.attempt(lambda: self.session.take({key: value}, run=key)):
            self.catch_up_soon()

    def catch_up_soon(self) -> None:
        """Draw as soon as the kernel has answered."""
        if self.due is None:
            try:
                self.due = asyncio.get_running_loop().call_soon(self.catch_up)
            except RuntimeError:  # no loop: a script or a test
                self.catch_up()

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

    def put(self, design: Design) -> None:
        """Show another design."""
        self.session.put(design)
        self.catch_up()

    def set_units(self, units: str) -> None:
        """Show everything in other units."""
        self.session.units = units
        self.show_inputs(every=True)
        self.redraw()

    def show_job(self) -> None:
        """Show all of another job that the session has on the table."""
        self.show_inputs(every=True)
        self.redraw()
        if self.session.said:
            self.say(html.remark(self.session.said) + self.answer)

    def set_paper(self, paper: str) -> None:
        """Draw on light, dark or print paper."""
        self.view_pane.set_theme(paper)
        self.redraw()

    def set_marked(self, key: str | None) -> None:
        """Show one check where it is measured, or the view again."""
        self.view_pane.marked = key or ""
        self.redraw()

    def attempt(self, act: Callable[[], Any]) -> bool:
        """Do something that may be refused; the refusal is said in one sentence and nothing is
        changed.
        """
        try:
            act()
        except InputError as error:
            self.say(html.trouble(str(error)))
            return False
        return True

    # -- what follows -----------------------------------------------------------------------------
    def catch_up(self) -> None:
        """Bring picture, words and controls up to the design."""
        if self.due is not None:
            self.due.cancel()
            self.due = None
        self.redraw()
        self.show_inputs()

    def redraw(self) -> None:
        """Keep, then draw; the assessment and its words follow when the hand rests."""
        self.keep()
        self.say(self._draw())
        for rest, act in self.followers():
            self._soon(rest, act)

    def say(self, answer: str) -> None:
        """Show an answer over the picture, as HTML, in place of the last one."""
        self.answer = answer
        if self.said.value != (text := answer + self.notice):
            self.said.value = text

    def keep(self) -> None:
        """Write the work to its folder. Where that fails, or it goes elsewhere, the page says so
        as long as it is so.
        """
        try:
            self.session.keep()
        except InputError as error:
            self.notice = f'<div class="trouble" role="alert">{escape(str(error))}</div>'
        else:
            self.notice = html.heard(self.session.notice) if self.session.notice else ""
        self.say(self.answer)

    def _draw(self) -> str:
        """Draw; a remark on the picture, if there is one. A fault of ours leaves the last one."""
        try:
            if self.view_pane.lead(self.design, self.pack, self.units):
                return self.view_pane.remark
            return self.view_pane.follow(self.result, self.units)
        except Exception as fault:
            return self._failed("The picture could not be drawn and shows an earlier design", fault)

    def _failed(self, what: str, fault: Exception) -> str:
        LOG.error(what, exc_info=fault)
        where = "kept" if self.session.folder else "taken"
        return html.heard(f"{what} ({type(fault).__name__}). Your change is {where}.")

    def _soon(self, rest: float, act: Callable[[], None]) -> None:
        """Let a moving hand have the picture; the rest follows when it rests."""
        if act in self.waiting:
            self.waiting.pop(act).cancel()
        try:
            self.waiting[act] = asyncio.get_running_loop().call_later(rest, self._follow, act)
        except RuntimeError:
            self._follow(act)

    def _follow(self, act: Callable[[], None]) -> None:
        self.waiting.pop(act, None)
        try:
            act()
        except Exception as fault:
            self.say(self._failed("What is written below is of an earlier design", fault))

    def make_pane(self, view: str, stamp: Callable[[Design], int] | None) -> ViewPane:
        """Where the picture stands."""
        return ViewPane(view, stamp)

    def make_answer(self) -> Any:
        """Where answers are said: its ``value`` is HTML."""
        return w.HTML()

    # -- what each kind of page has of its own ----------------------------------------------------
    @abstractmethod
    def followers(self) -> tuple[tuple[float, Callable[[], None]], ...]:
        """What is done when the hand has rested, after how many seconds. [s]"""

    @abstractmethod
    def show_inputs(self, every: bool = False) -> None:
        """Bring the controls up to the design; ``every`` one when more than inputs has changed."""

    @abstractmethod
    def __str__(self) -> str:
        """In words, where no widget can be shown."""

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        return {**self.widget._repr_mimebundle_(**kwargs), "text/plain": str(self)}
