"""US IRC R1003.18 and R1003.19: distance of the chimney from whatever burns."""

from __future__ import annotations

from fireplace_calc.rules.comparing import (
    Compared,
    at_least,
    inches,
    not_applicable,
    one_of,
    unknown,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import BEFORE_2024, IRC, ONLY_2024
from fireplace_calc.rules.us.clearance import NO_EDGE, NOT_IN_WALL


def _chimney_excepted(facts: Facts) -> bool:
    return bool(facts.liner_listed or facts.in_masonry_wall)


@IRC.rule("CLR-20", "R1003.18", "Air around the chimney, indoors", "in", "clear_chimney")
def air_chimney(facts: Facts) -> Compared:
    """Framing around a chimney is baked at every fire."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if facts.chimney_location == "exterior":
        return not_applicable("The chimney stands wholly outside.")
    if _chimney_excepted(facts):
        return not_applicable("A listed liner or a masonry wall follows its exception.")
    return at_least(
        facts.clear_chimney,
        inches(2),
        "A chimney let into the outside wall counts as indoors.",
    )


@IRC.rule(
    "CLR-26", "R1003.18", "Nothing in the chimney's air space", "word", "chimney_airspace_fill"
)
def chimney_airspace_empty(facts: Facts) -> Compared:
    """What fills the space carries the heat across it; here no edition lets anything but fireblock
    in.
    """
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if _chimney_excepted(facts):
        return not_applicable("A listed liner or a masonry wall follows its exception.")
    return one_of(facts.chimney_airspace_fill, ("none", "fireblock"))


@IRC.rule("CLR-21", "R1003.18", "Air around the chimney, outdoors", "in", "clear_chimney")
def air_chimney_outside(facts: Facts) -> Compared:
    """Outdoors the masonry stays cooler, but not at the eaves and siding."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if facts.chimney_location != "exterior":
        return not_applicable("The chimney does not stand wholly outside.")
    if _chimney_excepted(facts):
        return not_applicable("A listed liner or a masonry wall follows its exception.")
    return at_least(facts.clear_chimney, inches(1))


@IRC.rule("CLR-22", "R1003.18 exception 1", "Liner listed for contact", "in", "clear_chimney")
def listed_chimney(facts: Facts) -> Compared:
    """A listed lining system has been tested with wood against the masonry."""
    if facts.liner_listed is None:
        return unknown("Whether the liner is listed for contact")
    if not facts.liner_listed:
        return not_applicable("The liner is not listed for contact.")
    return at_least(facts.clear_chimney, 0.0, "As its listing says.")


def _chimney_in_wall(facts: Facts, limit: float) -> Compared:
    if facts.in_masonry_wall is None:
        return unknown("Whether it is built into a masonry wall")
    if not facts.in_masonry_wall:
        return not_applicable(NOT_IN_WALL)
    return at_least(
        facts.combustible_to_flue_lining_inner_face,
        limit,
        "Through masonry, to the inside face.",
    )


@IRC.rule(
    "CLR-23a",
    "R1003.18 exception 2",
    "Chimney in a masonry wall",
    "in",
    "combustible_to_flue_lining_inner_face",
    editions=BEFORE_2024,
)
def chimney_in_wall(facts: Facts) -> Compared:
    """Through solid masonry the heat needs this much to spread and fade."""
    return _chimney_in_wall(facts, inches(12))


@IRC.rule(
    "CLR-23b",
    "R1003.18 exception 2",
    "Chimney in a masonry wall",
    "in",
    "combustible_to_flue_lining_inner_face",
    editions=ONLY_2024,
)
def chimney_in_wall_2024(facts: Facts) -> Compared:
    """Through solid masonry the heat needs this much to spread and fade."""
    return _chimney_in_wall(facts, inches(8))


def chimney_edge_through_masonry(facts: Facts, limit: float = inches(8)) -> Compared:
    """An edge that touches the chimney, through masonry to the inside of the flue's lining."""
    if facts.edge_trim is None:
        return unknown("Whether trim or sheathing touches the masonry")
    if not facts.edge_trim:
        return not_applicable(NO_EDGE)
    return at_least(
        facts.combustible_to_flue_lining_inner_face,
        limit,
        "Through masonry, to the inside face.",
    )


@IRC.rule(
    "CLR-24b",
    "R1003.18 exception 3",
    "Edge of trim at the chimney",
    "in",
    "combustible_to_flue_lining_inner_face",
    editions=BEFORE_2024,
)
def chimney_edge(facts: Facts) -> Compared:
    """An edge in the open loses its heat to the air."""
    return chimney_edge_through_masonry(facts)


@IRC.rule(
    "CLR-24c",
    "R1003.18 exception 3",
    "Combustible at the chimney",
    "in",
    "combustible_to_flue_lining_inner_face",
    editions=ONLY_2024,
)
def chimney_edge_2024(facts: Facts) -> Compared:
    """Masonry this thick keeps the side of a chimney below the heat that chars wood."""
    return chimney_edge_through_masonry(facts)


@IRC.rule("CLR-25", "R1003.19", "Fireblock at the chimney", "word", "fireblock_material")
def chimney_fireblock(facts: Facts) -> Compared:
    """The space around the chimney carries fire from floor to floor."""
    return one_of(facts.fireblock_material, ("noncombustible",))
