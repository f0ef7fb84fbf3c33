"""What goes out of free faces, and how steeply that changes with their temperatures."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.exchange import DOWN, LEVEL, SIGMA, STILL_AIR, UP, ZERO_C
from fireplace_calc.heat.conduction.mesh import FreeFaces, Gap, HeatMesh, Room, Space

Drives = Mapping[str, float]
"""Temperature of each space by its name. [C]"""
Carried = tuple[Array, Array]
"""What moving air carries across, and from either face to the air that is fed. [W/(m2 K)]"""
Slopes = tuple[Array, Array, Array]
"""Of heat across with either face, and of heat to the air that is fed. [W/(m K)]"""
TURNING = {LEVEL: 0.73, UP: 1.14, DOWN: 0.0}
"""Of air that moves by itself in a layer (ISO 6946). [W/m2K(4/3)]"""
SLIGHT = 5.0
"""Difference below which the slope of moving air, which is none at nought, is taken there. [K]"""


class Bends:
    """All faces whose heat goes with no straight line, side by side, those on gaps first.

    A face in a room has the room across it; its air is a link without air of its own.

    Parameters
    ----------
    mesh : HeatMesh
    """

    def __init__(self, mesh: HeatMesh) -> None:
        gaps = [faces for faces in mesh.faces if isinstance(faces.space, Gap)]
        rooms = [faces for faces in mesh.faces if isinstance(faces.space, Room)]
        self.spaces = [(faces.space, len(faces.node)) for faces in (*gaps, *rooms)]
        self.drives = sorted({space.drive for space, _ in self.spaces})
        self.count = sum(n for _, n in self.spaces)
        self.gaps = slice(0, sum(len(faces.node) for faces in gaps))
        none, nothing = np.zeros(0, int), np.zeros(0)
        self.node = np.concatenate([none, *(faces.node for faces in (*gaps, *rooms))])
        self.area = np.concatenate([nothing, *(faces.area for faces in (*gaps, *rooms))])
        every = np.array([n for n, (_, many) in enumerate(self.spaces) for _ in range(many)], int)
        kinds = [_of(space) for space, _ in self.spaces]
        sends, self._turns, self._fed = np.array(kinds).reshape(-1, 3)[every].T
        self._sends = SIGMA * sends
        places = [mesh.points + self.drives.index(space.drive) for space, _ in self.spaces]
        self.drive = np.array(places, int)[every]
        self.other, self._still = self.drive.copy(), np.zeros(self.count)
        self.other[self.gaps] = np.concatenate([none, *(faces.other for faces in gaps)])
        stills = [_still(faces) for faces in gaps]
        self._still[self.gaps] = np.concatenate([nothing, *stills])
        self.any_fed = bool(self._fed.any())

    def _with_rooms(self, points: Array, drives: Drives) -> Array:
        """Points, and behind them the spaces. [C]"""
        return np.concatenate([points, [drives[name] for name in self.drives]])

    def air(self, points: Array, drives: Drives) -> Carried:
        """What moving air carries at these points. [W/(m2 K)]"""
        every = self._with_rooms(points, drives)
        return self._air(np.abs(every[self.node] - every[self.other]))

    def flows(self, points: Array, drives: Drives) -> tuple[Array, Array, Array]:
        """Heat across, and from either face to the air that is fed. [W/m]"""
        every = self._with_rooms(points, drives)
        return self._flows(every, every[self.node], every[self.other])

    def _flows(
        self, every: Array, one: Array, other: Array, air: Carried | None = None
    ) -> tuple[Array, Array, Array]:
        apart = one - other
        across, away = air or self._air(np.abs(apart))
        hot, cold = (one + ZERO_C) ** 2, (other + ZERO_C) ** 2
        crossing = self.area * (self._sends * (hot * hot - cold * cold) + across * apart)
        if not self.any_fed:
            none = np.zeros(self.count)
            return crossing, none, none
        room, fed = every[self.drive], self.area * away
        return crossing, fed * (one - room), fed * (other - room)

    def amiss(
        self, points: Array, drives: Drives, slopes: Slopes, air: Carried | None = None
    ) -> Array:
        """What slopes take out of every point, less what really goes. [W/m]

        Parameters
        ----------
        points : array
            [C]
        drives : mapping
            [C]
        slopes : tuple of array
            As ``slopes`` gives them. [W/(m K)]
        air : tuple of array or None
            What it carries; what it does at these points when None. [W/(m2 K)]
        """
        every, (hot, cold, away) = self._with_rooms(points, drives), slopes
        one, other = every[self.node], every[self.other]
        crossing, leaving, leaving_other = self._flows(every, one, other, air)
        across, gaps = hot * one - cold * other - crossing, self.gaps
        heat = np.zeros(len(points))
        heat[self.node] = across + (away * one - leaving)  # no point is the face of two spaces
        heat[self.other[gaps]] += (away * other - leaving_other - across)[gaps]
        return heat

    def slopes(self, points: Array, drives: Drives | None) -> Slopes:
        """How steeply heat across changes with either face, and heat to fed air; with what a room
        is it does not, for rooms are driven. [W/(m K)]

        Parameters
        ----------
        points : array
            About as hot as they will be. [C]
        drives : mapping or None
            Likewise; where they are not known yet, 40 K cooler than the mean. [C]
        """
        if drives is None:
            drives = dict.fromkeys(self.drives, float(np.mean(points)) - 40.0)
        every = self._with_rooms(points, drives)
        one, other = every[self.node], every[self.other]
        steep = np.abs(one - other)
        steep[self.gaps] = np.maximum(steep[self.gaps], SLIGHT)
        moved = self._turns * np.cbrt(steep)
        across, away = self._shared(np.where(moved > self._still, 4 / 3 * moved, self._still))
        hot, cold = (4 * self._sends * (face + ZERO_C) ** 3 for face in (one, other))
        flat = self.area * (cold + across)
        flat[self.gaps.stop :] = 0.0
        return self.area * (hot + across), flat, self.area * away

    def _air(self, steep: Array) -> Carried:
        """By air between faces so far apart in temperature. [W/(m2 K)]"""
        return self._shared(np.maximum(self._turns * np.cbrt(steep), self._still))

    def _shared(self, air: Array) -> Carried:
        """Across, and from either face to the air that is fed. [W/(m2 K)]"""
        if not self.any_fed:
            return air, np.zeros(self.count)
        each = 2 * air  # at either face (ISO 6946 has the two of them in a row)
        share = each / (2 * each + self._fed + 1e-300)
        return share * each, share * self._fed


def _of(space: Space) -> tuple[float, float, float]:
    """What a face sends out [-], how its air turns [W/m2K(4/3)], what feeds that. [W/(m2 K)]"""
    if isinstance(space, Gap):
        return space.emittance, TURNING[space.way], space.air
    assert isinstance(space, Room)
    return space.emissivity, space.coefficient, 0.0


def _still(faces: FreeFaces) -> Array:
    """Of air in a layer that does not turn (ISO 6946). [W/(m2 K)]"""
    assert isinstance(faces.space, Gap)
    still: Array = STILL_AIR / faces.width
    return np.maximum(still, 0.12 * faces.width**-0.44) if faces.space.way == DOWN else still
