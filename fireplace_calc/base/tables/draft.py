"""Coefficients of the draft, woods, bends, contractions, wind at the top, conductivities."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of


@dataclass(frozen=True, slots=True)
class Coefficient:
    """One published number with its range, in the unit of its row."""

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
    """One published number, in the unit of its row.

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
    """Angle [rad] and loss [-] of mitred bends, as tabulated."""
    made = rows("mitred_bends.csv")
    return tuple(math.radians(float(r["angle_deg"])) for r in made), tuple(
        float(r["loss"]) for r in made
    )


@lru_cache(maxsize=1)
def contractions() -> dict[float, tuple[tuple[float, ...], tuple[float, ...]]]:
    """Loss of a converging piece [-] by included angle [rad], for each ratio of areas [-]."""
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
    """Pressure coefficient over a roof. [-]; pitches in rad."""

    case: str
    pitch_low: float
    pitch_high: float
    coefficient: float
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
            float(r["coefficient"]),
            float(r["low"]),
            float(r["high"]),
            source_of(r),
        )
        for r in rows("roof_wind.csv")
    )


@lru_cache(maxsize=1)
def conductivities() -> dict[str, tuple[float, Source]]:
    """Thermal conductivity of each material and its source. [W/(m K)]"""
    return {
        r["material"]: (float(r["conductivity_w_mk"]), source_of(r))
        for r in rows("conductivities.csv")
    }
