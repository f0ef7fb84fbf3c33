"""Controls made from the declared inputs: one declaration, one control, one name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import ipywidgets as w
from traitlets import CFloat, CInt

from fireplace_calc.base.inputs import UNKNOWN, Input
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.panels.controls.reader_units import allowed, typed, with_unit
from fireplace_calc.panels.workbench.field_box import FieldBox

Report = Callable[[str, Any], object]
"""Called with a dotted key and what the reader gave."""


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
