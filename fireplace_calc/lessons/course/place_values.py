"""Values at one place of a lesson's controls: read, put into a design, and written for a reader."""

from __future__ import annotations

import re
from collections.abc import Mapping
from math import atan
from typing import Any

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, SI_UNIT
from fireplace_calc.heat.telling import told
from fireplace_calc.lessons.course.measures import WOOD, LessonNames
from fireplace_calc.lessons.course.records import LessonControl
from fireplace_calc.lessons.course.sums import FIGURE, NUMBER, Amount, SumError, work_out
from fireplace_calc.lessons.worked_measures import ZERO

_BRACES = re.compile(r"\{([^{}]+)\}")
_SPELLED = {
    FEET_INCHES: {
        **dict.fromkeys(("in", "inch", "inches"), "in"),
        **dict.fromkeys(("ft", "foot", "feet"), "ft"),
        **dict.fromkeys(("square foot", "square feet"), "ft2"),
        **dict.fromkeys(("lb", "pound", "pounds"), "lb"),
    },
    MILLIMETRES: {
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
        **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
        **dict.fromkeys(("square metre", "square metres"), "m2"),
        **dict.fromkeys(("kg", "kilogram", "kilograms"), "kg"),
    },
}
"""Units of a figure in running text, as a reader of each system writes them, and their signs."""
_FIGURE = re.compile(rf"({FIGURE}) ({'|'.join(u for held in _SPELLED.values() for u in held)})")


def in_words(text: str, units: str) -> str | None:
    r"""A figure of running text in the reader's units; nothing where it is no such figure.

    Parameters
    ----------
    text : str
        A number and its unit, in signs or in words.
    units : str
        Who measures in that unit reads the figure as it stands.

    Examples
    --------
    >>> in_words("4 inches", "feet-inches"), in_words("4 inches", "millimetres")
    ('4 inches', '102 mm')
    >>> in_words("4 inches + gap", "millimetres") is None
    True
    """
    found = _FIGURE.fullmatch(text)
    if found is None:
        return None
    number, unit = found.groups()
    if unit in _SPELLED[units]:
        return text
    sign = next(held[unit] for held in _SPELLED.values() if unit in held)
    return written(work_out(f"{number} {sign}"), units)


def filled(text: str, names: Mapping[str, Amount], chosen: Mapping[str, str], units: str) -> str:
    """A text with what stands in braces put in: a choice, a figure, or a sum.

    Parameters
    ----------
    text : str
    names : mapping
        What a sum may name. [SI]
    chosen : mapping
        Controls that are choices.
    units : str
        The reader's.
    """

    def one(found: re.Match[str]) -> str:
        inner = found[1].strip()
        if inner in chosen:
            return chosen[inner]
        return in_words(inner, units) or written(work_out(inner, names), units, inner)

    return _BRACES.sub(one, text)


def bare_figures(text: str) -> list[str]:
    """Figures with a unit that stand in a text as they are, whoever reads it. A head of water is
    told in millimeters everywhere.

    >>> bare_figures("Open the gap to 4 inches, from {2 inches}")
    ['4 inches']
    """
    plain = _BRACES.sub("", text)
    return [
        found[0] for found in re.finditer(rf"(?<![\w.]){_FIGURE.pattern}(?!\w| of water)", plain)
    ]


def written(amount: Amount, units: str, name: str = "") -> str:
    r"""A figure as a reader is told it.

    Parameters
    ----------
    amount : Amount
        [SI]
    units : str
        ``feet-inches`` or ``millimetres``.
    name : str
        What it is called: a ``pitch`` is inches in twelve, or degrees.

    Examples
    --------
    >>> written(Amount(0.5), "feet-inches", "pitch")
    '6 in 12'
    >>> written(Amount(1.2192, "length"), "feet-inches")
    '4\'-0"'
    """
    if name == "pitch":
        if units == FEET_INCHES:
            return f"{amount.value * 12:g} in 12"
        return show(atan(amount.value), "angle", units)
    if name in WOOD:
        return told(amount.value - ZERO, units=units)
    if amount.kind == NUMBER:
        whole = round(amount.value)
        return f"{whole if abs(amount.value - whole) < 1e-6 else amount.value:.3g}"
    return show(amount.value, amount.kind, units)


def amount_of(value: Any, kind: str, held: Mapping[str, Amount]) -> Amount:
    """What was given for a name: an amount, a number in SI, or a sum.

    Parameters
    ----------
    value : Amount, float or sum
        [SI]
    kind : str
        Of a bare number.
    held : mapping
        Names that a sum may use. [SI]
    """
    if isinstance(value, Amount):
        return value
    return Amount(value, kind) if isinstance(value, float) else work_out(value, held)


def input_of(given: Any, names: LessonNames, chosen: Mapping[str, str]) -> Any:
    """What an input of the picture is set to: a sum, a choice, a word, or a list of pieces.

    Parameters
    ----------
    given : any
        As the file has it; ``liner.1`` is the first word of the choice ``liner``.
    names : mapping
        What a sum may name. [SI]
    chosen : mapping
        Controls that are choices.

    Returns
    -------
    any
        As ``change`` takes it.
    """
    if isinstance(given, list):
        return [
            {key: input_of(one, names, chosen) for key, one in piece.items()} for piece in given
        ]
    if not isinstance(given, str):
        return given
    choice, _, part = given.partition(".")
    if choice in chosen:
        return chosen[choice].split(" ", 1)[int(part) - 1] if part else chosen[choice]
    try:
        value, kind = work_out(given, names)
    except SumError:
        return given
    if kind != NUMBER:
        return f"{value!r} {SI_UNIT[kind]}"
    return round(value) if abs(value - round(value)) < 1e-9 else value


def places_of(control: LessonControl) -> list[str | float]:
    """Every place of a control, from one end to the other. [SI]

    Parameters
    ----------
    control : LessonControl
    """
    if control.choices:
        return list(control.choices)
    low, high = (work_out(one).value for one in (control.start_at, control.end_at))
    step = step_of(control)
    return [low + k * step for k in range(round((high - low) / step) + 1)]


def step_of(control: LessonControl) -> float:
    """How far a control moves at a time; of temperatures the difference. [SI]

    Parameters
    ----------
    control : LessonControl
    """
    value, kind = work_out(control.step)
    if kind != "temperature":
        return value
    return value - work_out(re.sub(r"[-\d./]+", "0", str(control.step))).value
