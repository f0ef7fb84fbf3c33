"""Which of two pieces stands first, so that the other can be lowered beside or over it. [m]"""

from __future__ import annotations

import atexit
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.sections import SKIN, section
from fireplace_calc.geometry.assembled.solids import extent, piece_part
from fireplace_calc.pieces.records import SetPiece

if TYPE_CHECKING:
    from manifold3d import CrossSection

LEAST_COVER = 1e-6
"""Pieces that cover less of each other, seen from above, pass by each other. [m2]"""


@lru_cache(maxsize=1024)
def _shadow(piece: SetPiece) -> CrossSection:
    """What a piece covers, seen from above. [m]"""
    return body(piece).project()


@lru_cache(maxsize=65536)
def covers(one: SetPiece, other: SetPiece) -> bool:
    """Whether two pieces share any of their plans, so that one of them stands over the other.

    Parameters
    ----------
    one, other : SetPiece
    """
    a, b = extent(one), extent(other)
    if a[0] >= b[1] or b[0] >= a[1] or a[2] >= b[3] or b[2] >= a[3]:
        return False
    return float((_shadow(one) ^ _shadow(other)).area()) > LEAST_COVER


@lru_cache(maxsize=4096)
def laps_over(upper: SetPiece, lower: SetPiece, up: float) -> bool:
    """Whether some of one piece lies over some of another that stands beside it.

    Parameters
    ----------
    upper, lower : SetPiece
        Of one lift.
    up : float
        Of the upper's bed over the lower's. [m]
    """
    if not covers(upper, lower):
        return False
    below = [(z, section(lower, z)) for z in _levels(lower)]
    above = [(z + up, section(upper, z)) for z in _levels(upper)]
    return any(
        high > low + SKIN and float((here ^ there).area()) > LEAST_COVER
        for low, here in below
        for high, there in above
    )


def _levels(piece: SetPiece) -> list[float]:
    """Heights between which nothing begins or ends: just inside both, and half way. [m]"""
    made = piece_part(piece)
    ends = sorted({z for s in made.adds + made.cuts for z in (s.bottom, s.top)})
    found: list[float] = []
    for low, high in zip(ends, ends[1:], strict=False):
        found += [low + SKIN, (low + high) / 2, high - SKIN]
    return found


@atexit.register
def _release_shadows() -> None:
    _shadow.cache_clear()
