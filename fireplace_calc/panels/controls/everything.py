"""Every input that has no slider in front, grouped as the record groups them; and lists of pieces
that grow and shrink.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from functools import cached_property, lru_cache
from typing import Any

import ipywidgets as w

from fireplace_calc.base.inputs import inputs_of, is_record, pieces_of
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.panels.changer import Changer
from fireplace_calc.panels.controls.controls import Control
from fireplace_calc.panels.controls.lookup import Lookup

GROUP_NAMES = {"smoke_chamber": "Smoke chamber", "": "Name and way of building"}
WRAP = {"flex_flow": "row wrap"}


class Everything:
    """All other inputs of a panel's design, as one accordion of groups. A group, and a control, is
    made when it is first asked for: three hundred of them would keep the first picture waiting.

    Attributes
    ----------
    controls : dict
        Those made so far, by the dotted key of their input; lists of pieces by theirs.
    """

    def __init__(self, panel: Changer):
        self.panel = panel
        self.controls: dict[str, Control | Pieces] = {}
        self.groups: dict[str, list[str]] = {}
        for key in (*all_inputs(), *_lists()):
            if key not in panel.leads:
                self.groups.setdefault(key.rpartition(".")[0], []).append(key)

    def control(self, key: str) -> Control | Pieces:
        """The control of one input, or of one list of pieces."""
        if key not in self.controls:
            declared = _lists().get(key)
            made = (
                Control(key, all_inputs()[key], self.panel.set_input)
                if declared is None
                else Pieces(self.panel, key, declared)
            )
            self.controls[key] = made
            self.show(key)
        return self.controls[key]

    def show(self, key: str) -> None:
        """Bring one control up to the design."""
        self.controls[key].show(value_of(self.panel.design, key), self.panel.units)

    @cached_property
    def widget(self) -> w.Accordion:
        """The groups, each filled when it is unfolded."""
        order = ["", *(f.name for f in fields(Design) if f.name in self.groups)]
        fill = [
            lambda: [Lookup(self.panel.set_inputs).widget],
            *(
                lambda keys=self.groups[name]: [self.control(key).widget for key in keys]
                for name in order
            ),
        ]
        boxes = [w.Box(layout=w.Layout(**WRAP)) for _ in fill]
        made = w.Accordion(
            children=boxes,
            titles=["Look up a place", *(GROUP_NAMES.get(n, n.capitalize()) for n in order)],
            selected_index=None,
        )

        def unfold(event: dict) -> None:
            chosen = event["new"]
            if chosen is not None and not boxes[chosen].children:
                boxes[chosen].children = fill[chosen]()

        made.observe(unfold, "selected_index")
        return made


@lru_cache(maxsize=1)
def _lists() -> dict[str, Mapping[str, Any]]:
    """Every list of like things by its dotted key, as it is declared."""
    return {
        f"{group.name}.{name}": declared.metadata
        for group in fields(Design)
        if is_record(group.default)
        for name, declared in pieces_of(group.default).items()
    }


class Pieces:
    """A list of like things: each with its own boxes, one more by a button, one less by another.

    Parameters
    ----------
    panel : Changer
        Takes the whole list, as records, under its key.
    key : str
        Dotted key of the list.
    declared : mapping
        The record of one piece, the list's label and help.
    """

    def __init__(self, panel: Changer, key: str, declared: Mapping[str, Any]):
        self.panel, self.key, self.record, self.label = (
            panel,
            key,
            declared["pieces"],
            declared["label"],
        )
        self.shown: tuple[Any, ...] = ()
        self.rows: list[list[Control]] = []
        self.boxes: list[w.Widget] = []
        self.list = w.VBox()
        add = w.Button(description=f"Add to {self.label.lower()}", layout=w.Layout(width="auto"))
        add.on_click(lambda _: panel.set_input(key, (*self.shown, self.record())))
        self.widget = w.VBox(
            [w.HTML(f"<b>{self.label}</b>. {declared['help']}"), self.list, add],
            layout=w.Layout(width="100%"),
        )

    def _row(self, number: int) -> w.Widget:
        row = [
            Control(name, spec, lambda name, value, n=number: self._changed(n, name, value))
            for name, spec in inputs_of(self.record).items()
        ]
        self.rows.append(row)
        remove = w.Button(description=f"Take {number + 1} away", layout=w.Layout(width="auto"))
        remove.on_click(
            lambda _: self.panel.set_input(
                self.key, tuple(p for k, p in enumerate(self.shown) if k != number)
            )
        )
        return w.Box(
            [w.HTML(f"{number + 1}"), *(control.widget for control in row), remove],
            layout=w.Layout(**WRAP),
        )

    def _changed(self, number: int, name: str, value: Any) -> None:
        """One box of one piece, read by the input it belongs to."""
        made: list[Any] = []
        spec = inputs_of(self.record)[name]
        if self.panel.attempt(
            lambda: made.append(replace(self.shown[number], **{name: spec.read(value)}))
        ):
            self.panel.set_input(
                self.key,
                tuple(made[0] if k == number else piece for k, piece in enumerate(self.shown)),
            )

    def show(self, pieces: tuple[Any, ...], units: str) -> None:
        """Bring the rows up to the list."""
        while len(self.rows) < len(pieces):
            self.boxes.append(self._row(len(self.rows)))
        if len(pieces) != len(self.list.children):
            self.list.children = self.boxes[: len(pieces)]
        self.shown = pieces
        for row, piece in zip(self.rows, pieces, strict=False):
            for control in row:
                control.show(getattr(piece, control.key), units)
