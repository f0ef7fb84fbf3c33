"""How many courses, and how high: as few and as equal as the heaviest piece lets them be. [-]"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil

from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.casting.cast_lines import CastLines

LEAST_FLUES, MOST_FLUES = 4, 40
"""Flue pieces that a design may count. [-]"""


@dataclass(frozen=True, slots=True)
class EqualRise:
    """Some courses of one height, in marks of the tape. [-]

    Attributes
    ----------
    count, height : int
        How many, and bed to bed.
    left : int
        Of the rise that was to be filled, what the courses leave; less than nought where they are
        too high by that.
    """

    count: int
    height: int
    left: int


def courses(
    lines: CastLines,
    rise: int,
    fits: Callable[[int], bool],
    below: bool = False,
    fewest: int = 1,
) -> EqualRise | None:
    """The fewest equal courses that fill a rise.

    Parameters
    ----------
    lines : CastLines
    rise : int
        Joints counted in. [-]
    fits : callable
        Whether pieces of a height are light enough.
    below : bool
        Whether they may not come out higher than the rise; else as near as they can.
    fewest : int
        Not fewer than these. [-]

    Returns
    -------
    EqualRise or None
        None where even the lowest pieces are too heavy, or there is no room for one.
    """
    bed, tallest = lines.bed[1], lines.marks(lines.wish.tallest)
    for count in range(fewest, max(rise // (lines.least + bed), 0) + 1):
        height = (rise // count if below else round(rise / count)) - bed
        if height <= tallest and fits(height):
            return EqualRise(count, height, rise - count * (height + bed))
    return None


def lowest(lines: CastLines, rise: int) -> int:
    """Height of the lowest equal courses that fill a rise.

    Parameters
    ----------
    lines : CastLines
    rise : int
        Joints counted in, in marks of the tape. [-]

    Returns
    -------
    int
        [-]
    """
    return rise // max(rise // (lines.least + lines.bed[1]), 1) - lines.bed[1]


def heavy(what: str, lines: CastLines, volume: float, why: str) -> InputError:
    """What to raise when a piece stays too heavy.

    Parameters
    ----------
    what : str
        The piece.
    lines : CastLines
    volume : float
        Of the lightest that it can be cut into, in cubes of a mark. [-]
    why : str
        Why it is not cut further, and what would help.
    """
    weight, most = ceil(lines.wish.weight(volume) * 10) / 10, lines.wish.most
    return InputError(
        f"{what} weighs {weight:.1f} kg and at most {most:g} kg is wanted; {why}.",
        "Heaviest piece",
        f"at least {weight:.1f} kg",
        most,
    )


def low(what: str, lines: CastLines, came: int, least: int, key: str) -> InputError:
    """What to raise when there is no room for a piece.

    Parameters
    ----------
    what : str
        What was measured, to begin the sentence.
    lines : CastLines
    came, least : int
        [-]
    key : str
        Input to change.
    """
    wanted = f"at least {lines.wish.text(least)}"
    return InputError(
        f"{what} is {lines.wish.text(came)}, but {wanted} is wanted to cast pieces for it; change"
        f" the {key}.",
        key,
        wanted,
        came * lines.wish.tick,
    )


def high(what: str, lines: CastLines, came: int, most: int, why: str) -> InputError:
    """What to raise when something leaves no room for the pieces beside or over it.

    Parameters
    ----------
    what : str
        Input, to begin the sentence.
    lines : CastLines
    came, most : int
        [-]
    why : str
        To end it.
    """
    wanted = f"at most {lines.wish.text(most)}"
    return InputError(
        f"{what} is {lines.wish.text(came)}, but {wanted} is wanted {why}.",
        what,
        wanted,
        came * lines.wish.tick,
    )
