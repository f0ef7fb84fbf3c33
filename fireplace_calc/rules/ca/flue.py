"""Canada 9.21: whose the flue is, how it leans, and its lining."""

from __future__ import annotations

from fireplace_calc.base.units import DEG, MM
from fireplace_calc.design.second_flue import APPLIANCE, SOLID_FUEL
from fireplace_calc.rules.ca.book import NBC, precondition
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.second_area import second_net_area
from fireplace_calc.rules.told_areas import why_unknown


@NBC.rule("CA-003", "9.21.2.1", "A flue of its own", "yes-no", "own_flue")
def own_flue(facts: Facts) -> Compared:
    """Two fires on one flue send each other's smoke into the room."""
    if facts.stack.connector is None:
        return unknown("Whether an appliance shares the flue")
    return yes(not facts.stack.connector)


@NBC.rule(
    "CA-004", "9.21.2.3", "Lean of the flue", "deg", "liner_slope_from_vertical", at_most=True
)
def lean(facts: Facts) -> Compared:
    """Smoke that has to turn loses its draft and drops its soot."""
    return at_most(facts.liner_slope_from_vertical, 45 * DEG)


@NBC.rule("CA-005", "9.21.2.4.(2)", "Flue of an appliance", "mm2", "flue_area")
def appliance_flue(facts: Facts) -> Compared:
    """A flue narrower than the pipe into it backs up; fireplaces have tables of their own."""
    told = facts.design.second_flue
    if told.serves != APPLIANCE:
        return not_applicable("A fireplace goes by the tables for fireplaces.")
    if told.fuel is None:
        return unknown("What the appliance burns")
    if told.fuel != SOLID_FUEL:
        return not_applicable("For one appliance that burns solid fuel.")
    area = second_net_area(facts)
    if area is None or told.connector_area is None:
        what = "The appliance's connector" if area is not None else "The second flue's net area"
        return Compared(NOT_CHECKED, area, told.connector_area, f"{what} is not known yet.")
    return at_least(area, told.connector_area, "Of the appliance on the second flue.")


@NBC.rule(
    "CA-008", "house-construction guide", "Flue over opening, guide", "%", "flue_over_opening"
)
def guide_ratio(facts: Facts) -> Compared:
    """A rule of thumb beside the code: a tenth of the opening."""
    if facts.flue_net_area is None:
        return Compared(NOT_CHECKED, note=why_unknown(facts))
    return at_least(
        facts.flue_net_area / facts.opening_area,
        0.1,
        "A guide, not the code, whose table allows less.",
    )


@NBC.rule("CA-009", "house-construction guide", "Smallest flue, guide", "mm", "flue_short_side")
def guide_least(facts: Facts) -> Compared:
    """Smaller flues clog before anyone looks."""
    return at_least(
        min(facts.frame.bore.width, facts.frame.bore.depth),
        200 * MM,
        "A guide, not the code, whose table allows less.",
    )


@NBC.rule("CA-010", "9.21.3.1", "Lined chimney", "word", "liner")
def lined(facts: Facts) -> Compared:
    """Bare masonry leaks smoke and is eaten by acid."""
    if facts.liner_kind is None:
        return unknown("The liner")
    return Compared(
        FALLS_SHORT if facts.liner_kind == "unlined" else MEETS, facts.liner_kind, "lined"
    )


@NBC.rule("CA-071", "9.21.3.3", "Thickness of a clay liner", "mm", "liner_thickness")
def clay_liner(facts: Facts) -> Compared:
    """A thin liner cracks in its first chimney fire."""
    if facts.liner_kind in (None, "other"):
        return unknown("The liner")
    if facts.liner_kind != "ASTM C315 clay":
        return not_applicable("The liner is not of clay.")
    tenths = round(facts.liner_thickness / MM, 1) * MM
    return at_least(tenths, 15.9 * MM, "To the tenth of a millimetre, as printed.")


@NBC.rule("CA-011", "9.21.3.5", "Concrete liner to its standard", "word", "liner_standard")
def concrete_liner(facts: Facts) -> Compared:
    """Plain concrete spalls in a chimney fire."""
    if facts.liner_kind in (None, "other"):
        return unknown("The liner")
    return not_applicable("The liner is not of concrete.")


@NBC.rule("CA-012", "9.21.3.6.(2)", "Metal liner with a wood fire", "word", "metal_liner")
def metal_liner(facts: Facts) -> Compared:
    """Thin metal burns through; which appliances may use it was not read."""
    if facts.liner_kind is None:
        return unknown("The liner")
    if facts.liner_kind not in ("UL 1777 system", "listed factory unit"):
        return not_applicable("The liner is not of metal.")
    return unknown("Whether this metal liner is allowed on a wood fire")


@NBC.rule("CA-013", "9.21.3.8", "Gap round the liner", "mm", "liner_gap")
def gap(facts: Facts) -> Compared:
    """A liner that is held fast cracks when it grows hot."""
    return at_least(facts.liner_gap, 10 * MM)


@NBC.rule("CA-014", "9.21.3.9", "Liner joint mortar", "yes-no", "liner_mortar")
def liner_mortar(facts: Facts) -> Compared:
    """Common mortar falls out of a joint that glows."""
    return yes(facts.abroad.liner_mortar)


@NBC.rule("CA-015", "9.21.3.10.(1)", "Liner below the lowest connection", "mm", "liner_start")
def liner_start(facts: Facts) -> Compared:
    """Soot and water need a lined sump below the inlet."""
    if facts.design.second_flue.serves != APPLIANCE:
        outcome = precondition(
            facts.stack.connector, "Whether an appliance is connected", "No appliance is connected."
        )
        if outcome:
            return outcome
    return at_least(facts.abroad.liner_start, 200 * MM)


@NBC.rule(
    "CA-016", "9.21.3.10.(1)", "Liner above the cap, least", "mm", "liner_top_above_enclosing_wall"
)
def liner_top(facts: Facts) -> Compared:
    """Rain must run off the cap and not into the gap."""
    return at_least(facts.liner_top_above_enclosing_wall, 50 * MM)


@NBC.rule(
    "CA-017",
    "9.21.3.10.(1)",
    "Liner above the cap, most",
    "mm",
    "liner_top_above_enclosing_wall",
    at_most=True,
)
def liner_top_most(facts: Facts) -> Compared:
    """A liner that stands far out freezes and breaks."""
    return at_most(facts.liner_top_above_enclosing_wall, 100 * MM)
