"""Windows with their frames, bars, casings and curtains, and a door. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import pi, sin
from typing import TYPE_CHECKING

from fireplace_calc.geometry.in_room.cut_corner import TURNED
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.figures import proportion_figures
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.records import Thing, Window
from fireplace_calc.scene.setting.forms import Ends, block, extruded, joined, rod, turned
from fireplace_calc.scene.setting.measures import (
    cut_corner,
    front_and_back,
    side_walls,
    window_ends,
    window_wall,
    windows,
)
from fireplace_calc.scene.setting.stood import Made, made

if TYPE_CHECKING:
    from manifold3d import Manifold

Placed = tuple[float, float, float, float]
"""Where something is stood, as of ``Made.at``. [m, deg]"""
CASING, CASING_THICK = 0.09, 0.02
"""Width of the boards round an opening, and their thickness. [m]"""
DOOR = 0.82
"""Width of the door's leaf. [m]"""
OFF_CORNER, MOST_AWAY = 0.3, 5.0
"""From the door to the corner of the room, and from the face to the door at most. [m]"""
SASH, BAR = 0.045, 0.02
"""Width of a sash and of a glazing bar. [m]"""
IN_WALL = (-0.15, -0.11)
"""A sash, before (positive) or behind the face of its wall. [m]"""
PANE = 0.4
"""Panes are about so wide and high. [m]"""
CURTAIN, FOLDS = 0.28, 3
"""Width of one side of a drawn curtain, and its folds."""
FROM_WALL = 0.15
"""What hangs at the wall with the windows stays within this. [m]"""


def window_things(geometry: Geometry) -> Iterator[Thing]:
    """Every window with what belongs to it.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    wall, panes = window_wall(geometry), windows(geometry)
    left = side_walls(geometry)[0] if wall is None else wall.plane
    placed = (0.0, 0.0, 0.0, 0.0) if wall is None else (wall.x, wall.y, 0.0, wall.turn)
    yield from _of_windows(left, window_ends(geometry), panes, placed)


@lru_cache(maxsize=4)
def _of_windows(
    left: float, wall: Ends, panes: tuple[Window, ...], placed: Placed
) -> tuple[Thing, ...]:
    """Kept, for seldom does a change move a window."""
    return tuple(one.at(*placed) for one in _all_of_windows(left, wall, panes))


def _all_of_windows(left: float, wall: Ends, panes: tuple[Window, ...]) -> Iterator[Made]:
    front, back = wall
    yield made("sashes", "window", "white", [b for w in panes for b in _sashes(left, w)])
    yield made("casings", "casing", "white", [_casing(left, w) for w in panes])
    rail = panes[0].head + CASING + 0.07
    rods, folds = [], []
    for w in panes:
        ends = (max(w.front - 0.27, front + 0.03), min(w.back + 0.27, back - 0.03))
        rods.append(rod([(left + 0.1, ends[0], rail), (left + 0.1, ends[1], rail)], 0.011, 8))
        for at, way in ((ends[0] + 0.03, 1.0), (ends[1] - 0.03, -1.0)):
            folds.append(_curtain(left, at, way, rail - 0.014))
    yield made("curtain rods", "curtain rod", "iron", rods, smooth=True)
    yield made("curtains", "curtain", "curtain", folds, smooth=True)


def _sashes(left: float, w: Window) -> Iterator[Manifold]:
    """Frame, meeting rail and bars, in one piece a window."""
    x = (left + IN_WALL[0], left + IN_WALL[1])
    y, z = (w.front, w.back), (w.sill, w.head)
    middle = (w.sill + w.head) / 2
    whole = block(x, y, z)
    inside = block((x[0] - 1, x[1] + 1), _in(y, SASH), _in(z, SASH))
    thin = (x[0] + 0.008, x[1] - 0.008)
    bars = [block(x, _in(y, 0.01), (middle - SASH / 2, middle + SASH / 2))]
    across = max(2, round((y[1] - y[0]) / PANE))
    bars += [
        block(thin, (at - BAR / 2, at + BAR / 2), _in(z, 0.01))
        for at in (y[0] + (y[1] - y[0]) * k / across for k in range(1, across))
    ]
    for low, high in ((z[0] + SASH, middle - SASH / 2), (middle + SASH / 2, z[1] - SASH)):
        many = max(1, round((high - low) / PANE))
        bars += [
            block(thin, _in(y, 0.01), (at - BAR / 2, at + BAR / 2))
            for at in (low + (high - low) * k / many for k in range(1, many))
        ]
    yield joined([whole - inside, *bars])


def _in(ends: Ends, off: float) -> Ends:
    return ends[0] + off, ends[1] - off


def _casing(left: float, w: Window) -> Manifold:
    """Boards at both sides and over the head; the stool and what is under it."""
    flat = (left, left + CASING_THICK)
    wide = (w.front - CASING, w.back + CASING)
    return joined(
        [
            block(flat, (wide[0], w.front), (w.sill, w.head)),
            block(flat, (w.back, wide[1]), (w.sill, w.head)),
            block(
                (left, left + 0.026), (wide[0] - 0.01, wide[1] + 0.01), (w.head, w.head + CASING)
            ),
            block((left - 0.1, left + 0.05), (w.front, w.back), (w.sill, w.sill + 0.012)),
            block((left, left + 0.05), (wide[0] - 0.02, wide[1] + 0.02), (w.sill - 0.025, w.sill)),
            block(flat, wide, (w.sill - 0.025 - 0.07, w.sill - 0.025)),
        ]
    )


def _curtain(left: float, at: float, way: float, high: float) -> Manifold:
    """One side of a curtain drawn open, in folds, from one end on."""
    many, thick = 4 * FOLDS, 0.005
    line = [
        (0.1 + 0.035 * sin(2 * pi * FOLDS * k / many) * (1 - 0.2 * (k % 4) / 3), CURTAIN * k / many)
        for k in range(many + 1)
    ]
    # Folds lie close: the cloth is thick enough that it does not show its back.
    outline = [(left + a + thick, at + way * b) for a, b in line]
    outline += [(left + a - thick, at + way * b) for a, b in reversed(line)]
    body = extruded(outline if way > 0 else outline[::-1], high - 0.015)
    return body.translate((0.0, 0.0, 0.015))


def door_size(geometry: Geometry) -> Ends:
    """Width and height of the door's leaf. [m]"""
    head = proportion_figures()["door head"][0]
    return DOOR, min(head, wall_top(geometry) - CASING - 0.02)


def door_place(geometry: Geometry) -> float | None:
    """The end of the door that is nearer to the fireplace, in the right wall; none where it is too
    short. [m]
    """
    front, back = front_and_back(geometry)
    if cut_corner(geometry) is not None:  # its wall is the one across from the window
        at = front + OFF_CORNER + DOOR
        return at if at + CASING < back - OFF_CORNER else None
    at = max(front, -MOST_AWAY) + OFF_CORNER + DOOR
    return at if at + CASING < min(back - 0.3, -geometry.design.hearth.front) else None


def door_things(geometry: Geometry) -> Iterator[Thing]:
    """The door: leaf with four panels, casing, knob.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    at = door_place(geometry)
    if at is not None:
        corner = cut_corner(geometry)
        placed = (0.0, 0.0, 0.0, 0.0) if corner is None else (*corner.corner, 0.0, TURNED)
        yield from _of_door(side_walls(geometry)[1], at, *door_size(geometry), placed)


@lru_cache(maxsize=4)
def _of_door(
    right: float, at: float, wide: float, high: float, placed: Placed
) -> tuple[Thing, ...]:
    return tuple(one.at(*placed) for one in _all_of_door(right, at, wide, high))


def _all_of_door(right: float, at: float, wide: float, high: float) -> Iterator[Made]:
    y = (at - wide, at)
    leaf = block((right + 0.02, right + 0.06), y, (0.0, high))
    middle, half = 0.95 * high / 2, (wide - 0.3) / 2
    panels = [
        block((right, right + 0.032), (a, a + half), (low, top))
        for a in (y[0] + 0.11, y[0] + 0.19 + half)
        for low, top in ((0.22, middle - 0.06), (middle + 0.06, high - 0.12))
    ]
    yield made("door", "door", "white", leaf - joined(panels))
    flat = (right - CASING_THICK, right)
    yield made(
        "door casing",
        "casing",
        "white",
        joined(
            [
                block(flat, (y[0] - CASING, y[0]), (0.0, high)),
                block(flat, (y[1], y[1] + CASING), (0.0, high)),
                block(flat, (y[0] - CASING, y[1] + CASING), (high, high + CASING)),
            ]
        ),
    )
    knob = turned(
        [
            (0, 0),
            (0.026, 0),
            (0.026, 0.006),
            (0.011, 0.01),
            (0.011, 0.03),
            (0.026, 0.04),
            (0.028, 0.055),
            (0.018, 0.066),
            (0, 0.068),
        ],
        10,
    )
    stands = knob.rotate((0.0, -90.0, 0.0)).translate((right + 0.02, y[0] + 0.06, 0.95))
    yield made("door knob", "knob", "brass", stands, smooth=True)
