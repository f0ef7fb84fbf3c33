"""UK: size of the flue, its height, where its outlet lies, and how slender the stack may be."""

from __future__ import annotations

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import MM
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
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import why_unknown
from fireplace_calc.rules.uk.book import ADJ

SMALL_WIDE, SMALL_HIGH = 500 * MM, 550 * MM
"""Opening up to which a flue of 200 mm does, both sizes themselves counting as small. The copy that
was read prints 500 by 500; the table of a liner's maker and the text's other uses have 550. [m]
"""
NEAR_RIDGE, SIDEWAYS = 600 * MM, 2300 * MM
"""Level distances of the outlet rules. [m]"""


def small(facts: Facts) -> bool:
    """Whether the opening is of the small class."""
    return reaches(SMALL_WIDE, facts.opening_width) and reaches(
        SMALL_HIGH, facts.design.opening.clear_height
    )


def _bore_area(facts: Facts) -> float | None:
    return facts.flue_net_area


@ADJ.rule("UK-001", "Table 2", "Round flue, small opening", "mm", "flue_inside_diameter")
def round_small(facts: Facts) -> Compared:
    """Below this size an open fire smokes whatever the chimney."""
    if not small(facts):
        return not_applicable("The opening is over 500 by 550 mm.")
    if facts.flue_shape != "round":
        return not_applicable("The flue is not round.")
    return at_least(facts.frame.bore.width, 200 * MM)


@ADJ.rule("UK-002", "Table 2", "Square or rectangular flue, small opening", "mm2", "flue_net_area")
def other_small(facts: Facts) -> Compared:
    """The same room for the smoke as a round flue gives."""
    if not small(facts):
        return not_applicable("The opening is over 500 by 550 mm.")
    if facts.flue_shape == "round":
        return not_applicable("The flue is round.")
    area = _bore_area(facts)
    return at_least(area, 31416 * MM**2, why_unknown(facts) if area is None else "")


def _short_side(facts: Facts) -> float:
    return min(facts.frame.bore.width, facts.frame.bore.depth)


@ADJ.rule("UK-003", "Table 2", "Short side of the flue, small opening", "mm", "flue_short_side")
def short_side(facts: Facts) -> Compared:
    """A slot chokes with soot."""
    if not small(facts) or facts.flue_shape == "round":
        return not_applicable("For square and rectangular flues of small openings.")
    return at_least(_short_side(facts), 175 * MM, "Read in one copy, which calls it Table 1.")


@ADJ.rule("UK-056", "para 2.7", "Short side of the flue, larger opening", "mm", "flue_short_side")
def short_side_large(facts: Facts) -> Compared:
    """A larger fire needs a wider way, for the smoke and for the brush."""
    if small(facts) or facts.flue_shape == "round":
        return not_applicable("For square and rectangular flues of larger openings.")
    return at_least(_short_side(facts), 200 * MM)


@ADJ.rule(
    "UK-004",
    "Table 2 note; para 2.6",
    "Flue over opening, larger opening",
    "%",
    "flue_over_opening",
)
def share(facts: Facts) -> Compared:
    """A wide mouth needs a wide throat behind it."""
    if small(facts):
        return not_applicable("The opening is not over 500 by 550 mm.")
    area = _bore_area(facts)
    return (
        Compared(NOT_CHECKED, note=why_unknown(facts))
        if area is None
        else at_least(area / facts.opening_area, 0.15)
    )


@ADJ.rule("UK-005", "para 2.6", "Very large flue", "mm2", "flue_net_area", at_most=True)
def very_large(facts: Facts) -> Compared:
    """A huge flue stays cold; have it looked at by somebody who knows."""
    told = facts.design.measured.flue_area  # too large to be is still no larger than told
    found = at_most(_bore_area(facts) if told is None else told, 120_000 * MM**2)
    large = found.verdict == FALLS_SHORT
    return (
        Compared(NOT_CHECKED, found.provided, found.required, "Not forbidden: ask a specialist.")
        if large
        else found
    )


@ADJ.rule("UK-007", "para 2.8", "Height of the flue", "mm", "flue_height_over_opening")
def height(facts: Facts) -> Compared:
    """A short flue draws little, and less when the wind is wrong."""
    return at_least(
        facts.frame.liner_top - facts.frame.clear_top,
        4500 * MM,
        "From the top of the opening to the outlet.",
    )


def _distance_to_ridge(facts: Facts) -> float:
    roof = facts.design.roof
    return 0.0 if roof.position == "through the ridge" else roof.ridge_distance


def at_ridge(facts: Facts) -> bool:
    """Whether the chimney counts as standing at the ridge."""
    return reaches(NEAR_RIDGE, _distance_to_ridge(facts))


def _over_ridge(facts: Facts) -> float:
    return facts.frame.liner_top - facts.design.roof.ridge_level


@ADJ.rule("UK-008", "Diagram 17, A", "Outlet at the ridge", "mm", "outlet_above_ridge")
def ridge(facts: Facts) -> Compared:
    """Over the ridge the wind blows free."""
    if not at_ridge(facts):
        return not_applicable("The chimney stands more than 600 mm from the ridge.")
    return at_least(_over_ridge(facts), 600 * MM)


@ADJ.rule(
    "UK-010", "Diagram 17, B", "Outlet to the roof, sideways", "mm", "outlet_to_roof_sideways"
)
def sideways(facts: Facts) -> Compared:
    """A slope that rises beside the outlet throws the wind down into it."""
    if at_ridge(facts):
        return not_applicable("The chimney stands at the ridge.")
    pitch, over = facts.roof_pitch, facts.frame.liner_top - facts.frame.uphill_contact
    if _over_ridge(facts) >= 0 or pitch <= 0:
        return Compared(MEETS, SIDEWAYS, SIDEWAYS, "The roof does not reach the outlet's level.")
    return at_least(over / pitch, SIDEWAYS, "Level, from the uphill face.")


@ADJ.rule(
    "UK-011",
    "Diagram 17, B(a) or B(b)",
    "Outlet away from the ridge",
    "mm",
    "outlet_above_highest_roof_contact",
)
def off_ridge(facts: Facts) -> Compared:
    """High enough over the slope, or no lower than the ridge."""
    if at_ridge(facts):
        return not_applicable("The chimney stands at the ridge.")
    over = facts.frame.liner_top - facts.frame.uphill_contact
    found = at_least(over, 1000 * MM)
    if found.verdict == FALLS_SHORT and _over_ridge(facts) >= 0:
        return at_least(
            _over_ridge(facts), 0.0, "Level with the ridge or higher, which is enough by itself."
        )
    return found


@ADJ.rule("UK-013", "Diagram 17, C", "Outlet over a roof window", "mm", "outlet_above_rooflight")
def rooflight(facts: Facts) -> Compared:
    """Smoke must not come back in through a window."""
    if facts.abroad.rooflight is None and facts.abroad.above_rooflight is None:
        return unknown("Whether a roof window is near")
    if facts.abroad.rooflight is False:
        return not_applicable("No roof window is near.")
    return at_least(facts.abroad.above_rooflight, 1000 * MM)


@ADJ.rule("UK-014", "Diagram 17, D", "Outlet over a building nearby", "mm", "outlet_above_nearby")
def nearby(facts: Facts) -> Compared:
    """What stands near makes eddies that come down the flue."""
    near = [p.drawn_level for p in facts.design.roof.nearby if reaches(SIDEWAYS, p.drawn_distance)]
    if not near:
        return facts.over_nearby(
            not_applicable("Nothing but the roof itself is told of within 2300 mm.")
        )
    return facts.over_nearby(at_least(facts.frame.liner_top - max(near), 600 * MM))


@ADJ.rule("UK-015", "Diagram 18", "Outlet over thatch or shingles", "mm", "outlet_above_ridge")
def thatch(facts: Facts) -> Compared:
    """One spark lights a thatch."""
    if facts.abroad.thatch is None:
        return unknown("What the roof is covered with")
    if not facts.abroad.thatch:
        return not_applicable("The roof is not easily set alight.")
    return at_least(
        _over_ridge(facts),
        1800 * MM,
        "Over the ridge; the second half of the rule is from memory and not used.",
    )


@ADJ.rule(
    "UK-016",
    "Approved Document A, 2D1, Diagram 20",
    "Slenderness of the chimney",
    "-",
    "height_over_width",
    at_most=True,
)
def slender(facts: Facts) -> Compared:
    """A tall thin stack blows over."""
    least, high = (
        2 * min(facts.frame.stack_half, facts.frame.stack_depth),
        facts.frame.liner_top - facts.frame.uphill_contact,
    )
    if high <= 0:
        return not_applicable("The chimney does not rise over the roof.")
    return at_most(high / least, 4.5, "From the roof contact to the top of the liner.")


@ADJ.rule("UK-017", "Approved Document A, 2D1", "Density for that rule", "kg/m3", "masonry_density")
def dense(facts: Facts) -> Compared:
    """Light masonry has not the weight to stand by itself."""
    found = density(
        {"block": "block"}.get(facts.design.chimney.masonry, facts.design.chimney.masonry)
    )
    return Compared(
        MEETS if found > 1500 else NOT_CHECKED,
        found,
        1500.0,
        "" if found > 1500 else "Lighter masonry has to be designed.",
    )
