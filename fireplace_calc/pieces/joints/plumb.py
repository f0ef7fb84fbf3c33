"""How far from plumb a chimney comes: beds out of level, and a level that is itself out. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from math import erfc, sqrt
from statistics import NormalDist

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.base.draws import DRAWS, SEED, of_hundred
from fireplace_calc.base.messages import shown
from fireplace_calc.base.tables.erection import allowed_off
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.joints.tape import tape_text

LEVELED, PARALLEL = "each piece leveled", "each piece parallel to the last"
"""How pieces are set: to the level, or on an even bed with no level held to them."""
NEVER, EVERY_OTHER, EVERY = "never", "every other piece", "every piece"
"""When the level is turned end for end: not at all; for every second piece; on every piece, and the
middle of both readings taken.
"""
USUAL = 0.95
"""What is told of an error is what 19 of 20 stay within. [-]"""
_DEVIATIONS = NormalDist().inv_cdf((1 + USUAL) / 2)


@dataclass(frozen=True, slots=True)
class PlumbOdds:
    """Chimneys set many times over, each bed out of level by its own lot.

    Attributes
    ----------
    half, most : float
        How far from plumb the top is in half of them at most, and in 19 of 20. [m]
    outside : float
        Share of them that are out of the published tolerance between any two tops. [-]
    draws : int
        How many were set. [-]
    """

    half: float
    most: float
    outside: float
    draws: int

    @property
    def words(self) -> str:
        """The odds as one says them."""
        return f"out of tolerance in {of_hundred(self.outside)}"


def plumb_within(rises: Array, across: Number, error: Number, way: str) -> float:
    r"""How far from plumb 19 of 20 tops stay.

    Parameters
    ----------
    rises : array, shape (n,)
        Height of each piece with its bed, from the base up. [m]
    across : float or array
        Length of the bed in the direction looked at. [m]
    error : float or array
        How much one end of a piece lies higher than the other: what 19 of 20 stay within. [m]
    way : str
        ``LEVELED`` or ``PARALLEL``.

    Returns
    -------
    float
        Either way. [m]

    Raises
    ------
    InputError
        When there is no such way, or a height or bed is nought.

    Notes
    -----
    .. math:: x = \sqrt{\sum_i (k_i e_i / b_i)^2}

    With k the height of the piece itself where each is leveled: slopes do not add up. With k the
    height from its bed to the top where each is only parallel to the last: everything above leans
    along, and x grows with the power 3/2 of the number of pieces. Errors are normal and know
    nothing of each other; the front edges are lined up.

    Examples
    --------
    >>> from fireplace_calc.base.units import INCH
    >>> rises = np.full(20, 8.375 * INCH)
    >>> [round(plumb_within(rises, 20 * INCH, INCH / 16, w) / INCH, 2) for w in (LEVELED, PARALLEL)]
    [0.12, 1.4]
    """
    rises, across = _checked(rises, across)
    lever = rises if _known(way, (LEVELED, PARALLEL), "way") == LEVELED else _to_top(rises)
    return float(np.sqrt(np.sum((lever * error / across) ** 2)))


def share_outside(within: float, limit: float) -> float:
    """Share of tops farther off than a limit, when 19 of 20 stay within a distance.

    Parameters
    ----------
    within : float
        As ``plumb_within`` or ``height.height_within`` gives it. [m]
    limit : float
        Either way. [m]

    Returns
    -------
    float
        Of a normal spread about nought. [-]

    Examples
    --------
    >>> round(share_outside(0.5, 0.5), 3)
    0.05
    """
    return erfc(limit / within * _DEVIATIONS / sqrt(2)) if within > 0 else 0.0


def level_drift(rises: Array, slope: float, turned: str = NEVER) -> float:
    """How far from plumb a level that is itself out brings the top, when each piece is set to it.

    Parameters
    ----------
    rises : array, shape (n,)
        Height of each piece with its bed. [m]
    slope : float
        What the level reads as true: how much one end is high, over its length. [-]
    turned : str
        When it is turned end for end: ``NEVER``, ``EVERY_OTHER`` or ``EVERY``.

    Returns
    -------
    float
        Toward the low end of the first reading. [m]

    Raises
    ------
    InputError
        When there is no such habit.

    Examples
    --------
    >>> rises = np.full(20, 0.2)
    >>> [round(level_drift(rises, 0.001, how), 9) for how in (NEVER, EVERY_OTHER, EVERY)]
    [0.004, 0.0, 0.0]
    """
    rises, _ = _checked(rises, 1.0)
    return float(np.sum(rises * slope * _signs(len(rises), turned)))


def plumb_odds(
    rises: Array,
    across: Number,
    error: Number,
    way: str,
    slope: float = 0.0,
    turned: str = NEVER,
    draws: int = DRAWS,
    seed: int = SEED,
) -> PlumbOdds:
    """Set a chimney many times over.

    Parameters
    ----------
    rises : array, shape (n,)
        Height of each piece with its bed, from the base up. [m]
    across : float or array
        Length of the bed in the direction looked at. [m]
    error : float or array
        How much one end of a piece lies higher than the other: what 19 of 20 stay within. [m]
    way : str
        ``LEVELED`` or ``PARALLEL``.
    slope : float
        How far the level itself is out, over its length; it counts where pieces are leveled. [-]
    turned : str
        When it is turned end for end.
    draws : int
        How many, at least 1. [-]
    seed : int
        Same seed, same odds. [-]

    Returns
    -------
    PlumbOdds
        Any two tops are compared, and the foot with each: a length in the middle counts too.

    Raises
    ------
    InputError
        When there is no such way or habit, or a height or bed is nought.
    """
    rises, across = _checked(rises, across)
    _known(way, (LEVELED, PARALLEL), "way")
    rng = np.random.default_rng(seed)
    slopes = rng.normal(0.0, 1.0, (draws, len(rises))) * (error / _DEVIATIONS / across)
    leaning = (
        slopes + slope * _signs(len(rises), turned) if way == LEVELED else np.cumsum(slopes, axis=1)
    )
    off = np.cumsum(rises * leaning, axis=1)
    levels = np.concatenate([[0.0], np.cumsum(rises)])
    off = np.concatenate([np.zeros((draws, 1)), off], axis=1)
    outside = np.zeros(draws, dtype=bool)
    for n in range(len(rises)):
        limits = [allowed_off("plumb", z - levels[n]) for z in levels[n + 1 :]]
        outside |= np.any(np.abs(off[:, n + 1 :] - off[:, n : n + 1]) > limits, axis=1)
    half, most = np.quantile(np.abs(off[:, -1]), (0.5, USUAL))
    return PlumbOdds(float(half), float(most), float(np.mean(outside)), draws)


def plumb_words(
    rises: Array, across: float, error: float, slope: float, units: str
) -> tuple[str, ...]:
    """What decides the plumb of a chimney, as one says it on site.

    Parameters
    ----------
    rises : array, shape (n,)
        Height of each piece with its bed. [m]
    across : float
        Length of a bed in the direction looked at. [m]
    error : float
        How much one end of a piece lies higher than the other: what 19 of 20 stay within. [m]
    slope : float
        How far the level itself is out, over its length. [-]
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of str
        Sentences: each way of setting, the published tolerance, the level.
    """

    def text(value: float) -> str:
        return tape_text(value, units)

    leveled, parallel = (plumb_odds(rises, across, error, way) for way in (LEVELED, PARALLEL))
    near, far = (plumb_within(rises, across, error, way) for way in (LEVELED, PARALLEL))
    limit = allowed_off("plumb", float(np.sum(rises)))
    drift = abs(level_drift(rises, slope))
    return (
        f"Beds are taken to be within {text(error)} of level over {text(across)}, 19 of 20.",
        f"Hold the level to every piece: 19 tops of 20 stay within {text(near)} of plumb; "
        f"{leveled.words}.",
        f"Set each piece only parallel to the last: 19 of 20 stay within {text(far)}; "
        f"{parallel.words}.",
        f"At most {text(limit)} is allowed at the top (TMS 602, from memory).",
        f"A level that is itself out brings the top {text(drift)} off. Turn it end for end on "
        "every piece and split the difference: then it does not count.",
    )


def _signs(count: int, turned: str) -> Array:
    """Which way the level's own error counts on each piece. [-]"""
    how = _known(turned, (NEVER, EVERY_OTHER, EVERY), "turned")
    if how == EVERY_OTHER:
        return np.asarray(1.0 - 2.0 * (np.arange(count) % 2))
    return np.full(count, float(how == NEVER))


def _to_top(rises: Array) -> Array:
    """Height from each bed to the top. [m]"""
    return np.asarray(np.cumsum(rises[::-1])[::-1])


def _known(told: str, words: tuple[str, ...], name: str) -> str:
    if told not in words:
        allowed = ", ".join(words)
        raise InputError(
            f"{name.capitalize()} is {shown(told)}, but one of {allowed} is wanted.",
            name,
            allowed,
            told,
        )
    return told


def _checked(rises: Array, across: Number) -> tuple[Array, Array]:
    rises, wide = np.asarray(rises, dtype=float), np.asarray(across, dtype=float)
    if not rises.size or not (rises > ROUNDING).all() or not (wide > ROUNDING).all():
        raise InputError(
            "A height or a bed is nought, but both have to be more for every piece; is one of them "
            "missing?",
            "rises",
            "over nought",
            float(rises.min()) if rises.size else "none",
        )
    return rises, wide
