"""Canada's tables of round and rectangular flues."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, rows, source_of


@dataclass(frozen=True, slots=True)
class RoundFlueCell:
    """One cell of Canada's round-flue table.

    Attributes
    ----------
    opening_low, opening_high : float
        Area of the opening, from over the first to the second. [m2]
    height_low, height_high : float
        Height of the chimney. [m]
    flue_low, flue_high : float or None
        Least and greatest inside diameter; ``None`` is a dash in print. [m]
    source : Source
    """

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

    def meters(text: str) -> float | None:
        return float(text) / 1000 if text else None

    return tuple(
        RoundFlueCell(
            float(r["opening_min_m2"]),
            float(r["opening_max_m2"]),
            float(r["height_min_m"]),
            float(r["height_max_m"]),
            meters(r["flue_min_mm"]),
            meters(r["flue_max_mm"]),
            source_of(r),
        )
        for r in rows("canada_round_flues.csv")
    )


@lru_cache(maxsize=1)
def canada_rectangular_flues() -> tuple[
    tuple[RoundFlueCell, tuple[float, float] | None, tuple[float, float] | None], ...
]:
    """Canada's rectangular table, every cell, row by row.

    Returns
    -------
    tuple of tuple
        The cell's bands; then the least and the greatest flue, width and depth as printed, whether
        inside or nominal was not read [m]; ``None`` is a dash in print.
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
