"""From where one looks: standing, seated, from the corner, close; and from outside the room at what
is cut open or drawn apart.
"""

from __future__ import annotations

from math import atan, degrees, dist, radians, tan

from fireplace_calc.geometry.in_room.cut_corner import CutCorner
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.figures import proportion_figures
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.built.spread import BESIDE, BETWEEN
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.setting.measures import (
    USUAL_DEPTH,
    cut_corner,
    front_and_back,
    side_walls,
)

SEATED = 0.70
"""Eye level of somebody seated in an easy chair, over that of the same person standing; by our own
judgement, as a published figure was not at hand. [-]
"""
OFF_WALL = 0.45
"""Nobody stands nearer to a wall. [m]"""
INSIDE = ("Standing", "Seated", "Corner", "Close")
"""Names of those that stand in the room."""
OUTSIDE = ("Cut", "Apart")
"""Names of those that do not."""
AWAY = 5.2
"""So far off one stands to see the whole wall, where the room is as deep. [m]"""
WIDE, NEAR, OPENED, ROOM = 58.0, 44.0, 40.0, 68.0
"""How wide they see, left to right: seated, close, cut open, and who sees the room too. [deg]"""
NARROWEST, WIDEST = 46.0, 74.0
"""Of those that see the whole wall. [deg]"""
ASPECT = 1.5
"""Width over height of a usual picture. [-]"""


def standpoints(geometry: Geometry) -> tuple[Standpoint, ...]:
    """Every standpoint, by the names in ``INSIDE`` and ``OUTSIDE``.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Standpoint
        Those in the room stand between its walls, a step off them.
    """
    f, hearth = geometry.frame, geometry.design.hearth
    eye = proportion_figures()["eye level"][0]
    tall = wall_top(geometry)
    seated = min(f.hearth, 0.0) + SEATED * eye
    reach = max(f.block_half, f.half_width + hearth.side)
    middle = (f.hearth + f.opening_top) / 2
    # What a picture of the wall should hold: a strip of floor, and up to the shoulders.
    low, high = -0.12, min(tall, max(f.shoulder_top + 0.15, f.opening_top + 0.9))
    close = _distance(2 * f.half_width + 0.7, f.opening_top + 0.25, NEAR)
    inside = (
        ("Standing", (0.45, -AWAY, eye), (-0.04, 0.0, (low + high) / 2), 0.0),
        (
            "Seated",
            (-reach - 0.85, -hearth.front - 2.3, seated),
            (0.1, 0.1, middle + 0.18),
            WIDE,
        ),
        ("Corner", (reach + 1.7, -0.8 * AWAY, eye), (-0.7, -0.2, (low + high) / 2), ROOM),
        (
            "Close",
            (0.42, -max(close, hearth.front + 0.5), max(middle + 0.35, 0.9)),
            (-0.03, 0.15, middle),
            NEAR,
        ),
    )
    made: list[Standpoint] = []
    for name, wanted, looks, wide in inside:
        stands = _in_room(geometry, wanted)
        angle = wide or _angle(high - low, dist(stands, looks))
        made.append(Standpoint(name, stands, looks, angle))
    return (*made, _cut(geometry), _apart(geometry))


def _angle(high: float, away: float) -> float:
    """How wide one sees, from left to right, where a height fills the picture. [deg]"""
    across = degrees(2 * atan(1.06 * ASPECT * high / 2 / away))
    return min(max(across, NARROWEST), WIDEST)


def _distance(wide: float, high: float, angle: float) -> float:
    """From where something of a size just fills a picture. [m]"""
    across = tan(radians(angle / 2))
    return max(wide / 2 / across, high / 2 / (across / ASPECT))


def _in_room(geometry: Geometry, at: tuple[float, float, float]) -> tuple[float, float, float]:
    """The same, between the walls and under the ceiling."""
    corner = cut_corner(geometry)
    if corner is not None:
        return _in_corner(geometry, corner, at)
    left, right = side_walls(geometry)
    deep = geometry.design.house.room_width or USUAL_DEPTH
    x, y, z = at
    # Never in the hearth, however shallow the room is.
    nearest = -geometry.design.hearth.front - 0.15
    return (
        min(max(x, left + OFF_WALL), right - OFF_WALL),
        min(max(y, OFF_WALL - deep), max(nearest, OFF_WALL - deep)),
        min(z, wall_top(geometry) - 0.2),
    )


def _in_corner(
    geometry: Geometry, corner: CutCorner, at: tuple[float, float, float]
) -> tuple[float, float, float]:
    """The same in a room whose corner is cut off."""
    (left, right), (front, back) = side_walls(geometry), front_and_back(geometry)
    x, y, z = at
    y = min(y, -geometry.design.hearth.front - 0.15)
    along, away = corner.own(x, y)
    x, y = corner.fire(
        min(max(along, left + OFF_WALL), right - OFF_WALL),
        min(max(away, front + OFF_WALL), back - OFF_WALL),
    )
    return x, y, min(z, wall_top(geometry) - 0.2)


def _cut(geometry: Geometry) -> Standpoint:
    """Before the knife, from the side of the half that is gone."""
    f = geometry.frame
    low, high = f.slab_bottom - 0.35, f.flue_start + 0.55
    middle = (low + high) / 2
    away = _distance(geometry.design.hearth.front + f.block_back + 0.6, high - low, OPENED)
    looks = (0.1, (f.block_back - geometry.design.hearth.front) / 2, middle)
    return Standpoint(
        "Cut", (-0.86 * away, looks[1] - 0.5 * away, middle + 0.22 * away), looks, OPENED
    )


def _apart(geometry: Geometry) -> Standpoint:
    """Before both columns, shell and what is inside it, up to where the flue starts."""
    f = geometry.frame
    wide = 4 * f.block_half + BESIDE + 0.4
    low, high = f.slab_bottom - 0.5, f.flue_start + 14 * BETWEEN
    away = _distance(wide, high - low, OPENED)
    looks = (f.block_half + BESIDE / 2, f.block_back / 2, (low + high) / 2)
    return Standpoint(
        "Apart",
        (looks[0] - 0.42 * away, looks[1] - 0.86 * away, looks[2] + 0.28 * away),
        looks,
        OPENED,
    )
