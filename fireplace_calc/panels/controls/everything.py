"""Every input that has no slider in front, grouped as the record groups them; and lists of pieces
that grow and shrink.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from functools import cached_property, lru_cache, partial
from typing import Any

import ipywidgets as w

from fireplace_calc.base.inputs import inputs_of, is_record, pieces_of
from fireplace_calc.base.printing import messages_in
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.panels import html
from fireplace_calc.panels.changer import Changer
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.controls.controls import Control
from fireplace_calc.panels.controls.keeping import NOTE
from fireplace_calc.panels.controls.liner_choice import LINER, LINER_INPUTS, LinerControl
from fireplace_calc.panels.controls.lookup import Lookup
from fireplace_calc.panels.controls.ranges import allowed_in, read_off, words_in
from fireplace_calc.report.assumed_inputs import group_named

PLACES = "Look up a place"


class Everything:
    """All other inputs of a panel's design, as one accordion of groups. A group, and a control, is
    made when it is first asked for: three hundred of them would keep the first picture waiting.

    Attributes
    ----------
    controls : dict
        Those made so far, by the dotted key of their input; lists of pieces by theirs.
    """

    def __init__(self, panel: Changer) -> None:
        self.panel = panel
        self.controls: dict[str, Control | LinerControl | Pieces] = {}
        self.groups: dict[str, list[str]] = {}
        for key in (*all_inputs(), *_lists()):
            if key not in panel.leads and key != LINER_INPUTS[1]:
                self.groups.setdefault(key.rpartition(".")[0], []).append(key)

    def control(self, key: str) -> Control | LinerControl | Pieces:
        """The control of one input, or of one list of pieces; shape and size of the liner have one
        together.
        """
        if key in LINER_INPUTS and key not in self.controls:
            made = LinerControl(lambda: self.panel.design, self.panel.set_input)
            self.controls |= dict.fromkeys((LINER, *LINER_INPUTS), made)
            self.show(key)
        if key not in self.controls:
            declared = _lists().get(key)
            known = shipped_sets() if key == "pieces.set" else ()
            self.controls[key] = (
                Control(key, all_inputs()[key], self.panel.set_input, known)
                if declared is None
                else Pieces(self.panel, key, declared)
            )
            self.show(key)
        return self.controls[key]

    def show(self, key: str) -> None:
        """Bring one control up to the design."""
        design, control = self.panel.design, self.controls[key]
        key = LINER_INPUTS[1] if key == LINER else key
        control.show(value_of(design, key), self.panel.units)
        if not isinstance(control, Pieces):
            control.lock(read_off(design, key))
            control.widget.note = NOTE if key in self.panel.kept else ""
        if isinstance(control, Control):
            control.allow(
                allowed_in(design, key, self.panel.units),
                words_in(design, key),
            )

    @cached_property
    def widget(self) -> w.Accordion:
        """The groups, each filled when it is unfolded."""
        order = ["", *(f.name for f in fields(Design) if f.name in self.groups)]
        boxes = [row([]) for _ in (PLACES, *order)]
        made = w.Accordion(
            children=boxes,
            titles=[PLACES, *(group_named(n) for n in order)],
            selected_index=None,
        )

        def unfold(event: Mapping[str, Any]) -> None:
            chosen = event["new"]
            if chosen is None or boxes[chosen].children:
                return
            if chosen == 0:
                boxes[0].children = [Lookup(self.panel.set_inputs).widget]
            else:
                keys = self.groups[order[chosen - 1]]
                boxes[chosen].children = [self.control(key).widget for key in keys]

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

    def __init__(self, panel: Changer, key: str, declared: Mapping[str, Any]) -> None:
        self.panel, self.key, self.record = panel, key, declared["pieces"]
        self.shown: tuple[Any, ...] = ()
        self.rows: list[list[Control]] = []
        self.boxes: list[w.Widget] = []
        self.list, self.wrong = w.VBox(), w.HTML()
        label = declared["label"]
        add = button(f"Add to {label.lower()}", lambda: self._put((*self.shown, self.record())))
        self.widget = w.VBox(
            [w.HTML(f"<b>{label}</b>. {declared['help']}"), self.list, self.wrong, add],
            layout=w.Layout(width="100%"),
        )

    def _row(self, number: int) -> w.Widget:
        """Boxes of one piece and a button to remove it."""
        specs = inputs_of(self.record).items()
        boxes = [Control(name, spec, partial(self._changed, number)) for name, spec in specs]
        self.rows.append(boxes)
        remove = button(f"Remove {number + 1}", lambda: self._replace(number))
        return row([w.HTML(f"{number + 1}"), *(control.widget for control in boxes), remove])

    def _changed(self, number: int, name: str, value: Any) -> None:
        """One box of one piece, read by the input it belongs to."""
        made: list[Any] = []
        spec, piece = inputs_of(self.record)[name], self.shown[number]
        try:
            with messages_in(self.panel.units):
                made.append(replace(piece, **{name: spec.read(value)}))
        except InputError as error:
            self.rows[number][list(inputs_of(self.record)).index(name)].refuse(
                f"Not changed. {error}"
            )
        else:
            self._replace(number, *made)

    def _replace(self, number: int, *instead: Any) -> None:
        self._put((*self.shown[:number], *instead, *self.shown[number + 1 :]))

    def _put(self, pieces: tuple[Any, ...]) -> None:
        self.panel.set_input(self.key, pieces)

    def refuse(self, why: str) -> None:
        """Say over the list what was wrong with it."""
        self.wrong.value = html.trouble(why.removeprefix("Not changed. "))

    def show(self, pieces: tuple[Any, ...], units: str) -> None:
        """Bring the rows up to the list."""
        self.wrong.value = ""
        while len(self.rows) < len(pieces):
            self.boxes.append(self._row(len(self.rows)))
        if len(pieces) != len(self.list.children):
            self.list.children = self.boxes[: len(pieces)]
        self.shown = pieces
        for boxes, piece in zip(self.rows, pieces, strict=False):
            for control in boxes:
                control.show(getattr(piece, control.key), units)
