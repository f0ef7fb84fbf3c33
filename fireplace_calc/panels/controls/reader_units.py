"""A quantity as a reader types it: in the units of his own trade, with or without naming them."""

from __future__ import annotations

import re
from typing import Any

from fireplace_calc.base.inputs import UNKNOWN, Input
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.units import (
    CUFT,
    DEG,
    FEET_INCHES,
    FOOT,
    INCH,
    MM,
    POUND,
    PSF,
    SQIN,
    G,
)

_UNITS: dict[str, tuple[tuple[float, str, int], tuple[float, str, int]]] = {
    "area": ((SQIN, "in2", 3), (1.0, "m2", 6)),
    "volume": ((CUFT, "ft3", 1), (1.0, "m3", 2)),
    "flow": ((CUFT / 60, "cfm", 2), (0.001, "L/s", 3)),
    "speed": ((1609.344 / 3600, "mph", 2), (1.0, "m/s", 3)),
    "mass rate": ((POUND / 3600, "lb/h", 3), (1 / 3600, "kg/h", 4)),
    "mass": ((POUND, "lb", 2), (1.0, "kg", 3)),
    "bearing": ((PSF, "psf", 1), (1000.0, "kPa", 6)),
    "strength": ((144 * PSF, "psi", 1), (1e6, "MPa", 4)),
    "force": ((POUND * G, "lbf", 3), (1000.0, "kN", 5)),
    "angle": ((DEG, "deg", 4),) * 2,
    "pressure": ((1.0, "Pa", 2),) * 2,
    "power": ((1000.0, "kW", 3),) * 2,
}
"""By kind and system: one of the unit in SI, its name, and decimals. [SI, -, -]"""
SLOPES = ("roof.pitch", "firebox.splay", "ground.footing_bottom_slope")
"""Read and written as a run of 12, as a framing square has it."""
SHARES = ("fire.moisture", "throat.damper_open")
"""Read and written in hundredths, as all waste is."""
FAR = ("site.altitude", "air.intake_to_chimney_distance", "loads.building_width")
HILLS = "loads.hill_"
"""Lengths of a site: whole feet, or meters."""
_NUMBER = r"\d+[ -]\d+/\d+|\d+/\d+|[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?|\d+\.?\d*|\.\d+"
ON_A_MARK = 1e-6
"""A length nearer than this to a mark stands on it. [1/64 in or 0.1 mm]"""
_BARE = re.compile(rf"\s*[-+−]?\s*(?:{_NUMBER})\s*")


def _far(key: str) -> bool:
    return key in FAR or key.startswith(HILLS)


def _share(key: str) -> bool:
    return key in SHARES or key.startswith("waste.")


def with_unit(text: Any, spec: Input, units: str, key: str = "") -> Any:
    """What was typed, its unit behind it where only a number was.

    Parameters
    ----------
    text : object
        As it came from the box; anything but a bare number is given back as it is.
    spec : Input
        Of the box.
    units : str
        The reader's.
    key : str
        Dotted key of the input: slopes, shares and distances have a way of their own.

    Returns
    -------
    object

    Examples
    --------
    >>> from fireplace_calc.editing.changes import all_inputs
    >>> width = all_inputs()["opening.width"]
    >>> with_unit("44", width, "feet-inches"), with_unit("44 mm", width, "feet-inches")
    ('44 in', '44 mm')
    """
    if not isinstance(text, str) or not _BARE.fullmatch(text):
        return text
    number, feet = text.strip(), units == FEET_INCHES
    if spec.kind == "length":
        near, far = ("in", "ft") if feet else ("mm", "m")
        return f"{number} {far if _far(key) else near}"
    if spec.kind == "temperature":
        return f"{number} {'degF' if feet else 'degC'}"
    if spec.kind == "ratio":
        whole = not number.startswith((".", "0")) and "/" not in number.split()[0]
        if whole and key in SLOPES:
            return f"{number}:12"
        return f"{number} %" if whole and _share(key) else number
    if spec.kind in _UNITS:
        return f"{number} {_UNITS[spec.kind][not feet][1]}"
    return text


def typed(spec: Input, value: Any, units: str, key: str = "") -> str:
    """A value as the reader would type it.

    Parameters
    ----------
    spec : Input
    value : object
        What the design holds. [SI]
    units : str
        The reader's.
    key : str
        Dotted key of the input.

    Returns
    -------
    str
        Reads back to what is shown of it.

    Examples
    --------
    >>> from fireplace_calc.editing.changes import all_inputs
    >>> typed(all_inputs()["roof.pitch"], 0.5, "feet-inches", "roof.pitch")
    '6 in 12'
    """
    feet = units == FEET_INCHES
    if value is None:
        return UNKNOWN
    if spec.kind == "length":
        if _far(key):
            return f"{value / FOOT:.0f} ft" if feet else f"{round(value, 2):g} m"
        return feet_inches(value, finest=_finest(value)) if feet else f"{_millimeters(value):g} mm"
    if spec.kind == "temperature":
        celsius = value - 273.15
        return f"{round(celsius * 1.8 + 32, 1):g} degF" if feet else f"{round(celsius, 2):g} degC"
    if spec.kind == "ratio" and key in SLOPES:
        return f"{_twelfths(value * 12)} in 12"
    if spec.kind == "ratio" and _share(key):
        return f"{round(value * 100, 4):g} %"
    if spec.kind in ("ratio", "count"):
        return f"{round(value, 6):g}"
    factor, unit, digits = _UNITS[spec.kind][not feet]
    return f"{round(value / factor, digits):.6g} {unit}"


def _twelfths(rise: float) -> str:
    """A rise, with a fraction where it is one of sixteen, else with decimals. [-]"""
    ticks = round(rise * 16)
    if abs(rise * 16 - ticks) > 1e-6:
        return f"{rise:.5g}"
    return feet_inches(ticks / 16 * INCH, inches_only=True).rstrip('"')


def _finest(length: float) -> int:
    """Sixty-fourths for a length that was typed in them, else marks of a tape. [1/in]"""
    return 64 if abs(length / INCH * 64 - round(length / INCH * 64)) < ON_A_MARK else 16


def _millimeters(length: float) -> float:
    """Whole ones, tenths only where it was typed in them. [mm]"""
    tenths = length / MM * 10
    return round(tenths) / 10 if abs(tenths - round(tenths)) < ON_A_MARK else round(length / MM)


def allowed(spec: Input, units: str, key: str = "") -> str:
    """What a box takes, from end to end, as the reader would type it.

    Parameters
    ----------
    spec : Input
    units : str
        The reader's.
    key : str
        Dotted key of the input.

    Examples
    --------
    >>> from fireplace_calc.editing.changes import all_inputs
    >>> allowed(all_inputs()["fire.moisture"], "feet-inches", "fire.moisture")
    '0 % to 70 %'
    """
    if spec.kind != "ratio" and not (spec.kind == "length" and _far(key)):
        return spec.allowed(units)
    ends = (typed(spec, end, units, key) for end in spec.bounds)
    return " to ".join(ends)
