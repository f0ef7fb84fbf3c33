"""Published figures, read once from ``data/`` into frozen rows in SI. Every row keeps its source
and confidence.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Hashable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from fireplace_calc.base.units import INCH, PCF, PSF, SQIN, InputError

DATA = Path(__file__).resolve().parents[2] / "data"
"""The project's data folder, beside the package."""


@dataclass(frozen=True, slots=True)
class Source:
    """The publication a figure comes from, in words, and how well it is known."""

    text: str
    confidence: str


@dataclass(frozen=True, slots=True)
class RoundLiner:
    """Clay liner known by its inside diameter. [m, m2]"""

    size: str
    inside: float
    wall: float
    net_area: float
    source: Source


@dataclass(frozen=True, slots=True)
class RectangularLiner:
    """Clay liner known by its outside size; ``inside`` follows from the wall. [m, m2]"""

    size: str
    outside_a: float
    outside_b: float
    wall: float
    net_area: float
    source: Source

    @property
    def inside_a(self) -> float:
        """First inside dimension. [m]"""
        return self.outside_a - 2 * self.wall

    @property
    def inside_b(self) -> float:
        """Second inside dimension. [m]"""
        return self.outside_b - 2 * self.wall


@dataclass(frozen=True, slots=True)
class RuleSource:
    """Section, editions, publication and confidence of one code row."""

    key: str
    section: str
    editions: str
    source: Source

    @property
    def citation(self) -> str:
        """Book, publisher, clause and editions, as a reader looks them up on paper."""
        where = f"{self.source.text}, {self.section}"
        return f"{where}; {self.editions}" if self.editions else where


def rows(name: str | Path) -> list[dict[str, str]]:
    """Rows of one data file as they stand, by column name."""
    with (DATA / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def source_of(row: dict[str, str]) -> Source:
    """Source and confidence of one row."""
    return Source(row["source"], row["confidence"])


def pick(table: dict, key: Hashable, what: str):
    """What a table holds under a key, or a sentence that says what it does hold."""
    try:
        return table[key]
    except KeyError:
        known = ", ".join(map(str, table))
        other = "; for another use its own size" if what == "Flue size" else ""
        raise InputError(
            f"{what} is {key!r}, but the table holds only {known}{other}.", what, known, key
        ) from None


@lru_cache(maxsize=1)
def round_liners() -> dict[str, RoundLiner]:
    """Round clay liners by inside diameter in inches."""
    return {
        r["size"]: RoundLiner(
            r["size"],
            float(r["inside_diameter_in"]) * INCH,
            float(r["wall_in"]) * INCH,
            float(r["net_area_in2"]) * SQIN,
            source_of(r),
        )
        for r in rows("round_liners.csv")
    }


@lru_cache(maxsize=1)
def rectangular_liners() -> dict[str, RectangularLiner]:
    """Rectangular clay liners by outside size in inches, short side first."""
    return {
        r["size"]: RectangularLiner(
            r["size"],
            float(r["outside_a_in"]) * INCH,
            float(r["outside_b_in"]) * INCH,
            float(r["wall_in"]) * INCH,
            float(r["net_area_in2"]) * SQIN,
            source_of(r),
        )
        for r in rows("rectangular_liners.csv")
    }


def _tidy(size: str) -> str:
    return (
        size.lower()
        .replace("×", "x")
        .replace("in", "")
        .replace('"', "")
        .replace(" ", "")
        .replace("by", "x")
    )


def round_liner(size: str) -> RoundLiner:
    """One round liner, by inside diameter such as ``"12"``.

    >>> round(round_liner("12").net_area / SQIN)
    113
    """
    return pick(round_liners(), _tidy(size), "Flue size")


def rectangular_liner(size: str) -> RectangularLiner:
    """One rectangular liner, by outside size such as ``"13x18"``; the order of the sides does not
    matter.

    >>> rectangular_liner("18 x 13").size
    '13x18'
    """
    key = _tidy(size)
    table = rectangular_liners()
    swapped = "x".join(reversed(key.split("x")))
    return pick(table, swapped if key not in table and swapped in table else key, "Flue size")


@lru_cache(maxsize=1)
def densities() -> dict[str, tuple[float, Source]]:
    """Density of each material and its source. [kg/m3]"""
    return {
        r["material"]: (float(r["density_pcf"]) * PCF, source_of(r)) for r in rows("densities.csv")
    }


def density(material: str) -> float:
    """Density of a material as laid. [kg/m3]

    >>> round(density("concrete"))
    2403
    """
    return pick(densities(), material, "Material")[0]


@lru_cache(maxsize=1)
def soil_bearing() -> dict[str, tuple[float, Source]]:
    """Presumptive bearing pressure of each soil class. [Pa]"""
    return {
        r["soil"]: (float(r["bearing_psf"]) * PSF, source_of(r)) for r in rows("soil_bearing.csv")
    }


@lru_cache(maxsize=1)
def crickets() -> tuple[tuple[float, float], ...]:
    """Roof pitch [-] and cricket height over chimney width [-], as tabulated."""
    return tuple(
        (float(r["roof_rise_per_12"]) / 12, float(r["height_over_width"]))
        for r in rows("crickets.csv")
    )


@lru_cache(maxsize=1)
def rule_sources() -> dict[str, RuleSource]:
    """Section, editions, source and confidence of every clause of every book."""
    books = ("us_irc_sources.csv", "canada_sources.csv", "uk_sources.csv", "practice_sources.csv")
    return {
        r["id"]: RuleSource(r["id"], r["section"], r["edition"], source_of(r))
        for book in books
        for r in rows(book)
    }


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
            *(float(r[name]) for name in ("carbon", "hydrogen", "oxygen", "nitrogen", "ash")),
            source_of(r),
        )
        for r in rows("wood_analysis.csv")
    }


def wood_analysis(wood: str) -> WoodAnalysis:
    """Analysis of ``hardwood`` or ``softwood``."""
    return pick(_woods(), wood, "Wood")


@dataclass(frozen=True, slots=True)
class RoundFlueCell:
    """One cell of Canada's round-flue table. [m2, m]; a diameter of ``None`` is a dash in print."""

    opening_low: float
    opening_high: float
    height_low: float
    height_high: float
    flue_low: float | None
    flue_high: float | None
    source: Source


@lru_cache(maxsize=1)
def canada_round_flues() -> tuple[RoundFlueCell, ...]:
    """Every cell, row by row."""

    def metres(text: str) -> float | None:
        return float(text) / 1000 if text else None

    return tuple(
        RoundFlueCell(
            float(r["opening_min_m2"]),
            float(r["opening_max_m2"]),
            float(r["height_min_m"]),
            float(r["height_max_m"]),
            metres(r["flue_min_mm"]),
            metres(r["flue_max_mm"]),
            source_of(r),
        )
        for r in rows("canada_round_flues.csv")
    )


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
    made: dict[float, list] = {}
    for r in rows("contractions.csv"):
        made.setdefault(float(r["area_ratio"]), []).append(
            (math.radians(float(r["included_angle_deg"])), float(r["loss"]))
        )
    return {ratio: tuple(zip(*pairs, strict=True)) for ratio, pairs in made.items()}


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


@lru_cache(maxsize=1)
def canada_rectangular_flues() -> tuple[
    tuple[RoundFlueCell, tuple[float, float] | None, tuple[float, float] | None], ...
]:
    """Canada's rectangular table as far as it was read: the cell's bands, least and largest flue.
    [m]
    """

    def pair(r: dict[str, str], end: str) -> tuple[float, float] | None:
        wide, deep = r[f"flue_{end}_width_mm"], r[f"flue_{end}_depth_mm"]
        return (float(wide) / 1000, float(deep) / 1000) if wide and deep else None

    return tuple(
        (
            RoundFlueCell(
                float(r["opening_min_m2"]),
                float(r["opening_max_m2"]),
                float(r["height_min_m"]),
                float(r["height_max_m"]),
                None,
                None,
                source_of(r),
            ),
            pair(r, "min"),
            pair(r, "max"),
        )
        for r in rows("canada_rectangular_flues.csv")
    )
