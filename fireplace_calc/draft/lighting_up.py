"""The first hour of the first fire: a cold flue, a wall that takes hours to warm, and how long it
takes until the draft stands.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.cases import fire, surroundings
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks
from fireplace_calc.draft.flow_path import FlowPath, outer_film, trace_flow_path, wall_layers
from fireplace_calc.draft.flow_search import CP_SMOKE
from fireplace_calc.draft.operating import Flow, settle
from fireplace_calc.draft.physics.air import air_density, heat_capacity
from fireplace_calc.draft.physics.house import house_pull
from fireplace_calc.draft.physics.wall_layers import (
    SlicedWall,
    face_temperature,
    sliced_wall,
    warmed,
    warming,
)
from fireplace_calc.draft.physics.walls import film
from fireplace_calc.draft.physics.weather import flue_at_rest
from fireplace_calc.draft.sizing import theoretical_draft
from fireplace_calc.draft.spillage import least_air, plume, plume_height
from fireplace_calc.geometry.frame import Framed

STEPS = (15.0,) * 40 + (60.0,) * 50
"""From moment to moment, an hour in all. [s]"""
KINDLING, CATCHING = 1.0 / 3600, 900.0
"""Burn rate of kindling [kg/s], and how long the fire takes from there to its own rate [s]:
engineering judgement.
"""
PAPER, PAPER_STEP, PAPER_STEPS = 1.0 / 3600, 15.0, 12
"""Newspaper burned at the throat, taken as the same wood, from moment to moment [s] and how often:
engineering judgement. [kg/s]
"""
WINDOW = 0.05
"""Free area of a window opened a hand wide beside the fire: engineering judgement. [m2]"""
WAYS = ("as it stands", "flue warmed first", "window open", "warmed, window open")
"""Ways to light it, each on the winter evening and on the mild one."""


@dataclass(frozen=True, slots=True)
class FirstHour:
    """The first fire from the moment the wood is lit, operating mode. The last axis has an entry
    for each of ``WAYS`` on the winter evening, then one for each on the mild evening.

    Attributes
    ----------
    times : array, shape (moments,)
        Since the wood was lit. [s]
    face, least : array, shape (moments, 8)
        Speed through the opening, nought where nothing goes up; and what just carries the smoke
        off. [m/s]
    liner : array, shape (moments, 8)
        Inside face of the liner, mean over its length. [K]
    foot : array, shape (moments, 8)
        Gas at the foot of the flue; the room's where nothing goes up. [K]
    up : array of bool, shape (moments, 8)
        Whether the smoke goes up the flue.
    taken, stored, lost : array, shape (8,)
        Heat that the wall took from the gas, what of it is still in there, and what has gone
        through, from the first paper on. [J]
    """

    times: Array
    face: Array
    least: Array
    liner: Array
    foot: Array
    up: BoolArray
    taken: Array
    stored: Array
    lost: Array

    @property
    def established(self) -> Array:
        """From when the smoke is carried off for the rest of the hour; infinite where it never is.
        [s]
        """
        holds = self.up & (self.face >= self.least)
        stays = np.logical_and.accumulate(holds[::-1], axis=0)[::-1]
        first = np.argmax(stays, axis=0)
        return np.where(stays.any(axis=0), self.times[first], np.inf)


def first_hour(geometry: Framed) -> FirstHour:
    """Light the first fire of one design, every way on both evenings.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    FirstHour

    Notes
    -----
    The gas is in balance with the wall at every moment, since it passes the flue in seconds; the
    wall is one column of slices, the mean of the whole flue, as cold at first as what stands round
    it. What the gas loses goes into the wall, to the last joule. A flue in which the air comes down
    turns when it and the smoke that gathers under the lintel and in the smoke chamber pull harder
    than the house; paper is held to the throat until it does, if its heat can carry a flow at all.
    Glass doors stand open.

    References
    ----------
    Engineering judgement on balances written out above; a flue's air passes quickly and its wall
    slowly, as in Journal of Mathematics in Industry 3:3 (2013), abstract read.
    """
    path = trace_flow_path(geometry, opened=True)
    house = surroundings(geometry.design)
    site, lit = geometry.design.site, fire(geometry.design)
    # Flow and wall meet by their difference in temperature: none at all is taken as next to none.
    outdoor = np.repeat([site.winter, site.mild], len(WAYS)) + 0.0
    outdoor = np.where(np.abs(outdoor - house.room) < 0.01, house.room - 0.01, outdoor)
    windows = house.inlet + np.tile([0.0, 0.0, WINDOW, WINDOW], 2)
    evening = replace(house, outdoor=outdoor, inlet=windows)
    wall = sliced_wall(wall_layers(geometry), outer_film(geometry))
    around = np.asarray(flue_at_rest(outdoor, house.room, path.indoors))
    calm = np.zeros(len(outdoor))
    now = _Moment(
        np.tile(around, (len(wall.stores), 1)),
        calm,
        calm + 1.2 * coefficient("face velocity") * path.opening_area,
        calm > 0,
        calm,
        calm,
    )
    case = _Case(path, evening, wall, around)
    paper = _burning(lit, PAPER, lit.power / lit.burn * coefficient("combustion efficiency"))
    warm = np.tile([False, True, False, True], 2)
    inverse = warming(wall, PAPER_STEP)
    for _ in range(PAPER_STEPS):
        now, _ = _onward(case, now, paper, warm, inverse, PAPER_STEP)
    moments, since, own = [], 0.0, geometry.design.fire.burn_rate
    inverses = {step: warming(wall, step) for step in STEPS}
    room = air_density(house.room, house.pressure)
    for step in STEPS:
        rate = own + (min(KINDLING, own) - own) * max(1.0 - since / CATCHING, 0.0)
        burning = _burning(lit, rate, lit.to_gas / lit.burn)
        turned = _turns(case, now, burning)
        now, flow = _onward(case, now, burning, turned, inverses[step], step)
        least = least_air(burning, path, room) / room / path.opening_area
        since += step
        moments.append(
            (
                since + calm,
                np.where(now.up, flow.face, 0.0),
                least + calm,
                face_temperature(wall, now.slices, now.heat),
                np.where(now.up, flow.foot, house.room),
                now.up,
            )
        )
    times, face, least, liner, foot, up = (np.array(each) for each in zip(*moments, strict=True))
    stored = (wall.stores @ (now.slices - around)) * path.flue_perimeter * path.length
    return FirstHour(times[:, 0], face, least, liner, foot, up, now.taken, stored, now.lost)


class _Case(NamedTuple):
    """What does not change through the hour."""

    path: FlowPath
    evening: Surroundings
    wall: SlicedWall
    around: Array


class _Moment(NamedTuple):
    """Slices of the wall [K], heat into it [W/m2], gas the last time any went up [kg/s], whether it
    goes up, and what the wall took and lost so far [J].
    """

    slices: Array
    heat: Array
    mass: Array
    up: BoolArray
    taken: Array
    lost: Array


def _burning(lit: BurningFire, rate: float, to_gas: Number) -> BurningFire:
    """The same wood at another rate; heat to the gas for each kilogram. [kg/s], [J/kg]"""
    return replace(lit, burn=rate, power=lit.power / lit.burn * rate, to_gas=to_gas * rate)


def _onward(
    case: _Case, now: _Moment, burning: BurningFire, turned: BoolArray, inverse: Array, step: float
) -> tuple[_Moment, Flow]:
    """One step: the flow that the wall as it is lets settle, and the wall that this flow warms;
    the film at 310 K, between 250 and 400 K it moves by 3 %.
    """
    path, evening, wall, around = case
    inside = film(now.mass, path.flue_area, path.diameter, path.roughness, 310.0)
    beside = (now.slices[0] - evening.outdoor) / (evening.room - evening.outdoor)
    flow = settle(
        replace(path, transmittance=1.0 / (1.0 / inside + 1.0 / wall.face), indoors=beside),
        burning,
        evening,
    )
    up = (now.up | turned) & ~flow.stalled
    area = path.flue_perimeter * path.length
    heat = np.where(up, flow.mass * CP_SMOKE * (flow.foot - flow.top) / area, 0.0)
    slices = warmed(wall, inverse, now.slices, heat, around, step)
    taken = now.taken + heat * area * step
    lost = now.lost + wall.outside * (slices[-1] - around) * area * step
    return _Moment(slices, heat, np.where(up, flow.mass, now.mass), up, taken, lost), flow


def _turns(case: _Case, now: _Moment, burning: BurningFire) -> BoolArray:
    """Whether the air in the flue and the smoke gathered under it pull harder than the house."""
    path, evening, _, _ = case
    room = air_density(evening.room, evening.pressure)
    risen = plume(burning.power, plume_height(path.opening_height, path.fire_bed), room)
    rise = coefficient("plume share") * burning.power / risen / heat_capacity(evening.room)
    cold = air_density(now.slices[0], evening.pressure)
    smoke = air_density(evening.room + rise, evening.pressure)
    gathered = G * np.maximum(path.height - path.length, 0.0) * (cold - smoke)
    at_rest = theoretical_draft(path.height, now.slices[0], evening.outdoor, evening.pressure)
    house = leaks(path, evening)
    pull = house_pull(evening.fans * room + 0.0 * now.heat, house)
    return np.asarray(at_rest + gathered + evening.wind > pull)
