"""US IRC R1006 and its neighbors: outdoor air for the fire."""

from __future__ import annotations

from fireplace_calc.base.units import SQIN
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    Compared,
    all_of,
    at_least,
    at_most,
    feet,
    inches,
    not_applicable,
    one_of,
    reaches,
    same,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import FROM_2018, IRC

SCREEN = inches(1 / 4)
"""The one mesh that is named. [m]"""
VENTILATED = ("crawl space", "attic")
"""Places that may give air to the fire only where they are ventilated themselves."""
NO_SUPPLY = "There is no outdoor air supply."


def no_supply(facts: Facts) -> Compared | None:
    """Clauses on the duct bind only where there is one."""
    if facts.air.exterior_air_supply is False:
        return not_applicable(NO_SUPPLY)
    return None


@IRC.rule("AIR-01", "R1006.1", "Outdoor air for the fire", "yes-no", "exterior_air_supply")
def supply(facts: Facts) -> Compared:
    """A tight house starves the fire, and the fire pulls other appliances' smoke back in."""
    if facts.air.pressure_held is None:
        return unknown("How the room is ventilated")
    if facts.air.pressure_held:
        return not_applicable("Ventilation keeps the room at neutral pressure or above.")
    return yes(facts.air.exterior_air_supply)


@IRC.rule("AIR-02", "R1006.1.2", "Listed duct as listed", "yes-no", "duct_per_listing")
def listed(facts: Facts) -> Compared:
    """A listing holds only for what was tested."""
    if outcome := no_supply(facts):
        return outcome
    if facts.air.listed_duct is None and facts.air.duct_per_listing is None:
        return unknown("Whether the duct is listed")
    if facts.air.listed_duct is False:
        return not_applicable("The duct is not a listed one.")
    return yes(facts.air.duct_per_listing)


@IRC.rule("AIR-03", "R1006.2", "Where the air comes from", "word", "intake_location")
def intake(facts: Facts) -> Compared:
    """A garage gives gasoline fumes, a basement the furnace's smoke."""
    if outcome := no_supply(facts):
        return outcome
    found = one_of(facts.air.intake_location, ("outdoors", *VENTILATED))
    if facts.air.intake_location not in VENTILATED:
        return found
    if facts.air.intake_ventilated is None:
        return unknown(f"Whether the {facts.air.intake_location} is ventilated")
    if not facts.air.intake_ventilated:
        return Compared(FALLS_SHORT, f"{facts.air.intake_location}, not ventilated", found.required)
    return found


@IRC.rule(
    "AIR-04", "R1006.2", "Air intake not above the firebox", "in", "intake_elevation", at_most=True
)
def intake_level(facts: Facts) -> Compared:
    """An intake higher up becomes a second chimney and draws fire into the duct."""
    return no_supply(facts) or at_most(
        facts.air.intake_elevation,
        facts.firebox_elevation,
        "Against the firebox floor, the safe reading.",
    )


@IRC.rule("AIR-05", "R1006.2", "Air intake screen", "in", "intake_screen_mesh")
def screen(facts: Facts) -> Compared:
    """Wide mesh lets animals in, fine mesh clogs."""
    if outcome := no_supply(facts):
        return outcome
    mesh = facts.air.intake_screen_mesh
    if mesh is None:
        return unknown("The mesh")
    return Compared(
        MEETS if same(mesh, SCREEN) else FALLS_SHORT, mesh, SCREEN, "Exactly this mesh is named."
    )


@IRC.rule("AIR-06", "R1006.3", "Air around the duct near its outlet", "in", "duct_clearance")
def duct(facts: Facts) -> Compared:
    """An ember can fall into the duct and heat it."""
    if outcome := no_supply(facts):
        return outcome
    if facts.air.listed_duct is None:
        return unknown("Whether the duct is listed")
    if facts.air.listed_duct:
        return not_applicable("A listed duct follows its listing.")
    if facts.air.near_outlet is False:
        return not_applicable("No duct lies within 5 ft of the outlet.")
    return at_least(facts.air.duct_clearance, inches(1))


@IRC.rule("AIR-07", "R1006.4", "Area of the air passage", "in2", "air_passage_area")
def passage(facts: Facts) -> Compared:
    """Too small feeds nothing; too large chills the room and blows ash about."""
    if outcome := no_supply(facts):
        return outcome
    area = facts.air_passage_area
    if not area:
        return unknown("The free area of the air passage")
    if not reaches(area, 6 * SQIN):
        return at_least(area, 6 * SQIN)
    if reaches(55 * SQIN, area):
        return at_least(area, 6 * SQIN, "And no more than 55 in².")
    return Compared(FALLS_SHORT, area, 55 * SQIN, "More than the largest passage.")


@IRC.rule(
    "AIR-08a",
    "R1006.5",
    "Air outlet near the opening",
    "in",
    "outlet_distance_to_opening",
    at_most=True,
)
def outlet(facts: Facts) -> Compared:
    """Air has to reach the fire before it chills the room."""
    if outcome := no_supply(facts):
        return outcome
    if facts.air.outlet_place is None:
        return unknown("Where the air comes out")
    if facts.air.outlet_place == "firebox":
        return not_applicable("The outlet is in the back or side of the firebox.")
    return at_most(facts.air.outlet_distance_to_opening, inches(24), "At hearth level.")


@IRC.rule(
    "AIR-09",
    "R1006.5",
    "Air outlet closes and holds embers back",
    "yes-no",
    "outlet_closable; ember_guard",
)
def outlet_guard(facts: Facts) -> Compared:
    """With the fire out an open duct is a cold draft; with a fire, embers fall in."""
    return no_supply(facts) or all_of(yes(facts.air.outlet_closable), yes(facts.air.ember_guard))


@IRC.rule(
    "AIR-10",
    "N1102.4.2 (2024: N1102.5.2)",
    "Tight damper or doors, and outdoor air",
    "yes-no",
    "tight_damper_or_doors; exterior_air_supply",
    editions=FROM_2018,
)
def tight(facts: Facts) -> Compared:
    """An open flue empties a heated house day and night; this chapter has no exception for
    pressure.
    """
    return all_of(yes(facts.air.tight_damper_or_doors), yes(facts.air.exterior_air_supply))


@IRC.rule(
    "AIR-11",
    "R303.5.1 (2024: R325.4.1)",
    "Other air intakes away from the chimney",
    "ft",
    "intake_to_chimney_distance",
)
def other_intake(facts: Facts) -> Compared:
    """What the chimney gives off must not come back in as fresh air."""
    air = facts.air
    if air.other_intake is None and air.intake_to_chimney_distance is None:
        return unknown("Whether another intake is near")
    if air.other_intake is False:
        return not_applicable("No other outdoor air intake is near.")
    if air.intake_below_outlet is not None and reaches(air.intake_below_outlet, feet(3)):
        return not_applicable("The intake lies 3 ft or more below the chimney's top.")
    return at_least(air.intake_to_chimney_distance, feet(10))


@IRC.rule(
    "AIR-12",
    "R1006.1.1",
    "Factory-built fireplace's own duct",
    "yes-no",
    "duct_listed_component",
    outside=True,
)
def factory(facts: Facts) -> Compared:
    """A factory-built fireplace was tested with its own duct."""
    return not_applicable("This is a masonry fireplace.")
