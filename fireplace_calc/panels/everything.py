"""Every input that has no slider in front, grouped as the record groups them; and lists of pieces that grow and shrink."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import TYPE_CHECKING, Any

import ipywidgets as w

from fireplace_calc.change import all_inputs
from fireplace_calc.design import Design
from fireplace_calc.inputs import inputs_of, is_record, pieces_of
from fireplace_calc.panels.controls import Control
from fireplace_calc.panels.lookup import Lookup

if TYPE_CHECKING:
    from fireplace_calc.panels.panel import Panel

GROUP_NAMES = {"smoke_chamber": "Smoke chamber", "": "Name and way of building"}
WRAP = {"flex_flow": "row wrap"}


class Everything:
    """All other inputs of a panel's design, as one accordion of groups.

    Attributes
    ----------
    controls : dict
        Every control by the dotted key of its input; lists of pieces by theirs.
    """

    def __init__(self, panel: Panel):
        self.panel = panel
        self.controls: dict[str, Control | Pieces] = {}
        groups = [("Look up a place", Lookup(panel.given_all).widget), *self._groups()]
        self.widget = w.Accordion(children=[box for _, box in groups], titles=[name for name, _ in groups], selected_index=None)

    def _groups(self) -> list[tuple[str, w.Widget]]:
        grouped: dict[str, list[w.Widget]] = {}
        for key, spec in all_inputs().items():
            if key not in self.panel.leads:
                control = self.controls[key] = Control(key, spec, self.panel.given)
                grouped.setdefault(key.rpartition(".")[0], []).append(control.widget)
        for group in fields(Design):
            for name, declared in (pieces_of(group.default) if is_record(group.default) else {}).items():
                made = self.controls[f"{group.name}.{name}"] = Pieces(self.panel, f"{group.name}.{name}", declared.metadata)
                grouped.setdefault(group.name, []).append(made.widget)
        order = ["", *(f.name for f in fields(Design) if is_record(f.default))]
        return [(GROUP_NAMES.get(name, name.capitalize()), w.Box(grouped[name], layout=w.Layout(**WRAP)))
                for name in order if name in grouped]


class Pieces:
    """A list of like things: each with its own boxes, one more by a button, one less by another.

    Parameters
    ----------
    panel : Panel
        Takes the whole list, as records, under its key.
    key : str
        Dotted key of the list.
    declared : mapping
        The record of one piece, the list's label and help.
    """

    def __init__(self, panel: Panel, key: str, declared: Mapping[str, Any]):
        self.panel, self.key, self.record, self.label = panel, key, declared["pieces"], declared["label"]
        self.shown: tuple = ()
        self.rows: list[list[Control]] = []
        self.list = w.VBox()
        add = w.Button(description=f"Add to {self.label.lower()}", layout=w.Layout(width="auto"))
        add.on_click(lambda _: panel.given(key, (*self.shown, self.record())))
        self.widget = w.VBox([w.HTML(f"<b>{self.label}</b>. {declared['help']}"), self.list, add], layout=w.Layout(width="100%"))

    def _row(self, number: int) -> w.Widget:
        row = [Control(name, spec, lambda name, value, n=number: self._changed(n, name, value))
               for name, spec in inputs_of(self.record).items()]
        self.rows.append(row)
        remove = w.Button(description=f"Take {number + 1} away", layout=w.Layout(width="auto"))
        remove.on_click(lambda _: self.panel.given(self.key, tuple(p for k, p in enumerate(self.shown) if k != number)))
        return w.Box([w.HTML(f"{number + 1}"), *(control.widget for control in row), remove], layout=w.Layout(**WRAP))

    def _changed(self, number: int, name: str, value: Any) -> None:
        """One box of one piece, read by the input it belongs to."""
        made: list[Any] = []
        spec = inputs_of(self.record)[name]
        if self.panel.tried(lambda: made.append(replace(self.shown[number], **{name: spec.read(value)}))):
            self.panel.given(self.key, tuple(made[0] if k == number else piece for k, piece in enumerate(self.shown)))

    def show(self, pieces: tuple, units: str) -> None:
        """Bring the rows up to the list."""
        if len(pieces) != len(self.shown):
            self.rows = []
            self.list.children = [self._row(number) for number in range(len(pieces))]
        self.shown = pieces
        for row, piece in zip(self.rows, pieces, strict=True):
            for control in row:
                control.show(getattr(piece, control.key), units)
