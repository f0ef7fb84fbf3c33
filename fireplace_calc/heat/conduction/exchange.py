"""Heat from face to face and from a face to a room: radiation, and air that moves by itself.

Fluxes are told with their slopes, so that whoever solves for temperatures can step along them.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array, Number

SIGMA = 5.670374419e-8
"""Stefan and Boltzmann's constant (2018 CODATA). [W/(m2 K4)]"""
ZERO_C = 273.15
"""[K]"""
STILL_AIR = 0.025
"""Conductivity of still air (ISO 6946). [W/(m K)]"""
LEVEL, UP, DOWN = "level", "up", "down"
"""Which way heat crosses an air layer."""
FREE_FACE = 1.31
"""Of an upright face in a room, turbulent: from memory. [W/m2K(4/3)]"""


def black(temperature: Number) -> Array:
    """What a black body sends out at a temperature [C]. [W/m2]

    Examples
    --------
    >>> round(float(black(115.0)), 1)
    1287.1
    """
    return SIGMA * (np.asarray(temperature) + ZERO_C) ** 4


def between(one: float, other: float) -> float:
    """Effective emittance of two parallel grey faces. [-]

    Parameters
    ----------
    one, other : float
        Emissivities, more than 0 and at most 1. [-]

    Examples
    --------
    >>> round(between(0.9, 0.9), 2)
    0.82
    """
    return 1 / (1 / one + 1 / other - 1)


def radiated(hot: Array, cold: Array, emittance: Array) -> tuple[Array, Array]:
    """Flux [W/m2] and slope [W/(m2 K)] of radiation straight across.

    Parameters
    ----------
    hot, cold : array
        Of the faces. [C]
    emittance : array
        Effective. [-]

    Notes
    -----
    ``e sigma (T1^4 - T2^4)``; the slope is that at the mean temperature.

    Examples
    --------
    >>> flux, _ = radiated(115.0, 21.0, between(0.93, 1.0))
    >>> round(float(flux) / 94, 3)
    8.534
    """
    mean = (np.asarray(hot) + np.asarray(cold)) / 2 + ZERO_C
    return emittance * (black(hot) - black(cold)), 4 * emittance * SIGMA * mean**3


def air_layer(difference: Array, width: Array, way: str = LEVEL) -> tuple[Array, Array]:
    """Conductance of the air of a closed layer between its faces, and its slope. [W/(m2 K)]

    Parameters
    ----------
    difference : array
        Of the faces. [K]
    width : array
        Of the layer. [m]
    way : str
        ``level`` for an upright layer; ``up`` or ``down`` as heat goes through one that lies.

    Returns
    -------
    conductance, slope of the flux : array

    Notes
    -----
    ISO 6946 annex D: still air ``k/d``, or air that moves by itself if that is more.
    """
    steep = np.abs(difference)
    still = STILL_AIR / np.asarray(width)
    if way == DOWN:
        moved = 0.12 * np.asarray(width) ** -0.44 + np.zeros_like(steep)
        best = np.maximum(still, moved)
        return best, best
    moved = (0.73 if way == LEVEL else 1.14) * np.cbrt(steep)
    best = np.maximum(still, moved)
    return best, np.where(moved > still, 4 / 3 * moved, still)


def layer_resistance(
    width: float, mean: float, difference: float, emittance: float, way: str = LEVEL
) -> float:
    """Thermal resistance of a closed air layer. [m2K/W]

    Parameters
    ----------
    width : float
        [m]
    mean, difference : float
        Of its faces. [C], [K]
    emittance : float
        Effective. [-]
    way : str
        Which way heat goes.

    Examples
    --------
    >>> round(layer_resistance(0.05, 10.0, 5.0, between(0.9, 0.9)), 2)
    0.18
    """
    hot, cold = mean + difference / 2, mean - difference / 2
    flux, _ = radiated(np.array(hot), np.array(cold), np.array(emittance))
    air, _ = air_layer(np.array(difference), np.array(width), way)
    return float(difference / (flux + air * difference))
