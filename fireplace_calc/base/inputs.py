"""What an input is: one declaration that checks, sliders, tables and the file format all read."""

from __future__ import annotations

import math
from dataclasses import Field, dataclass, fields, is_dataclass
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.printing import message_units, show
from fireplace_calc.base.reading import LONGEST, to_si
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError

UNKNOWN = "unknown"
"""Text for a value nobody has told us yet. It reads back as ``None`` and makes the checks that need
it *not checked*.
"""
LONGEST_TEXT = 5000
"""A name or a note takes no more letters. [-]"""


@dataclass(frozen=True, slots=True)
class Input:
    """One thing somebody chooses.

    Attributes
    ----------
    label : str
        What the reader sees beside the control.
    kind : str
        A dimension known to ``units.to_si``, or ``count``, ``choice``, ``yes-no`` or ``text``.
    default : object
        In SI, or the choice itself.
    low, high : float or None
        Workable range, both ends included, in SI.
    choices : tuple of str
        Allowed words of a choice.
    help : str
        One line for the reader.
    book : str
        Name of this quantity in the code tables, where it has one.
    optional : bool
        True when the value may be unknown.
    """

    label: str
    kind: str
    default: Any
    low: float | None = None
    high: float | None = None
    choices: tuple[str, ...] = ()
    help: str = ""
    book: str = ""
    optional: bool = False

    @property
    def bounds(self) -> tuple[float, float]:
        """Least and greatest workable value, of an input that is a number. [SI]"""
        if self.low is None or self.high is None:
            raise TypeError(f"{self.label} is no number and has no range.")
        return self.low, self.high

    @property
    def ends(self) -> tuple[float, float]:
        """Bounds with the slack of a float: 96 in typed as 2438.4 mm is still 96 in. [SI]"""
        low, high = self.bounds
        slack = ROUNDING * max(abs(low), abs(high))
        return low - slack, high + slack

    def read(self, value: Any) -> Any:
        """Turn what came through the door into what the record holds, or say in one sentence what
        is wrong.

        Raises
        ------
        InputError
            When the value has no unit, the wrong kind, or lies outside the workable range.
        """
        if value is None or (isinstance(value, str) and value.strip().lower() == UNKNOWN):
            if self.optional:
                return None
            raise InputError(
                f"{self.label} cannot be unknown: the drawing needs it.",
                self.label,
                self.allowed(),
                value,
            )
        return getattr(self, "_read_" + self.kind.replace("-", "_"), self._read_quantity)(value)

    def allowed(self, units: str = "") -> str:
        """Workable range or list of words, as text for a message or a tooltip; without units, in
        those that messages are in.
        """
        if self.kind == "choice":
            return ", ".join(self.choices)
        if self.kind == "yes-no":
            return "yes or no"
        if self.kind == "text":
            return "any text"
        if self.kind == "count":
            return f"a whole number from {self.low} to {self.high}"
        units = units or message_units()[0]
        return f"{show(self.low, self.kind, units)} to {show(self.high, self.kind, units)}"

    def _refuse(self, received: Any, why: str) -> InputError:
        text_shown = received if isinstance(received, str) else shown(received)
        text_shown = (
            text_shown if len(text_shown) <= LONGEST else f"{text_shown[: LONGEST - 20]}..."
        )
        return InputError(
            f"{self.label} is {text_shown}, but {why}", self.label, self.allowed(), received
        )

    def _read_quantity(self, value: Any) -> float:
        number = to_si(value, self.kind, self.label)
        low, high = self.ends
        if not low <= number <= high:
            raise self._refuse(
                value,
                "{} is the workable range ({}); check the unit.".format(
                    *map(self.allowed, message_units())
                ),
            )
        return number

    def _read_count(self, value: Any) -> int:
        try:
            number = float(value)
        except (TypeError, ValueError, OverflowError):
            text_shown = shown(value)
            raise self._refuse(text_shown, f"{self.allowed()} is wanted, without a unit.") from None
        if isinstance(value, bool) or not math.isfinite(number) or number != int(number):
            raise self._refuse(
                shown(value), f"{self.allowed()} is wanted; parts cannot be set by halves."
            )
        low, high = self.bounds
        if not low <= number <= high:
            raise self._refuse(value, f"{self.allowed()} is workable.")
        return int(number)

    def _read_choice(self, value: Any) -> str:
        word = value.strip().lower().replace("_", " ") if isinstance(value, str) else value
        for choice in self.choices:
            if word == choice.lower():
                return choice
        raise self._refuse(shown(value), f"only these words are known: {self.allowed()}.")

    def _read_yes_no(self, value: Any) -> bool:
        if isinstance(value, bool):
            return value
        if isinstance(value, str) and value.strip().lower() in ("yes", "no", "true", "false"):
            return value.strip().lower() in ("yes", "true")
        raise self._refuse(shown(value), "yes or no is wanted.")

    def _read_text(self, value: Any) -> str:
        if isinstance(value, str) and plain(value):
            return value
        why = f"one line of plain text is wanted, of {LONGEST_TEXT} letters at most."
        raise self._refuse(shown(value), why)


def plain(text: str) -> bool:
    """Whether a text is one line that can be printed, and not too long."""
    return len(text) <= LONGEST_TEXT and text.isprintable()


def inputs_of(record: Any) -> dict[str, Input]:
    """Declared inputs of a record, by field name, in order of declaration."""
    return {f.name: f.metadata["input"] for f in fields(record) if "input" in f.metadata}


def pieces_of(record: Any) -> dict[str, Field[Any]]:
    """Fields of a record that hold a list of like things."""
    return {f.name: f for f in fields(record) if "pieces" in f.metadata}


def is_record(value: Any) -> bool:
    """True for a nested record of inputs, false for any other value."""
    return is_dataclass(value) and hasattr(value, "with_read")
