"""Findings on the chimney as it stands: wind and slenderness."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source, density
from fireplace_calc.editing.changes import unknown_of
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    Shown,
    at_least,
    at_most,
    not_applicable,
    unknown,
)
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.allowables import flexural_tension, flexural_tensions
from fireplace_calc.structure.figures import figure, source
from fireplace_calc.structure.loads.hill import HILL_INPUTS
from fireplace_calc.structure.loads.wind import wind_asked

if TYPE_CHECKING:
    from fireplace_calc.structure.loads.stack import Side
    from fireplace_calc.structure.loads.wind import WindLoad
    from fireplace_calc.structure.record import Structure

CODE, CAUTIOUS, SLENDER = "wind, code mode", "wind, cautious mode", "slenderness"
EVERYWHERE = ("", "Trade practice")
"""Packs of no country."""
NO_MORTAR = "The chimney's mortar is not known yet."
LOW = "The chimney does not rise over the roof."
BOND = flexural_tensions()["solid", "N"][1]
NO_TENSION = Source("statics: no tension at the edge", "derived")

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


# -- wind -----------------------------------------------------------------------------------------
def _wind(structure: Structure) -> tuple[Side, WindLoad] | Compared:
    """The worse side with its wind, or why there is nothing to check."""
    if structure.stack.supported:
        return not_applicable("Something holds the chimney up to its crown.")
    side = structure.stack.worst
    if side.wind_load is None:
        return _windless(structure)
    if side.wind_load.area <= 0 and side.offset == 0:
        return not_applicable("Nothing of the free part stands in the wind.")
    return side, side.wind_load


def _windless(structure: Structure, found: Shown = None, required: Shown = None) -> Compared:
    """Not checked: wind speed, exposure or the hill is not known."""
    asked = wind_asked(structure.design)
    what = "The wind speed" if "site.wind" in asked else "The wind exposure"
    if asked and all(key in HILL_INPUTS for key in asked):
        what = "The size of the hill"
    return waiting(structure, f"{what} is not known yet.", *asked, found=found, required=required)


def waiting(
    structure: Structure, note: str, *asked: str, found: Shown = None, required: Shown = None
) -> Compared:
    """Not checked: it waits for inputs. To hear what holds the chimney up would answer it too.

    Parameters
    ----------
    structure : Structure
    note : str
        What is not known.
    *asked : str
        Inputs that would answer it, by dotted key; those that are told are left out.
    found, required : object
        As far as it can be told, in SI. [SI]

    Returns
    -------
    Compared
    """
    missing = unknown_of(structure.design, *asked, "loads.support")
    return Compared(NOT_CHECKED, found, required, note, missing)


def tension_limit(structure: Structure, found: Shown, *asked: str) -> float | Compared:
    """What a bed joint may bear in tension, or why nobody can tell.

    Parameters
    ----------
    structure : Structure
    found : object
        What it has to bear. [Pa]
    *asked : str
        Further inputs that would answer it, by dotted key.

    Returns
    -------
    float or Compared
        Tension. [Pa]
    """
    masonry, mortar = structure.design.chimney.masonry, structure.design.loads.mortar
    if masonry != "brick":
        note = f"The table is for brick; a chimney of {masonry} has to be designed."
        return waiting(structure, note, *asked, found=found)
    if mortar is None:
        return waiting(structure, NO_MORTAR, "loads.mortar", *asked, found=found)
    return flexural_tension(mortar)


def _wind_note(structure: Structure, wind_load: WindLoad) -> str:
    support = (
        ""
        if structure.design.loads.support is not None
        else " No support is known: free from the shoulder."
    )
    return f"Wind {wind_load.side}, as {wind_load.governs}.{support}"


@judged("STR-01", CODE, "Tension across the bed joint at the support", "psi", BOND, over=True)
def bed_joint_tension(structure: Structure) -> Compared:
    """Wind bends the stack, and mortar is weakest where it must stick."""
    wind = _wind(structure)
    if isinstance(wind, Compared):
        return wind
    limit = tension_limit(structure, wind[0].tension)
    if isinstance(limit, Compared):
        return limit
    return at_most(wind[0].tension, limit, _wind_note(structure, wind[1]))


@judged(
    "STR-02",
    CAUTIOUS,
    "Line of force off the middle, bond not counted",
    "in",
    NO_TENSION,
    over=True,
)
def kern_eccentricity(structure: Structure) -> Compared:
    """Bond depends on weather and workmanship; weight is always there."""
    wind = _wind(structure)
    if isinstance(wind, Compared):
        return wind
    side, wind_load = wind
    return at_most(side.eccentricity, side.kern, _wind_note(structure, wind_load))


@judged("STR-03", CAUTIOUS, "Overturning at the support", "-", source("overturning factor"))
def stack_overturning(structure: Structure) -> Compared:
    """A stack that cracks right through still stands if its weight holds it down."""
    wind = _wind(structure)
    if isinstance(wind, Compared):
        return wind
    found = [side.overturning for side in structure.stack.sides if side.overturning is not None]
    return (
        at_least(min(found), figure("overturning factor"), "Full weight against service wind.")
        if found
        else not_applicable("No wind.")
    )


@judged(
    "STR-23",
    CODE,
    "Compression where the stack stands, share of what it may bear",
    "-",
    source("masonry axial share"),
    over=True,
)
def stack_compression(structure: Structure) -> Compared:
    """A tall stack presses its foot, and wind leans on one edge of it."""
    strength, stack = structure.design.loads.masonry_strength, structure.stack
    if strength is None:
        return unknown("The strength of the chimney's masonry", "loads.masonry_strength")
    found = at_most(
        max(section.share(strength) for section in stack.pressed),
        1.0,
        "Full weight and service wind, as plain masonry.",
    )
    if found.verdict == MEETS and not stack.supported and not stack.wind_known:
        return _windless(structure, found.provided, found.required)
    return found


# -- slenderness ----------------------------------------------------------------------------------
@judged(
    "STR-04",
    SLENDER,
    "Height over least width, United Kingdom",
    "-",
    source("UK slenderness"),
    over=True,
)
def uk_slenderness(structure: Structure) -> Compared:
    """A rule for chimneys that nobody has worked out for wind."""
    return _at_home(structure, "UK", _uk_slenderness(structure))


def _at_home(structure: Structure, country: str, found: Compared) -> Compared:
    """A rule of one country is no shortfall of a job in another; past it, the stack is to be
    figured. The trade's own handbooks are of no country and take every one's.
    """
    if structure.pack in EVERYWHERE or structure.pack.startswith(country):
        return found
    if found.verdict != FALLS_SHORT:
        return not_applicable("It is no rule of this job's code.")
    return Compared(
        NOT_CHECKED,
        found.provided,
        found.required,
        "It is no rule of this job's code, but the stack is slender: have it figured for wind.",
    )


def _uk_slenderness(structure: Structure) -> Compared:
    frame, masonry = structure.frame, structure.design.chimney.masonry
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


def _braced(structure: Structure, found: Compared) -> Compared:
    if structure.design.abroad.braced:
        return not_applicable("The chimney is braced sideways.")
    if structure.pack not in EVERYWHERE and not structure.pack.startswith("Canada"):
        found = _at_home(structure, "Canada", found)
        if found.verdict == NOT_CHECKED:  # to hear that it is braced would answer it
            return replace(found, missing=unknown_of(structure.design, "abroad.braced"))
        return found
    if found.verdict == FALLS_SHORT and structure.design.abroad.braced is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Only with bracing for wind; whether it is braced is not known yet.",
            ("abroad.braced",),
        )
    return found


@judged("STR-05", SLENDER, "Free height, Ontario", "ft", source("Ontario free height"), over=True)
def ontario_free_height(structure: Structure) -> Compared:
    """Above this, brace the chimney or have it designed for wind."""
    high = structure.frame.crown_top - structure.frame.uphill_contact
    return (
        _braced(structure, at_most(high, figure("Ontario free height")))
        if high > 0
        else not_applicable(LOW)
    )


@judged(
    "STR-06", SLENDER, "Least side that may stand free, Ontario", "in", source("Ontario least side")
)
def ontario_least_side(structure: Structure) -> Compared:
    """The free height goes only with a stack this thick both ways."""
    return _braced(
        structure,
        at_least(
            2 * min(structure.frame.stack_half, structure.frame.stack_depth),
            figure("Ontario least side"),
        ),
    )
