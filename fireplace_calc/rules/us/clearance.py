"""US IRC R1001.11 to R1001.13, R1003.18, R1003.19: distance from whatever burns."""

from __future__ import annotations

from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    inches,
    not_applicable,
    one_of,
    reaches,
    same,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import BEFORE_2024, IRC, LATEST, ONLY_2024
from fireplace_calc.rules.us.hearth import LARGE

EXCEPTIONS = "A listed fireplace or one built into a masonry wall follows its exception."
NO_EDGE = "No trim or sheathing edge touches the masonry."
NOT_IN_WALL = "Not built into a masonry or concrete wall."
NEAR, FREE = inches(6), inches(12)
"""Trim on the face: nothing nearer than the first; beyond the second it may stand out as it likes.
[m]
"""


def _excepted(facts: Facts) -> bool:
    return bool(facts.fireplace_listed or facts.in_masonry_wall)


@IRC.rule("CLR-01", "R1001.11", "Air in front and beside", "in", "clear_front")
def air_front_side(facts: Facts) -> Compared:
    """Wood baked for years lights at far less heat than new wood; the air space keeps it cool."""
    if _excepted(facts):
        return not_applicable(EXCEPTIONS)
    return all_lengths(facts.clear_front, facts.clear_side, inches(2))


def all_lengths(a: float | None, b: float | None, limit: float) -> Compared:
    """Both lengths reach the limit; the smaller is shown, and one that is missing keeps the answer
    open.
    """
    known = [x for x in (a, b) if x is not None]
    if not known:
        return at_least(None, limit)
    found = at_least(min(known), limit)
    if len(known) < 2 and found.verdict != FALLS_SHORT:
        return Compared(NOT_CHECKED, None, limit, "Front or side is not known yet.")
    return found


@IRC.rule("CLR-02", "R1001.11", "Air behind", "in", "clear_back")
def air_back(facts: Facts) -> Compared:
    """The back is the hottest wall of all."""
    if _excepted(facts):
        return not_applicable(EXCEPTIONS)
    return at_least(facts.clear_back, inches(4))


@IRC.rule(
    "CLR-03", "R1001.11", "Nothing in the air space", "word", "airspace_fill", editions=BEFORE_2024
)
def airspace_empty(facts: Facts) -> Compared:
    """What fills the space carries the heat across it."""
    return one_of(facts.airspace_fill, ("none", "fireblock"))


@IRC.rule(
    "CLR-03",
    "R1001.11",
    "What may lie in the air space",
    "word",
    "airspace_fill",
    editions=ONLY_2024,
)
def airspace_noncombustible(facts: Facts) -> Compared:
    """What fills the space must at least not burn."""
    return one_of(facts.airspace_fill, ("none", "fireblock", "noncombustible"))


@IRC.rule("CLR-04", "R1001.11 exception 1", "Listed masonry fireplace", "in", "clear_any")
def listed_fireplace(facts: Facts) -> Compared:
    """A listed unit was tested at the distances its listing states."""
    if facts.fireplace_listed is None:
        return unknown("Whether the fireplace is listed for contact")
    if not facts.fireplace_listed:
        return not_applicable("The fireplace is not listed for contact.")
    known = [x for x in (facts.clear_front, facts.clear_side, facts.clear_back) if x is not None]
    if len(known) < 3:
        return unknown("One of the air spaces")
    return at_least(min(known), 0.0, "As its listing says.")


@IRC.rule(
    "CLR-05",
    "R1001.11 exception 2",
    "Fireplace in a masonry wall",
    "in",
    "combustible_to_firebox_lining_inner_face",
)
def in_wall(facts: Facts) -> Compared:
    """Through solid masonry the heat needs this much to spread and fade."""
    if facts.in_masonry_wall is None:
        return unknown("Whether it is built into a masonry wall")
    if not facts.in_masonry_wall:
        return not_applicable(NOT_IN_WALL)
    return at_least(
        facts.combustible_to_firebox_lining_inner_face,
        inches(12),
        "Through masonry, to the inside face.",
    )


def edge_through_masonry(facts: Facts, limit: float) -> Compared:
    """An edge that touches the masonry, through it to the inside of the firebox lining."""
    if facts.edge_trim is None:
        return unknown("Whether trim or sheathing touches the masonry")
    if not facts.edge_trim:
        return not_applicable(NO_EDGE)
    return at_least(
        facts.combustible_to_firebox_lining_inner_face,
        limit,
        "Through masonry, to the inside face.",
    )


@IRC.rule(
    "CLR-06a",
    "R1001.11 exception 3",
    "Edge of trim or sheathing",
    "in",
    "combustible_to_firebox_lining_inner_face",
    editions=BEFORE_2024,
)
def edge_any(facts: Facts) -> Compared:
    """An edge in the open loses its heat to the room, so it may touch where the wall is thick."""
    return edge_through_masonry(facts, inches(12))


@IRC.rule(
    "CLR-06b",
    "R1001.11 exception 3",
    "Edge of trim or sheathing, small opening",
    "in",
    "combustible_to_firebox_lining_inner_face",
    editions=ONLY_2024,
)
def edge_small(facts: Facts) -> Compared:
    """A small fire heats the wall less."""
    if reaches(facts.opening_area, LARGE):
        return not_applicable("The opening is 6 sq ft or larger.")
    return edge_through_masonry(facts, inches(8))


@IRC.rule(
    "CLR-06c",
    "R1001.11 exception 3",
    "Edge of trim or sheathing, large opening",
    "in",
    "combustible_to_firebox_lining_inner_face",
    editions=ONLY_2024,
)
def edge_large(facts: Facts) -> Compared:
    """A large fire heats the wall more."""
    if not reaches(facts.opening_area, LARGE):
        return not_applicable("The opening is smaller than 6 sq ft.")
    return edge_through_masonry(facts, inches(12))


@IRC.rule(
    "CLR-07", "R1001.11 exception 4", "Mantel and trim, distance", "in", "trim_distance_to_opening"
)
def trim_distance(facts: Facts) -> Compared:
    """Flame and glow reach around the edge of the opening."""
    burning = [piece for piece in facts.trim if piece.combustible]
    if not burning:
        return not_applicable("No trim that burns is on the face.")
    known = [(piece.distance, piece.name) for piece in burning if piece.distance is not None]
    nearest, name = min(known, default=(None, ""))
    found = at_least(nearest, NEAR, f"Nearest: {name}.")
    if len(known) < len(burning) and found.verdict != FALLS_SHORT:
        unmeasured = next(piece.name for piece in burning if piece.distance is None)
        return Compared(
            NOT_CHECKED, None, NEAR, f"How far {unmeasured} is from the opening is not known yet."
        )
    return found


@IRC.rule(
    "CLR-08",
    "R1001.11 exception 4",
    "Mantel and trim, projection",
    "in",
    "trim_projection",
    at_most=True,
)
def trim_projection(facts: Facts) -> Compared:
    """A shelf that stands out near the opening is bathed in the rising heat."""
    burning = [p for p in facts.trim if p.combustible]
    within = [
        (p.projection, NEAR / 8 if same(p.distance, NEAR) else p.distance / 8, p.name)
        for p in burning
        if p.distance is not None and reaches(p.distance, NEAR) and reaches(FREE, p.distance)
    ]
    known = [(out - most, out, most, name) for out, most, name in within if out is not None]
    if known:
        _, out, most, name = max(known)
        found = at_most(out, most, f"{name}: one eighth of its distance.")
        if found.verdict == FALLS_SHORT:
            return found
    missing = [p.name for p in burning if p.distance is None]
    missing += [name for out, _, name in within if out is None]
    if missing:
        return unknown(f"How far {missing[0]} is from the opening, or how far it projects,")
    return (
        found
        if known
        else not_applicable("No trim that burns lies 6 in to 12 in from the opening.")
    )


@IRC.rule("CLR-09", "R1001.12", "Fireblock at the fireplace", "word", "fireblock_material")
def fireblock(facts: Facts) -> Compared:
    """In a house fire the space around the masonry is a flue of its own."""
    return one_of(facts.fireblock_material, ("noncombustible",))


@IRC.rule(
    "CLR-10", "R302.11 item 4", "No wood or gypsum as fireblock here", "word", "fireblock_rule"
)
def fireblock_list(facts: Facts) -> Compared:
    """The list for framed walls allows materials that a hot chimney would char."""
    if facts.fireblock_material is None:
        return unknown("The fireblock")
    return one_of(facts.fireblock_material, ("noncombustible", "none"))


@IRC.rule(
    "CLR-11", "R1001.13", "Fireplace accessories", "yes-no", "accessory_standard", editions=LATEST
)
def accessories(facts: Facts) -> Compared:
    """Doors and blowers change how hot the box and its front become."""
    if facts.accessory is None:
        return unknown("Whether an accessory is fitted")
    if not facts.accessory:
        return not_applicable("No accessory is fitted.")
    return yes(facts.accessory_standard)


@IRC.rule(
    "CLR-12",
    "Figure R1001.1 letter R",
    "Distance noted in the figure",
    "in",
    "thermal_distance_in_figure",
    editions=("2015",),
    outside=True,
)
def figure_note(facts: Facts) -> Compared:
    """A note in a figure, with no sentence of the code behind it."""
    return not_applicable(
        "For information only: the figure notes 21 in; no sentence of the code asks it."
    )
