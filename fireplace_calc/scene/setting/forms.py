"""The few forms that furniture is made of: blocks with eased edges, cushions, turned and bent
things. [m]
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import cos, pi, sin
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from manifold3d import Manifold

    from fireplace_calc.scene.records import Point

Ends = tuple[float, float]
"""Where something begins and ends along one direction. [m]"""
CHAMFERED, ROUNDED, SOFT = 4, 8, 12
"""Facets round an eased edge, all the way: cut once, or bent. [-]"""


def block(x: Ends, y: Ends, z: Ends, ease: float = 0.0, facets: int = CHAMFERED) -> Manifold:
    """A block, its edges eased.

    Parameters
    ----------
    x, y, z : tuple of float
        [m]
    ease : float
        How far its edges are taken off. [m]
    facets : int
        Of a full turn. [-]
    """
    from manifold3d import Manifold

    if ease <= 0:
        size = (x[1] - x[0], y[1] - y[0], z[1] - z[0])
        return Manifold.cube(size).translate((x[0], y[0], z[0]))
    ball = Manifold.sphere(ease, facets)
    corners = (
        (a, b, c)
        for a in (x[0] + ease, x[1] - ease)
        for b in (y[0] + ease, y[1] - ease)
        for c in (z[0] + ease, z[1] - ease)
    )
    return Manifold.batch_hull([ball.translate(at) for at in corners])


def cushion(size: Point, full: float = 2.6, square: float = 5.0, parts: int = 4) -> Manifold:
    """Something stuffed: square from above, full in the middle, thin at its seams; its middle at
    nought.

    Parameters
    ----------
    size : tuple of float
        Long, deep, thick. [m]
    full : float
        How round it is from above to below: 2 is a ball. [-]
    square : float
        How square it is from above: 2 is round. [-]
    parts : int
        Of a long edge. [-]
    """
    import numpy as np
    from manifold3d import Manifold, Mesh64

    made = Manifold.cube((2, 2, 2), True).refine(parts).to_mesh64()
    points = np.sin(pi / 2 * np.asarray(made.vert_properties)[:, :3])  # closer at the edges
    x, y, z = np.abs(points).T
    flat = (x**square + y**square) ** (full / square)
    reach = (flat + z**full) ** (1 / full)
    points = np.ascontiguousarray(points / reach[:, None] * (np.array(size) / 2))
    return Manifold(Mesh64(points, np.array(made.tri_verts, dtype="uint64")))


def pillow(wide: float, thick: float, parts: int = 6) -> Manifold:
    """A loose cushion: square, its seam pulled in between its corners; upright, its middle at
    nought, its faces to the front and to the back.

    Parameters
    ----------
    wide, thick : float
        [m]
    parts : int
        Of an edge. [-]
    """
    import numpy as np
    from manifold3d import Manifold, Mesh64

    k = np.sin(np.linspace(-pi / 2, pi / 2, parts + 1))
    u, v = (a.ravel() for a in np.meshgrid(k, k, indexing="ij"))
    full = thick / 2 * ((1 - u**2) * (1 - v**2)) ** 0.4
    across = wide / 2 * np.stack([u * (0.93 + 0.07 * v**2), v * (0.93 + 0.07 * u**2)])
    rows = np.arange((parts + 1) ** 2).reshape(parts + 1, parts + 1)
    a, b, c, d = rows[:-1, :-1], rows[1:, :-1], rows[1:, 1:], rows[:-1, 1:]
    front = np.concatenate([np.stack(t, -1).reshape(-1, 3) for t in ((a, b, c), (a, c, d))])
    # Both faces share the points of the seam.
    seam = np.maximum(np.abs(u), np.abs(v)) > 1 - 1e-9
    back = np.where(seam, rows.ravel(), np.cumsum(~seam) - 1 + len(u))
    points = np.concatenate(
        [
            np.stack([across[0], -full, across[1]], -1),
            np.stack([across[0], full, across[1]], -1)[~seam],
        ]
    )
    faces = np.concatenate([front, back[front[:, ::-1]]]).astype("uint64")
    return Manifold(Mesh64(np.ascontiguousarray(points), faces))


def turned(profile: Sequence[tuple[float, float]], facets: int = 16) -> Manifold:
    """Turned on a lathe.

    Parameters
    ----------
    profile : sequence of tuple
        Distance from the axis, and level, from the foot up; both ends on the axis. [m]
    facets : int
        [-]
    """
    from manifold3d import CrossSection

    ring = [(max(r, 0.0), z) for r, z in profile]
    return CrossSection([ring]).revolve(facets)


def rod(points: Sequence[Point], radius: float, facets: int = 6) -> Manifold:
    """A rod bent along a line.

    Parameters
    ----------
    points : sequence of tuple
        Where its axis runs. [m]
    radius : float
        [m]
    facets : int
        [-]
    """
    from manifold3d import Manifold

    ball = Manifold.sphere(radius, facets)
    return joined(
        Manifold.batch_hull([ball.translate(a), ball.translate(b)]) for a, b in pairwise(points)
    )


def extruded(outline: Sequence[tuple[float, float]], high: float) -> Manifold:
    """Something of one outline from above, standing at nought.

    Parameters
    ----------
    outline : sequence of tuple
        Counter-clockwise. [m]
    high : float
        [m]
    """
    from manifold3d import CrossSection

    return CrossSection([list(outline)]).extrude(high)


def tapered(low: float, high: float, foot: float, top: float, facets: int = 12) -> Manifold:
    """A round leg, between two levels.

    Parameters
    ----------
    low, high : float
        [m]
    foot, top : float
        Radius at either end. [m]
    facets : int
        [-]
    """
    from manifold3d import Manifold

    return Manifold.cylinder(high - low, foot, top, facets).translate((0.0, 0.0, low))


def joined(bodies: Iterable[Manifold]) -> Manifold:
    """Several as one, with nothing inside."""
    from manifold3d import Manifold, OpType

    return Manifold.batch_boolean(list(bodies), OpType.Add)


def beside(bodies: Iterable[Manifold]) -> Manifold:
    """Several that do not meet, as one."""
    from manifold3d import Manifold

    return Manifold.compose(list(bodies))


def circle(radius: float, parts: int) -> list[tuple[float, float]]:
    """Points of a circle, counter-clockwise. [m]

    Parameters
    ----------
    radius : float
        [m]
    parts : int
        [-]
    """
    turns = (2 * pi * k / parts for k in range(parts))
    return [(radius * cos(t), radius * sin(t)) for t in turns]
