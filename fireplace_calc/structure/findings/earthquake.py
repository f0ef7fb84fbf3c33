"""Findings on the chimney in an earthquake."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    unknown,
)
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.figures import source
from fireplace_calc.structure.findings.stability import BOND, tension_limit, waiting
from fireplace_calc.structure.loads.seismic import STRONG_SEISMIC

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

QUAKE = "earthquake"

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


@judged("STR-07", QUAKE, "Tension across the bed joint as plain masonry", "psi", BOND, over=True)
def seismic_tension(structure: Structure) -> Compared:
    """The ground throws the stack sideways by its own weight."""
    if structure.stack.supported:
        return not_applicable("Something holds the chimney up to its crown.")
    if structure.seismic_load is None:
        note = "The design spectral response is not known yet."
        return waiting(structure, note, "loads.sds")
    if structure.design.anchorage.chimney_reinforced:
        return not_applicable("It is reinforced; an engineer designs its bars.")
    if structure.design.site.seismic in STRONG_SEISMIC:
        return (
            Compared(
                FALLS_SHORT,
                "plain masonry",
                "reinforced",
                f"Category {structure.design.site.seismic} takes no plain chimney.",
            )
            if structure.design.anchorage.chimney_reinforced is False
            else waiting(
                structure,
                "Whether the chimney is reinforced is not known yet.",
                "anchorage.chimney_reinforced",
            )
        )
    found, bars = structure.seismic_load.tension, "anchorage.chimney_reinforced"
    limit = tension_limit(structure, found, bars, "site.seismic")
    if isinstance(limit, Compared):
        return limit
    compared = at_most(found, limit)
    if compared.verdict == MEETS and structure.design.site.seismic is None:
        note = "The seismic category is not known yet: from D on no plain chimney is built."
        return waiting(
            structure, note, "site.seismic", bars, found=found, required=compared.required
        )
    return compared


@judged("STR-08", QUAKE, "Vertical bars for this chimney", "count", source("bars"))
def vertical_bars(structure: Structure) -> Compared:
    """Bars hold the courses together when the ground throws them."""
    category = structure.design.site.seismic
    if category is None:
        return unknown("The seismic design category", "site.seismic")
    if category not in STRONG_SEISMIC:
        return not_applicable(
            f"Category {category} asks for no bars in a house; the International Building "
            "Code does from C on."
        )
    if category == "E":
        return Compared(NOT_CHECKED, note="Category E has to be designed.")
    found = at_least(
        structure.design.anchorage.vertical_bars_no4,
        structure.steel.bars,
        "No. 4; by width or by flues, the larger count.",
    )
    asked = {
        "anchorage.vertical_bars_no4": structure.design.anchorage.vertical_bars_no4,
        "anchorage.n_flues": structure.steel.bars,
    }
    return replace(found, missing=tuple(key for key, told in asked.items() if told is None))
