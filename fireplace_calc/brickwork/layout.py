"""One face laid brick by brick: whole bricks, cut ones, the slivers among them, and the start that
makes the fewest.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import ceil, hypot
from typing import NamedTuple

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.bonds import basketweave_joint, brick_corners
from fireplace_calc.brickwork.faces import Face
from fireplace_calc.brickwork.unit import LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import Polygon, area, chord, joined, overlap, tidy

QUARTER = 0.25
"""A cut with less than this share of a brick is a sliver: common practice, no source. [-]"""


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


@dataclass(frozen=True)
class Layout:
    """A face with every brick in its place.

    Attributes
    ----------
    face : Face
    unit : Unit
        Its face is ``length`` by ``height``. [m]
    bond : str
        As it is laid; running where the chosen bond does not close.
    pieces : tuple of Piece
        Of one such face.
    shifted : float
        How far the start was moved off the centre line or the arris to avoid slivers. [m]
    note : str
        Why the bond is not the chosen one.
    """

    face: Face
    unit: Unit
    bond: str
    pieces: tuple[Piece, ...]
    shifted: float
    note: str = ""

    @cached_property
    def whole(self) -> int:
        """Whole bricks on one such face. [-]"""
        return sum(piece.whole for piece in self.pieces)

    @property
    def cut(self) -> int:
        """Cut pieces on one such face. [-]"""
        return len(self.pieces) - self.whole

    @cached_property
    def slivers(self) -> tuple[Piece, ...]:
        """Cuts of less than a quarter brick."""
        least = QUARTER * self.unit.length * self.unit.height * (1 - 1e-9)
        return tuple(piece for piece in self.pieces if piece.area < least)

    @cached_property
    def brick_area(self) -> float:
        """Of all bricks on one such face. [m2]"""
        return sum(piece.area for piece in self.pieces)

    @property
    def joint_area(self) -> float:
        """What the bricks leave of the face: joints, and gaps too thin for a cut. [m2]"""
        return self.face.area - self.brick_area

    @property
    def edges(self) -> Array:
        """Every side of every brick by its two ends, of shape (sides, 2, 2). [m]"""
        import numpy as np  # here, so that importing the package does not wait for it

        if not self.pieces:
            return np.empty((0, 2, 2))
        # All corners in one array; after each goes the next one, after a brick's last its first.
        sizes = np.array([len(piece.ring) for piece in self.pieces])
        corners = np.array([point for piece in self.pieces for point in piece.ring])
        ends, following = np.cumsum(sizes), np.arange(1, len(corners) + 1)
        following[ends - 1] = ends - sizes
        return np.stack([corners, corners[following]], 1)


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
    ux, uy = (bx - ax) / unit.length, (by - ay) / unit.length
    if ring is brick:
        return Piece(ring, True, full, unit.length, unit.height, (ux, uy))
    along = [ux * x + uy * y for x, y in ring]
    across = [ux * y - uy * x for x, y in ring]
    long, high, bare = max(along) - min(along), max(across) - min(across), area(ring)
    if min(long, high) <= LEAST_CUT + ROUNDING or bare < LEAST_CUT**2:
        return None
    return Piece(ring, bare > full * (1 - 1e-6), bare, long, high, (ux, uy))


def _pieces(face: Face, unit: Unit, bond: str, origin: tuple[float, float]) -> tuple[Piece, ...]:
    corners = brick_corners(bond, unit, face.box, origin)
    rings: list[Polygon] = [tuple(map(tuple, ring)) for ring in corners.tolist()]
    parts = [_cuts(corners, rings, zone) for zone in face.zones]
    kept = list(parts[0].items())
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
    pieces = (_piece(rings[k], ring, unit) for k, ring in kept)
    return tuple(piece for piece in pieces if piece)


def _foot(face: Face, unit: Unit) -> float:
    """Where the first course begins: on its bed, but for the paving of a floor. [m]"""
    return face.box[1] + (0.0 if face.name == "floor" else unit.joint)


Start = tuple[float, float, float]
"""Lower left corner of one brick, and how far it is off the line it should start from. [m]"""


def _starts(face: Face, unit: Unit, bond: str) -> list[Start]:
    """Starts to try, the plain one first; courses of a lining stand on a bed."""
    left, bottom, _, _ = face.box
    if bond in ("running", "stack"):
        bottom = _foot(face, unit)
    a, b = unit.length + unit.joint, unit.height + unit.joint
    start = -unit.length / 2 if face.centred else left
    if bond == "running":
        return [
            (start - move, bottom, move)
            for move in ((0.0, a / 4) if face.centred else (0.0, a / 8, a / 4, 3 * a / 8))
        ]
    if bond == "stack":
        return [
            (start - move, bottom, move)
            for move in ((0.0, a / 2) if face.centred else (0.0, a / 4, a / 2))
        ]
    if bond == "basketweave":
        return [(start + move, bottom, move) for move in (0.0, a / 2)]
    return [
        (start + move, bottom - drop, hypot(move, drop))
        for move, drop in ((0.0, 0.0), (b, 0.0), (0.0, b / 2), (b, b / 2))
    ]


def _ends(face: Face, unit: Unit, bottom: float) -> list[tuple[int, float, float]]:
    """Each course by its number, and where it begins and ends at half its height. [m]"""
    found, step = [], unit.height + unit.joint
    for zone in face.zones:
        turned = tuple((y, x) for x, y in zone)
        for row in range(ceil((face.box[3] - bottom) / step)):
            span = chord(turned, bottom + row * step + unit.height / 2)
            if span:
                found.append((row, *span))
    return found


def _slivers_of_start(
    ends: list[tuple[int, float, float]], unit: Unit, bond: str, start: Start
) -> int:
    """End pieces of less than a quarter brick that a start leaves in courses. [-]"""
    step, least, number = unit.length + unit.joint, QUARTER * unit.length, 0
    for row, left, right in ends:
        x = start[0] + (step / 2 if bond == "running" and row % 2 else 0.0)
        first = unit.length - (left - x) % step
        last = (right - x) % step
        number += (LEAST_CUT < first < least) + (LEAST_CUT < last < least)
    return number


@lru_cache(maxsize=64)
def lay(face: Face, unit: Unit, bond: str) -> Layout:
    """Lay a face, with the fewest slivers and then the plainer start.

    In courses the plain start is tried and the one that leaves the fewest thin ends, in other bonds
    every start: a thin course on top is thin from wherever it is set out.

    Parameters
    ----------
    face : Face
    unit : Unit
        Its face is ``length`` by ``height``. [m]
    bond : str
        ``running``, ``stack``, ``herringbone 90``, ``herringbone 45`` or ``basketweave``.

    Returns
    -------
    Layout
        Where a basketweave does not close, laid in running bond, and its note says so.
    """
    note = ""
    if bond == "basketweave" and basketweave_joint(unit) is None:
        bond, note = (
            "running",
            "basketweave does not close with this brick and joint: laid as running bond",
        )
    starts = _starts(face, unit, bond)
    if bond in ("running", "stack"):
        ends = _ends(face, unit, _foot(face, unit))
        likely = min(starts, key=lambda start: _slivers_of_start(ends, unit, bond, start))
        starts = [starts[0]] if likely is starts[0] else [starts[0], likely]

    def laid(start: Start) -> Layout:
        x, y, move = start
        return Layout(face, unit, bond, _pieces(face, unit, bond, (x, y)), move, note)

    best = laid(starts[0])
    for start in starts[1:]:
        if not best.slivers:
            break
        other = laid(start)
        if len(other.slivers) < len(best.slivers):
            best = other
    return best
