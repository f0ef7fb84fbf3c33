"""One thing of the setting as it is made; a piece of furniture of several; both stood somewhere."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.scene.records import Thing
from fireplace_calc.scene.setting.forms import beside

if TYPE_CHECKING:
    from manifold3d import Manifold

SLIVER = 2e-4
"""What is thinner is smoothed away: light finds no direction on it. [m]"""


@dataclass(frozen=True, eq=False)
class Made:
    """Some bodies of one stuff.

    Attributes
    ----------
    key, name, stuff : str
        As of a ``Thing``.
    points : array
        Corners, one a row. [m]
    faces : array
        [-]
    smooth : bool
    """

    key: str
    name: str
    stuff: str
    points: Array
    faces: IntArray
    smooth: bool

    def at(self, x: float = 0.0, y: float = 0.0, z: float = 0.0, turn: float = 0.0) -> Thing:
        """The thing, stood somewhere.

        Parameters
        ----------
        x, y, z : float
            Where its nought comes to lie. [m]
        turn : float
            To the left, seen from above. [deg]
        """
        import numpy as np

        c, s = cos(radians(turn)), sin(radians(turn))
        turned = self.points @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])
        return Thing(
            self.key,
            self.name,
            self.stuff,
            "setting",
            turned + (x, y, z),
            self.faces,
            smooth=self.smooth,
        )


def made(
    key: str, name: str, stuff: str, bodies: Manifold | Iterable[Manifold], smooth: bool = False
) -> Made:
    """Bodies that do not meet, as one thing.

    Parameters
    ----------
    key, name, stuff : str
    bodies : Manifold or iterable of Manifold
        [m]
    smooth : bool
        Round to the eye.
    """
    import numpy as np
    from manifold3d import Manifold

    body = bodies if isinstance(bodies, Manifold) else beside(bodies)
    mesh = body.simplify(SLIVER).to_mesh64()
    points = np.array(mesh.vert_properties)[:, :3]
    return Made(key, name, stuff, points, np.array(mesh.tri_verts, dtype="int32"), smooth)


@dataclass(frozen=True, eq=False)
class Furniture:
    """Something that stands on the floor by itself; its front looks toward negative y.

    Attributes
    ----------
    made : tuple of Made
        What it is made of, its middle at nought.
    width, depth, height : float
        The block it fills. [m]
    """

    made: tuple[Made, ...]
    width: float
    depth: float
    height: float

    def at(self, x: float, y: float, turn: float = 0.0, z: float = 0.0) -> Iterator[Thing]:
        """Its things, stood somewhere.

        Parameters
        ----------
        x, y : float
            Where its middle comes to stand. [m]
        turn : float
            To the left, seen from above. [deg]
        z : float
            Level of its feet. [m]

        Yields
        ------
        Thing
        """
        for one in self.made:
            yield one.at(x, y, z, turn)


def gathered(*made: Made) -> Furniture:
    """A piece of furniture of these, as large as they are.

    Parameters
    ----------
    made : Made
        Their middle at nought, their feet too.
    """
    import numpy as np

    points = np.concatenate([one.points for one in made])
    wide, deep = (2 * float(np.abs(points[:, k]).max()) for k in (0, 1))
    return Furniture(made, wide, deep, float(points[:, 2].max()))
