"""The sheet of details."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.details.chamber_detail import chamber_figure
from fireplace_calc.drawing.details.crown_detail import crown_figure
from fireplace_calc.drawing.details.flashing_detail import flashing_figure
from fireplace_calc.drawing.details.framing_detail import framing_figure, mantel_figure
from fireplace_calc.drawing.details.hearth_detail import hearth_figure
from fireplace_calc.drawing.details.lintel_detail import lintel_figure
from fireplace_calc.drawing.plates.figure import Figure, Plate
from fireplace_calc.drawing.plates.fill_sheets import filled
from fireplace_calc.drawing.plates.hatch_key import legend
from fireplace_calc.drawing.plates.sizes import SCALES, Paper
from fireplace_calc.takeoff.cost import Price

DETAILS = {FEET_INCHES: (4.0, 8.0, 12.0, 16.0, 24.0), "millimetres": (5.0, 10.0, 20.0, 25.0)}
"""Denominators that details may be drawn at, the largest scale first. [-]"""
LEAST = 20.0
"""Denominator beyond which a detail is no detail. [-]"""
NAME = "Details"
USUAL = (
    "Usual: common practice, no size of this design. Settle it before the work.",
    "Not told: the design says nothing; ask.",
)


def figures(result: Assessment, units: str) -> list[Figure]:
    """Every detail, in reading order.

    Parameters
    ----------
    result : Assessment
    units : str
    """
    scales = DETAILS[units]
    makers = (
        lintel_figure,
        chamber_figure,
        crown_figure,
        hearth_figure,
        framing_figure,
        flashing_figure,
        mantel_figure,
    )
    made = [make(result, units, scales) for make in makers]
    return [figure for figure in made if figure is not None]


def plates(
    result: Assessment, units: str, on: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """The sheets of details.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    prices : dict or None
        Not read.
    """
    made = filled(NAME, figures(result, units), on, SCALES[units], least=LEAST)
    for plate in made:
        legend(plate.sheet, on.strip, USUAL)
    return made
