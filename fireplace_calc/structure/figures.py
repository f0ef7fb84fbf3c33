"""Published figures of the structure, read once from ``data/structure_*.csv`` into SI. Every row
keeps its source and confidence.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of
from fireplace_calc.base.units import FOOT, PSF, from_unit

PSI = 144 * PSF
"""One pound to the square inch. [Pa]"""


@lru_cache(maxsize=1)
def structure_figures() -> dict[str, tuple[float, Source]]:
    """Single numbers by name, with their sources.

    Returns
    -------
    dict of tuple
        In the SI unit of the row [SI], and its source.
    """
    return {
        r["name"]: (from_unit(float(r["value"]), r["unit"]), source_of(r))
        for r in rows("structure_figures.csv")
    }


def figure(name: str) -> float:
    """One published number.

    Parameters
    ----------
    name : str
        As ``data/structure_figures.csv`` has it.

    Returns
    -------
    float
        In the SI unit of its row. [SI]

    Raises
    ------
    InputError
        When there is none of that name.

    Examples
    --------
    >>> figure("gust factor")
    0.85
    """
    return pick(structure_figures(), name, "Figure")[0]


def source(name: str) -> Source:
    """Where one published number comes from.

    Parameters
    ----------
    name : str
        As ``data/structure_figures.csv`` has it.

    Returns
    -------
    Source
    """
    return pick(structure_figures(), name, "Figure")[1]


@dataclass(frozen=True, slots=True)
class Terrain:
    """How wind grows with height over one kind of ground.

    Attributes
    ----------
    coefficient, alpha : float
        Of the power law. [-]
    gradient, lowest : float
        Height at which the ground is felt no more, and below which the wind is taken as there. [m]
    source : Source
    """

    coefficient: float
    alpha: float
    gradient: float
    lowest: float
    source: Source


@lru_cache(maxsize=1)
def terrains() -> dict[tuple[str, str], Terrain]:
    """Constants of the wind over every kind of ground.

    Returns
    -------
    dict of Terrain
        By edition of ASCE 7 and exposure.
    """
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

    Parameters
    ----------
    exposure : str
        ``B``, ``C`` or ``D``.
    edition : str
        Of ASCE 7: ``7-16`` or ``7-22``.

    Returns
    -------
    Terrain

    Examples
    --------
    >>> terrain("C").alpha
    9.5
    """
    return pick(terrains(), (edition, exposure), "Exposure")


@lru_cache(maxsize=1)
def force_coefficients() -> dict[str, tuple[tuple[float, float], ...]]:
    """Shape of chimneys against the wind.

    Returns
    -------
    dict of tuple
        Pairs of height over side and force coefficient, by section. [-]
    """
    return {
        r["section"]: tuple((ratio, float(r[f"at_{ratio:.0f}"])) for ratio in (1.0, 7.0, 25.0))
        for r in rows("structure_force_coefficients.csv")
    }
