"""US IRC R1001.2, R1003.2 and chapter 4: the footing, what it stands on, frost, ash clean-out."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.base.tables import soil_bearing
from fireplace_calc.base.units import PSF
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
    unknown,
    with_note,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import IRC, LATEST, ONLY_2021

PSI = 144 * PSF
"""[Pa]"""
ROUTES = ("below frost line", "frost protected shallow R403.3", "ASCE 32", "solid rock")
"""Ways of keeping frost off that the foundation chapter accepts."""
SAME_FOOTING = "The chimney stands on the fireplace's footing."


@IRC.rule("FND-01", "R1001.2", "Fireplace footing thickness", "in", "footing_thickness")
def footing_thickness(facts: Facts) -> Compared:
    """Tons of masonry stand on one spot; a thin slab cracks and the flue cracks with it."""
    return at_least(facts.footing_thickness, inches(12))


@IRC.rule(
    "FND-02",
    "R1001.2",
    "Fireplace footing projection, every side",
    "in",
    "footing_projection_min_side",
)
def footing_projection(facts: Facts) -> Compared:
    """A wider foot spreads the weight and keeps the chimney from leaning."""
    return at_least(facts.footing_projection_min_side, inches(6))


@IRC.rule("FND-03", "R1001.2", "Footing below frost", "in", "footing_bottom_depth")
def below_frost(facts: Facts) -> Compared:
    """Ground that freezes lifts what stands on it, and drops it again crooked."""
    if facts.frost_depth is None:
        return unknown("The local frost depth")
    if facts.frost_depth <= 0:
        return not_applicable("The ground does not freeze here.")
    found = at_least(facts.footing_bottom_depth, facts.frost_depth)
    method = facts.ground.frost_protection_method
    if found.verdict == FALLS_SHORT and method in ROUTES[1:]:
        return with_note(
            found,
            f"By {method}, which FND-11 accepts, the foundation chapter lets it lie higher; this"
            " section does not repeat that. Settle it with the building official.",
        )
    return found


@IRC.rule(
    "FND-04",
    "R1001.2",
    "Footing depth where the ground does not freeze",
    "in",
    "footing_depth_below_finished_grade",
)
def below_grade(facts: Facts) -> Compared:
    """Near the surface the ground dries, washes out and gets dug up."""
    if facts.frost_depth is None:
        return unknown("The local frost depth")
    if facts.frost_depth > 0:
        return not_applicable("The ground freezes here.")
    return at_least(
        facts.footing_depth_below_finished_grade,
        inches(12),
        "To the footing's top, the safe reading.",
    )


@IRC.rule("FND-05", "R1003.2", "Chimney footing thickness", "in", "footing_thickness")
def chimney_footing_thickness(facts: Facts) -> Compared:
    """No part of the house is heavier for its footprint than the chimney."""
    return _own(facts) or at_least(facts.footing_thickness, inches(12))


@IRC.rule(
    "FND-06",
    "R1003.2",
    "Chimney footing projection, every side",
    "in",
    "footing_projection_min_side",
)
def chimney_footing_projection(facts: Facts) -> Compared:
    """A wider foot keeps a slender chimney upright."""
    return _own(facts) or at_least(facts.footing_projection_min_side, inches(6))


def _own(facts: Facts) -> Compared | None:
    if facts.ground.own_footing is None:
        return unknown("Whether the chimney has a footing of its own")
    return None if facts.ground.own_footing else not_applicable(SAME_FOOTING)


@IRC.rule("FND-07", "R1001.2; R1003.2", "What the footing bears on", "word", "bearing_stratum")
def stratum(facts: Facts) -> Compared:
    """Loose fill settles, and settles more under the chimney than beside it."""
    return one_of(facts.ground.bearing_stratum, ("undisturbed soil", "engineered fill"))


def bearing(facts: Facts, table: Mapping[str, float | None]) -> Compared:
    """Pressure under the footing against a table of presumptive soil bearing."""
    if facts.material_class is None:
        return unknown("The soil")
    note = (
        "The weight as drawn, without wind or what the house adds."
        if facts.ground.footing_contact_pressure is None
        else ""
    )
    return at_most(facts.footing_contact_pressure, table[facts.material_class], note)


@IRC.rule(
    "FND-08", "R401.4.1", "Pressure on the soil", "psf", "footing_contact_pressure", at_most=True
)
def soil(facts: Facts) -> Compared:
    """Soil that is pressed too hard gives way slowly, for years."""
    return bearing(facts, {name: pressure for name, (pressure, _) in soil_bearing().items()})


@IRC.rule("FND-09", "R401.4.1 note b", "Soil too weak for the table", "psf", "soil_bearing_assumed")
def weak_soil(facts: Facts) -> Compared:
    """Below this the table may not be used; somebody has to dig and look."""
    found = at_least(facts.ground.soil_bearing_assumed, 1500 * PSF)
    weak = found.verdict == FALLS_SHORT
    return (
        Compared(NOT_CHECKED, found.provided, found.required, "Needs a soils investigation.")
        if weak
        else found
    )


@IRC.rule(
    "FND-10",
    "R403.1.4",
    "Exterior footing below undisturbed ground",
    "in",
    "footing_depth_below_undisturbed_ground",
)
def undisturbed(facts: Facts) -> Compared:
    """Fill heaped around a wall carries nothing; only undisturbed ground counts."""
    return at_least(facts.ground.footing_depth_below_undisturbed_ground, inches(12))


@IRC.rule("FND-11", "R403.1.4.1", "How frost is kept off", "word", "frost_protection_method")
def frost_route(facts: Facts) -> Compared:
    """Frost must not reach the footing; the code accepts several ways."""
    if facts.frost_depth is not None and facts.frost_depth <= 0:
        return not_applicable("The ground does not freeze here.")
    method = facts.ground.frost_protection_method
    found = one_of(method, ROUTES)
    if method == ROUTES[0] and facts.frost_depth is None:
        return unknown("The local frost depth")
    if method == ROUTES[0] and not _below_frost(facts):
        return Compared(
            FALLS_SHORT,
            "above frost line",
            " or ".join(ROUTES),
            "The footing as drawn does not reach below frost.",
        )
    if method in ROUTES[1:] and not _below_frost(facts):
        return with_note(
            found,
            "The building official has to agree: the fireplace section names only the frost line,"
            " and FND-03 goes by that.",
        )
    return found


def _below_frost(facts: Facts) -> bool:
    return facts.frost_depth is not None and reaches(facts.footing_bottom_depth, facts.frost_depth)


@IRC.rule(
    "FND-12",
    "R403.1.1",
    "Concrete footing projection against its thickness",
    "in",
    "footing_projection",
    at_most=True,
)
def projection_over_thickness(facts: Facts) -> Compared:
    """Plain concrete that sticks out farther than it is thick breaks off."""
    return at_most(facts.footing_projection_min_side, facts.footing_thickness)


@IRC.rule("FND-13", "R403.1.1", "Least concrete footing", "in", "footing_width", editions=LATEST)
def least_footing(facts: Facts) -> Compared:
    """Below this size concrete is a crust, not a footing."""
    if not reaches(facts.footing_thickness, inches(6)):
        return at_least(facts.footing_thickness, inches(6), "Thickness.")
    return at_least(facts.footing_width, inches(12), "The shorter side.")


@IRC.rule(
    "FND-14",
    "R403.1.5",
    "Underside of the footing nearly level",
    "ratio",
    "footing_bottom_slope",
    at_most=True,
    editions=ONLY_2021,
)
def underside(facts: Facts) -> Compared:
    """On a slope the whole weight wants to slide; step the footing instead."""
    return at_most(facts.ground.footing_bottom_slope, 0.1)


@IRC.rule(
    "FND-15",
    "R403.1.3.5.3",
    "Bar cover against earth",
    "in",
    "rebar_cover_earth",
    editions=ONLY_2021,
)
def cover(facts: Facts) -> Compared:
    """Bars too near the wet ground rust and split the concrete."""
    if facts.ground.reinforced is None and facts.ground.rebar_cover_earth is None:
        return unknown("Whether the footing is reinforced")
    if facts.ground.reinforced is False:
        return not_applicable("The footing has no bars.")
    return at_least(facts.ground.rebar_cover_earth, inches(3))


@IRC.rule(
    "FND-16", "R402.2", "Foundation concrete strength", "psi", "concrete_fc", editions=ONLY_2021
)
def concrete(facts: Facts) -> Compared:
    """Weak concrete crumbles under frost before it crumbles under load."""
    return at_least(
        facts.ground.concrete_fc, 2500 * PSI, "3000 psi where it is exposed to weather."
    )


@IRC.rule("FND-17", "R1001.2.1", "Ash clean-out door", "word", "ash_cleanout_door_material")
def ash_door(facts: Facts) -> Compared:
    """Ash stays hot for days behind a door that nobody thinks of."""
    if facts.ground.ash_dump is None and facts.ground.ash_cleanout_door_material is None:
        return unknown("Whether there is an ash dump")
    if facts.ground.ash_dump is False:
        return not_applicable("There is no ash dump.")
    return one_of(facts.ground.ash_cleanout_door_material, ("ferrous metal", "masonry"))
