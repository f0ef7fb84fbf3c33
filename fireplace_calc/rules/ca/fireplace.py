"""Canada 9.22: the fireplace, its lining, hearth, damper, smoke chamber, mantel and clearances."""

from __future__ import annotations

from fireplace_calc.base.units import DEG, MM
from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.rules.ca.book import NBC, precondition
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    Compared,
    at_least,
    at_most,
    exceeds,
    nearest,
    not_applicable,
    one_of,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts

CARRIERS = ("steel", "reinforced concrete", "reinforced masonry", "stone", "masonry arch")
PROUD = 38 * MM
"""Projection over which a mantel has to keep farther off; exactly this much does not. [m]"""


@NBC.rule(
    "CA-037", "9.22.1.2", "What carries the masonry over the opening", "word", "lintel_material"
)
def lintel(facts: Facts) -> Compared:
    """Nothing that burns or bends in heat may hold up a ton over a fire."""
    return one_of(facts.lintel_material, CARRIERS)


@NBC.rule("CA-041", "9.22.2.1", "Firebox lined with firebrick", "word", "firebox_lining")
def lined(facts: Facts) -> Compared:
    """Common brick crumbles where flame touches it."""
    if facts.firebox_lining == STEEL_UNIT:
        listed = facts.design.firebox.unit_listed
        return (
            unknown("Whether the steel unit is listed")
            if listed is None
            else Compared(
                MEETS if listed else FALLS_SHORT, STEEL_UNIT, "firebrick or a listed steel liner"
            )
        )
    if facts.firebox_lining == "other approved":
        return unknown("Whether that lining is accepted here")
    return one_of(facts.firebox_lining, ("firebrick", "refractory section"))


@NBC.rule("CA-042", "9.22.2.2.(1)(a)", "Firebrick on sides and back", "mm", "firebrick_thickness")
def sides(facts: Facts) -> Compared:
    """A thin face heats through and comes loose."""
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining == STEEL_UNIT:
        return not_applicable("A steel unit lines the firebox.")
    return at_least(facts.firebrick_thickness, 50 * MM)


@NBC.rule("CA-043", "9.22.2.2.(1)(b)", "Firebrick on the floor", "mm", "firebrick_floor")
def floor(facts: Facts) -> Compared:
    """The floor holds the embers all night."""
    return at_least(facts.design.firebox.floor, 25 * MM)


@NBC.rule("CA-044", "9.22.2.2.(2)", "Firebrick mortar", "yes-no", "firebrick_mortar")
def mortar(facts: Facts) -> Compared:
    """Common mortar turns to sand in fire."""
    return yes(facts.abroad.firebrick_mortar, "Check the standard that the edition in force names.")


@NBC.rule(
    "CA-045", "9.22.2.2.(3)", "Lining joints staggered from the backing", "yes-no", "joints_offset"
)
def joints(facts: Facts) -> Compared:
    """A joint that runs through lets smoke out into the wall."""
    return yes(facts.abroad.joints_offset)


@NBC.rule(
    "CA-046",
    "9.22.3.1.(1)",
    "Firebox back and sides, lining included",
    "mm",
    "firebox_wall_thickness_total",
)
def walls(facts: Facts) -> Compared:
    """What stands behind the lining keeps the heat from the framing."""
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != STEEL_UNIT and reaches(facts.firebrick_thickness, 51 * MM):
        return unknown("The figure for a lining of 51 mm and over was not read; what it asks")
    return at_least(facts.firebox_wall_thickness_total, 190 * MM)


def _round_steel(facts: Facts, solid: bool, limit: float) -> Compared:
    """Masonry behind plate and air chamber, of the one kind of units or the other."""
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != STEEL_UNIT:
        return not_applicable("There is no steel liner.")
    if facts.masonry_kind is None:
        return unknown("The kind of masonry")
    if (facts.masonry_kind == "hollow ungrouted") == solid:
        return not_applicable(f"The masonry is {facts.masonry_kind}.")
    return at_least(facts.firebox_wall_thickness_total - facts.firebrick_thickness, limit)


@NBC.rule(
    "CA-047",
    "9.22.3.1.(2)(a)",
    "Steel liner with air chamber, solid units",
    "mm",
    "steel_liner",
)
def steel_solid(facts: Facts) -> Compared:
    """Masonry round a steel box takes what the air does not."""
    return _round_steel(facts, True, 90 * MM)


@NBC.rule(
    "CA-048",
    "9.22.3.1.(2)(b)",
    "Steel liner with air chamber, hollow units",
    "mm",
    "steel_liner",
)
def steel_hollow(facts: Facts) -> Compared:
    """Hollow units hold less heat."""
    return _round_steel(facts, False, 190 * MM)


@NBC.rule("CA-049", "9.22.4.1.(1)", "Firebox depth", "mm", "firebox_depth")
def depth(facts: Facts) -> Compared:
    """A shallow box lets smoke roll out."""
    return at_least(facts.firebox_depth, 300 * MM)


@NBC.rule("CA-057", "9.22.6.1.(1)", "Damper", "yes-no", "damper_covers")
def damper(facts: Facts) -> Compared:
    """An open throat empties the warm house all night."""
    if facts.damper_place is None:
        return unknown("The damper")
    if facts.damper_place != "throat":
        return Compared(FALLS_SHORT, facts.damper_place, "throat")
    metal = one_of(facts.damper_material, ("ferrous", "other metal"))
    return metal if metal.verdict != MEETS else yes(facts.abroad.damper_covers)


@NBC.rule(
    "CA-058",
    "9.22.7.1",
    "Slope of the smoke chamber",
    "deg",
    "smoke_chamber_slope_from_vertical",
    at_most=True,
)
def chamber_slope(facts: Facts) -> Compared:
    """Smoke clings to a flat slope and turns back."""
    return at_most(facts.smoke_chamber_slope_from_vertical, 45 * DEG)


@NBC.rule("CA-059", "9.22.7.2", "Smoke chamber walls", "mm", "smoke_chamber_wall_thickness")
def chamber_walls(facts: Facts) -> Compared:
    """Flame reaches in here when the fire is high."""
    if facts.chimney_location == "exterior":
        return not_applicable("Its back is outdoors: see the next row.")
    return at_least(facts.smoke_chamber_wall_thickness, 190 * MM)


@NBC.rule("CA-060", "9.22.7.2", "Smoke chamber back outdoors", "mm", "smoke_chamber_wall_thickness")
def chamber_back(facts: Facts) -> Compared:
    """Outdoors there is nothing behind it to light."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if facts.chimney_location != "exterior":
        return not_applicable("Its back is not outdoors.")
    return at_least(
        facts.smoke_chamber_wall_thickness, 140 * MM, "The back alone; sides and front keep 190 mm."
    )


@NBC.rule(
    "CA-061", "9.22.9.1.(1)", "Combustibles round the opening", "mm", "trim_distance_to_opening"
)
def trim(facts: Facts) -> Compared:
    """Wood beside the fire chars bit by bit."""
    near = [t.distance for t in facts.trim if t.combustible]
    return nearest(near, 150 * MM, "Nothing that burns is on the face.")


@NBC.rule(
    "CA-062", "9.22.9.1.(1)", "Projecting mantel over the opening", "mm", "trim_distance_to_opening"
)
def mantel(facts: Facts) -> Compared:
    """What stands out over the fire sits in its plume."""
    above = [t for t in facts.trim if t.combustible and t.place == "above"]
    return nearest(
        [t.distance for t in above if t.projection is not None and exceeds(t.projection, PROUD)],
        300 * MM,
        "Nothing over the opening stands out more than 38 mm.",
        [t.distance for t in above if t.projection is None],
    )


@NBC.rule("CA-063", "9.22.9.2", "Bare metal to combustibles", "mm", "metal_clearance")
def metal(facts: Facts) -> Compared:
    """Metal carries the fire's heat to where nobody expects it."""
    return at_least(facts.abroad.metal_clearance, 50 * MM)


def _framing(facts: Facts, inside: bool, limit: float) -> Compared:
    if facts.chimney_location is None:
        return unknown("Where the fireplace stands")
    if (facts.chimney_location == "interior") != inside:
        return not_applicable("See the other of the two rows.")
    gaps = [gap for gap in (facts.clear_back, facts.clear_side) if gap is not None]
    if gaps and not reaches(min(gaps), limit):
        return at_least(min(gaps), limit, "The narrower of back and side.")
    return (
        at_least(min(gaps), limit, "The narrower of back and side.")
        if len(gaps) == 2
        else unknown("The air behind or beside it")
    )


@NBC.rule("CA-064", "9.22.9.3.(1)", "Framing behind and beside the firebox", "mm", "clear_back")
def framing(facts: Facts) -> Compared:
    """The back of the box is the hottest wall in the house."""
    return _framing(facts, True, 100 * MM)


@NBC.rule("CA-065", "9.22.9.3.(1)", "Framing at a firebox in an outside wall", "mm", "clear_back")
def framing_outside(facts: Facts) -> Compared:
    """In an outside wall the heat has somewhere to go."""
    return _framing(facts, False, 50 * MM)


@NBC.rule("CA-066", "9.22.9.3.(2)", "Framing at the smoke chamber", "mm", "clear_back")
def framing_chamber(facts: Facts) -> Compared:
    """The chamber is cooler than the box, and still hot."""
    return _framing(facts, True, 50 * MM)


@NBC.rule(
    "CA-067", "9.22.9.3.(2)", "Framing at a smoke chamber in an outside wall", "mm", "clear_back"
)
def framing_chamber_outside(facts: Facts) -> Compared:
    """In an outside wall the heat has somewhere to go."""
    return _framing(facts, False, 25 * MM)


def _over_warm_air(facts: Facts, projecting: bool, limit: float) -> Compared:
    """Trim over the warm-air outlets of a circulating fireplace, one that stands out or a flat
    one.
    """
    outcome = precondition(
        facts.abroad.warm_air,
        "Whether there are warm-air outlets",
        "There are no warm-air outlets.",
    )
    if outcome:
        return outcome
    if facts.abroad.warm_air_projection is None:
        return unknown("How far the trim over the warm-air outlets stands out")
    if reaches(facts.abroad.warm_air_projection, PROUD) != projecting:
        return not_applicable("See the other of the two rows.")
    return at_least(facts.abroad.warm_air_clear, limit)


@NBC.rule(
    "CA-068",
    "9.22.9.4.(1)(a)",
    "Projecting trim over warm-air outlets",
    "mm",
    "warm_air; warm_air_projection; warm_air_clear",
)
def warm_air_projecting(facts: Facts) -> Compared:
    """Warm-air outlets blow as hot as the fire; here 38 mm itself counts as standing out."""
    return _over_warm_air(facts, True, 300 * MM)


@NBC.rule(
    "CA-069",
    "9.22.9.4.(1)(b)",
    "Flat trim over warm-air outlets",
    "mm",
    "warm_air; warm_air_projection; warm_air_clear",
)
def warm_air_flat(facts: Facts) -> Compared:
    """Warm-air outlets blow as hot as the fire."""
    return _over_warm_air(facts, False, 150 * MM)
