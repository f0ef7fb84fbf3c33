"""The weather: wind at the top, and a cold flue at lighting."""

from __future__ import annotations

from math import atan

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import RoofWind, roof_winds
from fireplace_calc.base.units import DEG
from fireplace_calc.draft.physics.air import SEA_LEVEL, air_density
from fireplace_calc.geometry.frame import Framed

BREEZE = 5.0
"""Wind that the wind cases are worked for: an ordinary windy day. [m/s]"""
STEEP = 25 * DEG
"""From here on the windward slope of a roof is pushed and not pulled. [rad]"""


def wind_pressure(
    coefficient: Number, speed: Number, outdoor: Number, pressure: Number = SEA_LEVEL
) -> Number:
    r"""Pressure that wind makes where the coefficient was measured.

    Parameters
    ----------
    coefficient : float or array
        Pressure coefficient, negative for suction. [-]
    speed : float or array
        Of the undisturbed wind at that height. [m/s]
    outdoor : float or array
        Air temperature. [K]
    pressure : float or array
        Barometric. [Pa]

    Returns
    -------
    float or array
        Above still air; suction is negative. [Pa]

    Notes
    -----
    .. math:: p_w = c_p \rho U^2 / 2

    References
    ----------
    ASHRAE Handbook Fundamentals, chapter on airflow around buildings, from memory.

    Examples
    --------
    >>> round(wind_pressure(-0.5, 5.0, 282.4), 1), round(wind_pressure(0.3, 5.0, 282.4), 1)
    (-7.8, 4.7)
    """
    return coefficient * air_density(outdoor, pressure) * speed**2 / 2.0


def roof_wind(geometry: Framed) -> RoofWind:
    """Which published coefficient goes for this chimney top: the adverse one where the top lies
    below a steep ridge.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    RoofWind
        A row of ``data/roof_wind.csv``.

    Notes
    -----
    The figures are of roof surfaces; none was found that had been measured at a flue top.
    """
    f, roof = geometry.frame, geometry.design.roof
    pitch = atan(roof.pitch)
    low, plain, pitched, steep = (
        next(row for row in roof_winds() if row.case.startswith(start))
        for start in ("below the ridge", "over a low", "over a pitched", "over a steep")
    )
    if f.liner_top < roof.ridge_level and pitch >= STEEP:
        return low
    return plain if pitch < plain.pitch_high else pitched if pitch <= pitched.pitch_high else steep


def flue_at_rest(outdoor: Number, room: Number, indoors: Number) -> Number:
    """Air in a flue nobody has lit: as warm as the rooms round it, or as the outdoors where it
    passes none.

    Parameters
    ----------
    outdoor, room : float or array
        Temperatures. [K]
    indoors : float or array
        Share of the flue in heated rooms. [-]

    Returns
    -------
    float or array
        Mean temperature. [K]
    """
    return outdoor + indoors * (room - outdoor)
