"""Operating mode: a burn rate is given, and flow, temperatures and the pull on the room settle with
each other.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.tables import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.physics.air import GAS_CONSTANT, SEA_LEVEL, air_density, air_viscosity
from fireplace_calc.draft.physics.house import house_pull
from fireplace_calc.draft.physics.losses import friction_factor
from fireplace_calc.draft.physics.walls import flue_temperatures

R_SMOKE = GAS_CONSTANT / 0.02886
"""Gas constant of the smoke of an open fire, air ratio 5 to 20. [J/(kg K)]"""
CP_SMOKE = 1025.0
"""Its heat capacity, within 2.5 % from 30 to 200 C at an air ratio of 10 to 50. [J/(kg K)]"""
HALVINGS, SCAN, CLOSINGS, BLOCK = 5, 28, 5, 2048
"""How often the upper bound is halved, steps of the search for the largest flow, how often at most
the step it is found in is closed further, and how many numbers are looked at together.
"""
STILL = 1e-10
"""Relative move of a closing after which the next one would change nothing but the last digits. [-]
"""


@dataclass(frozen=True, slots=True)
class BurningFire:
    """What burns; floats or arrays. Mass as fired in kg/s, power in W."""

    burn: object
    dry_share: object
    power: object
    to_gas: object
    air_needed: object

    @property
    def least_flow(self):
        """Gas when the fire gets just the air it needs. [kg/s]"""
        return self.burn * (1.0 + self.dry_share * self.air_needed)


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What the fire stands in; floats or arrays.

    Temperatures in K, ``wind`` is what the wind adds to the draft at the top in Pa (suction
    positive), ``fans`` in m3/s, ``leak`` in m3/(s Pa^n), ``inlet`` in m2.
    """

    outdoor: object
    room: object
    leak: object = np.inf
    exponent: object = 0.65
    inlet: object = 0.0
    fans: object = 0.0
    wind: object = 0.0
    pressure: object = SEA_LEVEL


@dataclass(frozen=True, slots=True)
class Flow:
    """A fire that has settled, operating mode; every field has the shape of the inputs together.

    ``mass`` in kg/s; ``air`` through the opening in m3/s; ``face`` and ``speed`` (in the flue) in
    m/s; temperatures at the foot, on the mean and at the top in K; ``draft`` (theoretical),
    ``pull`` (of the house), ``wind`` and the losses in Pa. ``stalled`` marks fires that no steady
    flow carries away: there flow and losses are zero.
    """

    mass: object
    air: object
    face: object
    speed: object
    foot: object
    mean: object
    top: object
    draft: object
    pull: object
    wind: object
    losses: dict
    air_ratio: object
    stalled: object


def _state(mass, path: FlowPath, fire: BurningFire, surroundings: Surroundings):
    """Temperatures, draft and pull at an assumed flow."""
    capacity = mass * CP_SMOKE
    foot = surroundings.room + fire.to_gas / capacity
    beside_flue = surroundings.outdoor + path.indoors * (surroundings.room - surroundings.outdoor)
    mean, top = flue_temperatures(
        foot, beside_flue, path.transmittance * path.flue_perimeter * path.length / capacity
    )
    outside = air_density(surroundings.outdoor, surroundings.pressure)
    inside = surroundings.pressure / (R_SMOKE * mean)
    draft = G * path.height * (outside - inside)
    air = (mass - fire.burn) / air_density(surroundings.room, surroundings.pressure)
    pull = house_pull(
        air + surroundings.fans,
        surroundings.leak,
        surroundings.exponent,
        surroundings.inlet,
        outside,
    )
    return foot, mean, top, draft, pull, air, inside


def _resistance(mass, path: FlowPath, mean, friction):
    """Sum of losses in velocity heads, and the part of it that is friction."""
    if friction is None:
        diameter = path.diameter
        reynolds = mass / path.flue_area * diameter / air_viscosity(mean)
        friction = friction_factor(reynolds, path.roughness / diameter)
    rubbed = friction * path.length / path.diameter
    return coefficient("velocity head") + path.inlet + path.other + rubbed, rubbed


def excess_pressure(
    mass, path: FlowPath, fire: BurningFire, surroundings: Surroundings, friction=None
):
    """Pressure left over at an assumed flow, and what drives it: when something is left over the
    flow would grow.

    Parameters
    ----------
    mass : float or array
        Gas up the flue. [kg/s]
    path : Path
    fire : Fire
    surroundings : Surroundings
    friction : float or array, optional
        Darcy factor; from the wall's roughness when left out. [-]

    Returns
    -------
    tuple of float or array
        Draft and wind, less the pull of the house and every loss; and draft and wind alone. [Pa]
    """
    _, mean, _, draft, pull, _, inside = _state(mass, path, fire, surroundings)
    resistance, _ = _resistance(mass, path, mean, friction)
    drive = draft + surroundings.wind
    return drive - pull - resistance * (mass / path.flue_area) ** 2 / (2.0 * inside), drive


def _bounds(
    path: FlowPath, fire: BurningFire, surroundings: Surroundings
) -> tuple[np.ndarray, np.ndarray]:
    """The least flow a fire can burn with, and one that no draft can drive.

    The upper bound halves its way down, on a scale of ratios, to where gas that no wall has cooled
    is just too weak for the losses without friction, counted with cold gas; that falls with the
    flow all the way, so nothing above it can be the answer.
    """
    low = np.asarray(fire.least_flow, float)
    cold, outside = (
        np.minimum(surroundings.room, surroundings.outdoor),
        air_density(surroundings.outdoor, surroundings.pressure),
    )
    resistance = coefficient("velocity head") + path.inlet + path.other
    loss = resistance * R_SMOKE * cold / (2.0 * surroundings.pressure * path.flue_area**2)
    weight, drive = (
        G * path.height * surroundings.pressure / R_SMOKE,
        G * path.height * outside + np.maximum(surroundings.wind, 0.0),
    )
    low, high, loss, weight, drive, heat, room = np.broadcast_arrays(
        low, np.sqrt(drive / loss), loss, weight, drive, fire.to_gas / CP_SMOKE, surroundings.room
    )
    high, under = np.maximum(high, 1.5 * low), low
    for _ in range(HALVINGS):
        middle = np.sqrt(under * high)
        weak = (
            drive - weight / np.maximum(room + heat / middle, surroundings.outdoor)
            < loss * middle * middle
        )
        under, high = np.where(weak, under, middle), np.where(weak, middle, high)
    return low, np.maximum(high, 1.5 * low)


def settle(path: FlowPath, fire: BurningFire, surroundings: Surroundings, friction=None) -> Flow:
    """The flow that settles, operating mode.

    Parameters
    ----------
    path : Path
    fire : Fire
    surroundings : Surroundings
    friction : float or array, optional
        Darcy factor; from the wall's roughness when left out. [-]

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
        lambda m: excess_pressure(m, path, fire, surroundings, friction)[0], low, high
    )
    foot, mean, top, draft, pull, air, inside = _state(mass, path, fire, surroundings)
    resistance, rubbed = _resistance(mass, path, mean, friction)
    going = np.where(stalled, 0.0, 1.0)
    head = going * (mass / path.flue_area) ** 2 / (2.0 * inside)
    losses = {
        "mouth": path.mouth,
        "throat": path.throat,
        "smoke chamber": path.chamber,
        "friction": rubbed,
        "offset": path.bends,
        "rain cap": path.cap,
        "spark screen": path.screen,
        "velocity head": coefficient("velocity head"),
    }
    return Flow(
        mass=going * mass,
        air=going * air,
        face=going * air / path.opening_area,
        speed=going * mass / path.flue_area / inside,
        foot=foot,
        mean=mean,
        top=top,
        draft=draft,
        pull=pull,
        wind=surroundings.wind + 0.0 * draft,
        losses={name: head * loss for name, loss in losses.items()},
        air_ratio=going * (mass - fire.burn) / (fire.burn * fire.dry_share * fire.air_needed),
        stalled=stalled,
    )


def largest_root(
    function: Callable, low: np.ndarray, high: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Largest place between two bounds where a function stops being positive.

    Parameters
    ----------
    function : callable
        Negative at ``high``; takes an array of any shape that broadcasts with the bounds.
    low, high : array
        Bounds, above zero.

    Returns
    -------
    tuple of array
        Where it is, and whether there is none: then ``low`` comes back.

    Notes
    -----
    A scan finds the step, Ridders' method closes it: two looks a round, never outside the bracket,
    digits doubling. Each place stops by itself, so that none depends on what else is looked for in
    the same call.

    Examples
    --------
    >>> root, none = largest_root(lambda x: (x - 1.0) * (3.0 - x), np.array([0.1]), np.array([50.0]))
    >>> round(float(root[0]), 9), bool(none[0])
    (3.0, False)
    """
    at_upper = at_lower = at_above = function(high)
    low, high = (np.broadcast_to(bound, at_upper.shape) for bound in (low, high))
    ratio = (high / low) ** (1.0 / SCAN)
    upper, lower, found = high, low, np.zeros(low.shape, bool)
    above, block = high, max(1, BLOCK // max(high.size, 1))
    for first in range(1, SCAN + 1, block):
        powers = np.arange(first, min(first + block, SCAN + 1)).reshape(-1, *[1] * high.ndim)
        places = high / ratio**powers
        for here, at_here in zip(places, function(places), strict=True):
            good = ~found & (at_here >= 0)
            lower, upper, found = (
                np.where(good, here, lower),
                np.where(good, above, upper),
                found | good,
            )
            at_lower, at_upper = (
                np.where(good, at_here, at_lower),
                np.where(good, at_above, at_upper),
            )
            above, at_above = here, at_here
        if found.all():
            break
    last, moving = upper, found
    for _ in range(CLOSINGS):
        middle = 0.5 * (lower + upper)
        at_middle = function(middle)
        bent = np.sqrt(np.maximum(at_middle**2 - at_lower * at_upper, 1e-300))
        near = np.clip(middle + (middle - lower) * at_middle / bent, lower, upper)
        for place, value in ((middle, at_middle), (near, function(near))):
            inside, good = moving & (place >= lower) & (place <= upper), value >= 0
            lower, at_lower = (
                np.where(inside & good, place, lower),
                np.where(inside & good, value, at_lower),
            )
            upper, at_upper = (
                np.where(inside & ~good, place, upper),
                np.where(inside & ~good, value, at_upper),
            )
        moving, last = moving & (np.abs(near - last) > STILL * near), near
        if not moving.any():
            break
    nearest = np.where(np.abs(at_lower) <= np.abs(at_upper), lower, upper)
    return np.where(found, nearest, low), ~found
