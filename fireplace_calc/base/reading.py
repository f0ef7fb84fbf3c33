"""Text with a unit in, SI float out."""

from __future__ import annotations

import math
import re
from fractions import Fraction
from functools import lru_cache
from typing import Any
from unicodedata import normalize

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import (
    EXACT_FOOT,
    EXACT_INCH,
    EXAMPLES,
    FACTORS,
    SI_UNIT,
    InputError,
    registry,
)

# What a mason writes: "36", "2 1/2", "7-5/8", "3/4", ".5", "1e-3"; then a unit. Behind feet there
# may be inches, and a slope is rise over run.
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
"""Thousands set apart by a comma or a thin space: the comma is no decimal mark here."""
_SMALL = re.compile(" ?([¼-¾⅐-⅞])")
"""A fraction in one letter."""
LONGEST = 80
"""A quantity takes no more letters than this. [-]"""
_POWER = re.compile(r"[\d)]\s*(?:\*\*|\^)|(?:\*\*|\^)\s*\(?\s*[-+]?\d\d")
"""A number raised to a power, or a unit to a high one: no quantity anybody writes, and years of
sums if nested.
"""


def _number(text: str) -> Fraction:
    if text.isdecimal():
        return Fraction(int(text))
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
    r"""Read a quantity.

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
        In the SI unit of its kind. [SI]

    Raises
    ------
    InputError
        For a bare number, an unknown unit, the wrong kind of unit, something that is no finite
        number, or a kind that is only shown, such as ``air speed``.

    Examples
    --------
    >>> to_si("3'-0\"", "length") == to_si("36 in", "length") == to_si("3 ft", "length")
    True
    >>> to_si("7:12", "ratio")
    0.5833333333333334
    """
    if kind not in SI_UNIT:
        raise InputError(
            f"{name or 'Quantity'} is asked for as {shown(kind)}, but what can be read is"
            f" {', '.join(SI_UNIT)}.",
            name,
            ", ".join(SI_UNIT),
            kind,
        )
    if isinstance(value, str):
        return _read(value, kind, name)
    if hasattr(value, "magnitude") and hasattr(value, "units"):
        try:
            number = _pint_to_si(value, kind)
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
        raise _refuse(name, kind, value, f"is {shown(value)}, which has no unit")
    raise _refuse(name, kind, value, f"is {shown(value)}, which is no {kind}")


def _pint_to_si(quantity: Any, kind: str) -> float:
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


@lru_cache(maxsize=4096)
def _by_rule(text: str, kind: str) -> float | None:
    """Read the common texts without waking pint; nothing when none of the rules fits."""
    if kind == "length" and (m := _FEET.match(text)):
        return float(
            (-1 if m[1] == "-" else 1) * (_number(m[2]) * EXACT_FOOT + _number(m[3]) * EXACT_INCH)
        )
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
def _in_plain_letters(given: str) -> str:
    """The same text without printers' marks: primes, curly quotes, thousands, small fractions."""
    text = (
        given.replace("′", "'")
        .replace("″", '"')
        .replace("”", '"')
        .replace("’", "'")
        .replace("''", '"')
        .replace("−", "-")
    )
    text = _THOUSANDS.sub(lambda m: re.sub(r"\D", "", m[0]), text)
    text = text.replace("²", "2").replace("³", "3")
    return _SMALL.sub(lambda m: " " + normalize("NFKC", m[1]).replace("⁄", "/"), text).strip()


@lru_cache(maxsize=4096)
def _read(given: str, kind: str, name: str) -> float:
    if len(given) > LONGEST:
        raise _refuse(
            name, kind, f"{given[:20]}...", f"is {given[:20]!r} and {len(given) - 20} letters more"
        )
    text = _in_plain_letters(given)
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
            f"is {shown(given)}, with a comma that is no mark of thousands; decimals take a point",
        )
    if plain is None or not _UNIT.fullmatch(plain[3].strip()) or _POWER.search(text):
        raise _refuse(name, kind, given, f"is {shown(given)}, which is no {kind}")
    try:
        number = _pint_to_si(registry().Quantity(text), kind)
    except Exception:
        raise _refuse(name, kind, given, f"is {shown(given)}, which is no {kind}") from None
    return _finite(number, kind, name, given)
