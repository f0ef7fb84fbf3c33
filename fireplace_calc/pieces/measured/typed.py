"""What a hand types, read: lengths in the sheet's unit, joints, corners, lifts. [in or mm]

A bare number is in the unit of the sheet. Lengths are held as exact fractions of it, so that what
was read off a tape stays what was read.
"""

from __future__ import annotations

import re
from fractions import Fraction

from fireplace_calc.base.messages import shown
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.pieces.fields import REACH
from fireplace_calc.pieces.set_text import MOST_LIFTS, MOST_TIMES

FINEST = 100_000
"""Parts that a length is told in: finer than any tape, whichever unit it was read in. [-]"""
_WORDED = re.compile(r"[A-Za-z'\"′″”’]")
"""A text with one of these brings its own unit."""
_RUN = re.compile(r"(\d{1,3})(?:\s*(?:-|–|to)\s*(\d{1,3}))?")

Corner = tuple[Fraction, Fraction]


def refused(key: str, label: str, text: str, wanted: str) -> InputError:
    """What to raise for a text that cannot be read.

    Parameters
    ----------
    key, label : str
        Of the field.
    text : str
        What came.
    wanted : str
        What can be read, with an example.
    """
    return InputError(f"{label} is {shown(text)}, but {wanted} is wanted.", key, wanted, text)


def read_length(text: str, unit: float, key: str, label: str, least: int = 0) -> Fraction:
    """A length as it was read off a tape.

    Parameters
    ----------
    text : str
        ``12 3/8``, ``12-3/8``, ``300 mm``.
    unit : float
        What a bare number is worth. [m]
    key, label : str
        Of the field.
    least : int
        1 refuses nought and less, 0 what is less than nought, -1 nothing. [-]

    Returns
    -------
    Fraction
        In the sheet's unit.

    Raises
    ------
    InputError
        With the field's key as its name.

    Examples
    --------
    >>> read_length("12-3/8", 0.0254, "A", "Width"), read_length("300", 0.001, "A", "Width")
    (Fraction(99, 8), Fraction(300, 1))
    """
    examples = "12 3/8 or 12-3/8" if unit == INCH else "300 or 12.5"
    given = text.strip()
    whole = given if _WORDED.search(given) else f"{given} {'in' if unit == INCH else 'mm'}"
    try:
        meters = to_si(whole, "length", label)
    except InputError:
        raise refused(key, label, text, f"a length such as {examples}") from None
    if abs(meters) > REACH:
        raise refused(key, label, text, "a length of at most 33 ft (10 m)")
    if (least > 0 and meters <= 0) or (least == 0 and meters < 0):
        more = "more than nought" if least else "nought or more"
        raise refused(key, label, text, f"a length of {more}, such as {examples},")
    return Fraction(meters / unit).limit_denominator(FINEST)


def read_joint(text: str, unit: float, key: str, label: str) -> list[Fraction]:
    """Least, wanted and most of a joint, with commas between. [in or mm]

    Raises
    ------
    InputError
        Unless there are three in rising order.
    """
    example = "1/4, 3/8, 1/2" if unit == INCH else "6, 10, 13"
    wanted = f"least, wanted and most in rising order, such as {example},"
    parts = [p for p in re.split(r"[,;]", text) if p.strip()]
    if len(parts) != 3:
        raise refused(key, label, text, wanted)
    made = [read_length(part, unit, key, label) for part in parts]
    if made != sorted(made):
        raise refused(key, label, text, wanted)
    return made


def read_corners(text: str, unit: float, key: str, label: str) -> list[Corner]:
    """Corners of an outline: right and back of the corner measured from, ``0, 0; 9, 0; 5, 23``.

    Raises
    ------
    InputError
        For fewer than three, or what is no pair.
    """
    wanted = "three corners or more, such as 0, 0; 9, 0; 5, 23,"
    corners = [part.split(",") for part in text.split(";") if part.strip()]
    if len(corners) < 3 or any(len(pair) != 2 for pair in corners):
        raise refused(key, label, text, wanted)
    return [
        (read_length(x, unit, key, label, -1), read_length(y, unit, key, label, -1))
        for x, y in corners
    ]


def read_lifts(text: str) -> tuple[int, ...]:
    """Lifts that a piece stands in, counted from the base: ``2-4`` or ``2, 3, 5``. [-]

    Raises
    ------
    InputError
        For what is no count, or runs backward.

    Examples
    --------
    >>> read_lifts("2-4"), read_lifts("1"), read_lifts("2, 4 to 5")
    ((2, 3, 4), (1,), (2, 4, 5))
    """
    made: set[int] = set()
    for part in text.split(","):
        first, last = _run(part.strip()) or (0, 0)
        if not 1 <= first <= last <= MOST_LIFTS:
            wanted = "a lift or a run of lifts, counted from the base, such as 1 or 2-4,"
            raise refused("lifts", "Lift", text, wanted)
        made.update(range(first, last + 1))
    return tuple(sorted(made))


def read_times(text: str) -> tuple[int, int]:
    """How often a flue piece is set, one on the other: ``12`` or ``12-36``. [-]

    Raises
    ------
    InputError
        For what is no count, or runs backward.
    """
    least, most = _run(text.strip()) or (0, 0)
    if not 1 <= least <= most <= MOST_TIMES:
        wanted = f"a count or two up to {MOST_TIMES}, such as 12 or 12-36,"
        raise refused("times", "Set how often", text, wanted)
    return least, most


def _run(text: str) -> tuple[int, int] | None:
    found = _RUN.fullmatch(text)
    return (int(found[1]), int(found[2] or found[1])) if found else None


def read_weight(text: str, metric: bool) -> float:
    """A weight on a scale: a bare number is pounds, or kilograms on a metric sheet. [kg]

    Raises
    ------
    InputError
        For what is no weight.
    """
    return _quantity(text, "mass", "kg" if metric else "lb", "weight", "Weight")


def read_density(text: str, metric: bool) -> float:
    """A density: a bare number is lb/ft3, or kg/m3 on a metric sheet. [kg/m3]

    Raises
    ------
    InputError
        For what is no density.
    """
    return _quantity(text, "density", "kg/m3" if metric else "lb/ft3", "density", "Density")


def _quantity(text: str, kind: str, unit: str, key: str, label: str) -> float:
    given = text.strip()
    try:
        return to_si(given if re.search("[A-Za-z]", given) else f"{given} {unit}", kind, label)
    except InputError:
        raise refused(key, label, text, f"a number in {unit}") from None


def read_marks(text: str) -> list[str]:
    """Marks with commas between."""
    return [part.strip() for part in text.split(",") if part.strip()]
