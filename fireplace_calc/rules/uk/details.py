"""UK: bends, what burns nearby, walls, capping, air, hearths and recess."""

from __future__ import annotations

from fireplace_calc.base.units import DEG, MM
from fireplace_calc.rules.comparing import (
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
from fireplace_calc.rules.uk.book import ADJ


@ADJ.rule(
    "UK-018", "NHBC 6.8.6", "Lean of the flue", "deg", "liner_slope_from_vertical", at_most=True
)
def lean(facts: Facts) -> Compared:
    """Smoke that has to turn loses its draft and drops its soot."""
    return at_most(facts.liner_slope_from_vertical, 45 * DEG)


@ADJ.rule("UK-019", "NHBC 6.8.6", "Bends in the flue", "count", "bends", at_most=True)
def bends(facts: Facts) -> Compared:
    """Every bend holds soot and slows the smoke."""
    return at_most(2.0 if facts.flue_offset > 0 else 0.0, 2.0, "An offset is two bends.")


@ADJ.rule(
    "UK-020",
    "Section 1",
    "Lean of the flue, Approved Document",
    "deg",
    "liner_slope_from_vertical",
    at_most=True,
)
def lean_adj(facts: Facts) -> Compared:
    """Smoke that has to turn loses its draft."""
    return at_most(
        facts.liner_slope_from_vertical,
        45 * DEG,
        "Up to four bends with openings for sweeping between.",
    )


@ADJ.rule("UK-021", "NHBC 6.8.6", "One fire to a flue", "yes-no", "own_flue")
def own_flue(facts: Facts) -> Compared:
    """Two fires on one flue send each other's smoke into the room."""
    return (
        unknown("Whether an appliance shares the flue")
        if facts.stack.connector is None
        else yes(not facts.stack.connector)
    )


@ADJ.rule("UK-022", "NHBC 6.8.6", "Access for sweeping", "yes-no", "sweeping")
def soot_box(facts: Facts) -> Compared:
    """Soot that falls beside the fire lies there until it burns."""
    if facts.flue_offset <= 0:
        return not_applicable("The chimney stands straight above the fire.")
    return yes(facts.abroad.sweeping)


@ADJ.rule(
    "UK-023",
    "NHBC 6.8.6",
    "Combustibles to the flue, or to the chimney's face",
    "mm",
    "combustible_to_flue_lining_inner_face",
)
def combustibles(facts: Facts) -> Compared:
    """Far enough through the masonry, or a gap of air outside it."""
    through, gap = facts.combustible_to_flue_lining_inner_face, facts.abroad.to_chimney_face
    gap = facts.clear_chimney if gap is None else gap
    if gap is not None and reaches(gap, 40 * MM):
        return Compared(
            MEETS, gap, 40 * MM, "By the air gap to the outer face, not accepted in Scotland."
        )
    if through is None and gap is not None:
        return Compared(
            NOT_CHECKED,
            gap,
            40 * MM,
            "Short of the gap; the distance to the flue is not known yet.",
        )
    return at_least(through, 200 * MM, "To the inside of the flue.")


@ADJ.rule("UK-025", "NHBC 6.8.22", "Metal fixings in wood", "mm", "metal_fixing")
def fixings(facts: Facts) -> Compared:
    """Metal carries the heat into the wood."""
    return at_least(facts.abroad.metal_fixing, 50 * MM)


@ADJ.rule("UK-027", "NHBC 6.8.6", "Wall round the flue", "mm", "chimney_wall_thickness")
def wall(facts: Facts) -> Compared:
    """The wall keeps fire in and weather out."""
    return at_least(facts.chimney_wall_thickness, 100 * MM, "Liner not counted (from memory).")


@ADJ.rule("UK-028", "NHBC 6.8.6", "Wall beside another dwelling", "mm", "chimney_wall_thickness")
def party_wall(facts: Facts) -> Compared:
    """Smoke must not find its way to people who have no fire."""
    if facts.abroad.other_space is None:
        return unknown("What lies beside the flue")
    if not facts.abroad.other_space:
        return not_applicable("No other dwelling or compartment lies beside it.")
    return at_least(facts.chimney_wall_thickness, 200 * MM)


@ADJ.rule("UK-029", "NHBC 6.8.6", "Materials of the chimney", "yes-no", "fit_for_1100")
def materials(facts: Facts) -> Compared:
    """A chimney fire is hotter than any fire on the hearth."""
    return yes(facts.abroad.fit_for_1100, "They stand 1100 °C, by their makers' word.")


@ADJ.rule("UK-057", "amendment of 2022", "Carbon monoxide alarm", "yes-no", "co_alarm")
def co_alarm(facts: Facts) -> Compared:
    """Nobody smells carbon monoxide, least of all asleep."""
    return yes(
        facts.abroad.co_alarm, "With any new fixed fire, from October 2022; read at second hand."
    )


@ADJ.rule("UK-032", "NHBC 6.8.7", "Liner over the capping", "mm", "liner_top_above_enclosing_wall")
def liner_top(facts: Facts) -> Compared:
    """Rain must run off the capping and not into the flue."""
    return at_least(facts.liner_top_above_enclosing_wall, 20 * MM)


@ADJ.rule("UK-033", "NHBC 6.8.7", "Capping beyond the wall", "mm", "cap_overhang")
def overhang(facts: Facts) -> Compared:
    """Water that runs down the face freezes in its joints."""
    return at_least(facts.design.chimney.overhang, 50 * MM)


@ADJ.rule("UK-034", "NHBC 6.8.7", "Drip off the wall", "mm", "drip_distance")
def drip(facts: Facts) -> Compared:
    """A drip too near the wall drips on it."""
    return at_least(facts.abroad.drip_distance, 30 * MM)


@ADJ.rule("UK-035", "Table 1", "Air vent over throat", "%", "vent_over_throat")
def vent(facts: Facts) -> Compared:
    """What goes up has to come in somewhere."""
    area = facts.air_passage_area
    if not area:
        return unknown("The free area of the air vent")
    return at_least(area / facts.throat_area, 0.5, "A permanent vent into the room.")


@ADJ.rule(
    "UK-036",
    "Table 1",
    "Air vent under a canopy",
    "%",
    "vent_over_flue",
    outside=True,
)
def canopy(facts: Facts) -> Compared:
    """Without a throat the flue itself sets the air."""
    return not_applicable("This fireplace has a throat.")


@ADJ.rule("UK-042", "hearth section", "Constructional hearth", "mm", "hearth_thickness")
def hearth(facts: Facts) -> Compared:
    """Heat goes down slowly, for hours."""
    return at_least(facts.hearth_thickness, 125 * MM)


@ADJ.rule("UK-043", "hearth section", "Wood under the hearth", "mm", "wood_below")
def wood_below(facts: Facts) -> Compared:
    """Wood below a hearth bakes unseen."""
    if facts.hearth_support is None:
        return unknown("What carries the hearth")
    if facts.hearth_support != "combustible":
        return not_applicable("Nothing below the hearth burns.")
    below, gap = facts.abroad.wood_below, facts.abroad.gap_below
    if gap is not None and reaches(gap, 50 * MM):
        return Compared(MEETS, gap, 50 * MM, "By the air gap under the hearth.")
    return at_least(below, 250 * MM, "Or an air gap of 50 mm under the hearth.")


@ADJ.rule("UK-045", "Diagram 24", "Constructional hearth in front", "mm", "hearth_extension_front")
def hearth_front(facts: Facts) -> Compared:
    """Floor that embers can fall on."""
    return at_least(
        facts.hearth_extension_front, 500 * MM, "Read at second hand, not in the document itself."
    )


@ADJ.rule(
    "UK-046", "Diagram 24", "Constructional hearth at the sides", "mm", "hearth_extension_side"
)
def hearth_side(facts: Facts) -> Compared:
    """Sparks fly sideways too."""
    return at_least(
        facts.hearth_extension_side, 150 * MM, "Read at second hand, not in the document itself."
    )


@ADJ.rule("UK-047", "Diagram 26", "Visible hearth in front", "mm", "hearth_extension_front")
def visible_front(facts: Facts) -> Compared:
    """People must see where the rug may not lie."""
    return at_least(
        facts.hearth_extension_front, 300 * MM, "Read at second hand, not in the document itself."
    )


@ADJ.rule("UK-048", "Diagram 26", "Visible hearth at the sides", "mm", "hearth_extension_side")
def visible_side(facts: Facts) -> Compared:
    """People must see where the rug may not lie."""
    return at_least(facts.hearth_extension_side, 150 * MM)


@ADJ.rule(
    "UK-049", "hearth section", "Hearth of a free-standing fire", "mm", "hearth_plan", outside=True
)
def free_standing(facts: Facts) -> Compared:
    """Without a recess sparks fly to all sides."""
    return not_applicable("The fire stands in a recess.")


@ADJ.rule(
    "UK-050", "recess diagram", "Recess, back and sides", "mm", "firebox_wall_thickness_total"
)
def recess(facts: Facts) -> Compared:
    """What stands behind the fire keeps the heat from the house."""
    return at_least(
        facts.firebox_wall_thickness_total,
        200 * MM,
        "100 mm in an outside wall that nothing combustible clads.",
    )


@ADJ.rule(
    "UK-052", "walls next to hearths", "Wall close to a fire", "mm", "wall_beside", outside=True
)
def wall_beside(facts: Facts) -> Compared:
    """A wall near a fire has to be one that cannot burn."""
    return not_applicable("The fire stands in a recess.")


@ADJ.rule("UK-053", "lining section", "Liners well set", "yes-no", "liners_socket_up")
def liners(facts: Facts) -> Compared:
    """Sockets up, tar runs back into the flue and not into the wall."""
    return yes(facts.abroad.liners_socket_up)
