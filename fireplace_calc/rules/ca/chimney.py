"""Canada 9.21: the chimney, its flue, its lining, its height, what keeps it upright, and its
clearances.
"""

from __future__ import annotations

from math import pi

from fireplace_calc.base.tables import canada_rectangular_flues, canada_round_flues
from fireplace_calc.base.units import DEG, MM
from fireplace_calc.geometry.frame import highest_within
from fireplace_calc.rules.ca.book import NBC, chimney_height, in_cell, told
from fireplace_calc.rules.core import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts

HEIGHT_NOTE = "Height from the firebox floor; where the table counts it from was not read."


@NBC.rule(
    "CA-001", "9.21.1.1.(1)", "Chimney within the section", "m", "chimney_height", at_most=True
)
def scope(facts: Facts) -> Compared:
    """Above this height the figures of this section no longer hold and another standard takes over."""
    found = at_most(chimney_height(facts), 12.0)
    high = found.verdict == FALLS_SHORT
    return (
        Compared(NOT_CHECKED, found.provided, found.required, "Higher than the section covers.")
        if high
        else found
    )


@NBC.rule("CA-002", "9.21.1.1; 6.3", "Appliance output", "word", "rated_heat_output")
def output(facts: Facts) -> Compared:
    """A fireplace is not counted in kilowatts."""
    return not_applicable("For appliances.")


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


@NBC.rule("CA-005", "9.21.2.4.(2)", "Flue of an appliance", "word", "flue_area")
def appliance_flue(facts: Facts) -> Compared:
    """Fireplaces have a table of their own."""
    return not_applicable("A fireplace goes by the tables for fireplaces.")


def _inside(facts: Facts) -> float | None:
    """Inside diameter of a round flue, from the measured area where there is one. [m]"""
    area = facts.design.measured.flue_area
    return (4 * area / pi) ** 0.5 if area else facts.frame.bore.width


@NBC.rule(
    "CA-006", "9.21.2.5.(1) Table A", "Round flue for the opening", "mm", "flue_inside_diameter"
)
def round_flue(facts: Facts) -> Compared:
    """Too small chokes the fire; too large stays cold and lets air fall down beside the smoke."""
    if facts.flue_shape != "round":
        return not_applicable("The flue is not round.")
    cell = next(
        (c for c in canada_round_flues() if in_cell(c, facts.opening_area, chimney_height(facts))),
        None,
    )
    if cell is None:
        return Compared(
            NOT_CHECKED,
            _inside(facts),
            None,
            "Outside the table: opening to 2.20 m², chimney 3 to 12 m.",
        )
    if cell.flue_low is None:
        return Compared(
            NOT_CHECKED, _inside(facts), None, "The table has a dash here and gives no size."
        )
    found = at_least(
        _inside(facts),
        cell.flue_low,
        f"And no more than {cell.flue_high * 1000:.0f} mm. {HEIGHT_NOTE}",
    )
    if found.verdict == MEETS and not reaches(cell.flue_high, found.provided):
        return Compared(
            FALLS_SHORT,
            found.provided,
            cell.flue_high,
            f"Larger than the table allows. {HEIGHT_NOTE}",
        )
    return found


@NBC.rule(
    "CA-007", "9.21.2.5.(1) Table B", "Rectangular flue for the opening", "mm", "flue_inside_size"
)
def rectangular_flue(facts: Facts) -> Compared:
    """Too small chokes the fire; too large stays cold."""
    if facts.flue_shape == "round":
        return not_applicable("The flue is round.")
    cells = [
        (low, high)
        for c, low, high in canada_rectangular_flues()
        if in_cell(c, facts.opening_area, chimney_height(facts))
    ][:1]
    if not cells or cells[0][0] is None or cells[0][1] is None:
        return unknown("This cell of the table was not read; its size")
    (least, most), bore = cells[0], facts.frame.bore
    ours = sorted((bore.width, bore.depth))
    for wanted, size, word in ((sorted(least), ours, "smallest"), (ours, sorted(most), "largest")):
        if not (reaches(size[0], wanted[0]) and reaches(size[1], wanted[1])):
            limit = least if word == "smallest" else most
            return Compared(
                FALLS_SHORT,
                ours[0],
                min(limit),
                f"The {word} flue is {limit[0] * 1000:.0f} by {limit[1] * 1000:.0f} mm.",
            )
    return Compared(
        MEETS,
        ours[0],
        min(least),
        f"Between the smallest and the largest of the table. {HEIGHT_NOTE}",
    )


@NBC.rule(
    "CA-008", "house-construction guide", "Flue over opening, guide", "%", "flue_over_opening"
)
def guide_ratio(facts: Facts) -> Compared:
    """A rule of thumb beside the code: a tenth of the opening."""
    if facts.flue_net_area is None:
        return unknown("The net area of the flue")
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
    said = told(
        facts.stack.connector, "Whether an appliance is connected", "No appliance is connected."
    )
    return said or unknown("How far below it starts")


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
    return at_least(
        facts.frame.liner_top - level, 600 * MM, f"Over the {what}; the 3 m run to the chimney."
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


@NBC.rule("CA-025", "9.21.4.7", "Soot door at the foot", "yes-no", "soot_door")
def soot_door(facts: Facts) -> Compared:
    """Soot has to be got at, and the door must not leak."""
    return yes(facts.abroad.soot_door, "Exceptions were not read.")


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
    if said := _flues(facts):
        return said
    if facts.liner_kind != "ASTM C315 clay":
        return not_applicable("The liners are not of clay.")
    return at_least(facts.stack.wythe_between_flues, 70 * MM)


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
    said = told(facts.abroad.soot_door, "Whether there is a soot door", "There is no soot door.")
    return said or at_least(facts.abroad.cleanout_clearance, 150 * MM)


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
    said = told(
        facts.abroad.joists_on_wall,
        "Whether joists rest on the flue's wall",
        "No joist rests on it.",
    )
    return said or at_least(facts.abroad.joist_masonry, 290 * MM)
