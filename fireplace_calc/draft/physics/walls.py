"""How the chimney cools the gas: film, wall, and the temperature left at the top. Floats or arrays
alike.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import conductivities
from fireplace_calc.draft.physics.air import air_conductivity, air_viscosity, heat_capacity
from fireplace_calc.draft.physics.losses import friction_factor

AIR_GAP = 0.15
"""Resistance of a closed air space of a finger's width, common value from memory. [m2 K/W]"""


def nusselt(reynolds: Number, prandtl: Number, relative_roughness: Number) -> Number:
    r"""Heat transfer to the wall of a rough channel.

    Parameters
    ----------
    reynolds : float or array
        From 2300 up; below, the value at 2300 is kept. [-]
    prandtl : float or array
        0.6 to 1.5. [-]
    relative_roughness : float or array
        Roughness over hydraulic diameter. [-]

    Returns
    -------
    float or array
        Nusselt number. [-]

    Notes
    -----
    .. math:: Nu = \frac{(f/8)(Re - 1000)\,Pr}{1 + 12.7\sqrt{f/8}\,(Pr^{2/3} - 1)}

    With the friction factor of the rough wall. The chimney standard's own form with its entry
    length agrees within 4 % in a clay flue twenty diameters long; correlations for rougher walls
    scatter by a quarter, most of them below this one, which cools the gas more.

    References
    ----------
    Gnielinski, V., 1976, Int. Chem. Eng. 16, 359; form from memory, held against the ht library in
    the tests.

    Examples
    --------
    >>> round(float(nusselt(2e4, 0.7, 0.005)), 1)
    69.6
    """
    reynolds = np.maximum(reynolds, 2300.0)
    eighth = friction_factor(reynolds, relative_roughness) / 8.0
    return (
        eighth
        * (reynolds - 1000.0)
        * prandtl
        / (1.0 + 12.7 * np.sqrt(eighth) * (prandtl ** (2.0 / 3.0) - 1.0))
    )


def film(
    mass_flow: Number, area: Number, diameter: Number, roughness: Number, temperature: Number
) -> Number:
    """Film coefficient inside the flue.

    Parameters
    ----------
    mass_flow : float or array
        Gas up the flue. [kg/s]
    area : float or array
        Of the flue. [m2]
    diameter : float or array
        Hydraulic. [m]
    roughness : float or array
        Of the wall. [m]
    temperature : float or array
        Of the gas, 250 to 1000. [K]

    Returns
    -------
    float or array
        Film coefficient. [W/(m2 K)]
    """
    viscosity, conductivity = air_viscosity(temperature), air_conductivity(temperature)
    reynolds = mass_flow / area * diameter / viscosity
    prandtl = heat_capacity(temperature) * viscosity / conductivity
    return conductivity / diameter * nusselt(reynolds, prandtl, roughness / diameter)


def wall_resistance(layers: Iterable[tuple[str, float]]) -> float:
    """Resistance of the layers of a chimney wall, taken as flat.

    Parameters
    ----------
    layers : iterable of (str, float)
        Material and thickness [m], ``air gap`` for a closed air space; from the smoke outwards.

    Returns
    -------
    float
        Resistance. [m2 K/W]

    Raises
    ------
    KeyError
        When no conductivity of a material is known.

    Examples
    --------
    >>> round(wall_resistance([("clay liner", 0.016), ("mortar", 0.013), ("brick", 0.102)]), 3)
    0.143
    """
    known = conductivities()
    return sum(
        AIR_GAP if material == "air gap" else thickness / known[material][0]
        for material, thickness in layers
    )


def transmittance(inside: Number, resistance: Number, outside: Number) -> Number:
    r"""Heat through a square metre of flue for each kelvin between gas and surroundings.

    Parameters
    ----------
    inside, outside : float or array
        Film coefficients. [W/(m2 K)]
    resistance : float or array
        Of the wall. [m2 K/W]

    Returns
    -------
    float or array
        Transmittance. [W/(m2 K)]

    Notes
    -----
    .. math:: U = 1 / (1/h_i + R + 1/h_o)

    Both films count on the flue's inside, as if the wall were flat.

    Examples
    --------
    >>> round(transmittance(11.8, 0.143, 23.0), 1)
    3.7
    """
    return 1.0 / (1.0 / inside + resistance + 1.0 / outside)


def lining_temperature(gas: Number, around: Number, through: Number, inside: Number) -> Number:
    r"""Temperature of the liner's inside face.

    Parameters
    ----------
    gas, around : float or array
        Of the gas, and of what lies round the chimney there. [K]
    through : float or array
        Transmittance of film, wall and outer film together. [W/(m2 K)]
    inside : float or array
        Film coefficient inside. [W/(m2 K)]

    Returns
    -------
    float or array
        Temperature. [K]

    Notes
    -----
    .. math:: T_w = T_g - \frac{U}{h_i} (T_g - T_a)

    No farther from the gas than the surroundings are.

    References
    ----------
    Resistances in series; so EN 13384-1 has it, from memory.

    Examples
    --------
    >>> round(float(lining_temperature(320.0, 263.0, 3.7, 11.8)))
    302
    """
    return gas - np.minimum(through / inside, 1.0) * (gas - around)


def mean_temperature(entry: Number, beside_flue: Number, transfer_units: Number) -> Number:
    """The mean temperature of ``flue_temperatures`` alone.

    Parameters
    ----------
    entry : float or array
        Gas at the foot of the flue. [K]
    beside_flue : float or array
        What lies round the chimney. [K]
    transfer_units : float or array
        U P L / (m cp), not negative. [-]

    Returns
    -------
    float or array
        Mean temperature. [K]
    """
    units = np.maximum(transfer_units, 1e-12)
    return beside_flue - (entry - beside_flue) * np.expm1(-units) / units


def flue_temperatures(
    entry: Number, beside_flue: Number, transfer_units: Number
) -> tuple[Number, Number]:
    r"""Mean temperature along the flue and temperature at its top.

    Parameters
    ----------
    entry : float or array
        Gas at the foot of the flue. [K]
    beside_flue : float or array
        What lies round the chimney. [K]
    transfer_units : float or array
        U P L / (m cp), not negative. [-]

    Returns
    -------
    tuple of float or array
        Mean and top temperature. [K]

    Notes
    -----
    .. math::

        T_m = T_a + (T_1 - T_a)\,\frac{1 - e^{-N}}{N}, \quad T_2 = T_a + (T_1 - T_a)\,e^{-N}

    References
    ----------
    Form of EN 13384-1, from memory.

    Examples
    --------
    >>> mean, top = flue_temperatures(400.0, 300.0, 0.0)
    >>> round(float(mean), 6), round(float(top), 6)
    (400.0, 400.0)
    """
    left = np.exp(-np.maximum(transfer_units, 1e-12))
    return (
        mean_temperature(entry, beside_flue, transfer_units),
        beside_flue + (entry - beside_flue) * left,
    )
