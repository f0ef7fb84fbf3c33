"""How large the room is, and where its windows are. [m]

All of it in the room's own axes: those of the fireplace, but where it stands across a corner
(``geometry/in_room``).
"""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

from fireplace_calc.geometry.in_room.cut_corner import TURNED, CutCorner
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.across_corner import corner_of_room
from fireplace_calc.proportion.wall_guides import wall_sides, wall_top
from fireplace_calc.scene.records import Window, WindowWall
from fireplace_calc.scene.setting.forms import Ends
from fireplace_calc.scene.setting.masonry_in_room import wall_plane

USUAL_DEPTH = 6.2
"""Of a room that nobody has measured. [m]"""
USUAL_HALF = 3.0
"""Half its length. [m]"""
FLOOR = 0.6
"""Floor that is always left before the hearth, however shallow the room was said to be. [m]"""
SILL = 0.72
"""Level of the sills. [m]"""
WIDE, APART = 1.1, 0.55
"""Of a window, and from one to the next. [m]"""
NARROWEST = 0.6
"""Of a window. [m]"""
OFF_FRONT, OFF_BACK = 0.45, 0.7
"""From a window to the ends of its wall. [m]"""
IN_SIGHT = 5.5
"""Windows farther from the face than this light nothing that matters. [m]"""
MOST_WINDOWS = 2
BESIDE_THE_CUT = 0.3
"""Of every wall of the room that is always left beside one across the corner. [m]"""


def cut_corner(geometry: Geometry) -> CutCorner | None:
    """The wall across the corner, in the plane where the room shows it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CutCorner or None
        Nothing where the fireplace stands in a wall.
    """
    corner = corner_of_room(geometry)
    return None if corner is None else replace(corner, wall=wall_plane(geometry))


def side_walls(geometry: Geometry) -> Ends:
    """Faces of the left and the right wall.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        [m]
    """
    corner = cut_corner(geometry)
    if corner is not None:
        return 0.0, _own_wall(geometry, corner, corner.along or 2 * USUAL_HALF, 1)
    left, right = wall_sides(geometry)
    if geometry.design.house.room_length is None:
        return min(left, -USUAL_HALF), max(right, USUAL_HALF)
    return left, right


def front_and_back(geometry: Geometry) -> Ends:
    """The wall behind whoever looks at the fire, and the wall that the breast stands out of.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        [m]
    """
    corner = cut_corner(geometry)
    if corner is not None:
        return -_own_wall(geometry, corner, corner.away or USUAL_DEPTH, -1), 0.0
    back = wall_plane(geometry)
    deep = geometry.design.house.room_width or USUAL_DEPTH
    return min(back - deep, -geometry.design.hearth.front - FLOOR), back


def _own_wall(geometry: Geometry, corner: CutCorner, long: float, side: int) -> float:
    """Length of a wall beside the one across the corner: never so short that no floor is left
    before the hearth. [m]
    """
    f, hearth = geometry.frame, geometry.design.hearth
    x, y = corner.corner
    ahead = y + hearth.front + FLOOR + side * (f.half_width + hearth.side - x)
    return max(long, corner.leg + BESIDE_THE_CUT, ahead / sqrt(2))


def window_wall(geometry: Geometry) -> WindowWall | None:
    """The wall with the windows of a room whose corner is cut off: the one at the left of the
    fireplace, or, where too little is left of it, the one across from that at the right.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    WindowWall or None
        Nothing where the fireplace stands in a wall: then it is the wall at the left.
    """
    corner = cut_corner(geometry)
    if corner is None:
        return None
    front = front_and_back(geometry)[0]
    if -front - corner.leg >= OFF_FRONT + NARROWEST + OFF_BACK:
        return WindowWall(*corner.corner, TURNED, 0.0)
    return WindowWall(*corner.corner, TURNED + 90.0, front)


def window_ends(geometry: Geometry) -> Ends:
    """Ends of the wall with the windows, in its own axes.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        The farther and the nearer one. [m]
    """
    wall, corner = window_wall(geometry), cut_corner(geometry)
    front, back = front_and_back(geometry)
    if wall is None or corner is None:
        return front, back
    return (front, back - corner.leg) if wall.turn == TURNED else (-side_walls(geometry)[1], 0.0)


def windows(geometry: Geometry) -> tuple[Window, ...]:
    """Windows of the left wall, from the breast on; across a corner, of ``window_wall``.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Window
        At least one: the shortest wall that can be told has room for it.
    """
    front, back = window_ends(geometry)
    seen = -IN_SIGHT if window_wall(geometry) is None else back - IN_SIGHT
    low, high = max(front + OFF_FRONT, seen), back - OFF_BACK
    many = min(MOST_WINDOWS, int((high - low + APART) / (WIDE + APART)))
    wide = WIDE
    if many == 0:
        many, wide = 1, high - low
    top = wall_top(geometry)
    head = min(max(2.15, 0.72 * top), top - 0.35, 2.9)
    spare = (high - low - many * wide) / many
    ends = [high - spare / 2 - k * (wide + spare) for k in range(many)]
    return tuple(Window(end - wide, end, SILL, head) for end in ends)
