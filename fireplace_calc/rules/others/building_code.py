"""International Building Code, chapter 21, where it differs from the residential code and was read:
for a fireplace in a building that is no house of one or two families.
"""

from __future__ import annotations

from fireplace_calc.base.tables import soil_bearing
from fireplace_calc.design.second_flue import APPLIANCE
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    all_of,
    at_least,
    exceeds,
    inches,
    not_applicable,
    one_of,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.second_area import second_net_area
from fireplace_calc.rules.us import air, firebox, foundation, seismic

IBC = Book(
    "US IBC",
    ("2012",),
    "Read in part: bars and anchors, firebrick joint, throat, wood beside the opening, fireblock,"
    " air intake, soil and alarm. Footing, walls, hearth, flue, height and other clearances were"
    " not read: check them against the code itself.",
)
PROUD = inches(1.5)
"""Projection over which wood beside the opening has to keep farther off. [m]"""


@IBC.rule("IBC-01", "2111.3; 2113.3", "Reinforced and anchored", "yes-no", "chimney_reinforced")
def reinforced(facts: Facts) -> Compared:
    """Plain masonry chimneys are the first thing an earthquake throws through a roof; this code
    starts a category earlier than the residential one.
    """
    return seismic.as_category_d(facts, seismic.reinforced)


@IBC.rule(
    "IBC-02", "2113.3.1", "Vertical bars, chimney up to 40 in wide", "count", "vertical_bars_no4"
)
def base_bars(facts: Facts) -> Compared:
    """Bars at the corners hold the courses together when the ground throws them."""
    return seismic.as_category_d(facts, seismic.base_bars)


@IBC.rule("IBC-03", "2113.3.1", "Vertical bars, wider chimney", "count", "vertical_bars_no4")
def more_bars(facts: Facts) -> Compared:
    """A wider stack is heavier and needs more steel; part of a step counts as a whole one."""
    return seismic.as_category_d(facts, seismic.more_bars)


@IBC.rule("IBC-04", "2113.3", "Tie diameter", "in", "tie_diameter")
def tie(facts: Facts) -> Compared:
    """Thin wire lets the bars buckle out."""
    return seismic.as_category_d(facts, seismic.tie)


@IBC.rule("IBC-05", "2113.3", "Tie spacing", "in", "tie_spacing_vertical", at_most=True)
def tie_spacing(facts: Facts) -> Compared:
    """Ties far apart leave the bars free to bow between them."""
    return seismic.as_category_d(facts, seismic.tie_spacing)


@IBC.rule("IBC-06", "2113.3", "Ties where bars bend", "count", "ties_per_bend")
def tie_bends(facts: Facts) -> Compared:
    """A bent bar pulls outward right at the bend."""
    return seismic.as_category_d(facts, seismic.tie_bends)


@IBC.rule("IBC-07", "2111.4", "Anchored at floors and roof", "yes-no", "anchor_at_level")
def anchored(facts: Facts) -> Compared:
    """A chimney outside the wall swings away from the house unless it is tied to it."""
    return seismic.as_category_d(facts, seismic.anchored)


@IBC.rule(
    "IBC-08", "2111.5", "Joint between firebricks", "in", "firebrick_joint_width", at_most=True
)
def firebrick_joint(facts: Facts) -> Compared:
    """Refractory mortar is the weak part of the lining."""
    return firebox.firebrick_joint(facts)


@IBC.rule(
    "IBC-09", "2111.7", "Throat or damper over the opening", "in", "throat_height_above_opening"
)
def over_opening(facts: Facts) -> Compared:
    """A high throat keeps the smoke inside. This code counts from the top of the opening."""
    lowest = facts.throat_height_above_opening
    if facts.damper_place == "throat":
        lowest = min(lowest, facts.damper_height_above_opening)
    found = at_least(lowest, inches(8))
    if facts.damper_place is None and found.verdict == MEETS:
        return Compared(
            NOT_CHECKED, found.provided, found.required, "The place of the damper is not known yet."
        )
    return found


@IBC.rule(
    "IBC-10",
    "2111.11 exception 4",
    "Wood that stands out beside the opening",
    "in",
    "trim_distance_to_opening",
)
def beside_opening(facts: Facts) -> Compared:
    """The farther it stands out, the more of the fire it sees."""
    beside = [piece for piece in facts.trim if piece.combustible and piece.place == "beside"]
    proud = [p for p in beside if p.projection is None or exceeds(p.projection, PROUD)]
    if not proud:
        return not_applicable("No wood beside the opening stands out more than 1-1/2 in.")
    measured = [
        (p.distance - p.projection, p.distance, inches(6) + p.projection, p.name)
        for p in proud
        if p.distance is not None and p.projection is not None
    ]
    if measured:
        _, distance, wanted, name = min(measured)
        found = at_least(distance, wanted, f"{name}: 6 in and as much as it stands out.")
        if found.verdict == FALLS_SHORT or len(measured) == len(proud):
            return found
    return unknown("Distance or projection of a piece beside the opening")


@IBC.rule(
    "IBC-11", "2111.12", "Fireblock at the fireplace", "word", "fireblock_material; fireblock_depth"
)
def fireblock(facts: Facts) -> Compared:
    """In a fire the space around the masonry is a flue of its own; a thin block burns through."""
    block = one_of(facts.fireblock_material, ("noncombustible",))
    if block.verdict != MEETS:
        return block
    depth = facts.design.clearance.fireblock_depth
    if depth is None:
        return unknown("The depth of the fireblock")
    deep = at_least(depth, inches(1)).verdict
    return all_of(
        block, Compared(deep, "1 in deep" if deep == MEETS else "under 1 in deep", "1 in deep")
    )


@IBC.rule("IBC-12", "2111.13.3", "Where the air comes from", "word", "intake_location")
def intake(facts: Facts) -> Compared:
    """A garage gives gasoline fumes, and an attic or crawl space is no outdoors in this code."""
    return air.no_supply(facts) or one_of(facts.air.intake_location, ("outdoors",))


@IBC.rule(
    "IBC-13",
    "2111.13.3",
    "Air intake not above the firebox",
    "in",
    "intake_elevation",
    at_most=True,
)
def intake_level(facts: Facts) -> Compared:
    """An intake higher up becomes a second chimney and draws fire into the duct."""
    return air.intake_level(facts)


@IBC.rule("IBC-14", "2111.13.3", "Air intake screen", "in", "intake_screen_mesh")
def screen(facts: Facts) -> Compared:
    """Wide mesh lets animals in, fine mesh clogs."""
    return air.screen(facts)


@IBC.rule("IBC-15", "2113.15", "Flue of an appliance", "in2", "second_flue_area")
def appliance_flue(facts: Facts) -> Compared:
    """A flue narrower than the pipe into it backs up."""
    if facts.design.second_flue.serves == APPLIANCE:
        area, pipe = second_net_area(facts), facts.design.second_flue.connector_area
        if area is None or pipe is None:
            what = "The appliance's connector" if area is not None else "The second flue's net area"
            return Compared(NOT_CHECKED, area, pipe, f"{what} is not known yet.")
        return at_least(
            area, pipe, "One appliance; several ask for the largest and half of each other."
        )
    if facts.stack.connector is None:
        return unknown("Whether an appliance is connected")
    if facts.stack.connector:
        return unknown("The size of the pipes into the fireplace's flue")
    return not_applicable("No appliance is connected.")


@IBC.rule("IBC-16", "915.1.2", "Carbon monoxide alarm", "yes-no", "co_alarm")
def co_alarm(facts: Facts) -> Compared:
    """Nobody smells carbon monoxide. This code names fireplaces."""
    return yes(facts.abroad.co_alarm, ask="Whether there is an alarm is not known yet.")


@IBC.rule(
    "IBC-17",
    "Table 1806.2",
    "Pressure on the soil",
    "psf",
    "footing_contact_pressure",
    at_most=True,
)
def soil(facts: Facts) -> Compared:
    """Soil that is pressed too hard gives way slowly, for years."""
    return foundation.bearing(facts, {name: held for name, (held, _) in soil_bearing().items()})
