"""Mortar: how long a batch is good, how much is mixed at a time, and what heat and frost ask.

Two temperatures, never mixed up: the air now decides how one works; the mean of the day decides how
the work is protected.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import ceil

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tables.mortars import mortar_figures
from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import InputError

MPH = 1609.344 / 3600
"""One mile an hour. [m/s]"""


@dataclass(frozen=True, slots=True)
class Weather:
    """One band of the weather table.

    Attributes
    ----------
    case, do : str
        Its name, and what is done.
    source, confidence : str
        Where that is from.
    """

    case: str
    do: str
    source: str
    confidence: str


@lru_cache(maxsize=1)
def _bands() -> dict[str, dict[str, str]]:
    return {r["case"]: r for r in rows("mortar_weather.csv")}


def fahrenheit(kelvin: float) -> float:
    """Temperature in the unit of the tables.

    Parameters
    ----------
    kelvin : float
        Temperature. [K]

    Returns
    -------
    float
        The same. [degF]

    Raises
    ------
    InputError
        Outside 150 to 400 K, where the unit must be wrong.
    """
    if not 150 < kelvin < 400:
        raise InputError(
            f"Temperature is {kelvin:g} K, but 150 to 400 K is allowed; mind the unit.",
            "Temperature",
            "150 to 400 K",
            kelvin,
        )
    return (kelvin - 273.15) * 1.8 + 32


def is_hot(air: float, wind: float = 0.0) -> bool:
    """Whether the rules for heat apply.

    Parameters
    ----------
    air : float
        Temperature. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    bool
        Over 100 F, or over 90 F in wind over 8 mph.
    """
    f, warm = mortar_figures(), fahrenheit(air)
    windy = wind > f["hot wind"] * MPH * (1 + COUNT_SLACK)
    return warm > f["hot from"] + COUNT_SLACK or (
        windy and warm > f["hot in wind from"] + COUNT_SLACK
    )


def weather_band(air: float, wind: float = 0.0) -> str:
    """Which row of the weather table a temperature falls into.

    Parameters
    ----------
    air : float
        Temperature. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    str
        ``hot``, ``mild``, ``cold``, ``freezing``, ``hard frost`` or ``deep frost``.
    """
    if is_hot(air, wind):
        return "hot"
    warm = fahrenheit(air)
    for name, row in _bands().items():
        if row["from_f"]:
            start = float(row["from_f"])
            if (
                warm >= start - COUNT_SLACK
                if row["from_included"] == "yes"
                else warm > start + COUNT_SLACK
            ):
                return name
    return "deep frost"


def work_rule(air: float, wind: float = 0.0) -> Weather:
    """What is done while laying, by the air as it is now.

    Parameters
    ----------
    air : float
        Temperature at the wall. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    Weather
        Of that band.
    """
    row = _bands()[weather_band(air, wind)]
    return Weather(row["case"], row["while_working"], row["source"], row["confidence"])


def protection(mean: float, wind: float = 0.0) -> Weather:
    """How new work is protected, by the mean temperature of the day.

    Parameters
    ----------
    mean : float
        Half of the day's highest and lowest. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    Weather
        Of that band.
    """
    row = _bands()[weather_band(mean, wind)]
    return Weather(row["case"], row["afterwards"], row["source"], row["confidence"])


def open_time(air: float, wind: float = 0.0) -> float:
    """How long a batch may be used, from first mixing.

    Parameters
    ----------
    air : float
        Temperature at the wall. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    float
        2-1/2, or 2 in heat. [h]
    """
    return mortar_figures()["open time in heat" if is_hot(air, wind) else "open time"]


def batches(volume: float, hours: float, air: float, wind: float = 0.0) -> tuple[int, float]:
    """Fewest equal batches that are all laid within their open time.

    Parameters
    ----------
    volume : float
        Mortar of the work. [m3]
    hours : float
        It is laid in. [h]
    air : float
        Temperature at the wall. [K]
    wind : float
        Speed at the wall. [m/s]

    Returns
    -------
    tuple of int and float
        How many [-], and the size of each [m3].
    """
    if volume <= 0:
        return 0, 0.0
    number = max(ceil(hours / open_time(air, wind) - COUNT_SLACK), 1)
    return number, volume / number
