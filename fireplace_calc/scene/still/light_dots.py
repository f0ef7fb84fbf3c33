"""How much light reaches what every dot shows: from windows, from the fire, and from all round."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.scene.records import Point, RoomMeasures
from fireplace_calc.scene.still.seen_dots import Faces, look
from fireplace_calc.scene.still.sight import Sight, looking

SHADOW = 420
"""Side of the picture that is looked at from a light. [dots]"""
DAY = np.array((1.0, 0.98, 0.94))
"""Daylight that comes through a window. [-]"""
ROUND = np.array((0.95, 0.97, 1.0))
"""What comes from all round, thrown back and forth by walls. [-]"""
GLOW = np.array((1.0, 0.42, 0.12))
"""Of a wood fire. [-]"""
LEAST_AWAY = 0.35
"""A light is no point: nearer than this it grows no brighter. [m]"""


def light(faces: Faces, room: RoomMeasures, points: Array, normals: Array) -> Array:
    """Light that reaches each dot, by channel.

    Parameters
    ----------
    faces : Faces
        What throws shadows.
    room : RoomMeasures
    points, normals : array
        Of what the dots show, a row a dot. [m] and [-]

    Returns
    -------
    array
        Red, green, blue; 1 is a sheet under an open sky of the room. [-]
    """
    arrived: Array = (0.42 + 0.16 * normals[:, 2:3]) * ROUND
    lamps = list(_from_windows(room))
    for stands, looks, area in lamps:
        shadow = _reaches(faces, looking(stands, looks, SHADOW / 2.6, SHADOW, SHADOW), points, 1.0)
        arrived += shadow[:, None] * _falls(stands, points, normals, area)[:, None] * DAY
    x, y, z = room.fire
    fire = (x, y - 0.05, z + 0.22)
    glow = looking(fire, (x, y - 2.0, z + 0.5), SHADOW / 2.0, SHADOW, SHADOW)
    shadow = _reaches(faces, glow, points, 1.0)
    arrived += shadow[:, None] * _falls(fire, points, normals, 0.55)[:, None] * GLOW
    return arrived


def _from_windows(room: RoomMeasures) -> Iterator[tuple[Point, Point, float]]:
    """Points of the windows that light comes from, where it goes, and how much. [m]"""
    wall = room.lit_from
    parts = (0.25, 0.75) if len(room.windows) < 3 else (0.5,)
    for window in room.windows:
        size = (window.back - window.front) * (window.head - window.sill)
        for part in parts:
            y = window.front + part * (window.back - window.front)
            z = (window.sill + window.head) / 2
            away = (*wall.placed(3.0, y), 0.9)
            yield (*wall.placed(0.05, y), z), away, 3.2 * size / len(parts)


def _falls(stands: Point, points: Array, normals: Array, area: float) -> Array:
    """What a light of some area gives where nothing stands between. [-]"""
    there = np.asarray(stands) - points
    away = np.maximum(np.sqrt(np.einsum("ij,ij->i", there, there)), 1e-6)
    slant = np.maximum(np.einsum("ij,ij->i", there, normals) / away, 0.0)
    fallen: Array = area * slant / np.maximum(away, LEAST_AWAY) ** 2
    return fallen


def _reaches(faces: Faces, lamp: Sight, points: Array, beyond: float) -> Array:
    """Whether a lamp is seen from the points, soft at the edge; outside its sight as told. [-]"""
    seen = look(faces, lamp)
    turned = lamp.turned(points)
    dots = lamp.dots(turned)
    inside = (turned[:, 2] > 0.02) & (dots >= 1).all(axis=1) & (dots < SHADOW - 2).all(axis=1)
    lit = np.full(len(points), beyond)
    column, row = np.floor(dots[inside]).astype(int).T
    depth = turned[inside, 2]
    share = np.zeros(len(depth))
    for across, down in ((0, 0), (1, 0), (0, 1), (1, 1), (-1, 0), (0, -1)):
        share += depth <= seen.away[row + down, column + across] * 1.012 + 0.01
    lit[inside] = share / 6
    return lit


def crevices(points: Array, normals: Array, sight: Sight) -> Array:
    """How much of what comes from all round reaches a dot past its neighbors. [-]

    Parameters
    ----------
    points, normals : array
        Of every dot of the picture, row by row. [m] and [-]
    sight : Sight
        From where it is seen.
    """
    high, wide = points.shape[:2]
    away = np.maximum((points - sight.stands) @ sight.axes[2], 0.1)
    focal = sight.focal * wide / sight.width
    hidden = np.zeros(away.shape)
    rows, columns = np.indices(away.shape)
    ways = [(np.cos(a), np.sin(a)) for a in np.linspace(0, 2 * np.pi, 6, endpoint=False) + 0.3]
    for reach in (0.05, 0.16):
        step = np.clip(focal * reach / away, 1.0, 90.0)
        for across, down in ways:
            row = np.clip(rows + down * step, 0, high - 1).astype(int)
            column = np.clip(columns + across * step, 0, wide - 1).astype(int)
            between = points[row, column] - points
            far = np.maximum(np.sqrt(np.einsum("ijk,ijk->ij", between, between)), 1e-6)
            over = np.einsum("ijk,ijk->ij", between, normals) / far
            hidden += np.clip(over - 0.12, 0, 1) / (1 + (far / (2.5 * reach)) ** 2)
    left: Array = 1 - np.minimum(hidden / (2 * len(ways)) * 1.5, 0.75)
    return left
