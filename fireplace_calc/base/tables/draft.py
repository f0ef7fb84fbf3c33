"""Coefficients of the draft, woods, bends, contractions, wind at the top, conductivities."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of


@dataclass(frozen=True, slots=True)
class Coefficient:
    """One published number and its range, all three in the ``unit`` of its row. [unit]"""

    value: float
    low: float | None
    high: float | None
    unit: str
    source: Source


@lru_cache(maxsize=1)
def coefficients() -> dict[str, Coefficient]:
    """Published numbers of the draft, by name."""

    def number(text: str) -> float | None:
        return float(text) if text else None

    return {
        r["name"]: Coefficient(
            float(r["value"]), number(r["low"]), number(r["high"]), r["unit"], source_of(r)
        )
        for r in rows("draft_coefficients.csv")
    }


def coefficient(name: str) -> float:
    """One published number.

    Parameters
    ----------
    name : str
        One of the table.

    Returns
    -------
    float
        In the unit of its row. [unit]

    Raises
    ------
    InputError
        When the table has no such number.

    Examples
    --------
    >>> coefficient("depressurisation limit")
    5.0
    """
    return pick(coefficients(), name, "Coefficient").value


@dataclass(frozen=True, slots=True)
class WoodAnalysis:
    """Dry wood by mass shares. [-]"""

    carbon: float
    hydrogen: float
    oxygen: float
    nitrogen: float
    ash: float
    source: Source


@lru_cache(maxsize=1)
def _woods() -> dict[str, WoodAnalysis]:
    return {
        r["wood"]: WoodAnalysis(
            float(r["carbon"]),
            float(r["hydrogen"]),
            float(r["oxygen"]),
            float(r["nitrogen"]),
            float(r["ash"]),
            source_of(r),
        )
        for r in rows("wood_analysis.csv")
    }


def wood_analysis(wood: str) -> WoodAnalysis:
    """Analysis of ``hardwood`` or ``softwood``."""
    return pick(_woods(), wood, "Wood")


@lru_cache(maxsize=1)
def bends() -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Loss of mitred bends, as tabulated.

    Returns
    -------
    tuple of tuple
        Angles [rad], and the loss at each [-].
    """
    made = rows("mitred_bends.csv")
    return tuple(math.radians(float(r["angle_deg"])) for r in made), tuple(
        float(r["loss"]) for r in made
    )


@lru_cache(maxsize=1)
def contractions() -> dict[float, tuple[tuple[float, ...], tuple[float, ...]]]:
    """Loss of a converging piece, as tabulated.

    Returns
    -------
    dict of tuple
        By the ratio of its areas [-]: included angles [rad], and the loss at each [-].
    """
    made: dict[float, list[tuple[float, float]]] = {}
    for r in rows("contractions.csv"):
        made.setdefault(float(r["area_ratio"]), []).append(
            (math.radians(float(r["included_angle_deg"])), float(r["loss"]))
        )
    return {
        ratio: (tuple(angle for angle, _ in pairs), tuple(loss for _, loss in pairs))
        for ratio, pairs in made.items()
    }


@dataclass(frozen=True, slots=True)
class RoofWind:
    """Pressure coefficients of wind at a chimney top.

    Attributes
    ----------
    case : str
        Where on the roof.
    pitch_low, pitch_high : float
        Slopes it holds for. [rad]
    low, high : float
        Published range, over the wind's velocity pressure; suction is negative. [-]
    source : Source
    """

    case: str
    pitch_low: float
    pitch_high: float
    low: float
    high: float
    source: Source


@lru_cache(maxsize=1)
def roof_winds() -> tuple[RoofWind, ...]:
    """Published coefficients, by pitch."""
    return tuple(
        RoofWind(
            r["case"],
            math.radians(float(r["pitch_min_deg"])),
            math.radians(float(r["pitch_max_deg"])),
            float(r["low"]),
            float(r["high"]),
            source_of(r),
        )
        for r in rows("roof_wind.csv")
    )


@lru_cache(maxsize=1)
def conductivities() -> dict[str, tuple[float, Source]]:
    """Thermal conductivity of each material, and its source.

    Returns
    -------
    dict of tuple
        Conductivity [W/(m K)] and source, by material.
    """
    return {
        r["material"]: (float(r["conductivity_w_mk"]), source_of(r))
        for r in rows("conductivities.csv")
    }


@lru_cache(maxsize=1)
def heat_capacities() -> dict[str, tuple[float, Source]]:
    """Heat capacity of each material, and its source.

    Returns
    -------
    dict of tuple
        Heat capacity [J/(kg K)] and source, by material.
    """
    return {
        r["material"]: (float(r["heat_capacity_j_kgk"]), source_of(r))
        for r in rows("heat_capacities.csv")
    }
