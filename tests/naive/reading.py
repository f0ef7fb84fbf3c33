"""Design files read by hand: every text with a unit becomes a number in SI, every word stays a word."""

from __future__ import annotations

import re
import tomllib
from fractions import Fraction
from math import pi
from pathlib import Path

PINS = Path(__file__).resolve().parent.parent / "pins"
"""Where the files of the pinned designs lie."""

IN, FT, LB, G = 0.0254, 0.3048, 0.45359237, 9.80665
PSF = LB * G / FT**2
"""The international inch, foot and pound, standard gravity, and a pound to the square foot: all exact by definition."""

UNITS = {
    "in": IN,
    "ft": FT,
    "mm": 0.001,
    "cm": 0.01,
    "m": 1.0,
    "in2": IN**2,
    "ft2": FT**2,
    "mm2": 1e-6,
    "cm2": 1e-4,
    "m2": 1.0,
    "ft3": FT**3,
    "m3": 1.0,
    "%": 0.01,
    "deg": pi / 180,
    "kg/h": 1 / 3600,
    "lb/h": LB / 3600,
    "m/s": 1.0,
    "mph": 0.44704,
    "km/h": 1 / 3.6,
    "L/s": 0.001,
    "m3/h": 1 / 3600,
    "cfm": FT**3 / 60,
    "Pa": 1.0,
    "kPa": 1000.0,
    "psf": PSF,
    "psi": 144 * PSF,
    "N": 1.0,
    "kN": 1000.0,
    "lbf": LB * G,
}
_TEXT = re.compile(r"(-?)(?:(\d+)[- ])?(\d+(?:\.\d+)?)(?:/(\d+))? ?(\D[\w/%]*)")


def value(text: object) -> object:
    """A text with a unit as a number in SI; anything else as it stands, and ``unknown`` as nothing."""
    if not isinstance(text, str):
        return text
    if text == "unknown":
        return None
    if rise := re.fullmatch(r"(\d+(?:\.\d+)?):(\d+)", text):
        return float(rise[1]) / float(rise[2])
    if feet := re.fullmatch(r"""(\d+)'-(\d+)(?: (\d+)/(\d+))?\"""", text):
        return (
            int(feet[1]) * 12 + int(feet[2]) + (int(feet[3]) / int(feet[4]) if feet[3] else 0)
        ) * IN
    found = _TEXT.fullmatch(text)
    if not found:
        return text
    sign, whole, number, under, unit = found.groups()
    size = float(Fraction(number) / int(under or 1) + int(whole or 0)) * (-1 if sign else 1)
    if unit == "degC":
        return size + 273.15
    if unit == "degF":
        return (size + 459.67) / 1.8
    return size * UNITS[unit] if unit in UNITS else text


class Group(dict):
    """A table of a design file, its values by name."""

    __getattr__ = dict.__getitem__


NAMES = ("name", "note", "place")
"""Inputs whose text is a name, not a quantity."""


def _table(table: dict) -> Group:
    made = Group()
    for key, told in table.items():
        if isinstance(told, dict):
            made[key] = _table(told)
        elif isinstance(told, list):
            made[key] = [_table(piece) for piece in told]
        else:
            made[key] = told if key in NAMES else value(told)
    return made


def _merged(below: dict, above: dict) -> Group:
    made = Group(below)
    for key, told in above.items():
        made[key] = _merged(below[key], told) if isinstance(told, dict) else told
    return made


PIECES = {
    "nearby": {"name": "dormer", "distance": 8 * FT, "level": 16 * FT},
    "trim": {
        "name": "mantel shelf",
        "place": "above",
        "distance": 12 * IN,
        "projection": 1.5 * IN,
        "height": 2 * IN,
        "combustible": True,
    },
}
"""What a piece of a list has where it says nothing."""


def _toml(path: Path) -> Group:
    return _table(tomllib.loads(path.read_text(encoding="utf-8")))


def read(name: str) -> Group:
    """One pinned design, every input in it, in SI."""
    made = _merged(_toml(PINS / "defaults.toml"), _toml(PINS / f"{name}.toml"))
    for group, key in (("roof", "nearby"), ("surround", "trim")):
        made[group][key] = [Group(PIECES[key] | piece) for piece in made[group].get(key, [])]
    return made
