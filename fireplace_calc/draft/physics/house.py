"""The house around the fire: what leaks in, what fans take out, and how far that pulls the room
down.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import coefficient


def leakage(air_changes: Number, volume: Number, exponent: Number) -> Number:
    r"""Leakage coefficient of a house from a fan pressurisation test.

    Parameters
    ----------
    air_changes : float or array
        At 50 Pa. [1/h]
    volume : float or array
        Of the house. [m3]
    exponent : float or array
        Of the leaks, 0.5 to 1. [-]

    Returns
    -------
    float or array
        C in Q = C dp^n. [m3/(s Pa^n)]

    Notes
    -----
    .. math:: C = n_{50} V / (3600 \cdot 50^n)

    References
    ----------
    Power law of ASTM E 779, from memory.

    Examples
    --------
    >>> round(leakage(7, 400, 0.65) * 50 ** 0.65 * 3600)
    2800
    """
    return air_changes * volume / 3600.0 / 50.0**exponent


def replaced(flow: Number, room: Number, outside: Number) -> Number:
    r"""Outdoor air that takes the place of room air: the same mass, cold air in less room.

    Parameters
    ----------
    flow : float or array
        Room air out of the house. [m3/s]
    room, outside : float or array
        Density of the room's and of the outdoor air. [kg/m3]

    Returns
    -------
    float or array
        Outdoor air into the house. [m3/s]

    Notes
    -----
    .. math:: Q_o = Q_r \rho_r / \rho_o

    References
    ----------
    Mass is kept.

    Examples
    --------
    >>> round(replaced(1.0, 1.2, 1.3), 3)
    0.923
    """
    return flow * room / outside


def inlet_flow(area: Number, pull: Number, density: Number) -> Number:
    r"""Air through an opening made for it.

    Parameters
    ----------
    area : float or array
        Free. [m2]
    pull : float or array
        Pressure across it. [Pa]
    density : float or array
        Of the outdoor air. [kg/m3]

    Returns
    -------
    float or array
        Volume flow. [m3/s]

    Notes
    -----
    .. math:: Q = 0.6\,A \sqrt{2 \Delta p / \rho}

    Nothing flows where the pull is not positive.

    References
    ----------
    Orifice flow, ASHRAE Handbook Fundamentals, chapter on ventilation and infiltration, from
    memory.

    Examples
    --------
    >>> round(float(inlet_flow(0.0355, 5.0, 1.27) * 3600))
    215
    """
    return coefficient("inlet discharge") * area * np.sqrt(2.0 * np.maximum(pull, 0.0) / density)


def house_flow(
    pull: Number, leak: Number, exponent: Number, inlet: Number = 0.0, density: Number = 1.25
) -> Number:
    r"""Air that comes in when the room is pulled down so far.

    Parameters
    ----------
    pull : float or array
        Below outdoors. [Pa]
    leak : float or array
        Leakage coefficient. [m3/(s Pa^n)]
    exponent : float or array
        Of the leaks. [-]
    inlet : float or array
        Free area of an outdoor air inlet. [m2]
    density : float or array
        Of the outdoor air. [kg/m3]

    Returns
    -------
    float or array
        Volume flow. [m3/s]

    Notes
    -----
    .. math:: Q = C\,\Delta p^n + 0.6\,A \sqrt{2 \Delta p / \rho}
    """
    return leak * np.maximum(pull, 0.0) ** exponent + inlet_flow(inlet, pull, density)


def house_pull(
    flow: Number, leak: Number, exponent: Number, inlet: Number = 0.0, density: Number = 1.25
) -> Number:
    """How far the room lies below outdoors when so much has to come in.

    Parameters
    ----------
    flow : float or array
        Outdoor air that comes in for what flue and fans take out, see ``replaced``; what is not
        positive pulls nothing. [m3/s]
    leak : float or array
        Leakage coefficient; infinite for a room as open as outdoors. [m3/(s Pa^n)]
    exponent : float or array
        Of the leaks. [-]
    inlet : float or array
        Free area of an outdoor air inlet. [m2]
    density : float or array
        Of the outdoor air. [kg/m3]

    Returns
    -------
    float or array
        Depressurization, never negative. [Pa]

    Notes
    -----
    Without an inlet in closed form. With one, three steps of Halley's method from where both would
    pull if the leaks went with the square root too: from there never more than half off, and to the
    last digits for every exponent from 0.5 to 1.

    References
    ----------
    Halley's method: Press, Teukolsky, Vetterling and Flannery, Numerical Recipes, 2007, 9.4.

    Examples
    --------
    >>> round(float(house_pull(0.145, leakage(7, 400, 0.65), 0.65)), 1)
    3.8
    """
    flow = np.maximum(np.asarray(flow, float), 0.0)
    power = 1.0 / np.asarray(exponent, float)
    alone = (flow / leak) ** power
    if not np.any(inlet):
        return alone
    opening = coefficient("inlet discharge") * np.asarray(inlet, float) * np.sqrt(2.0 / density)
    # No flow and a room as open as outdoors divide by zero on the way; the last line puts them
    # right.
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        start = (1.0 / np.sqrt(alone) + opening / flow) ** -2
        pull = start
        for _ in range(3):
            leaks, through = leak * pull**exponent, opening * np.sqrt(pull)
            # f, p f' and p^2 f'' of f(p) = leaks + through - flow
            over, slope = leaks + through - flow, exponent * leaks + 0.5 * through
            bend = exponent * (exponent - 1.0) * leaks - 0.25 * through
            pull = pull * (1.0 - 2.0 * over * slope / (2.0 * slope * slope - over * bend))
    return np.where(opening > 0, np.where(start > 0, pull, 0.0), alone)


def inlet_needed(
    flow: Number, limit: Number, leak: Number, exponent: Number, density: Number = 1.25
) -> Number:
    """Free area of an outdoor air inlet that keeps the room within a limit.

    Parameters
    ----------
    flow : float or array
        Outdoor air that has to come in. [m3/s]
    limit : float or array
        Depressurization that is allowed, above zero. [Pa]
    leak : float or array
        Leakage coefficient. [m3/(s Pa^n)]
    exponent : float or array
        Of the leaks. [-]
    density : float or array
        Of the outdoor air. [kg/m3]

    Returns
    -------
    float or array
        Free area, zero when the leaks alone do it. [m2]

    Examples
    --------
    >>> leak = leakage(1.5, 400, 0.65)
    >>> area = inlet_needed(0.16, 5.0, leak, 0.65)
    >>> round(float(house_pull(0.16, leak, 0.65, area)), 6)
    5.0
    """
    return np.maximum(flow - leak * limit**exponent, 0.0) / inlet_flow(1.0, limit, density)
