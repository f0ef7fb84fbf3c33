"""Controls made from the declared inputs: one declaration, one control, one name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import ceil, floor
from typing import Any

import ipywidgets as w
from traitlets import CFloat, CInt

from fireplace_calc.base.inputs import UNKNOWN, Input
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.panels.controls.reader_units import allowed, typed, with_unit
from fireplace_calc.panels.workbench.field_box import FieldBox

Report = Callable[[str, Any], object]
"""Called with a dotted key and what the reader gave."""

BOX = w.Layout(width="9.5em")
PLACE = 1e-6
"""Two places of a slider nearer than this are one. [in or mm]"""


class Control:
    """One input as a box or a list of words.

    ``show`` puts a value in without reporting it back; ``suggestions`` are texts to pick from. A
    bare number is read in the reader's units.
    """

    def __init__(
        self, key: str, spec: Input, report: Report, suggestions: tuple[str, ...] = ()
    ) -> None:
        self.key, self.spec, self.report, self.quiet = key, spec, report, False
        self.units = FEET_INCHES
        self.suggestions = suggestions
        self.widget = self._make()
        self.widget.observe(self._changed, "value")

    def _changed(self, event: Mapping[str, Any]) -> None:
        if not self.quiet:
            self.report(self.key, self._given(event["new"]))

    def _make(self) -> FieldBox:
        spec = self.spec
        self.told = f"{spec.help} Allowed: {spec.allowed(FEET_INCHES)}."
        how: dict[str, Any] = {"description": spec.label, "tooltip": self.told}
        if spec.kind in ("choice", "yes-no"):
            words = [*(spec.choices or ("yes", "no")), *[UNKNOWN] * spec.optional]
            return FieldBox(kind="choice", options=words, value=words[0], **how)
        if spec.kind == "count" and not spec.optional:
            return FieldBox(kind="count", value=spec.low, placeholder=spec.allowed(), **how)
        return FieldBox(placeholder=spec.allowed(), options=self.suggestions, **how)

    def lock(self, reason: str) -> None:
        """Take no answer, and say why; none opens it again."""
        if self.widget.disabled != bool(reason):
            self.widget.disabled = bool(reason)
            self.widget.tooltip = reason or self.told

    def refuse(self, why: str) -> None:
        """Say at the field what was wrong with its answer, which stays there to be mended."""
        self.widget.wrong = why

    def _given(self, value: Any) -> Any:
        if not isinstance(value, str) or self.spec.kind == "text":
            return value
        return with_unit(value.strip(), self.spec, self.units, self.key)

    def allow(self, takes: str, words: tuple[str, ...]) -> None:
        """Say at the field what it takes as the design stands."""
        self.widget.placeholder = takes
        if self.spec.kind == "choice":
            self.widget.options = (*words, *[UNKNOWN] * self.spec.optional)

    def show(self, value: Any, units: str) -> None:
        """Put a value in."""
        spec, self.units = self.spec, units
        self.told = f"{spec.help} Allowed: {spec.allowed(units)}."
        if not self.widget.disabled:
            self.widget.tooltip = self.told
        if spec.kind == "yes-no":
            shown = UNKNOWN if value is None else "yes" if value else "no"
        elif spec.kind == "text" or (spec.kind == "count" and not spec.optional):
            shown = value
        elif spec.kind == "choice":
            shown = UNKNOWN if value is None else value
        else:
            shown = typed(spec, value, units, self.key)
        self.widget.wrong = ""
        self.widget.placeholder = allowed(spec, units, self.key)
        if self.widget.value != shown:
            self.quiet = True
            self.widget.value = shown
            self.quiet = False


class Measure(w.FloatSlider):
    """A slider whose places are not sent back to the page that told them: it would lay itself out
    again for each.
    """

    value = CFloat(0.0).tag(sync=True, echo_update=False)


class Count(w.IntSlider):
    """The same in whole numbers."""

    value = CInt(0).tag(sync=True, echo_update=False)


class Lead:
    """A slider in front, tied to a box of the same name for whoever would rather type."""

    def __init__(self, key: str, spec: Input, on_slider: Report, typed: Report) -> None:
        self.key, self.spec, self.on_slider, self.typed = key, spec, on_slider, typed
        self.quiet, self.units, self.place = False, FEET_INCHES, 0.0
        told = f"{spec.help} Allowed: {spec.allowed()}."
        if spec.kind == "count":
            self.box = w.IntText(value=spec.low, tooltip=told, layout=BOX)
        else:
            self.box = w.Text(continuous_update=False, tooltip=told, layout=BOX)
        self.slider = self._make(spec.bounds[0])
        self.box.add_class("fireplace-tied")
        self.widget = w.HBox([self.slider, self.box])
        self.box.observe(self._typed, "value")

    def _make(self, value: float) -> w.FloatSlider | w.IntSlider:
        """A slider from end to end of what the input allows, in the units of the moment."""
        spec, feet = self.spec, self.units == FEET_INCHES
        how = {
            "description": spec.label,
            "readout": False,
            "tooltip": self.box.tooltip,
            "style": {"description_width": "9em"},
            "layout": w.Layout(width="calc(100% - 11em)", max_width="52em"),
        }
        if spec.kind == "count":
            made = Count(value=value, min=spec.low, max=spec.high, **how)
        else:
            low, high = self._ends()
            made = Measure(value=value, min=low, max=high, step=0.5 if feet else 10, **how)
        made.observe(self._slide, "value")
        return made

    def _typed(self, event: Mapping[str, Any]) -> None:
        if not self.quiet:
            self.typed(self.key, with_unit(event["new"], self.spec, self.units, self.key))

    def _slide(self, event: Mapping[str, Any]) -> None:
        value = event["new"]
        if not self.quiet and not self._snapped(value):
            self.on_slider(self.key, self._from_slider(value))

    def _snapped(self, value: float) -> bool:
        """Whether a slider only says where its own steps let it stand: the page rounds what it is
        given and reports that back, but nobody has moved it, and the design keeps its exact
        measure.
        """
        if self.spec.kind == "count":
            return False
        low, step = self.slider.min, self.slider.step
        return (
            abs(value - self.place) > PLACE
            and abs(low + floor((self.place - low) / step + 0.5) * step - value) < PLACE
        )

    def _from_slider(self, value: float) -> Any:
        if self.spec.kind == "count":
            return int(value)
        return f"{value:g} {'in' if self.units == FEET_INCHES else 'mm'}"

    def show(self, value: Any, units: str) -> None:
        """Put a value in. Other units take another slider: the page keeps the ends a slider was
        made with for its keys Home and End.
        """
        self.quiet = True
        if self.spec.kind == "count":
            self.slider.value = self.box.value = value
        else:
            self.place = round(value / (INCH if units == FEET_INCHES else MM), 6)
            if units != self.units:
                self.units, before = units, self.slider
                self.slider = self._make(self.place)
                self.widget.children = [self.slider, self.box]
                for gone in (before, before.style, before.layout):
                    gone.close()
            elif abs(self.slider.value - self.place) > PLACE:
                self.slider.value = self.place
            text = typed(self.spec, value, units, self.key)
            if self.box.value != text:
                self.box.value = text
        self.quiet = False

    def _ends(self) -> tuple[float, float]:
        """First and last whole inch or centimeter that is allowed, in the units of the slider."""
        unit, whole = (INCH, 1) if self.units == FEET_INCHES else (10 * MM, 10)
        low, high = self.spec.bounds
        first, last = ceil(low / unit - PLACE), floor(high / unit + PLACE)
        return float(first * whole), float(last * whole)
