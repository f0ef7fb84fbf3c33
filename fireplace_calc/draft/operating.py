"""Operating mode: a burn rate is given, and flow, temperatures and the pull on the room settle with
each other.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.conditions import BurningFire, Surroundings
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.physics.air import GAS_CONSTANT, air_density, air_viscosity
from fireplace_calc.draft.physics.house import house_pull, replaced
from fireplace_calc.draft.physics.losses import friction_factor
from fireplace_calc.draft.physics.walls import flue_temperatures
from fireplace_calc.draft.root_search import largest_root

R_SMOKE = GAS_CONSTANT / 0.02886
"""Gas constant of the smoke of an open fire, air ratio 5 to 20. [J/(kg K)]"""
CP_SMOKE = 1025.0
"""Its heat capacity, within 2.5 % from 30 to 200 C at an air ratio of 10 to 50. [J/(kg K)]"""
HALVINGS = 5
"""How often the upper bound of the flow is halved before the search."""


@dataclass(frozen=True, slots=True)
class Flow:
    """A fire that has settled, operating mode.

    Every field is an array of the shape that path, fire and surroundings broadcast to: no axis at
    all for one fire.

    Attributes
    ----------
    mass : array
        Gas up the flue; nought when stalled. [kg/s]
    air : array
        Through the opening; nought when stalled. [m3/s]
    face, speed : array
        Mean velocity through the opening and in the flue; nought when stalled. [m/s]
    foot, mean, top : array
        Gas temperature at the foot of the flue, its mean, and at the top. [K]
    draft : array
        Of the warm gas alone. [Pa]
    pull : array
        How far the room lies below outdoors. [Pa]
    wind : array
        What the wind adds at the top. [Pa]
    losses : dict of str to array
        By name; nought when stalled. [Pa]
    air_ratio : array
        Air over the air just needed; nought when stalled. [-]
    stalled : array of bool
        Fires that no steady flow carries away.
    """

    mass: Array
    air: Array
    face: Array
    speed: Array
    foot: Array
    mean: Array
    top: Array
    draft: Array
    pull: Array
    wind: Array
    losses: dict[str, Array]
    air_ratio: Array
    stalled: BoolArray


class _State(NamedTuple):
    """What follows from an assumed flow. Temperatures in K, pressures in Pa, air in m3/s, density
    of the gas in kg/m3.
    """

    foot: Number
    mean: Number
    top: Number
    draft: Number
    pull: Number
    air: Number
    gas_density: Number


def _state(mass: Number, path: FlowPath, fire: BurningFire, surroundings: Surroundings) -> _State:
    """Temperatures, draft and pull at an assumed flow."""
    capacity = mass * CP_SMOKE
    foot = surroundings.room + fire.to_gas / capacity
    beside_flue = surroundings.outdoor + path.indoors * (surroundings.room - surroundings.outdoor)
    mean, top = flue_temperatures(
        foot, beside_flue, path.transmittance * path.flue_perimeter * path.length / capacity
    )
    outside = air_density(surroundings.outdoor, surroundings.pressure)
    room = air_density(surroundings.room, surroundings.pressure)
    inside = surroundings.pressure / (R_SMOKE * mean)
    draft = G * path.height * (outside - inside)
    air = (mass - fire.burn) / room
    pull = house_pull(
        replaced(air + surroundings.fans, room, outside),
        surroundings.leak,
        surroundings.exponent,
        surroundings.inlet,
        outside,
    )
    return _State(foot, mean, top, draft, pull, air, inside)


def _resistance(
    mass: Number, path: FlowPath, mean: Number, friction: Number | None
) -> tuple[Number, Number]:
    """Sum of losses in velocity heads, and the part of it that is friction. [-]"""
    if friction is None:
        diameter = path.diameter
        reynolds = mass / path.flue_area * diameter / air_viscosity(mean)
        friction = friction_factor(reynolds, path.roughness / diameter)
    friction_loss = friction * path.length / path.diameter
    return coefficient("velocity head") + path.inlet + path.other + friction_loss, friction_loss


def excess_pressure(
    mass: Number,
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None = None,
) -> tuple[Number, Number]:
    """Pressure left over at an assumed flow, and what drives it: when something is left over the
    flow would grow.

    Parameters
    ----------
    mass : float or array
        Gas up the flue. [kg/s]
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    friction : float or array, optional
        Darcy's factor; from the wall's roughness when left out. [-]

    Returns
    -------
    tuple of float or array
        Draft and wind, less the pull of the house and every loss; and draft and wind alone. [Pa]
    """
    at = _state(mass, path, fire, surroundings)
    resistance, _ = _resistance(mass, path, at.mean, friction)
    drive = at.draft + surroundings.wind
    return (
        drive - at.pull - resistance * (mass / path.flue_area) ** 2 / (2.0 * at.gas_density),
        drive,
    )


def _bounds(path: FlowPath, fire: BurningFire, surroundings: Surroundings) -> tuple[Array, Array]:
    """The least flow a fire can burn with, and one that no draft can drive. [kg/s]

    The upper bound halves its way down, on a scale of ratios, to where gas that no wall has cooled
    is just too weak for the losses without friction, counted with cold gas; that falls with the
    flow all the way, so nothing above it can be the answer.
    """
    cold = np.minimum(surroundings.room, surroundings.outdoor)
    outside = air_density(surroundings.outdoor, surroundings.pressure)
    resistance = coefficient("velocity head") + path.inlet + path.other
    # Losses are loss * mass**2; draft and wind are drive - weight / T of the gas.
    loss = resistance * R_SMOKE * cold / (2.0 * surroundings.pressure * path.flue_area**2)
    weight = G * path.height * surroundings.pressure / R_SMOKE
    drive = G * path.height * outside + np.maximum(surroundings.wind, 0.0)
    low, high, loss, weight, drive, heat, room = np.broadcast_arrays(
        np.asarray(fire.least_flow, float),
        np.sqrt(drive / loss),  # gas of no weight at all
        loss,
        weight,
        drive,
        fire.to_gas / CP_SMOKE,
        surroundings.room,
    )
    high, under = np.maximum(high, 1.5 * low), low
    for _ in range(HALVINGS):
        middle = np.sqrt(under * high)
        gas = np.maximum(room + heat / middle, surroundings.outdoor)
        too_weak = drive - weight / gas < loss * middle * middle
        under, high = np.where(too_weak, under, middle), np.where(too_weak, middle, high)
    return low, np.maximum(high, 1.5 * low)


def settle(
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None = None,
) -> Flow:
    """The flow that settles, operating mode.

    Parameters
    ----------
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    friction : float or array, optional
        Darcy's factor; from the wall's roughness when left out. [-]

    Returns
    -------
    Flow

    Notes
    -----
    Pressure left over falls to zero at more than one flow when the gas is hot and slow. The fire
    finds the largest: the search comes down from a flow that no draft can drive to the least the
    fire can burn with.
    """
    low, high = _bounds(path, fire, surroundings)
    mass, stalled = largest_root(
        lambda m: np.asarray(excess_pressure(m, path, fire, surroundings, friction)[0]), low, high
    )
    at = _state(mass, path, fire, surroundings)
    resistance, friction_loss = _resistance(mass, path, at.mean, friction)
    flowing = np.where(stalled, 0.0, 1.0)
    head = flowing * (mass / path.flue_area) ** 2 / (2.0 * at.gas_density)
    losses: dict[str, Number] = {
        "mouth": path.mouth,
        "throat": path.throat,
        "smoke chamber": path.chamber,
        "friction": friction_loss,
        "offset": path.bends,
        "rain cap": path.cap,
        "spark screen": path.screen,
        "velocity head": coefficient("velocity head"),
    }
    return Flow(
        mass=np.asarray(flowing * mass),
        air=np.asarray(flowing * at.air),
        face=np.asarray(flowing * at.air / path.opening_area),
        speed=np.asarray(flowing * mass / path.flue_area / at.gas_density),
        foot=np.asarray(at.foot),
        mean=np.asarray(at.mean),
        top=np.asarray(at.top),
        draft=np.asarray(at.draft),
        pull=np.asarray(at.pull),
        wind=np.asarray(surroundings.wind + 0.0 * at.draft),
        losses={name: np.asarray(head * loss) for name, loss in losses.items()},
        air_ratio=np.asarray(
            flowing * (mass - fire.burn) / (fire.burn * fire.dry_share * fire.air_needed)
        ),
        stalled=stalled,
    )
