"""Clay flue liners: sizes, walls and net areas as the tables print them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of
from fireplace_calc.base.units import INCH, SQIN


@dataclass(frozen=True, slots=True)
class RoundLiner:
    """Clay liner known by its inside diameter: ``inside`` and ``wall`` [m], ``net_area`` [m2]."""

    size: str
    inside: float
    wall: float
    net_area: float
    source: Source


@dataclass(frozen=True, slots=True)
class RectangularLiner:
    """Clay liner known by its outside size: ``outside_a``, ``outside_b`` and ``wall`` [m],
    ``net_area`` [m2].
    """

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


def _normalized(size: str) -> str:
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
    return pick(round_liners(), _normalized(size), "Flue size")


def rectangular_liner(size: str) -> RectangularLiner:
    """One rectangular liner, by outside size such as ``"13x18"``; the order of the sides does not
    matter.

    >>> rectangular_liner("18 x 13").size
    '13x18'
    """
    key = _normalized(size)
    table = rectangular_liners()
    swapped = "x".join(reversed(key.split("x")))
    return pick(table, swapped if key not in table and swapped in table else key, "Flue size")
