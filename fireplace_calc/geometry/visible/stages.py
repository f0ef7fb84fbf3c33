"""A set as it grows: what is seen after each piece, worked out from what was seen before it. [m]

A face that is hidden whole is dropped: whatever it hides is hidden by what stands before it too.
So a piece meets only what is still seen, and every stage is kept.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from manifold3d import CrossSection, OpType

from fireplace_calc.base.arrays import Array
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed, assemble
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.visible.faces import FlatFace, bed_faces, hidden, meeting, piece_faces
from fireplace_calc.geometry.visible.viewpoint import Viewpoint
from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.records import SetPiece


@dataclass(frozen=True, eq=False)
class SeenPart:
    """A face, or several that meet without an edge, as far as it is seen.

    Attributes
    ----------
    name : str
        Of the piece.
    rings : tuple of array, each (n, 2)
        On paper; holes run clockwise. [m]
    normal : tuple of float
        Outward. [-]
    kind : str
        ``piece`` or ``mortar``.
    cut : bool
        Whether it lies in the plane that cuts the set.
    """

    name: str
    rings: tuple[Array, ...]
    normal: tuple[float, float, float]
    kind: str
    cut: bool


Named = tuple[str, FlatFace]


class Stages:
    """What is seen of a set from one side, piece by piece.

    Parameters
    ----------
    made : Assembly
    order : sequence of Placed
        Its pieces as they are set.
    eye : Viewpoint
    """

    def __init__(self, made: Assembly, order: Sequence[Placed], eye: Viewpoint) -> None:
        self.made, self.order, self.eye = made, tuple(order), eye
        self._seen: list[tuple[Named, ...]] = [()]
        self._parts: dict[int, tuple[SeenPart, ...]] = {}
        self._rings: dict[tuple[int, ...], SeenPart] = {}
        self._kept: list[FlatFace] = []

    def seen(self, count: int) -> tuple[SeenPart, ...]:
        """Everything that is seen when so many pieces stand.

        Parameters
        ----------
        count : int
            Nought shows nothing. [-]

        Returns
        -------
        tuple of SeenPart
            In the order they were set.
        """
        while len(self._seen) <= count:
            self._seen.append(self._with(self._seen[-1], self.order[len(self._seen) - 1]))
        if count not in self._parts:
            self._parts[count] = self._joined(self._seen[count])
        return self._parts[count]

    def bounds(self, count: int | None = None) -> tuple[float, float, float, float]:
        """Left, bottom, right and top on paper of the first pieces set. [m]

        Parameters
        ----------
        count : int or None
            How many; all of them where nothing is said. [-]

        Returns
        -------
        tuple of float
            [m]
        """
        corners = []
        for one in self.order[:count]:
            x0, x1, y0, y1, z0, z1 = extent(one.piece)
            x1 = min(x1, 0.0) if self.eye.half else x1
            corners += [
                (x, y, z + one.level)
                for x in (min(x0, x1), x1)
                for y in (y0, y1)
                for z in (z0 - one.bed, z1)
            ]
        u, v, _ = self.eye.axes @ np.array(corners).T
        return float(u.min()), float(v.min()), float(u.max()), float(v.max())

    def _with(self, before: tuple[Named, ...], one: Placed) -> tuple[Named, ...]:
        """What is seen with one piece more, its mortar under it."""
        below = self.made.by_lift[one.lift - 1] if one.lift else ()
        up, deep = float(self.eye.axes[1][2]), float(self.eye.axes[2][2])
        level = one.level
        fresh = [
            face.lifted(level * up, level * deep)
            for face in (
                *piece_faces(one.piece, self.eye),
                *bed_faces(one.piece, tuple(b.piece for b in below), round(one.bed, 7), self.eye),
            )
        ]
        standing = [face for _, face in before]
        over = meeting(standing, fresh)
        own = meeting(fresh, fresh)
        found: list[tuple[str, FlatFace | None]] = [
            (name, hidden(face, [fresh[k] for k in np.flatnonzero(over[n])]))
            for n, (name, face) in enumerate(before)
        ]
        for n, face in enumerate(fresh):
            others = [standing[k] for k in np.flatnonzero(over[:, n])]
            others += [fresh[k] for k in np.flatnonzero(own[n]) if k != n]
            found.append((one.name, hidden(face, others)))
        return tuple((name, face) for name, face in found if face is not None)

    def _joined(self, seen: tuple[Named, ...]) -> tuple[SeenPart, ...]:
        """Faces that meet without an edge as one."""
        groups: dict[tuple[str, str, int], list[FlatFace]] = {}
        for name, face in seen:
            groups.setdefault((name, face.kind, face.group), []).append(face)
        return tuple(self._part(name, faces) for (name, _, _), faces in groups.items())

    def _part(self, name: str, faces: list[FlatFace]) -> SeenPart:
        """One part, made once for the same faces."""
        key = tuple(map(id, faces))
        if key not in self._rings:
            self._kept += faces  # an id is only good as long as what it belongs to
            whole = (
                faces[0].outline
                if len(faces) == 1
                else CrossSection.batch_boolean([f.outline for f in faces], OpType.Add)
            )
            rings = tuple(np.asarray(r, dtype=float) for r in whole.to_polygons())
            first = faces[0]
            self._rings[key] = SeenPart(name, rings, first.normal, first.kind, first.cut)
        return self._rings[key]


def seen_alone(piece: SetPiece, eye: Viewpoint) -> tuple[SeenPart, ...]:
    """What is seen of a piece by itself, its bed at nought.

    Parameters
    ----------
    piece : SetPiece
    eye : Viewpoint
    """
    made = assemble([ChosenLift(piece.mark, (piece,))], [piece.height])
    return Stages(made, made.placed, eye).seen(1)
