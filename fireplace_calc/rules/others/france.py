"""France: least flue of an open fire and where its outlet lies, by DTU 24.1 as it is retold."""

from __future__ import annotations

from math import atan

from fireplace_calc.base.units import DEG, MM
from fireplace_calc.geometry.roofline import highest_within
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    at_least,
    exceeds,
    not_applicable,
    reaches,
)
from fireplace_calc.rules.facts import Facts

FRANCE = Book(
    "France DTU 24.1",
    ("as retold",),
    "Read in part, and at second hand: a round flue's least size and the outlet. Hearth, walls,"
    " clearances and air were not read: check them against the standard itself.",
)
GENTLE = 15 * DEG
"""Slope under which a roof counts as flat. [rad]"""
LOW_PARAPET = 200 * MM


@FRANCE.rule("FR-01", "flue", "Round flue of an open fire", "mm", "flue_inside_diameter")
def round_flue(facts: Facts) -> Compared:
    """Below this size an open fire smokes whatever the chimney."""
    if facts.flue_shape != "round":
        asked = "What is asked of a flue that is not round was not read."
        return Compared(NOT_CHECKED, note=asked)
    return at_least(facts.frame.bore.width, 180 * MM)


@FRANCE.rule(
    "FR-02", "outlet", "Outlet over ridge and anything within 8 m", "mm", "outlet_above_ridge"
)
def over_ridge(facts: Facts) -> Compared:
    """What stands near makes eddies that come down the flue."""
    level, what = highest_within(facts.design, facts.frame.uphill_contact, 8000 * MM)
    found = at_least(
        facts.frame.liner_top - level, 400 * MM, f"Over the {what}; 8 m run to the chimney."
    )
    return facts.over_nearby(found)


@FRANCE.rule("FR-03", "outlet", "Outlet over a flat or gentle roof", "mm", "parapet")
def over_flat(facts: Facts) -> Compared:
    """Wind over a flat roof lies close to it, and closer behind a parapet."""
    if reaches(atan(facts.roof_pitch), GENTLE):
        return not_applicable("The roof is not flatter than 15 degrees.")
    high, parapet = facts.frame.liner_top - facts.frame.uphill_contact, facts.abroad.parapet
    plain, behind = at_least(high, 1200 * MM), at_least(high, 1300 * MM, "Behind a parapet.")
    if parapet is None:
        if plain.verdict == FALLS_SHORT or behind.verdict != FALLS_SHORT:
            return plain
        return Compared(
            NOT_CHECKED, high, 1300 * MM, "Whether a parapet is there is not known yet."
        )
    return behind if exceeds(parapet, LOW_PARAPET) else plain
