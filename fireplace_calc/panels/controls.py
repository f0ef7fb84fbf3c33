"""Controls made from the declared inputs: one declaration, one control, one name."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor
from time import monotonic
from typing import Any

import ipywidgets as w
from traitlets import CFloat, CInt

from fireplace_calc.inputs import UNKNOWN, Input
from fireplace_calc.units import FEET_INCHES, INCH, MM, POUND, PSF, G, feet_inches, show

Report = Callable[[str, Any], None]
"""Called with a dotted key and what the reader gave."""

SETTLES = 0.8
"""How long a page may take to report back that it has given a slider other ends. [s]"""
BOX = w.Layout(width="9.5em")


def written(spec: Input, value: Any, units: str) -> str:
    """A value as the reader would type it."""
    if value is None:
        return UNKNOWN
    if spec.kind == "length" and units == FEET_INCHES:
        return feet_inches(value, finest=64)
    if spec.kind == "length":
        return f"{round(value / MM, 2):g} mm"
    if spec.kind == "area":
        return f"{round(value / INCH**2, 3):g} in2" if units == FEET_INCHES else f"{round(value, 6):g} m2"
    if spec.kind in ("ratio", "count"):
        return f"{round(value, 6):g}"
    if spec.kind == "pressure":
        return f"{round(value / PSF, 3):g} psf" if units == FEET_INCHES else f"{round(value, 2):g} Pa"
    if spec.kind == "force":
        return f"{round(value / (POUND * G), 3):g} lbf" if units == FEET_INCHES else f"{round(value / 1000, 5):g} kN"
    return {"temperature": f"{round(value - 273.15, 2):g} degC", "speed": f"{round(value, 3):g} m/s", "volume": f"{round(value, 2):g} m3",
            "flow": f"{round(value * 1000, 3):g} L/s", "mass rate": f"{round(value * 3600, 4):g} kg/h",
            "angle": f"{round(value * 57.29577951308232, 4):g} deg"}.get(spec.kind, show(value, spec.kind, units))


class Control:
    """One input as a box or a list of words.

    ``show`` puts a value in without reporting it back.
    """

    def __init__(self, key: str, spec: Input, report: Report):
        self.key, self.spec, self.quiet = key, spec, False
        self.widget = self._make()
        self.widget.observe(lambda event: self.quiet or report(self.key, self._given(event["new"])), "value")

    def _make(self) -> w.DOMWidget:
        spec, told = self.spec, f"{self.spec.help} Allowed: {self.spec.allowed()}."
        style = {"description_width": "15em"}
        layout = w.Layout(width="27em")
        if spec.kind in ("choice", "yes-no"):
            words = list(spec.choices) or ["yes", "no"]
            return w.Dropdown(options=words + [UNKNOWN] * spec.optional, description=spec.label, tooltip=told, style=style, layout=layout)
        if spec.kind == "count" and not spec.optional:
            return w.IntText(value=spec.low, description=spec.label, tooltip=told, style=style, layout=layout)
        return w.Text(description=spec.label, tooltip=told, placeholder=spec.allowed(), continuous_update=False, style=style, layout=layout)

    def _given(self, value: Any) -> Any:
        return value.strip() if isinstance(value, str) and self.spec.kind != "text" else value

    def show(self, value: Any, units: str) -> None:
        """Put a value in."""
        spec = self.spec
        if spec.kind == "yes-no":
            shown = UNKNOWN if value is None else "yes" if value else "no"
        elif spec.kind == "text" or (spec.kind == "count" and not spec.optional):
            shown = value
        elif spec.kind == "choice":
            shown = UNKNOWN if value is None else value
        else:
            shown = written(spec, value, units)
        if self.widget.value != shown:
            self.quiet = True
            self.widget.value = shown
            self.quiet = False


class Measure(w.FloatSlider):
    """A slider whose places are not sent back to the page that told them: it would lay itself out again for each."""

    value = CFloat(0.0).tag(sync=True, echo_update=False)


class Count(w.IntSlider):
    """The same in whole numbers."""

    value = CInt(0).tag(sync=True, echo_update=False)


class Lead:
    """A slider in front, tied to a box of the same name for whoever would rather type."""

    def __init__(self, key: str, spec: Input, slid: Report, typed: Report):
        self.key, self.spec, self.quiet, self.units = key, spec, False, FEET_INCHES
        self.place, self.deaf = 0.0, 0.0
        style, wide = {"description_width": "9em"}, w.Layout(width="calc(100% - 11em)", max_width="52em")
        told = f"{spec.help} Allowed: {spec.allowed()}."
        if spec.kind == "count":
            self.slider = Count(value=spec.low, min=spec.low, max=spec.high, description=spec.label, readout=False, tooltip=told,
                                style=style, layout=wide)
            self.box = w.IntText(value=spec.low, tooltip=told, layout=BOX)
        else:
            self.slider = Measure(description=spec.label, readout=False, tooltip=told, style=style, layout=wide)
            self.box = w.Text(continuous_update=False, tooltip=told, layout=BOX)
        self.box.add_class("fireplace-tied")
        self.widget = w.HBox([self.slider, self.box])
        self.slider.observe(lambda event: self.quiet or self._snapped(event["new"]) or slid(key, self._from_slider(event["new"])), "value")
        self.box.observe(lambda event: self.quiet or typed(key, event["new"]), "value")

    def _snapped(self, value: float) -> bool:
        """Whether a slider only says where its own steps let it stand: the page rounds what it is given and reports that back, but
        nobody has moved it, and the design keeps its exact measure."""
        if self.spec.kind == "count":
            return False
        if monotonic() < self.deaf:
            return True
        low, step = self.slider.min, self.slider.step
        return abs(value - self.place) > 1e-6 and abs(low + floor((self.place - low) / step + 0.5) * step - value) < 1e-6

    def _from_slider(self, value: float) -> Any:
        if self.spec.kind == "count":
            return int(value)
        return f"{value:g} {'in' if self.units == FEET_INCHES else 'mm'}"

    def show(self, value: Any, units: str) -> None:
        """Put a value in; in other units, give the slider other ends, all in one message."""
        self.quiet = True
        if self.spec.kind == "count":
            self.slider.value = self.box.value = value
        else:
            self.place = round(value / (INCH if units == FEET_INCHES else MM), 6)
            if units != self.units or self.slider.max != self._ends(units)[1]:
                with self.slider.hold_sync():
                    self._stretch(units)
                    self.slider.value = self.place
            elif abs(self.slider.value - self.place) > 1e-6:
                self.slider.value = self.place
            text = written(self.spec, value, units)
            if self.box.value != text:
                self.box.value = text
        self.quiet = False

    def _stretch(self, units: str) -> None:
        """Give the slider the ends and the step of a unit system, and hear no hand while the page takes them up."""
        self.units, self.deaf = units, monotonic() + SETTLES
        low, high = self._ends(units)
        self.slider.max = max(high, self.slider.max)
        self.slider.min, self.slider.max = low, high
        self.slider.step = 0.5 if units == FEET_INCHES else 10

    def _ends(self, units: str) -> tuple[float, float]:
        unit = INCH if units == FEET_INCHES else 10 * MM
        whole = 1 if units == FEET_INCHES else 10
        low, high = self.spec.low / unit, self.spec.high / unit
        return float(ceil(low - 1e-6) * whole), float(floor(high + 1e-6) * whole)
