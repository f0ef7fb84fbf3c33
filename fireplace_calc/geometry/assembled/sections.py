"""Level sections of pieces, exact to a few billionths: what lies on a bed, what can carry, what is
clear. [m]

manifold3d's outlines do what polygons of our own cannot: rings, notches, offsets with mitred
corners.
"""

from __future__ import annotations

import atexit
from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from math import dist, pi, sin

from manifold3d import CrossSection, FillRule, JoinType, OpType

from fireplace_calc.geometry.assembled.solids import piece_part
from fireplace_calc.geometry.polygons import Point, Polygon, signed_area
from fireplace_calc.geometry.solids import CIRCLE
from fireplace_calc.pieces.records import Round, SetPiece

SKIN = 1e-7
"""How far over or under a level a section is taken, so that what only touches it counts. [m]"""


EVEN = (2 * pi / (len(CIRCLE) * sin(2 * pi / len(CIRCLE)))) ** 0.5
"""So much wider a polygon has the area of the circle it stands for. [-]"""


def united(sections: Iterable[CrossSection]) -> CrossSection:
    """All of them as one."""
    return CrossSection.batch_boolean(list(sections), OpType.Add)


def outlined(rings: Iterable[Polygon]) -> CrossSection:
    """Some rings as one outline, whichever way round they run.

    Parameters
    ----------
    rings : iterable of Polygon
        [m]
    """
    return CrossSection([list(r) for r in rings], FillRule.NonZero)


@lru_cache(maxsize=4096)
def section(piece: SetPiece, height: float) -> CrossSection:
    """What a piece is at a height.

    Parameters
    ----------
    piece : SetPiece
    height : float
        Over its bed. [m]
    """
    adds, cuts = piece_part(piece).plan(height)
    whole = united(outlined([r]) for r in adds) if adds else outlined([])
    return whole - united(outlined([r]) for r in cuts) if cuts and adds else whole


def underside(piece: SetPiece) -> CrossSection:
    """What can lie on a bed."""
    return section(piece, SKIN)


@lru_cache(maxsize=1024)
def bearing(piece: SetPiece) -> CrossSection:
    """What can carry the next piece: its top, but not the tongue that stands over it."""
    over = section(piece, piece.height + SKIN)
    return section(piece, piece.height - SKIN) - over


@lru_cache(maxsize=8192)
def contact(upper: SetPiece, lower: SetPiece) -> CrossSection:
    """Where one piece lies on another."""
    return underside(upper) ^ bearing(lower)


@lru_cache(maxsize=1024)
def even(piece: SetPiece) -> SetPiece:
    """A piece whose circles are a hair larger, so that their polygons have the area of the circles.

    Parameters
    ----------
    piece : SetPiece
    """
    if not any(isinstance(s, Round) for s in piece.adds + piece.cuts):
        return piece
    adds, cuts = (
        tuple(replace(s, radius=s.radius * EVEN) if isinstance(s, Round) else s for s in shapes)
        for shapes in (piece.adds, piece.cuts)
    )
    return replace(piece, adds=adds, cuts=cuts)


@lru_cache(maxsize=8192)
def contact_area(upper: SetPiece, lower: SetPiece) -> float:
    """Area of their bed.

    Parameters
    ----------
    upper, lower : SetPiece

    Returns
    -------
    float
        [m2]
    """
    return float(contact(even(upper), even(lower)).area())


def shrunk(outline: CrossSection, by: float) -> CrossSection:
    """An outline less a rim.

    Parameters
    ----------
    outline : CrossSection
    by : float
        Width of the rim. [m]
    """
    return outline.offset(-by, JoinType.Miter, 4.0)


def closed(sections: list[CrossSection], reach: float) -> CrossSection:
    """A section with every joint in it filled: offset out and in, mitred.

    Parameters
    ----------
    sections : list of CrossSection
    reach : float
        Half the widest joint that is filled. [m]
    """
    return united(sections).offset(reach, JoinType.Miter, 4.0).offset(-reach, JoinType.Miter, 4.0)


def holes(outline: CrossSection, least: float = 1e-4) -> list[Polygon]:
    """Rings of what an outline surrounds, the largest first. [m]

    Parameters
    ----------
    outline : CrossSection
    least : float
        Smaller ones are no way for smoke. [m2]

    Returns
    -------
    list of Polygon
        Counter-clockwise. [m]
    """
    rings = [tuple((float(x), float(y)) for x, y in p) for p in outline.to_polygons()]
    return sorted(
        (r[::-1] for r in rings if signed_area(r) < -least), key=signed_area, reverse=True
    )


def apart(one: Polygon, other: Polygon) -> float:
    """Least distance between two rings, or two spots, that do not cross.

    Parameters
    ----------
    one, other : Polygon
        [m]

    Returns
    -------
    float
        [m]
    """
    return min(
        _off(spot, a, b)
        for here, there in ((one, other), (other, one))
        for spot in here
        for a, b in pairwise((*there, there[0]))
    )


def _off(spot: Point, a: Point, b: Point) -> float:
    """Distance of a spot from a side. [m]"""
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dy * dy
    along = ((spot[0] - a[0]) * dx + (spot[1] - a[1]) * dy) / long if long else 0.0
    share = min(max(along, 0.0), 1.0)
    return dist(spot, (a[0] + share * dx, a[1] + share * dy))


@atexit.register
def _release_sections() -> None:
    """What outlives the library's own end is reported as lost, on the reader's screen."""
    for kept in (section, bearing, contact):
        kept.cache_clear()
