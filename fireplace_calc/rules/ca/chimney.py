"""Canada 9.21: the chimney, its flue, its lining, its height, what keeps it upright, and its
clearances.
"""

from __future__ import annotations

from fireplace_calc.base.units import MM
from fireplace_calc.design.second_flue import APPLIANCE
from fireplace_calc.geometry.roofline import highest_within
from fireplace_calc.rules.ca.book import NATIONAL, NBC, ONTARIO, chimney_height, precondition
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts


@NBC.rule(
    "CA-001", "9.21.1.1.(1)", "Chimney within the section", "m", "chimney_height", at_most=True
)
def scope(facts: Facts) -> Compared:
    """Above this height the figures of this section no longer hold and another standard takes
    over.
    """
    found = at_most(chimney_height(facts), 12.0)
    high = found.verdict == FALLS_SHORT
    return (
        Compared(NOT_CHECKED, found.provided, found.required, "Higher than the section covers.")
        if high
        else found
    )


@NBC.rule(
    "CA-002",
    "9.21.1.1; 6.3",
    "Appliance output",
    "word",
    "rated_heat_output",
    outside=True,
)
def output(facts: Facts) -> Compared:
    """A fireplace is not counted in kilowatts."""
    return not_applicable("For appliances.")


@NBC.rule(
    "CA-019",
    "9.21.4.4.(1)(a)",
    "Flue top over the roof where it comes out",
    "mm",
    "flue_top_above_highest_roof_contact",
)
def over_contact(facts: Facts) -> Compared:
    """Near the roof the wind presses the smoke down."""
    measured = facts.design.measured.over_contact
    return at_least(
        facts.frame.liner_top - facts.frame.uphill_contact if measured is None else measured,
        900 * MM,
    )


@NBC.rule(
    "CA-020",
    "9.21.4.4.(1)(b)",
    "Flue top over anything within 3 m",
    "mm",
    "flue_top_above_building_within_3m",
)
def over_building(facts: Facts) -> Compared:
    """What stands near makes eddies that come down the flue."""
    measured = facts.design.measured.over_nearby
    if measured is not None:
        return at_least(measured, 600 * MM, "As measured on site.")
    level, what = highest_within(facts.design, facts.frame.uphill_contact, 3000 * MM)
    return facts.over_nearby(
        at_least(
            facts.frame.liner_top - level, 600 * MM, f"Over the {what}; the 3 m run to the chimney."
        )
    )


def _braced(facts: Facts, found: Compared) -> Compared:
    """Both figures are for a chimney that nothing braces."""
    if facts.abroad.braced:
        return not_applicable("The chimney is braced sideways.")
    if found.verdict == FALLS_SHORT and facts.abroad.braced is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Only with bracing for wind; whether it is braced is not known yet.",
        )
    return found


@NBC.rule(
    "CA-022", "9.21.4.5.(2)(a)", "Least side of an unbraced chimney", "mm", "chimney_least_side"
)
def least_side(facts: Facts) -> Compared:
    """A slender stack sways and cracks at the roof."""
    return _braced(
        facts, at_least(2 * min(facts.frame.stack_half, facts.frame.stack_depth), 400 * MM)
    )


@NBC.rule(
    "CA-023",
    "9.21.4.5.(2)(b)",
    "Free height of an unbraced chimney",
    "mm",
    "free_height",
    at_most=True,
)
def free_height(facts: Facts) -> Compared:
    """Wind bends what nothing holds."""
    high = facts.chimney_top_above_highest_roof_contact
    return (
        _braced(facts, at_most(high, 3600 * MM))
        if high > 0
        else not_applicable("The chimney does not rise over the roof.")
    )


@NBC.rule("CA-024", "9.21.4.6", "Cap beyond the wall", "mm", "cap_overhang")
def overhang(facts: Facts) -> Compared:
    """Water that runs down the face freezes in its joints."""
    return at_least(facts.design.chimney.overhang, 25 * MM)


@NBC.rule("CA-074", "9.21.4.6", "Bond break at a cast cap", "yes-no", "liner_bond_break")
def bond_break(facts: Facts) -> Compared:
    """A cap cast against the liner cracks when the liner grows."""
    if facts.cap_material is None:
        return unknown("The cap's material")
    if facts.cap_material != "concrete":
        return not_applicable("The cap is not cast.")
    return yes(facts.liner_bond_break)


@NBC.rule("CA-025", "9.21.4.7", "Soot door at the foot", "yes-no", "soot_door", editions=NATIONAL)
def soot_door(facts: Facts) -> Compared:
    """Soot has to be got at, and the door must not leak."""
    return yes(
        facts.abroad.soot_door, "In Ontario not asked of a flue built for a masonry fireplace."
    )


@NBC.rule("CA-025", "9.21.4.7", "Soot door at the foot", "yes-no", "soot_door", editions=ONTARIO)
def soot_door_ontario(facts: Facts) -> Compared:
    """A fireplace's soot is swept up from its hearth; an appliance's flue has no hearth."""
    if facts.design.second_flue.serves != APPLIANCE:
        return not_applicable("Not asked of a flue built for a masonry fireplace.")
    return yes(facts.abroad.soot_door, "For the appliance's flue.")


@NBC.rule("CA-026", "9.21.4.8", "Chimney wall", "mm", "chimney_wall_thickness")
def wall(facts: Facts) -> Compared:
    """The wall keeps fire in and weather out."""
    return at_least(facts.chimney_wall_thickness, 70 * MM)


@NBC.rule(
    "CA-027", "house-construction guide", "Chimney wall, guide", "mm", "chimney_wall_thickness"
)
def wall_guide(facts: Facts) -> Compared:
    """The code's figure, rounded as guides print it."""
    return at_least(facts.chimney_wall_thickness, 75 * MM, "A guide.")


def _flues(facts: Facts) -> Compared | None:
    if facts.anchorage.n_flues is None:
        return unknown("The number of flues")
    return not_applicable("There is one flue.") if facts.anchorage.n_flues < 2 else None


@NBC.rule("CA-028", "9.21.4.9.(1)", "Masonry between clay liners", "mm", "wythe_between_flues")
def between(facts: Facts) -> Compared:
    """A crack between two flues makes them one."""
    if outcome := _flues(facts):
        return outcome
    if facts.liner_kind != "ASTM C315 clay":
        return not_applicable("The liners are not of clay.")
    return at_least(facts.wythe_between_flues, 70 * MM)


@NBC.rule(
    "CA-029", "9.21.4.9.(1)", "Firebrick between firebrick-lined flues", "mm", "wythe_between_flues"
)
def between_firebrick(facts: Facts) -> Compared:
    """Firebrick between hot flues has to stand both."""
    return _flues(facts) or not_applicable("The flues are not lined with firebrick.")


@NBC.rule("CA-030", "9.21.4.9.(2)", "Liners held in place", "yes-no", "liners_held")
def liners_held(facts: Facts) -> Compared:
    """Liners that lean on each other open their joints."""
    return _flues(facts) or yes(facts.abroad.liners_held)


@NBC.rule("CA-031", "9.21.5.1.(1)(a)", "Framing at an inside chimney", "mm", "clear_chimney")
def framing_inside(facts: Facts) -> Compared:
    """Wood near a chimney dries for years until it lights."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    return (
        not_applicable("It stands outside.")
        if facts.chimney_location == "exterior"
        else at_least(facts.clear_chimney, 50 * MM)
    )


@NBC.rule("CA-032", "9.21.5.1.(1)(b)", "Framing at an outside chimney", "mm", "clear_chimney")
def framing_outside(facts: Facts) -> Compared:
    """Outdoors the chimney loses its heat on three sides."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    return (
        at_least(facts.clear_chimney, 12 * MM)
        if facts.chimney_location == "exterior"
        else not_applicable("It stands inside.")
    )


@NBC.rule("CA-033", "9.21.5.1.(2)", "Soot door to combustibles", "mm", "cleanout_clearance")
def soot_door_clear(facts: Facts) -> Compared:
    """Hot soot falls out of an open door."""
    outcome = precondition(
        facts.abroad.soot_door, "Whether there is a soot door", "There is no soot door."
    )
    return outcome or at_least(facts.abroad.cleanout_clearance, 150 * MM)


@NBC.rule(
    "CA-034", "9.21.5.1.(3)", "Flooring and ceiling to the chimney", "mm", "flooring_clearance"
)
def flooring(facts: Facts) -> Compared:
    """Thin finishes char first."""
    return at_least(facts.abroad.flooring_clearance, 12 * MM)


@NBC.rule("CA-035", "9.21.5.2.(1)", "Gap closed", "yes-no", "gap_closed")
def gap_closed(facts: Facts) -> Compared:
    """An open gap carries fire from floor to floor."""
    return yes(facts.abroad.gap_closed)


@NBC.rule("CA-036", "9.21.5.3.(1)", "Masonry between joists and flue", "mm", "joist_masonry")
def joists(facts: Facts) -> Compared:
    """Wood bedded in the flue's wall is baked from within."""
    outcome = precondition(
        facts.abroad.joists_on_wall,
        "Whether joists rest on the flue's wall",
        "No joist rests on it.",
    )
    return outcome or at_least(facts.abroad.joist_masonry, 290 * MM)
