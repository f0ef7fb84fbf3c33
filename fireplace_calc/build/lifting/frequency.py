"""The multiplier of the lifting equation for how often a load is lifted, and how long at a time."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import InputError
from fireplace_calc.build.lifting.multipliers import (
    exceeds,
    is_low,
    require_finite,
    require_word,
)

SELDOM = 0.2
"""Fewer lifts a minute than this count as this. [1/min]"""
DURATIONS = ("short", "moderate", "long")


@lru_cache(maxsize=1)
def _frequencies() -> dict[str, tuple[tuple[float, float], ...]]:
    """Rate [1/min] and multiplier [-] by column; past the last rate there is no lifting by hand."""
    table = [r for r in rows("lifting_frequency.csv") if not r["lifts_per_min"].startswith("over")]
    columns = [f"{d}_{band}" for d in DURATIONS for band in ("low", "high")]
    return {c: tuple((float(r["lifts_per_min"]), float(r[c])) for r in table) for c in columns}


def frequency_multiplier(lifts: float, duration: str, origin: float) -> float:
    """For how often, and how long at a time.

    Parameters
    ----------
    lifts : float
        By one person; fewer than 0.2 count as 0.2. [1/min]
    duration : str
        ``short``, ``moderate`` or ``long``: see ``spell``.
    origin : float
        Height of the hands where the load is taken, also when it is the putting down that is
        judged. [m]

    Returns
    -------
    float
        Table 5, straight between its rows, zeros kept; 0 over 15 lifts a minute. [-]

    References
    ----------
    NIOSH publication 94-110, 1994.

    Examples
    --------
    >>> frequency_multiplier(0.05, "long", 0.762), frequency_multiplier(9, "long", 0.5)
    (0.85, 0.0)
    >>> round(frequency_multiplier(1.5, "short", 0.762), 3)
    0.925
    """
    require_finite("Lifts a minute", lifts)
    band = "low" if is_low(require_finite("Height of the hands", origin)) else "high"
    column = _frequencies()[f"{require_word('Duration', duration, DURATIONS)}_{band}"]
    rate = max(lifts, SELDOM)
    for (slow, much), (fast, less) in pairwise(column):
        if rate <= fast:
            return much + (less - much) * (rate - slow) / (fast - slow)
    return 0.0 if exceeds(rate, column[-1][0]) else column[-1][1]


def spell(hours: float, rest: float = 0.0) -> str:
    """Which column of the frequency table a spell of lifting belongs to.

    Parameters
    ----------
    hours : float
        At it without a break. [h]
    rest : float
        Light work that follows. [h]

    Returns
    -------
    str
        ``short`` up to 1 h with as much rest, ``moderate`` up to 2 h with three tenths of it, else
        ``long``, up to 8 h.
    """
    if exceeds(require_finite("Hours of lifting", hours), 8.0):
        raise InputError(
            f"Hours of lifting is {hours:g}, but the equation reaches no farther than 8; share the"
            " work out.",
            "Hours of lifting",
            "0 to 8 h",
            hours,
        )
    if not exceeds(hours, 1.0) and not exceeds(hours, rest):
        return "short"
    return "moderate" if not exceeds(hours, 2.0) and not exceeds(0.3 * hours, rest) else "long"
