"""Bricks of an endless bond cut to a face."""

from __future__ import annotations

from math import hypot
from typing import NamedTuple

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.faces import Face
from fireplace_calc.brickwork.fitted.gauge import LEAST_PIECE
from fireplace_calc.brickwork.unit import LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import Polygon, area, box, joined, overlap, tidy


class Piece(NamedTuple):
    """One brick of a layout: its outline [m], whether it is whole, its area [m2], what of a
    brick's length and height it needs [m], and which way its length runs [-].
    """

    ring: Polygon
    whole: bool
    area: float
    length: float
    height: float
    along: tuple[float, float] = (1.0, 0.0)

    @property
    def thin(self) -> bool:
        """Whether it is thinner than can be cut."""
        return min(self.length, self.height) <= LEAST_PIECE + ROUNDING


def _sides(zone: Polygon) -> Array:
    """Each side of a convex zone as a, b, c, (n, 3): a point is inside where a x + b y + c is not
    negative. [-, m]
    """
    import numpy as np  # here, so that importing the package does not wait for it

    rows = []
    for k, (ex, ey) in enumerate(zone):
        x, y = zone[k - 1]
        long = hypot(ex - x, ey - y)
        dx, dy = (ex - x) / long, (ey - y) / long
        rows.append((-dy, dx, dy * x - dx * y))
    return np.array(rows)


def _cuts(corners: Array, rings: list[Polygon], zone: Polygon) -> dict[int, Polygon]:
    """What of each brick lies in a convex zone, by the brick's number; all of it is the brick's own
    ring.
    """
    import numpy as np  # here, so that importing the package does not wait for it

    sides = _sides(zone)
    # How far each corner of each brick lies inside each side, (bricks, 4, sides). [m]
    depth = corners @ sides[:, :2].T + sides[:, 2]
    crossed = depth.min(axis=1) < -1e-7
    touching = (depth.max(axis=1) > LEAST_CUT / 8).all(axis=1)
    inside = touching & ~crossed.any(axis=1)
    found: dict[int, Polygon] = {k: rings[k] for k in np.flatnonzero(inside).tolist()}
    cut = np.flatnonzero(touching & ~inside)
    for k, by in zip(cut.tolist(), crossed[cut].tolist(), strict=True):
        ring = tidy(overlap(rings[k], zone, [side for side, yes in enumerate(by) if yes]))
        if ring:
            found[k] = ring
    return found


def _piece(brick: Polygon, ring: Polygon, unit: Unit) -> Piece | None:
    """A brick, whole or cut; nothing when it is too thin to be one."""
    full = unit.length * unit.height
    (ax, ay), (bx, by) = brick[0], brick[1]
    side = hypot(bx - ax, by - ay)
    ux, uy = (bx - ax) / side, (by - ay) / side
    if ring is brick and side > unit.length - ROUNDING:
        return Piece(ring, True, full, unit.length, unit.height, (ux, uy))
    along = [ux * x + uy * y for x, y in ring]
    across = [ux * y - uy * x for x, y in ring]
    long, high, bare = max(along) - min(along), max(across) - min(across), area(ring)
    if min(long, high) <= LEAST_CUT + ROUNDING or bare < LEAST_CUT**2:
        return None
    return Piece(ring, bare > full * (1 - 1e-6), bare, long, high, (ux, uy))


def cut_to_face(
    face: Face, unit: Unit, corners: Array, foot: float | None = None
) -> dict[int, list[Piece]]:
    """What of each brick lies in a face.

    Parameters
    ----------
    face : Face
    unit : Unit
    corners : array, (n, 4, 2)
        Of every brick, counter-clockwise, the first side along it. [m]
    foot : float or None
        No piece reaches under it. [m]

    Returns
    -------
    dict
        By the number of the brick [-]; those that leave no piece are not in it.
    """
    rings: list[Polygon] = [tuple(map(tuple, ring)) for ring in corners.tolist()]
    zones = face.zones
    if foot is not None:
        left, _, right, top = face.box
        over = box(left - 1.0, right + 1.0, foot, top + 1.0)
        zones = (tidy(overlap(zones[0], over)), *zones[1:])
    parts = [_cuts(corners, rings, zone) for zone in zones]
    kept: list[tuple[int, Polygon]] = list(parts[0].items())
    if len(parts) > 1:
        below, above = parts
        level = face.zones[1][0][1]
        # A brick that both zones cut is joined again where they meet.
        kept = [(k, ring) for k, ring in kept if k not in above] + [
            (k, ring) for k, ring in above.items() if k not in below
        ]
        for k in below.keys() & above.keys():
            one = joined(below[k], above[k], level)
            kept += [(k, one)] if one else [(k, below[k]), (k, above[k])]
    found: dict[int, list[Piece]] = {}
    for k, ring in kept:
        if piece := _piece(rings[k], ring, unit):
            found.setdefault(k, []).append(piece)
    return found
