"""SI float in, text in the reader's units out, rounded or exact."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from fractions import Fraction
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import (
    CUFT,
    DEG,
    FEET_INCHES,
    FOOT,
    INCH,
    MILLIMETRES,
    MM,
    PCF,
    POUND,
    PSF,
    SQIN,
    G,
)


@lru_cache(maxsize=4096)
def feet_inches(meters: float, finest: int = 16, inches_only: bool = False) -> str:
    r"""Length to the nearest sixteenth, as a mason reads it.

    Parameters
    ----------
    meters : float
        The length. [m]
    finest : int
        Parts of an inch it is rounded to. [-]
    inches_only : bool
        Inches all the way up, with no feet.

    Returns
    -------
    str
        With its marks, a minus sign before a negative length.

    Examples
    --------
    >>> feet_inches(0.9271)
    '3\'-0 1/2"'
    >>> feet_inches(11.99 * INCH)
    '1\'-0"'
    """
    ticks = round(abs(meters) / INCH * finest)
    sign = "-" if meters < 0 and ticks else ""
    whole, part = divmod(ticks, finest)
    feet, inches = (0, whole) if inches_only else divmod(whole, 12)
    fraction = Fraction(part, finest)
    text = f"{inches} {fraction}" if inches and fraction else f"{fraction if fraction else inches}"
    if feet and fraction and not inches:
        text = f"0 {fraction}"
    return f"{sign}{feet}'-{text}\"" if feet else f'{sign}{text}"'


def grouped(value: float, digits: int = 0, units: str = FEET_INCHES) -> str:
    """A number to so many decimals, its thousands set apart: by a comma for who reads feet and
    inches, by a space for who reads millimeters, where a comma may be taken for a decimal mark.

    Parameters
    ----------
    value : float
        In whatever unit is printed behind it. [unit]
    digits : int
        Decimals. [-]
    units : str
        The reader's: ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        Without a minus sign where nothing is left but zeros.

    Examples
    --------
    >>> grouped(12345.678, 1), grouped(12345.678, 1, "millimetres"), grouped(-0.04, 1)
    ('12,345.7', '12 345.7', '0.0')
    """
    text = f"{value:,.{digits}f}"
    text = text.replace(",", " ") if units == MILLIMETRES else text
    return text.lstrip("-") if not text.strip("-0. ") else text


_SHOWN = {
    "area": ((SQIN, "in²", 1), (1.0, "m²", 3)),
    "volume": ((CUFT, "ft³", 1), (1.0, "m³", 3)),
    "angle": ((DEG, "°", 1),) * 2,
    "pressure": ((1.0, "Pa", 1),) * 2,
    "bearing": ((PSF, "psf", 0), (1000.0, "kPa", 1)),
    "strength": ((144 * PSF, "psi", 0), (1e6, "MPa", 1)),
    "speed": ((1609.344 / 3600, "mph", 0), (1.0, "m/s", 1)),
    "mass": ((POUND, "lb", 0), (1.0, "kg", 0)),
    "mass rate": ((POUND / 3600, "lb/h", 1), (1 / 3600, "kg/h", 1)),
    "density": ((PCF, "lb/ft³", 0), (1.0, "kg/m³", 0)),
    "ratio": ((1.0, "", 3),) * 2,
    "power": ((1000.0, "kW", 1),) * 2,
    "flow": ((CUFT / 60, "cfm", 0), (0.001, "L/s", 0)),
    "air speed": ((FOOT, "ft/s", 2), (1.0, "m/s", 2)),
    "force": ((POUND * G, "lbf", 0), (1000.0, "kN", 2)),
    "difference": ((5 / 9, "°F", 0), (1.0, "K", 0)),
}


def show(value: float | None, kind: str, units: str = FEET_INCHES) -> str:
    r"""A value as text in the reader's units; the only place where numbers are rounded.

    Parameters
    ----------
    value : float or None
        The quantity; ``None`` prints as unknown. [SI]
    kind : str
        One of ``SI_UNIT``, or ``count``.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        Rounded, with its unit.

    Examples
    --------
    >>> show(0.9271, "length", "millimetres"), show(0.9271, "length")
    ('927 mm', '3\'-0 1/2"')
    """
    if value is None:
        return "unknown"
    metric = units == MILLIMETRES
    if kind == "length" and not metric:
        return feet_inches(value)
    if kind == "length":
        return (
            f"{grouped(value, 2, units)} m"
            if abs(value) >= 10
            else f"{grouped(value / MM, 0, units)} mm"
        )
    if kind == "temperature":
        return (
            f"{grouped(value - 273.15, 1, units)} °C"
            if metric
            else f"{grouped((value - 273.15) * 1.8 + 32, 0, units)} °F"
        )
    if kind == "count":
        return f"{value:g}"
    factor, unit, digits = _SHOWN[kind][metric]
    number = grouped(value / factor, digits, units)
    return f"{number}°" if unit == "°" else f"{number} {unit}".strip()


_READER: ContextVar[str] = ContextVar("units of the reader", default=FEET_INCHES)


@contextmanager
def messages_in(units: str) -> Iterator[None]:
    """While this stands, messages name quantities in a reader's units.

    Parameters
    ----------
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    before = _READER.set(units)
    try:
        yield
    finally:
        _READER.reset(before)


def message_units() -> tuple[str, str]:
    """The units that a message names first, and the other ones."""
    feet = _READER.get() == FEET_INCHES
    return (FEET_INCHES, MILLIMETRES) if feet else (MILLIMETRES, FEET_INCHES)


def named(value: float, kind: str) -> str:
    """A quantity as a message names it, in the reader's units.

    Parameters
    ----------
    value : float
        [SI]
    kind : str
        As for ``show``.
    """
    return show(value, kind, _READER.get())


def named_in_both(value: float, kind: str) -> str:
    r"""A quantity as a message names it, the other units behind it in brackets.

    Parameters
    ----------
    value : float
        [SI]
    kind : str
        As for ``show``.

    Examples
    --------
    >>> with messages_in("millimetres"):
    ...     named_in_both(0.9144, "length")
    '914 mm (3\'-0")'
    """
    first, second = message_units()
    return f"{show(value, kind, first)} ({show(value, kind, second)})"


TAPE = (1, 2, 3, 4, 6, 8, 16, 32, 64)
"""Parts of an inch that are written as a fraction."""


def inches_text(value: float) -> str:
    """Inches with a fraction, as on a tape.

    Parameters
    ----------
    value : float
        The length. [m]

    Returns
    -------
    str
        To the sixty-fourth where it is one, else six digits.

    Examples
    --------
    >>> inches_text(0.193675), inches_text(0.0011)
    ('7-5/8 in', '0.0433071 in')
    """
    near = Fraction(abs(value) / INCH).limit_denominator(64)
    whole, part = divmod(near, 1)
    text = f"{whole}-{part}" if whole and part else f"{part or whole}"
    return (
        f"{'-' if value < 0 else ''}{text} in"
        if near.denominator in TAPE
        else f"{value / INCH:.6g} in"
    )


def length_text(value: float, metric: bool = False) -> str:
    """A length as the friendliest text that reads back to it.

    Parameters
    ----------
    value : float
        Finite. [m]
    metric : bool
        Millimeters before inches.

    Returns
    -------
    str
        With its unit.

    Examples
    --------
    >>> length_text(0.193675), length_text(0.92, metric=True), length_text(1 / 3)
    ('7-5/8 in', '920 mm', '0.3333333333333333 m')
    """
    return next(text for text in _length_forms(value, metric) if to_si(text, "length") == value)


def _length_forms(value: float, metric: bool) -> Iterator[str]:
    millimeters = f"{value / MM:.9g} mm"
    yield from (millimeters, inches_text(value)) if metric else (inches_text(value), millimeters)
    yield f"{value!r} m"
