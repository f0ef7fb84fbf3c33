"""The lit scene as a widget: what is sent, and what the page asks for."""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Mapping
from dataclasses import asdict
from itertools import count
from typing import Any

import anywidget
import traitlets

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.printing import show
from fireplace_calc.base.resources import page_source
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.style import HATCHES, THEMES
from fireplace_calc.panels.scene.standing_room import StandingRoom
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.scene.picked import about
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.shown_masonry import STATES, last_step
from fireplace_calc.scene.sky import sun_table
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.scene.whole_scene import WholeScene, gather_scene
from fireplace_calc.scene.wire import COLUMNS, pack_fireplace, pack_layouts, pack_setting

FOLDER = "panels/scene"
"""Where its page is, within the package."""
HOURS = ("Day", "Overcast", "Dusk", "Night")
"""Lights to choose from."""
HELD = 8
"""Forms of so many changes are taken to be on the page still, which keeps twice as many. [-]"""
PATIENCE = 30.0
"""A picture that takes longer has been lost with its page. [s]"""


class SceneView(anywidget.AnyWidget):
    """The fireplace in its room, lit; put it last in a cell, or among the children of a panel.

    Parameters
    ----------
    what : Design or Assessment
        What to show.
    units : str
        ``feet-inches`` or ``millimetres``.
    mode : str
        One of ``STATES``.
    step : int
        Step by step, what stands after it is shown; -1 shows all. [-]
    bare : bool
        Only eyes and light to choose, as for a client.

    Attributes
    ----------
    hour : str
        One of ``HOURS``.
    result : Assessment
        What is shown.
    """

    _esm = page_source(FOLDER, "scene.js")
    setting = traitlets.Dict().tag(sync=True)
    fireplace = traitlets.Dict().tag(sync=True)
    columns = traitlets.Dict().tag(sync=True)
    layouts = traitlets.Dict().tag(sync=True)
    sun = traitlets.Dict().tag(sync=True)
    looks = traitlets.Dict().tag(sync=True)
    hatches = traitlets.Dict().tag(sync=True)
    words = traitlets.Dict().tag(sync=True)
    units = traitlets.Unicode(FEET_INCHES).tag(sync=True)
    mode = traitlets.Enum(STATES, "room").tag(sync=True)
    step = traitlets.Int(-1).tag(sync=True)
    steps = traitlets.Int(0).tag(sync=True)
    bare = traitlets.Bool(False).tag(sync=True)
    hour = traitlets.Enum(HOURS, "Day").tag(sync=True)

    def __init__(self, what: Design | Assessment, **how: Any) -> None:
        super().__init__(
            looks={name: _plain(asdict(stuff)) for name, stuff in stuffs().items()},
            hatches=_hatches(),
            **how,
        )
        self._held: set[str] = set()
        self._sun_of: float | str | None = "nobody's yet"
        self._pictures: dict[int, asyncio.Future[bytes]] = {}
        self._number = count(1)
        self._forms: deque[frozenset[str]] = deque(maxlen=HELD)
        self._staying: frozenset[str] = frozenset()
        self.standing = StandingRoom()
        self.put(what)
        self.observe(lambda _: self._show(), ("mode",))
        self.observe(lambda _: self.say(), ("units",))
        self.on_msg(self._heard)

    def put(self, what: Design | Assessment, moving: bool = False) -> None:
        """Show another design from where the reader stands; only what has changed is sent.

        Parameters
        ----------
        what : Design or Assessment
        moving : bool
            While a hand moves a slider its words are left for later: ``say`` brings them.
        """
        self.result = what if isinstance(what, Assessment) else assess(what, DEFAULT_PACK)
        self._show()
        if not moving:
            self.say()

    def _show(self) -> None:
        self.scene: WholeScene = gather_scene(self.result, self.mode)
        layouts = pack_layouts(self.scene.layouts, self._held)
        self._held.update(layouts["patterns"])
        stays, follows = self.standing.parted(self.scene.setting)
        held = {name for named in self._forms for name in named} | self._staying
        with self.hold_sync():
            if stays is not None:
                self.setting = pack_setting(stays, held)
                self._staying = frozenset(self.setting["form"])
            self.layouts = layouts
            if self._sun_of != (of := self.result.design.site.latitude):
                self._sun_of, self.sun = of, sun_table(self.result.design)
            packed = pack_fireplace(
                (*self.scene.fireplace, *follows),
                self.scene.measures,
                self.scene.standpoints,
                self.result.design.name,
                held,
            )
            self.columns = {column: packed.pop(column) for column in COLUMNS}
            self.fireplace = packed
            self._forms.append(frozenset(packed["form"]))

    def say(self) -> None:
        """What is said of the whole, for who does not see it."""
        frame, units = self.result.geometry.frame, self.units
        wide, high = 2 * frame.half_width, frame.clear_top - frame.hearth
        self.steps = last_step(self.result)
        self.words = {
            "title": self.result.design.name,
            "opening": f"The opening is {show(wide, 'length', units)} wide and"
            f" {show(high, 'length', units)} high.",
            "short": shortfall(self.result).headline,
        }

    # -- what the page asks for -------------------------------------------------------------------
    def _heard(self, _: Any, message: Mapping[str, Any], buffers: list[Any]) -> None:
        if message.get("ask") == "about":
            self._tell_about(message["key"])
        elif message.get("ask") == "ready":
            self._tell_all()
        elif "picture" in message:
            waiting = self._pictures.pop(message["picture"], None)
            if waiting is not None and not waiting.done():
                waiting.set_result(bytes(buffers[0]))

    def _tell_all(self) -> None:
        """A page that has just been opened holds nothing yet."""
        self._held.clear()
        self._forms.clear()
        self._staying = frozenset()
        self.standing = StandingRoom()
        self._show()

    def _tell_about(self, key: str) -> None:
        shown = self.scene.fireplace
        if self.mode == "cut":  # of the half that is shown the whole is told
            shown = gather_scene(self.result, "whole").fireplace
        thing = next((t for t in shown if t.key == key), None)
        if thing is not None:
            self.send({"tell": "about", **about(self.result, thing, self.units)})

    async def picture(
        self,
        width: int = 1200,
        height: int = 800,
        eye: str | Standpoint = "Standing",
        hour: str = "",
    ) -> bytes:
        """A fine picture of the scene, made by the page that shows it.

        Parameters
        ----------
        width, height : int
            [px]
        eye : str or Standpoint
            One of the scene's by its name, or any other; from where the reader looks when empty.
        hour : str
            One of ``HOURS``; the reader's own when empty.

        Returns
        -------
        bytes
            PNG.

        Raises
        ------
        TimeoutError
            When no page shows it.
        """
        number = next(self._number)
        waiting = self._pictures[number] = asyncio.get_running_loop().create_future()
        told = asdict(eye) if isinstance(eye, Standpoint) else eye
        asked = {"id": number, "width": width, "height": height, "eye": told, "hour": hour}
        self.send({"ask": "picture", **asked})
        try:
            return await asyncio.wait_for(waiting, PATIENCE)
        except TimeoutError:
            raise TimeoutError("No page shows the scene: show it, then ask again.") from None
        finally:
            self._pictures.pop(number, None)


def _plain(stuff: dict[str, Any]) -> dict[str, Any]:
    """A stuff without where it is from."""
    return {name: value for name, value in stuff.items() if name != "source"}


def _hatches() -> dict[str, Any]:
    """How cut materials are marked, as on the section, with the tone of each."""
    light = THEMES["light"]
    return {
        name: {**asdict(hatch), "tone": light.tones.get(name, light.paper), "ink": light.ink}
        for name, hatch in HATCHES.items()
    }
