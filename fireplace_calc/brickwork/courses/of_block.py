"""Courses of block under the hearth: as they are brought to their level."""

from __future__ import annotations

from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.coursing import SIXTEENTH, Coursing

KINDS = {
    "block": "block",
    "sawn": "block",
    "half-high": "half-high block",
    "packing": "packing block",
}
NOTES = {
    "sawn": "block sawn to height",
    "half-high": "half-high block, to come out level",
    "packing": "packing, to come out level",
}


def block_courses(part: str, bottom: float, top: float, coursing: Coursing) -> tuple[Course, ...]:
    """Every course of a part that is laid in block.

    Parameters
    ----------
    part : str
    bottom, top : float
        Its levels. [m]
    coursing : Coursing
        What of it stands on what.

    Returns
    -------
    tuple of Course
        Where block does not reach the top, a last one as ``fill``.
    """
    made: list[Course] = []
    under = bottom
    for (piece, high), over in zip(coursing.pieces, coursing.tops, strict=True):
        head, foot = bottom + over, bottom + over - high
        note, cut = NOTES.get(piece, ""), piece == "sawn"
        if head > top + SIXTEENTH:
            head, cut, note = top, True, "sawn to height, its beds cannot take it up"
        made.append(Course(part, len(made) + 1, foot, head, cut, note, KINDS[piece], foot - under))
        under = head
    if top - under > SIXTEENTH:
        note = "filled with mortar, too low for a block"
        made.append(Course(part, len(made) + 1, under, top, True, note, "fill"))
    return tuple(made)
