"""Walls, floor and ceiling, tight against each other and against the breast; skirting and cornice.
[m]
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from math import cos, pi, sin, sqrt
from typing import TYPE_CHECKING

from fireplace_calc.geometry.in_room.cut_corner import TURNED, CutCorner
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.records import Thing
from fireplace_calc.scene.setting.forms import Ends, block, joined
from fireplace_calc.scene.setting.masonry_in_room import (
    taken_at,
    taken_of_the_ceiling,
    taken_of_the_floor,
    taken_of_the_wall,
    wall_plane,
)
from fireplace_calc.scene.setting.measures import (
    cut_corner,
    front_and_back,
    side_walls,
    window_wall,
    windows,
)
from fireplace_calc.scene.setting.openings import CASING, door_place, door_size
from fireplace_calc.scene.setting.stood import made
from fireplace_calc.scene.stuffs import floor_stuff

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

THICK = 0.24
"""Of walls, floor and ceiling. [m]"""
SKIRTING, SKIRTING_THICK, SKIRTING_TOP = 0.14, 0.018, 0.007
"""Height; thickness, and what is left of it at the top edge. [m]"""
CORNICE = 0.1
"""Up, and out from the wall. [m]"""
LOW_ROOM = 2.3
"""Under a ceiling as low as this there is no cornice. [m]"""


def shell_things(geometry: Geometry) -> Iterator[Thing]:
    """What closes the room.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    left, right = side_walls(geometry)
    front, back = front_and_back(geometry)
    top, corner = wall_top(geometry), cut_corner(geometry)
    outer = ((left - THICK, right + THICK), (front - THICK, back + THICK))
    shaped = partial(_before, corner)
    floor = shaped(block(*outer, (-THICK, 0.0)), THICK)
    ceiling = shaped(block(*outer, (top, top + THICK)), THICK)
    breast = taken_of_the_wall(geometry).extrude(2 * THICK).rotate((-90.0, 0.0, 0.0))
    breast = breast.translate((0.0, wall_plane(geometry) - THICK, 0.0))
    at_fire, beside = (left, right), []
    if corner is not None:
        out = sqrt(2) * THICK  # so far the walls beside it reach where they end at its plane
        at_fire = (corner.left - out, corner.right + out)
        beside = [block((left, right), (back, back + THICK), (0.0, top))]
    at_left = shaped(block((left - THICK, left), outer[1], (0.0, top)))
    at_front = shaped(block((left, right), (front - THICK, front), (0.0, top)))
    across = window_wall(geometry)
    if across is None or across.turn == TURNED:
        at_left = _with_windows(geometry, at_left)
    else:
        at_front = _with_windows(geometry, at_front)
    face = block(at_fire, (wall_plane(geometry), wall_plane(geometry) + THICK), (0.0, top))
    for key, stuff, body in (
        (
            "floor",
            floor_stuff(geometry.design),
            floor - _prism(taken_of_the_floor(geometry), -THICK),
        ),
        ("ceiling", "ceiling", ceiling - _prism(taken_of_the_ceiling(geometry), top)),
        ("wall at the fireplace", "paint", face - breast),
        ("wall at the left", "paint", at_left),
        *(("wall beside the fireplace", "paint", shaped(wall)) for wall in beside),
        ("wall at the right", "paint", shaped(_right_wall(geometry, right, outer[1], top))),
        (
            "wall at the front",
            "paint",
            at_front,
        ),
    ):
        yield made(key, key, stuff, body).at()
    inside = partial(_between, corner, (left, right), (front, back))
    for key, levels, body in (
        ("skirting", (0.001, SKIRTING / 2), _skirting(inside)),
        ("cornice", (top - CORNICE / 2,), _cornice(inside, top)),
    ):
        if key == "cornice" and top < LOW_ROOM:
            continue
        stands = [_prism(taken_at(geometry, z), levels[-1] - THICK / 2) for z in levels]
        openings = map(shaped, _cut_by_openings(geometry, right))
        left_over = body - joined([breast, *stands, *openings])
        yield made(key, key, "white", left_over).at()


def _before(corner: CutCorner | None, body: Manifold, behind: float = 0.0) -> Manifold:
    """A body of the room's own axes where it stands, up to some way behind the wall across."""
    if corner is None:
        return body
    turned = body.rotate((0.0, 0.0, TURNED)).translate((*corner.corner, 0.0))
    return turned.trim_by_plane((0.0, -1.0, 0.0), -corner.wall - behind)


def _prism(outline: CrossSection, low: float) -> Manifold:
    """Through a floor or a ceiling that begins at a level."""
    from manifold3d import Manifold

    if outline.is_empty():
        return Manifold()
    return outline.extrude(2 * THICK).translate((0.0, 0.0, low - THICK / 2))


def _with_windows(geometry: Geometry, wall: Manifold) -> Manifold:
    """The wall that has them, less its windows."""
    across, panes = window_wall(geometry), windows(geometry)
    plane = side_walls(geometry)[0] if across is None else across.plane
    x = (plane - THICK - 0.1, plane + 0.1)
    holes = [block(x, (w.front, w.back), (w.sill, w.head)) for w in panes]
    if across is None:
        return wall - joined(holes)
    turned = joined(holes).rotate((0.0, 0.0, across.turn))
    return wall - turned.translate((across.x, across.y, 0.0))


def _right_wall(geometry: Geometry, right: float, y: Ends, top: float) -> Manifold:
    """With its door."""
    wall, at = block((right, right + THICK), y, (0.0, top)), door_place(geometry)
    if at is None:
        return wall
    wide, high = door_size(geometry)
    return wall - block((right - 0.1, right + 0.06), (at - wide, at), (-0.1, high))


def _skirting(inside: Callable[[float, float, float, float], Manifold]) -> Manifold:
    bend = SKIRTING - 0.02
    air = [
        inside(SKIRTING_THICK, -0.1, SKIRTING_THICK, bend),
        inside(SKIRTING_THICK, bend, SKIRTING_TOP, SKIRTING + 1e-3),
    ]
    return inside(0.0, 0.0, 0.0, SKIRTING) - joined(air)


def _cornice(inside: Callable[[float, float, float, float], Manifold], top: float) -> Manifold:
    """Hollowed by a quarter of a circle."""
    low, parts = top - CORNICE, 4
    hollow = [
        (CORNICE * (1 - 0.88 * cos(t)), low + CORNICE * sin(t))
        for t in (pi / 2 * k / parts for k in range(parts + 1))
    ]
    steps = [(hollow[0][0], low - 0.1), *hollow, (hollow[-1][0], top + 0.1)]
    air = [inside(a, z, b, w) for (a, z), (b, w) in zip(steps[:-1], steps[1:], strict=True)]
    return inside(0.0, low, 0.0, top) - joined(air)


def _between(
    corner: CutCorner | None,
    x: Ends,
    y: Ends,
    off_low: float,
    low: float,
    off_high: float,
    high: float,
) -> Manifold:
    """Air of the room between two levels, some way off its walls at either."""
    from manifold3d import Manifold

    if corner is None and off_low == off_high == 0:
        return block(x, y, (low, high))

    def corners(off: float) -> list[tuple[float, float]]:
        (a, b), (c, d) = (x[0] + off, x[1] - off), (y[0] + off, y[1] - off)
        if corner is None:
            return [(a, c), (a, d), (b, c), (b, d)]
        # Two lines off their walls meet farther along than the walls do.
        taken = corner.leg - (2 - sqrt(2)) * off
        own = [(a, c), (b, c), (b, d), (a + taken, d), (a, d - taken)]
        return [corner.fire(*place) for place in own]

    return Manifold.hull_points(
        [(*at, z) for off, z in ((off_low, low), (off_high, high)) for at in corners(off)]
    )


def _cut_by_openings(geometry: Geometry, right: float) -> Iterator[Manifold]:
    """Where door and casing interrupt what runs along the wall."""
    at = door_place(geometry)
    if at is not None:
        wide, high = door_size(geometry)
        ends = (at - wide - CASING, at + CASING)
        yield block((right - 0.05, right + 0.1), ends, (-0.1, high + CASING))
