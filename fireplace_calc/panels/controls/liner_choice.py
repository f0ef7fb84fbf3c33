"""The flue liner as one choice: shape and size together, with the area that is left for smoke."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from fireplace_calc.base.printing import show
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import flue_bore, liners
from fireplace_calc.panels.workbench.field_box import FieldBox

LINER = "flue.shape_and_size"
"""Key of the choice: no input of its own, but two at once."""
LINER_LABEL, LINER_HELP = "Flue liner", "Shape and size together, with the area left for smoke."
LINER_INPUTS = ("flue.shape", "flue.size")
"""What it chooses."""
OWN = "a size of its own"
"""What is chosen where the bore is entered, and no liner of the tables."""


def liner_of(design: Design) -> str:
    """Name of the design's liner in the list."""
    flue = design.flue
    for name, inputs in liners().items():
        if inputs["flue.shape"] == flue.shape and inputs["flue.size"] == flue.size:
            return name
    return OWN


def liner_options(design: Design, units: str) -> list[list[str]]:
    """Every liner of the tables with its area, the published net area where there is one; last a
    size of its own.
    """
    made = []
    for name, inputs in (*liners().items(), (OWN, {"flue.size": "own"})):
        shape = inputs.get("flue.shape", design.flue.shape)
        bore = flue_bore(replace(design.flue, shape=shape, size=inputs["flue.size"]))
        area = bore.area if bore.table_area is None else bore.table_area
        made.append([name, f"{name}, {show(area, 'area', units)}"])
    return made


def liner_taken(name: str) -> Mapping[str, str]:
    """The inputs that choose a liner by its name in the list."""
    return liners().get(name, {"flue.size": "own"})


class LinerControl:
    """The choice as a list; shown, locked and refused like any other control.

    Parameters
    ----------
    design : callable
        Gives the design as it stands.
    report : callable
        Called with the key of the choice and the name that was chosen.
    """

    def __init__(self, design: Callable[[], Design], report: Callable[[str, Any], object]) -> None:
        self.design, self.report, self.quiet = design, report, False
        self.names: dict[str, str] = {}
        self.widget = FieldBox(kind="choice", description=LINER_LABEL, tooltip=LINER_HELP)
        self.widget.observe(lambda event: self._chosen(event["new"]), "value")

    def _chosen(self, words: str) -> None:
        if not self.quiet and words in self.names:
            self.report(LINER, self.names[words])

    def show(self, _: Any, units: str) -> None:
        """Put the design's liner in."""
        design = self.design()
        options = liner_options(design, units)
        self.names = {words: name for name, words in options}
        now = liner_of(design)
        self.quiet = True
        self.widget.options = tuple(self.names)
        self.widget.value = next(words for name, words in options if name == now)
        self.widget.wrong = ""
        self.quiet = False

    def lock(self, reason: str) -> None:
        """Take no answer, and say why; none opens it again."""
        self.widget.disabled, self.widget.tooltip = bool(reason), reason or LINER_HELP

    def refuse(self, why: str) -> None:
        """Say at the list what was wrong with the choice."""
        self.widget.wrong = why
