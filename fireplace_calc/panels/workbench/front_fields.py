"""What the page is told of an input that stands in front, and what comes back from it."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil, floor
from typing import Any

from fireplace_calc.base.inputs import UNKNOWN, Input
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.editing.sets.deciding import SNAPPED, decided
from fireplace_calc.editing.sets.set_sizes import offers
from fireplace_calc.panels.controls.liner_choice import (
    LINER,
    LINER_HELP,
    LINER_LABEL,
    liner_of,
    liner_options,
    liner_taken,
)
from fireplace_calc.panels.controls.ranges import allowed_in, bounds_in, read_off, words_in
from fireplace_calc.panels.controls.reader_units import typed, with_unit

PLACE = 1e-6
"""Two places of a slider nearer than this are one. [in or mm]"""


def ends(
    spec: Input, bounds: tuple[float, float], units: str, offered: bool = False
) -> tuple[float, float, float]:
    """First and last place of a slider and its step, in the reader's units: whole inches or
    centimeters that are allowed, by halves or ones; a count by ones. Where a set offers the sizes,
    whole ones round its own. [in, mm or -]
    """
    low, high = bounds
    if spec.kind == "count":
        return low, high, 1
    unit, whole = (INCH, 1) if units == FEET_INCHES else (10 * MM, 10)
    least, most = spec.bounds
    first = floor(low / unit + PLACE) if offered and low != least else ceil(low / unit - PLACE)
    last = ceil(high / unit - PLACE) if offered and high != most else floor(high / unit + PLACE)
    return float(first * whole), float(last * whole), 0.5 if units == FEET_INCHES else 10.0


def told_field(key: str, design: Design, units: str) -> dict[str, Any]:
    """One input as ``field.js`` shows it.

    Parameters
    ----------
    key : str
        Dotted key, or ``flue.shape_and_size`` for shape and size together.
    design : Design
    units : str
        The reader's.

    Returns
    -------
    dict
        ``key, label, help, kind, text, allowed, locked``; a list has ``options``, a slider
        ``low, high, step, place``.
    """
    if key == LINER:
        return {
            "key": key,
            "label": LINER_LABEL,
            "help": LINER_HELP,
            "kind": "choice",
            "text": liner_of(design),
            "allowed": "",
            "locked": read_off(design, "flue.size"),
            "options": liner_options(design, units),
        }
    spec, value = all_inputs()[key], value_of(design, key)
    told = {
        "key": key,
        "label": spec.label,
        "help": spec.help,
        "kind": "text",
        "allowed": allowed_in(design, key, units),
        "locked": read_off(design, key),
    }
    if spec.kind in ("choice", "yes-no"):
        words = [*words_in(design, key), *[UNKNOWN] * spec.optional]
        shown = value if spec.kind == "choice" else {True: "yes", False: "no"}.get(value)
        chosen = UNKNOWN if shown is None else shown
        return told | {
            "kind": "choice",
            "text": chosen,
            "options": [[word, word] for word in words],
        }
    if spec.kind == "text":
        return told | {"text": value or ""}
    if spec.kind not in ("length", "count") or spec.optional:
        return told | {"text": typed(spec, value, units, key)}
    low, high, step = ends(spec, bounds_in(design, key), units, key in offers(design))
    whole = spec.kind == "count"
    place = value if whole else round(value / (INCH if units == FEET_INCHES else MM), 6)
    return told | {
        "kind": "count" if whole else "measure",
        "text": str(value) if whole else typed(spec, value, units, key),
        "low": low,
        "high": high,
        "step": step,
        "place": place,
    }


def given(key: str, value: Any, units: str, slid: bool = False) -> Mapping[str, Any]:
    """What a field gave, as ``change`` takes it.

    Parameters
    ----------
    key : str
        Dotted key.
    value : object
        Text from a box, or a slider's place. [in, mm or -]
    units : str
        The reader's.
    slid : bool
        Whether it came from a slider.

    Examples
    --------
    >>> given("opening.width", 44.5, "feet-inches", slid=True)
    {'opening.width': '44.5 in'}
    >>> given("opening.width", "44", "feet-inches")
    {'opening.width': '44 in'}
    """
    if key == LINER:
        return liner_taken(value)
    spec = all_inputs().get(key)
    if slid and spec and not isinstance(value, str):
        if spec.kind == "count":
            return {key: int(value)}
        return {key: f"{value:g} {'in' if units == FEET_INCHES else 'mm'}"}
    if spec is None or spec.kind == "text" or not isinstance(value, str):
        return {key: value}
    return {key: with_unit(value.strip(), spec, units, key)}


def given_instead(design: Design, key: str, changes: Mapping[str, Any]) -> str:
    """What a set of pieces gives in place of what was asked; empty where it is the same.

    Parameters
    ----------
    design : Design
        As it became.
    key : str
        Dotted key of the input.
    changes : mapping
        As they were asked.
    """
    if key not in SNAPPED or key not in decided(design) or key not in changes:
        return ""
    spec = all_inputs()[key]
    asked, got = spec.read(changes[key]), value_of(design, key)
    near = 0 if spec.kind != "length" else INCH / 4
    same = asked == got if isinstance(got, str) else abs(asked - got) <= near
    return "" if same else f"The nearest that the set {design.pieces.set} gives."
