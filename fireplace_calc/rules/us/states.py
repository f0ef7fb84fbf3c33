"""What five states change in the 2021 and 2024 editions. Each is read from one copy of the state's
own print.
"""

from __future__ import annotations

from fireplace_calc.base.units import PSF, SQIN
from fireplace_calc.rules.book import Amended
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    Compared,
    all_of,
    at_least,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us import chimney_clearance, clearance, foundation, roof, seismic
from fireplace_calc.rules.us.book import IRC

OF_2021, OF_2024 = (
    "on the 2021 International Residential Code",
    "on the 2024 International Residential Code",
)

NEW_JERSEY = Amended(IRC, "2021", "New Jersey", f"New Jersey Residential Code, {OF_2021}")
NORTH_CAROLINA = Amended(
    IRC, "2021", "North Carolina", f"North Carolina Residential Code, {OF_2021}"
)
CALIFORNIA = Amended(
    IRC, "2024", "California", f"California Residential Code, {OF_2024}", "read twice"
)
WASHINGTON = Amended(IRC, "2021", "Washington", f"Washington Residential Code, {OF_2021}")
OREGON = Amended(IRC, "2021", "Oregon", f"Oregon Residential Specialty Code, {OF_2021}")
STATES = (NEW_JERSEY, NORTH_CAROLINA, CALIFORNIA, WASHINGTON, OREGON)

NEW_JERSEY_SOIL = {
    "crystalline bedrock": 12_000 * PSF,
    "sedimentary or foliated rock": 6000 * PSF,
    "sandy gravel or gravel": 5000 * PSF,
    "sand": 3000 * PSF,
    "clay": 2000 * PSF,
}
"""The state's table; bedrock is as in the national one. [Pa]"""


# -- New Jersey ------------------------------------------------------------------------------------
@NEW_JERSEY.amend("CLR-06a")
def edge_at_firebox(facts: Facts) -> Compared:
    """By the state's figure, this much masonry keeps an open edge below the heat that chars
    wood.
    """
    return clearance.edge_through_masonry(facts, inches(6))


@NEW_JERSEY.amend("CLR-24b")
def edge_at_chimney(facts: Facts) -> Compared:
    """An edge in the open loses its heat to the air; the state asks for less masonry."""
    return chimney_clearance.chimney_edge_through_masonry(facts, inches(6))


@NEW_JERSEY.amend("FND-08")
def soil(facts: Facts) -> Compared:
    """Soil that is pressed too hard gives way slowly, for years; the state has a table of its
    own.
    """
    return foundation.bearing(facts, NEW_JERSEY_SOIL)


# -- North Carolina --------------------------------------------------------------------------------
@NORTH_CAROLINA.amend("FND-02")
def projection(facts: Facts) -> Compared:
    """A wider foot spreads the weight; the state doubles the code's figure."""
    return at_least(facts.footing_projection_min_side, inches(12))


def _taken_out(facts: Facts) -> Compared:
    return not_applicable("The state leaves this section out; the bolts stay in its table.")


for _key in (
    "SEI-02",
    "SEI-03",
    "SEI-04",
    "SEI-05",
    "SEI-06",
    "SEI-07",
    "SEI-09",
    "SEI-10",
    "SEI-11",
    "SEI-12",
    "SEI-14",
):
    NORTH_CAROLINA.amend(_key)(_taken_out)


@NORTH_CAROLINA.amend("SEI-13")
def three_bolts(facts: Facts) -> Compared:
    """A strap is as strong as what fastens it; the state's table has one bolt more."""
    return seismic.anchored_otherwise(facts) or at_least(
        facts.anchorage.bolts_half_inch_per_strap, 3
    )


# -- California ------------------------------------------------------------------------------------
def _in_c_too(key: str) -> None:
    national = next(r.function for r in IRC.rules if r.key == key)

    def function(facts: Facts) -> Compared:
        return seismic.as_category_d(facts, national)

    CALIFORNIA.amend(key)(function)


for _key in (f"SEI-{number:02d}" for number in range(1, 15)):
    _in_c_too(_key)


@CALIFORNIA.amend("ROF-04")
def arrester(facts: Facts) -> Compared:
    """In dry country one spark on a roof starts a wildfire, so every chimney carries a screen."""
    if facts.arrester is None:
        return unknown("Whether there is a spark arrester")
    if not facts.arrester:
        return yes(False, "The state asks for a spark arrester on every chimney.")
    return roof.arrester_area(facts)


# -- Washington ------------------------------------------------------------------------------------
@WASHINGTON.amend("AIR-07")
def ducted_air(facts: Facts) -> Compared:
    """Too small a duct feeds nothing; the state sets a least area, a damper in the duct, and a
    tight front.
    """
    if facts.air.exterior_air_supply is False:
        return Compared(FALLS_SHORT, 0.0, 6 * SQIN, "The state asks for air by a duct.")
    area = facts.air_passage_area
    if not area:
        return unknown("The free area of the duct")
    if not reaches(area, 6 * SQIN):
        return at_least(area, 6 * SQIN)
    closing = all_of(yes(facts.air.outlet_closable), yes(facts.air.tight_damper_or_doors))
    if closing.verdict != "meets":
        return Compared(
            closing.verdict,
            note="It also needs a damper in the duct, and a tight flue damper or doors.",
        )
    return at_least(area, 6 * SQIN, "With a damper in the duct and a tight front; no upper limit.")


# -- Oregon ----------------------------------------------------------------------------------------
@OREGON.amend("ROF-04")
def forest_arrester(facts: Facts) -> Compared:
    """A spark that lands in dry woods starts a wildfire; on forest land the state asks for a
    screen.
    """
    if facts.arrester or facts.arrester is None:
        return roof.arrester_area(facts)
    if facts.design.site.forest_land is None:
        return unknown("Whether the land is zoned for forest")
    if not facts.design.site.forest_land:
        return roof.arrester_area(facts)
    return yes(False, "The state asks for a spark arrester on land zoned for forest.")


@OREGON.amend("FND-07")
def stratum(facts: Facts) -> Compared:
    """Loose fill settles; the state accepts what its official has approved."""
    return one_of(facts.ground.bearing_stratum, ("undisturbed soil", "approved fill"))
