"""A still of the room, and which thing each of its dots shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing
from fireplace_calc.scene.still.coat_dots import coats
from fireplace_calc.scene.still.light_dots import crevices, light
from fireplace_calc.scene.still.seen_dots import directions, faces_of, look
from fireplace_calc.scene.still.sight import sight_of

FINER = 2
"""Dots worked out for each one shown, across and down. [-]"""
EXPOSURE = 1.9
"""How long the picture is exposed, so to speak. [-]"""
FARTHEST = 50.0
"""Nothing in a room is farther away. [m]"""
OUTDOORS = np.array((0.82, 0.86, 0.9))
"""Where nothing is seen. [-]"""


@dataclass(frozen=True, eq=False)
class Still:
    """A still.

    Attributes
    ----------
    dots : array
        Red, green and blue from 0 to 255, row by row from the top. [-]
    owner : array
        Place of the thing that a dot shows, -1 for none. [-]
    """

    dots: IntArray
    owner: IntArray


def still(
    things: Sequence[Thing],
    room: RoomMeasures,
    standpoint: Standpoint,
    width: int,
    height: int,
    layouts: Sequence[FaceLayout] = (),
    finer: int = FINER,
) -> Still:
    """What is seen from a standpoint on a bright day, with the fire lit.

    Parameters
    ----------
    things : sequence of Thing
        All that stands in the room, the room too.
    room : RoomMeasures
        Where light comes from.
    standpoint : Standpoint
    width, height : int
        Of the picture. [-]
    layouts : sequence of FaceLayout
        How faces are laid.
    finer : int
        Dots worked out for each one shown, across and down. [-]

    Returns
    -------
    Still
    """
    faces = faces_of(tuple(things))
    sight = sight_of(standpoint, width * finer, height * finer)
    seen = look(faces, sight)
    middle = slice(finer // 2, None, finer)
    grid = np.indices(seen.face.shape)
    rows, columns = grid[0][middle, middle].ravel(), grid[1][middle, middle].ravel()

    def shown(rows: IntArray, columns: IntArray) -> tuple[IntArray, Array, Array]:
        """Face, point and direction of some dots, turned to the eye."""
        number = seen.face[rows, columns]
        away = np.minimum(seen.away[rows, columns], FARTHEST)
        points = sight.points(rows, columns, away)
        normals = directions(faces, number, points)
        back = np.einsum("ij,ij->i", normals, sight.stands - points) < 0
        return number, points, np.where(back[:, None], -normals, normals)

    # Light changes slowly: it is worked out once a dot, and again only where faces meet in it.
    number, points, normals = shown(rows, columns)
    arrived = light(faces, room, points, normals) * _uneven(points)[:, None]
    shape = (height, width, 3)
    nooks = crevices(points.reshape(shape), normals.reshape(shape), sight)
    arrived = (arrived.reshape(shape) * nooks[:, :, None]).repeat(finer, 0).repeat(finer, 1)
    coarse = number.reshape(height, width).repeat(finer, 0).repeat(finer, 1)
    rows, columns = np.nonzero((seen.face != coarse) & (seen.face >= 0))
    _, points, normals = shown(rows, columns)
    arrived[rows, columns] = light(faces, room, points, normals)
    color = coats(things, layouts, faces, seen, sight)
    color[seen.face < 0] = OUTDOORS
    arrived[seen.face < 0] = 1.0
    small = (color * arrived).reshape(height, finer, width, finer, 3).mean(axis=(1, 3))
    owner = np.where(seen.face < 0, -1, faces.owner[seen.face])[middle, middle]
    return Still(_developed(small), owner)


def _uneven(points: Array) -> Array:
    """Nothing is quite even: a slow swing through the room of a few hundredths. [-]"""
    x, y, z = points.T
    swing: Array = 1 + 0.02 * np.sin(7 * x + 3 * z) * np.sin(5 * y - 4 * z + 1)
    return swing


def _developed(light_: Array) -> IntArray:
    """Light as a screen shows it: bright things keep their drawing."""
    exposed = light_ * EXPOSURE
    rolled = exposed * (1 + exposed / 4) / (1 + exposed)
    coded = np.where(
        rolled <= 0.0031308, 12.92 * rolled, 1.055 * np.maximum(rolled, 1e-9) ** (1 / 2.4) - 0.055
    )
    dots: IntArray = np.clip(coded * 255 + 0.5, 0, 255).astype("uint8")
    return dots
