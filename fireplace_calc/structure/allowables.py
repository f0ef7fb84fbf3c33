"""What masonry, stone, lintels and the ground may take by published tables, read once from
``data/structure_*.csv`` into SI.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, soil_bearing, source_of
from fireplace_calc.base.units import FOOT, INCH, PSF, InputError
from fireplace_calc.structure.figures import PSI


@lru_cache(maxsize=1)
def flexural_tensions() -> dict[tuple[str, str], tuple[float, Source]]:
    """Allowable tension square to the bed joints.

    Returns
    -------
    dict of tuple
        Tension [Pa] and source, by units and mortar.
    """
    return {
        (r["units"], r["mortar"]): (float(r["tension_psi"]) * PSI, source_of(r))
        for r in rows("structure_flexural_tension.csv")
    }


def flexural_tension(mortar: str, units: str = "solid") -> float:
    """Allowable tension across a bed joint.

    Parameters
    ----------
    mortar, units : str
        As ``data/structure_flexural_tension.csv`` has them.

    Returns
    -------
    float
        Tension. [Pa]

    Notes
    -----
    Figures of 2011 and later: the third that older codes let wind add is in them already.

    Examples
    --------
    >>> round(flexural_tension("N") / PSI)
    40
    """
    return pick(flexural_tensions(), (units, mortar), "Mortar")[0]


@lru_cache(maxsize=1)
def ruptures() -> dict[str, tuple[float, Source]]:
    """Least modulus of rupture of each stone.

    Returns
    -------
    dict of tuple
        Modulus [Pa] and source, by stone.
    """
    return {
        r["stone"]: (float(r["rupture_psi"]) * PSI, source_of(r))
        for r in rows("structure_stone.csv")
    }


def rupture(stone: str) -> float:
    """Least modulus of rupture of one stone.

    Parameters
    ----------
    stone : str
        As ``data/structure_stone.csv`` has it.

    Returns
    -------
    float
        Modulus of rupture. [Pa]
    """
    return pick(ruptures(), stone, "Stone")[0]


@dataclass(frozen=True, slots=True)
class LintelSpan:
    """A row of the table of loose steel lintels.

    Attributes
    ----------
    angle : str
        As the table names it.
    pieces : int
        Angles side by side. [-]
    vertical, horizontal, thickness : float
        Legs of the angle, and their thickness. [m]
    no_storey, one_storey, two_storeys : float
        Clear span it may have under so many. [m]
    source : Source
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
def lintel_spans() -> tuple[LintelSpan, ...]:
    """The whole table of loose steel lintels.

    Returns
    -------
    tuple of LintelSpan
        Lightest angle first.
    """
    return tuple(
        LintelSpan(
            r["angle"],
            int(r["pieces"]),
            float(r["vertical_in"]) * INCH,
            float(r["horizontal_in"]) * INCH,
            float(r["thickness_in"]) * INCH,
            float(r["no_storey_ft"]) * FOOT,
            float(r["one_storey_ft"]) * FOOT,
            float(r["two_storeys_ft"]) * FOOT,
            source_of(r),
        )
        for r in rows("structure_lintel_spans.csv")
    )


@lru_cache(maxsize=1)
def soils() -> dict[str, tuple[float, Source]]:
    """Presumptive bearing of every soil, and of ground that has none.

    Returns
    -------
    dict of tuple
        Pressure [Pa] and source, by soil.
    """
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
