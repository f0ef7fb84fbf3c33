"""US IRC R1001.6 and R1001.7: throat, damper and lintel."""

from __future__ import annotations

from fireplace_calc.base.printing import show
from fireplace_calc.design.pieces import ANGLE
from fireplace_calc.rules.comparing import (
    DOES_NOT_APPLY,
    NOT_CHECKED,
    Compared,
    all_of,
    at_least,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    with_note,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import why_unknown
from fireplace_calc.rules.us.book import IRC
from fireplace_calc.rules.us.firebox import ORDINARY, SHALLOW

READ_IN = "Read in the 2021 edition alone; check the edition in force."


@IRC.rule("THR-01", "R1001.6", "Throat over the opening", "in", "throat_height_above_opening")
def throat_height(facts: Facts) -> Compared:
    """Smoke needs room to gather speed under the lintel before it is squeezed; a low throat
    spills.
    """
    if facts.shallow:
        return not_applicable(SHALLOW)
    return at_least(facts.throat_height_above_opening, inches(8))


@IRC.rule("THR-02", "R1001.6", "Throat, front to back", "in", "throat_depth")
def throat_depth(facts: Facts) -> Compared:
    """A slit chokes with soot and throttles the draft."""
    if facts.shallow:
        return not_applicable(SHALLOW)
    return at_least(facts.throat_depth, inches(4))


def _passage(facts: Facts) -> tuple[list[float], bool]:
    """Known areas on the way to the flue, and whether the damper's is missing."""
    areas = [facts.throat_area, facts.smoke_chamber_min_section]
    missing = facts.damper_place is None or (
        facts.damper_place == "throat" and facts.damper_free_area is None
    )
    if facts.damper_place == "throat" and facts.damper_free_area is not None:
        areas.append(facts.damper_free_area)
    return areas, missing


@IRC.rule("THR-03", "R1001.6", "Passage from throat to flue", "in2", "throat_area")
def passage(facts: Facts) -> Compared:
    """A neck narrower than the flue wastes the flue."""
    if facts.shallow:
        areas, _ = _passage(facts)
        tight = facts.flue_net_area is not None and min(areas) < facts.flue_net_area
        return not_applicable(
            SHALLOW + (" As advice: the passage is narrower than the flue." if tight else "")
        )
    areas, missing = _passage(facts)
    found = at_least(min(areas), facts.flue_net_area, "Least of throat, damper and smoke chamber.")
    if facts.flue_net_area is None:
        return with_note(found, why_unknown(facts))
    if missing and found.verdict == "meets":
        return Compared(
            NOT_CHECKED, found.provided, found.required, "The damper's free area is not known yet."
        )
    return found


@IRC.rule(
    "THR-04", "R1001.7", "Throat or damper over the lintel", "in", "throat_height_above_lintel"
)
def over_lintel(facts: Facts) -> Compared:
    """A high throat keeps the smoke inside, and the steel and masonry over the opening cooler."""
    lowest = facts.throat_height_above_opening
    if facts.damper_place == "throat":
        lowest = min(lowest, facts.damper_height_above_opening)
    found = at_least(lowest, inches(8))
    if facts.damper_place is None and found.verdict == "meets":
        return Compared(
            NOT_CHECKED, found.provided, found.required, "The place of the damper is not known yet."
        )
    if found.verdict == "meets" and not reaches(lowest - facts.lintel_height, inches(8)):
        left = show(lowest - facts.lintel_height, "length")
        return with_note(
            found, f"Measured from the top of the opening; from the top of the lintel it is {left}."
        )
    return found


@IRC.rule(
    "THR-05",
    "R1001.6 exception",
    "Throat over the lintel, shallow type",
    "in",
    "throat_height_above_lintel",
)
def throat_height_shallow(facts: Facts) -> Compared:
    """The shallow pattern needs a taller run to turn its smoke upward."""
    if not facts.shallow:
        return not_applicable(ORDINARY)
    return at_least(
        facts.throat_height_above_opening, inches(12), "Measured from the top of the opening."
    )


@IRC.rule("THR-06", "R1001.6 exception", "Throat area, shallow type", "in2", "throat_area")
def throat_area_shallow(facts: Facts) -> Compared:
    """The shallow pattern works with a narrow, smooth throat, but not with a closed one."""
    if not facts.shallow:
        return not_applicable(ORDINARY)
    return at_least(facts.throat_area, facts.opening_area / 20)


@IRC.rule("THR-07", "R1001.7.1", "Damper over the opening", "in", "damper_height_above_opening")
def damper_height(facts: Facts) -> Compared:
    """A low blade turns smoke back into the room."""
    if facts.damper_place is None:
        return unknown("The place of the damper")
    if facts.damper_place != "throat":
        return not_applicable("No damper sits inside the fireplace.")
    return at_least(facts.damper_height_above_opening, inches(8))


@IRC.rule(
    "THR-08",
    "R1001.7.1",
    "Damper of iron or steel, worked from the room",
    "word",
    "damper_material",
)
def damper(facts: Facts) -> Compared:
    """It must be there, stand the heat, and be opened without reaching over a fire."""
    if facts.damper_place is None:
        return unknown("The damper")
    if facts.damper_place == "none":
        return Compared("falls short", "no damper", "ferrous, yes")
    return all_of(
        one_of(facts.damper_material, ("ferrous",), "What the damper is made of is not known yet."),
        yes(
            facts.damper_operable_from_room,
            ask="Nobody has tried yet whether the damper works from the room.",
        ),
    )


@IRC.rule("LIN-01", "R1001.7", "Lintel bearing, each end", "in", "lintel_bearing_each_end")
def lintel_bearing(facts: Facts) -> Compared:
    """A short bearing crushes the jamb's corner or slips off it."""
    if facts.lintel_material == "masonry arch":
        return not_applicable("An arch bears on its skewbacks; see the structure for its thrust.")
    return at_least(facts.lintel_bearing_each_end, inches(4))


@IRC.rule(
    "LIN-02", "R1001.7; Table R1001.1", "Lintel that does not burn", "word", "lintel_material"
)
def lintel_material(facts: Facts) -> Compared:
    """It sits in the hottest smoke on the room side."""
    return one_of(
        facts.lintel_material,
        ("steel", "reinforced concrete", "reinforced masonry", "stone", "masonry arch"),
    )


@IRC.rule(
    "LIN-03", "R703.8.3", "Lintel under facing brick, bearing", "in", "lintel_bearing_each_end"
)
def veneer_lintel(facts: Facts) -> Compared:
    """Facing brick over the opening is carried like any veneer."""
    if facts.face != "brick":
        return not_applicable("The face is not brick.")
    if facts.facing_apart:
        if facts.facing_head is None:
            return unknown("What carries the facing before the pieces of the set")
        if facts.facing_head != ANGLE:
            return unknown("How what carries the facing bears")
        return with_note(at_least(facts.facing_lintel_bearing, inches(4)), READ_IN)
    found = lintel_bearing(facts)
    return found if found.verdict == DOES_NOT_APPLY else with_note(found, READ_IN)
