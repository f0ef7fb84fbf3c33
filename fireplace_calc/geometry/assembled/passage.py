"""The smoke's way through the pieces: what a lift leaves clear when every joint is closed. [m]"""

from __future__ import annotations

import atexit
from functools import lru_cache

from manifold3d import CrossSection

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.sections import SKIN, closed, contact, holes, section
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.pieces.records import SetPiece

WALL = 1.0
"""How thick the front of an open firebox is walled off, to find what it surrounds. [m]"""


def walled(whole: CrossSection) -> CrossSection:
    """A section with its front walled off, as an opening is no way for the smoke."""
    x0, y0, x1, _ = whole.bounds()
    front = CrossSection.square((x1 - x0, WALL)).translate((x0, y0 - WALL))
    return whole + front


def reach(pieces: tuple[SetPiece, ...]) -> float:
    """Half the widest joint of a lift, and a hair.

    Parameters
    ----------
    pieces : tuple of SetPiece

    Returns
    -------
    float
        [m]
    """
    return max(p.perpend.most for p in pieces) / 2 + CONTACT_GAP


@lru_cache(maxsize=4096)
def lift_section(pieces: tuple[SetPiece, ...], share: float) -> CrossSection:
    """A lift's level section, its joints filled.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift.
    share : float
        Of each piece's height. [-]
    """
    return closed(
        [section(p, min(max(share * p.height, SKIN), p.height - SKIN)) for p in pieces],
        reach(pieces),
    )


@lru_cache(maxsize=4096)
def passage(pieces: tuple[SetPiece, ...], share: float = 0.5) -> tuple[Polygon, ...]:
    """What the smoke has in a lift, at a share of its height; one ring where the pieces close.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift.
    share : float
        Of its height. [-]

    Returns
    -------
    tuple of Polygon
        Counter-clockwise, the largest first; one for a lift that closes round one way. [m]
    """
    whole = lift_section(pieces, share)
    return tuple(holes(walled(whole)))


@lru_cache(maxsize=4096)
def bed_ways(pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...]) -> int:
    """How many ways a bed surrounds: one, or its mortar does not close round the smoke.

    Parameters
    ----------
    pieces, below : tuple of SetPiece
        Of a lift, and of the one under it.

    Returns
    -------
    int
        [-]
    """
    beds = [contact(a, b) for a in pieces for b in below]
    ring = closed([b for b in beds if not b.is_empty()], max(reach(pieces), reach(below)))
    return len(holes(ring)) if not ring.is_empty() else 0


@lru_cache(maxsize=2048)
def bed_way(pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...]) -> Polygon:
    """What a bed leaves clear round the smoke: where the pieces over it and under it do not meet.

    Parameters
    ----------
    pieces, below : tuple of SetPiece
        Of a lift, and of the one under it.

    Returns
    -------
    Polygon
        Counter-clockwise; empty where the bed does not close. [m]
    """
    share = 0.5 if any(p.plain for p in pieces) else 0.0  # a socket is filled, to the bore
    bed = lift_section(pieces, share) ^ lift_section(below, 1.0)
    found = holes(walled(bed)) if not bed.is_empty() else []
    return found[0] if found else ()


@atexit.register
def _release_sections() -> None:
    lift_section.cache_clear()
