"""Sizing mode: the gas temperature is imposed, as handbooks size a flue. No burn rate, no house,
nothing iterates but a diameter.

What it gives is the upper state a flue is sized for, not what a fire does on an evening: that is
``settle``.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G
from fireplace_calc.draft.physics.air import SEA_LEVEL, air_density
from fireplace_calc.draft.physics.losses import handbook_friction

STANDARD = 294.15
"""Room and outdoors alike, as the handbook's sizing chart has them: 70 F. [K]"""


def theoretical_draft(
    height: Number, flue: Number, outdoor: Number, pressure: Number = SEA_LEVEL
) -> Number:
    r"""Pull of a column of warm gas before any loss is paid.

    Parameters
    ----------
    height : float or array
        From draft datum to chimney top. [m]
    flue : float or array
        Mean gas temperature up the flue. [K]
    outdoor : float or array
        Outdoor air temperature. [K]
    pressure : float or array
        Barometric pressure at the house. [Pa]

    Returns
    -------
    float or array
        Draft, negative when the chimney is colder than outdoors. [Pa]

    Notes
    -----
    .. math:: \Delta p = g\,h\,(\rho_o - \rho_m)

    Flue gas is taken as air. Losses are subtracted elsewhere.

    References
    ----------
    Chimney chapter of the ASHRAE handbook, from memory.

    Examples
    --------
    >>> round(theoretical_draft(6.1, 273.15 + 71, 278.15), 1)
    14.6
    """
    return G * height * (air_density(outdoor, pressure) - air_density(flue, pressure))


def gravity_flow(
    flue_area: Number, draft: Number, resistance: Number, flue: Number, pressure: Number = SEA_LEVEL
) -> Number:
    r"""Mass that a draft drives through a resistance.

    Parameters
    ----------
    flue_area : float or array
        Clear area of the flue. [m2]
    draft : float or array
        What is left to drive the flow; none flows when it is negative. [Pa]
    resistance : float or array
        Sum of all loss coefficients, the velocity head counted once. [-]
    flue : float or array
        Mean gas temperature. [K]
    pressure : float or array
        Barometric. [Pa]

    Returns
    -------
    float or array
        Mass flow. [kg/s]

    Notes
    -----
    .. math:: \dot m = A \sqrt{2 \rho_m \Delta p / K}

    References
    ----------
    Chimney chapter of the ASHRAE handbook, from memory.

    Examples
    --------
    >>> pound_an_hour = 0.45359237 / 3600
    >>> area, draft = 0.25 * 3.14159265 * (12 * 0.0254) ** 2, 0.0914 * 249.089
    >>> flow = gravity_flow(area, draft, 5.0, 710 / 1.8, 29.92 * 3386.389)
    >>> round(float(flow / pound_an_hour) / 10) * 10
    1650
    """
    return flue_area * np.sqrt(
        2.0 * air_density(flue, pressure) * np.maximum(draft, 0.0) / resistance
    )


def face_velocity(
    opening_area: Number,
    flue_area: Number,
    diameter: Number,
    height: Number,
    length: Number,
    inlet: Number,
    top: Number = 0.0,
    rise: Number | None = None,
    outdoor: Number = STANDARD,
    room: Number = STANDARD,
    suction: Number = 0.0,
    pressure: Number = SEA_LEVEL,
) -> Number:
    """Mean speed of room air through the opening, sizing mode.

    Parameters
    ----------
    opening_area : float or array
        Of the fireplace. [m2]
    flue_area : float or array
        Clear area of the flue. [m2]
    diameter : float or array
        Hydraulic, of the flue. [m]
    height, length : float or array
        Of the draft, and along the flue. [m]
    inlet, top : float or array
        Loss of mouth and throat, and of whatever else stands in the way (cap, screen, bends). [-]
    rise : float or array, optional
        Of the mean gas temperature over outdoors; the published middle of 222 when left out. [K]
    outdoor, room : float or array
        Temperatures. [K]
    suction : float or array
        How far the house is pulled down. [Pa]
    pressure : float or array
        Barometric; it cancels out. [Pa]

    Returns
    -------
    float or array
        Face velocity; zero where nothing is drawn. [m/s]

    Notes
    -----
    ``gravity_flow`` as room air, over the opening.

    Examples
    --------
    >>> round(float(face_velocity(0.7, 0.7 / 13.3, 0.2589, 6.1, 6.1, 1.0)), 3)
    0.244
    """
    gas = outdoor + (coefficient("sizing rise") if rise is None else rise)
    resistance = coefficient("velocity head") + inlet + handbook_friction(length, diameter) + top
    draft = theoretical_draft(height, gas, outdoor, pressure) - suction
    return (
        gravity_flow(flue_area, draft, resistance, gas, pressure)
        / air_density(room, pressure)
        / opening_area
    )


def round_flue_for(
    opening_area: Number,
    height: Number,
    inlet: Number,
    velocity: Number | None = None,
    top: Number = 0.0,
    rise: Number | None = None,
    outdoor: Number = STANDARD,
    room: Number = STANDARD,
    suction: Number = 0.0,
    length: Number | None = None,
) -> Number:
    """Diameter of the round flue that just gives a face velocity, sizing mode.

    Parameters
    ----------
    opening_area : float or array
        Of the fireplace. [m2]
    height : float or array
        Of the draft. [m]
    inlet : float or array
        Loss of mouth and throat. [-]
    velocity : float or array, optional
        Target at the face; the published 0.244 when left out. [m/s]
    top : float or array
        Loss of cap, screen and bends. [-]
    rise : float or array, optional
        Of the mean gas temperature over outdoors; the published middle of 222 when left out. [K]
    outdoor, room : float or array
        Temperatures. [K]
    suction : float or array
        How far the house is pulled down. [Pa]
    length : float or array, optional
        Along the flue; the height of the draft when left out. [m]

    Returns
    -------
    float or array
        Inside diameter. [m]

    Notes
    -----
    The friction depends on the diameter; put in again until it no longer changes, which it does to
    1e-12 in a dozen rounds because D goes with the fourth root of the resistance.

    Examples
    --------
    >>> round(float(round_flue_for(0.6, 6.0, 2.5)), 3)
    0.267
    """
    target = coefficient("face velocity") if velocity is None else velocity
    diameter = np.sqrt(np.asarray(opening_area, float) / 10.0)
    for _ in range(40):
        speed = face_velocity(
            opening_area,
            np.pi * diameter**2 / 4,
            diameter,
            height,
            height if length is None else length,
            inlet,
            top,
            rise,
            outdoor,
            room,
            suction,
        )
        with np.errstate(divide="ignore", invalid="ignore"):
            diameter = diameter * np.sqrt(target / speed)
    return diameter
