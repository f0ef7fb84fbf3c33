"""A box to look a place up: its weather station sets altitude and winter temperature."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import ipywidgets as w

from fireplace_calc.base.places import Place, find, site
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.panels.controls.choices import row

NOTHING = "type a place first"


class Lookup:
    """Type a name, press Enter, choose a station.

    Parameters
    ----------
    put : callable
        Takes what ``change`` takes, once a station is chosen.
    """

    def __init__(self, put: Callable[[dict[str, Any]], object]) -> None:
        self.put, self.units = put, FEET_INCHES
        self.found: tuple[Place, ...] = ()
        wide, style = w.Layout(width="27em"), {"description_width": "15em"}
        self.box = w.Text(
            description="Place to look up",
            placeholder="town or airport, then Enter",
            continuous_update=False,
            style=style,
            layout=wide,
        )
        self.list = w.Dropdown(
            options=[NOTHING],
            description="Weather station",
            style=style,
            layout=w.Layout(width="44em"),
        )
        self.box.observe(lambda event: self.search(event["new"]), "value")
        self.list.observe(lambda event: self.choose(event["new"]), "value")
        self.widget = row([self.box, self.list])

    def search(self, text: str) -> None:
        """Offer what fits."""
        self.found = find(text, limit=12) if text.strip() else ()
        self.list.options = [
            f"{len(self.found)} found: choose one" if self.found else "no station of that name",
            *(self._line(place) for place in self.found),
        ]

    def choose(self, line: str) -> None:
        """Set the design there."""
        for place in self.found:
            if self._line(place) == line:
                self.put(site(place))

    def _line(self, place: Place) -> str:
        winter = (
            "no winter figure"
            if place.winter is None
            else f"winter {show(place.winter, 'temperature', self.units)}"
        )
        where = ", ".join(part for part in (place.name, place.state, place.country) if part)
        return (
            f"{where}: {show(place.altitude, 'length', 'millimetres')} up, {winter} (station"
            f" {place.wmo})"
        )
