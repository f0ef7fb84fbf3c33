"""The live panel: three sliders in front, everything else folded away, one picture that follows."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterable
from dataclasses import fields
from typing import Any

import ipywidgets as w

from fireplace_calc.assess import DEFAULT_PACK, Assessment, assess
from fireplace_calc.books import checklist
from fireplace_calc.change import all_inputs, change
from fireplace_calc.design import Design
from fireplace_calc.drawing import CELLS, HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.air import air_views
from fireplace_calc.drawing.compose import WHOLE
from fireplace_calc.drawing.live import CLEARANCES, FORMAT, live_views
from fireplace_calc.drawing.marked import PLACES, can_show, marked
from fireplace_calc.drawing.sheet import Cell, Sheet
from fireplace_calc.facts import facts
from fireplace_calc.geometry import geometry
from fireplace_calc.inputs import is_record
from fireplace_calc.panels import html
from fireplace_calc.panels.airing import Airing
from fireplace_calc.panels.controls import Control, Lead
from fireplace_calc.panels.lookup import Lookup
from fireplace_calc.panels.memory import settle_memory
from fireplace_calc.rules import PACKS
from fireplace_calc.units import FEET_INCHES, MILLIMETRES, InputError

LEADS = ("opening.width", "opening.extension", "flue.sections")
"""The sliders in front."""
REST, LONG_REST = 0.06, 0.25
"""How long a hand has to rest before the words are sent, and before the evenings are drawn. [s]"""
VIEWS = {"All four views": "all", "Front elevation": "front", "Section": "section", "Plan": "plan", "Against the roof": "roof",
         "Draft": "draft"}
IN_CELLS = ("all", "draft")
"""Views that fill all four cells."""
PAPERS = {"Light": "light", "Dark": "dark", "Print": "print"}
GROUP_NAMES = {"smoke_chamber": "Smoke chamber", "": "Name and way of building"}


class Panel:
    """Everything about one design, live.

    Parameters
    ----------
    design : Design
        To start from; ``Start again`` comes back to it.
    pack : str
        Which code to check against.
    units : str
        ``feet-inches`` or ``millimetres``.
    view : str
        What is drawn first: ``all``, ``draft``, or one of the views.
    stamp : callable, optional
        A number to paint into the picture, from the design: for a benchmark that has to know which picture it sees.
    """

    def __init__(self, design: Design, pack: str = DEFAULT_PACK, units: str = FEET_INCHES, view: str = "all",
                 stamp: Callable[[Design], int] | None = None):
        self.first, self.design, self.pack, self.units, self.stamp = design, design, pack, units, stamp
        self.view, self.paper, self.airing, self.marked = view, "light", Airing(), ""
        self.waiting: dict[Callable[[], None], asyncio.TimerHandle] = {}
        self.due: asyncio.Handle | None = None
        self.listed = design
        self.result: Assessment = assess(design, pack)
        self.picture = Picture(WIDTH, HEIGHT)
        self.images = {cell: self._image(name) for name, cell in {**CELLS, "whole": WHOLE}.items()}
        self.said, self.words = w.HTML(), w.HTML()
        self.checks, self.air, self.books, self.order = w.HTML(), w.HTML(), w.HTML(), w.HTML()
        self.ticks, self.hint = w.Box(layout=w.Layout(flex_flow="row wrap")), w.HTML()
        self.words.add_class("fireplace-summary")
        inputs = all_inputs()
        self.leads = {key: Lead(key, inputs[key], self.slid, self.given) for key in LEADS}
        self.controls: dict[str, Control] = {}
        self.widget = self._lay_out()
        self._show_inputs()
        self.redraw()
        self.tell()
        self.tell_air()
        settle_memory()

    # -- what the reader does ---------------------------------------------------------------------
    def given(self, key: str, value: Any) -> None:
        """Take one new input; a bad one changes nothing and is answered in one sentence."""
        if self._take({key: value}):
            self._catch_up()

    def given_all(self, changes: dict[str, Any]) -> None:
        """Take several new inputs together, or none of them."""
        if self._take(changes):
            self._catch_up()

    def slid(self, key: str, value: Any) -> None:
        """Take a slider's place now and draw as soon as the kernel has answered, so that the hand is not kept waiting."""
        if self._take({key: value}) and self.due is None:
            try:
                self.due = asyncio.get_running_loop().call_soon(self._catch_up)
            except RuntimeError:
                self._catch_up()

    def put(self, design: Design) -> None:
        """Show another design."""
        self.design = design
        self._catch_up()

    def _take(self, changes: dict[str, Any]) -> bool:
        try:
            self.design = change(self.design, changes)
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
        """Picture first, then the rest of the assessment and its words."""
        if self.said.value:
            self.said.value = ""
        if self.marked:
            self.result = assess(self.design, self.pack)
            self._paint_marked()
        elif self.view == "draft":
            self.result = assess(self.design, self.pack)
            self._paint(air_views(self.airing.air(self.result, self.units, fresh=False), self.units))
        else:
            made = geometry(self.design)
            self._paint(live_views(self.view, made, self.units, PACKS[self.pack].check(facts(made), CLEARANCES)))
            self.result = assess(self.design, self.pack)
        self._soon(REST, self.tell)
        self._soon(LONG_REST, self.tell_air)

    def _paint_marked(self) -> None:
        """One check where it is measured, or why it has no place on this design."""
        finding = next(f for f in self.result.findings if f.key == self.marked)
        if can_show(finding):
            self._paint([(WHOLE, marked(finding, self.result.geometry, self.units))])
        else:
            self._paint(live_views(PLACES[self.marked][0], self.result.geometry, self.units, self.result.findings))
            self.said.value = html.remark(f"{finding.title} ({finding.key}) {finding.verdict} here. {finding.note}")

    def _paint(self, shown: Iterable[tuple[Cell, Sheet]]) -> None:
        stamp = None if self.stamp is None else self.stamp(self.design)
        for cell, data in self.picture.encode_changed(shown, stamp):
            self.images[cell].value = data

    def _soon(self, rest: float, act: Callable[[], None]) -> None:
        """Let a moving hand have the picture; the rest follows when it rests."""
        if act in self.waiting:
            self.waiting.pop(act).cancel()
        try:
            self.waiting[act] = asyncio.get_running_loop().call_later(rest, act)
        except RuntimeError:
            act()

    def tell(self) -> None:
        """The sentence, the findings and the order list."""
        self.words.value = html.sentence(self.result, self.units)
        self.checks.value = html.findings(self.result, self.units)
        self.order.value = html.takeoff(self.result, self.units)
        self._show_checklist()

    def tell_air(self) -> None:
        """What the air does, ten thousand evenings and all, with its pictures where they are shown; and what other books say."""
        self.air.value = html.draft(self.result, self.units)
        self.books.value = html.books(self.result, self.units)
        if self.view == "draft":
            self._paint(air_views(self.airing.air(self.result, self.units), self.units))

    # -- how it is laid out -----------------------------------------------------------------------
    def _image(self, name: str) -> w.Image:
        made = w.Image(format=FORMAT)
        made.add_class("fireplace-picture")
        made.add_class(f"fireplace-view-{name}")
        return made

    def _lay_out(self) -> w.Widget:
        self.sheet = w.Box()
        self.sheet.add_class("fireplace-sheet")
        self._set_cells()
        self.pointer = self._choice("Show a check", self._pointable(), "", self._set_marked)
        self.pointer.layout.width, self.pointer.style.description_width = "29em", "8em"
        tools = w.HBox([
            self._choice("View", VIEWS, self.view, self._set_view), self._choice(
                "Units", {"Feet and inches": FEET_INCHES, "Millimetres": MILLIMETRES}, self.units, self._set_units),
            self._choice("Code", {name: name for name in PACKS}, self.pack, self._set_pack),
            self._choice("Paper", PAPERS, self.paper, self._set_paper), self.pointer,
            self._button("Start again", lambda: self.put(self.first)),
        ], layout=w.Layout(flex_flow="row wrap"))
        groups = [("Look up a place", Lookup(self.given_all).widget), *self._groups()]
        folded = w.Accordion(children=[box for _, box in groups], titles=[name for name, _ in groups], selected_index=None)
        tables = w.Accordion(children=[self.checks, w.VBox([self.hint, self.ticks]), self.books, self.air, self.order, folded],
                             titles=("Checks", "Site checklist", "Every book", "Will it draw?", "Material takeoff",
                                     "Everything else that can be chosen"),
                             selected_index=0)
        controls = w.VBox([*(lead.widget for lead in self.leads.values()), tools])
        controls.add_class("fireplace-controls")
        page = w.VBox([w.HTML(html.STYLE), controls, self.said, self.sheet, self.words, tables])
        page.add_class("fireplace-panel")
        return page

    def _show_checklist(self) -> None:
        """The answers this book waits for; the same controls as in their groups, so one answer does for both."""
        keys = checklist(PACKS[self.pack])
        left = sum(getattr(getattr(self.design, group), name) is None for group, _, name in (key.partition(".") for key in keys))
        self.hint.value = html.checklist_hint(self.pack, left)
        shown = tuple(self.controls[key].widget for key in keys)
        if self.ticks.children != shown:
            self.ticks.children = shown

    def _groups(self) -> list[tuple[str, w.Widget]]:
        grouped: dict[str, list[Control]] = {}
        for key, spec in all_inputs().items():
            if key not in LEADS:
                control = self.controls[key] = Control(key, spec, self.given)
                grouped.setdefault(key.rpartition(".")[0], []).append(control)
        order = ["", *(f.name for f in fields(Design) if is_record(f.default))]
        return [(GROUP_NAMES.get(name, name.capitalize()), w.Box([c.widget for c in grouped[name]], layout=w.Layout(flex_flow="row wrap")))
                for name in order if name in grouped]

    def _choice(self, label: str, options: dict[str, str], value: str, act: Callable[[str], None]) -> w.Dropdown:
        made = w.Dropdown(options=options, value=value, description=label, layout=w.Layout(width="15.5em"),
                          style={"description_width": "3.5em"})
        made.add_class("fireplace-tool")
        made.observe(lambda event: act(event["new"]), "value")
        return made

    def _button(self, label: str, act: Callable[[], None]) -> w.Button:
        made = w.Button(description=label)
        made.on_click(lambda _: act())
        return made

    def _show_inputs(self, before: Design | None = None) -> None:
        """Bring the controls up to date; given the design before, only those of records that changed."""
        for key, control in (*self.leads.items(), *self.controls.items()):
            group, dot, name = key.partition(".")
            record = getattr(self.design, group)
            if before is None or getattr(before, group) is not record:
                control.show(getattr(record, name) if dot else record, self.units)

    def _set_view(self, view: str) -> None:
        self.view = view
        if self.marked:
            self.pointer.value = ""  # comes back here through _set_marked
        else:
            self._set_cells()
            self.redraw()

    def _set_cells(self) -> None:
        whole = self.marked or self.view not in IN_CELLS
        self.sheet.children = [self.images[cell] for cell in ((WHOLE,) if whole else CELLS.values())]

    def _pointable(self) -> dict[str, str]:
        """Checks of this book that have a place on a view."""
        return {"none": ""} | {f"{rule.title} ({rule.key})": rule.key for rule in PACKS[self.pack].rules if rule.key in PLACES}

    def _set_marked(self, key: str | None) -> None:
        if (key or "") != self.marked:
            self.marked = key or ""
            self._set_cells()
            self.redraw()

    def _set_units(self, units: str) -> None:
        self.units = units
        self._show_inputs()
        self.redraw()

    def _set_pack(self, pack: str) -> None:
        self.pack = pack
        self.pointer.options = self._pointable()
        self.put(self.design)

    def _set_paper(self, paper: str) -> None:
        self.paper = paper
        self.picture.set_theme(paper)
        self.redraw()

    def _repr_mimebundle_(self, **kwargs: Any) -> dict:
        shown = self.widget._repr_mimebundle_(**kwargs)
        return {**shown, "text/plain": f"Live panel: {self.first.name}"}


def panel(design: Design, **how: Any) -> Panel:
    """A live panel for one design; put it last in a cell."""
    return Panel(design, **how)
