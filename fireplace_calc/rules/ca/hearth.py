"""Canada 9.22: the hearth, its size and what carries it."""

from __future__ import annotations

from math import ceil

from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.base.units import MM
from fireplace_calc.rules.ca.book import NBC, precondition
from fireplace_calc.rules.comparing import (
    Compared,
    at_least,
    not_applicable,
    reaches,
    unknown,
)
from fireplace_calc.rules.facts import Facts


def _raise(facts: Facts) -> float:
    return facts.opening_bottom_above_extension_top


@NBC.rule("CA-050", "9.22.5.1.(1)", "Hearth in front", "mm", "hearth_extension_front")
def hearth_front(facts: Facts) -> Compared:
    """Floor a spark can land on."""
    if not reaches(150 * MM, _raise(facts)):
        return not_applicable("The firebox is raised over 150 mm.")
    return at_least(facts.hearth_extension_front, 400 * MM)


@NBC.rule("CA-051", "9.22.5.1.(1)", "Hearth at the sides", "mm", "hearth_extension_side")
def hearth_side(facts: Facts) -> Compared:
    """Sparks fly sideways too; a raised firebox asks for no more here."""
    return at_least(facts.hearth_extension_side, 200 * MM)


@NBC.rule(
    "CA-052", "9.22.5.1.(2)(a)", "Hearth in front, raised firebox", "mm", "hearth_extension_front"
)
def hearth_raised(facts: Facts) -> Compared:
    """From higher up a log rolls farther."""
    if reaches(150 * MM, _raise(facts)) or not reaches(300 * MM, _raise(facts)):
        return not_applicable("For a raise over 150 mm and up to 300 mm.")
    return at_least(facts.hearth_extension_front, 450 * MM)


@NBC.rule(
    "CA-053", "9.22.5.1.(2)(b)", "Hearth in front, high firebox", "mm", "hearth_extension_front"
)
def hearth_high(facts: Facts) -> Compared:
    """The higher the fire, the farther a spark flies."""
    if reaches(300 * MM, _raise(facts)):
        return not_applicable("For a raise over 300 mm.")
    steps = ceil((_raise(facts) - 300 * MM) / (50 * MM) - LIMIT_SLACK)
    return at_least(
        facts.hearth_extension_front,
        450 * MM + steps * 25 * MM,
        "Part of a step counts as a whole step: our reading.",
    )


@NBC.rule("CA-054", "9.22.5.2.(1)", "Hearth slab at its supports", "mm", "hearth_slab")
def slab(facts: Facts) -> Compared:
    """The slab carries the fire and keeps it from what lies below."""
    base = facts.design.base
    return at_least(min(base.slab, facts.design.hearth.bed), 100 * MM)


@NBC.rule("CA-055", "9.22.5.2.(1)", "Free edge of a cantilevered slab", "mm", "slab_edge")
def slab_edge(facts: Facts) -> Compared:
    """A thin lip breaks when someone stands on it."""
    outcome = precondition(
        facts.abroad.cantilevered,
        "Whether the slab is cantilevered",
        "The slab is not cantilevered.",
    )
    return outcome or at_least(facts.abroad.slab_edge, 50 * MM)


@NBC.rule("CA-056", "9.22.5.2.(2)", "Hearth on a wood floor", "mm", "opening_above_floor")
def wood_floor(facts: Facts) -> Compared:
    """Heat goes down too, slowly, for hours."""
    if facts.hearth_support is None:
        return unknown("What carries the hearth")
    if facts.hearth_support != "combustible":
        return not_applicable("What carries the hearth does not burn.")
    return at_least(
        facts.firebox_elevation, 200 * MM, "And only with what the masonry standard also asks."
    )
