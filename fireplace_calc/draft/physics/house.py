"""The house around the fire: what leaks in and out of it, being warm and so a chimney itself, what
fans take out, and how far that pulls the room down at the hearth.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import G

ROUNDS = 80
"""How often at most a pull is put closer; Newton's steps need four to eight, halving some fifty."""
CLOSE = 1e-13
"""Relative step of a pull after which it stays. [-]"""
EVEN = 1e-5
"""Pressures at floor and ceiling that differ by less of themselves count as one over the walls. [-]
"""


@dataclass(frozen=True, slots=True)
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

    @property
    def tilt(self) -> Number:
        """How much less the room is pulled down [Pa] for each meter higher [m]."""
        return G * (self.outside - self.room)

    @property
    def rise(self) -> Number:
        """What the house could push at the hearth at most, if all of it leaked at one end. [Pa]"""
        tilt = self.tilt
        return np.maximum(-np.minimum(tilt * self.bottom, tilt * self.top), 0.0)


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


def _flows(pull: Number, leaks: Leaks) -> tuple[Array, Array]:
    """Net mass into the house [kg/s], and how it grows with the pull [kg/(s Pa)]."""
    power, tilt = leaks.exponent, leaks.tilt
    low, high = pull - tilt * leaks.bottom, pull - tilt * leaks.top
    # What a leak of 1 m3/(s Pa^n) passes at each end; out of the house it is room air.
    at_low = np.where(low > 0, leaks.outside, -leaks.room) * np.abs(low) ** power
    at_high = np.where(high > 0, leaks.outside, -leaks.room) * np.abs(high) ** power
    spread = low - high
    even = np.abs(spread) <= EVEN * np.abs(low)
    spread = np.where(even, 1.0, spread)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        grows_low, grows_high = power * at_low / low, power * at_high / high
        walls = (at_low * low - at_high * high) / ((power + 1.0) * spread)
        grows = (at_low - at_high) / spread
    walls = np.where(even, 0.5 * (at_low + at_high), walls)
    grows = np.where(even, 0.5 * (grows_low + grows_high), grows)
    share = coefficient("leaks in the walls")
    floor, ceiling = coefficient("leaks in the floor"), coefficient("leaks in the ceiling")
    mass = leaks.coefficient * (floor * at_low + ceiling * at_high + share * walls)
    slope = leaks.coefficient * (floor * grows_low + ceiling * grows_high + share * grows)
    if not np.any(leaks.inlet):
        return mass, slope
    heavy = np.where(np.greater(pull, 0), leaks.outside, leaks.room)
    through = coefficient("inlet discharge") * leaks.inlet * np.sqrt(2.0 * heavy * np.abs(pull))
    with np.errstate(divide="ignore", invalid="ignore"):
        opens = np.where(np.greater(leaks.inlet, 0), 0.5 * through / np.abs(pull), 0.0)
    return mass + np.sign(pull) * through, slope + opens


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
    return _flows(pull, leaks)[0]


def house_pull(out: Number, leaks: Leaks, start: Number | None = None) -> Array:
    """How far the room lies below outdoors at the hearth when so much goes out by flue and fans.

    Parameters
    ----------
    out : float or array
        Mass flow; what is not positive counts as none. [kg/s]
    leaks : Leaks
    start : float or array, optional
        A pull near the answer, to begin with. [Pa]

    Returns
    -------
    array
        Pull at which as much comes in as goes out; negative where the warm house pushes air up to
        a hearth near its top. A room as open as outdoors is not pulled at all. [Pa]

    Notes
    -----
    Newton's steps within a bracket, halved where a step is no shorter than half the one before: no
    leak pulls less than if all of them lay where the house pushes most, nor more than without any
    stack effect at the level where it pulls most.

    Examples
    --------
    >>> cold = Leaks(leakage(7, 400, 0.65), 0.65, outside=1.2, room=1.2)
    >>> round(float(house_pull(0.174, cold)), 1)
    3.8
    >>> warm = replace(cold, outside=1.34, bottom=-1.0, top=5.0)
    >>> round(float(house_pull(0.0, warm)), 2), round(float(house_pull(0.174, warm)), 2)
    (2.52, 6.81)
    """
    open_ = np.isinf(np.asarray(leaks.coefficient))
    if open_.all():
        return np.zeros(np.broadcast(out, open_).shape)
    if open_.any():
        leaks = replace(leaks, coefficient=np.where(open_, 1.0, leaks.coefficient))
    out = np.maximum(np.asarray(out, float), 0.0)
    tilt = leaks.tilt
    alone = (out / (leaks.coefficient * leaks.outside)) ** (1.0 / np.asarray(leaks.exponent))
    above = np.maximum(np.maximum(tilt * leaks.bottom, tilt * leaks.top), 0.0)
    spare = 1e-12 * (1.0 + alone)
    low, high = -leaks.rise - spare, above + alone + spare
    if start is None:  # both ways as if they went with the root, from the middle of the house
        opening = coefficient("inlet discharge") * np.asarray(leaks.inlet, float)
        with np.errstate(divide="ignore", invalid="ignore"):
            through = opening * np.sqrt(2.0 * leaks.outside) / out
            start = (1.0 / np.sqrt(alone) + np.where(opening > 0, through, 0.0)) ** -2
        start = start + 0.5 * tilt * (leaks.bottom + leaks.top)
    at = np.clip(start, low, high)
    moving = np.ones(np.broadcast(at, open_).shape, bool)
    at, low, high = (np.broadcast_to(v, moving.shape) for v in (at, low, high))
    last = high - low
    for _ in range(ROUNDS):
        mass, slope = _flows(at, leaks)
        short = mass < out
        low, high = np.where(moving & short, at, low), np.where(moving & ~short, at, high)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = at + (out - mass) / slope
        good = (step >= low) & (step <= high) & (np.abs(step - at) <= 0.5 * last)
        near = np.where(good, step, 0.5 * (low + high))
        there = np.abs(near - at) <= CLOSE * np.maximum(np.abs(at), np.abs(high))
        last = np.abs(near - at)
        at, moving = np.where(moving, near, at), moving & ~there
        if not moving.any():
            break
    return np.where(open_, 0.0, at)


def inlet_needed(out: Number, pull: Number, leaks: Leaks) -> Array:
    """Free area of an outdoor air inlet with which the room is pulled down just so far.

    Parameters
    ----------
    out : float or array
        Mass out through flue and fans. [kg/s]
    pull : float or array
        What is allowed, above zero. [Pa]
    leaks : Leaks
        Whatever inlet it has is left out.

    Returns
    -------
    array
        Free area, zero when the leaks alone do it. [m2]

    Examples
    --------
    >>> house = Leaks(leakage(1.5, 400, 0.65), 0.65)
    >>> area = inlet_needed(0.19, 5.0, house)
    >>> round(float(house_pull(0.19, replace(house, inlet=area))), 6)
    5.0
    """
    lacking = out - net_inflow(pull, replace(leaks, inlet=0.0))
    return np.maximum(lacking, 0.0) / (leaks.outside * inlet_flow(1.0, pull, leaks.outside))
