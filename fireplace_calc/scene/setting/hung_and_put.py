"""What is put on the mantel, and pictures hung over it and beside the breast. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fireplace_calc.geometry.mantel.on_face import shelf_board
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.records import Thing
from fireplace_calc.scene.setting.furniture.ornaments import (
    candlestick,
    clock,
    picture,
    pile_of_books,
    vase,
)
from fireplace_calc.scene.setting.masonry_in_room import wall_plane
from fireplace_calc.scene.setting.measures import cut_corner, side_walls
from fireplace_calc.scene.setting.stood import Made, gathered

if TYPE_CHECKING:
    from collections.abc import Sequence

PANELED = "paneled overmantel"
PANELING = 0.07
"""Behind the front of such paneling nothing is put. [m]"""
OFF_EDGE = 0.02
"""From the front edge of a shelf to what stands on it, and between two things on it. [m]"""
HUNG = 1.55
"""Level of the middle of a picture beside the breast. [m]"""
LEAST = 0.3
"""No picture is lower. [m]"""


def on_the_mantel(geometry: Geometry) -> Iterator[Thing]:
    """Candlesticks, a vase, books, and a clock where no picture hangs, as the shelf has room.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    board = shelf_board(geometry)
    if board is None:
        return
    left, right, front, top = board
    hung = over_the_mantel(geometry)
    yield from hung
    behind = -PANELING if geometry.design.mantel.family == PANELED else -0.005
    deep, high = behind - front - OFF_EDGE, wall_top(geometry) - top - OFF_EDGE
    middle = (left + right) / 2
    if not hung:
        yield from _put(clock(), middle, front, top, deep, high)
    room = (right - left) / 2 - 0.06
    row = (
        (-1, (vase("vase", "glaze", 0.28, 0.15),)),
        (1, candlestick("candlestick", 0.26)),
        (1, candlestick("short candlestick", 0.19)),
        (1, pile_of_books()),
    )
    used = {-1: 0.06, 1: 0.08}
    for side, what in row:
        wide = gathered(*what).width
        least = 0.0 if hung else 0.2
        if used[side] + wide + least > room:
            continue
        x = middle + side * (room - used[side] - wide / 2)
        put = tuple(_put(what, x, front, top, deep, high))
        if put:
            used[side] += wide + 2 * OFF_EDGE
            yield from put


def _put(
    what: Sequence[Made], x: float, front: float, top: float, deep: float, high: float
) -> Iterator[Thing]:
    """On a shelf, where it is deep enough and has so much air over it."""
    whole = gathered(*what)
    if whole.depth <= deep and whole.height <= high:
        yield from whole.at(x, front + OFF_EDGE + max(whole.depth, 0.12) / 2, 0.0, top)


def over_the_mantel(geometry: Geometry) -> tuple[Thing, ...]:
    """A picture on the flat of the breast over the shelf; none where paneling stands, or where
    there is no flat high enough.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Thing
    """
    board, f = shelf_board(geometry), geometry.frame
    if board is None or geometry.design.mantel.family == PANELED:
        return ()
    low, top = board[3] + 0.1, min(f.block_top, wall_top(geometry) - 0.12) - 0.08
    high = min(top - low, 0.72)
    wide = min(1.3 * high, 1.5 * f.block_half, board[1] - board[0] - 0.5)
    if high < LEAST or wide < 0.8 * high:
        return ()
    high, wide = (int(size / 0.05 + 1e-9) * 0.05 for size in (high, wide))
    level = low + (min(top, low + 0.9) - low) / 2
    return tuple(one.at(0.0, -0.001, level) for one in picture("picture", wide, high))


def beside_the_breast(geometry: Geometry, taken: Sequence[tuple[float, float]]) -> Iterator[Thing]:
    """A picture on the wall at the right of the breast, where nothing stands before it.

    Parameters
    ----------
    geometry : Geometry
    taken : sequence of tuple
        From where to where something tall stands at that wall. [m]

    Yields
    ------
    Thing
    """
    wide, high, f = 0.56, 0.44, geometry.frame
    corner, right = cut_corner(geometry), side_walls(geometry)[1]
    back = wall_plane(geometry)
    if corner is not None:
        right = corner.right
    ends = (f.block_half + 0.3, right - 0.3)
    if wall_top(geometry) < HUNG + high / 2 + 0.3:
        return
    for x in (ends[0] + 0.42, ends[0] + 0.6, ends[1] - 0.5):
        x0, x1 = x - wide / 2, x + wide / 2
        if x0 < ends[0] or x1 > ends[1] or any(x0 < b and a < x1 for a, b in taken):
            continue
        for one in picture("picture beside the breast", wide, high):
            yield one.at(x, back - 0.001, HUNG)
        return
