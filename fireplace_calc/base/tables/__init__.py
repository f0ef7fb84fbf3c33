"""Published figures, read once from ``data/`` into frozen rows in SI. Every row keeps its source
and confidence.
"""

from __future__ import annotations

import csv
from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import TypeVar

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import PCF, PSF, InputError


@dataclass(frozen=True, slots=True)
class Source:
    """The publication a figure comes from, in words, and how well it is known."""

    text: str
    confidence: str


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


Entry = TypeVar("Entry")
"""What a table holds."""
Key = TypeVar("Key", bound=Hashable)
"""What it is found by."""


def pick(table: Mapping[Key, Entry], key: Key, what: str) -> Entry:
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
def densities() -> dict[str, tuple[float, Source]]:
    """Density of each material as laid, and its source.

    Returns
    -------
    dict of tuple
        Density [kg/m3] and source, by material.
    """
    return {
        r["material"]: (float(r["density_pcf"]) * PCF, source_of(r)) for r in rows("densities.csv")
    }


@lru_cache(maxsize=64)
def density(material: str) -> float:
    """Density of a material as laid.

    Parameters
    ----------
    material : str
        One of the table.

    Returns
    -------
    float
        Joints counted in. [kg/m3]

    Raises
    ------
    InputError
        When the table has no such material.

    Examples
    --------
    >>> round(density("concrete"))
    2403
    """
    return pick(densities(), material, "Material")[0]


@lru_cache(maxsize=1)
def soil_bearing() -> dict[str, tuple[float, Source]]:
    """Presumptive bearing pressure of each soil class.

    Returns
    -------
    dict of tuple
        Pressure [Pa] and source, by soil class.
    """
    return {
        r["soil"]: (float(r["bearing_psf"]) * PSF, source_of(r)) for r in rows("soil_bearing.csv")
    }


@lru_cache(maxsize=1)
def crickets() -> tuple[tuple[float, float], ...]:
    """How high a cricket is built behind a chimney, as tabulated.

    Returns
    -------
    tuple of tuple
        Roof pitch, rise over run [-], and cricket height over chimney width [-].
    """
    return tuple(
        (float(r["roof_rise_per_12"]) / 12, float(r["height_over_width"]))
        for r in rows("crickets.csv")
    )


@lru_cache(maxsize=1)
def rule_sources() -> dict[str, RuleSource]:
    """Section, editions, source and confidence of every clause of every book."""
    books = (
        "us_irc_sources.csv",
        "canada_sources.csv",
        "uk_sources.csv",
        "other_codes_sources.csv",
        "practice_sources.csv",
    )
    return {
        r["id"]: RuleSource(r["id"], r["section"], r["edition"], source_of(r))
        for book in books
        for r in rows(book)
    }
