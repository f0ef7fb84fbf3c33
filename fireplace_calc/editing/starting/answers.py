"""Reading what somebody answers: in plain words, with or without a unit."""

from __future__ import annotations

import re
from collections.abc import Mapping

from fireplace_calc.base.messages import shown
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import FEET_INCHES, SQIN, InputError

_BARE = re.compile(r"[-+−]?\s*[\d.,/ -]*\d\s*")
_BY = re.compile(r"\s*(?:\bby\b|[x×*])\s*", re.IGNORECASE)
_WORDS = re.compile(
    r"\b(?:in|inch|inches|round|dia|diameter|rectangular|square)\b|[\"\s]", re.IGNORECASE
)
_NUMBER = re.compile(r"\d+(?:\.\d+)?", re.ASCII)
ROUND, OBLONG = "round", "rectangular"


def with_bare_unit(text: str, units: str, bare: tuple[str, str]) -> str:
    """What was typed, with the unit of the question behind it where only a number was.

    >>> with_bare_unit("5,280", "feet-inches", ("ft", "m"))
    '5,280 ft'
    >>> with_bare_unit("42 in", "feet-inches", ("ft", "m"))
    '42 in'
    """
    text, unit = text.strip(), bare[units != FEET_INCHES]
    if not _BARE.fullmatch(text):
        return text
    return f"{text}{unit}" if unit.startswith(":") else f"{text} {unit}".strip()


def one_of(text: str, choices: Mapping[str, str], of: str) -> str:
    """What somebody chose, by its words or by what it stands for.

    Raises
    ------
    InputError
        When it is none of them.
    """
    said = " ".join(text.split()).lower()
    for words, value in choices.items():
        if said in (words.lower(), value.lower()):
            return value
    begun = {value for words, value in choices.items() if said and words.lower().startswith(said)}
    if len(begun) == 1:
        return begun.pop()
    raise InputError(
        f"{of} is {shown(text)}, but one of these is wanted: {', '.join(choices)}.",
        of,
        ", ".join(choices),
        text,
    )


def two_lengths(text: str, units: str, bare: tuple[str, str], of: str) -> tuple[str, str]:
    """Two lengths with an x or a *by* between them, the unit of the second counting for both.

    >>> two_lengths("20 x 14", "feet-inches", ("ft", "m"), "The room")
    ('20 ft', '14 ft')
    >>> two_lengths("6 by 4.5 m", "feet-inches", ("ft", "m"), "The room")
    ('6 m', '4.5 m')

    Raises
    ------
    InputError
        When there are not two.
    """
    parts = _BY.split(text.strip())
    if len(parts) != 2 or not all(parts):
        raise InputError(
            f"{of} is {shown(text)}, but two lengths are wanted, such as 20 x 14 ft.",
            of,
            "length by width",
            text,
        )
    unit = re.sub(r"^[\d.,/ -]*", "", parts[1])
    if unit in ("ft", "m", "mm", "in", "feet") and _BARE.fullmatch(parts[0]):
        return f"{parts[0]} {unit}", parts[1]
    first, second = (with_bare_unit(part, units, bare) for part in parts)
    return first, second


def is_length(text: str) -> bool:
    """Whether a text reads as a length."""
    try:
        to_si(text, "length")
    except InputError:
        return False
    return True


def liner_choices(units: str) -> dict[str, str]:
    """Every liner of the tables, shape and size as one choice with its net area, smallest first;
    what each stands for is its shape and size.

    >>> liner_choices("feet-inches")["12x16 rectangular, 131 sq in net"]
    'rectangular 12x16'
    """
    tabled = [
        (liner.net_area, shape, size)
        for shape, table in ((OBLONG, rectangular_liners()), (ROUND, round_liners()))
        for size, liner in table.items()
    ]
    return {
        f"{size}{' round' if shape == ROUND else ' rectangular'}, {_area(area, units)} net": (
            f"{shape} {size}"
        )
        for area, shape, size in sorted(tabled)
    }


def _area(area: float, units: str) -> str:
    if units == FEET_INCHES:
        return f"{area / SQIN:.0f} sq in"
    return f"{area * 1e4:.0f} cm²"


def liner(text: str, units: str) -> tuple[str, str]:
    """Shape and size of a liner, as chosen from the list or as typed.

    >>> liner("12x16", "feet-inches"), liner('12" round', "feet-inches")
    (('rectangular', '12x16'), ('round', '12'))

    Raises
    ------
    InputError
        When the tables have none like it.
    """
    listed = liner_choices(units)
    if text.strip() in listed:
        shape, _, size = listed[text.strip()].partition(" ")
        return shape, size
    plain = _WORDS.sub("", _BY.sub("x", text.lower()))
    sides = sorted(float(part) for part in plain.split("x") if _NUMBER.fullmatch(part))
    whole = bool(sides) and plain.count("x") == len(sides) - 1
    for shape, table in ((ROUND, round_liners()), (OBLONG, rectangular_liners())):
        for size in table if whole else ():
            if sorted(map(float, size.split("x"))) == sides:
                return shape, size
    known = ", ".join((*rectangular_liners(), *(f"{size} round" for size in round_liners())))
    raise InputError(
        f"Liner is {shown(text)}, but the tables have {known}; another one goes in under Flue, as"
        " own.",
        "Liner",
        known,
        text,
    )
