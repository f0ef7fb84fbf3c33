"""Flat faces of one piece, and of the mortar under it, as the eye sees them by themselves. [m]"""

from __future__ import annotations

import atexit
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.sections import contact, underside
from fireplace_calc.geometry.mesh import SHARP, Mesh
from fireplace_calc.geometry.visible.viewpoint import Viewpoint
from fireplace_calc.pieces.records import SetPiece

FLAT = 1 - 1e-9
"""Two faces whose normals have at least this cosine are one plane. [-]"""
EDGE_ON = 1e-6
"""A face turned less than this toward the eye is not seen. [-]"""
HAIR = 1e-7
"""Nearer to the eye by less than this is not before it. [m]"""
SPECK = 1e-9
"""Less of a face than this is nothing anybody sees. [m2]"""
PIECE, MORTAR = "piece", "mortar"

Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, eq=False)
class FlatFace:
    """What is seen of a flat face.

    Attributes
    ----------
    outline : CrossSection
        On paper. [m]
    bounds : tuple of float
        Of it: left, bottom, right, top. [m]
    plane : tuple of float
        Depth along u and v [-], and at nought [m].
    normal : tuple of float
        Outward. [-]
    group : int
        Faces of a body that meet without an edge have one number. [-]
    kind : str
        ``piece`` or ``mortar``.
    cut : bool
        Whether it lies in the plane that cuts the set.
    """

    outline: CrossSection
    bounds: Bounds
    plane: tuple[float, float, float]
    normal: tuple[float, float, float]
    group: int
    kind: str
    cut: bool

    def less(self, gone: CrossSection) -> FlatFace | None:
        """What is left of it, or nothing."""
        return self.of(self.outline - gone)

    def of(self, outline: CrossSection) -> FlatFace | None:
        """The same plane with another outline, or nothing where that is a speck."""
        if outline.is_empty() or outline.area() < SPECK:
            return None
        return FlatFace(
            outline, outline.bounds(), self.plane, self.normal, self.group, self.kind, self.cut
        )

    def lifted(self, up: float, deeper: float) -> FlatFace:
        """The same face moved on paper and in depth. [m]"""
        a, b, c = self.plane
        x0, y0, x1, y1 = self.bounds
        return FlatFace(
            self.outline.translate((0.0, up)),
            (x0, y0 + up, x1, y1 + up),
            (a, b, c - b * up + deeper),
            self.normal,
            self.group,
            self.kind,
            self.cut,
        )


def nearer(one: FlatFace, other: FlatFace) -> CrossSection | None:
    """What of one face lies before another, as far as their boxes meet; none where nothing does.

    Parameters
    ----------
    one, other : FlatFace
    """
    x0, y0 = max(one.bounds[0], other.bounds[0]), max(one.bounds[1], other.bounds[1])
    x1, y1 = min(one.bounds[2], other.bounds[2]), min(one.bounds[3], other.bounds[3])
    if x0 >= x1 or y0 >= y1:
        return None
    # How far the other lies behind, less a hair: a plane over the box, so its ends lie at corners.
    (a, b, c), (d, e, f) = one.plane, other.plane
    along, up, at = d - a, e - b, f - c - HAIR
    left, right = (x0, x1) if along > 0 else (x1, x0)
    low, high = (y0, y1) if up > 0 else (y1, y0)
    if along * right + up * high + at <= 0:
        return None
    if along * left + up * low + at >= 0:
        return one.outline
    corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    before = [along * u + up * v + at for u, v in corners]
    # The two planes cross inside the box: keep the side on which the first lies before the second.
    kept: list[tuple[float, float]] = []
    ring = [*zip(corners, before, strict=True)]
    for (p, here), (q, there) in pairwise([*ring, ring[0]]):
        if here > 0:
            kept.append(p)
        if here * there < 0:
            t = here / (here - there)
            kept.append((p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t))
    return one.outline ^ CrossSection([kept], FillRule.NonZero)


def meeting(some: Sequence[FlatFace], others: Sequence[FlatFace]) -> BoolArray:
    """Which faces lie over each other on paper, by their boxes.

    Parameters
    ----------
    some, others : sequence of FlatFace

    Returns
    -------
    array of bool
        A row for each of some, a column for each of the others.
    """
    if not some or not others:
        return np.zeros((len(some), len(others)), bool)
    a, b = (np.array([f.bounds for f in these]) for these in (some, others))
    low = np.maximum(a[:, None, :2], b[None, :, :2])
    high = np.minimum(a[:, None, 2:], b[None, :, 2:])
    meets: BoolArray = (low < high).all(axis=2)
    return meets


def hidden(face: FlatFace, others: Iterable[FlatFace]) -> FlatFace | None:
    """What is left of a face behind others.

    Parameters
    ----------
    face : FlatFace
    others : iterable of FlatFace
        Of which only what lies before it counts.

    Returns
    -------
    FlatFace or None
    """
    left: FlatFace | None = face
    for other in others:
        if left is None:
            return None
        gone = nearer(other, left)
        if gone is not None and not gone.is_empty():
            left = left.less(gone)
    return left


@lru_cache(maxsize=4096)
def piece_faces(piece: SetPiece, eye: Viewpoint) -> tuple[FlatFace, ...]:
    """Faces of a piece on its bed at nought, less what the piece itself hides.

    Parameters
    ----------
    piece : SetPiece
    eye : Viewpoint

    Returns
    -------
    tuple of FlatFace
        Empty where it is cut away whole.
    """
    return _seen(body(piece), eye, PIECE)


@lru_cache(maxsize=4096)
def bed_faces(
    piece: SetPiece, below: tuple[SetPiece, ...], bed: float, eye: Viewpoint
) -> tuple[FlatFace, ...]:
    """Faces of the mortar under a piece, its top at nought.

    Parameters
    ----------
    piece : SetPiece
    below : tuple of SetPiece
        What it may lie on; nothing under the lowest lift.
    bed : float
        Thickness of the joint. [m]
    eye : Viewpoint

    Returns
    -------
    tuple of FlatFace
    """
    beds = [contact(piece, b) for b in below] if below else [underside(piece)]
    bodies = [b.extrude(bed).translate((0.0, 0.0, -bed)) for b in beds if b.area() > SPECK]
    if not bodies or bed <= HAIR:
        return ()
    return _seen(Manifold.compose(bodies), eye, MORTAR)


def _seen(whole: Manifold, eye: Viewpoint, kind: str) -> tuple[FlatFace, ...]:
    if eye.half:
        whole = whole.trim_by_plane((-1.0, 0.0, 0.0), 0.0)
    if whole.is_empty():
        return ()
    faces = _front(whole, eye, kind)
    near = meeting(faces, faces)
    np.fill_diagonal(near, False)
    left = (hidden(f, [faces[k] for k in np.flatnonzero(near[n])]) for n, f in enumerate(faces))
    return tuple(f for f in left if f is not None)


def _front(whole: Manifold, eye: Viewpoint, kind: str) -> list[FlatFace]:
    """Flat faces that look at the eye, each with the whole of its outline."""
    made = whole.to_mesh64()
    mesh = Mesh("", "", made.vert_properties, made.tri_verts.astype("int32"))
    planes, groups = _joined(mesh, FLAT), _joined(mesh, SHARP)
    axes = eye.axes
    on_paper = mesh.points @ axes.T
    facing = mesh.normals @ axes[2]
    found = []
    for plane in np.unique(planes):
        rows = np.flatnonzero(planes == plane)
        largest = rows[np.argmax(_sizes(mesh, rows))]
        if facing[largest] > -EDGE_ON:
            continue
        corners = on_paper[mesh.faces[rows]]
        outline = CrossSection([t[:, :2] for t in corners], FillRule.NonZero)
        normal = mesh.normals[largest]
        right, up, away = axes @ normal
        u, v, depth = on_paper[mesh.faces[largest, 0]]
        a, b = -right / away, -up / away
        at = mesh.points[mesh.faces[largest, 0]]
        cut = eye.half and normal[0] > FLAT and abs(at[0]) < HAIR
        face = FlatFace(
            outline,
            outline.bounds(),
            (float(a), float(b), float(depth - a * u - b * v)),
            (float(normal[0]), float(normal[1]), float(normal[2])),
            int(groups[rows[0]]),
            kind,
            bool(cut),
        ).of(outline)
        if face is not None:
            found.append(face)
    return found


def _sizes(mesh: Mesh, rows: IntArray) -> Array:
    a, b, c = (mesh.points[mesh.faces[rows, k]] for k in range(3))
    sizes: Array = np.linalg.norm(np.cross(b - a, c - a), axis=1)
    return sizes


def _joined(mesh: Mesh, cosine: float) -> IntArray:
    """A number for each triangle, the same for those that meet with at least this cosine. [-]"""
    turn = np.einsum("ij,ij->i", mesh.normals[mesh.borders[:, 2]], mesh.normals[mesh.borders[:, 3]])
    number = list(range(len(mesh.faces)))

    def first(k: int) -> int:
        while number[k] != k:
            number[k] = number[number[k]]
            k = number[k]
        return k

    for one, other in mesh.borders[turn >= cosine, 2:]:
        number[first(int(one))] = first(int(other))
    return np.array([first(k) for k in range(len(number))], dtype="int32")


@atexit.register
def _release_faces() -> None:
    piece_faces.cache_clear()
    bed_faces.cache_clear()
