"""Where furniture may stand in a room whose corner is cut off: along its walls, which stand at 45
degrees to the fireplace, and to both sides of the fire.
"""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.scene.setting.places import FloorPlan, Spot

OUT = 0.02
"""From a wall to what stands at it. [m]"""
STEP, STEPS = 0.2, 12
"""From one spot along a wall to the next, and how many are tried. [m, -]"""


def sofa_spots(plan: FloorPlan, wide: float, reach: float, ahead: float) -> Iterator[Spot]:
    """At one side of the fire, its back to the room; the farther out the better.

    Parameters
    ----------
    plan : FloorPlan
    wide : float
        Of the sofa. [m]
    reach, ahead : float
        How far masonry and hearth reach to a side and into the room. [m]

    Yields
    ------
    Spot
        None where the fireplace stands in a wall.
    """
    if plan.corner is None:
        return
    for out in (1.9, 1.6, 1.3, 1.0, 0.75):
        for side in (-1, 1):
            for m in range(8):
                yield Spot(side * (reach + out), -ahead - 0.45 - wide / 2 - 0.15 * m, -90.0 * side)


def chair_spots(plan: FloorPlan, reach: float, ahead: float) -> Iterator[Spot]:
    """At either side of the fire, turned to it.

    Parameters
    ----------
    plan : FloorPlan
    reach, ahead : float
        As of ``sofa_spots``. [m]

    Yields
    ------
    Spot
    """
    if plan.corner is None:
        return
    for side in (-1, 1):
        for k in range(6):
            for m in range(8):
                yield Spot(side * (reach + 0.7 + 0.15 * k), -ahead - 0.75 - 0.15 * m, -52.0 * side)


def table_spots(plan: FloorPlan, couch: Spot | None) -> Iterator[Spot]:
    """At either end of the sofa, then at the walls.

    Parameters
    ----------
    plan : FloorPlan
    couch : Spot or None

    Yields
    ------
    Spot
    """
    if plan.corner is not None and couch is not None:
        for end in (1.1, 1.25, 1.4, 1.6):
            for way in (1, -1):
                yield Spot(couch.x, couch.y + way * end)
    yield from wall_spots(plan, 0.5, 0.5)


def wall_spots(plan: FloorPlan, wide: float, deep: float) -> Iterator[Spot]:
    """With the back to the wall at the right of the cut corner, then to the one with the door.

    Parameters
    ----------
    plan : FloorPlan
    wide, deep : float
        Of what stands there. [m]

    Yields
    ------
    Spot
    """
    if plan.corner is None:
        return
    off = deep / 2 + OUT
    for k in range(STEPS):
        yield plan.spot(plan.corner.leg + 0.25 + wide / 2 + STEP * k, plan.own_back - off)
    for k in range(STEPS):
        yield plan.spot(plan.own_right - off, plan.own_back - 0.1 - wide / 2 - STEP * k, -90.0)


def corner_spots(plan: FloorPlan, green: float) -> Iterator[Spot]:
    """In the corners that the room has left.

    Parameters
    ----------
    plan : FloorPlan
    green : float
        From the walls to the middle of what stands there. [m]

    Yields
    ------
    Spot
    """
    if plan.corner is None:
        return
    for away in (plan.own_back - green, plan.own_front + green):
        for k in range(4):
            yield plan.spot(plan.own_right - green - 0.1 * k, away)
