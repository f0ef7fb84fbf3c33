"""What the opening radiates on to wood: mantel, trim, floor, furniture.

The firebox behind the opening counts as a black face as hot as its walls, with the bed of the fire
in it. That is on the warm side for the walls and rough for the flames: engineering judgement.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import WallFire
from fireplace_calc.heat.conduction.exchange import black

BED = 627.0
"""Of a bed of burning wood: small fires, cookstove reports of Eindhoven, as read. [C]"""
LEAST_FLUX, CRITICAL_FLUX = 4300.0, 12000.0
"""Least flux that lit wood in one study (Babrauskas, Interflam 2001, abstract); critical for
flaming, 10 to 14 kW/m2 (Bartlett, Hadden and Bisby, Fire Technology 2019, abstract). [W/m2]
"""
DOTS = 60
"""Across opening and bed in each direction. [-]"""


@dataclass(frozen=True, slots=True)
class ShiningOpening:
    """What shines: the opening and, low in it, the bed of the fire.

    Attributes
    ----------
    wide, high : float
        Of the opening. [m]
    bed_wide, bed_high : float
        Of the fire in it, its foot on the hearth. [m]
    """

    wide: float
    high: float
    bed_wide: float
    bed_high: float


def view_factor(
    place: tuple[float, float, float],
    facing: tuple[float, float, float],
    wide: float,
    high: float,
    dots: int = DOTS,
) -> float:
    """Share of what a small face sees that an upright rectangle fills.

    Parameters
    ----------
    place : float, float, float
        Of the face: right of the rectangle's middle, out from its plane, over its foot. [m]
    facing : float, float, float
        Its unit normal, in the same directions. [-]
    wide, high : float
        Of the rectangle. [m]
    dots : int
        Into how many it is cut either way.

    Returns
    -------
    float
        [-]

    Examples
    --------
    >>> round(view_factor((0, 1, 0.5), (0, -1, 0), 1, 1), 4)
    0.2395
    """
    x = ((np.arange(dots) + 0.5) / dots - 0.5) * wide - place[0]
    z = (np.arange(dots) + 0.5) / dots * high - place[2]
    dx, dz = np.meshgrid(x, z)
    dy = -place[1]
    square = dx**2 + dy**2 + dz**2
    seen = np.maximum(dx * facing[0] + dy * facing[1] + dz * facing[2], 0.0)
    shone = np.maximum(-dy, 0.0) + np.zeros_like(dx)
    area = wide * high / dots**2
    return float((seen * shone / (np.pi * square**2)).sum() * area)


def flux(
    opening: ShiningOpening,
    place: tuple[float, float, float],
    facing: tuple[float, float, float],
    fire: WallFire,
    room: float = 21.0,
) -> float:
    """What falls on a small face more than it would get from the room. [W/m2]

    Parameters
    ----------
    opening : ShiningOpening
    place, facing : float, float, float
        As ``view_factor`` takes them. [m], [-]
    fire : WallFire
    room : float
        [C]
    """
    whole = view_factor(place, facing, opening.wide, opening.high)
    bed = view_factor(place, facing, opening.bed_wide, opening.bed_high)
    walls, burning, around = (float(black(t)) for t in (fire.face, BED, room))
    return (whole - bed) * (walls - around) + bed * (burning - around)


def distance_for(
    opening: ShiningOpening, fire: WallFire, least: float = LEAST_FLUX, furthest: float = 6.0
) -> float | None:
    """How far before the middle of the opening an upright face gets no more than so much.

    Parameters
    ----------
    opening : ShiningOpening
    fire : WallFire
    least : float
        [W/m2]
    furthest : float
        [m]

    Returns
    -------
    float or None
        [m]; None where it is more than ``furthest``, nought where it is never so much.
    """
    out: Array = np.arange(0.05, furthest, 0.01)
    for distance in out:
        if flux(opening, (0.0, float(distance), opening.high / 2), (0, -1, 0), fire) <= least:
            return float(distance) if distance > out[0] else 0.0
    return None
