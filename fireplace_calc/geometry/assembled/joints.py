"""Joints between pieces side by side: how wide, and where nothing stands. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import hypot, inf

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.sections import SKIN, section
from fireplace_calc.geometry.polygons import Point
from fireplace_calc.pieces.records import SetPiece

FACING = 5.0
"""Sides that face each other nearer than so many of the widest joint are a joint. [-]"""


@dataclass(frozen=True, slots=True)
class Seam:
    """The joint between two pieces of a lift.

    Attributes
    ----------
    least, most : float
        Narrowest and widest place; infinite and nought where no sides face each other. [m]
    """

    least: float
    most: float


Side = tuple[Point, Point]


def _sides(piece: SetPiece, height: float) -> list[Side]:
    made: list[Side] = []
    for ring in section(piece, height).to_polygons():
        corners = [(float(x), float(y)) for x, y in ring]
        made += pairwise([*corners, corners[0]])
    return made


@lru_cache(maxsize=8192)
def seam(one: SetPiece, other: SetPiece) -> Seam:
    """The joint between two pieces, over all sides that face each other, at foot and at head.

    Parameters
    ----------
    one, other : SetPiece

    Returns
    -------
    Seam
    """
    reach = FACING * max(one.perpend.most, other.perpend.most)
    least, most = inf, 0.0
    for share in (0.0, 1.0):
        here = _sides(one, _inside(one, share))
        there = _sides(other, _inside(other, share))
        for side in here:
            for facing in there:
                found = _between(side, facing, reach)
                if found is not None:
                    least, most = min(least, found[0]), max(most, found[1])
    return Seam(least, most)


def _inside(piece: SetPiece, share: float) -> float:
    return min(max(share * piece.height, SKIN), piece.height - SKIN)


def _between(side: Side, facing: Side, reach: float) -> tuple[float, float] | None:
    """Narrowest and widest distance between two sides where they face each other; none where they
    do not, or are too far apart to be a joint.
    """
    (ax, ay), (bx, by) = side
    size = hypot(bx - ax, by - ay)
    if size < CONTACT_GAP:
        return None
    ux, uy = (bx - ax) / size, (by - ay) / size
    (cx, cy), (dx, dy) = facing
    if (dx - cx) * ux + (dy - cy) * uy >= 0:  # runs the same way: it looks the same way
        return None
    # Along the side, and out of it (to the right of a ring that runs counter-clockwise).
    s, out_s = (cx - ax) * ux + (cy - ay) * uy, (cx - ax) * uy - (cy - ay) * ux
    t, out_t = (dx - ax) * ux + (dy - ay) * uy, (dx - ax) * uy - (dy - ay) * ux
    if s > t:
        s, t, out_s, out_t = t, s, out_t, out_s
    low, high = max(s, 0.0), min(t, size)
    if high - low <= CONTACT_GAP:
        return None

    def away(at: float) -> float:
        return out_s + (out_t - out_s) * (at - s) / (t - s)

    near, far = sorted((away(low), away(high)))
    return (near, far) if near > -CONTACT_GAP and far < reach else None
