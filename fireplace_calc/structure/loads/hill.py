"""Wind that runs up a hill is faster at its crest: ASCE 7's Kzt."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import exp

from fireplace_calc.base.tables import Source, pick, rows, source_of
from fireplace_calc.design.loads import Loads
from fireplace_calc.structure.figures import figure


@dataclass(frozen=True, slots=True)
class HillShape:
    """How wind behaves over one shape of ground in one exposure.

    Attributes
    ----------
    speed_up, decay : float
        At the crest over its slope, and how fast it is lost with height. [-]
    upwind, downwind : float
        How many times the hill's half length it reaches before and behind the crest. [-]
    source : Source
    """

    speed_up: float
    decay: float
    upwind: float
    downwind: float
    source: Source


@lru_cache(maxsize=1)
def hill_shapes() -> dict[tuple[str, str], HillShape]:
    """The whole table.

    Returns
    -------
    dict of HillShape
        By shape and exposure.
    """
    return {
        (r["shape"], r["exposure"]): HillShape(
            float(r["speed_up"]),
            float(r["decay"]),
            float(r["upwind"]),
            float(r["downwind"]),
            source_of(r),
        )
        for r in rows("structure_hills.csv")
    }


def hill_factor(
    shape: str,
    exposure: str,
    rise: float,
    half_length: float,
    distance: float,
    height: float,
    behind: bool = True,
) -> float:
    r"""Pressure of the wind over that on flat ground.

    Parameters
    ----------
    shape, exposure : str
        ``ridge``, ``escarpment`` or ``hill``; ``B``, ``C`` or ``D``.
    rise : float
        Of the hill over the ground before it. [m]
    half_length : float
        Level, from the crest to where the ground is half as high, on the side the wind comes from.
        [m]
    distance : float
        Level, from the crest to the chimney. [m]
    height : float
        Over the ground at the chimney. [m]
    behind : bool
        Beyond the crest as the wind blows.

    Returns
    -------
    float
        At least one. [-]

    Raises
    ------
    InputError
        When the table does not hold the shape or the exposure.

    Notes
    -----
    .. math:: K_{zt} = (1 + K_1 K_2 K_3)^2

    Nothing below a slope of a fifth; steeper than a half counts as a half, the length then as twice
    the height. What the standard asks besides, such as a least height of the hill, is not asked:
    the safe side.

    References
    ----------
    ASCE 7-16, 26.8.

    Examples
    --------
    >>> round(hill_factor("ridge", "C", 30.0, 60.0, 0.0, 0.0), 3)
    2.976
    """
    made = pick(hill_shapes(), (shape, exposure), "Ground")
    slope = rise / half_length
    if slope < figure("hill slope, least"):
        return 1.0
    slope = min(slope, figure("hill slope, most"))
    half_length = rise / slope
    reach = (made.downwind if behind else made.upwind) * half_length
    fading = max(1 - abs(distance) / reach, 0.0)
    return (1 + made.speed_up * slope * fading * exp(-made.decay * height / half_length)) ** 2


HILL_INPUTS = ("loads.hill_height", "loads.hill_length", "loads.hill_distance")


def hill_known(loads: Loads) -> bool:
    """Whether the ground is flat, or all of the hill is told."""
    return loads.hill == "flat" or None not in (
        loads.hill_height,
        loads.hill_length,
        loads.hill_distance,
    )


def hill_at(loads: Loads, height: float) -> float:
    """Factor of the ground a design stands on, at a height over it.

    Parameters
    ----------
    loads : Loads
        Its ground, with the exposure.
    height : float
        Over the ground. [m]

    Returns
    -------
    float
        One on flat ground, and where the hill is not all told. An escarpment's chimney is taken
        behind the crest unless told otherwise: there the wind stays strong for longer. [-]
    """
    rise, long, away = loads.hill_height, loads.hill_length, loads.hill_distance
    if loads.hill == "flat" or loads.exposure is None:
        return 1.0
    if rise is None or long is None or away is None:
        return 1.0
    behind = loads.hill_behind is not False
    return hill_factor(loads.hill, loads.exposure, rise, long, away, max(height, 0.0), behind)
