"""The fire, and the air and house around it: floats or arrays, as the physics takes them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.physics.air import SEA_LEVEL, air_density
from fireplace_calc.draft.physics.house_leaks import Leaks

RUNAWAY = 100.0
"""Pull past which no figure is to be believed: leaks are tested at 10 to 75 Pa, and the fans of a
house give up before. Engineering judgement. [Pa]
"""


@dataclass(frozen=True, slots=True)
class BurningFire:
    """The fire; each field a number or an array, all of shapes that broadcast.

    Attributes
    ----------
    burn : float or array
        Wood as fired. [kg/s]
    dry_share : float or array
        Dry wood over wood as fired. [-]
    power : float or array
        Heat of the fire. [W]
    to_gas : float or array
        Heat that goes up with the gas. [W]
    air_needed : float or array
        Air that dry wood just needs, by mass. [-]
    """

    burn: Number
    dry_share: Number
    power: Number
    to_gas: Number
    air_needed: Number

    @property
    def least_flow(self) -> Number:
        """Gas when the fire gets just the air it needs. [kg/s]"""
        return self.burn * (1.0 + self.dry_share * self.air_needed)


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Air and house around the fire; each field a number or an array, all of shapes that broadcast.

    Attributes
    ----------
    outdoor, room : float or array
        Air temperatures. [K]
    leak : float or array
        Leakage coefficient of the house; infinite for a room as open as outdoors. [m3/(s Pa^n)]
    exponent : float or array
        Of the leaks. [-]
    inlet : float or array
        Free area of an outdoor air inlet. [m2]
    fans : float or array
        Out of the house, all of them together. [m3/s]
    wind : float or array
        What wind at the top and on the walls adds to the draft; negative against it. [Pa]
    pressure : float or array
        Barometric. [Pa]
    """

    outdoor: Number
    room: Number
    leak: Number = np.inf
    exponent: Number = 0.65
    inlet: Number = 0.0
    fans: Number = 0.0
    wind: Number = 0.0
    pressure: Number = SEA_LEVEL


def leaks(path: FlowPath, surroundings: Surroundings) -> Leaks:
    """The house round a fireplace, as the air sees it.

    Parameters
    ----------
    path : FlowPath
    surroundings : Surroundings

    Returns
    -------
    Leaks
    """
    return Leaks(
        surroundings.leak,
        surroundings.exponent,
        surroundings.inlet,
        air_density(surroundings.outdoor, surroundings.pressure),
        air_density(surroundings.room, surroundings.pressure),
        path.bottom,
        path.top,
    )


def taken_out(mass: Number, fire: BurningFire, fans: Number, room: Number) -> Number:
    """Air that flue and fans take out of the house.

    Parameters
    ----------
    mass : float or array
        Gas up the flue. [kg/s]
    fire : BurningFire
    fans : float or array
        Room air. [m3/s]
    room : float or array
        Density of the room's air. [kg/m3]

    Returns
    -------
    float or array
        Mass flow. [kg/s]
    """
    return mass - fire.burn + fans * room
