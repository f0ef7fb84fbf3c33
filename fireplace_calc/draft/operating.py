"""Operating mode: a burn rate is given, and flow, temperatures and the pull on the room settle with
each other.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks, taken_out
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.flow_search import R_SMOKE, flow_inputs, flow_state, search_flow
from fireplace_calc.draft.physics.house import house_pull
from fireplace_calc.draft.physics.walls import flue_temperatures

DOORS = "glass doors"
"""The loss of their inlet, by name."""


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
        Mean velocity through the opening, or the inlet of shut doors, and in the flue; nought when
        stalled. [m/s]
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
    house, given = leaks(path, surroundings), flow_inputs(path, fire, surroundings, friction)
    mass, stalled = search_flow(fire, house, surroundings, given)
    at = flow_state(mass, given)
    _, top = flue_temperatures(at.foot, given.beside, given.cooling / mass)
    # Not what the flue leaves, though they are one: a leaky house is pulled so little that the last
    # digits of the losses count.
    pull = house_pull(taken_out(mass, fire, surroundings.fans, house.room), house, at.left)
    air = (mass - fire.burn) / house.room
    flowing = np.where(stalled, 0.0, 1.0)
    shut = 0.0 if given.doors is None else flowing * given.doors * (mass - fire.burn) ** 2
    head, inside = flowing * at.head, surroundings.pressure / (R_SMOKE * at.mean)
    draft = G * path.height * (house.outside - inside)
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
        face=np.asarray(flowing * air / path.face_area),
        speed=np.asarray(flowing * mass / path.flue_area / inside),
        foot=np.asarray(at.foot),
        mean=np.asarray(at.mean),
        top=np.asarray(top),
        draft=np.asarray(draft),
        pull=np.asarray(pull + 0.0 * draft),
        wind=np.asarray(surroundings.wind + 0.0 * draft),
        losses={name: np.asarray(head * loss) for name, loss in losses.items()}
        | {DOORS: np.asarray(shut + 0.0 * draft)},
        air_ratio=np.asarray(
            flowing * (mass - fire.burn) / (fire.burn * fire.dry_share * fire.air_needed)
        ),
        stalled=stalled,
    )


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
    given, house = flow_inputs(path, fire, surroundings, friction), leaks(path, surroundings)
    at = flow_state(mass, given)
    pull = house_pull(taken_out(mass, fire, surroundings.fans, house.room), house, at.left)
    return at.left - pull, given.column - given.gas / at.mean, at.left
