"""US IRC R1003: liner, flue area."""

from __future__ import annotations

from fireplace_calc.base.units import DEG
from fireplace_calc.design.second_flue import APPLIANCE, GAS, PELLETS, SOLID_FUEL
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.second_area import second_net_area
from fireplace_calc.rules.told_areas import why_unknown
from fireplace_calc.rules.us.book import IRC

NO_APPLIANCE = "An open fireplace is no appliance with a connector."
LINERS = ("ASTM C315 clay", "UL 1777 system", "listed factory unit", "approved to 1800 F")
ON_SECOND = "Of the appliance on the second flue."
LISTED = ("UL 1777 system", "listed factory unit")


def appliance_elsewhere(facts: Facts) -> Compared | None:
    """Why a clause on an appliance's flue asks nothing; none where one stands on the second
    flue.
    """
    if facts.stack.connector:
        return Compared(
            NOT_CHECKED,
            note="An appliance is connected to the fireplace's own flue. What M1805.3 asks of"
            " several on one flue was not read. Canada, England and the trade allow one"
            " (CA-003, UK-021, PRA-22): give it a flue of its own.",
        )
    if facts.design.second_flue.serves == APPLIANCE:
        return None
    if facts.stack.connector is None:
        return unknown("Whether an appliance is connected")
    return not_applicable(NO_APPLIANCE)


@IRC.rule("FLU-01", "R1003.11", "Lined chimney", "word", "flue_lined")
def is_lined(facts: Facts) -> Compared:
    """Bare brick leaks smoke and carbon monoxide through its joints, and acid eats it."""
    if facts.liner_kind is None:
        return unknown("The liner")
    return Compared(
        FALLS_SHORT if facts.liner_kind == "unlined" else MEETS, facts.liner_kind, "lined"
    )


@IRC.rule("FLU-02", "R1003.11.1", "Kind of liner", "word", "liner_kind")
def liner_kind(facts: Facts) -> Compared:
    """It must stand a chimney fire as well as daily smoke."""
    return one_of(facts.liner_kind, LINERS)


@IRC.rule(
    "FLU-03", "R1003.12", "Start of the liner, appliance", "in", "liner_start_below_lowest_inlet"
)
def start_appliance(facts: Facts) -> Compared:
    """Soot and water need a lined sump below the inlet."""
    if outcome := appliance_elsewhere(facts):
        return outcome
    second, told = facts.frame.second, facts.design.second_flue
    if second is None or told.start is None:
        return unknown("Where the second flue's liner starts")
    if told.inlet is None:
        return unknown("The level of the second flue's lowest inlet")
    return at_least(told.inlet - told.start, inches(8), ON_SECOND)


@IRC.rule("FLU-04", "R1003.12", "Start of the liner, fireplace", "word", "liner_start")
def start_fireplace(facts: Facts) -> Compared:
    """Smoke gets out at any gap between chamber and liner."""
    if facts.liner_kind in (None, "unlined"):
        return unknown("The liner")
    return Compared(
        MEETS, "top of smoke chamber", "top of smoke chamber", "Drawn so; see that it is built so."
    )


@IRC.rule("FLU-05", "R1003.12", "Top of the liner", "in", "liner_top_above_enclosing_wall")
def liner_top(facts: Facts) -> Compared:
    """Rain has to run off the crown and not into the gap."""
    top = facts.liner_top_above_enclosing_wall
    return Compared(
        MEETS if top > 1e-6 else FALLS_SHORT,
        top,
        0.0,
        "More than nothing; the code gives no figure.",
    )


@IRC.rule(
    "FLU-06", "R1003.12", "Slope of the liner", "deg", "liner_slope_from_vertical", at_most=True
)
def liner_slope(facts: Facts) -> Compared:
    """Smoke slows and soot settles in a flat run."""
    return at_most(facts.liner_slope_from_vertical, 30 * DEG, "From the vertical.")


@IRC.rule("FLU-07", "R1003.12", "Gap around a clay liner", "in", "liner_gap", at_most=True)
def liner_gap(facts: Facts) -> Compared:
    """A little mortar holds the liner in place; filled solid, it cracks as it grows."""
    if facts.liner_kind is None:
        return unknown("The liner")
    if facts.liner_kind != "ASTM C315 clay":
        return not_applicable("The liner is not clay.")
    return at_most(facts.liner_gap, facts.liner_thickness, "Not wider than the liner is thick.")


@IRC.rule(
    "FLU-08", "R1003.12.2", "Nothing vented through the gap", "yes-no", "liner_gap_used_as_vent"
)
def gap_vent(facts: Facts) -> Compared:
    """Whatever is vented in there gets into the rooms through the joints."""
    if facts.liner_gap_used_as_vent is None:
        return unknown("Whether anything is vented into the gap around the liner")
    return Compared(
        FALLS_SHORT if facts.liner_gap_used_as_vent else MEETS,
        "vented" if facts.liner_gap_used_as_vent else "not vented",
        "not vented",
    )


@IRC.rule("FLU-09", "R1003.14", "Flue not below its connector", "in2", "flue_net_area")
def appliance_flue(facts: Facts) -> Compared:
    """A flue narrower than the pipe into it backs up."""
    if outcome := appliance_elsewhere(facts):
        return outcome
    area, pipe = second_net_area(facts), facts.design.second_flue.connector_area
    if area is None or pipe is None:
        what = "The appliance's connector" if area is not None else "The second flue's net area"
        return Compared(NOT_CHECKED, area, pipe, f"{what} is not known yet.")
    return at_least(area, pipe, ON_SECOND)


def _ratio(facts: Facts, applies: bool, part: float, shape: str) -> Compared:
    if facts.flue_route is None:
        return unknown("The sizing route")
    if facts.flue_route == "chart":
        return not_applicable("The chart is chosen instead.")
    if not applies:
        return not_applicable(f"The flue is not {shape}.")
    if facts.flue_net_area is None:
        return Compared(
            NOT_CHECKED,
            None,
            facts.opening_area / part,
            why_unknown(facts),
        )
    return at_least(facts.flue_net_area, facts.opening_area / part, f"1/{part:.0f} of the opening.")


@IRC.rule("FLU-10", "R1003.15.1", "Flue area, round", "in2", "flue_net_area")
def round_flue(facts: Facts) -> Compared:
    """The flue carries what the opening takes in; round ones have no dead corners and may be
    smallest.
    """
    return _ratio(facts, facts.flue_shape == "round", 12, "round")


@IRC.rule("FLU-11", "R1003.15.1", "Flue area, square", "in2", "flue_net_area")
def square_flue(facts: Facts) -> Compared:
    """Smoke spirals and leaves the corners of a square unused."""
    return _ratio(facts, facts.flue_shape == "square", 10, "square")


@IRC.rule("FLU-12", "R1003.15.1", "Flue area, rectangular under 2:1", "in2", "flue_net_area")
def rectangular_flue(facts: Facts) -> Compared:
    """A little longer than square draws about like a square."""
    return _ratio(
        facts,
        facts.flue_shape == "rectangle" and not reaches(facts.flue_aspect, 2.0),
        10,
        "rectangular under 2:1",
    )


@IRC.rule("FLU-13", "R1003.15.1", "Flue area, rectangular 2:1 and over", "in2", "flue_net_area")
def flat_flue(facts: Facts) -> Compared:
    """A flat flue has the most wall for its area and drags most."""
    return _ratio(
        facts,
        facts.flue_shape == "rectangle" and reaches(facts.flue_aspect, 2.0),
        8,
        "rectangular of 2:1 or more",
    )


@IRC.rule("FLU-14", "R1003.15.2; Figure R1003.15.2", "Flue area by chart", "in2", "flue_net_area")
def chart(facts: Facts) -> Compared:
    """A taller chimney pulls harder and may be narrower."""
    if facts.flue_route is None:
        return unknown("The sizing route")
    if facts.flue_route != "chart":
        return not_applicable("The ratio route is chosen.")
    return Compared(
        NOT_CHECKED,
        facts.flue_net_area,
        None,
        "The chart's curves could not be read; take them from a printed copy.",
    )


@IRC.rule(
    "FLU-15", "R1003.15.1; R1003.15.2", "Where the flue area comes from", "word", "flue_area_source"
)
def area_source(facts: Facts) -> Compared:
    """The nominal size is not the hole. Take it from the table, the maker, or a tape in the
    flue.
    """
    found = one_of(facts.flue_area_source, ("table", "manufacturer", "field measured"))
    told = facts.design.measured.flue_area is not None
    if (
        facts.flue_net_area is None
        and found.verdict == MEETS
        and (told or found.provided == "table")
    ):
        why = why_unknown(facts) if told else "No table lists this size."
        return Compared(NOT_CHECKED, found.provided, found.required, why)
    return found


@IRC.rule("FLU-16", "R1003.11.6", "Label on a relined flue", "yes-no", "label_present")
def relining_label(facts: Facts) -> Compared:
    """The next sweep has to know what the flue may carry."""
    if facts.relined is None:
        return unknown("Whether the flue is relined")
    if not facts.relined:
        return not_applicable("The flue is new.")
    return yes(facts.label_present)


@IRC.rule(
    "FLU-17",
    "R1003.11.3; R1003.11.4; R1003.11.5",
    "Liner by an appliance's fuel",
    "word",
    "liner_rule",
)
def appliance_liner(facts: Facts) -> Compared:
    """Gas, oil and pellets leave other acids than wood."""
    if outcome := appliance_elsewhere(facts):
        return outcome
    told = facts.design.second_flue
    if told.fuel is None:
        return unknown("What the appliance burns")
    if told.fuel == SOLID_FUEL:
        return not_applicable("Solid fuel takes the liners of a fireplace; see TWO-04.")
    if told.liner is None:
        return unknown("The second flue's liner")
    if told.fuel == GAS:
        return Compared(
            NOT_CHECKED, told.liner, "by chapter 24", "The gas chapter's tables are not held here."
        )
    if told.liner in LINERS:
        return Compared(MEETS, told.liner, " or ".join(LINERS), ON_SECOND)
    if told.liner == "unlined":
        return Compared(FALLS_SHORT, told.liner, " or ".join(LINERS), ON_SECOND)
    vent = "a listed pellet vent" if told.fuel == PELLETS else "a vent to UL 641"
    return Compared(NOT_CHECKED, told.liner, vent, f"See its label: {vent} is enough.")


@IRC.rule("FLU-18", "R1003.12.1", "Listed liner as listed", "yes-no", "liner_per_listing")
def listed_liner(facts: Facts) -> Compared:
    """A listing holds only where the work follows it."""
    if facts.liner_kind is None:
        return unknown("The liner")
    if facts.liner_kind not in LISTED:
        return not_applicable("The liner is not a listed one.")
    return unknown("See the liner's papers on site: whether it follows its listing")
