"""Half a fireplace in plan, with the framing behind and beside it, in cells."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.heat.conduction.exchange import between
from fireplace_calc.heat.conduction.grading import FINE, Cells, graded
from fireplace_calc.heat.conduction.mesh import Film, Gap, HeatMesh, Room, Solid, Space
from fireplace_calc.heat.conduction.raster import (
    Body,
    apart,
    corners_of,
    in_any,
    inside,
    reach_the_wall,
    the_narrow_way,
)

STUD_WIDE, STUD_DEEP, STUD_APART = 1.5 * INCH, 3.5 * INCH, 16.0 * INCH
"""Of a stud, and from one to the next: usual American framing. [m]"""
BOARD = 0.5 * INCH
"""Of the gypsum board on the far side. [m]"""
MASONRY_SENDS, WOOD_SENDS = 0.93, 0.90
"""Emissivities of brick (from memory) and of wood (ASHRAE). [-]"""
STEEP = 0.5
"""Slope of a side from which on its stair has lower steps, so that none is long. [-]"""
FIRE, ROOM, OUTDOORS = "fire", "room", "outdoors"
"""What drives the temperatures."""
NOTHING = Gap(across=2)
"""A corner across which no face looks straight at another."""
SPLAYED, SQUARE, BACK_GAP, SIDE_GAP, CORNER, INNER_BACK, INNER_SIDE = range(1, 8)
"""Places of the spaces in the stuff of a plan; nought is what is behind."""


@dataclass(frozen=True, slots=True)
class Framing:
    """What stands behind the gaps.

    Attributes
    ----------
    wood, batt, board : Solid
    stud_wide, stud_deep, apart, board_thick : float
        [m]
    solid : bool
        Wood all the way, without batts.
    """

    wood: Solid
    batt: Solid
    board: Solid
    stud_wide: float = STUD_WIDE
    stud_deep: float = STUD_DEEP
    apart: float = STUD_APART
    board_thick: float = BOARD
    solid: bool = False


@dataclass(frozen=True, slots=True)
class WallPlan:
    """Half a fireplace cut level at mid firebox, right of the center line; y from the face back.

    Attributes
    ----------
    bodies : tuple of Body
        A later one stands where two overlap.
    fire : polygon
        Outline of the firebox. [m]
    slope : float
        How far its side closes in, of the depth. [-]
    half, deep : float
        Of the masonry: half its width, and from its face to its back. [m]
    film : float
        Between the fire and what faces it. [W/(m2 K)]
    back_gap, side_gap : float
        To the framing; nought where it touches. [m]
    framing : Framing or None
        None where the masonry stands free.
    behind : str
        What drives the space behind and beside: ``room``, ``outdoors``.
    air : float
        Heat that air from the room carries through the gaps. [W/(m2 K)]
    masonry_sends, wood_sends : float
        Emissivities. [-]
    studs_from : float or None
        From where the studs beside are counted forward and back; the back of the masonry when None.
        [m]
    """

    bodies: tuple[Body, ...]
    fire: Polygon
    slope: float
    half: float
    deep: float
    film: float
    back_gap: float
    side_gap: float
    framing: Framing | None
    behind: str = ROOM
    air: float = 0.0
    masonry_sends: float = MASONRY_SENDS
    wood_sends: float = WOOD_SENDS
    studs_from: float | None = None

    @property
    def first_stud(self) -> float:
        """Where the middle of a stud beside the masonry stands. [m]"""
        return self.deep if self.studs_from is None else self.studs_from


def plan_mesh(plan: WallPlan, cells: Cells = FINE) -> HeatMesh:
    """The plan in cells: the room below, the fire at the lower left.

    Parameters
    ----------
    plan : WallPlan
    cells : Cells
        How fine.

    Returns
    -------
    HeatMesh
        Driven by ``fire``, ``room``, and by what is behind. The splayed side is a stair whose faces
        count as much as the slant has.
    """
    p, f = plan, plan.framing
    corners = np.concatenate([*corners_of(p.bodies), p.fire])
    xs = {0.0, p.half, *np.clip(corners[:, 0], 0.0, p.half).tolist()}
    ys = {0.0, p.deep, *np.clip(corners[:, 1], 0.0, p.deep).tolist()}
    if f is not None:
        sides = np.cumsum([p.half + p.side_gap, f.stud_deep, f.board_thick])
        backs = np.cumsum([p.deep + p.back_gap, f.stud_deep, f.board_thick])
        xs |= {*sides.tolist(), *_studs(f, float(sides[0]))}
        at = p.first_stud
        ys |= {*backs.tolist(), *(at - edge for edge in _studs(f, at))}
        ys |= {at + edge for edge in _studs(f, p.deep - at)}
    spread = cells.growth, cells.most, cells.least
    x = graded(apart(xs), cells.finest, *spread)
    y = graded(apart(ys), cells.finest / max(abs(p.slope) / STEEP, 1.0), *spread)
    at_x, at_y = np.meshgrid((x[1:] + x[:-1]) / 2, (y[1:] + y[:-1]) / 2)
    sent = between(p.masonry_sends, p.wood_sends)
    free: Space = Room(p.behind, p.masonry_sends)
    closed = between(p.masonry_sends, p.masonry_sends)
    stuff: list[Solid | Space] = [
        free,
        Film(FIRE, p.film, hypot(1.0, p.slope) / (1.0 + abs(p.slope))),
        Film(FIRE, p.film),
        Gap(1, sent, p.air),
        Gap(0, sent, p.air),
        NOTHING,
        Gap(1, closed),
        Gap(0, closed),
    ]
    which = np.zeros(at_x.shape, int)
    within = (at_x < p.half) & (at_y < p.deep)
    which[within] = INNER_BACK
    for body in p.bodies:
        here = in_any(body.rings, at_x, at_y) & ~in_any(body.holes, at_x, at_y)
        which[within & here] = len(stuff)
        stuff.append(body.solid)
    which[inside(p.fire, at_x, at_y)] = SPLAYED
    the_narrow_way(which, INNER_BACK, INNER_SIDE, x, y)
    reach_the_wall(which, SPLAYED, INNER_BACK, INNER_SIDE, x)
    last = int(np.searchsorted(y, max(y for _, y in p.fire) - 1e-9)) - 1
    which[last][which[last] == SPLAYED] = SQUARE  # the row before the back, which is no stair
    if f is not None:
        _frame(plan, f, which, at_x, at_y, stuff)
    edges = {"bottom": Room(ROOM, p.masonry_sends), "top": free, "right": free}
    return HeatMesh(x, y, stuff, which, edges)


def _frame(
    p: WallPlan,
    f: Framing,
    which: IntArray,
    x: Array,
    y: Array,
    stuff: list[Solid | Space],
) -> None:
    wood, batt, board = (len(stuff) + n for n in range(3))
    stuff += [f.wood, f.batt, f.board]
    side, back = p.half + p.side_gap, p.deep + p.back_gap
    which[(y >= p.deep) & (y < back) & (x < p.half)] = BACK_GAP
    which[(x >= p.half) & (x < side) & (y < p.deep)] = SIDE_GAP
    which[(x >= p.half) & (x < side) & (y >= p.deep) & (y < back)] = CORNER
    behind = (y >= back) & (y < back + f.stud_deep) & (x < side + f.stud_deep)
    beside = (x >= side) & (x < side + f.stud_deep) & (y < back + f.stud_deep)
    which[behind | beside] = wood if f.solid else batt
    which[behind & (_near_stud(x, f) | (x >= side))] = wood
    which[beside & (_near_stud(p.first_stud - y, f) | (y >= back))] = wood
    rear = (y >= back + f.stud_deep) & (x < side + f.stud_deep + f.board_thick)
    flank = (x >= side + f.stud_deep) & (y < back + f.stud_deep + f.board_thick)
    which[rear | flank] = board


def _near_stud(along: Array, f: Framing) -> BoolArray:
    """Whether a place lies in one of the studs that are counted from nought."""
    off = np.abs((along + f.apart / 2) % f.apart - f.apart / 2)
    near: BoolArray = off < f.stud_wide / 2
    return near


def _studs(f: Framing, until: float) -> list[float]:
    """Edges of the studs up to a length. [m]"""
    edges = [f.stud_wide / 2]
    at = f.apart
    while at + f.stud_wide / 2 < until:
        edges += [at - f.stud_wide / 2, at + f.stud_wide / 2]
        at += f.apart
    return [edge for edge in edges if edge < until]
