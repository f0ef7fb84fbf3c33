"""Where the masonry stands in its room: what it takes of the floor and of the wall. [m]"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.bodies import plan_rings, solid_body
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import signed_area
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.built.standing import between_levels
from fireplace_calc.scene.setting.forms import block

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

PROUD = 10 * INCH
"""How far the face stands out of the wall where nobody has said; our own choice. [m]"""
UNDER = 0.3
"""So far under the floor the masonry is looked at, that a firebox is closed at its foot. [m]"""
OVER = 0.01
"""What stands no higher over the floor is walked on. [m]"""
LID = 0.02
"""Thickness of what closes a cut flue. [m]"""
SKIN = 1e-4
"""A cut is made so far behind a face, that it does not fall into it. [m]"""


def wall_plane(geometry: Geometry) -> float:
    """Where the wall beside the breast stands behind the face. [m]"""
    told = geometry.design.breast.stands_out
    return PROUD if told is None else told


def taken_of_the_floor(geometry: Geometry) -> CrossSection:
    """What the floor leaves out for the masonry.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CrossSection
        Right, and away from the room. [m]
    """
    return taken_at(geometry, -SKIN)


def taken_of_the_ceiling(geometry: Geometry) -> CrossSection:
    """What the ceiling leaves out for the masonry.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CrossSection
        Right, and away from the room. [m]
    """
    return taken_at(geometry, wall_top(geometry) + SKIN)


def taken_at(geometry: Geometry, level: float) -> CrossSection:
    """What stands in the room at a level.

    Parameters
    ----------
    geometry : Geometry
    level : float
        [m]

    Returns
    -------
    CrossSection
        Right, and away from the room. [m]
    """
    from manifold3d import CrossSection, FillRule

    return _united(
        CrossSection([list(ring) for ring in plan_rings(part, level)], FillRule.Positive)
        for part in geometry.parts
        if part.bottom < level < part.top
    )


def footprint(geometry: Geometry) -> CrossSection:
    """What stands over the floor, seen from above, up to the ceiling.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CrossSection
        Right, and away from the room. [m]
    """
    low, high = OVER, wall_top(geometry)
    bodies = [
        *_bodies(geometry, low, high),
        *(
            solid_body(loft)
            for part in mantel_parts(geometry)
            for run in part.group.runs
            for loft in run.lofts
        ),
    ]
    return _united(body.project() for body in bodies)


def taken_of_the_wall(geometry: Geometry) -> CrossSection:
    """What the wall beside the breast leaves out for it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CrossSection
        Right, and down. [m]
    """
    low, high, f = -UNDER, wall_top(geometry) + UNDER, geometry.frame
    at = wall_plane(geometry) + SKIN
    filled = block((-f.half_width, f.half_width), (0.0, f.depth), (f.hearth - 0.01, f.opening_top))
    open_ended = _united(
        body.rotate((90.0, 0.0, 0.0)).slice(at) for body in (*_bodies(geometry, low, high), filled)
    )
    return _united([open_ended, *_lids(open_ended, -high, -low)])


def _lids(cut: CrossSection, *ends: float) -> Iterator[CrossSection]:
    """What closes a flue where it is cut off, so that the air in it is no part of the room."""
    from manifold3d import CrossSection

    for end in ends:
        across = [x for ring in cut.to_polygons() for x, down in ring if abs(down - end) < SKIN]
        if across:
            size = (max(across) - min(across), LID)
            yield CrossSection.square(size).translate((min(across), end - LID / 2))


def _bodies(geometry: Geometry, low: float, high: float) -> Iterator[Manifold]:
    """What is built between two levels, part by part."""
    for part in geometry.parts:
        if part.top > low and part.bottom < high:
            yield between_levels(part, low, high)


def _united(cuts: Iterable[CrossSection]) -> CrossSection:
    """Without holes, and without what nobody sees."""
    from manifold3d import CrossSection, FillRule, OpType

    whole = CrossSection.batch_boolean(list(cuts), OpType.Add)
    rings = [
        ring
        for ring in whole.to_polygons()
        if signed_area(tuple((float(x), float(y)) for x, y in ring)) > 0
    ]
    return CrossSection(rings, FillRule.Positive).simplify(SKIN)
