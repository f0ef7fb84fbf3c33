"""Two pieces in one place: how far one stands inside the other. [m]"""

from __future__ import annotations

import atexit
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.geometry.assembled.solids import piece_part
from fireplace_calc.geometry.bodies import solid_body
from fireplace_calc.pieces.records import SetPiece

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

NOTHING = 1e-9
"""A common volume less than this is a touch. [m3]"""
HALVINGS = 16
"""Of the widest circle, from a meter to a sixty-thousandth. [-]"""


@lru_cache(maxsize=1024)
def body(piece: SetPiece) -> Manifold:
    """A piece on its bed at nought, faceted where it is round."""
    from manifold3d import Manifold, OpType

    made = piece_part(piece)
    whole = Manifold.batch_boolean([solid_body(s) for s in made.adds], OpType.Add)
    if not made.cuts:
        return whole
    return whole - Manifold.batch_boolean([solid_body(s) for s in made.cuts], OpType.Add)


@lru_cache(maxsize=8192)
def clash(one: SetPiece, other: SetPiece, up: float) -> tuple[float, str] | None:
    """How far one piece stands inside another, the shortest way out.

    Parameters
    ----------
    one, other : SetPiece
    up : float
        Of the other's bed over the first's. [m]

    Returns
    -------
    tuple or None
        The length [m], and whether it is ``in plan`` or ``in height``; none where they do not meet.
    """
    both = body(one) ^ body(other).translate((0.0, 0.0, up))
    if both.volume() < NOTHING:
        return None
    box = both.bounding_box()
    high, thick = box[5] - box[2], _thickness(both.slice((box[2] + box[5]) / 2))
    return (thick, "in plan") if thick < high else (high, "in height")


def _thickness(section: CrossSection) -> float:
    """Widest circle inside a section, by halving: a ring's own box says nothing. [m]"""
    from manifold3d import JoinType

    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if section.offset(-middle / 2, JoinType.Miter, 4.0).is_empty():
            high = middle
        else:
            low = middle
    return high


@atexit.register
def _release_bodies() -> None:
    body.cache_clear()
