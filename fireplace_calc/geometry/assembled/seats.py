"""What a piece rests on, how wide, and whether its weight lies over that. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from manifold3d import CrossSection

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.sections import apart, contact, shrunk, united
from fireplace_calc.geometry.assembled.solids import middle_of_mass
from fireplace_calc.geometry.assembled.wording import small
from fireplace_calc.geometry.polygons import chords
from fireplace_calc.pieces.records import SetPiece

LEAST_AREA = 1e-4
"""A seat smaller than this, its rim taken off, carries nothing. [m2]"""
LEAST_WIDTH = 0.0254
"""A seat narrower than an inch carries nothing; our own habit. [m]"""


@dataclass(frozen=True, slots=True)
class SeatFault:
    """Why a piece cannot rest where it is put.

    Attributes
    ----------
    kind : str
        ``seat`` or ``tips``.
    by : float
        How much bearing is missing, or how far its weight lies beside. [m]
    says : str
        To be followed by the names of what is under it.
    """

    kind: str
    by: float
    says: str


@lru_cache(maxsize=4096)
def seat_fault(piece: SetPiece, below: tuple[SetPiece, ...]) -> SeatFault | None:
    """Whether a piece rests on what is below, widely enough, and with its weight over it.

    Parameters
    ----------
    piece : SetPiece
    below : tuple of SetPiece
        Of the lift under it.

    Returns
    -------
    SeatFault or None
    """
    width = min(piece.bearing, LEAST_WIDTH) if piece.role == "lintel" else piece.bearing
    beds = [contact(piece, b) for b in below]
    # A strip narrower than the width vanishes when its rim is taken off all round.
    seat = united(shrunk(b, width / 2 - CONTACT_GAP) for b in beds) if beds else CrossSection()
    if seat.area() < LEAST_AREA:
        return SeatFault("seat", piece.bearing, f"finds no seat of {small(width)} on")
    if piece.role == "lintel":
        for side, reach in bearing_lengths(beds).items():
            if reach < piece.bearing - CONTACT_GAP:
                by = piece.bearing - reach
                says = f"bears {small(reach)} at its {side} end, {small(by)} less than it needs, on"
                return SeatFault("seat", by, says)
    x, y, _ = middle_of_mass(piece)
    spot = CrossSection.square((CONTACT_GAP, CONTACT_GAP), True).translate((x, y))
    if (seat.hull() ^ spot).is_empty():
        ring = tuple((float(px), float(py)) for px, py in seat.hull().to_polygons()[0])
        by = apart(((x, y),), ring)
        return SeatFault("tips", by, f"tips: its weight lies {small(by)} beside its seat on")
    return None


def bearing_lengths(beds: list[CrossSection]) -> dict[str, float]:
    """How far a lintel bears at either end, along it, where it bears least. [m]

    Parameters
    ----------
    beds : list of CrossSection
        Where it lies on each piece under it.

    Returns
    -------
    dict of str to float
        By ``left`` and ``right``. [m]
    """
    found = {"left": 0.0, "right": 0.0}
    for bed in beds:
        if bed.is_empty() or shrunk(bed, LEAST_WIDTH / 2 - CONTACT_GAP).area() < LEAST_AREA:
            continue
        x0, y0, x1, y1 = bed.bounds()
        across = [tuple((float(y), float(x)) for x, y in ring) for ring in bed.to_polygons()]
        least = min(
            sum(b - a for ring in across for a, b in chords(ring, y))
            for y in (y0 + CONTACT_GAP, (y0 + y1) / 2, y1 - CONTACT_GAP)
        )
        sides = found if x0 < 0 < x1 else ["left" if x1 <= 0 else "right"]
        for side in sides:
            found[side] = max(found[side], least)
    return found


def carriers(piece: SetPiece, below: tuple[SetPiece, ...]) -> tuple[SetPiece, ...]:
    """Pieces of the lift under it that carry a piece, read from where they touch."""
    return tuple(
        b for b in below if shrunk(contact(piece, b), LEAST_WIDTH / 4).area() >= LEAST_AREA
    )
