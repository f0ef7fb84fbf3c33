"""The weather: wind at the top and on the house, and a cold flue at lighting."""

from __future__ import annotations

from math import atan

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import RoofWind, coefficients, roof_winds
from fireplace_calc.draft.physics.air import SEA_LEVEL, air_density
from fireplace_calc.geometry.frame import Framed

BREEZE = 5.0
"""Wind that the wind cases are worked for: an ordinary windy day. [m/s]"""


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
    """Which published range goes for this chimney top, by the slope of the roof and by whether the
    top clears the ridge.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    RoofWind
        A row of ``data/roof_wind.csv``; where two meet, the one that presses harder.

    Notes
    -----
    The figures are of roof surfaces; none was found that had been measured at a flue top.
    """
    f, roof = geometry.frame, geometry.design.roof
    pitch = atan(roof.pitch)
    fits = [row for row in roof_winds() if row.pitch_low <= pitch <= row.pitch_high]
    low = [row for row in fits if row.case.startswith("below the ridge")]
    over = [row for row in fits if row.case.startswith("over")]
    beneath = f.liner_top < roof.ridge_level
    return max(low if beneath and low else over, key=lambda row: row.high)


def wind_range(top: RoofWind) -> tuple[float, float]:
    """What wind adds to the draft at worst and at best, over its velocity pressure.

    Parameters
    ----------
    top : RoofWind
        Of the chimney top.

    Returns
    -------
    tuple of float
        Worst and best: wind at the top and on the walls together; negative
        against the draft. [-]

    Notes
    -----
    A house whose leaks lie in the lee is pulled down with them, one whose leaks lie to windward is
    pushed up. At worst the top gets no suction, however well it stands: a gust from above turns
    suction into pressure within some tens of degrees (TNO, wind tunnel, for NEN 1078), and the
    chimney standard allows a good top no help.

    References
    ----------
    EN 13384-1, wind at the outlet, from memory.

    Examples
    --------
    >>> worst, best = wind_range(roof_winds()[1])
    >>> round(worst, 2), round(best, 2)
    (-0.18, 0.88)
    """
    house = coefficients()["wind in the house"]
    if house.low is None or house.high is None:
        raise ValueError(f"A published range is needed, but {house} has none.")
    return house.low - max(top.high, 0.0), house.high - top.low


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
