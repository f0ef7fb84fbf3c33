"""The ways of the air into and out of a house that is warm, and so a chimney itself."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G

EVEN = 1e-5
"""Pressures at floor and ceiling that differ by less of themselves count as one over the walls. [-]
"""


@dataclass(frozen=True)
class Leaks:
    """Ways of the air into and out of a house; each field a number or an array that broadcasts.

    Attributes
    ----------
    coefficient : float or array
        Of the leaks, all together; infinite for a room as open as outdoors. [m3/(s Pa^n)]
    exponent : float or array
        Of the leaks, 0.5 to 1. [-]
    inlet : float or array
        Free area of an outdoor air inlet, at the hearth. [m2]
    outside, room : float or array
        Density of the outdoor and of the room's air. [kg/m3]
    bottom, top : float or array
        Lowest heated floor and highest heated ceiling over the level the pull is told for. [m]
    """

    coefficient: Number
    exponent: Number
    inlet: Number = 0.0
    outside: Number = 1.2
    room: Number = 1.2
    bottom: Number = 0.0
    top: Number = 0.0

    @cached_property
    def tilt(self) -> Number:
        """How much less the room is pulled down [Pa] for each meter higher [m]."""
        return G * (self.outside - self.room)

    @cached_property
    def ends(self) -> tuple[Number, Number]:
        """How much less at the lowest floor and at the highest ceiling. [Pa]"""
        return self.tilt * self.bottom, self.tilt * self.top

    @cached_property
    def rise(self) -> Number:
        """What the house could push at the hearth at most, if all of it leaked at one end. [Pa]"""
        return np.maximum(-np.minimum(*self.ends), 0.0)

    @cached_property
    def shares(self) -> tuple[Number, Number, Number]:
        """Coefficient of the leaks at the lowest floor, at the highest ceiling, and of those in
        the walls. [m3/(s Pa^n)]
        """
        floor, ceiling, walls = (
            coefficient(f"leaks in the {place}") * self.coefficient
            for place in ("floor", "ceiling", "walls")
        )
        return floor, ceiling, walls

    @cached_property
    def steep(self) -> Number:
        """Pressures at floor and ceiling that are larger count as one over the walls. [Pa]"""
        return np.abs(self.ends[1] - self.ends[0]) / EVEN

    @cached_property
    def opening(self) -> Number | None:
        """Free area of the inlet as air squeezes through it; none where no house has one. [m2]"""
        return coefficient("inlet discharge") * self.inlet if np.any(self.inlet) else None


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


def flows(pull: Number, leaks: Leaks, slope: bool = True) -> tuple[Array, Array]:
    """Net mass into the house, and how it grows with the pull.

    Parameters
    ----------
    pull : float or array
        How far the room lies below outdoors at the hearth. [Pa]
    leaks : Leaks
    slope : bool
        Whether the growth is asked for; if not, it is no figure.

    Returns
    -------
    tuple of array
        Mass flow [kg/s], and its growth [kg/(s Pa)].
    """
    power, (at_floor, at_ceiling) = leaks.exponent, leaks.ends
    low, high = pull - at_floor, pull - at_ceiling
    # What a leak of 1 m3/(s Pa^n) passes at each end; out of the house it is room air.
    under, over = np.abs(low), np.abs(high)
    at_low = np.where(low > 0, leaks.outside, -leaks.room) * under**power
    at_high = np.where(high > 0, leaks.outside, -leaks.room) * over**power
    floor, ceiling, walls = leaks.shares
    even = under >= leaks.steep
    any_even = bool(even.any())
    spread = low - high
    if any_even:
        spread = np.where(even, 1.0, spread)
    each = walls / ((power + 1.0) * spread)
    mass = at_low * (floor + each * low) + at_high * (ceiling - each * high)
    if any_even:
        alike = (floor + 0.5 * walls) * at_low + (ceiling + 0.5 * walls) * at_high
        mass = np.where(even, alike, mass)
    grows = mass
    if slope:
        grows_low, grows_high = power * at_low / low, power * at_high / high
        along = (at_low - at_high) / spread
        if any_even:
            along = np.where(even, 0.5 * (grows_low + grows_high), along)
        grows = floor * grows_low + ceiling * grows_high + walls * along
    if leaks.opening is None:
        return mass, grows
    heavy = np.where(np.greater(pull, 0), leaks.outside, leaks.room)
    through = leaks.opening * np.sqrt(2.0 * heavy * np.abs(pull))
    if slope:
        opens = np.where(np.greater(leaks.inlet, 0), 0.5 * through / np.abs(pull), 0.0)
        grows = grows + opens
    return mass + np.sign(pull) * through, grows


def net_inflow(pull: Number, leaks: Leaks) -> Array:
    r"""Mass that comes in through leaks and inlet, less what leaves through them.

    Parameters
    ----------
    pull : float or array
        How far the room lies below outdoors at the hearth. [Pa]
    leaks : Leaks

    Returns
    -------
    array
        Mass flow, negative when more goes out. [kg/s]

    Notes
    -----
    .. math::

        \Delta p(z) = \Delta p_0 - g\,(\rho_o - \rho_r)\,z, \quad
        \dot m = C \int \rho\,|\Delta p(z)|^n \mathrm{sgn}(\Delta p)\,\mathrm{d}s
        + 0.6 A \sqrt{2 \rho\,|\Delta p_0|}\,\mathrm{sgn}(\Delta p_0)

    with the density of the air that flows. A quarter of the leaks is taken at the lowest floor, a
    quarter at the highest ceiling, half of them evenly over the walls. The level at which neither
    pulls is the neutral one; it rises when flue and fans take air out.

    References
    ----------
    Shares of the leaks: OpenStudio-HPXML (NREL) after Walker and Wilson. Stack effect: ASHRAE
    Handbook Fundamentals, chapter on ventilation and infiltration, from memory.

    Examples
    --------
    >>> round(float(net_inflow(4.0, Leaks(0.06, 0.65))), 3)
    0.177
    >>> warm = Leaks(0.06, 0.65, outside=1.34, room=1.20, bottom=0.0, top=5.0)
    >>> float(net_inflow(0.0, warm)) < 0
    True
    """
    return flows(pull, leaks, slope=False)[0]


def door_loss(area: Number, density: Number) -> Number:
    r"""What the inlet of shut glass doors takes of the draft, over air flow squared.

    Parameters
    ----------
    area : float or array
        Free, gaps counted in; infinite where they stand open. [m2]
    density : float or array
        Of the room's air. [kg/m3]

    Returns
    -------
    float or array
        Pressure over mass flow squared. [Pa s2/kg2]

    Notes
    -----
    .. math:: \Delta p = \dot m^2 / (2 \rho\,(0.6 A)^2)

    A sharp-edged opening, as for any air inlet. Engineering judgement: nothing measured on the
    doors of a masonry fireplace was found, and what the glass keeps back of the fire's heat is not
    figured.

    References
    ----------
    Orifice flow, ASHRAE Handbook Fundamentals, chapter on ventilation and infiltration, from
    memory.

    Examples
    --------
    >>> round(door_loss(0.0355, 1.27) * (215 / 3600 * 1.27) ** 2, 1)
    5.0
    """
    return 1.0 / (2.0 * density * (coefficient("inlet discharge") * area) ** 2)
