"""Refractory mortar in mixes that are used up while they are good, and in pails."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil

from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import InputError
from fireplace_calc.build.setting.setting_order import SettingStep
from fireplace_calc.build.setting.step_mortar import StepMortar
from fireplace_calc.geometry.assembled.solids import piece_weight

MINUTE = 60.0
LEAST_OPEN, MOST_OPEN = 10 * MINUTE, 15 * MINUTE
"""No more mortar is spread than is covered in this time; common practice. [s]"""
OPEN_TIME = 12 * MINUTE
"""What is taken where nothing is told: our own habit, between the two. [s]"""
SET_PIECE, SET_KILOGRAM = 3 * MINUTE, 2.0
"""How long a piece takes to bed, set, level and wipe, and how much longer for each kilogram of it:
our own figures. [s] and [s/kg]
"""
PAIL = 0.0132
"""A pail of 3 1/2 gallons; common practice, from memory: read the label. [m3]"""


@dataclass(frozen=True, slots=True)
class MortarMix:
    """One mix.

    Attributes
    ----------
    number : int
        From 1. [-]
    names : tuple of str
        Pieces that it sets, in turn.
    volume : float
        To mix. [m3]
    seconds : float
        From the first of it spread to the last piece set. [s]
    in_time : bool
        Whether that is within its open time; one piece alone may take longer.
    """

    number: int
    names: tuple[str, ...]
    volume: float
    seconds: float
    in_time: bool


def seconds_to_set(weight: float) -> float:
    """How long a piece takes from mortar spread to joints wiped.

    Parameters
    ----------
    weight : float
        [kg]

    Returns
    -------
    float
        [s]

    Notes
    -----
    3 minutes, and 2 seconds more for every kilogram: our own figures, measured by nobody. Take the
    time of your own first pieces.

    Examples
    --------
    >>> seconds_to_set(30.0) / 60
    4.0
    """
    return SET_PIECE + SET_KILOGRAM * weight


def mixes_of_steps(
    steps: Iterable[SettingStep], mortar: Iterable[StepMortar], open_time: float = OPEN_TIME
) -> tuple[MortarMix, ...]:
    """Steps in mixes, each used up within its open time.

    Parameters
    ----------
    steps : iterable of SettingStep
        In order.
    mortar : iterable of StepMortar
        Of all pieces among them.
    open_time : float
        How long what is mixed may be spread and covered. [s]

    Returns
    -------
    tuple of MortarMix
        No mix is kept over while the lining is laid.

    Raises
    ------
    InputError
        When the open time is not 10 to 15 minutes.
    """
    if not LEAST_OPEN - COUNT_SLACK <= open_time <= MOST_OPEN + COUNT_SLACK:
        raise InputError(
            f"Open time is {open_time / MINUTE:g} minutes, but 10 to 15 are allowed: mortar spread"
            " for longer dries before it is covered.",
            "Open time",
            "10 to 15 minutes",
            open_time,
        )
    volumes: Mapping[str, float] = {one.name: one.volume for one in mortar}
    found: list[tuple[list[str], float, float]] = []
    fresh = True
    for step in steps:
        if step.placed is None:
            fresh = True
            continue
        seconds = seconds_to_set(piece_weight(step.placed.piece))
        if fresh or found[-1][2] + seconds > open_time:
            found.append(([], 0.0, 0.0))
        names, volume, spent = found[-1]
        found[-1] = ([*names, step.name], volume + volumes[step.name], spent + seconds)
        fresh = False
    return tuple(
        MortarMix(number, tuple(names), volume, seconds, seconds <= open_time)
        for number, (names, volume, seconds) in enumerate(found, 1)
    )


def pails_of(volume: float, waste: float = 0.0, pail: float = PAIL) -> int:
    """Pails of refractory mortar to have on site.

    Parameters
    ----------
    volume : float
        In the joints. [m3]
    waste : float
        More to order, over what the joints take. [-]
    pail : float
        What one holds. [m3]

    Returns
    -------
    int
        Rounded up. [-]

    Raises
    ------
    InputError
        When a pail holds nothing.

    Examples
    --------
    >>> pails_of(0.060, 0.2)
    6
    """
    if pail <= 0:
        raise InputError(
            f"A pail holds {pail:g} m3, but more than nothing is wanted; read its label.",
            "Pail",
            "more than 0",
            pail,
        )
    return ceil(volume * (1 + waste) / pail - COUNT_SLACK)
