"""The mortar of a lift as solids: the bed under it, and the joints between its pieces. [m]"""

from __future__ import annotations

from functools import lru_cache

from manifold3d import CrossSection

from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.passage import lift_section
from fireplace_calc.geometry.assembled.sections import SKIN, section, shrunk, united
from fireplace_calc.geometry.from_set.tapering import between, matched
from fireplace_calc.geometry.polygons import Polygon, signed_area
from fireplace_calc.geometry.solids import Cylinder, Solid, prism
from fireplace_calc.pieces.records import Round, SetPiece, Shape, Tapered

SLIVER = 1e-6
"""Half the width of what an offset leaves along a side, and is no joint. [m]"""
CRUMB = 1e-7
"""Smaller rings are only what an offset leaves. [m2]"""
Solids = tuple[list[Solid], list[Solid]]
"""What is added, and what is cut out of that. [m]"""
Rings = tuple[tuple[Polygon, ...], tuple[Polygon, ...]]
"""Outlines, and the holes in them. [m]"""


def rings_of(outline: CrossSection) -> Rings:
    """Outlines and holes, counter-clockwise all.

    Parameters
    ----------
    outline : CrossSection

    Returns
    -------
    tuple of tuple of Polygon
        [m]
    """
    bare = shrunk(shrunk(outline, SLIVER), -SLIVER)
    rings = [tuple((float(x), float(y)) for x, y in ring) for ring in bare.to_polygons()]
    return (
        tuple(r for r in rings if signed_area(r) > CRUMB),
        tuple(r[::-1] for r in rings if signed_area(r) < -CRUMB),
    )


@lru_cache(maxsize=1024)
def bed_rings(piece: SetPiece, below: tuple[SetPiece, ...]) -> Rings:
    """Where a piece lies on those below; on the base as it is where there are none.

    Parameters
    ----------
    piece : SetPiece
    below : tuple of SetPiece

    Returns
    -------
    tuple of tuple of Polygon
        [m]
    """
    if not below:
        return rings_of(section(piece, SKIN))
    foot = piece.height / 2 if piece.plain else SKIN  # a socket is filled, to the bore
    return rings_of(section(piece, foot) ^ lift_section(below, 1.0))


@lru_cache(maxsize=512)
def joint_rings(pieces: tuple[SetPiece, ...], share: float) -> Rings:
    """Upright joints of a lift at a share of its height.

    Parameters
    ----------
    pieces : tuple of SetPiece
    share : float
        [-]

    Returns
    -------
    tuple of tuple of Polygon
        [m]
    """
    if len(pieces) < 2:
        return (), ()
    here = [section(p, min(max(share * p.height, SKIN), p.height - SKIN)) for p in pieces]
    return rings_of(lift_section(pieces, share) - united(here))


@lru_cache(maxsize=512)
def joints_in_bed(pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...]) -> Rings:
    """Where the upright joints of a lift run down through its bed: as far as something is below.

    Parameters
    ----------
    pieces, below : tuple of SetPiece

    Returns
    -------
    tuple of tuple of Polygon
        [m]
    """
    if len(pieces) < 2:
        return (), ()
    between_them = lift_section(pieces, 0.0) - united(section(p, SKIN) for p in pieces)
    return rings_of(between_them ^ lift_section(below, 1.0) if below else between_them)


def bed_solids(
    one: Placed, below: tuple[SetPiece, ...], under: float, set_back: float, level: float
) -> Solids:
    """The bed under one piece: what it adds, and the holes in that.

    Parameters
    ----------
    one : Placed
    below : tuple of SetPiece
        Of the lift under it.
    under : float
        What its bed lies on, over the assembly's start. [m]
    set_back : float
        Of the set's front line from the opening plane. [m]
    level : float
        Of the assembly's start. [m]

    Returns
    -------
    tuple of list
        Of solids. [m]
    """
    bottom, top = under + level, one.level + level
    if top - bottom <= SKIN:
        return [], []
    if one.piece.plain and below and all(p.plain for p in below):
        return _nested_bed(one.piece.plain, bottom, top, set_back)
    rings, holes = bed_rings(one.piece, below)
    return (
        [prism(bottom, top, _back(r, set_back)) for r in rings],
        [prism(bottom, top, _back(r, set_back)) for r in holes],
    )


def _nested_bed(
    plain: tuple[tuple[Shape, ...], tuple[Shape, ...]], bottom: float, top: float, set_back: float
) -> Solids:
    """The bed between two pieces that nest, filled to the bore. [m]"""
    adds, cuts = (
        [_between_levels(s, bottom, top, set_back) for s in shapes if _at_foot(s)]
        for shapes in plain
    )
    return adds, cuts


def _at_foot(shape: Shape) -> bool:
    """Whether a solid reaches down to its piece's bed."""
    return isinstance(shape, (Round, Tapered)) and shape.bottom <= SKIN


def _between_levels(shape: Shape, bottom: float, top: float, set_back: float) -> Solid:
    if isinstance(shape, Round):
        x, y = shape.center
        return Cylinder(bottom, top, shape.radius, (x, y + set_back))
    if isinstance(shape, Tapered):
        return prism(bottom, top, _back(shape.lower, set_back))
    raise TypeError("An arch nests in nothing.")


def joint_solids(
    here: tuple[Placed, ...],
    below: tuple[SetPiece, ...],
    under: float,
    set_back: float,
    level: float,
) -> Solids:
    """The upright joints of a lift, through its bed, as high as its lowest piece.

    Parameters
    ----------
    here : tuple of Placed
        All of one lift.
    below : tuple of SetPiece
        Of the lift under it.
    under : float
        What its bed lies on, over the assembly's start. [m]
    set_back : float
        Of the set's front line from the opening plane. [m]
    level : float
        Of the assembly's start. [m]

    Returns
    -------
    tuple of list
        Of solids. [m]
    """
    pieces = tuple(p.piece for p in here)
    found: Solids = [], []
    foot = min(p.level for p in here) + level
    for solids, outlines in zip(found, joints_in_bed(pieces, below), strict=True):
        solids += [prism(under + level, foot, _back(r, set_back)) for r in outlines]
    low, high = max(p.level for p in here) + level, here[0].top + level
    for k, solids in enumerate(found):
        foots, middles, heads = (joint_rings(pieces, share)[k] for share in (0.0, 0.5, 1.0))
        if not middles:
            continue
        if not len(foots) == len(middles) == len(heads):
            foots = heads = middles
        rings = zip(matched(middles, foots), middles, matched(middles, heads), strict=True)
        for three in rings:
            lower, middle, upper = (_back(r, set_back) for r in three)
            up = between(lower, middle, upper, low, high)
            solids.append(up)
    return found


def _back(ring: Polygon, set_back: float) -> Polygon:
    return tuple((x, y + set_back) for x, y in ring)
