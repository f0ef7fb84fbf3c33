"""Published figures of the structure, read once from ``data/structure_*.csv`` into SI. Every row
keeps its source and confidence.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, soil_bearing, source_of
from fireplace_calc.base.units import FOOT, INCH, PSF, InputError, from_unit

PSI = 144 * PSF
"""[Pa]"""


@lru_cache(maxsize=1)
def structure_figures() -> dict[str, tuple[float, Source]]:
    """Single numbers by name, in SI, with their sources."""
    return {
        r["name"]: (from_unit(float(r["value"]), r["unit"]), source_of(r))
        for r in rows("structure_figures.csv")
    }


def figure(name: str) -> float:
    """One published number, in SI.

    >>> figure("gust factor")
    0.85
    """
    return pick(structure_figures(), name, "Figure")[0]


def source(name: str) -> Source:
    """Where one published number comes from."""
    return pick(structure_figures(), name, "Figure")[1]


@dataclass(frozen=True, slots=True)
class Terrain:
    """How wind grows with height over one kind of ground; ``gradient`` and ``lowest`` are heights.
    [m]
    """

    coefficient: float
    alpha: float
    gradient: float
    lowest: float
    source: Source


@lru_cache(maxsize=1)
def terrains() -> dict[tuple[str, str], Terrain]:
    """Constants by edition of ASCE 7 and exposure."""
    return {
        (r["edition"], r["exposure"]): Terrain(
            float(r["coefficient"]),
            float(r["alpha"]),
            float(r["gradient_height_ft"]) * FOOT,
            float(r["lowest_height_ft"]) * FOOT,
            source_of(r),
        )
        for r in rows("structure_terrain.csv")
    }


def terrain(exposure: str, edition: str = "7-16") -> Terrain:
    """Constants of one exposure.

    >>> terrain("C").alpha
    9.5
    """
    return pick(terrains(), (edition, exposure), "Exposure")


@lru_cache(maxsize=1)
def force_coefficients() -> dict[str, tuple[tuple[float, float], ...]]:
    """Pairs of height over side and force coefficient, by section. [-]"""
    return {
        r["section"]: tuple((ratio, float(r[f"at_{ratio:.0f}"])) for ratio in (1.0, 7.0, 25.0))
        for r in rows("structure_force_coefficients.csv")
    }


@lru_cache(maxsize=1)
def flexural_tensions() -> dict[tuple[str, str], tuple[float, Source]]:
    """Allowable tension square to the bed joints by units and mortar. [Pa]"""
    return {
        (r["units"], r["mortar"]): (float(r["tension_psi"]) * PSI, source_of(r))
        for r in rows("structure_flexural_tension.csv")
    }


def flexural_tension(mortar: str, units: str = "solid") -> float:
    """Allowable tension across a bed joint. [Pa]

    These are the figures of 2011 and later: the third that older codes let wind add is in them
    already.

    >>> round(flexural_tension("N") / PSI)
    40
    """
    return pick(flexural_tensions(), (units, mortar), "Mortar")[0]


@lru_cache(maxsize=1)
def ruptures() -> dict[str, tuple[float, Source]]:
    """Least modulus of rupture of each stone. [Pa]"""
    return {
        r["stone"]: (float(r["rupture_psi"]) * PSI, source_of(r))
        for r in rows("structure_stone.csv")
    }


def rupture(stone: str) -> float:
    """Least modulus of rupture of one stone. [Pa]"""
    return pick(ruptures(), stone, "Stone")[0]


@dataclass(frozen=True, slots=True)
class Span:
    """A row of the table of loose steel lintels: the angle, how many of them, and the clear spans
    it may have. [m]
    """

    angle: str
    pieces: int
    vertical: float
    horizontal: float
    thickness: float
    no_storey: float
    one_storey: float
    two_storeys: float
    source: Source


@lru_cache(maxsize=1)
def lintel_spans() -> tuple[Span, ...]:
    """The whole table, lightest angle first."""
    return tuple(
        Span(
            r["angle"],
            int(r["pieces"]),
            *(float(r[f"{side}_in"]) * INCH for side in ("vertical", "horizontal", "thickness")),
            *(
                float(r[f"{storeys}_ft"]) * FOOT
                for storeys in ("no_storey", "one_storey", "two_storeys")
            ),
            source_of(r),
        )
        for r in rows("structure_lintel_spans.csv")
    )


@lru_cache(maxsize=1)
def soils() -> dict[str, tuple[float, Source]]:
    """Presumptive bearing of every soil, and of ground that has none. [Pa]"""
    return soil_bearing() | {
        r["soil"]: (float(r["bearing_psf"]) * PSF, source_of(r))
        for r in rows("structure_soils.csv")
    }


def bearing(soil: str) -> float:
    """Presumptive bearing pressure of one soil.

    Parameters
    ----------
    soil : str
        As ``site.soil`` names it, or one of ``soils()``.

    Returns
    -------
    float
        Allowed under a footing. [Pa]

    Raises
    ------
    InputError
        For mud, peat, organic soil and unprepared fill: they have no presumptive value at all.
    """
    pressure = pick(soils(), soil, "Soil")[0]
    if pressure <= 0:
        raise InputError(
            (
                f"Soil is {soil!r}, which no table gives a bearing pressure. Have the ground "
                "tested and an engineer design the footing."
            ),
            "Soil",
            "a soil with a presumptive value",
            soil,
        )
    return pressure
