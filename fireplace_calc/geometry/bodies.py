"""The few shapes as bodies of manifold3d, faceted where they are round. [m]"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import atan2, cos, hypot, sin
from typing import TYPE_CHECKING

from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.parts import Part
from fireplace_calc.geometry.polygons import Point, Polygon, is_convex, signed_area
from fireplace_calc.geometry.solids import Loft, Solid

if TYPE_CHECKING:
    from manifold3d import Manifold

CHORDS = 40
"""Straight pieces of an arch's curve: its volume is off by 0.11 % at most, in a half circle. [-]"""
HAIR = 1e-6
"""Gap that is none, between two outlines that touch. [m]"""
CRUMB = 1e-4
"""Of a cut piece; what is smaller is left out. [m2]"""


def solid_body(solid: Solid, size: float = 1.0) -> Manifold:
    """One of the few shapes as a body. A hull makes what is convex.

    Parameters
    ----------
    solid : Solid
    size : float
        How much larger than it is, about the mean of its corners. [-]
    """
    from manifold3d import Manifold, OpType

    if isinstance(solid, ArchRing):
        inner, outer = _arc(solid), _arc(solid, solid.depth)
        stones = [(inner[k], inner[k + 1], outer[k + 1], outer[k]) for k in range(CHORDS)]
        return Manifold.batch_boolean(
            [_hull(_across(stone, solid.thickness), size) for stone in stones], OpType.Add
        )
    if isinstance(solid, ArchVoid):
        whole, reach = (
            _hull(_across(_arc(solid), solid.thickness, solid.front), size),
            size * (solid.span / 2 + solid.splay * solid.front) / hypot(1.0, solid.splay),
        )
        return whole.trim_by_plane((1.0, -solid.splay, 0.0), -reach).trim_by_plane(
            (-1.0, -solid.splay, 0.0), -reach
        )
    lower, upper = (
        (solid.lower, solid.upper)
        if isinstance(solid, Loft)
        else (solid.cut(solid.bottom), solid.cut(solid.top))
    )
    if lower is None or upper is None:
        raise ValueError(f"A solid is not cut at its own ends: {solid}")
    if not (is_convex(lower) and is_convex(upper)):
        return _loft(lower, upper, solid.bottom, solid.top, size)
    return _hull(
        [(x, y, solid.bottom) for x, y in lower] + [(x, y, solid.top) for x, y in upper], size
    )


def plan_rings(part: Part, level: float) -> list[Polygon]:
    """Level cut of a part whose cuts run into each other or out of it: what is left, ring by ring.

    Parameters
    ----------
    part : Part
    level : float
        [m]

    Returns
    -------
    list of Polygon
        Outlines counter-clockwise, holes clockwise. [m]
    """
    from manifold3d import CrossSection, FillRule, OpType

    def united(rings: list[Polygon]) -> CrossSection:
        return CrossSection.batch_boolean(
            [CrossSection([list(r)], FillRule.NonZero) for r in rings], OpType.Add
        )

    adds, cuts = part.plan(level)
    if not adds:
        return []
    left = united(adds) - united(cuts)
    return [tuple((float(x), float(y)) for x, y in ring) for ring in left.to_polygons()]


def kept_inside(
    rings: Iterable[Polygon], within: Sequence[Polygon], holes: Sequence[Polygon] = ()
) -> list[Polygon]:
    """What of some rings lies inside others and outside holes; one that lies inside whole comes
    back as it is.

    Parameters
    ----------
    rings : iterable of Polygon
        [m]
    within, holes : sequence of Polygon
        They may overlap each other. [m]

    Returns
    -------
    list of Polygon
        Crumbs of less than a square centimeter are left out. [m]
    """
    from manifold3d import CrossSection, FillRule, JoinType, OpType

    def one(ring: Polygon) -> CrossSection:
        return CrossSection([list(ring)], FillRule.NonZero)

    def united(every: Sequence[Polygon]) -> CrossSection:
        return CrossSection.batch_boolean([one(ring) for ring in every], OpType.Add)

    # What merely touches is joined.
    region = united(within).offset(HAIR, JoinType.Miter).offset(-HAIR, JoinType.Miter)
    if holes:
        region = region - united(holes)
    found: list[Polygon] = []
    for ring in rings:
        whole = one(ring)
        left = whole ^ region
        if left.area() > whole.area() * (1 - 1e-9):
            found.append(ring)
            continue
        kept = [tuple((float(x), float(y)) for x, y in part) for part in left.to_polygons()]
        found += [part for part in kept if signed_area(part) > CRUMB]
    return found


def _hull(corners: list[tuple[float, float, float]], size: float) -> Manifold:
    """Convex solid of these corners, each pushed out from their mean."""
    import numpy as np
    from manifold3d import Manifold

    points = np.array(corners)
    mean = points.mean(axis=0)
    return Manifold.hull_points(mean + (points - mean) * size if size != 1.0 else points)


def _loft(lower: Polygon, upper: Polygon, bottom: float, top: float, size: float) -> Manifold:
    """Solid between two outlines that are not convex, corner by corner, each pushed out from their
    mean.
    """
    import numpy as np
    from manifold3d import Manifold, Mesh64, triangulate

    n = len(lower)
    if signed_area(lower) < 0:
        lower, upper = lower[::-1], upper[::-1]
    cap = np.asarray(triangulate([np.asarray(lower)]))
    k = np.arange(n)
    after = (k + 1) % n
    sides = np.concatenate(
        [np.column_stack([k, after, n + after]), np.column_stack([k, n + after, n + k])]
    )
    points = np.array([(*p, bottom) for p in lower] + [(*p, top) for p in upper])
    mean = points.mean(axis=0)
    faces = np.concatenate([cap[:, ::-1], cap + n, sides]).astype(np.uint64)
    return Manifold(Mesh64(mean + (points - mean) * size, faces))


def _arc(arch: ArchRing | ArchVoid, beyond: float = 0.0) -> list[Point]:
    """Soffit of an arch from left to right, or a line beyond it, as points of (x, z). The crown is
    a corner. [m]
    """
    half, center = (
        atan2(arch.span / 2, arch.radius - arch.rise),
        arch.spring + arch.rise - arch.radius,
    )
    turned = (half * (2 * k / CHORDS - 1) for k in range(CHORDS + 1))
    return [
        ((arch.radius + beyond) * sin(a), center + (arch.radius + beyond) * cos(a)) for a in turned
    ]


def _across(
    outline: Iterable[Point], thickness: float, front: float = 0.0
) -> list[tuple[float, float, float]]:
    """Corners of an outline of (x, z) drawn out away from the room, from the opening plane or
    behind it. [m]
    """
    return [(x, y, z) for x, z in outline for y in (front, front + thickness)]
