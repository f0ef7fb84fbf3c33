"""The room with what stands in it. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.records import Point, RoomMeasures, Thing
from fireplace_calc.scene.setting.fire import fire_place, laid_fire
from fireplace_calc.scene.setting.furniture.beside_a_corner import (
    chair_spots,
    corner_spots,
    sofa_spots,
    table_spots,
    wall_spots,
)
from fireplace_calc.scene.setting.furniture.hearth import fire_irons, wood_cradle
from fireplace_calc.scene.setting.furniture.ornaments import plant
from fireplace_calc.scene.setting.furniture.person import person
from fireplace_calc.scene.setting.furniture.seats import armchair, sofa
from fireplace_calc.scene.setting.furniture.shelves import BAY, bookcase
from fireplace_calc.scene.setting.furniture.tables import (
    LAMP,
    RUG,
    low_table,
    rug,
    shade,
    side_table,
)
from fireplace_calc.scene.setting.hung_and_put import beside_the_breast, on_the_mantel
from fireplace_calc.scene.setting.masonry_in_room import wall_plane
from fireplace_calc.scene.setting.measures import (
    cut_corner,
    front_and_back,
    side_walls,
    window_wall,
    windows,
)
from fireplace_calc.scene.setting.openings import door_things, window_things
from fireplace_calc.scene.setting.places import FloorPlan, Spot
from fireplace_calc.scene.setting.shell import SKIRTING_THICK, shell_things
from fireplace_calc.scene.setting.stood import Furniture

STEP = 0.1
"""Furniture follows hearth and breast in steps; most changes leave it where it is. [m]"""
PENDANT = 0.3
"""From the ceiling to the middle of a lamp that hangs, where none can stand. [m]"""


@dataclass(frozen=True)
class _Standing:
    """One piece of furniture in its place."""

    what: Furniture
    spot: Spot
    level: float = 0.0


def room_measures(geometry: Geometry) -> RoomMeasures:
    """The room's measures, as the light needs them.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    RoomMeasures
    """
    (left, right), (front, back) = side_walls(geometry), front_and_back(geometry)
    at = fire_place(geometry)
    return RoomMeasures(
        left=left,
        right=right,
        front=front,
        back=back,
        ceiling=wall_top(geometry),
        windows=windows(geometry),
        lamp=geometry.once(_lamp),
        fire=(0.0, at.middle, at.hearth),
        fire_width=at.long,
        corner=cut_corner(geometry),
        window_wall=window_wall(geometry),
    )


def setting(geometry: Geometry) -> tuple[Thing, ...]:
    """The room and all that only stands in it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Thing
    """
    return (
        *shell_things(geometry),
        *window_things(geometry),
        *door_things(geometry),
        *laid_fire(geometry),
        *furniture(geometry),
        *on_the_mantel(geometry),
        *beside_the_breast(geometry, _tall_at_the_wall(geometry)),
    )


def furniture(geometry: Geometry) -> Iterator[Thing]:
    """What stands on the floor.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    for one in geometry.once(_arranged):
        yield from one.what.at(one.spot.x, one.spot.y, one.spot.turn, one.level)
    lamp = _lamp(geometry)
    if not _standing_lamp(geometry):
        yield shade(0.0).at(*lamp)


def _tall_at_the_wall(geometry: Geometry) -> list[tuple[float, float]]:
    """From where to where something stands that hides the wall at the fireplace. [m]"""
    near = wall_plane(geometry) - 0.8
    return [
        (one.spot.x - one.what.width / 2, one.spot.x + one.what.width / 2)
        for one in geometry.once(_arranged)
        if one.what.height > 1.3 and one.spot.y > near
    ]


def _lamp(geometry: Geometry) -> Point:
    standing = _standing_lamp(geometry)
    if standing:
        return (standing.spot.x, standing.spot.y, LAMP)
    (left, right), (front, _) = side_walls(geometry), front_and_back(geometry)
    corner, high = cut_corner(geometry), wall_top(geometry) - PENDANT
    if corner is not None:
        return (*corner.fire(0.75 * right, 0.75 * front), high)
    return ((left + right) / 2, front * 0.75, high)


def _standing_lamp(geometry: Geometry) -> _Standing | None:
    table = side_table()
    return next((one for one in geometry.once(_arranged) if one.what is table), None)


def _arranged(geometry: Geometry) -> tuple[_Standing, ...]:
    """Every piece of furniture on the first of its spots that is free, if one is."""
    plan, f, hearth = FloorPlan(geometry), geometry.frame, geometry.design.hearth
    reach = _up(max(f.block_half, f.half_width + hearth.side))
    ahead = _up(hearth.front)
    made: list[_Standing] = []

    def stand(what: Furniture, *spots: Spot, **how: bool) -> Spot | None:
        spot = plan.stand(what, spots, **how)
        if spot:
            made.append(_Standing(what, spot))
        return spot

    left, right, back = plan.left, plan.right, wall_plane(geometry) - SKIRTING_THICK
    near = max(left + 0.64, -reach - 2.3)  # a long room keeps its seats by the fire
    couch = None
    for wide in (2.1, 1.8, 1.5):
        couch = couch or stand(
            sofa(wide),
            *(
                Spot(max(near, left + 0.64 + 0.1 * k), -ahead - 0.65 - wide / 2 - 0.15 * m, 90.0)
                for k in range(3)
                for m in range(6)
            ),
            *sofa_spots(plan, wide, reach, ahead),
        )
    beside = couch.x + 0.02 if couch else left + 0.5
    stand(
        side_table(),
        *(
            Spot(beside + side, y, 0.0)
            for y in (-ahead - 0.15, -ahead - 0.3, -0.1, -ahead - 0.45, back - 0.3)
            for side in (0.0, -0.15, 0.15)
        ),
        *(Spot(x, back - 0.3) for x in (-reach - 0.45, reach + 0.45, right - 0.35, left + 0.5)),
        *(Spot(x, plan.front + 0.35) for x in (right - 0.35, left + 0.5)),
        *table_spots(plan, couch),
    )
    stand(
        armchair(),
        *(
            Spot(min(reach + 0.85 + 0.12 * k, right - 0.62), -ahead - 0.85 - 0.15 * m, -52.0)
            for m in range(6)
            for k in range(5)
        ),
        *chair_spots(plan, reach, ahead),
    )
    stand(
        person(),
        *(
            Spot(side * (reach + 0.38 + 0.1 * k), -0.12 - 0.15 * m, -38.0 * side)
            for k in range(5)
            for m in range(4)
            for side in (1, -1)
        ),
        burns=False,
    )
    bays = min(5, floor((wall_top(geometry) - 0.5) / BAY))
    case = None
    for wide in (1.2, 0.9, 0.6):
        case = case or stand(
            bookcase(wide, bays),
            *(
                Spot(x + side * (wide / 2 + 0.02), back - 0.155)
                for x, side in ((left + 0.24, 1), (-reach - 0.5, -1), (right - 0.1, -1))
            ),
            *wall_spots(plan, wide, 0.31 + 2 * SKIRTING_THICK),
        )
    green = plant().width / 2 + 0.03
    stand(
        plant(),
        *(
            Spot(right - green - 0.1 * k, back - green - 0.1 * m)
            for m in range(3)
            for k in range(6)
        ),
        *(Spot(right - green, plan.front + green + 0.2 * k) for k in range(4)),
        *corner_spots(plan, green),
    )
    stand(
        wood_cradle(),
        *(Spot(s * (reach + 0.36 + 0.05 * k), back - 0.2) for k in range(30) for s in (-1, 1)),
        *wall_spots(plan, wood_cradle().width, wood_cradle().depth),
    )
    stand(
        fire_irons(),
        *(Spot(s * (reach + 0.15 + 0.05 * k), back - 0.15) for k in range(3) for s in (1, -1)),
        burns=False,
    )
    for share in (1.0, 0.85, 0.7, 0.55):
        wide, deep = round(2.9 * share, 1), round(2.0 * share, 1)
        middle = (beside + 0.5 + reach + 0.5) / 2 - 0.1
        flat = stand(
            rug(wide, deep),
            *(
                Spot(middle + 0.1 * k, -max(ahead + 0.3, 1.0) - deep / 2 - 0.1 * m)
                for m in range(3)
                for k in (0, -1, 1, -2, 2, -3, 3, -4, 4)
            ),
            rug=True,
        )
        if flat:
            low = (
                Spot(flat.x + x, flat.y + y, turn)
                for turn, reach_x, reach_y in ((90.0, 0.32, 0.55), (0.0, 0.55, 0.32))
                for y in (-0.1, 0.1, 0.3, -0.3, -0.5)
                for x in (-wide / 2 + 0.6, -wide / 2 + 0.9, 0.0, 0.3, 0.6)
                if abs(x) + reach_x < wide / 2 and abs(y) + reach_y < deep / 2
            )
            table = next((spot for spot in low if plan.on(low_table(), spot)), None)
            if table:
                made.append(_Standing(low_table(), table, RUG))
            break
    return tuple(made)


def _up(size: float) -> float:
    return ceil(size / STEP - 1e-9) * STEP
