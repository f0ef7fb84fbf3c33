"""US IRC R1003: a second flue in the chimney, and the appliance that may stand on it."""

from __future__ import annotations

from fireplace_calc.design.second_flue import APPLIANCE, FIREPLACE, SOLID_FUEL
from fireplace_calc.rules.comparing import (
    DOES_NOT_APPLY,
    FALLS_SHORT,
    MEETS,
    Compared,
    all_of,
    at_least,
    at_most,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.second_area import (
    TOPS_APART,
    second_net_area,
    shape_of,
    tops_apart,
)
from fireplace_calc.rules.us.book import IRC
from fireplace_calc.rules.us.chimney import several_flues
from fireplace_calc.rules.us.flue import (
    LINERS,
    flat_flue,
    rectangular_flue,
    round_flue,
    square_flue,
)

NO_SECOND = "There is no second flue in the chimney."
NO_FIREPLACE = "No fireplace stands on the second flue."
NO_APPLIANCE = "No appliance stands on the second flue."
LEVEL_TOPS = (
    " The two flues end nearly level, so that smoke of one may be drawn down the other: the trade"
    " sets them at least 2 in apart (PRA-24, from memory)."
)
IN_OPENING = (
    "A fireplace's flue is cleaned through its opening; where this one is not, it needs a"
    " clean-out too."
)


def _fireplace(facts: Facts) -> Compared | None:
    serves = facts.design.second_flue.serves
    return None if serves == FIREPLACE else not_applicable(NO_FIREPLACE)


def _appliance(facts: Facts, otherwise: str = NO_APPLIANCE) -> Compared | None:
    serves = facts.design.second_flue.serves
    if serves == APPLIANCE:
        return None
    return not_applicable(otherwise if serves == FIREPLACE else NO_APPLIANCE)


@IRC.rule("TWO-01", "R1003.13", "Masonry between flues bonded", "yes-no", "bonded")
def bonded(facts: Facts) -> Compared:
    """A wythe that only leans between the liners slips and leaves a gap that smoke crosses."""
    if outcome := several_flues(facts):
        return outcome
    if facts.stack.one_appliance:
        return not_applicable("Both flues serve one appliance, so the liners may touch.")
    told = facts.design.second_flue.bonded
    if told is None:
        return unknown("Whether the masonry between the flues is bonded into the walls")
    return yes(told, "Into the chimney's walls.")


@IRC.rule("TWO-02", "R1003.15.1", "Second fireplace's flue area", "in2", "second_flue_net_area")
def second_area(facts: Facts) -> Compared:
    """Each fireplace has a flue of its own, sized for its own opening."""
    second, told = facts.frame.second, facts.design.second_flue
    if (outcome := _fireplace(facts)) or second is None:
        return outcome or not_applicable(NO_SECOND)
    if told.opening_area is None:
        return unknown("The second fireplace's opening")
    own = facts.but(
        opening_area=told.opening_area,
        flue_route="ratio",
        flue_shape=shape_of(second.bore),
        flue_aspect=second.bore.aspect,
        flue_net_area=second_net_area(facts),
    )
    answers = (rule(own) for rule in (round_flue, square_flue, rectangular_flue, flat_flue))
    return next(found for found in answers if found.verdict != DOES_NOT_APPLY)


@IRC.rule(
    "TWO-03", "R1003.15.1", "Where the second flue's area comes from", "word", "second_area_source"
)
def second_source(facts: Facts) -> Compared:
    """The nominal size is not the hole, in this flue as in the first."""
    if outcome := _fireplace(facts):
        return outcome
    if facts.design.second_flue.area_from is None:
        return unknown("Where the second flue's area comes from")
    return one_of(facts.design.second_flue.area_from, ("table", "manufacturer", "field measured"))


@IRC.rule("TWO-04", "R1003.11.1", "Kind of liner, second flue", "word", "second_liner_kind")
def second_liner(facts: Facts) -> Compared:
    """It must stand a chimney fire as well as daily smoke."""
    told = facts.design.second_flue
    if not told.drawn:
        return not_applicable(NO_SECOND)
    if told.serves == APPLIANCE and told.fuel is None:
        return unknown("What the appliance burns")
    if told.serves == APPLIANCE and told.fuel != SOLID_FUEL:
        return not_applicable("The liner goes by the appliance's fuel; see FLU-17.")
    return unknown("The second flue's liner") if told.liner is None else one_of(told.liner, LINERS)


@IRC.rule("TWO-05", "R1003.12", "Gap around the second liner", "in", "liner_gap", at_most=True)
def second_gap(facts: Facts) -> Compared:
    """A thinner liner takes a narrower gap."""
    second, told = facts.frame.second, facts.design.second_flue
    if second is None:
        return not_applicable(NO_SECOND)
    if told.liner is None:
        return unknown("The second flue's liner")
    if told.liner != "ASTM C315 clay":
        return not_applicable("The second liner is not clay.")
    return at_most(facts.liner_gap, second.bore.wall, "Not wider than the liner is thick.")


@IRC.rule("TWO-06", "R1003.12", "Top of the second liner", "in", "second_liner_top_above_wall")
def second_top(facts: Facts) -> Compared:
    """Rain has to run off the crown and not into the gap, at this flue too."""
    second = facts.frame.second
    if second is None:
        return not_applicable(NO_SECOND)
    over = second.top - facts.frame.crown_top
    return Compared(
        MEETS if over > 1e-6 else FALLS_SHORT,
        over,
        0.0,
        "More than nothing; the code gives no figure."
        + ("" if reaches(tops_apart(facts) or 0.0, TOPS_APART) else LEVEL_TOPS),
    )


@IRC.rule(
    "TWO-07", "R1003.17", "Clean-out of the second flue", "in", "second_cleanout", at_most=True
)
def second_cleanout(facts: Facts) -> Compared:
    """Soot that nobody can reach catches fire some day."""
    if outcome := _appliance(facts, IN_OPENING):
        return outcome
    if facts.design.second_flue.cleanout_to_base is None:
        return unknown("How high the second flue's clean-out lies over its foot")
    return at_most(
        facts.design.second_flue.cleanout_to_base, inches(6), "Over the foot of the flue."
    )


@IRC.rule(
    "TWO-08", "R1003.17", "Clean-out below the second flue's inlet", "in", "second_cleanout_below"
)
def second_cleanout_below(facts: Facts) -> Compared:
    """Soot must have room to fall past the inlet."""
    if outcome := _appliance(facts, IN_OPENING):
        return outcome
    if facts.design.second_flue.cleanout_below_inlet is None:
        return unknown("How far the second flue's clean-out lies below its inlet")
    return at_least(facts.design.second_flue.cleanout_below_inlet, inches(6))


@IRC.rule("TWO-09", "R1003.17", "Clean-out height, second flue", "in", "second_cleanout_height")
def second_cleanout_height(facts: Facts) -> Compared:
    """A hand and a shovel have to go in."""
    if outcome := _appliance(facts, IN_OPENING):
        return outcome
    if facts.design.second_flue.cleanout_height is None:
        return unknown("The height of the second flue's clean-out")
    return at_least(facts.design.second_flue.cleanout_height, inches(6), "Its cover must not burn.")


@IRC.rule(
    "TWO-10", "R1003.16", "Second flue's inlet, with a thimble", "word", "second_inlet; thimble"
)
def second_inlet(facts: Facts) -> Compared:
    """A side inlet collects soot, and bare masonry around it burns through."""
    told = facts.design.second_flue
    return _appliance(facts) or all_of(
        one_of(
            told.inlet_side,
            ("side",),
            "" if told.inlet_side else "Where the second flue's inlet enters is not known yet.",
        ),
        one_of(
            told.thimble,
            ("fireclay", "refractory", "metal"),
            "" if told.thimble else "The thimble is not known yet.",
        ),
    )
