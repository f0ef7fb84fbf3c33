"""How far flue and fans pull down the room at the hearth, in a house that is warm and leaks."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.draft.physics.house_leaks import Leaks, flows, inlet_flow, net_inflow

ROUNDS = 80
"""How often at most a pull is put closer; Newton's steps need four to eight, halving some fifty."""
CLOSE = 1e-13
"""Relative step of a pull after which it stays. [-]"""


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
    >>> from fireplace_calc.draft.physics.house_leaks import leakage
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
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        return np.where(open_, 0.0, _pulled(out, leaks, start))


def _pulled(out: Number, leaks: Leaks, start: Number | None) -> Array:
    """The pull on a house none of which is open."""
    alone = (out / (leaks.coefficient * leaks.outside)) ** (1.0 / np.asarray(leaks.exponent))
    spare = 1e-12 * (1.0 + alone)
    low, high = -leaks.rise - spare, np.maximum(np.maximum(*leaks.ends), 0.0) + alone + spare
    if start is None:  # both ways as if they went with the root, from the middle of the house
        ways = 1.0 / np.sqrt(alone)
        if leaks.opening is not None:
            through = leaks.opening * np.sqrt(2.0 * leaks.outside) / out
            ways = ways + np.where(np.greater(leaks.inlet, 0), through, 0.0)
        start = ways**-2 + 0.5 * sum(leaks.ends)
    at = np.minimum(np.maximum(start, low), high)
    moving = np.ones(np.shape(at), bool)
    last = high - low
    for _ in range(ROUNDS):
        mass, slope = flows(at, leaks)
        short = mass < out
        # A pull that stays where it is may lose its bracket: it is looked at no more.
        low, high = np.where(short, at, low), np.where(short, high, at)
        step = at + (out - mass) / slope
        good = (step >= low) & (step <= high) & (np.abs(step - at) <= 0.5 * last)
        near = np.where(good, step, 0.5 * (low + high))
        last = np.abs(near - at)
        there = last <= CLOSE * np.maximum(np.abs(at), np.abs(high))
        at, moving = np.where(moving, near, at), moving & ~there
        if not moving.any():
            break
    return at


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
    >>> from fireplace_calc.draft.physics.house_leaks import leakage
    >>> house = Leaks(leakage(1.5, 400, 0.65), 0.65)
    >>> area = inlet_needed(0.19, 5.0, house)
    >>> round(float(house_pull(0.19, replace(house, inlet=area))), 6)
    5.0
    """
    lacking = out - net_inflow(pull, replace(leaks, inlet=0.0))
    return np.maximum(lacking, 0.0) / (leaks.outside * inlet_flow(1.0, pull, leaks.outside))
