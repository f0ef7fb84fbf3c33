"""What stands in the room, and from where it is seen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.room.eye import Block, Eye
from fireplace_calc.drawing.views.face import hearth_front, seat_fronts
from fireplace_calc.drawing.views.front_elevation import breast_ring
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.geometry.solids import level_cuts
from fireplace_calc.proportion import (
    corner_of_room,
    proportion_figures,
    shelf_top,
    wall_sides,
    wall_top,
)

FOOT = 12 * INCH


STANDS, BEHIND = 12 * FOOT, 1 * FOOT
"""How far away the viewer stands where the room is deep enough, and what he keeps behind him. [m]
"""


FLOOR, BESIDE, AHEAD = 0.75, 0.38, 0.45
"""Least depth of floor shown; from the masonry to the middle of the person, and how far before the
wall the person stands. [m]
"""
LONGEST = 1.9
"""How much longer than its place on the sheet a room may be for its height; past that the ends of
the wall are left out. [-]
"""


@dataclass(frozen=True, slots=True)
class Scene:
    """Where the eye is, what stands where, and how much of the room is shown. [m]"""

    eye: Eye
    wall: Polygon
    depth: float
    window: Polygon
    hearth: tuple[Block, ...]
    trim: tuple[Block, ...]
    person: tuple[float, float]
    whole: bool
    back: float
    """Where the wall beside the breast stands, behind the face."""
    cornered: bool = False
    """Whether the walls beside that one leave its ends at 45 degrees; else they are square to it.
    """

    def out(self, y: float) -> float:
        """How far the walls beside have gone out, each to its side, where they are so far before
        the wall at the fireplace. [m]

        Parameters
        ----------
        y : float
            Behind the face. [m]
        """
        return self.back - y if self.cornered else 0.0


def scene(geometry: Geometry, shape: float = 1.6) -> Scene:
    """Set up the picture: every number of it follows from the design and the figures of a standing
    person.

    Parameters
    ----------
    geometry : Geometry
    shape : float
        Width over height of its place on the sheet. [-]

    Returns
    -------
    Scene
    """
    f, d = geometry.frame, geometry.design
    (left, right), top = wall_sides(geometry), wall_top(geometry)
    hearth, trim = hearth_blocks(geometry), tuple(_trim(geometry, top))
    seat = max(d.seat.left, d.seat.right)
    beside = max(f.block_half, f.half_width + d.hearth.side if hearth else 0.0) + BESIDE + seat
    corner, back = corner_of_room(geometry), d.breast.stands_out or 0.0
    cornered = corner is not None
    told = cornered or d.house.room_length is not None
    spread = back + AHEAD if cornered else 0.0
    if not told or beside + 0.3 <= right + spread:
        stands = (beside, -AHEAD)
    elif beside + 0.3 <= -left + spread:
        stands = (-beside, -AHEAD)
    else:
        stands = (right - 0.3, -max(d.hearth.front, 0.0) - AHEAD)
    depth = max(
        FLOOR, d.hearth.front + 0.2, 0.1 - min((b.y for b in trim), default=0.0), 0.25 - stands[1]
    )
    away = min(STANDS, room_deep(geometry) - BEHIND)
    eye = Eye(max(away, depth + 1.5), proportion_figures()["eye level"][0])
    k = eye.size(-depth)
    low, high = eye.level * (1 - k), eye.level + (top - eye.level) * k
    spread = back + depth if cornered else 0.0
    whole = told and (right - left + 2 * spread) * k <= LONGEST * shape * (high - low)
    least = max((beside + 0.3) * eye.size(stands[1]), f.block_half + 0.1)
    reach = shape * (high - low) / 2

    def shown(end: float) -> float:
        """How far it is shown to one side, where the wall ends so far off."""
        end += spread
        if whole or (told and end * k <= reach):
            return end * k
        return max(min(reach, 0.98 * end if told else 99.0), least)

    x0, x1 = -shown(-left), shown(right)
    return Scene(
        eye,
        box(left, right, 0.0, top) if told else box(x0 - 1, x1 + 1, 0.0, top),
        depth,
        box(x0, x1, low, high),
        hearth,
        trim,
        stands,
        whole,
        back,
        cornered,
    )


def room_deep(geometry: Geometry) -> float:
    """How far the room goes on before the face; without end where nobody has told. [m]"""
    corner, told = corner_of_room(geometry), geometry.design.house.room_width
    if corner is not None:
        return corner.deep()
    return inf if told is None else told


def _named(geometry: Geometry) -> dict[str, float]:
    f, (name, over) = geometry.frame, shelf_top(geometry)
    named = {
        "floor": 0.0,
        "hearth": f.hearth,
        "opening top": f.opening_top,
        "eye": proportion_figures()["eye level"][0],
    }
    shelf = {f"top of {name}": over} if f.opening_top < over < wall_top(geometry) else {}
    raised = wall_top(geometry) > geometry.design.house.ceiling + 1e-9
    return {**named, **shelf, "ceiling, as drawn" if raised else "ceiling": wall_top(geometry)}


def standing_out(geometry: Geometry, s: Scene) -> Polygon:
    """Breast and stack up to the ceiling, or to where they go back behind the wall. [m]

    Parameters
    ----------
    geometry : Geometry
    s : Scene
        Of it.

    Returns
    -------
    Polygon
        On the plane of the face. [m]
    """
    top, out = s.wall[2][1], geometry.design.breast.stands_out
    return breast_ring(
        geometry, top if out is None else min(top, geometry.frame.front_reaches(out))
    )


def _trim(geometry: Geometry, top: float) -> list[Block]:
    """Every piece of mantel and trim that stands below the ceiling. [m]"""
    return [
        Block(left, right, -out, low, min(high, top), part.tone)
        for part in mantel_parts(geometry)
        for one in part.group.runs
        for left, right, out, low, high in one.blocks
        if low < top
    ]


def hearth_blocks(geometry: Geometry) -> tuple[Block, ...]:
    """The hearth before the opening, what carries it over the floor and its slab, and a seat beside
    it, in the order in which they are painted.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Block
        [m]
    """
    f, h = geometry.frame, geometry.design.hearth
    if h.front <= 0:
        return ()
    half, under = f.half_width + h.side, max(f.extension_top - h.thickness, 0.0)
    made = [
        Block(-half, half, -h.front, ring[0][1], ring[2][1], material)
        for material, ring in hearth_front(geometry)
    ]
    low, material = under if made else 0.0, geometry.parts_by_name["hearth extension"].material
    slab = Block(-half, half, -h.front, low, f.extension_top, material)
    return (*sorted(_seat(geometry), key=_from_far_and_low), *made, slab)


def _from_far_and_low(block: Block) -> tuple[float, float, float]:
    """What is painted first: what stands farther back, lower, or farther aside."""
    return (-block.y, block.bottom, -abs(block.left + block.right))


def _seat(geometry: Geometry) -> Iterator[Block]:
    """A seat beside the hearth; where it reaches past the breast it goes back to the wall, behind a
    wood store too. [m]
    """
    f, d = geometry.frame, geometry.design
    wall = d.breast.stands_out or 0.0

    def blocks(left: float, right: float) -> Iterator[tuple[float, float, float]]:
        """In two where the breast ends; how far back each goes."""
        inside = (x for x in (-f.block_half, f.block_half) if left < x < right)
        for a, b in pairwise(sorted({left, right, *inside})):
            yield a, b, wall if abs(a + b) / 2 > f.block_half else 0.0

    for material, ring in seat_fronts(geometry):
        (left, low), (right, top) = ring[0], ring[2]
        for a, b, back in blocks(left, right):
            against = back > 0 and min(abs(a), abs(b)) - f.block_half < ROUNDING
            yield Block(a, b, -d.hearth.front, low, top, material, back, against)
    base = geometry.parts_by_name.get("hearth seat base")
    for niche in base.cuts if base is not None else ():
        ((front_left, front_right, *_),) = level_cuts(niche, niche.bottom)
        for a, b, back in blocks(front_left[0], front_right[0]):
            if base is not None and back > 0:
                yield Block(a, b, 0.0, niche.bottom, niche.top, base.material, back)
