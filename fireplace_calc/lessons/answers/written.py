"""Answers read as people write them: ``20 IN``, ``7.75 sqft``, ``12x16``, ``12,5 cm``,
or a bare number in the reader's units.
"""

from __future__ import annotations

import re
from fractions import Fraction
from unicodedata import normalize

from fireplace_calc.base.units import (
    EXACT_FOOT,
    EXACT_INCH,
    FEET_INCHES,
    POUND,
    PSF,
    InputError,
)
from fireplace_calc.lessons.answers.printed_answer import answer_unit

LONGEST_ANSWER = 60
"""Letters of an answer. [-]"""
_I, _F = float(EXACT_INCH), float(EXACT_FOOT)
_LENGTHS = {"in": _I, "ft": _F, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "yd": 3 * _F}
UNITS: dict[str, dict[str, float]] = {
    "length": _LENGTHS,
    "area": {f"{name}2": size**2 for name, size in _LENGTHS.items()},
    "mass": {"lb": POUND, "kg": 1.0, "t": 1000.0},
    "pressure": {"pa": 1.0, "kpa": 1000.0, "psf": PSF, "inwc": 249.08891},
    "temperature": {"c": 1.0, "f": 5 / 9, "k": 1.0},
}
"""What one of each unit is. [SI]"""
_ZERO = {"c": 273.15, "f": 273.15 - 32 * 5 / 9, "k": 0.0}
_NAMES = {
    "in": ("inches", "inch", "ins", "in", '"'),
    "ft": ("feet", "foot", "ft", "'"),
    "mm": ("millimetres", "millimeters", "millimetre", "millimeter", "mm"),
    "cm": ("centimetres", "centimeters", "centimetre", "centimeter", "cm"),
    "m": ("metres", "meters", "metre", "meter", "m"),
    "yd": ("yards", "yard", "yds", "yd"),
    "lb": ("pounds", "pound", "lbs", "lb"),
    "kg": ("kilograms", "kilogram", "kilos", "kilo", "kgs", "kg"),
    "t": ("tonnes", "tonne", "t"),
    "pa": ("pascals", "pascal", "pa"),
    "kpa": ("kilopascals", "kpa"),
    "psf": ("psf",),
    "inwc": ("in wc", "in w.c", "inwc", "in wg", "in h2o"),
    "c": ("degrees c", "deg c", "degc", "°c", "celsius", "c"),
    "f": ("degrees f", "deg f", "degf", "°f", "fahrenheit", "f"),
    "k": ("kelvin", "k"),
}
_UNIT_OF = {spelling: unit for unit, names in _NAMES.items() for spelling in names}
_ONE = {
    "length": "a length",
    "area": "an area",
    "mass": "a weight",
    "pressure": "a pressure",
    "temperature": "a temperature",
    "count": "a whole number",
}
_NUMBER = re.compile(r"([-+]?)\s*(\d+[ -]+\d+/\d+|\d+/\d+|\d+(?:\.\d*)?(?:e[-+]?\d{1,2})?|\.\d+)")
_THOUSANDS = re.compile(r"(?<![\d.,])([1-9]\d{0,2}(?:[, \u00a0\u202f]\d{3})+)(?![\d,/])")
_TIMES = re.compile(r"\s*(?:[x×*]|\bby\b)\s*")
_SMALL = re.compile("([¼-¾⅐-⅞])")


def _plain(text: str) -> str:
    """Small letters, one sort of marks, decimals with a point and no commas."""
    made = _SMALL.sub(lambda m: " " + normalize("NFKC", m[1]).replace("⁄", "/"), text.lower())
    for odd, usual in (("″", '"'), ("”", '"'), ("“", '"'), ("''", '"'), ("′", "'"), ("’", "'"),
                       ("−", "-"), ("–", "-"), ("²", "2"), ("^", ""), ("⁄", "/")):  # fmt: skip
        made = made.replace(odd, usual)
    made = _THOUSANDS.sub(lambda m: re.sub(r"\D", "", m[1]), made)
    return re.sub(r"(?<=\d),(?=\d)", ".", made).strip().rstrip(".").strip()


def _number(text: str) -> float:
    parts = re.split(r"(?<=\d)[ -]+", text)
    if len(parts) == 1 and "/" not in text:
        return float(text)
    return float(sum(Fraction(part) for part in parts))


def _unit(text: str) -> str:
    """A unit's short name with its power, as ``in2``; empty where none is written.

    Raises
    ------
    KeyError
        When it is no unit that is known.
    """
    bare = re.sub(r"\s+", " ", text.replace(".", " ")).strip()
    if not bare:
        return ""
    square = re.match(r"(?:square|sq)\s*", bare)
    bare = bare[square.end() :] if square else bare
    if powered := re.fullmatch(r"(.*?)\s*2", bare):
        square, bare = square or powered, powered[1]
    return _UNIT_OF[bare] + ("2" if square else "")


def _pieces(text: str) -> list[tuple[float, str]]:
    """Numbers with the unit that stands behind each."""
    found, at, made = list(_NUMBER.finditer(text)), 0, []
    if not found or text[: found[0].start()].strip():
        raise KeyError(text)
    for one, after in zip(found, [*found[1:], None], strict=True):
        if one.start() < at:
            continue
        end = after.start() if after else len(text)
        unit = text[one.end() : end]
        if after is not None and unit.strip().endswith("-"):
            unit = unit.strip()[:-1]
        if after is not None and re.fullmatch(r"\s*2\s*", text[after.start() :]) and unit.strip():
            unit, at = text[one.end() :], len(text)
        number = _number(one[2]) * (-1.0 if one[1] == "-" and one is found[0] else 1.0)
        made.append((number, _unit(unit)))
    return made


def _kind_of(unit: str) -> str:
    return next((kind for kind, units in UNITS.items() if unit in units), "")


def _one_quantity(text: str, usual: str) -> tuple[float, str]:
    """A number and its kind; feet and inches behind each other are one length."""
    pieces = _pieces(text)
    if len(pieces) == 2 and pieces[0][1] == "ft" and pieces[1][1] in ("in", ""):
        sign = -1.0 if pieces[0][0] < 0 or text.startswith("-") else 1.0
        return sign * (abs(pieces[0][0]) * _F + abs(pieces[1][0]) * _I), "length"
    if len(pieces) != 1:
        raise KeyError(text)
    number, unit = pieces[0]
    unit = unit or usual
    kind = _kind_of(unit)
    return number * UNITS[kind][unit] + (_ZERO[unit] if kind == "temperature" else 0.0), kind


def _sides(text: str, units: str) -> float | None:
    """An area told by its two sides; nothing where it is not."""
    sides = _TIMES.split(text)
    if len(sides) != 2 or not all(sides):
        return None
    last = _pieces(sides[1])[-1][1]
    usual = (last if _kind_of(last) == "length" else "") or ("in" if units == FEET_INCHES else "mm")
    (one, kind), (other, same) = (_one_quantity(side, usual) for side in sides)
    return one * other if kind == same == "length" else None


def read_answer(text: str, kind: str, units: str = FEET_INCHES, expected: float = 0.0) -> float:
    r"""What somebody wrote, in SI.

    Parameters
    ----------
    text : str
    kind : str
        Of the answer.
    units : str
        The reader's: a bare number is in them.
    expected : float
        Says in which of two metric units of area a bare number is taken. [SI]

    Returns
    -------
    float
        [SI]

    Raises
    ------
    InputError
        When it cannot be read, or is of another kind: that is said.

    Examples
    --------
    >>> [round(read_answer(t, "length") / 0.0254, 3) for t in ("20 IN", "12-3/8", "3'-4 1/2\"")]
    [20.0, 12.375, 40.5]
    >>> [round(read_answer(t, "area") / 0.0254**2) for t in ("7.75 sqft", "1,116 sq. in.", "12x16")]
    [1116, 1116, 192]
    """
    usual = answer_unit(kind, units, expected)
    named = {"in": "inches"}.get(usual, usual)
    plain, wanted = _plain(text), _ONE[kind]
    if len(text) > LONGEST_ANSWER:
        raise _refuse(f"That is {len(text)} letters long; write {wanted}.", text)
    if kind == "count":
        if not re.fullmatch(r"\d{1,6}", plain):
            raise _refuse("Write a whole number, such as 12.", text)
        return float(plain)
    try:
        sides = _sides(plain, units)
        short = _unit(_plain(usual))
        value, found = (sides, "area") if sides is not None else _one_quantity(plain, short)
    except (KeyError, ZeroDivisionError, ValueError, IndexError):
        example = "7 3/4 or 7.75" if units == FEET_INCHES else "12.5"
        raise _refuse(
            f"That cannot be read. Write {wanted} in {named}, such as {example}.", text
        ) from None
    if found != kind:
        raise _refuse(f"That is {_ONE[found]}; {wanted} is in {named}.", text)
    return value


def _refuse(said: str, text: str) -> InputError:
    return InputError(said, "Your answer", "", text)
