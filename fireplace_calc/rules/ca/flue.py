"""Canada 9.21: size and lining of the flue."""

from __future__ import annotations

from math import pi

from fireplace_calc.base.tables.canada import canada_rectangular_flues, canada_round_flues
from fireplace_calc.base.units import DEG, MM
from fireplace_calc.design.second_flue import APPLIANCE, SOLID_FUEL
from fireplace_calc.rules.ca.book import NBC, chimney_height, in_cell, precondition
from fireplace_calc.rules.comparing import (
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
from fireplace_calc.rules.second_area import second_net_area
from fireplace_calc.rules.told_areas import why_unknown

HEIGHT_NOTE = "Height from the firebox floor; where the table counts it from was not read."


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


def _inside(facts: Facts) -> float | None:
    """Inside diameter of a round flue, from the measured area where there is one; none where that
    cannot be. [m]
    """
    if facts.design.measured.flue_area is None:
        return facts.frame.bore.width
    return None if facts.flue_net_area is None else (4 * facts.flue_net_area / pi) ** 0.5


@NBC.rule(
    "CA-006", "9.21.2.5.(1) Table A", "Round flue for the opening", "mm", "flue_inside_diameter"
)
def round_flue(facts: Facts) -> Compared:
    """Too small chokes the fire; too large stays cold and lets air fall down beside the smoke."""
    if facts.flue_shape != "round":
        return not_applicable("The flue is not round.")
    inside = _inside(facts)
    if inside is None:
        return Compared(NOT_CHECKED, note=why_unknown(facts))
    cell = next(
        (c for c in canada_round_flues() if in_cell(c, facts.opening_area, chimney_height(facts))),
        None,
    )
    if cell is None:
        return Compared(
            NOT_CHECKED,
            inside,
            None,
            "Outside the table: opening to 2.20 m², chimney 3 to 12 m.",
        )
    if cell.flue_low is None or cell.flue_high is None:
        return Compared(NOT_CHECKED, inside, None, "The table has a dash here and gives no size.")
    found = at_least(
        inside,
        cell.flue_low,
        f"And no more than {cell.flue_high * 1000:.0f} mm. {HEIGHT_NOTE}",
    )
    if found.verdict == MEETS and not reaches(cell.flue_high, inside):
        return Compared(
            FALLS_SHORT,
            inside,
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
    least, most = cells[0] if cells else (None, None)
    if least is None or most is None:
        return unknown("This cell of the table was not read; its size")
    bore = facts.frame.bore
    ours = tuple(sorted((bore.width, bore.depth)))
    for wanted, size, word in (
        (tuple(sorted(least)), ours, "smallest"),
        (ours, tuple(sorted(most)), "largest"),
    ):
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
    outcome = precondition(
        facts.stack.connector, "Whether an appliance is connected", "No appliance is connected."
    )
    return outcome or unknown("How far below it starts")


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
