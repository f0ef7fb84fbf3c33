"""Ends of courses that would be too thin to cut: a three-quarter brick is laid before them, or what
is left is shared by two.
"""

from __future__ import annotations

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.faces import Face
from fireplace_calc.brickwork.fitted.cut_pieces import Piece, cut_to_face
from fireplace_calc.brickwork.unit import Unit

CLOSER = 0.75
"""Of a brick, laid before an end that would be too thin. [-]"""

Cut = dict[int, list[Piece]]
"""Pieces by the number of their brick."""


def with_closers(
    face: Face, unit: Unit, corners: Array, found: Cut, foot: float | None
) -> tuple[Cut, int]:
    """Courses with their thin ends laid anew, wherever that leaves fewer thin pieces.

    Parameters
    ----------
    face : Face
    unit : Unit
    corners : array, (n, 4, 2)
        Of every brick of a bond in courses. [m]
    found : dict
        What of each lies in the face, by its number. [-]
    foot : float or None
        No piece reaches under it. [m]

    Returns
    -------
    dict and int
        What of each brick lies in the face now, and how many ends were laid anew. [-]
    """
    corners, number = corners.copy(), 0
    for n in [n for n, own in found.items() if any(piece.thin for piece in own)]:
        x, y = corners[n][0]
        step = unit.length + unit.joint
        beside = next(
            (
                m
                for m in found
                if abs(corners[m][0][1] - y) < ROUNDING
                and abs(abs(corners[m][0][0] - x) - step) < ROUNDING
                and not any(piece.thin for piece in found[m])
            ),
            None,
        )
        if beside is None:
            continue
        tried = corners.copy()
        _share(
            tried,
            n,
            beside,
            [p for k in (n, beside) for piece in found[k] for p in piece.ring],
            unit,
        )
        again = cut_to_face(face, unit, tried[[n, beside]], foot)
        made = {(n, beside)[k]: own for k, own in again.items()}
        if not any(piece.thin for own in made.values() for piece in own):
            corners, number = tried, number + 1
            found = {k: own for k, own in found.items() if k not in (n, beside)} | made
    return found, number


def _share(
    corners: Array, thin: int, beside: int, points: list[tuple[float, float]], unit: Unit
) -> None:
    """Lay the two anew between the ends of what they fill together: one brick where that holds it,
    a three-quarter one and the rest, or two alike. [m]
    """
    low, high = min(x for x, _ in points), max(x for x, _ in points)
    room, way = high - low, 1.0 if corners[beside][0][0] > corners[thin][0][0] else -1.0
    end = high if way > 0 else low
    length = CLOSER * unit.length
    if room - length - unit.joint < (1 - CLOSER) * unit.length:
        length = room if room <= unit.length else (room - unit.joint) / 2
    joint = end - way * length
    rest = joint - way * unit.joint
    for n, ends in ((beside, (joint, end)), (thin, (rest - way * unit.length, rest))):
        left, right = min(ends), max(ends)
        corners[n][[0, 3], 0], corners[n][[1, 2], 0] = left, right
