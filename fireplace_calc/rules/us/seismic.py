"""US IRC R1001.3, R1001.4, R1003.3, R1003.4: bars, ties and anchors against earthquake."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil

from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
    Compared,
    all_of,
    at_least,
    at_most,
    feet,
    inches,
    not_applicable,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import IRC

BARS_ASKED = ("D0", "D1", "D2")
STEP = inches(40)
"""Width of chimney that asks for two bars more. [m]"""


def no_bars_needed(facts: Facts, categories: tuple[str, ...] = BARS_ASKED) -> Compared | None:
    """Why the clauses on bars do not bind, or that nobody knows; nothing when they do."""
    category = facts.seismic_design_category
    if category is None:
        return unknown("The seismic design category")
    if category == "E":
        return Compared(
            NOT_CHECKED,
            note="Category E: that part of the code was not read. Call an engineer.",
        )
    return (
        None if category in categories else not_applicable(f"Category {category} asks for no bars.")
    )


def as_category_d(facts: Facts, function: Callable[[Facts], Compared]) -> Compared:
    """A rule of this family where the place counts category C among those that shake."""
    if facts.seismic_design_category != "C":
        return function(facts)
    return function(facts.but(seismic_design_category=BARS_ASKED[0]))


def _steps(width: float) -> int:
    """Whole or begun steps of 40 in over the first. [-]"""
    return max(ceil((width - STEP) / STEP - LIMIT_SLACK), 0)


@IRC.rule(
    "SEI-01",
    "R1001.3; R1003.3; R301.2.2",
    "Chimney reinforced and anchored",
    "yes-no",
    "chimney_reinforced",
)
def reinforced(facts: Facts) -> Compared:
    """Plain masonry chimneys are the first thing an earthquake throws through a roof."""
    return no_bars_needed(facts) or yes(facts.anchorage.chimney_reinforced)


@IRC.rule(
    "SEI-02",
    "R1001.3.1; R1003.3.1",
    "Vertical bars, chimney up to 40 in wide",
    "count",
    "vertical_bars_no4",
)
def base_bars(facts: Facts) -> Compared:
    """Bars at the corners hold the courses together when the ground throws them."""
    if outcome := no_bars_needed(facts):
        return outcome
    if _steps(facts.chimney_width):
        return not_applicable("The chimney is wider than 40 in.")
    return at_least(facts.anchorage.vertical_bars_no4, 4)


@IRC.rule("SEI-03", "R1003.3.1", "Vertical bars, wider chimney", "count", "vertical_bars_no4")
def more_bars(facts: Facts) -> Compared:
    """A wider stack is heavier and needs more steel; part of a step counts as a whole one."""
    if outcome := no_bars_needed(facts):
        return outcome
    if not _steps(facts.chimney_width):
        return not_applicable("The chimney is not wider than 40 in.")
    return at_least(facts.anchorage.vertical_bars_no4, 4 + 2 * _steps(facts.chimney_width))


@IRC.rule(
    "SEI-04", "R1001.3.1; Table R1001.1", "Vertical bars, more flues", "count", "vertical_bars_no4"
)
def flue_bars(facts: Facts) -> Compared:
    """Every added flue is one more hole in the same masonry."""
    if outcome := no_bars_needed(facts):
        return outcome
    if facts.anchorage.n_flues is None:
        return unknown("The number of flues")
    steps = _steps(facts.chimney_width)
    if not steps:
        return not_applicable(
            "The chimney is not wider than 40 in; the table drops that condition for added flues,"
            " the text does not."
        )
    return at_least(
        facts.anchorage.vertical_bars_no4,
        4 + 2 * max(facts.anchorage.n_flues - 1, steps),
        "Two more for each added flue or each 40 in, whichever asks for more: our reading.",
    )


@IRC.rule("SEI-05", "R1001.3.2; R1003.3.2", "Tie diameter", "in", "tie_diameter")
def tie(facts: Facts) -> Compared:
    """Thin wire lets the bars buckle out."""
    return no_bars_needed(facts) or at_least(facts.anchorage.tie_diameter, inches(1 / 4))


@IRC.rule(
    "SEI-06", "R1001.3.2; R1003.3.2", "Tie spacing", "in", "tie_spacing_vertical", at_most=True
)
def tie_spacing(facts: Facts) -> Compared:
    """Ties far apart leave the bars free to bow between them."""
    return no_bars_needed(facts) or at_most(facts.anchorage.tie_spacing_vertical, inches(18))


@IRC.rule("SEI-07", "R1001.3.2; R1003.3.2", "Ties where bars bend", "count", "ties_per_bend")
def tie_bends(facts: Facts) -> Compared:
    """A bent bar pulls outward right at the bend."""
    if outcome := no_bars_needed(facts):
        return outcome
    if facts.anchorage.bars_bend is None and facts.anchorage.ties_per_bend is None:
        return unknown("Whether the bars bend")
    if facts.anchorage.bars_bend is False:
        return not_applicable("The bars run straight.")
    return at_least(facts.anchorage.ties_per_bend, 2)


def anchored_otherwise(facts: Facts) -> Compared | None:
    """Why the clauses on anchors do not bind, or what is not known; nothing when they do."""
    if outcome := no_bars_needed(facts):
        return outcome
    if facts.chimney_location is None:
        return unknown("Where the chimney stands")
    if facts.chimney_location == "interior":
        return not_applicable("The chimney stands wholly inside the exterior walls.")
    if reaches(feet(6), facts.level_above_grade):
        return not_applicable("No floor, ceiling or roof lies more than 6 ft above grade.")
    return None


@IRC.rule(
    "SEI-08", "R1001.4; R1003.4", "Anchored at each level over 6 ft", "yes-no", "anchor_at_level"
)
def anchored(facts: Facts) -> Compared:
    """A chimney outside the wall swings away from the house unless it is tied to it."""
    return anchored_otherwise(facts) or yes(facts.anchorage.anchor_at_level)


@IRC.rule("SEI-09", "R1001.4.1; R1003.4.1", "Straps at each level", "count", "strap_count")
def straps(facts: Facts) -> Compared:
    """One strap lets the chimney twist."""
    return anchored_otherwise(facts) or at_least(facts.anchorage.strap_count, 2)


@IRC.rule("SEI-10", "R1001.4.1; R1003.4.1", "Strap embedment", "in", "strap_embedment")
def embedment(facts: Facts) -> Compared:
    """A strap set in too short pulls out."""
    return anchored_otherwise(facts) or at_least(facts.anchorage.strap_embedment, inches(12))


@IRC.rule("SEI-11", "R1001.4.1; R1003.4.1", "Strap beyond its hook", "in", "strap_hook_extension")
def hook(facts: Facts) -> Compared:
    """A hook holds by what lies behind the bend."""
    return anchored_otherwise(facts) or at_least(facts.anchorage.strap_hook_extension, inches(6))


@IRC.rule("SEI-12", "R1001.4.1; R1003.4.1", "Joists to each strap", "count", "joists_per_strap")
def joists(facts: Facts) -> Compared:
    """One joist would be torn off; several share the pull."""
    return anchored_otherwise(facts) or at_least(facts.anchorage.joists_per_strap, 4)


@IRC.rule(
    "SEI-13", "R1001.4.1; R1003.4.1", "Bolts to each strap", "count", "bolts_half_inch_per_strap"
)
def bolts(facts: Facts) -> Compared:
    """A strap is as strong as what fastens it."""
    return anchored_otherwise(facts) or at_least(facts.anchorage.bolts_half_inch_per_strap, 2)


@IRC.rule(
    "SEI-14",
    "R1001.4.1.1; R1003.4.1.1",
    "Anchor plate on steel framing",
    "in",
    "plate_side; plate_thickness; no6_screws_per_bolt",
)
def plate(facts: Facts) -> Compared:
    """Thin steel tears at a bolt; a plate spreads the pull over many screws."""
    if outcome := anchored_otherwise(facts):
        return outcome
    held = facts.anchorage
    if held.steel_framing is None:
        return unknown("What the framing is made of")
    if not held.steel_framing:
        return not_applicable("The framing is not of cold-formed steel.")
    found = all_of(
        at_least(held.plate_side, inches(3)),
        at_least(held.plate_thickness, inches(0.229), "Thickness of the plate."),
    )
    if found.verdict == FALLS_SHORT:
        return found
    screws = at_least(held.no6_screws_per_bolt, 7)
    if screws.verdict == FALLS_SHORT:
        return Compared(
            FALLS_SHORT, note=f"{held.no6_screws_per_bolt} screws to each bolt; 7 are required."
        )
    if NOT_CHECKED in (found.verdict, screws.verdict):
        return unknown("Side or thickness of the plate, or the number of its screws")
    return at_least(held.plate_side, inches(3), "Thickness and screws are enough too.")
