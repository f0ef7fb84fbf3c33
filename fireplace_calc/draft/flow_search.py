"""Which flow settles: temperatures, draft and losses at an assumed flow, and the search for the
one at which the flue leaves just the pull that the house asks for.
"""

from __future__ import annotations

from dataclasses import fields, replace
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks, taken_out
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.physics.air import GAS_CONSTANT, air_density, air_viscosity
from fireplace_calc.draft.physics.house_leaks import Leaks, door_loss, net_inflow
from fireplace_calc.draft.physics.losses import friction_factor
from fireplace_calc.draft.physics.walls import mean_temperature
from fireplace_calc.draft.root_search import Which, largest_root

R_SMOKE = GAS_CONSTANT / 0.02886
"""Gas constant of the smoke of an open fire, air ratio 5 to 20. [J/(kg K)]"""
CP_SMOKE = 1025.0
"""Its heat capacity, within 2.5 % from 30 to 200 C at an air ratio of 10 to 50. [J/(kg K)]"""
HALVINGS = 5
"""How often the upper bound of the flow is halved before the search."""


class FlowInputs(NamedTuple):
    """What stays as it is while a flow is looked for. Temperatures in K, pressures in Pa."""

    room: Number
    beside: Number
    """What lies round the flue."""
    heat: Number
    """To the gas, over its heat capacity. [K kg/s]"""
    cooling: Number
    """Through the wall for each kelvin, over the heat capacity. [kg/s]"""
    column: Number
    """Weight of the outdoor air beside the flue, and the wind: what gas of no weight would leave
    over."""
    gas: Number
    """The same weight of gas, times its temperature. [Pa K]"""
    loss: Number
    """Velocity head over flow squared and temperature. [Pa s2/(kg2 K)]"""
    resistance: Number
    """Every loss but friction that goes with the flow. [-]"""
    rubbed: Number | None
    """Friction where it is given, counted in with the resistance. [-]"""
    slender: Number
    """Length over diameter of the flue. [-]"""
    reynolds: Number
    """Reynolds number times viscosity, over the flow. [1/m]"""
    roughness: Number
    """Relative. [-]"""
    burn: Number
    """Wood, which comes in by no opening. [kg/s]"""
    doors: Number | None
    """What shut glass doors take over air flow squared; none where all stand open. [Pa s2/kg2]"""


def flow_inputs(
    path: FlowPath, fire: BurningFire, surroundings: Surroundings, friction: Number | None
) -> FlowInputs:
    """What one search needs, worked out once.

    Parameters
    ----------
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    friction : float or array, optional
        Darcy's factor; from the wall's roughness when left out. [-]

    Returns
    -------
    FlowInputs
    """
    room, outdoor, diameter = surroundings.room, surroundings.outdoor, path.diameter
    column, slender = G * path.height, path.length / diameter
    rubbed = None if friction is None else friction * slender
    resistance = coefficient("velocity head") + path.inlet + path.other
    doors = None
    if path.shut.any():
        doors = door_loss(
            np.where(path.shut, path.doors, np.inf), air_density(room, surroundings.pressure)
        )
    return FlowInputs(
        room,
        outdoor + path.indoors * (room - outdoor),
        fire.to_gas / CP_SMOKE,
        path.transmittance * path.flue_perimeter * path.length / CP_SMOKE,
        column * air_density(outdoor, surroundings.pressure) + surroundings.wind,
        column * surroundings.pressure / R_SMOKE,
        R_SMOKE / (2.0 * surroundings.pressure * path.flue_area**2),
        resistance if rubbed is None else resistance + rubbed,
        rubbed,
        slender,
        diameter / path.flue_area,
        path.roughness / diameter,
        fire.burn,
        doors,
    )


class FlowState(NamedTuple):
    """What follows from an assumed flow. Temperatures in K, pressures in Pa."""

    foot: Number
    mean: Number
    head: Number
    friction: Number
    left: Number
    """Draft and wind less every loss of the flue: what there is to pull at the house."""


def flow_state(mass: Number, given: FlowInputs) -> FlowState:
    """Temperatures, draft and losses at an assumed flow.

    Parameters
    ----------
    mass : float or array
        Gas up the flue. [kg/s]
    given : FlowInputs

    Returns
    -------
    FlowState
    """
    foot = given.room + given.heat / mass
    mean = mean_temperature(foot, given.beside, given.cooling / mass)
    resistance, rubbed = given.resistance, given.rubbed
    if rubbed is None:
        reynolds = given.reynolds * mass / air_viscosity(mean)
        rubbed = friction_factor(reynolds, given.roughness) * given.slender
        resistance = resistance + rubbed
    head = given.loss * mass * mass * mean
    left = given.column - given.gas / mean - resistance * head
    if given.doors is not None:
        left = left - given.doors * (mass - given.burn) ** 2
    return FlowState(foot, mean, head, rubbed, left)


def _bounds(
    fire: BurningFire, house: Leaks, surroundings: Surroundings, given: FlowInputs
) -> tuple[Array, Array]:
    """The least flow a fire can burn with, and one that no draft can drive, in the shape of the
    answer. [kg/s]

    The upper bound halves its way down, on a scale of ratios, to where what is left over would be
    too weak for any house even if room air and surroundings of the flue were both as warm as the
    warmer of them for the draft, as cold as the colder for the losses, with no friction but what is
    given; that falls with the flow all the way, so nothing above it can be the answer.
    """
    cold, warm = np.minimum(given.room, given.beside), np.maximum(given.room, given.beside)
    loss = given.resistance * given.loss
    drive = given.column + house.rise
    low, fans = np.asarray(fire.least_flow, float), surroundings.fans
    known = [each for each in given if each is not None]
    ways = (house.coefficient, house.exponent, house.inlet, house.bottom, house.top)
    shape = np.broadcast(low, *known, *ways, fans).shape
    # From gas of no weight at all.
    high = np.maximum(np.sqrt(np.maximum(drive, 0.0) / (loss * cold)), 1.5 * low)
    under = low
    for _ in range(HALVINGS):
        middle = np.sqrt(under * high)
        heated = mean_temperature(given.heat / middle, 0.0, given.cooling / middle)
        too_weak = drive - given.gas / (warm + heated) < loss * (cold + heated) * middle * middle
        under, high = np.where(too_weak, under, middle), np.where(too_weak, middle, high)
    return np.broadcast_to(low, shape), np.broadcast_to(np.maximum(high, 1.5 * low), shape)


class _Shortage(NamedTuple):
    """A function of the flow that crosses zero where the pull that the flue leaves for the house
    lets in just what goes out.

    Both sides go through ``y sqrt(y**2 + s**2)``, which is nearly straight over the pull: leaks go
    with its power 0.5 to 0.8, and straight with it where the stack effect holds it off zero.
    """

    given: FlowInputs
    house: Leaks
    shut: BoolArray
    """Where the house is not as open as outdoors."""
    besides: Number
    """What goes out besides the gas. [kg/s]"""
    bent: Number
    shape: tuple[int, ...]

    def __call__(self, mass: Array) -> Array:
        """How much more comes in than goes out, through that function; the pull that is left where
        the house is open. Flow in kg/s.
        """
        left = flow_state(mass, self.given).left
        if not self.shut.any():
            return np.asarray(left)
        let_in, out = net_inflow(left, self.house), mass + self.besides
        short = let_in * np.sqrt(let_in**2 + self.bent) - out * np.sqrt(out**2 + self.bent)
        return np.asarray(short if self.shut.all() else np.where(self.shut, short, left))

    def among(self, which: Which) -> _Shortage:
        """The same for some fires alone, by index. [-]"""

        def of(value: Number) -> Number:
            return np.broadcast_to(value, self.shape)[which] if np.ndim(value) else value

        known = {n: of(v) for n, v in self.given._asdict().items() if v is not None}
        given = self.given._replace(**known)
        ways = {f.name: of(getattr(self.house, f.name)) for f in fields(self.house)}
        house = replace(self.house, **ways)
        shut = np.broadcast_to(self.shut, self.shape)[which]
        besides, bent = of(self.besides), of(self.bent)
        return _Shortage(given, house, shut, besides, bent, shut.shape)


def _shortage(
    fire: BurningFire, house: Leaks, fans: Number, given: FlowInputs, shape: tuple[int, ...]
) -> _Shortage:
    """What to search, for answers of such a shape."""
    shut = np.isfinite(np.asarray(house.coefficient))
    if not shut.all():
        house = replace(house, coefficient=np.where(shut, house.coefficient, 1.0))
    ends = np.abs(house.tilt * (house.top - house.bottom))
    bent = (house.coefficient * house.outside * ends**house.exponent) ** 2
    return _Shortage(given, house, shut, taken_out(0.0, fire, fans, house.room), bent, shape)


def settled(
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None = None,
) -> tuple[Array, BoolArray]:
    """The flow that settles, and nothing else about it.

    Parameters
    ----------
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    friction : float or array, optional
        As for ``settle``. [-]

    Returns
    -------
    tuple of array
        Gas up the flue, where there is none the least that the fire can burn with [kg/s]; and
        whether there is none.
    """
    house, given = leaks(path, surroundings), flow_inputs(path, fire, surroundings, friction)
    return search_flow(fire, house, surroundings, given)


def carries(
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    asked: Array,
    friction: Number | None = None,
) -> BoolArray:
    """Whether the flow that settles is at least so much.

    Parameters
    ----------
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    asked : array
        Gas up the flue, no less than the fire can burn with. [kg/s]
    friction : float or array, optional
        As for ``settle``. [-]

    Returns
    -------
    array of bool
    """
    house, given = leaks(path, surroundings), flow_inputs(path, fire, surroundings, friction)
    low, high, asked = np.broadcast_arrays(*_bounds(fire, house, surroundings, given), asked)
    lack = _shortage(fire, house, surroundings.fans, given, low.shape)
    enough: BoolArray = np.asarray(lack(asked) >= 0)  # such a flow would grow: searched elsewhere
    if (rest := np.nonzero(~enough))[0].size:
        mass, stalled = largest_root(lack.among(rest), low[rest], high[rest])
        enough[rest] = ~stalled & (mass >= asked[rest])
    return enough


def search_flow(
    fire: BurningFire, house: Leaks, surroundings: Surroundings, given: FlowInputs
) -> tuple[Array, BoolArray]:
    """The same for whoever has the house and what is given at hand.

    Returns
    -------
    tuple of array
        As from ``settled``: flow [kg/s], and whether there is none.
    """
    low, high = _bounds(fire, house, surroundings, given)
    return largest_root(_shortage(fire, house, surroundings.fans, given, low.shape), low, high)
