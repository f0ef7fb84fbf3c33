"""Where the sun stands by month and hour, and how strong it shines, as the window of the room sees
it.

Hours are those of a sundial: the sun is highest at 12. The window looks to the equator, because no
input tells where it looks.
"""

from __future__ import annotations

from math import asin, cos, degrees, pi, radians, sin
from typing import Any

from fireplace_calc.design.records import Design

UNKNOWN = radians(45)
"""Latitude where nobody has told it. [rad]"""
DAYS = (21, 52, 80, 111, 141, 172, 202, 233, 264, 294, 325, 355)
"""The 21st of each month, counted from the first of January. [-]"""
HALF_HOURS = 49
"""From midnight to midnight."""
SOLAR_CONSTANT = 1353.0
"""As it stands in the formula of ``beam``. [W/m2]"""
LOW = radians(0.2)
"""A sun lower than this gives no beam. [rad]"""
MORNING, AFTERNOON = 10.5, 13.5
"""When the sun comes in past whoever looks at the fire, north and south of the equator. [h]"""


def declination(day: float) -> float:
    """How far north of the equator the sun stands overhead.

    Parameters
    ----------
    day : float
        Counted from the first of January, which is 1. [-]

    Returns
    -------
    float
        By Spencer's series (1971) for whole days of a mean year: within 0.6 degrees. [rad]
    """
    turn = 2 * pi * (day - 1) / 365
    return (
        0.006918
        - 0.399912 * cos(turn)
        + 0.070257 * sin(turn)
        - 0.006758 * cos(2 * turn)
        + 0.000907 * sin(2 * turn)
        - 0.002697 * cos(3 * turn)
        + 0.00148 * sin(3 * turn)
    )


def sun_stands(latitude: float, day: float, hour: float) -> tuple[float, float, float]:
    """The way to the sun.

    Parameters
    ----------
    latitude : float
        North is positive. [rad]
    day : float
        Counted from the first of January, which is 1. [-]
    hour : float
        Of a sundial, 12 at noon. [h]

    Returns
    -------
    tuple of float
        East, north and up, together of length one; the last is negative by night. [-]
    """
    high, turned = declination(day), radians(15 * (hour - 12))
    east = -cos(high) * sin(turned)
    north = sin(high) * cos(latitude) - cos(high) * sin(latitude) * cos(turned)
    up = sin(high) * sin(latitude) + cos(high) * cos(latitude) * cos(turned)
    return east, north, up


def air_mass(altitude: float) -> float:
    """Air that the sun shines through, against a sun overhead, by Kasten and Young (1989).

    Parameters
    ----------
    altitude : float
        Of the sun over the horizon, not negative. [rad]

    Returns
    -------
    float
        From 1 to 38. [-]
    """
    degree = degrees(altitude)
    return float(1 / (sin(altitude) + 0.50572 * (degree + 6.07995) ** -1.6364))


def beam(altitude: float) -> float:
    """Strength of the sun under a clear sky on a surface that looks at it, by Meinel (1976).

    Parameters
    ----------
    altitude : float
        Of the sun over the horizon. [rad]

    Returns
    -------
    float
        Nought where the sun has set. [W/m2]
    """
    if altitude < LOW:
        return 0.0
    return SOLAR_CONSTANT * float(0.7 ** (air_mass(altitude) ** 0.678))


def sun_table(design: Design) -> dict[str, Any]:
    """What the page is sent of the sun.

    Parameters
    ----------
    design : Design
        Its latitude, where it is known.

    Returns
    -------
    dict
        ``latitude`` [deg], ``told`` (whether it is the design's own), ``month`` (from 0) and
        ``hour`` of the light called Day, ``ways``: of the 21st of twelve months, every half hour
        from 0 to 24, the way to the sun in the room and its strength, float32. [-, kW/m2]
    """
    import numpy as np

    told = design.site.latitude
    latitude = UNKNOWN if told is None else told
    south = latitude < 0
    rows = []
    for day in DAYS:
        for half in range(HALF_HOURS):
            east, north, up = sun_stands(latitude, day, half / 2)
            strong = beam(asin(max(-1.0, min(1.0, up)))) / 1000
            # The left wall looks to the equator: whoever looks at the fire has the evening before
            # him in the north, the morning in the south.
            rows.append((-north, east, up, strong) if south else (north, -east, up, strong))
    return {
        "latitude": round(degrees(latitude), 4),
        "told": told is not None,
        "month": 4 if south else 10,
        "hour": AFTERNOON if south else MORNING,
        "ways": np.array(rows, "<f4").tobytes(),
    }
