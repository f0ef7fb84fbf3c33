"""Air: density, viscosity, heat, and how thin it is at altitude. Every function takes floats or
arrays alike.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.units import G

SEA_LEVEL = 101_325.0
"""Pressure of the standard atmosphere at sea level. [Pa]"""
R_AIR = 287.05
"""Gas constant of dry air. [J/(kg K)]"""
FREEZING = 273.15
"""Of water. [K]"""

GAS_CONSTANT = 8.314462618
"""Universal. [J/(mol K)]"""
MOLAR_MASS = {"CO2": 0.0440095, "H2O": 0.0180153, "N2": 0.0280134, "O2": 0.0319988}
"""Of the gases of smoke. [kg/mol]"""
_COLLISION = (0.431, -0.4623, 0.08406, 0.005341, -0.00331)
"""Of the collision integral of air, in powers of the log of the reduced temperature. [-]"""
_THIN = 0.0266958e-6 * 28.9586**0.5 / 0.360**2
"""Constant of the viscosity of thin air. [Pa s/K^0.5]"""
_CP_OVER_R = {
    "air": (3.653, -1.337e-3, 3.294e-6, -1.913e-9, 0.2763e-12),
    "CO2": (2.401, 8.735e-3, -6.607e-6, 2.002e-9, 0.0),
    "H2O": (4.070, -1.108e-3, 4.152e-6, -2.964e-9, 0.807e-12),
    "O2": (3.626, -1.878e-3, 7.055e-6, -6.764e-9, 2.156e-12),
    "N2": (3.675, -1.208e-3, 2.324e-6, -0.632e-9, -0.226e-12),
}
"""Coefficients of the powers of T [K] from nought up, of c_p over the gas constant. [-]"""


def air_density(temperature: Number, pressure: Number = SEA_LEVEL) -> Number:
    r"""Density of dry air, and near enough of the smoke of an open fire.

    Parameters
    ----------
    temperature : float or array
        Absolute. [K]
    pressure : float or array
        Barometric. [Pa]

    Returns
    -------
    float or array
        Density. [kg/m3]

    Notes
    -----
    .. math:: \rho = p / (R T)

    References
    ----------
    U.S. Standard Atmosphere, 1976.

    Examples
    --------
    >>> round(air_density(288.15), 4)
    1.225
    """
    return pressure / (R_AIR * temperature)


def air_viscosity(temperature: Number) -> Number:
    r"""Dynamic viscosity of air, thin enough that pressure does not matter.

    Parameters
    ----------
    temperature : float or array
        200 to 1200. [K]

    Returns
    -------
    float or array
        Viscosity. [Pa s]

    Notes
    -----
    .. math::

        \mu = 0.0266958\,\sqrt{M T} / (\sigma^2\, \Omega), \quad
        \ln \Omega = \sum_i b_i \ln^i (T / 103.3)

    in micropascal seconds, with M in g/mol and sigma in nm.

    References
    ----------
    Lemmon and Jacobsen, 2004, Int. J. Thermophys. 25, 21, dilute gas; constants from memory, held
    against CoolProp in the tests.

    Examples
    --------
    >>> f"{air_viscosity(300.0):.3e}"
    '1.852e-05'
    """
    log = np.log(temperature / 103.3)
    a, b, c, d, e = _COLLISION
    return _THIN * np.sqrt(temperature) * np.exp(-(a + log * (b + log * (c + log * (d + log * e)))))


def heat_capacity(temperature: Number, gas: str = "air") -> Number:
    """Heat capacity at constant pressure of air or of one gas of the smoke.

    Parameters
    ----------
    temperature : float or array
        250 to 1000. [K]
    gas : str
        ``air``, ``CO2``, ``H2O``, ``N2`` or ``O2``.

    Returns
    -------
    float or array
        Per mass for air [J/(kg K)], per mole for a gas [J/(mol K)]

    Raises
    ------
    KeyError
        When there is no such gas.

    References
    ----------
    Moran and Shapiro, Fundamentals of Engineering Thermodynamics, fits of table A-21 after NASA
    SP-273, 300 to 1000 K; from memory, held against CoolProp in the tests.

    Examples
    --------
    >>> round(float(heat_capacity(300.0)))
    1004
    """
    a, b, c, d, e = _CP_OVER_R[gas]
    over_r = a + temperature * (b + temperature * (c + temperature * (d + temperature * e)))
    return over_r * (R_AIR if gas == "air" else GAS_CONSTANT)


def air_conductivity(temperature: Number) -> Number:
    r"""Thermal conductivity of air, thin enough that pressure does not matter.

    Parameters
    ----------
    temperature : float or array
        200 to 1200. [K]

    Returns
    -------
    float or array
        Conductivity. [W/(m K)]

    Notes
    -----
    .. math::

        \lambda = 1.308\,\mu + 1.405\,\tau^{-1.1} - 1.036\,\tau^{-0.3}, \quad
        \tau = 132.6312 / T

    in milliwatts per metre and kelvin, with the viscosity in micropascal seconds.

    References
    ----------
    Lemmon and Jacobsen, 2004, as for the viscosity.

    Examples
    --------
    >>> round(float(air_conductivity(300.0)), 4)
    0.0264
    """
    tau = 132.6312 / temperature
    return (1.308e6 * air_viscosity(temperature) + 1.405 * tau**-1.1 - 1.036 * tau**-0.3) * 1e-3


def pressure_at(altitude: Number) -> Number:
    r"""Barometric pressure of the standard atmosphere.

    Parameters
    ----------
    altitude : float or array
        Above sea level, -500 to 11000. [m]

    Returns
    -------
    float or array
        Pressure. [Pa]

    Notes
    -----
    .. math:: p = p_0 (1 - 0.0065\,z / 288.15)^{g/(0.0065 R)}

    The geometric altitude is taken for the geopotential one: 0.07 % of the height at 4500 m.

    References
    ----------
    U.S. Standard Atmosphere, 1976.

    Examples
    --------
    >>> round(float(SEA_LEVEL / pressure_at(6000 * 0.3048)), 3)
    1.248
    """
    return SEA_LEVEL * (1.0 - 0.0065 * altitude / 288.15) ** (G / (0.0065 * 287.05287))


def saturation_pressure(temperature: Number) -> Number:
    r"""Vapour pressure over water, by Magnus' form.

    Parameters
    ----------
    temperature : float or array
        228 to 333, over water. [K]

    Returns
    -------
    float or array
        Pressure. [Pa]

    Notes
    -----
    .. math:: p_s = 611.2 \exp\frac{17.62\,\theta}{243.12 + \theta}, \quad \theta = T - 273.15

    References
    ----------
    WMO-No. 8, Guide to Instruments and Methods of Observation, annex on formulae for humidity;
    constants from memory.

    Examples
    --------
    >>> round(float(saturation_pressure(293.15)))
    2333
    """
    celsius = temperature - FREEZING
    return 611.2 * np.exp(17.62 * celsius / (243.12 + celsius))


def dew_point(vapour_pressure: Number) -> Number:
    """Temperature at which water begins to fall out.

    Parameters
    ----------
    vapour_pressure : float or array
        Of the water in the gas, above zero. [Pa]

    Returns
    -------
    float or array
        Dew point. [K]

    Notes
    -----
    ``saturation_pressure`` turned round, with its range.

    Examples
    --------
    >>> round(float(dew_point(saturation_pressure(300.0))), 6)
    300.0
    """
    log = np.log(vapour_pressure / 611.2)
    return FREEZING + 243.12 * log / (17.62 - log)
