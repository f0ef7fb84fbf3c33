"""The room with nothing in it: walls, floor and ceiling, and a window at the left."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_sides, wall_top
from fireplace_calc.scene.eyes import USUAL_DEPTH, USUAL_HALF
from fireplace_calc.scene.records import Point, RoomMeasures, Thing, Window
from fireplace_calc.scene.stuffs import floor_stuff

SILL, HEAD = 0.8, 2.1
"""Of the window. [m]"""
BEHIND = 0.02
"""How far the wall over the shoulder stands behind a breast that goes on to the ceiling. [m]"""


def bare_measures(geometry: Geometry) -> RoomMeasures:
    """Measures of the room; of one that nobody has measured, usual ones.

    Parameters
    ----------
    geometry : Geometry
    """
    house, f = geometry.design.house, geometry.frame
    left, right = wall_sides(geometry)
    least = f.block_half + 0.3 if house.room_length else max(f.block_half + 0.3, USUAL_HALF)
    left, right = min(left, -least), max(right, least)
    deep, top = house.room_width or USUAL_DEPTH, wall_top(geometry)
    head = min(HEAD, top - 0.2)
    window = Window(-0.62 * deep, -0.28 * deep, min(SILL, head - 0.4), head)
    return RoomMeasures(
        left=left,
        right=right,
        front=-deep,
        back=geometry.design.breast.stands_out or 0.0,
        ceiling=top,
        windows=(window,),
        lamp=(right - 0.6, -1.0, 1.4),
        fire=(0.0, f.depth / 2, f.hearth + 0.1),
        fire_width=f.half_width,
    )


def bare_room(geometry: Geometry) -> tuple[Thing, ...]:
    """Walls, floor and ceiling, each with its face to the room.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Thing
    """
    f = geometry.frame
    floor = floor_stuff(geometry.design)
    return tuple(_planes(bare_measures(geometry), f.block_half, f.flue_start, floor))


def _planes(room: RoomMeasures, breast: float, shoulder: float, floor: str) -> Iterator[Thing]:
    left, right, front, back, top = room.left, room.right, room.front, room.back, room.ceiling
    yield _plane(
        "floor",
        floor,
        (left, front, 0),
        (right, front, 0),
        (right, back, 0),
        (left, back, 0),
    )
    yield _plane(
        "ceiling",
        "ceiling",
        (left, back, top),
        (right, back, top),
        (right, front, top),
        (left, front, top),
    )
    for name, low, high in (("wall left", left, -breast), ("wall right", breast, right)):
        yield _plane(
            name, "paint", (low, back, 0), (high, back, 0), (high, back, top), (low, back, top)
        )
    if shoulder < top:
        y = back + BEHIND
        yield _plane(
            "wall over the shoulder",
            "paint",
            (-breast, y, shoulder),
            (breast, y, shoulder),
            (breast, y, top),
            (-breast, y, top),
        )
    yield _plane(
        "side right",
        "paint",
        (right, back, 0),
        (right, front, 0),
        (right, front, top),
        (right, back, top),
    )
    (window,) = room.windows
    for name, y0, y1, z0, z1 in (
        ("side left, under the window", front, back, 0.0, window.sill),
        ("side left, over the window", front, back, window.head, top),
        ("side left, before the window", front, window.front, window.sill, window.head),
        ("side left, behind the window", window.back, back, window.sill, window.head),
    ):
        yield _plane(name, "paint", (left, y0, z0), (left, y1, z0), (left, y1, z1), (left, y0, z1))


def _plane(name: str, stuff: str, *ring: Point) -> Thing:
    return Thing(
        name, name, stuff, "setting", np.array(ring, dtype=float), np.array([[0, 1, 2], [0, 2, 3]])
    )
