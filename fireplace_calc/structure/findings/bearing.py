"""Findings on the footing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.editing.changes import unknown_of
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    Printed,
    at_least,
    at_most,
    not_applicable,
    unknown,
)
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.allowables import soils
from fireplace_calc.structure.figures import figure, source
from fireplace_calc.structure.loads.wind import wind_asked

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

FOOTING = "footing"

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


def _ground(structure: Structure, pressure: float | None) -> Compared | None:
    if structure.design.ground.bearing_stratum == "other":
        return Compared(
            NOT_CHECKED,
            pressure,
            note="The table gives no bearing for fill, mud, peat or organic soil: dig and look.",
        )
    return (
        Compared(NOT_CHECKED, pressure, note="The soil is not known yet.", missing=("site.soil",))
        if structure.footing.allowed is None
        else None
    )


@judged(
    "STR-19", FOOTING, "Pressure under the footing, still air", "psf", soils()["clay"][1], over=True
)
def footing_pressure(structure: Structure) -> Compared:
    """All that stands on the footing and the footing itself, under its worst edge."""
    footing = structure.footing
    if footing.pressure is None:
        return Compared(FALLS_SHORT, note="The weight stands beyond the edge of the footing.")
    return _ground(structure, footing.pressure) or at_most(footing.pressure, footing.allowed)


@judged(
    "STR-20",
    FOOTING,
    "Pressure under the footing in the wind",
    "psf",
    soils()["clay"][1],
    over=True,
)
def footing_pressure_in_wind(structure: Structure) -> Compared:
    """Wind on a chimney that nothing holds presses one edge of the footing and lifts the other."""
    footing = structure.footing
    if footing.supported:
        return not_applicable("The house takes the wind on this chimney.")
    if not footing.wind_known:
        return unknown(
            "The wind speed, the exposure or the hill",
            *wind_asked(structure.design),
            *unknown_of(structure.design, "loads.support"),
        )
    if footing.overturns:
        return Compared(FALLS_SHORT, note="The footing tips over first.")
    return _ground(structure, footing.wind_pressure) or at_most(
        footing.wind_pressure, footing.allowed, "The soil's figure is not raised for wind."
    )


@judged("STR-21", FOOTING, "Footing projection beyond the base", "in", source("footing projection"))
def footing_projection(structure: Structure) -> Compared:
    """A wider foot spreads the weight."""
    return at_least(structure.footing.projection, Printed(figure("footing projection")))


@judged("STR-22", FOOTING, "Footing thickness", "in", source("footing thickness"))
def footing_thickness(structure: Structure) -> Compared:
    """Codes ask a foot of solid masonry or concrete; plain concrete must also be no thinner than it
    stands out.
    """
    spread = figure("footing thickness over projection") * structure.footing.projection
    least = max(Printed(figure("footing thickness")), spread)
    return at_least(
        structure.footing.thickness,
        least,
        "At least as thick as it projects." if spread > figure("footing thickness") else "",
    )
