"""Units at the door: text with a unit in, SI float out; SI float in, text in the reader's units
out.

Inside the package every number is an SI float. This is the only module that knows pint, and it
wakes pint only for texts the short rules below cannot read.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from functools import lru_cache
from typing import Any
from unicodedata import normalize

_IN, _FT, _LB = Fraction("0.0254"), Fraction("0.3048"), Fraction("0.45359237")
_PSF = _LB * Fraction("9.80665") / _FT**2
_H, _MILE = Fraction(3600), Fraction("1609.344")

INCH, FOOT, MM = float(_IN), float(_FT), 0.001
SQIN, SQFT = float(_IN**2), float(_FT**2)
CUFT, CUYD = float(_FT**3), float(27 * _FT**3)
POUND, G, DEG = float(_LB), 9.80665, math.pi / 180
PSF, PCF = float(_PSF), float(_LB / _FT**3)

FEET_INCHES, MILLIMETRES = "feet-inches", "millimetres"
SYSTEMS = (FEET_INCHES, MILLIMETRES)

SI_UNIT = {
    "length": "m",
    "area": "m**2",
    "volume": "m**3",
    "angle": "rad",
    "temperature": "K",
    "pressure": "Pa",
    "speed": "m/s",
    "mass": "kg",
    "mass rate": "kg/s",
    "density": "kg/m**3",
    "ratio": "",
    "power": "W",
    "flow": "m**3/s",
    "force": "N",
}
"""Kinds of quantity, and the SI unit each is held in."""

EXAMPLES = {
    "length": """"36 in", "3'-0\\"" or "914 mm\"""",
    "area": '"864 in2" or "0.56 m2"',
    "volume": '"400 m3" or "14000 ft3"',
    "angle": '"45 deg"',
    "temperature": '"-10 degC" or "14 degF"',
    "pressure": '"5 Pa"',
    "speed": '"50 m/s" or "115 mph"',
    "mass": '"20 kg" or "44 lb"',
    "mass rate": '"3.5 kg/h"',
    "density": '"2300 kg/m3"',
    "ratio": '"0.2", "20 %" or "7:12"',
    "power": '"10 kW"',
    "flow": '"50 L/s" or "100 cfm"',
    "force": '"500 lbf" or "2 kN"',
}

_DEG = Fraction(DEG)
FACTORS: dict[str, dict[str, Fraction]] = {
    "length": {
        "in": _IN,
        "inch": _IN,
        "inches": _IN,
        '"': _IN,
        "ft": _FT,
        "foot": _FT,
        "feet": _FT,
        "'": _FT,
        "mm": Fraction(1, 1000),
        "cm": Fraction(1, 100),
        "m": Fraction(1),
        "yd": 3 * _FT,
    },
    "area": {
        "in2": _IN**2,
        "ft2": _FT**2,
        "mm2": Fraction(1, 10**6),
        "cm2": Fraction(1, 10**4),
        "m2": Fraction(1),
    },
    "volume": {"ft3": _FT**3, "yd3": 27 * _FT**3, "m3": Fraction(1), "L": Fraction(1, 1000)},
    "angle": {"deg": _DEG, "degrees": _DEG, "°": _DEG, "rad": Fraction(1)},
    "pressure": {"Pa": Fraction(1), "kPa": Fraction(1000), "psf": _PSF, "psi": 144 * _PSF},
    "speed": {"m/s": Fraction(1), "mph": _MILE / _H, "km/h": 1000 / _H},
    "mass": {"kg": Fraction(1), "lb": _LB, "t": Fraction(1000)},
    "mass rate": {"kg/h": 1 / _H, "kg/s": Fraction(1), "lb/h": _LB / _H},
    "density": {"kg/m3": Fraction(1), "pcf": _LB / _FT**3, "lb/ft3": _LB / _FT**3},
    "ratio": {"": Fraction(1), "%": Fraction(1, 100)},
    "power": {"W": Fraction(1), "kW": Fraction(1000)},
    "force": {"N": Fraction(1), "kN": Fraction(1000), "lbf": _LB * Fraction("9.80665")},
    "flow": {"m3/s": Fraction(1), "L/s": Fraction(1, 1000), "m3/h": 1 / _H, "cfm": _FT**3 / 60},
}
"""What one of each unit is in SI, exactly, so that 3'-0", 3 ft and 36 in come out as the same
float.
"""

PRINTED = {
    "in": INCH,
    "ft": FOOT,
    "m": 1.0,
    "mm": MM,
    "in2": SQIN,
    "ft2": SQFT,
    "m2": 1.0,
    "mm2": 1e-6,
    "ft3": CUFT,
    "yd3": CUYD,
    "m3": 1.0,
    "deg": DEG,
    "psf": PSF,
    "lb": POUND,
    "kg": 1.0,
    "-": 1.0,
    "count": 1.0,
    "%": 0.01,
    "Pa": 1.0,
    "ft/s": FOOT,
    "m/s": 1.0,
    "K": 1.0,
    "psi": 144 * PSF,
    "kg/m3": 1.0,
    "lbf": POUND * G,
    "ratio": 1.0,
}
"""Units that rules and tables print in, and what one of each is in SI."""

_NUMBER = r"(?:\d+[ -]\d+/\d+|\d+/\d+|\d+\.?\d*(?:e[-+]?\d{1,3}(?!\d))?|\.\d+)"
_PLAIN = re.compile(rf"\s*([-+−]?)\s*({_NUMBER})\s*([^\d\s].*)?\s*$", re.IGNORECASE)
_FOOT = r"(?:'|ft\b|feet\b|foot\b|ft(?=[\d ./-]+in))"
_FEET = re.compile(
    rf"""\s*([-+−]?)\s*({_NUMBER})\s*{_FOOT}\s*-?\s*({_NUMBER})\s*(?:"|in\b|inch\b|inches\b)?\s*$""",
    re.IGNORECASE,
)
_RISE = re.compile(rf"\s*({_NUMBER})\s*(?::|/|\s+in\s+)\s*({_NUMBER})\s*$", re.IGNORECASE)

_UNIT = re.compile(r"[A-Za-zµ°](?:[A-Za-zµ°. /*^()-]|(?<=[A-Za-z*^-])[1-4](?!\d))*")
"""What may stand behind a number: one unit, with powers. No second number, and no sum."""
_THOUSANDS = re.compile(r"(?<![\d.,])[1-9]\d{0,2}(?:[, \u00a0\u202f]\d{3})+(?![\d,/])")
_SMALL = re.compile(" ?([¼-¾⅐-⅞])")

LONGEST = 80
"""A quantity takes no more letters than this. [-]"""

_POWER = re.compile(r"[\d)]\s*(?:\*\*|\^)|(?:\*\*|\^)\s*\(?\s*[-+]?\d\d")
"""A number raised to a power, or a unit to a high one: no quantity anybody writes, and years of
sums if nested.
"""


class InputError(ValueError):
    """Something that came in cannot be used; the message is one sentence for the reader.

    Attributes
    ----------
    name, allowed, received : str
        Which input, what it may be, what came.
    """

    def __init__(self, message: str, name: str = "", allowed: str = "", received: Any = ""):
        super().__init__(message)
        self.name, self.allowed, self.received = name, allowed, received


@lru_cache(maxsize=1)
def registry():
    """The one pint registry of the project, made when first needed."""
    import pint

    return pint.UnitRegistry(cache_folder=None, autoconvert_offset_to_baseunit=True)


def _number(text: str) -> Fraction:
    whole = re.fullmatch(r"(\d+)[ -](\d+)/(\d+)", text)
    return (
        int(whole[1]) + Fraction(int(whole[2]), int(whole[3]))
        if whole
        else Fraction(text.rstrip("."))
    )


def _refuse(name: str, kind: str, received: Any, why: str) -> InputError:
    return InputError(
        f"{name or kind.capitalize()} {why}: write {EXAMPLES[kind]}.",
        name,
        EXAMPLES[kind],
        received,
    )


def to_si(value: Any, kind: str, name: str = "") -> float:
    """Read a quantity.

    Parameters
    ----------
    value : str or pint quantity
        With its unit. Feet and inches as a mason writes them, fractions too. Only a ratio may be a
        bare number.
    kind : str
        One of ``SI_UNIT``.
    name : str
        The input's label, for the message.

    Returns
    -------
    float
        In the SI unit of its kind.

    Raises
    ------
    InputError
        For a bare number, an unknown unit, the wrong kind of unit, or something that is no finite
        number.

    Examples
    --------
    >>> to_si("3'-0\\"", "length") == to_si("36 in", "length") == to_si("3 ft", "length")
    True
    >>> to_si("7:12", "ratio")
    0.5833333333333334
    """
    if isinstance(value, str):
        return _read(value, kind, name)
    if hasattr(value, "magnitude") and hasattr(value, "units"):
        try:
            number = _held(value, kind)
        except Exception:
            raise _refuse(name, kind, value, f"is {value}, which is no {kind}") from None
        return _finite(number, kind, name, value)
    if kind == "ratio" and isinstance(value, (int, float)) and not isinstance(value, bool):
        return (
            _finite(math.inf, kind, name, "beyond all bounds")
            if abs(value) > 1e300
            else _finite(float(value), kind, name, value)
        )
    if isinstance(value, (int, float)):
        raise _refuse(name, kind, value, f"is {value}, which has no unit")
    raise _refuse(name, kind, value, f"is {value!r}, which is no {kind}")


def _held(quantity: Any, kind: str) -> float:
    """A pint quantity in SI; an angle is no ratio and a ratio no angle, though both are pure
    numbers to pint.
    """
    if kind in ("ratio", "angle") and ("radian" in str(quantity.to_root_units().units)) != (
        kind == "angle"
    ):
        raise ValueError(kind)
    return float(quantity.to(SI_UNIT[kind]).magnitude)


def _finite(number: float, kind: str, name: str, received: Any) -> float:
    if not math.isfinite(number):
        raise _refuse(name, kind, received, f"is {received}, which is no finite number")
    return number


def _by_rule(text: str, kind: str) -> float | None:
    """Read the common texts without waking pint; nothing when none of the rules fits."""
    if kind == "length" and (m := _FEET.match(text)):
        return float((-1 if m[1] == "-" else 1) * (_number(m[2]) * _FT + _number(m[3]) * _IN))
    if kind == "ratio" and (m := _RISE.match(text)):
        return float(_number(m[1]) / _number(m[2]))
    if m := _PLAIN.match(text):
        number = (-1 if m[1] == "-" else 1) * _number(m[2])
        unit = (m[3] or "").strip().replace("^", "").replace("**", "")
        if (factor := FACTORS.get(kind, {}).get(unit)) is not None:
            return float(number * factor)
        if kind == "temperature" and unit.lower() in ("degc", "c", "°c"):
            return float(number + Fraction("273.15"))
        if kind == "temperature" and unit.lower() in ("degf", "f", "°f"):
            return float((number + Fraction("459.67")) * 5 / 9)
    return None


@lru_cache(maxsize=4096)
def _read(given: str, kind: str, name: str) -> float:
    if len(given) > LONGEST:
        raise _refuse(
            name, kind, f"{given[:20]}...", f"is {given[:20]!r} and {len(given) - 20} letters more"
        )
    text = (
        given.replace("′", "'")
        .replace("″", '"')
        .replace("”", '"')
        .replace("’", "'")
        .replace("''", '"')
        .replace("−", "-")
    )
    text = (
        _THOUSANDS.sub(lambda m: re.sub(r"\D", "", m[0]), text).replace("²", "2").replace("³", "3")
    )
    text = _SMALL.sub(lambda m: " " + normalize("NFKC", m[1]).replace("⁄", "/"), text).strip()
    try:
        number = _by_rule(text, kind)
    except ZeroDivisionError:
        raise _refuse(name, kind, given, f"is {given}, which divides by nothing") from None
    except OverflowError:
        raise _refuse(name, kind, given, f"is {given}, which is no finite number") from None
    if number is not None:
        return _finite(number, kind, name, given)
    plain = _PLAIN.match(text)
    if plain and not (plain[3] or "").strip():
        raise _refuse(name, kind, given, f"is {given}, which has no unit")
    if "," in text:
        raise _refuse(
            name,
            kind,
            given,
            f"is {given!r}, with a comma that is no mark of thousands; decimals take a point",
        )
    if plain is None or not _UNIT.fullmatch(plain[3].strip()) or _POWER.search(text):
        raise _refuse(name, kind, given, f"is {given!r}, which is no {kind}")
    try:
        number = _held(registry().Quantity(text), kind)
    except Exception:
        raise _refuse(name, kind, given, f"is {given!r}, which is no {kind}") from None
    return _finite(number, kind, name, given)


def in_unit(value: float, unit: str) -> float:
    """An SI value in a printed unit.

    >>> round(in_unit(0.9144, "in"), 9)
    36.0
    """
    return value / PRINTED[unit]


def from_unit(value: float, unit: str) -> float:
    """A printed value in SI; the other way round from ``in_unit``."""
    return value * PRINTED[unit]


def feet_inches(metres: float, finest: int = 16, inches_only: bool = False) -> str:
    """Length to the nearest sixteenth, as a mason reads it.

    >>> feet_inches(0.9271)
    '3\\'-0 1/2"'
    >>> feet_inches(11.99 * INCH)
    '1\\'-0"'
    """
    ticks = round(abs(metres) / INCH * finest)
    sign = "-" if metres < 0 and ticks else ""
    whole, part = divmod(ticks, finest)
    feet, inches = (0, whole) if inches_only else divmod(whole, 12)
    fraction = Fraction(part, finest)
    text = f"{inches} {fraction}" if inches and fraction else f"{fraction if fraction else inches}"
    if feet and fraction and not inches:
        text = f"0 {fraction}"
    return f"{sign}{feet}'-{text}\"" if feet else f'{sign}{text}"'


def grouped(value: float, digits: int = 0) -> str:
    """A number to so many decimals, its thousands set apart by a space: a comma means another thing
    abroad.
    """
    text = f"{value:,.{digits}f}".replace(",", " ")
    return text.lstrip("-") if not text.strip("-0. ") else text


_SHOWN = {
    "area": ((SQIN, "in²", 1), (1.0, "m²", 3)),
    "volume": ((CUFT, "ft³", 1), (1.0, "m³", 3)),
    "angle": ((DEG, "°", 1),) * 2,
    "pressure": ((1.0, "Pa", 1),) * 2,
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
    """A value as text in the reader's units; the only place where numbers are rounded.

    Parameters
    ----------
    value : float or None
        In SI; ``None`` prints as unknown.
    kind : str
        One of ``SI_UNIT``, or ``count``.
    units : str
        ``feet-inches`` or ``millimetres``.

    Examples
    --------
    >>> show(0.9271, "length", "millimetres"), show(0.9271, "length")
    ('927 mm', '3\\'-0 1/2"')
    """
    if value is None:
        return "unknown"
    metric = units == MILLIMETRES
    if kind == "length" and not metric:
        return feet_inches(value)
    if kind == "length":
        return f"{grouped(value, 2)} m" if abs(value) >= 10 else f"{grouped(value / MM, 0)} mm"
    if kind == "temperature":
        return (
            f"{grouped(value - 273.15, 1)} °C"
            if metric
            else f"{grouped((value - 273.15) * 1.8 + 32, 0)} °F"
        )
    if kind == "count":
        return f"{value:g}"
    factor, unit, digits = _SHOWN[kind][metric]
    return (
        f"{grouped(value / factor, digits)} {unit}".strip()
        if unit != "°"
        else f"{grouped(value / factor, digits)}°"
    )
