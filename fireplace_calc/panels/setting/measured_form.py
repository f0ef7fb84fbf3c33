"""Boxes for one hold point: what the tape and the level say."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from datetime import datetime

import ipywidgets as w

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.panels.controls.choices import row
from fireplace_calc.pieces.standing.as_built import MeasuredTop

BARE = re.compile(r"[-+−]?[\d./ -]*\d[\d./ -]*")
"""A number without its unit, as it is read off a tape."""
LENGTHS = {
    "level": (
        "Top stands at",
        "Over what the first bed lies on, by the tape.",
    ),
    "left_right": (
        "Right side high by",
        "By the level across the top; with a minus where the left side is high.",
    ),
    "front_back": (
        "Back high by",
        "By the level front to back; with a minus where the front is high.",
    ),
    "plumb": ("Out of plumb by", "The worse face, from the plumb line."),
}
"""What can be measured: what it is called, and how."""
WORDS = {"by": "Measured by", "note": "Note"}
EXAMPLE = {FEET_INCHES: "1/8 or 2'-10 1/2\"", "millimetres": "3 or 875 mm"}


class MeasuredForm:
    """The boxes.

    Parameters
    ----------
    lifts : iterable of str
        Hold points, in order.
    units : str
        What a bare number is read in.

    Attributes
    ----------
    lift : Dropdown
    boxes : dict of str to Text
        By field of ``MeasuredTop``.
    again : Checkbox
    """

    def __init__(self, lifts: Iterable[str], units: str) -> None:
        wide, name = w.Layout(width="22em"), {"description_width": "10em"}
        self.lift = w.Dropdown(
            options=tuple(lifts), description="Hold point", layout=wide, style=name
        )
        told = {key: label for key, (label, _) in LENGTHS.items()} | WORDS
        self.boxes = {
            key: w.Text(
                description=label,
                tooltip=LENGTHS[key][1] if key in LENGTHS else "",
                continuous_update=False,
                layout=wide,
                style=name,
            )
            for key, label in told.items()
        }
        self.again = w.Checkbox(
            description="Lifted off and set again, with all that stood on it",
            indent=False,
            layout=w.Layout(width="40em", max_width="100%"),
        )
        lengths = row([self.lift, *(self.boxes[key] for key in LENGTHS)])
        self.widget = w.VBox([lengths, row([self.boxes[key] for key in WORDS]), self.again])
        self.widget.add_class("fireplace-measured")
        self.read_in(units)

    def read_in(self, units: str) -> None:
        """Take other units; what stands in the boxes stays."""
        self.units = units
        for key in LENGTHS:
            self.boxes[key].placeholder = EXAMPLE[units]

    def choose(self, lift: str) -> None:
        """Take another hold point, where there is one of that name."""
        if lift in self.lift.options:
            self.lift.value = lift

    def read(self, when: datetime) -> tuple[MeasuredTop, dict[str, str]]:
        """What was measured, and how it was typed.

        Parameters
        ----------
        when : datetime

        Returns
        -------
        tuple of (MeasuredTop, dict of str to str)

        Raises
        ------
        InputError
            When the top is missing, or a box holds no length.
        """
        typed = {key: box.value.strip() for key, box in self.boxes.items()}
        if not typed["level"]:
            raise InputError(
                f'"{LENGTHS["level"][0]}" is empty: measure the top of {self.lift.value} over what'
                " the first bed lies on.",
                LENGTHS["level"][0],
                "a length",
                "",
            )
        measured = {
            key: self._length(label, typed[key]) if typed[key] else None
            for key, (label, _) in LENGTHS.items()
        }
        level = measured.pop("level") or 0.0
        top = MeasuredTop(
            self.lift.value,
            level,
            when,
            by=typed["by"],
            again=self.again.value,
            note=typed["note"],
            **measured,
        )
        return top, typed | {"lift": top.lift, "again": "yes" if top.again else ""}

    def _length(self, label: str, text: str) -> float:
        """A length; a bare number is in the reader's units. [m]"""
        if BARE.fullmatch(text):
            text += " in" if self.units == FEET_INCHES else " mm"
        return to_si(text, "length", f'"{label}"')

    def clear(self, lift: str) -> None:
        """Be ready for the next hold point; whoever measures stays."""
        for key, box in self.boxes.items():
            box.value = box.value if key == "by" else ""
        self.again.value = False
        self.choose(lift)

    def fill(self, typed: Mapping[str, str]) -> None:
        """Put back what was typed."""
        for key, box in self.boxes.items():
            box.value = typed[key]
        self.again.value = bool(typed["again"])
        self.choose(typed["lift"])
