"""Where the volume of a lift goes: pieces, and mortar beside and under them. [m3]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.passage import reach
from fireplace_calc.geometry.assembled.sections import SKIN, closed, contact_area, section, united
from fireplace_calc.geometry.assembled.solids import piece_part
from fireplace_calc.pieces.records import SetPiece

SHARES = (0.0, 0.5, 1.0)
"""Where Simpson's rule looks, between two levels at which nothing bends. [-]"""


def _bends(pieces: tuple[SetPiece, ...], height: float) -> list[float]:
    """Levels under a lift's top at which something begins or ends. [m]"""
    levels = {0.0, height}
    for piece in pieces:
        made = piece_part(piece)
        for solid in made.adds + made.cuts:
            for z in (solid.bottom, solid.top):
                if 0.0 < z + height - piece.height < height:
                    levels.add(z + height - piece.height)
    return sorted(levels)


@lru_cache(maxsize=1024)
def perpends(pieces: tuple[SetPiece, ...]) -> float:
    """Mortar in the upright joints of a lift, as high as its lowest piece.

    The closed section less the pieces, by Simpson's rule between levels where nothing bends: exact
    for straight sides, whose area is quadratic in the height.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift; their tops are level.

    Returns
    -------
    float
        [m3]
    """
    height = min(p.height for p in pieces)
    levels = _bends(pieces, height)
    total = 0.0
    for low, high in zip(levels, levels[1:], strict=False):
        ends = [low + SKIN, (low + high) / 2, high - SKIN]
        a, b, c = (_between(pieces, height, z) for z in ends)
        total += (high - low) * (a + 4 * b + c) / 6
    return total


def _between(pieces: tuple[SetPiece, ...], height: float, level: float) -> float:
    """Area of the joints at a level over the foot of the lowest piece. [m2]"""
    here = [section(p, level + p.height - height) for p in pieces]
    return float(closed(here, reach(pieces)).area() - united(here).area())


def beds(made: Assembly, number: int) -> float:
    """Mortar in the bed of a lift.

    Parameters
    ----------
    made : Assembly
    number : int
        Of the lift, from nought. [-]

    Returns
    -------
    float
        [m3]
    """
    if not number:
        return sum(p.bed * float(section(p.piece, SKIN).area()) for p in made.by_lift[0])
    return sum(
        a.bed * contact_area(a.piece, b.piece)
        for a in made.by_lift[number]
        for b in made.by_lift[number - 1]
    )
