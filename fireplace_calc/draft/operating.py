"""Operating mode: a burn rate is given, and flow, temperatures and the pull on the room settle with
each other.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks, taken_out
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.physics.air import GAS_CONSTANT, air_density, air_viscosity
from fireplace_calc.draft.physics.house import house_pull, net_inflow
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
        How far the room lies below outdoors at the datum of the draft: what the warm house pulls of
        its own, and what flue and fans add. [Pa]
    wind : array
        What wind at the top and on the walls adds. [Pa]
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
    """What follows from an assumed flow. Temperatures in K, pressures in Pa, density in kg/m3."""

    foot: Number
    mean: Number
    top: Number
    draft: Number
    head: Number
    friction: Number
    left: Number
    """Draft and wind less every loss of the flue: what there is to pull at the house."""


def _state(
    mass: Number,
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None,
) -> _State:
    """Temperatures, draft and losses at an assumed flow."""
    capacity = mass * CP_SMOKE
    foot = surroundings.room + fire.to_gas / capacity
    beside_flue = surroundings.outdoor + path.indoors * (surroundings.room - surroundings.outdoor)
    mean, top = flue_temperatures(
        foot, beside_flue, path.transmittance * path.flue_perimeter * path.length / capacity
    )
    inside = surroundings.pressure / (R_SMOKE * mean)
    outside = air_density(surroundings.outdoor, surroundings.pressure)
    draft = G * path.height * (outside - inside)
    if friction is None:
        diameter = path.diameter
        reynolds = mass / path.flue_area * diameter / air_viscosity(mean)
        friction = friction_factor(reynolds, path.roughness / diameter)
    rubbed = friction * path.length / path.diameter
    head = (mass / path.flue_area) ** 2 / (2.0 * inside)
    resistance = coefficient("velocity head") + path.inlet + path.other + rubbed
    left = draft + surroundings.wind - resistance * head
    return _State(foot, mean, top, draft, head, rubbed, left)


def excess_pressure(
    mass: Number,
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None = None,
) -> tuple[Number, Number, Number]:
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
        Draft and wind, less the pull of the house and every loss; draft and wind alone; and the
        pull that could be borne at that flow. [Pa]
    """
    at, house = _state(mass, path, fire, surroundings, friction), leaks(path, surroundings)
    pull = house_pull(taken_out(mass, fire, surroundings.fans, house.room), house, at.left)
    return at.left - pull, at.draft + surroundings.wind, at.left


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
    push = leaks(path, surroundings).rise
    drive = G * path.height * outside + np.maximum(surroundings.wind, 0.0) + push
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


def _shortage(
    path: FlowPath, fire: BurningFire, surroundings: Surroundings, friction: Number | None
) -> Callable[[Array], Array]:
    """A function of the flow that crosses zero where the pull that the flue leaves for the house
    lets in just what goes out.

    Both sides go through ``y sqrt(y**2 + s**2)``, which is nearly straight over the pull: leaks go
    with its power 0.5 to 0.8, and straight with it where the stack effect holds it off zero.
    """
    house = leaks(path, surroundings)
    open_ = np.isinf(np.asarray(house.coefficient))
    if open_.any():
        house = replace(house, coefficient=np.where(open_, 1.0, house.coefficient))
    ends = np.abs(house.tilt * (house.top - house.bottom))
    bent = (house.coefficient * house.outside * ends**house.exponent) ** 2

    def lack(mass: Array) -> Array:
        left = _state(mass, path, fire, surroundings, friction).left
        if open_.all():
            return np.asarray(left)
        let_in = net_inflow(left, house)
        out = taken_out(mass, fire, surroundings.fans, house.room)
        short = let_in * np.sqrt(let_in**2 + bent) - out * np.sqrt(out**2 + bent)
        return np.where(open_, left, short) if open_.any() else short

    return lack


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
    house, lack = leaks(path, surroundings), _shortage(path, fire, surroundings, friction)
    mass, stalled = largest_root(lack, *_bounds(path, fire, surroundings))
    at = _state(mass, path, fire, surroundings, friction)
    pull = house_pull(taken_out(mass, fire, surroundings.fans, house.room), house, at.left)
    air = (mass - fire.burn) / house.room
    flowing = np.where(stalled, 0.0, 1.0)
    head, inside = flowing * at.head, surroundings.pressure / (R_SMOKE * at.mean)
    losses: dict[str, Number] = {
        "mouth": path.mouth,
        "throat": path.throat,
        "smoke chamber": path.chamber,
        "friction": at.friction,
        "offset": path.bends,
        "rain cap": path.cap,
        "spark screen": path.screen,
        "velocity head": coefficient("velocity head"),
    }
    return Flow(
        mass=np.asarray(flowing * mass),
        air=np.asarray(flowing * air),
        face=np.asarray(flowing * air / path.opening_area),
        speed=np.asarray(flowing * mass / path.flue_area / inside),
        foot=np.asarray(at.foot),
        mean=np.asarray(at.mean),
        top=np.asarray(at.top),
        draft=np.asarray(at.draft),
        pull=np.asarray(pull + 0.0 * at.draft),
        wind=np.asarray(surroundings.wind + 0.0 * at.draft),
        losses={name: np.asarray(head * loss) for name, loss in losses.items()},
        air_ratio=np.asarray(
            flowing * (mass - fire.burn) / (fire.burn * fire.dry_share * fire.air_needed)
        ),
        stalled=stalled,
    )
