"""A flue's net area as somebody tells it: believed only where the liner has room for it."""

from __future__ import annotations

from math import pi

from fireplace_calc.geometry.bore import Bore
from fireplace_calc.rules.comparing import reaches
from fireplace_calc.rules.facts import Facts


def possible_area(told: float | None, bore: Bore, source: str | None) -> float | None:
    """The told area, or none where the liner has no room for it.

    Parameters
    ----------
    told : float or None
        [m2]
    bore : Bore
        As drawn.
    source : str or None
        Where the area comes from. A table's figure is no larger than the bore, any other no larger
        than the liner itself, wall and all.

    Returns
    -------
    float or None
        [m2]
    """
    wide, deep = bore.width + 2 * bore.wall, bore.depth + 2 * bore.wall
    most = pi * wide**2 / 4 if bore.round else wide * deep
    if source == "table":
        most = max(bore.area, bore.table_area or 0.0)
    return told if told is not None and reaches(most, told) else None


def why_unknown(facts: Facts) -> str:
    """Why the net area of the fireplace's flue is not known."""
    if facts.design.measured.flue_area is None:
        return "The net area of the flue is not known yet."
    return why_no_such_area(facts.flue_area_source)


def why_no_such_area(source: str | None) -> str:
    """Why a told flue area cannot be."""
    if source == "table":
        return "The flue area told is larger than the bore: no table says so. Look again."
    return "The flue area told is larger than the liner itself. Measure again."
