"""One line of the survey: where the tape is held, and which input the reading fills."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from fireplace_calc.base.inputs import Input, inputs_of
from fireplace_calc.design.surround import Trim
from fireplace_calc.editing.changes import all_inputs

CANNOT_REACH = "cannot reach"
"""What is entered for something that nobody can get at; it is never taken for an answer."""
ROOM, UP, ROOF, HIDDEN, SIGNS = (
    "In the room",
    "Looking up, with lamp and mirror",
    "On the roof",
    "Attic, crawl space, basement",
    "Signs of trouble",
)
STATIONS = (ROOM, UP, ROOF, HIDDEN, SIGNS)
"""Where whoever measures stands, in the order he walks."""
GREATEST, LEAST = "greatest", "least"
NOTE = "note"
"""Signs of trouble go into the design's note: no input of a drawing holds them."""


@dataclass(frozen=True, slots=True)
class SurveyEntry:
    """One thing to measure or to look at.

    Attributes
    ----------
    key : str
        Plain name; no two entries share one.
    station : str
        One of ``STATIONS``.
    hold : str
        Where the tape is held, or what is looked for.
    fills : str
        Dotted key of the input, or of the list of pieces, that takes it.
    spec : Input
        What may be read: kind, range, words.
    readings : tuple of str
        Names of repeated readings; empty where one does.
    take : str
        ``greatest`` or ``least`` of the readings.
    safe : str
        Why that one is on the safe side.
    sign : str
        Of a sign of trouble: what a yes means, and what to do.
    """

    key: str
    station: str
    hold: str
    fills: str
    spec: Input
    readings: tuple[str, ...] = ()
    take: str = ""
    safe: str = ""
    sign: str = ""

    @property
    def boxes(self) -> tuple[str, ...]:
        """Name of each place to write a reading."""
        return tuple(f"{self.key}, {name}" for name in self.readings) or (self.key,)

    def reading_of(self, box: str) -> str:
        """Which of the readings a box holds; nothing where there is one."""
        return box.removeprefix(self.key).removeprefix(", ")


Make = Callable[..., SurveyEntry]


def at(station: str) -> Make:
    """A maker of entries at one station.

    Parameters
    ----------
    station : str
        One of ``STATIONS``.

    Returns
    -------
    callable
        Takes key, where to hold the tape and what it fills, then names of the readings, which one
        is taken and why; ``spec`` in place of the input's own, and ``allowed`` for a range of its
        own, in words.
    """

    def make(
        key: str,
        hold: str,
        fills: str,
        readings: tuple[str, ...] = (),
        take: str = "",
        safe: str = "",
        spec: Input | None = None,
    ) -> SurveyEntry:
        found = spec if spec is not None else all_inputs()[fills]
        label = key[0].upper() + key[1:]
        return SurveyEntry(
            key, station, hold, fills, replace(found, label=label), readings, take, safe
        )

    return make


def sign(key: str, hold: str, means: str) -> SurveyEntry:
    """An entry for a sign of trouble: yes or no.

    Parameters
    ----------
    key : str
    hold : str
        What is looked for.
    means : str
        What a yes means, and what to do.
    """
    spec = Input(key[0].upper() + key[1:], "yes-no", None, help=hold, optional=True)
    return SurveyEntry(key, SIGNS, hold, NOTE, spec, sign=means)


def of_trim(name: str) -> Input:
    """An input of a piece of trim, by its field."""
    return inputs_of(Trim)[name]


def own_length(label: str, low: float, high: float) -> Input:
    """What may be read for a length that is no input itself.

    Parameters
    ----------
    label : str
    low, high : float
        Ends of the workable range. [m]
    """
    return Input(label, "length", None, low, high, optional=True)


def reads_number(spec: Input) -> bool:
    """Whether a tape reads it: no word, and no yes or no."""
    return spec.kind not in ("choice", "yes-no", "text")


def answer(value: Any) -> str:
    """A word, or yes or no, as it is entered."""
    return ("yes" if value else "no") if isinstance(value, bool) else str(value)
