"""Ontario: outdoor air for the fire, the house's ventilator, and the alarm."""

from __future__ import annotations

from fireplace_calc.base.units import MM
from fireplace_calc.rules.ca.book import NBC, ONTARIO
from fireplace_calc.rules.comparing import FALLS_SHORT, Compared, at_least, unknown, yes
from fireplace_calc.rules.facts import Facts


@NBC.rule("CA-040", "9.22.1.4", "Outdoor air duct", "mm2", "air_passage_area", editions=ONTARIO)
def air_duct(facts: Facts) -> Compared:
    """A tight house starves the fire; here the duct is not left to choice."""
    if facts.air.exterior_air_supply is None:
        return unknown("Whether there is an outdoor air duct")
    if not facts.air.exterior_air_supply:
        return Compared(FALLS_SHORT, 0.0, 7854 * MM**2, "Every solid-fuel fireplace needs one.")
    return at_least(
        facts.air_passage_area or None, 7854 * MM**2, "A duct of 100 mm across, or the same area."
    )


@NBC.rule("CA-072", "6.2.12.2", "Carbon monoxide alarm", "yes-no", "co_alarm", editions=ONTARIO)
def co_alarm(facts: Facts) -> Compared:
    """Nobody smells carbon monoxide, least of all asleep."""
    return yes(facts.abroad.co_alarm, "Beside each sleeping area. A fireplace counts: our reading.")


@NBC.rule(
    "CA-073",
    "9.32.3.8",
    "Ventilation beside a wood fire",
    "yes-no",
    "heat_recovery",
    editions=ONTARIO,
)
def ventilator(facts: Facts) -> Compared:
    """A fan that only blows out pulls the smoke back down the flue."""
    return yes(
        facts.abroad.heat_recovery,
        "Balanced, with heat recovery. A fireplace counts as an appliance: our reading.",
    )
