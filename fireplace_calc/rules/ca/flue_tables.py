"""Canada 9.21: the flue's size by the two tables, round and rectangular."""

from __future__ import annotations

from math import pi

from fireplace_calc.base.tables.canada import canada_rectangular_flues, canada_round_flues
from fireplace_calc.base.units import MM
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.rules.ca.book import NBC, chimney_height, in_cell
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    not_applicable,
    reaches,
    with_note,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import why_unknown

HEIGHT_NOTE = "Height from the firebox floor; where the table counts it from was not read."
DASH = "The table has a dash here and gives no size."
STEP = 100 * MM
"""Step of the sizes in the rectangular table. [m]"""

Sides = tuple[float, float]
"""Short side and long side of a rectangular flue. [m]"""


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
        return Compared(NOT_CHECKED, inside, None, DASH)
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


def _sides(one: float, other: float) -> Sides:
    return (min(one, other), max(one, other))


def _nominal(bore: Bore) -> Sides:
    """Size over the liner's walls, to the nearest size of the table: an 8 by 12 in liner is one of
    200 by 300 mm; our reading. [m]
    """
    wide, deep = (round((side + 2 * bore.wall) / STEP) * STEP for side in (bore.width, bore.depth))
    return _sides(wide, deep)


def _between(ours: Sides, least: Sides, most: Sides) -> Compared:
    """Both sides from the smallest flue to the largest."""
    for small, large, limit, word in (
        (least, ours, least, "smallest"),
        (ours, most, most, "largest"),
    ):
        for side in (0, 1):
            if not reaches(large[side], small[side]):
                said = f"The {word} flue is {limit[0] / MM:.0f} by {limit[1] / MM:.0f} mm."
                return Compared(FALLS_SHORT, ours[side], limit[side], said)
    return Compared(MEETS, ours[0], least[0], "Between the smallest and the largest of the table.")


@NBC.rule(
    "CA-007", "9.21.2.5.(1) Table B", "Rectangular flue for the opening", "mm", "flue_inside_size"
)
def rectangular_flue(facts: Facts) -> Compared:
    """Too small chokes the fire; too large stays cold. Whether the table prints inside or nominal
    sizes was not read, so both have to agree.
    """
    if facts.flue_shape == "round":
        return not_applicable("The flue is round.")
    bore = facts.frame.bore
    inside, nominal = _sides(bore.width, bore.depth), _nominal(bore)
    found = next(
        (
            (least, most)
            for cell, least, most in canada_rectangular_flues()
            if in_cell(cell, facts.opening_area, chimney_height(facts))
        ),
        None,
    )
    if found is None:
        outside = "Outside the table: opening to 2.00 m², chimney 3 to 12 m."
        return Compared(NOT_CHECKED, inside[0], None, outside)
    if found[0] is None or found[1] is None:
        return Compared(NOT_CHECKED, inside[0], None, DASH)
    least, most = _sides(*found[0]), _sides(*found[1])
    by_inside, by_nominal = (_between(ours, least, most) for ours in (inside, nominal))
    if by_inside.verdict == by_nominal.verdict:
        return with_note(by_inside, f"{by_inside.note} {HEIGHT_NOTE}")
    note = (
        "Whether the table prints inside or nominal sizes was not read:"
        f" ours {by_inside.verdict} by its inside, {inside[0] / MM:.0f} by"
        f" {inside[1] / MM:.0f} mm, and {by_nominal.verdict} as a nominal {nominal[0] / MM:.0f} by"
        f" {nominal[1] / MM:.0f} mm."
    )
    return Compared(NOT_CHECKED, inside[0], None, note)
