"""The sheets for an inspector: the page to sign, and behind it formulas, draft and structure."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.checks.back_page import behind
from fireplace_calc.drawing.checks.front_page import front
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.takeoff.cost import Price

FRONT, BACK = "Inspector's page", "Formulas, draft, structure"
"""Names of its sheets."""


def plates(
    result: Assessment, units: str, paper: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """The page and its back.

    Parameters
    ----------
    result : Assessment
    units : str
    paper : Paper
    prices : dict or None
        Not used here.
    """
    return [
        *(Plate(FRONT, sheet) for sheet in front(result, units, paper)),
        *(Plate(BACK, sheet) for sheet in behind(result, units, paper)),
    ]
