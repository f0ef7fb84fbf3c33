"""Five of the six multipliers of the lifting equation of NIOSH, revised 1991 (publication 94-110).

The equation is worked in inches and pounds, as its first edition prints it; 51 lb and 23 kg are not
quite the same. Multipliers by formula, or as the printed tables round them. The sixth, of
frequency, stands in ``frequency``.
"""

from __future__ import annotations

from functools import lru_cache
from math import floor, isfinite

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import DEG, INCH, InputError

KNEE = 30 * INCH
"""Hands below this are low: best height, and the border between the columns of grip and frequency.
[m]
"""
NEAREST, FARTHEST = 10 * INCH, 25 * INCH
"""Hands before the ankles: nearer counts as the first, farther is no lift at all. [m]"""
HIGHEST, LEAST_TRAVEL, MOST_TRAVEL = 70 * INCH, 10 * INCH, 70 * INCH
"""Hands no higher; travel up or down counts as the second at least, and beyond the third is no lift
at all. [m]
"""
MOST_TWIST = 135 * DEG
"""Turned farther than this is no lift at all. [rad]"""

GRIPS = ("good", "fair", "poor")


def exceeds(value: float, limit: float) -> bool:
    """Whether a value lies beyond a limit by more than a float's last digits.

    Parameters
    ----------
    value, limit : float
        Both in the same unit. [unit]

    Returns
    -------
    bool
    """
    return value > limit * (1 + ROUNDING)


def is_low(height: float) -> bool:
    """Whether hands are low: under 30 in.

    Parameters
    ----------
    height : float
        Of the hands over the floor. [m]

    Returns
    -------
    bool
    """
    return height < KNEE * (1 - ROUNDING)


def require_finite(name: str, value: float, allowed: str = "zero or more") -> float:
    """The value itself, unless it is negative or no finite number.

    Parameters
    ----------
    name : str
        Of the value, for the message.
    value : float
        In any unit. [unit]
    allowed : str
        For the message.

    Returns
    -------
    float
        The same. [unit]

    Raises
    ------
    InputError
        When it is negative or no finite number.
    """
    if not isfinite(value) or value < 0:
        raise InputError(
            f"{name} is {value}, but {allowed} is allowed; check the sign and the unit.",
            name,
            allowed,
            value,
        )
    return value


def require_word(name: str, value: str, words: tuple[str, ...]) -> str:
    """The word itself, unless it is not one of a few.

    Parameters
    ----------
    name, value : str
        What it is, for the message, and the word.
    words : tuple of str
        Allowed.

    Returns
    -------
    str
        The same.

    Raises
    ------
    InputError
        When it is none of them.
    """
    if value not in words:
        raise InputError(
            f"{name} is {value!r}, but only these are known: {', '.join(words)}.",
            name,
            ", ".join(words),
            value,
        )
    return value


@lru_cache(maxsize=1)
def _printed() -> dict[tuple[str, str], tuple[tuple[float, float], ...]]:
    """Cells that are printed otherwise than their formula rounds, by multiplier and unit."""
    found: dict[tuple[str, str], list[tuple[float, float]]] = {}
    for r in rows("lifting_printed.csv"):
        found.setdefault((r["multiplier"], r["unit"]), []).append(
            (float(r["at"]), float(r["printed"]))
        )
    return {key: tuple(cells) for key, cells in found.items()}


def _as_printed(name: str, at: float, value: float) -> float:
    """Two figures, halves up, and the printed cells that differ from that."""
    for unit, size in (("in", INCH), ("cm", 0.01)):
        for place, printed in _printed().get((name, unit), ()):
            if abs(at / size - place) < 1e-6:
                return printed
    return floor(value * 100 + 0.5 + 1e-9) / 100


def reach_multiplier(reach: float, tabled: bool = False) -> float:
    """For hands held away from the body.

    Parameters
    ----------
    reach : float
        Level distance from the middle of the ankles to the hands. [m]
    tabled : bool
        As the printed table rounds it.

    Returns
    -------
    float
        10 in over the reach; 1 when nearer than 10 in, 0 beyond 25 in. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.

    Examples
    --------
    >>> round(reach_multiplier(23 * INCH), 4), reach_multiplier(23 * INCH, tabled=True)
    (0.4348, 0.44)
    """
    if exceeds(require_finite("Reach", reach), FARTHEST):
        return 0.0
    value = NEAREST / max(reach, NEAREST)
    return _as_printed("horizontal", reach, value) if tabled else value


def height_multiplier(height: float, tabled: bool = False) -> float:
    """For hands lower or higher than is best.

    Parameters
    ----------
    height : float
        Of the hands over the floor one stands on. [m]
    tabled : bool
        As the printed table rounds it.

    Returns
    -------
    float
        1 at 30 in, 0.75 percent less for every inch up or down; 0 over 70 in. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.

    Examples
    --------
    >>> round(height_multiplier(20 * INCH), 3)
    0.925
    """
    if exceeds(require_finite("Height of the hands", height), HIGHEST):
        return 0.0
    value = 1 - 0.0075 * abs(height - KNEE) / INCH
    return _as_printed("vertical", height, value) if tabled else value


def travel_multiplier(travel: float, tabled: bool = False) -> float:
    """For the height a load is lifted or lowered through.

    Parameters
    ----------
    travel : float
        From where it is taken to where it is put, up or down. [m]
    tabled : bool
        As the printed table rounds it.

    Returns
    -------
    float
        1 up to 10 in, then 0.82 + 1.8 in / travel; 0 over 70 in. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.
    """
    if exceeds(require_finite("Travel", travel), MOST_TRAVEL):
        return 0.0
    value = 0.82 + 1.8 * INCH / max(travel, LEAST_TRAVEL)
    return _as_printed("distance", travel, value) if tabled else value


def twist_multiplier(twist: float, tabled: bool = False) -> float:
    """For a load taken or put to one side.

    Parameters
    ----------
    twist : float
        Of the body, from straight ahead. [rad]
    tabled : bool
        As the printed table rounds it.

    Returns
    -------
    float
        0.32 percent less for every degree; 0 over 135 degrees. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.
    """
    if exceeds(require_finite("Twist", twist), MOST_TWIST):
        return 0.0
    value = 1 - 0.0032 * twist / DEG
    return _as_printed("twist", twist, value) if tabled else value


@lru_cache(maxsize=1)
def _couplings() -> dict[str, tuple[float, float]]:
    return {r["grip"]: (float(r["low"]), float(r["high"])) for r in rows("lifting_coupling.csv")}


def grip_multiplier(grip: str, height: float) -> float:
    """For how well the hands hold it; in doubt take the worse.

    Parameters
    ----------
    grip : str
        ``good``, ``fair`` or ``poor``.
    height : float
        Of the hands over the floor. [m]

    Returns
    -------
    float
        Table 7. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.
    """
    low, high = _couplings()[require_word("Grip", grip, GRIPS)]
    return low if is_low(height) else high
