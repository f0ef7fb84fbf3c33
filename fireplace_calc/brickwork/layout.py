"""One face laid brick by brick: whole bricks, cut ones, the slivers among them, and the start that
makes the fewest.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from math import ceil, hypot

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork.bonds import basketweave_joint, brick_corners
from fireplace_calc.brickwork.faces import Face
from fireplace_calc.brickwork.fitted.closers import with_closers
from fireplace_calc.brickwork.fitted.cut_pieces import Piece, cut_to_face
from fireplace_calc.brickwork.fitted.gauge import Gauge, gauge, joints_near
from fireplace_calc.brickwork.unit import LEAST_CUT, Unit
from fireplace_calc.geometry.polygons import chord

COURSED = ("running", "stack")
"""Bonds of level courses."""
QUARTER = 0.25
"""A cut with less than this share of a brick is a sliver: common practice, no source. [-]"""


@dataclass(frozen=True)
class Layout:
    """A face with every brick in its place.

    Attributes
    ----------
    face : Face
    unit : Unit
        Its face is ``length`` by ``height``; joint and bed as it is laid. [m]
    bond : str
        As it is laid; running where the chosen bond does not close.
    pieces : tuple of Piece
        Of one such face.
    shifted : float
        How far the start was moved off the centre line or the arris to avoid slivers. [m]
    note : str
        Why the bond is not the chosen one.
    joint : float
        The chosen one. [m]
    first : float
        Height of the lowest course. [m]
    closers : int
        Ends before which a three-quarter brick is laid, or that are shared by two. [-]
    left_out : int
        Places that are left to the mortar: too wide for a joint, too thin for a piece. [-]
    """

    face: Face
    unit: Unit
    bond: str
    pieces: tuple[Piece, ...]
    shifted: float
    note: str = ""
    joint: float = 0.0
    first: float = 0.0
    closers: int = 0
    left_out: int = 0

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
    def thin(self) -> tuple[Piece, ...]:
        """Pieces thinner than can be cut."""
        return tuple(piece for piece in self.pieces if piece.thin)

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


def _pieces(
    face: Face, unit: Unit, bond: str, origin: tuple[float, float], foot: float | None = None
) -> tuple[tuple[Piece, ...], int]:
    """Every piece, by the lower left corner of one brick, and how many ends have closers; none
    reaches under a foot. [m]
    """
    corners = brick_corners(bond, unit, face.box, origin)
    found, closers = cut_to_face(face, unit, corners, foot), 0
    if bond in COURSED:
        found, closers = with_closers(face, unit, corners, found, foot)
    return tuple(piece for own in found.values() for piece in own), closers


def _on_bed(face: Face) -> bool:
    """Whether the first course has a bed under it: not in the paving of a floor."""
    return face.name != "floor"


def _foot(face: Face, unit: Unit) -> float:
    """Where the first course begins. [m]"""
    return face.box[1] + (unit.course - unit.height if _on_bed(face) else 0.0)


Start = tuple[float, float, float]
"""Lower left corner of one brick, and how far it is off the line it should start from. [m]"""


def _starts(face: Face, unit: Unit, bond: str, first: float) -> list[Start]:
    """Starts to try, the plain one first; courses of a lining stand on a bed."""
    left, bottom, _, _ = face.box
    if bond in COURSED:
        bottom = _foot(face, unit) + first - unit.height
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
    found, step = [], unit.course
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
def lay(face: Face, unit: Unit, bond: str, courses: Gauge | None = None) -> Layout:
    """Lay a face so that no piece is thinner than can be cut, with the fewest slivers and then the
    plainer start: with the chosen joint, else with the nearest that does it.

    In courses the plain start is tried and the one that leaves the fewest thin ends, in other bonds
    every start: a thin course on top is thin from wherever it is set out.

    Parameters
    ----------
    face : Face
    unit : Unit
        Its face is ``length`` by ``height``, its joint the chosen one. [m]
    bond : str
        ``running``, ``stack``, ``herringbone 90``, ``herringbone 45`` or ``basketweave``.
    courses : Gauge or None
        Of a bond in courses, where they are not the face's own. [m]

    Returns
    -------
    Layout
        Where a basketweave does not close, laid in running bond, and its note says so. What is
        still too thin is left out, and counted.
    """
    note = ""
    if bond == "basketweave" and basketweave_joint(unit) is None:
        bond, note = (
            "running",
            "basketweave does not close with this brick and joint: laid as running bond",
        )
    if bond in COURSED:
        _, low, _, top = face.box
        courses = courses or gauge((top - low,), unit.height, unit.joint, _on_bed(face))
    else:
        courses = None
    best: Layout | None = None
    for joint in joints_near(unit.joint):
        tried = replace(unit, joint=joint, bed=courses.bed if courses else None)
        if bond == "basketweave" and basketweave_joint(tried) is None:
            continue
        found = _best_start(face, tried, bond, courses.first if courses else unit.height)
        if best is None or len(found.thin) < len(best.thin):
            best = found
        if not best.thin:
            break
    assert best is not None  # the chosen joint is among those tried
    kept = tuple(piece for piece in best.pieces if piece not in best.thin)
    return replace(best, pieces=kept, note=note, joint=unit.joint, left_out=len(best.thin))


def _best_start(face: Face, unit: Unit, bond: str, first: float) -> Layout:
    """A face with the start that leaves the fewest thin pieces and slivers. In courses the plain
    start, which cuts both ends alike, is given up only where that halves them.
    """
    starts, foot, coursed = _starts(face, unit, bond, first), None, bond in COURSED
    if coursed:
        foot = _foot(face, unit) if first < unit.height else None
        ends = _ends(face, unit, _foot(face, unit) + first - unit.height)
        likely = min(starts, key=lambda start: _slivers_of_start(ends, unit, bond, start))
        starts = [starts[0]] if likely is starts[0] else [starts[0], likely]

    def laid(start: Start) -> Layout:
        x, y, move = start
        pieces, closers = _pieces(face, unit, bond, (x, y), foot)
        return Layout(face, unit, bond, pieces, move, first=first, closers=closers)

    def poor(layout: Layout) -> tuple[int, int]:
        return len(layout.thin), len(layout.slivers)

    best = laid(starts[0])
    for start in starts[1:]:
        if not best.slivers:
            break
        other = laid(start)
        (thin, slivers), (least, most) = poor(other), poor(best)
        fewer = 2 * slivers <= most if coursed else slivers < most
        if thin < least or (thin == least and fewer):
            best = other
    return best
