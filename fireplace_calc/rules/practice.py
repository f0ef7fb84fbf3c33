"""The trade's own rules: what masons hold to whatever the code says. Some have a handbook behind
them, some nothing but practice.
"""

from __future__ import annotations

from math import hypot

from fireplace_calc.base.units import DEG, INCH
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    Compared,
    at_least,
    at_most,
    exceeds,
    feet,
    inches,
    nearest,
    not_applicable,
    one_of,
    reaches,
    unknown,
    with_note,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.handbook_rows import brick_size, handbook_row
from fireplace_calc.rules.told_areas import why_unknown

PRACTICE = Book("Trade practice", ("handbooks 1921 to 1980",))
CUT = inches(1 / 2)
"""A back is laid without cuts when what is left over is less than this: the joints take it up;
common practice. [m]
"""


@PRACTICE.rule(
    "PRA-01",
    "common practice",
    "Firebrick joint against the brick",
    "in",
    "firebrick_joint_width",
    at_most=True,
)
def joint_against_brick(facts: Facts) -> Compared:
    """A joint wider than half the brick is mortar with bricks in it, and mortar burns out first."""
    return at_most(facts.firebrick_joint_width, brick_size(facts.design.firebox.brick)[2] / 2)


@PRACTICE.rule(
    "PRA-02", "common practice", "Laid out from the center line", "yes-no", "centre_line"
)
def centre_line(facts: Facts) -> Compared:
    """What starts from the middle ends the same on both sides."""
    return yes(facts.abroad.centre_line)


@PRACTICE.rule(
    "PRA-03", "common practice", "No cut at the back", "in", "back_left_over", at_most=True
)
def no_cut(facts: Facts) -> Compared:
    """A cut brick at the hottest place is the first to come loose."""
    if facts.firebox_lining != "firebrick":
        return not_applicable("The firebox is not laid in firebrick.")
    if facts.firebrick_joint_width is None:
        return unknown("The joint")
    step = (brick_size(facts.design.firebox.brick)[0] + facts.firebrick_joint_width) / 2
    width = facts.frame.back_width + facts.firebrick_joint_width
    over = width % step
    return at_most(
        min(over, step - over),
        CUT,
        "Width of the back less whole and half bricks; widen or narrow it by that much.",
    )


@PRACTICE.rule(
    "PRA-04", "common practice", "Mortar no faster than it is covered", "yes-no", "covered_mortar"
)
def mortar(facts: Facts) -> Compared:
    """Refractory mortar skins over in minutes, and a skin does not stick."""
    return yes(facts.abroad.covered_mortar)


def _within(value: float, low: float, high: float, note: str) -> Compared:
    found = at_least(value, low, note)
    if found.verdict == MEETS and exceeds(value, high):
        return Compared(FALLS_SHORT, value, high, f"More than the range. {note}")
    return found


@PRACTICE.rule("PRA-05", "table 3", "Depth for this opening", "in", "firebox_depth")
def depth(facts: Facts) -> Compared:
    """Deeper boxes burn much wood for little warmth, shallower ones smoke."""
    row = handbook_row(facts)
    if row is None:
        return unknown("No row of the table is near this opening; its depth")
    w, h, low, high = row
    return _within(
        facts.firebox_depth,
        low,
        high,
        f"{low / INCH:g} to {high / INCH:g} in for {w / INCH:g} by {h / INCH:g} in.",
    )


@PRACTICE.rule("PRA-06", "table 3", "Height of the opening, working range", "in", "opening_height")
def height(facts: Facts) -> Compared:
    """Outside this range nobody has tables to go by."""
    return _within(facts.design.opening.clear_height, inches(24), inches(40), "24 to 40 in.")


@PRACTICE.rule("PRA-07", "table 3", "Width of the opening, working range", "in", "opening_width")
def width(facts: Facts) -> Compared:
    """Outside this range nobody has tables to go by."""
    return _within(facts.opening_width, inches(24), inches(72), "24 to 72 in.")


@PRACTICE.rule("PRA-08", "page on depth", "Least depth that draws", "in", "firebox_depth")
def least_depth(facts: Facts) -> Compared:
    """Below this the smoke rolls out whatever the flue."""
    return at_least(facts.firebox_depth, inches(12))


@PRACTICE.rule(
    "PRA-09", "page on openings", "Height of opening that is easy to tend", "in", "opening_height"
)
def tending(facts: Facts) -> Compared:
    """Too low is hard to tend; too high asks for a wider opening."""
    tall = facts.design.opening.clear_height
    if exceeds(tall, inches(42)) and exceeds(facts.opening_width, inches(72)):
        return not_applicable("Over six feet wide the height is free.")
    return _within(tall, inches(30), inches(42), "30 to 42 in.")


@PRACTICE.rule("PRA-10", "page on flues", "Flue by the bulletin's ratio", "in2", "flue_net_area")
def flue(facts: Facts) -> Compared:
    """A tall warm chimney draws more, so a smaller flue will do."""
    if facts.liner_kind is None:
        return unknown("The liner")
    lined = facts.liner_kind != "unlined"
    tall = reaches(facts.chimney_height, feet(22))
    share = 12 if lined and tall else 10
    note = (
        "A twelfth: lined and 22 ft or more over the hearth."
        if share == 12
        else "A tenth: unlined, or under 22 ft over the hearth."
    )
    if facts.flue_net_area is None:
        note = why_unknown(facts)
    return at_least(facts.flue_net_area, facts.opening_area / share, note)


@PRACTICE.rule("PRA-11", "page on throats", "Throat no smaller than the flue", "in2", "throat_area")
def throat(facts: Facts) -> Compared:
    """The narrowest place decides, and it should not be the throat."""
    note = why_unknown(facts) if facts.flue_net_area is None else ""
    return at_least(facts.throat_area, facts.flue_net_area, note)


@PRACTICE.rule(
    "PRA-12", "page on throats", "Throat over the lintel", "in", "throat_height_above_opening"
)
def throat_height(facts: Facts) -> Compared:
    """Smoke gathers under the lintel and needs a hand's breadth to turn in."""
    return at_least(facts.throat_height_above_opening, inches(6), "Six to eight inches or more.")


@PRACTICE.rule("PRA-13", "page on smoke shelves", "Smoke shelf", "in", "smoke_shelf")
def shelf(facts: Facts) -> Compared:
    """Cold air that falls down the flue is turned back up here."""
    return at_least(
        facts.frame.depth - facts.frame.throat_back,
        inches(6),
        "Six to twelve inches or more, behind the throat.",
    )


@PRACTICE.rule(
    "PRA-14",
    "page on smoke chambers",
    "Slope of the smoke chamber",
    "deg",
    "smoke_chamber_slope_from_vertical",
    at_most=True,
)
def chamber(facts: Facts) -> Compared:
    """Smoke follows a steep wall and clings under a flat one."""
    return at_most(facts.smoke_chamber_slope_from_vertical, 30 * DEG)


@PRACTICE.rule("PRA-15", "table 3", "Vertical and sloped back together", "in", "back_length")
def back(facts: Facts) -> Compared:
    """The back ends where the throat begins; in all 19 rows it is six inches longer than the
    opening is high.
    """
    f = facts.frame
    leaning = hypot(f.throat - f.back_bend, f.depth - f.throat_back)
    return _within(
        f.back_bend - f.hearth + leaning,
        facts.design.opening.height + inches(4),
        facts.design.opening.height + inches(12),
        (
            "The table has six inches over the opening, later practice eight; we allow four "
            "to twelve."
        ),
    )


@PRACTICE.rule(
    "PRA-16", "technical note 19", "Firebrick joint", "in", "firebrick_joint_width", at_most=True
)
def joint(facts: Facts) -> Compared:
    """Fire eats the joints first."""
    found = at_most(facts.firebrick_joint_width, inches(1 / 4))
    wide = facts.firebrick_joint_width
    if found.verdict == FALLS_SHORT and wide is not None and reaches(inches(3 / 8), wide):
        return with_note(
            found,
            (
                "Many masons lay 3/8 in: handy with rough brick, but it puts more mortar in "
                "the fire. The code and the technical note both stop at 1/4 in."
            ),
        )
    return found


@PRACTICE.rule("PRA-17", "page on jambs", "Jamb beside the opening", "in", "jamb_width")
def jamb(facts: Facts) -> Compared:
    """A thin jamb cracks at the lintel's end."""
    return at_least(
        facts.design.firebox.jamb,
        inches(12),
        "12 in with a wood mantel, 16 in where the masonry shows.",
    )


@PRACTICE.rule(
    "PRA-18", "page on mantels", "Wood mantel to the opening", "in", "trim_distance_to_opening"
)
def mantel(facts: Facts) -> Compared:
    """Wood beside the fire chars bit by bit."""
    near = [t.distance for t in facts.trim if t.combustible]
    return nearest(near, inches(8), "Nothing that burns is on the face.")


@PRACTICE.rule(
    "PRA-19",
    "page on chimney walls",
    "Chimney wall out in the weather",
    "in",
    "chimney_wall_thickness",
)
def weather_wall(facts: Facts) -> Compared:
    """Four inches of brick in the rain are wet through by spring."""
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if facts.chimney_location != "exterior":
        return not_applicable("The chimney does not stand outdoors.")
    return at_least(facts.chimney_wall_thickness, inches(8), "Preferred, not required.")


@PRACTICE.rule(
    "PRA-20", "table 1", "Lean of the flue", "deg", "liner_slope_from_vertical", at_most=True
)
def lean(facts: Facts) -> Compared:
    """The steeper the flue the less soot it holds."""
    return at_most(facts.liner_slope_from_vertical, 30 * DEG)


@PRACTICE.rule("PRA-21", "page on flues", "Flue the same all the way up", "word", "flue_section")
def same(facts: Facts) -> Compared:
    """A flue that widens cools its smoke, one that narrows holds it back."""
    return Compared(MEETS, "one size", "one size", "Drawn so; see that it is built so.")


@PRACTICE.rule("PRA-22", "page on flues", "One fireplace to a flue", "yes-no", "own_flue")
def own_flue(facts: Facts) -> Compared:
    """Two fires on one flue send each other's smoke into the room."""
    return (
        unknown("Whether an appliance shares the flue")
        if facts.stack.connector is None
        else yes(not facts.stack.connector)
    )


@PRACTICE.rule(
    "PRA-23", "a town's ordinance, 9-118", "Chimney over the damper", "ft", "height_over_damper"
)
def over_damper(facts: Facts) -> Compared:
    """A short chimney draws little, and less on a mild day."""
    if facts.damper_place is None:
        return unknown("The damper")
    if one_of(facts.damper_place, ("throat",)).verdict != MEETS:
        return not_applicable("There is no damper at the throat.")
    return at_least(facts.frame.liner_top - facts.frame.throat, feet(14))
