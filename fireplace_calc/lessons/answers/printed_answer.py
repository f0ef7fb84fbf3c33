"""How an answer is printed, in which unit a bare number is taken, and how far off it may be."""

from __future__ import annotations

from math import ceil, floor

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, INCH, POUND, SQIN

LEAST = {
    "length": INCH / 16,
    "area": 0.00035,
    "mass": 0.06,
    "pressure": 0.06,
    "temperature": 1.5,
    "count": 0.0,
    "choice": 0.0,
}
"""What rounding for print may take from an answer. [SI]"""
_GRID = {
    ("length", True): INCH / 16,
    ("length", False): 0.001,
    ("area", True): 0.1 * SQIN,
    ("area", False): 1e-4,
    ("mass", True): 0.1 * POUND,
    ("mass", False): 0.1,
}
"""Last place that is printed, by kind and whether it is in feet and inches. [SI]"""
WHOLE_FROM = 100.0
"""Pounds or kilograms that are printed without a decimal. [-]"""
METRE_FROM = 10.0
"""Lengths that are printed in meters, to two places. [m]"""


def tolerance(value: float, kind: str) -> float:
    """How far off an answer may be. [SI]"""
    if kind in ("count", "temperature", "choice"):  # degrees have no nought to take a share from
        return LEAST[kind]
    least = LEAST[kind]
    if kind == "length":  # a thin bed is told from one a sixteenth thicker
        least = min(least, max(abs(value) / 8, least / 4))
    return max(abs(value) / 200, least)


def answer_unit(kind: str, units: str, value: float) -> str:
    """The unit of a bare number.

    Parameters
    ----------
    kind : str
        Of the answer.
    units : str
        ``feet-inches`` or ``millimetres``.
    value : float
        The answer: areas of a square meter and more are told in square meters. [SI]

    Returns
    -------
    str
        Empty for a count and for a choice.

    Examples
    --------
    >>> answer_unit("area", "feet-inches", 0.05), answer_unit("area", "millimetres", 0.05)
    ('sq in', 'cm²')
    """
    feet = units == FEET_INCHES
    if kind == "area" and not feet:
        return "m²" if abs(value) >= 1.0 else "cm²"
    return {
        "length": ("mm", "in"),
        "area": ("", "sq in"),
        "mass": ("kg", "lb"),
        "pressure": ("Pa", "Pa"),
        "temperature": ("°C", "°F"),
    }.get(kind, ("", ""))[feet]


def shown(value: float, kind: str, units: str = FEET_INCHES, limit: str = "") -> str:
    r"""A value in the reader's units; small metric areas in square centimeters, so that a flue
    and a damper can be told apart.

    Parameters
    ----------
    value : float
        [SI]
    kind : str
        Of the answer.
    units : str
        ``feet-inches`` or ``millimetres``.
    limit : str
        ``least`` is rounded up and ``most`` down, so that what is printed keeps the limit.

    Returns
    -------
    str

    Examples
    --------
    >>> shown(0.05, "area", "millimetres"), shown(0.9144, "length")
    ('500 cm²', '3\'-0"')
    >>> shown(0.45, "length"), shown(0.45, "length", limit="least")
    ('1\'-5 11/16"', '1\'-5 3/4"')
    """
    feet = units == FEET_INCHES
    value = kept_limit(value, kind, units, limit)
    if kind == "area" and not feet and abs(value) < 1.0:
        return f"{value * 1e4:.0f} cm²"
    if kind == "mass" and (many := round(abs(value) / (POUND if feet else 1.0), 1)) < WHOLE_FROM:
        return f"{'-' if value < 0 else ''}{many:g} {'lb' if feet else 'kg'}"
    return show(value, kind, units)


def kept_limit(value: float, kind: str, units: str, limit: str) -> float:
    """The value on the last place that is printed, on the side of a limit that keeps it. [SI]"""
    grid = _GRID.get((kind, units == FEET_INCHES))
    if not limit or grid is None:
        return value
    if units != FEET_INCHES and (kind, abs(value) >= METRE_FROM) == ("length", True):
        grid = 0.01
    if units != FEET_INCHES and kind == "area" and abs(value) >= 1.0:
        grid = 0.001
    if kind == "mass" and abs(value) / (10 * grid) >= WHOLE_FROM:
        grid *= 10
    places = value / grid
    return (ceil(places - 1e-6) if limit == "least" else floor(places + 1e-6)) * grid
