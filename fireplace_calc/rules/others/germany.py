"""Germany: where the outlet lies, by the federal rule in force since 2022, and a few figures of
practice.
"""

from __future__ import annotations

from math import atan, tan

from fireplace_calc.base.units import DEG, MM
from fireplace_calc.geometry.in_room.cut_corner import corner_of
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import (
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    nearest,
    not_applicable,
    reaches,
    unknown,
    with_note,
    yes,
)
from fireplace_calc.rules.facts import Facts

GERMANY = Book(
    "Germany",
    ("since 2022",),
    "Read in part: the outlet over ridge and windows, and a few figures of practice. The states'"
    " fire rules and the chimney standards were not read: ask the district's chimney sweep.",
)
PRACTICE = "Practice, not code."
STEEP = 20 * DEG
"""Slope from which the ridge itself counts. [rad]"""
OVER_RIDGE = 400 * MM


def _steep(facts: Facts) -> bool:
    return reaches(atan(facts.roof_pitch), STEEP)


@GERMANY.rule("DE-01", "section 19 (1)", "Outlet over the ridge", "mm", "outlet_above_ridge")
def over_ridge(facts: Facts) -> Compared:
    """Over the ridge the wind carries the smoke off before anyone breathes it."""
    if not _steep(facts):
        return not_applicable("The roof is flatter than 20 degrees.")
    found = at_least(facts.frame.liner_top - facts.design.roof.ridge_level, OVER_RIDGE)
    if found.verdict == MEETS and not facts.through_ridge:
        near = "High enough; how near the ridge it has to stand was not read."
        return Compared(NOT_CHECKED, found.provided, found.required, near)
    return found


@GERMANY.rule(
    "DE-02", "section 19 (1)", "Outlet over a ridge of 20 degrees", "mm", "outlet_above_ridge"
)
def over_thought_ridge(facts: Facts) -> Compared:
    """A flat roof keeps its smoke low; the rule takes it for a roof of 20 degrees."""
    if _steep(facts):
        return not_applicable("The roof is not flatter than 20 degrees.")
    roof = facts.design.roof
    if facts.roof_pitch <= 0 or roof.ridge_level <= roof.eaves_level:
        return unknown("How wide the roof is from eaves to ridge")
    ridge = roof.eaves_level + (roof.ridge_level - roof.eaves_level) * tan(STEEP) / facts.roof_pitch
    return at_least(
        facts.frame.liner_top - ridge, OVER_RIDGE, "On the same eaves, as wide: our reading."
    )


@GERMANY.rule(
    "DE-03", "section 19 (1)", "Outlet over windows and doors", "mm", "windows_near; above_windows"
)
def over_windows(facts: Facts) -> Compared:
    """Smoke must not come in at the neighbor's window."""
    if facts.abroad.windows_near is None and facts.abroad.above_windows is None:
        return unknown("Whether windows, doors or vents are within 15 m")
    if facts.abroad.windows_near is False:
        return not_applicable("No window, door or vent is within 15 m.")
    return at_least(facts.abroad.above_windows, 1000 * MM, "For a fire up to 50 kW.")


@GERMANY.rule("DE-05", "German practice", "Height of the flue", "mm", "flue_height_over_opening")
def height(facts: Facts) -> Compared:
    """A short flue draws little."""
    high = facts.frame.liner_top - facts.frame.opening_top
    return at_least(high, 4500 * MM, f"From the top of the opening. {PRACTICE}")


@GERMANY.rule("DE-06", "German practice", "Floor of the room", "m2", "room_length; room_width")
def room(facts: Facts) -> Compared:
    """An open fire takes its air from the room; a small one soon has none left."""
    long, wide = facts.design.house.room_length, facts.design.house.room_width
    if long is None or wide is None:
        return unknown("The size of the room")
    breast, gap = facts.design.breast, facts.design.clearance
    across = breast.across if breast.cornered else 0.0
    if across is None:  # as wide as the masonry with its air needs
        corner = corner_of(facts.design, facts.frame)
        if corner is None or gap.side is None or gap.back is None:
            return unknown("How wide the wall across the corner is")
        across = corner.width
    return at_least(long * wide - across**2 / 4, 12.0, PRACTICE)


@GERMANY.rule(
    "DE-07", "German practice", "Wood around the opening", "mm", "trim_distance_to_opening"
)
def wood(facts: Facts) -> Compared:
    """Glow reaches farther than flame."""
    near = [piece.distance for piece in facts.trim if piece.combustible]
    found = nearest(near, 800 * MM, "Nothing that burns is on the face.")
    return found if found.note else with_note(found, PRACTICE)


@GERMANY.rule("DE-08", "German practice", "A flue of its own", "yes-no", "own_flue")
def own_flue(facts: Facts) -> Compared:
    """Two fires on one flue send each other's smoke into the room."""
    if facts.stack.connector is None:
        return unknown("Whether an appliance shares the flue")
    return yes(not facts.stack.connector, PRACTICE)


@GERMANY.rule("DE-10", "German practice", "Least area of the flue", "mm2", "flue_net_area")
def least_area(facts: Facts) -> Compared:
    """A narrow flue clogs; an open fire asks for far more than this."""
    return at_least(facts.flue_net_area, 10_000 * MM**2, PRACTICE)


@GERMANY.rule("DE-11", "German practice", "Short side of the flue", "mm", "flue_short_side")
def short_side(facts: Facts) -> Compared:
    """The sweep's brush has to pass."""
    return at_least(min(facts.frame.bore.width, facts.frame.bore.depth), 100 * MM, PRACTICE)
