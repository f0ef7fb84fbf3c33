"""The sheet of plans: footing and base, throat, roof, two flues; and the height at the roof."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import prod

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.plan_sheets.against_roof import height_figure
from fireplace_calc.drawing.plan_sheets.base_plan import base_figure
from fireplace_calc.drawing.plan_sheets.chimney_plan import two_flue_figure
from fireplace_calc.drawing.plan_sheets.roof_plan import roof_figure
from fireplace_calc.drawing.plan_sheets.throat_plan import throat_figure
from fireplace_calc.drawing.plates.figure import BETWEEN, Figure, Plate, put
from fireplace_calc.drawing.plates.fill_sheets import chosen_scales, filled, legible
from fireplace_calc.drawing.plates.hatch_key import legend, legend_fits
from fireplace_calc.drawing.plates.sizes import SCALES, Paper
from fireplace_calc.takeoff.cost import Price

PLANS = {FEET_INCHES: (12.0, 16.0, 24.0, 32.0, 48.0), "millimetres": (10.0, 20.0, 25.0, 50.0)}
HEIGHTS = {
    FEET_INCHES: (24.0, 32.0, 48.0, 64.0, 96.0, 128.0, 192.0, 384.0),
    "millimetres": (25.0, 50.0, 100.0, 200.0, 250.0, 500.0),
}
"""Denominators that plans and the whole height may be drawn at, the largest scale first. [-]"""


LARGE = frozenset({10.0, 12.0, 16.0, 20.0, 24.0, 25.0, 32.0})
"""Denominators at which plans are easily read. [-]"""
LEAST = 100.0
"""Denominator beyond which nothing is drawn that fits a sheet otherwise. [-]"""
NAME = "Plans, against the roof"


def figures(result: Assessment, units: str) -> list[Figure]:
    """Every figure of these sheets, in reading order; the last one is the whole height.

    Parameters
    ----------
    result : Assessment
    units : str
    """
    geometry, scales = result.geometry, PLANS[units]
    made = [
        base_figure(geometry, units, scales),
        throat_figure(geometry, units, scales),
        two_flue_figure(geometry, units, scales),
        roof_figure(geometry, units, scales),
        height_figure(geometry, units, HEIGHTS[units], roof_limits(result.findings)),
    ]
    return [figure for figure in made if figure is not None]


def plates(
    result: Assessment, units: str, on: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """The sheets of plans.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    prices : dict or None
        Not read.
    """
    *level, upright = figures(result, units)
    wide, high = on.tall.right - on.tall.left, on.tall.top - on.tall.bottom
    read = legible(upright, SCALES[units], wide, high, LEAST)
    for scales in (LARGE, PLANS[units]):
        tried = [replace(f, scales=tuple(s for s in f.scales if s in scales)) for f in level]
        if made := beside(NAME, tried, read, on, SCALES[units]):
            return [made]
    split = filled(NAME, [*level, upright], on, SCALES[units], least=LEAST)
    for plate in split:
        legend(plate.sheet, on.strip)
    return split


def beside(
    name: str, figures: list[Figure], tall: Figure, on: Paper, scales: dict[float, str]
) -> Plate | None:
    """One sheet with a tall figure at its left, all of them together as large as goes, and the
    legend beside its foot.

    Parameters
    ----------
    name : str
    figures : list of Figure
        At the right.
    tall : Figure
    on : Paper
    scales : dict
        Of the unit system.

    Returns
    -------
    Plate or None
        Nothing where one sheet does not hold them.
    """
    field, whole = on.field, on.tall
    found: list[tuple[float, float, float, float]] = []
    for denominator in tall.scales:
        wide, high = tall.size(denominator, scales[denominator])
        room = field.right - field.left - wide - 2 * BETWEEN, field.top - field.bottom
        if high > whole.top - whole.bottom or wide > whole.right - whole.left or room[0] <= 0:
            continue
        if (told := chosen_scales(figures, scales, *room)) is not None:
            found.append((denominator * prod(told), denominator, wide, high))
    for _, denominator, wide, high in sorted(found):  # the largest scales, all taken together
        right = replace(field, left=field.left + wide + 2 * BETWEEN)
        (plate,) = filled(name, figures, on, scales, right)
        corner = (field.left, whole.bottom + (whole.top - whole.bottom - high) / 2)
        put(plate.sheet, corner, tall, denominator, scales[denominator])
        foot = replace(on.strip, left=field.left + wide + BETWEEN)
        if legend_fits(plate.sheet, foot):
            legend(plate.sheet, foot)
            return Plate(name, plate.sheet, "as shown", None, [*plate.figures, tall.key])
    return None
