"""What the live picture shows: which view, with which clearances marked."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from fireplace_calc.base.units import from_unit
from fireplace_calc.drawing.composed.compose import views
from fireplace_calc.drawing.roof.roof_marks import Limits
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.rules import Finding

CLEARANCES = {"ROF-01": "contact", "ROF-02": "reach"}
"""Rules whose limit the roof view draws, and the height it belongs to."""


def roof_limits(findings: Iterable[Finding]) -> Limits:
    """What the checks ask of the two heights over the roof, and how they stand. [m]"""
    return {
        CLEARANCES[f.key]: (
            from_unit(f.required, f.unit) if isinstance(f.required, float) else None,
            f.verdict,
        )
        for f in findings
        if f.key in CLEARANCES
    }


def live_views(
    view: str,
    geometry: Geometry,
    units: str,
    findings: Iterable[Finding],
    shown: Collection[str] = (),
) -> Iterator[tuple[Cell, Sheet]]:
    """All four views, or one of them large, with the roof clearances as the checks found them.

    The view ``room`` takes the names of the proportion guides that are switched on
    (``proportion.NAMES``).
    """
    return views(view, geometry, units, roof_limits(findings), shown)
