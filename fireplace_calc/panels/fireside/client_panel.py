"""The page of who will sit before the fire: the scene, what he decides, and one line of what it
comes to.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK, assess
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.panels.fireside.client_page import ClientPage
from fireplace_calc.panels.fireside.scene_pane import ScenePane
from fireplace_calc.panels.folds.folds import LONG_REST, REST
from fireplace_calc.panels.live_design import LiveDesign
from fireplace_calc.panels.memory import send_promptly, settle_memory
from fireplace_calc.panels.picture.view_pane import ViewPane
from fireplace_calc.panels.scene.scene_view import SceneView
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.workbench.bench_page import StageAnswer
from fireplace_calc.panels.workbench.front_fields import given, given_instead, told_field
from fireplace_calc.proportion.snapping import SAME, SNAPS, SliderStop, slider_stops, snapped
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.yard.kept_list import kept_prices

DECIDES = (
    "opening.width",
    "opening.standard_height",
    "opening.extension",
    "base.hearth_level",
    "opening.head",
    "surround.face",
    "mantel.family",
    "breast.form",
    "breast.place",
    "hearth.faced",
    "seat.left",
    "seat.right",
)
"""What a client decides, by the inputs' keys."""
STOPPING = (
    "opening.width",
    "opening.standard_height",
    "opening.extension",
    "base.hearth_level",
)
"""Of these, what a slider may stop at something with."""
FOR_PLANNING = "For planning: local code and the building department decide."
"""Said with every figure."""


class ClientPanel(LiveDesign):
    """A design as a client sees it.

    Parameters
    ----------
    design : Design
        The example.
    pack : str
        Code to check against.
    units : str
        ``feet-inches`` or ``millimetres``.
    decides : sequence of str, optional
        Inputs in the bar, by dotted key; the usual ones when left out.
    keep, jobs : path, optional
        Folder of one job, or of all jobs, as of ``panel``.

    Attributes
    ----------
    stops : dict
        What the sliders stop at, by name: whether it is switched on.
    """

    def __init__(
        self,
        design: Design,
        pack: str = DEFAULT_PACK,
        units: str = FEET_INCHES,
        decides: Iterable[str] | None = None,
        keep: str | os.PathLike[str] | None = None,
        jobs: str | os.PathLike[str] | None = None,
    ) -> None:
        self.page = ClientPage()
        known = all_inputs()
        self.decides = tuple(decides or (key for key in DECIDES if key in known))
        self.stops = dict.fromkeys(SNAPS, False)
        self.notes: dict[str, str] = {}
        self.refused: dict[str, str] = {}
        session = Session(design, pack, units, keep, jobs)
        made = assess(session.design, session.pack)
        self.scene = SceneView(made, units=session.units, bare=True)
        super().__init__(session, "room")
        scene = w.Box([self.scene])
        scene.add_class("fc-scene")
        self.widget = w.Box([scene, self.page])
        self.widget.add_class("fc")
        self.page.on_msg(lambda _, message, __: self._heard(message))
        self.redraw()
        self.page.first = self._told()
        settle_memory()
        send_promptly()

    # -- what the client does ---------------------------------------------------------------------
    def _heard(self, message: Mapping[str, Any]) -> None:
        do, name = message["do"], message.get("name", "")
        acts: dict[str, Callable[[], object]] = {
            "hello": lambda: self.page.send(self._told()),
            "slide": lambda: self.slide(message["key"], message["value"], message.get("way", 0)),
            "type": lambda: self.set_input(message["key"], message["value"]),
            "stop": lambda: self.stop_at(name, message["on"]),
            "undo": self.undo,
            "redo": self.redo,
        }
        acts[do]()

    def set_input(self, key: str, value: Any) -> None:
        """Take one answer; a bad one changes nothing and is answered at its field."""
        self._take(key, given(key, value, self.units), self.catch_up)

    def slide(self, key: str, value: float, way: int = 0) -> None:
        """Take a slider's place, or the nearest that it may stop at.

        Parameters
        ----------
        key : str
            Dotted key.
        value : float
            Where the slider is. [in, mm or -]
        way : int
            One step up or down by a button or a key: then the next stop that way. [-]
        """
        changes = given(key, value, self.units, slid=True)
        stop = self._stop(key, changes[key], way)
        if stop is not None:
            changes = {key: f"{stop.at!r} m"}
        why = "" if stop is None else f"Stops here: {stop.why}."
        self._take(key, changes, self.catch_up_soon, key, why)

    def _stop(self, key: str, text: Any, way: int) -> SliderStop | None:
        kinds = [name for name, on in self.stops.items() if on]
        if not kinds or key not in STOPPING:
            return None
        geometry = build_geometry(self.design)
        here = value_of(self.design, key)
        if way:
            stops = slider_stops(geometry, key, kinds)
            ahead = [s for s in stops if way * (s.at - here) > SAME]
            return min(ahead, key=lambda s: abs(s.at - here), default=None)
        found = snapped(geometry, key, all_inputs()[key].read(text), kinds)
        return found if found.why else None

    def _take(
        self,
        key: str,
        changes: Mapping[str, Any],
        follow: Callable[[], None],
        run: str = "",
        why: str = "",
    ) -> None:
        """Take a change, and say at its field why it stops there or what a set gave instead."""
        try:
            self.session.take(changes, run=run)
        except InputError as error:
            self.refused[key] = f"Not changed. {error}"
            self.page.send({"wrong": {key: self.refused[key]}, "done": True})
        else:
            self.notes = {key: given_instead(self.design, key, changes) or why}
            follow()

    def stop_at(self, name: str, on: bool) -> None:
        """Let the sliders stop at guides, whole courses or the sizes of a set, or no longer."""
        if name in self.stops:
            self.stops[name] = on
        self.page.send({"stops": list(self.stops.items())})

    # -- what follows -----------------------------------------------------------------------------
    def followers(self) -> tuple[tuple[float, Callable[[], None]], ...]:
        """The fields at once, the line and what is spoken a little later. [s]"""
        return (REST, self.show_inputs), (LONG_REST, self._on_idle)

    def _on_idle(self) -> None:
        self.page.send({"line": self._line()})
        self.view_pane.on_idle(self.result, self.units)

    def show_inputs(self, every: bool = False) -> None:
        """Bring the fields up to the design."""
        self.refused.clear()
        self.page.send({"fields": self._fields(), "done": True})

    def _fields(self) -> list[dict[str, Any]]:
        told = [told_field(key, self.design, self.units) for key in self.decides]
        return [one | {"note": self.notes.get(one["key"], "")} for one in told]

    def _line(self) -> dict[str, str]:
        """What falls short, price and weight; what each stands on, on request."""
        said = option_words(self.result, self.units, kept_prices(self.session.words))
        return {
            "short": f"{said.headline}.",
            "price": f"Materials {said.price}.",
            "weight": f"{said.weight} as it stands.",
            "more": " ".join((*(f"{line}." for line in said.short), said.without, said.draft)),
            "planning": FOR_PLANNING,
        }

    def _told(self) -> dict[str, Any]:
        return {
            "name": self.design.name,
            "fields": self._fields(),
            "stops": list(self.stops.items()),
            "line": self._line(),
        }

    def make_pane(self, view: str, stamp: Callable[[Design], int] | None) -> ViewPane:
        """The scene."""
        return ScenePane(self.scene)

    def make_answer(self) -> StageAnswer:
        """Over the bar."""
        return StageAnswer(self.page)

    def __str__(self) -> str:
        return f"As a client sees it: {self.session.first.name}"
