"""US IRC R1003.9, R1003.20, R903.2.2: chimney top, cap, arrester, cricket."""

from __future__ import annotations

from fireplace_calc.base.tables import crickets
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    all_of,
    at_least,
    exceeds,
    feet,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import why_unknown
from fireplace_calc.rules.us.book import IRC

WIDE = inches(30)
"""Chimney wider than this along the ridge dams up water and snow. [m]"""
NO_ARRESTER = "No spark arrester is fitted."
MESH = (inches(3 / 8), inches(1 / 2))


@IRC.rule(
    "ROF-01",
    "R1003.9; Table R1001.1",
    "Chimney over the roof where it comes out",
    "ft",
    "chimney_top_above_highest_roof_contact",
)
def over_contact(facts: Facts) -> Compared:
    """Clears snow and slow air, and keeps sparks off the roof."""
    return at_least(facts.chimney_top_above_highest_roof_contact, feet(3), "From the uphill side.")


@IRC.rule(
    "ROF-02",
    "R1003.9; Table R1001.1",
    "Chimney over anything within 10 ft",
    "ft",
    "chimney_top_above_building_within_10ft",
)
def over_building(facts: Facts) -> Compared:
    """Wind piles up against what stands higher and presses down the flue."""
    found = at_least(
        facts.chimney_top_above_building_within_10ft,
        feet(2),
        f"Highest within 10 ft, level, of the nearest face: {facts.highest_within_reach_is}.",
    )
    told = facts.design.measured.over_nearby is not None
    return found if told else facts.over_nearby(found)


@IRC.rule("ROF-03", "R1003.9.1", "Cap", "word", "cap_material")
def cap(facts: Facts) -> Compared:
    """Water gets in, freezes, and breaks up the top of the chimney."""
    shape = Compared(
        MEETS if facts.cap_sloped else FALLS_SHORT,
        "sloped" if facts.cap_sloped else "flat",
        "sloped",
    )
    return all_of(
        one_of(
            facts.cap_material,
            ("concrete", "metal", "stone"),
            "The cap's material is not known yet.",
        ),
        shape,
        yes(facts.drip_edge, ask="The drip edge is not known yet."),
        yes(facts.liner_bond_break, ask="The bond break at the liner is not known yet."),
    )


def _arrester(facts: Facts) -> Compared | None:
    if facts.arrester is None:
        return unknown("Whether a spark arrester is fitted")
    return None if facts.arrester else not_applicable(NO_ARRESTER)


def _four_flues(area: float | None, facts: Facts, what: str) -> Compared:
    if area is None:
        return unknown(what)
    if facts.flue_net_area is None:
        return Compared(NOT_CHECKED, area, None, why_unknown(facts))
    return at_least(area, 4 * facts.flue_net_area, "Four times the flue.")


@IRC.rule("ROF-04", "R1003.9.2(1)", "Spark arrester, free area", "in2", "arrester_free_area")
def arrester_area(facts: Facts) -> Compared:
    """Mesh soots up; with area to spare it still lets the smoke through."""
    return _arrester(facts) or _four_flues(
        facts.arrester_free_area, facts, "The arrester's free area"
    )


@IRC.rule("ROF-05", "R1003.9.2(3)", "Spark arrester, mesh", "in", "arrester_opening_sphere")
def arrester_mesh(facts: Facts) -> Compared:
    """Fine enough to stop brands, coarse enough not to clog."""
    if (off := _arrester(facts)) is not None:
        return off
    size = facts.arrester_opening_sphere
    if size is None:
        return unknown("The arrester's mesh")
    low, high = MESH
    good = reaches(size, low) and reaches(high, size)
    return Compared(MEETS if good else FALLS_SHORT, size, "3/8 in to 1/2 in")


@IRC.rule("ROF-06", "R1003.9.2(2)", "Spark arrester, metal", "word", "arrester_metal")
def arrester_metal(facts: Facts) -> Compared:
    """Thin wire rusts through in the smoke."""
    return _arrester(facts) or one_of(
        facts.arrester_metal, ("19 gauge galvanized", "24 gauge stainless")
    )


@IRC.rule("ROF-07", "R1003.9.3", "Rain cap, free area", "in2", "rain_cap_free_area")
def rain_cap(facts: Facts) -> Compared:
    """A low lid is a damper nobody can open."""
    if facts.rain_cap is None:
        return unknown("Whether a rain cap is fitted")
    if not facts.rain_cap:
        return not_applicable("No rain cap is fitted.")
    return _four_flues(facts.rain_cap_free_area, facts, "The rain cap's free area")


def _wide(facts: Facts) -> bool:
    return exceeds(facts.chimney_dim_parallel_ridge, WIDE)


@IRC.rule("ROF-08", "R1003.20", "Cricket behind a wide chimney", "yes-no", "cricket_present")
def cricket(facts: Facts) -> Compared:
    """Water and snow that pile up behind the chimney find their way in."""
    if facts.through_ridge:
        return not_applicable("The chimney stands through the ridge.")
    if not _wide(facts):
        return not_applicable("Not wider than 30 in along the ridge.")
    return yes(facts.cricket_present)


@IRC.rule("ROF-09", "R1003.20; Table R1003.20", "Cricket height", "in", "cricket_height")
def cricket_height(facts: Facts) -> Compared:
    """A flat cricket drains no better than none."""
    if facts.through_ridge or not _wide(facts):
        return not_applicable("No cricket is asked for.")
    pitches = [pitch for pitch, _ in crickets()]
    if not (reaches(facts.roof_pitch, min(pitches)) and reaches(max(pitches), facts.roof_pitch)):
        return Compared(
            NOT_CHECKED, facts.cricket_height, None, "The table runs from 3:12 to 12:12."
        )
    return at_least(facts.cricket_height, facts.chimney_dim_parallel_ridge * facts.roof_pitch / 2)


@IRC.rule("ROF-10", "R903.2.2", "Cricket, roofing chapter", "yes-no", "cricket_present")
def cricket_roofing(facts: Facts) -> Compared:
    """The roofing chapter asks for the same cricket, with no exception at the ridge."""
    if not _wide(facts):
        return not_applicable("Not wider than 30 in across the slope.")
    return yes(facts.cricket_present)
