"""Where the volume of a lift goes: pieces, and mortar beside, under and inside their nests. [m3]"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.passage import reach
from fireplace_calc.geometry.assembled.sections import (
    SKIN,
    closed,
    contact_area,
    even,
    holes,
    outlined,
    section,
    united,
)
from fireplace_calc.geometry.assembled.solids import piece_part, piece_volume, plain_volume
from fireplace_calc.geometry.solids import Solid
from fireplace_calc.pieces.records import ArchCut, SetPiece

LEAST_RING = 1e-6
"""A ring of a nest smaller than this is a hair of two circles. [m2]"""
FINE = 1e-10
"""What a halving may change. [m3]"""
HALVINGS = 20
"""At most. [-]"""


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
def perpends(pieces: tuple[SetPiece, ...], standing: tuple[SetPiece, ...] | None = None) -> float:
    """Mortar in the upright joints of a lift, as high as its lowest piece.

    The closed section less the pieces, by Simpson's rule between levels where nothing bends: exact
    for straight sides, whose area is quadratic in the height; beside an arch it is halved until
    that changes nothing.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift; their tops are level.
    standing : tuple of SetPiece or None
        Those of them that stand so far; all of them where nothing is said.

    Returns
    -------
    float
        [m3]
    """
    height, span = min(p.height for p in pieces), reach(pieces)
    shown = pieces if standing is None else standing
    if len(shown) < 2:
        return 0.0

    def joint(level: float) -> float:
        return _between(shown, height, level, span)

    arched = any(isinstance(s, ArchCut) for p in shown for s in p.cuts)
    return sum(
        _summed(joint, low, high, HALVINGS if arched else 0)
        for low, high in pairwise(_bends(pieces, height))
    )


def _summed(area: Callable[[float], float], low: float, high: float, halvings: int) -> float:
    """Simpson's rule between two levels, halved where an arch bends what lies between. [m3]"""
    ends = [low + SKIN, (low + high) / 2, high - SKIN]
    return _halved(area, low, high, [area(z) for z in ends], halvings)


def _halved(
    area: Callable[[float], float], low: float, high: float, known: list[float], halvings: int
) -> float:
    a, b, c = known
    whole = (high - low) * (a + 4 * b + c) / 6
    if not halvings:
        return whole
    middle = (low + high) / 2
    left, right = area((low + middle) / 2), area((middle + high) / 2)
    finer = (high - low) * (a + 4 * left + 2 * b + 4 * right + c) / 12
    if abs(finer - whole) < FINE:
        return finer
    return _halved(area, low, middle, [a, left, b], halvings - 1) + _halved(
        area, middle, high, [b, right, c], halvings - 1
    )


def _between(pieces: tuple[SetPiece, ...], height: float, level: float, span: float) -> float:
    """Area of the joints at a level over the foot of the lowest piece. [m2]"""
    here = [section(p, level + p.height - height) for p in pieces]
    return max(float(closed(here, span).area() - united(here).area()), 0.0)


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


def nests(made: Assembly, number: int) -> float:
    """Mortar round the tongues that stand in the sockets of a lift.

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
        return 0.0
    below = made.by_lift[number - 1]
    return sum(nest(a.piece, b.piece, a.bed) for a in made.by_lift[number] for b in below)


@lru_cache(maxsize=4096)
def nest(upper: SetPiece, lower: SetPiece, bed: float) -> float:
    """Mortar in the socket of one piece, over the bed of another and round its tongue.

    Parameters
    ----------
    upper, lower : SetPiece
    bed : float
        Thickness of the joint between them. [m]

    Returns
    -------
    float
        Nought where no socket is roofed over what stands under it. [m3]
    """
    upper, lower = even(upper), even(lower)
    bends = sorted({z for s in _solids(upper) for z in (s.bottom, s.top)})
    roof = bends[1]
    if roof >= upper.height:
        return 0.0
    foot = section(upper, SKIN)
    socket = outlined(holes(foot, 0.0))
    # What of the lower piece's upper side lies in the socket, and has the upper piece over it.
    ring = socket ^ section(lower, lower.height - SKIN) ^ section(upper, roof + SKIN)
    if ring.area() < LEAST_RING:
        return 0.0
    tongues = (z - lower.height for s in _solids(lower) for z in (s.bottom, s.top))
    levels = sorted({0.0, bed, bed + roof, *(z for z in tongues if 0.0 < z < bed + roof)})
    total = 0.0
    for low, high in pairwise(levels):
        ends = [low + SKIN, (low + high) / 2, high - SKIN]
        a, b, c = (
            float((ring - section(lower, lower.height + z) - section(upper, z - bed)).area())
            for z in ends
        )
        total += (high - low) * (a + 4 * b + c) / 6
    return total


def _solids(piece: SetPiece) -> list[Solid]:
    made = piece_part(piece)
    return [*made.adds, *made.cuts]


@lru_cache(maxsize=1024)
def tongue_volume(piece: SetPiece) -> float:
    """Volume of what stands over a piece's upper bed.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        [m3]
    """
    made, height = piece_part(piece), piece.height
    outer = sum(s.volume for s in made.adds if s.bottom >= height - ROUNDING)
    # The bore runs on through it, with upright sides.
    bore = sum(
        s.volume * (s.top - height) / (s.top - s.bottom)
        for s in made.cuts
        if s.top > height + ROUNDING
    )
    return outer - bore if outer else 0.0


@lru_cache(maxsize=1024)
def socket_room(piece: SetPiece) -> float:
    """Room in a piece's socket beside its bore.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        [m3]
    """
    if piece.plain is None:
        return 0.0
    return max(plain_volume(piece) + tongue_volume(piece) - piece_volume(piece), 0.0)
