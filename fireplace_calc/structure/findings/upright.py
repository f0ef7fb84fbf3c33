"""Findings on the chimney as it stands: wind, slenderness, earthquake."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source, density
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
from fireplace_calc.structure.figures import figure, flexural_tension, flexural_tensions, source
from fireplace_calc.structure.loads.seismic import STRONG_SEISMIC

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

CODE, CAUTIOUS, SLENDER, QUAKE = (
    "wind, code mode",
    "wind, cautious mode",
    "slenderness",
    "earthquake",
)
LOW = "The chimney does not rise over the roof."
BOND = flexural_tensions()["solid", "N"][1]
NO_TENSION = Source("statics: no tension at the edge", "derived")

RULES: list[Rule] = []
judged = filing(RULES)


# -- wind -----------------------------------------------------------------------------------------
def _still(work: Structure) -> Compared | None:
    """Why wind is not checked, or does not matter; nothing when it is known."""
    if work.stack.held:
        return not_applicable("Something holds the chimney up to its crown.")
    site, loads = work.design.site, work.design.loads
    if site.wind is None or loads.exposure is None:
        return unknown("The wind speed" if site.wind is None else "The wind exposure")
    side = work.stack.worst
    return (
        not_applicable("Nothing of the free part stands in the wind.")
        if side.wind_load.area <= 0 and side.lean == 0
        else None
    )


def _wind_note(work: Structure) -> str:
    wind_load = work.stack.worst.wind_load
    support = (
        ""
        if work.design.loads.support is not None
        else " No support is known: free from the shoulder."
    )
    return f"Wind {wind_load.side}, as {wind_load.governs}.{support}"


@judged("STR-01", CODE, "Tension across the bed joint at the support", "psi", BOND, over=True)
def bond(work: Structure) -> Compared:
    """Wind bends the stack, and mortar is weakest where it must stick."""
    if said := _still(work):
        return said
    found, masonry, mortar = (
        work.stack.worst.tension,
        work.design.chimney.masonry,
        work.design.loads.mortar,
    )
    if masonry != "brick":
        return Compared(
            NOT_CHECKED,
            found,
            note=f"The table is for brick; a chimney of {masonry} has to be designed.",
        )
    if mortar is None:
        return Compared(NOT_CHECKED, found, note="The chimney's mortar is not known yet.")
    return at_most(found, flexural_tension(mortar), _wind_note(work))


@judged(
    "STR-02",
    CAUTIOUS,
    "Line of force off the middle, bond not counted",
    "in",
    NO_TENSION,
    over=True,
)
def kern(work: Structure) -> Compared:
    """Bond depends on weather and workmanship; weight is always there."""
    return _still(work) or at_most(
        work.stack.worst.eccentricity, work.stack.worst.kern, _wind_note(work)
    )


@judged("STR-03", CAUTIOUS, "Overturning at the support", "-", source("overturning factor"))
def overturning(work: Structure) -> Compared:
    """A stack that cracks right through still stands if its weight holds it down."""
    if said := _still(work):
        return said
    found = [side.overturning for side in work.stack.sides if side.overturning is not None]
    return (
        at_least(min(found), figure("overturning factor"), "Full weight against service wind.")
        if found
        else not_applicable("No wind.")
    )


# -- slenderness ----------------------------------------------------------------------------------
@judged(
    "STR-04",
    SLENDER,
    "Height over least width, United Kingdom",
    "-",
    source("UK slenderness"),
    over=True,
)
def british(work: Structure) -> Compared:
    """A rule for chimneys that nobody has worked out for wind."""
    frame, masonry = work.frame, work.design.chimney.masonry
    found = (frame.liner_top - frame.uphill_contact) / (
        2 * min(frame.stack_half, frame.stack_depth)
    )
    if found <= 0:
        return not_applicable(LOW)
    if density(masonry) <= figure("UK density"):
        return Compared(
            NOT_CHECKED, found, figure("UK slenderness"), "The rule is for masonry over 1500 kg/m³."
        )
    return at_most(
        found, figure("UK slenderness"), "From the highest roof contact to the top of the liner."
    )


def _braced(work: Structure, found: Compared) -> Compared:
    if work.design.abroad.braced:
        return not_applicable("The chimney is braced sideways.")
    if found.verdict == FALLS_SHORT and work.design.abroad.braced is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Only with bracing for wind; whether it is braced is not known yet.",
        )
    return found


@judged("STR-05", SLENDER, "Free height, Ontario", "ft", source("Ontario free height"), over=True)
def canadian(work: Structure) -> Compared:
    """Above this, brace the chimney or have it designed for wind."""
    high = work.frame.crown_top - work.frame.uphill_contact
    return (
        _braced(work, at_most(high, figure("Ontario free height")))
        if high > 0
        else not_applicable(LOW)
    )


@judged(
    "STR-06", SLENDER, "Least side that may stand free, Ontario", "in", source("Ontario least side")
)
def stout(work: Structure) -> Compared:
    """The free height goes only with a stack this thick both ways."""
    return _braced(
        work,
        at_least(
            2 * min(work.frame.stack_half, work.frame.stack_depth), figure("Ontario least side")
        ),
    )


# -- earthquake -----------------------------------------------------------------------------------
@judged("STR-07", QUAKE, "Tension across the bed joint as plain masonry", "psi", BOND, over=True)
def shaken(work: Structure) -> Compared:
    """The ground throws the stack sideways by its own weight."""
    if work.stack.held:
        return not_applicable("Something holds the chimney up to its crown.")
    if work.seismic_load is None:
        return unknown("The design spectral response")
    if work.design.anchorage.chimney_reinforced:
        return not_applicable("It is reinforced; an engineer designs its bars.")
    if work.design.site.seismic in STRONG_SEISMIC:
        return (
            Compared(
                FALLS_SHORT,
                "plain masonry",
                "reinforced",
                f"Category {work.design.site.seismic} takes no plain chimney.",
            )
            if work.design.anchorage.chimney_reinforced is False
            else unknown("Whether the chimney is reinforced")
        )
    found, mortar = work.seismic_load.tension, work.design.loads.mortar
    if work.design.chimney.masonry != "brick" or mortar is None:
        return Compared(
            NOT_CHECKED, found, note="The chimney's mortar is not known yet, or it is not of brick."
        )
    said = at_most(found, flexural_tension(mortar))
    if said.verdict == MEETS and work.design.site.seismic is None:
        return Compared(
            NOT_CHECKED,
            found,
            said.required,
            "The seismic category is not known yet: from D on no plain chimney is built.",
        )
    return said


@judged("STR-08", QUAKE, "Vertical bars for this chimney", "count", source("bars"))
def bars(work: Structure) -> Compared:
    """Bars hold the courses together when the ground throws them."""
    category = work.design.site.seismic
    if category is None:
        return unknown("The seismic design category")
    if category not in STRONG_SEISMIC:
        return not_applicable(
            f"Category {category} asks for no bars in a house; the International Building "
            "Code does from C on."
        )
    if category == "E":
        return Compared(NOT_CHECKED, note="Category E has to be designed.")
    return at_least(
        work.design.anchorage.vertical_bars_no4,
        work.steel.bars,
        "No. 4; by width or by flues, the larger count.",
    )
