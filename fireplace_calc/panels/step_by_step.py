"""A set built on the screen: one slider from the bare footing to the last piece, with its card."""

from __future__ import annotations

import asyncio
import os
from contextlib import suppress
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.build.setting.wording import card_cautions, card_title, card_words
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.papers.setting_cards import print_cards
from fireplace_calc.drawing.pieces.growing import SHARES, build_view
from fireplace_calc.drawing.pieces.set_pictures import pictures_of
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.from_set.set_up import set_of, set_up
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import PAPERS, UNITS, dropdown, row
from fireplace_calc.panels.controls.controls import Count
from fireplace_calc.panels.folds.folds import LONG_REST, REST
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.picture.turning import Turning
from fireplace_calc.panels.setting.as_it_stands import AsItStands
from fireplace_calc.panels.setting.open_job import open_set

STYLE = """<style>
.fireplace-card table { border-collapse: collapse; line-height: 1.45; }
.fireplace-card th { text-align: left; vertical-align: top; padding: .1em 1em .1em 0; }
.fireplace-card td { padding: .1em 0; max-width: 46em; }
.fireplace-card h3 { margin: .3em 0; }
.fireplace-measured .widget-text input { height: 36px; }
.fireplace-beside { flex-wrap: wrap; gap: 1em; align-items: flex-start; }
.fireplace-beside > .turning, .fireplace-beside > :first-child { flex: 1 1 30em; min-width: 0; }
.fireplace-beside > .fireplace-card { flex: 1 1 24em; max-width: 32em; }
.fireplace-steps button { min-width: 9em; height: 44px; }
.fireplace-steps .widget-slider { height: 44px; }
</style>"""
CARDS = "cards.pdf"
"""Where the cards are written."""
MEASURE = "As it stands: enter what level and tape say"
"""Heading of the fold in which tops are entered."""
BREATH = 0.005
"""Between two pieces of work done ahead. [s]"""
MARGIN = 6.0
"""Round the picture. [mm]"""


class StepByStep:
    """The pieces of a design's set, set one by one.

    Parameters
    ----------
    design : Design
        With a set.
    units : str
        ``feet-inches`` or ``millimetres``.
    step : int
        Where it begins; nought is the bare footing. [-]
    keep : path, optional
        Folder of the job: keeps what was measured after every entry.
    jobs : path, optional
        Folder of all jobs, instead: the job that is open is set, if it has a set; else the design
        given, and the page says so.

    Raises
    ------
    InputError
        When the design has no set.

    Attributes
    ----------
    pictures : SetPictures
        Order and cards.
    slider : IntSlider
    measured : AsItStands or None
        What was measured; nothing until its fold is opened.
    turning : Turning
        The pieces in space; the page itself moves it with the slider, by the step's number alone.
    """

    def __init__(
        self,
        design: Design,
        units: str = FEET_INCHES,
        step: int = 0,
        keep: str | os.PathLike[str] | None = None,
        jobs: str | os.PathLike[str] | None = None,
    ) -> None:
        heard = ""
        if jobs is not None:
            design, keep, heard = open_set(jobs, design)
        set_of(design, "there is none to set; name one with pieces.set")
        self.design, self.units, self.keep = design, units, keep
        self.up = set_up(design)
        self.pictures = pictures_of(design)
        self.measured: AsItStands | None = None
        self.paper = "light"
        last = len(self.pictures.cards)
        self.board = Board()
        self.card, self.said = w.HTML(), w.HTML(html.remark(heard) if heard else "")
        self.card.add_class("fireplace-card")
        self.slider = Count(
            value=min(step, last),
            min=0,
            max=last,
            description="Step",
            tooltip=f"0 is the bare footing, {last} the last piece.",
            layout=w.Layout(width="100%", max_width="60em"),
        )
        self.slider.observe(self._slid, "value")
        self.fold = w.Accordion(children=[w.VBox()], titles=[MEASURE], selected_index=None)
        self.fold.observe(lambda _: self._unfolded(), "selected_index")
        self.turning = Turning(design, units=units, step=self.slider.value)
        self.tie = w.jslink((self.slider, "value"), (self.turning, "step"))
        beside = w.HBox([self.turning, self.card])
        beside.add_class("fireplace-beside")
        shown = [self._controls(), self.said, beside, self.board.widget, self.fold]
        self.widget = w.VBox([w.HTML(html.STYLE + STYLE), *shown])
        self.widget.add_class("fireplace-panel")
        self._waiting: list[asyncio.TimerHandle] = []
        self._ahead_due: asyncio.TimerHandle | None = None
        self._ahead = self.pictures.ahead(eye for _, eye, _ in SHARES)
        self.show()
        self._work_ahead_in(LONG_REST)

    def _controls(self) -> w.VBox:
        back = w.Button(description="Step back")
        on = w.Button(description="Next piece")
        back.on_click(lambda _: self.go(self.slider.value - 1))
        on.on_click(lambda _: self.go(self.slider.value + 1))
        cards = w.Button(description="Print the cards")
        cards.on_click(lambda _: self.print_cards())
        units = dropdown("Units", UNITS, self.units, self.read_in)
        paper = dropdown("Paper", PAPERS, "light", self.paint_on)
        paper.add_class("fireplace-paper")  # the page's own theme chooses it
        made = w.VBox([self.slider, row([back, on, cards, units, paper])])
        made.add_class("fireplace-steps")
        return made

    def go(self, step: int) -> None:
        """Show another step, as far as there is one."""
        self.slider.value = min(max(step, self.slider.min), self.slider.max)

    def print_cards(self) -> None:
        """Write every card to a PDF where the notebook stands, and say so."""
        try:
            pages = print_cards(self.design, CARDS, self.units)
        except InputError as trouble:
            self.said.value = html.trouble(str(trouble))
        else:
            self.said.value = html.remark(
                f"{CARDS}: {pages} pages: the delivery, where it is put down, the story pole, and a"
                " card for every step."
            )

    def read_in(self, units: str) -> None:
        """Take other units."""
        self.units = self.turning.units = units
        self.show()
        if self.measured is not None:
            self.measured.read_in(units)

    def paint_on(self, paper: str) -> None:
        """Take other paper."""
        self.paper = paper
        self.board.set_theme(paper)
        self.turning.theme = paper
        self.show()
        if self.measured is not None:
            self.measured.paint_on(paper)

    def open(self) -> None:
        """Unfold what was measured, as a click on its heading does."""
        self.fold.selected_index = 0

    def _unfolded(self) -> None:
        """Make it when it is first looked at: a fold that is closed costs nothing."""
        if self.fold.selected_index is None:
            return
        if self.measured is None:
            self.measured = AsItStands(self.design, self.up, self.pictures, self.units, self.keep)
            self.measured.paint_on(self.paper)
            self.fold.children[0].children = [self.measured.widget]

    def _follow_hold_point(self) -> None:
        """Where the step shown completes a lift, that is the one to measure."""
        card = self.pictures.card(self.slider.value)
        if self.measured is not None and card is not None and card.hold is not None:
            self.measured.form.choose(card.lift)

    def _slid(self, event: dict[str, Any]) -> None:
        """The picture leads; words follow when the hand rests."""
        del event
        self._draw()
        for handle in self._waiting:
            handle.cancel()
        followers = ((REST, self._tell), (REST, self._follow_hold_point))
        try:
            loop = asyncio.get_running_loop()
            self._waiting = [loop.call_later(rest, act) for rest, act in followers]
        except RuntimeError:  # nobody waits: at once
            for _, act in followers:
                act()
        self._work_ahead_in(LONG_REST)

    def _work_ahead(self) -> None:
        """Work out a little of what later steps show."""
        for _ in self._ahead:
            self._work_ahead_in(BREATH)
            return

    def _work_ahead_in(self, rest: float) -> None:
        """Go on when the reader's hand has rested so long; without a page nobody slides. [s]"""
        if self._ahead_due is not None:
            self._ahead_due.cancel()
        with suppress(RuntimeError):
            self._ahead_due = asyncio.get_running_loop().call_later(rest, self._work_ahead)

    def show(self) -> None:
        """Bring picture and card up to the step."""
        self._draw()
        self._tell()

    def _draw(self) -> None:
        sheet = Sheet(WIDTH, HEIGHT)
        cell = Cell(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
        build_view(sheet, cell, self.pictures, self.slider.value, self.units)
        self.board.show([(WHOLE, sheet)])

    def _tell(self) -> None:
        self.card.value = self._words(self.slider.value)

    def _words(self, step: int) -> str:
        card = self.pictures.card(step)
        if card is None:
            many = len(self.pictures.cards)
            return f"<h3>The bare footing</h3><p>{many} steps to the last piece of the flue.</p>"
        rows = "".join(
            f"<tr><th scope='row'>{escape(head)}</th><td>{escape(words)}</td></tr>"
            for head, words in card_words(card, self.units)
        )
        cautions = "".join(f"<li>{escape(words)}</li>" for words in card_cautions(card))
        title = f"Step {step} of {len(self.pictures.cards)}: {card_title(card)}"
        return f"<h3>{escape(title)}</h3><table>{rows}</table><ul>{cautions}</ul>"

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        return {**self.widget._repr_mimebundle_(**kwargs), "text/plain": str(self)}

    def __str__(self) -> str:
        return f"A set of {len(self.pictures.order)} pieces, step by step"
