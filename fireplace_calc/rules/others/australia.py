"""Australia: hearth, walls and parging of an open fireplace, by the Housing Provisions."""

from __future__ import annotations

from fireplace_calc.base.units import MM
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    at_least,
    not_applicable,
    unknown,
)
from fireplace_calc.rules.facts import Facts

AUSTRALIA = Book(
    "Australia NCC",
    ("2022",),
    "Read in part: hearth, firebox walls and parging. Height over the roof, flue and clearances"
    " were not read: check them against the code itself.",
)


@AUSTRALIA.rule("AU-01", "12.4.2(b)(i)", "Hearth in front", "mm", "hearth_extension_front")
def hearth_front(facts: Facts) -> Compared:
    """Floor a spark can land on."""
    return at_least(facts.hearth_extension_front, 300 * MM)


@AUSTRALIA.rule("AU-02", "12.4.2(b)(i)", "Hearth at the sides", "mm", "hearth_extension_side")
def hearth_side(facts: Facts) -> Compared:
    """Sparks fly sideways too."""
    return at_least(facts.hearth_extension_side, 150 * MM)


@AUSTRALIA.rule("AU-03", "12.4.2(b)(iii)", "Wood under the hearth", "mm", "wood_below")
def wood_below(facts: Facts) -> Compared:
    """Wood below a hearth bakes unseen."""
    if facts.hearth_support is None:
        return unknown("What carries the hearth")
    if facts.hearth_support != "combustible":
        return not_applicable("Nothing below the hearth burns.")
    return at_least(facts.abroad.wood_below, 150 * MM, "From the top of the hearth.")


@AUSTRALIA.rule(
    "AU-04",
    "12.4.2(c)",
    "Sides and back in two leaves",
    "mm",
    "firebox_wall_thickness_total; two_leaves",
)
def walls(facts: Facts) -> Compared:
    """A crack through one leaf ends at the other."""
    found = at_least(facts.firebox_wall_thickness_total, 180 * MM, "Two leaves of solid masonry.")
    if found.verdict == FALLS_SHORT:
        return found
    if facts.masonry_kind is None:
        return unknown("The kind of masonry")
    if facts.masonry_kind == "hollow ungrouted":
        return Compared(FALLS_SHORT, facts.masonry_kind, "solid masonry")
    if facts.abroad.two_leaves is None:
        return unknown("Whether sides and back are two separate leaves")
    return found if facts.abroad.two_leaves else Compared(FALLS_SHORT, "one leaf", "two leaves")


@AUSTRALIA.rule("AU-05", "12.4.3(a), (b)", "Parging inside the chimney", "mm", "parging")
def parging(facts: Facts) -> Compared:
    """Bare joints leak smoke; the mix is 1 cement, 1 lime and 5 sand."""
    if facts.abroad.parging is None and facts.liner_kind != "unlined":
        return Compared(NOT_CHECKED, note="Whether a liner stands in for it was not read.")
    return at_least(facts.abroad.parging, 10 * MM)
