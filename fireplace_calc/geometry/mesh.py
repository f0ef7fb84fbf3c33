"""Every part as a closed skin of triangles, for views that turn: adds less cuts, by the exact
booleans of manifold3d.

Round things are faceted with their corners on the true surface: 72 facets to a flue, which hold
0.13 % less than the cylinder, and 40 chords to an arch, at most 0.11 % less. No face stands more
than a millionth of a meter off. numpy and manifold3d wake only when asked.
"""

from __future__ import annotations

import atexit
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import cos, pi
from typing import TYPE_CHECKING

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.base.tolerances import MESH_SLIVER
from fireplace_calc.geometry.bodies import solid_body
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Polygon

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

SHARP = cos(8 * pi / 180)
"""Two faces whose normals have a smaller cosine than this meet in an edge that a drawing shows;
facets turn 5 degrees. [-]
"""
CUT_SCALE = 1 + 1e-7
"""What is taken away is taken this much larger, so that it opens what it only touches and leaves no
skin there. [-]
"""
FLAT_SMOOTHING = 1e-5
"""Flat cuts that are nearer than this touch. [m]"""
FlatCut = tuple[Sequence[Polygon], Sequence[Polygon]]
"""Outlines of a cut through something, and its holes. [m]"""
SMOOTHING = 1e-6
"""Features smaller than this are smoothed out of a skin. [m]"""
Plane = tuple[tuple[float, float, float], float]
"""Its normal into what is kept [-], and how far along the normal it stands [m]."""
CUT_NORMALS = {"left half": (1.0, 0.0, 0.0), "front half": (0.0, 1.0, 0.0)}
"""What can be cut away: the way from the cut into what is kept."""


@dataclass(frozen=True, eq=False)
class Mesh:
    """A closed skin of triangles.

    Attributes
    ----------
    name, material : str
        Of the part.
    points : array
        Corners, one a row: right, away from the room, up. [m]
    faces : array
        Three rows of ``points`` a face, counter-clockwise seen from outside. [-]
    """

    name: str
    material: str
    points: Array
    faces: IntArray

    @property
    def volume(self) -> float:
        """Signed volume by the divergence theorem. [m3]"""
        import numpy as np

        # A sixth of the triple product is the pyramid from the origin to a face; those that look
        # back at the origin count negative.
        a, b, c = (self.points[self.faces[:, k]] for k in range(3))
        return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)

    @cached_property
    def borders(self) -> IntArray:
        """Every edge once: its two points, then the face on either side, by row. [-]"""
        import numpy as np

        # Every edge comes twice, once from the face on either side, which runs it the other way.
        # Sorted by its points, and the face that runs it from the lower row to the higher first,
        # the two stand next to each other.
        half = np.concatenate([self.faces[:, [k, (k + 1) % 3]] for k in range(3)])
        order = np.lexsort((half[:, 0] > half[:, 1], half.max(axis=1), half.min(axis=1)))
        owner = order % len(self.faces)
        return np.column_stack([half[order[::2]], owner[::2], owner[1::2]])

    @cached_property
    def normals(self) -> Array:
        """Unit normal of each face, outward; a face too thin to have one takes that of its neighbor
        along its length. [-]
        """
        import numpy as np

        a, b, c = (self.points[self.faces[:, k]] for k in range(3))
        # The cross product of two sides is as long as twice the face's area. Over the longest side
        # that is the height of the face: one too thin has no direction worth trusting, and takes
        # that of the face beside its longest border.
        normal = np.cross(b - a, c - a)
        size = np.linalg.norm(normal, axis=1)
        longest = np.max(
            [
                np.linalg.norm(b - a, axis=1),
                np.linalg.norm(c - b, axis=1),
                np.linalg.norm(a - c, axis=1),
            ],
            axis=0,
        )
        normal /= np.maximum(size, 1e-300)[:, None]
        for thin in np.flatnonzero(size < MESH_SLIVER * longest):
            beside = self.borders[(self.borders[:, 2:] == thin).any(axis=1)]
            along = beside[
                np.argmax(
                    np.linalg.norm(self.points[beside[:, 0]] - self.points[beside[:, 1]], axis=1)
                )
            ]
            normal[thin] = normal[along[2] if along[3] == thin else along[3]]
        return normal

    @cached_property
    def edges(self) -> IntArray:
        """Those borders where the skin turns. [-]"""
        import numpy as np

        # Row by row the cosine between the normals of the two faces; flat faces have one of 1.
        turn = np.einsum(
            "ij,ij->i", self.normals[self.borders[:, 2]], self.normals[self.borders[:, 3]]
        )
        long = np.linalg.norm(
            self.points[self.borders[:, 0]] - self.points[self.borders[:, 1]], axis=1
        )
        turning: IntArray = self.borders[(turn < 1 - 1e-9) & (long > MESH_SLIVER)]
        return turning

    @property
    def sharp(self) -> BoolArray:
        """For each of ``edges``: whether a drawing always shows it, or only where it is the outline
        of something round.
        """
        import numpy as np

        turn = np.einsum("ij,ij->i", self.normals[self.edges[:, 2]], self.normals[self.edges[:, 3]])
        always: BoolArray = turn < SHARP
        return always


def part_mesh(part: Part) -> Mesh:
    """The skin of one part."""
    return _skin(part.name, part.material, part_body(part))


def meshes(geometry: Geometry, away: str = "") -> tuple[Mesh, ...]:
    """The skin of every part that is left when a half is cut away, closed where it was cut.

    Parameters
    ----------
    geometry : Geometry
        Its parts, from the footing up.
    away : str
        Nothing, ``left half`` or ``front half``.

    Returns
    -------
    tuple of Mesh
    """
    if not away:
        return tuple(part_mesh(p) for p in geometry.parts)
    normal, at = cut_plane(geometry, away)
    left = ((p, _trimmed(p, normal, at)) for p in geometry.parts)
    return tuple(_skin(p.name, p.material, body) for p, body in left if not body.is_empty())


def cut_plane(geometry: Geometry, away: str) -> Plane:
    """The plane that cuts a half away.

    Parameters
    ----------
    geometry : Geometry
    away : str
        ``left half`` or ``front half``.

    Returns
    -------
    tuple
        Its normal into what is kept [-], and how far along the normal it stands [m].
    """
    return CUT_NORMALS[away], geometry.frame.flue_y if away == "front half" else 0.0


def skin(name: str, material: str, body: Manifold, plane: Plane | None = None) -> Mesh | None:
    """The skin of a body, or of what a plane leaves of it; none where that is nothing.

    Parameters
    ----------
    name, material : str
    body : Manifold
    plane : tuple or None
        Its normal into what is kept [-], and how far along the normal it stands [m].
    """
    left = body.trim_by_plane(*plane) if plane else body
    return None if left.is_empty() else _skin(name, material, left)


@lru_cache(maxsize=512)
def part_body(part: Part) -> Manifold:
    """A part as one solid. Kept, because most parts stay as they are when one slider moves."""
    from manifold3d import Manifold, OpType

    whole = Manifold.batch_boolean([solid_body(s) for s in part.adds], OpType.Add)
    if part.cuts:
        whole = Manifold.batch_boolean(
            [whole, *(solid_body(s, CUT_SCALE) for s in part.cuts)], OpType.Subtract
        )
    return _smoothed(whole.as_original())


def _smoothed(body: Manifold) -> Manifold:
    """Without features that nobody sees. Now and then the smoothing folds a wall in; its volume
    tells, and a finer one is taken.
    """
    for fine in (SMOOTHING, SMOOTHING / 100):
        made = body.simplify(fine)
        if abs(made.volume() - body.volume()) <= SMOOTHING * body.surface_area():
            return made
    return body


@lru_cache(maxsize=512)
def _trimmed(part: Part, normal: tuple[float, float, float], at: float) -> Manifold:
    return part_body(part).trim_by_plane(normal, at)


@atexit.register
def _release_solids() -> None:
    """Solids that outlive the library's own end are reported as lost, on the reader's screen."""
    _trimmed.cache_clear()
    part_body.cache_clear()


def _skin(name: str, material: str, body: Manifold) -> Mesh:
    made = body.to_mesh64()
    return Mesh(name, material, made.vert_properties, made.tri_verts.astype("int32"))


def _covered(cut: FlatCut) -> CrossSection:
    from manifold3d import CrossSection, FillRule, OpType

    rings, holes = (
        CrossSection.batch_boolean([CrossSection([r], FillRule.EvenOdd) for r in many], OpType.Add)
        for many in cut
    )
    return rings - holes


def together(cuts: Iterable[FlatCut]) -> list[Array]:
    """Outlines of all that some cuts cover together: a joint between two of them is none.

    Parameters
    ----------
    cuts : iterable of FlatCut
        [m]

    Returns
    -------
    list of array (n, 2)
        Counter-clockwise round what is covered, clockwise round a hole in it. [m]
    """
    whole = _covered(((), ()))
    for cut in cuts:
        whole += _covered(cut)
    return list(whole.simplify(FLAT_SMOOTHING).to_polygons())


def not_covered(
    window: Polygon, cuts: Iterable[FlatCut], open_: Iterable[Polygon]
) -> list[list[Array]]:
    """What is left open in a window, piece by piece.

    Parameters
    ----------
    window : polygon
        [m]
    cuts : iterable of FlatCut
        What covers it. [m]
    open_ : iterable of polygon
        What is open for all that. [m]

    Returns
    -------
    list of list of array (n, 2)
        Of each piece its outline, then those of the holes in it. [m]
    """
    left = _covered(((window,), ()))
    for cut in cuts:
        left -= _covered(cut)
    left += _covered((tuple(open_), ()))
    # an outline begins left of its holes
    return [sorted(p.to_polygons(), key=lambda r: float(r[:, 0].min())) for p in left.decompose()]
