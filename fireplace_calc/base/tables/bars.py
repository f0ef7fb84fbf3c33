"""Reinforcing bars by the trade's numbers."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of
from fireplace_calc.base.units import INCH, SQIN


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar: nominal ``diameter`` [m] and ``area`` [m2]; and its source."""

    diameter: float
    area: float
    source: Source


@lru_cache(maxsize=1)
def reinforcing_bars() -> dict[str, Bar]:
    """Nominal sizes by name.

    Returns
    -------
    dict of str to Bar

    Examples
    --------
    >>> round(reinforcing_bars()["No. 4"].diameter / 0.0254, 3)  # [in]
    0.5
    """
    return {
        r["bar"]: Bar(float(r["diameter_in"]) * INCH, float(r["area_in2"]) * SQIN, source_of(r))
        for r in rows("reinforcing_bars.csv")
    }


def reinforcing_bar(name: str) -> Bar:
    """A reinforcing bar by its name.

    Parameters
    ----------
    name : str
        As ``data/reinforcing_bars.csv`` has it.

    Returns
    -------
    Bar
    """
    return pick(reinforcing_bars(), name, "Bar")
