"""US IRC R1003.1 to R1003.17: the stack itself, its corbels, offsets, flues and clean-out."""

from __future__ import annotations

from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    Compared,
    all_of,
    at_least,
    at_most,
    inches,
    not_applicable,
    one_of,
    reaches,
    unknown,
    with_note,
    yes,
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import IRC

NOMINAL = inches(3 + 5 / 8)
"""What a nominal 4 in measures: a joint of 3/8 in is counted in. [m]"""
MASONRY = ("solid units", "hollow grouted solid", "stone", "concrete")


def _corbelled(facts: Facts) -> Compared | None:
    if facts.stack.corbelled is None:
        return unknown("Whether the chimney is corbeled")
    return None if facts.stack.corbelled else not_applicable("The chimney is not corbeled.")


@IRC.rule("CHM-01", "R1003.5", "Corbel, total", "in", "corbel_total", at_most=True)
def corbel_total(facts: Facts) -> Compared:
    """Corbel out too far and the overhang pulls the wall over."""
    if outcome := _corbelled(facts):
        return outcome
    share = 1.0 if facts.stack.upper_storey else 0.5
    return at_most(
        facts.stack.corbel_total,
        share * facts.chimney_wall_thickness,
        "Against the chimney's own wall.",
    )


@IRC.rule(
    "CHM-02", "R1003.5", "Wall that carries a one-sided corbel", "in", "supporting_wall_thickness"
)
def corbel_wall(facts: Facts) -> Compared:
    """A thin wall bends under a load on one face."""
    if outcome := _corbelled(facts):
        return outcome
    if facts.stack.one_sided is None:
        return unknown("Whether the corbel is on one side only")
    if not facts.stack.one_sided:
        return not_applicable("The corbel is equal on both sides.")
    return at_least(facts.stack.supporting_wall_thickness, inches(12))


@IRC.rule("CHM-03", "R1003.5", "Corbel of one course", "in", "corbel_per_course", at_most=True)
def corbel_course(facts: Facts) -> Compared:
    """Each brick must rest on the one below with most of its bed."""
    if outcome := _corbelled(facts):
        return outcome
    if facts.corbel_unit_height is None or facts.corbel_unit_bed is None:
        return unknown("The size of the corbeled unit")
    if facts.chimney_corbel_step is None:
        return unknown("How far a course of the chimney's corbel steps out")
    return at_most(
        facts.chimney_corbel_step, min(facts.corbel_unit_height / 2, facts.corbel_unit_bed / 3)
    )


@IRC.rule(
    "CHM-04",
    "R1003.6",
    "No change near a floor, ceiling or roof",
    "in",
    "distance_change_to_penetration",
)
def change_of_shape(facts: Facts) -> Compared:
    """Where framing comes close, keep the masonry plain so that the air space stays whole."""
    if facts.stack.changes is None and facts.stack.distance_change_to_penetration is None:
        return unknown("Whether wall or liner changes")
    if facts.stack.changes is False:
        return not_applicable("Neither wall nor liner changes.")
    return at_least(facts.stack.distance_change_to_penetration, inches(6))


@IRC.rule("CHM-05", "R1003.7", "Offset of the flue", "in", "flue_offset", at_most=True)
def offset(facts: Facts) -> Compared:
    """Past the middle of the wall below, the upper part stands on nothing."""
    if facts.flue_offset <= 0:
        return not_applicable("The flue runs straight.")
    if facts.liner_kind is None or facts.stack.offset_carried is None:
        return unknown("How the offset is carried")
    if facts.stack.offset_carried:
        return not_applicable("Masonry below carries the offset.")
    if facts.liner_kind != "ASTM C315 clay":
        return not_applicable("The limit is for a clay liner in one wythe.")
    return at_most(
        facts.flue_offset,
        facts.flue_offset_limit,
        "Half the liner outside, the gap and half the wall.",
    )


@IRC.rule(
    "CHM-06",
    "R1003.8",
    "Nothing rests on the chimney",
    "lbf",
    "imposed_load_on_chimney",
    at_most=True,
)
def added_load(facts: Facts) -> Compared:
    """The chimney moves by itself; what rests on it cracks it or drops off."""
    if facts.stack.designed_for_load is None:
        return unknown("Whether it was designed for load")
    if facts.stack.designed_for_load:
        return not_applicable("It is designed for that load, or part of a masonry wall.")
    return at_most(facts.stack.imposed_load_on_chimney, 0.0)


@IRC.rule(
    "CHM-07",
    "R1003.10; Table R1001.1",
    "Chimney wall, nominal",
    "in",
    "chimney_wall_thickness_nominal",
)
def wall(facts: Facts) -> Compared:
    """One brick of wall holds the heat in and the weather out; nominal, so 3 5/8 in passes."""
    actual = facts.chimney_wall_thickness
    nominal = inches(4) if not reaches(actual, inches(4)) and reaches(actual, NOMINAL) else actual
    return at_least(nominal, inches(4))


def several_flues(facts: Facts) -> Compared | None:
    """Why a clause on several flues asks nothing, or that nobody has counted them."""
    if facts.anchorage.n_flues is None:
        return unknown("The number of flues")
    if facts.anchorage.n_flues < 2:
        return not_applicable("There is one flue.")
    return None


@IRC.rule("CHM-08", "R1003.13", "Masonry between flues", "in", "wythe_between_flues")
def between(facts: Facts) -> Compared:
    """Smoke and sparks cross from flue to flue where nothing stands between."""
    if outcome := several_flues(facts):
        return outcome
    if facts.stack.one_appliance:
        return not_applicable("Both flues serve one appliance, so the liners may touch.")
    return at_least(
        facts.wythe_between_flues,
        inches(4),
        "Actual: the text does not say nominal, so 3 5/8 in is short.",
    )


@IRC.rule(
    "CHM-09",
    "R1003.13 exception",
    "Stagger of touching liners' joints",
    "in",
    "liner_joint_stagger",
)
def stagger(facts: Facts) -> Compared:
    """Joints side by side make one leak of two."""
    if outcome := several_flues(facts):
        return outcome
    if facts.stack.one_appliance is None:
        return unknown("Whether both flues serve one appliance")
    if not facts.stack.one_appliance:
        return not_applicable("The flues do not serve one appliance.")
    return at_least(facts.stack.liner_joint_stagger, inches(4), "Many local rules ask for 7 in.")


@IRC.rule(
    "CHM-10",
    "R1003.16",
    "Inlet from the side, with a thimble",
    "word",
    "inlet_side; thimble_material",
)
def inlet(facts: Facts) -> Compared:
    """A side inlet collects soot, and bare masonry around it burns through."""
    if facts.stack.connector is None:
        return unknown("Whether an appliance is connected")
    if not facts.stack.connector:
        return not_applicable("No appliance is connected.")
    return all_of(
        one_of(facts.stack.inlet_side, ("side",)),
        one_of(facts.stack.thimble_material, ("fireclay", "refractory", "metal")),
    )


def _cleanout(facts: Facts) -> Compared | None:
    if facts.stack.cleaned_through_opening is None:
        return unknown("Whether the flue is cleaned through the opening")
    return (
        not_applicable("The flue is cleaned through the opening.")
        if facts.stack.cleaned_through_opening
        else None
    )


def _cleanout_place(facts: Facts) -> Compared | None:
    if outcome := _cleanout(facts):
        return outcome
    return not_applicable("There is no clean-out.") if facts.stack.cleanout is False else None


@IRC.rule(
    "CHM-11",
    "R1003.17",
    "Clean-out near the base of the flue",
    "in",
    "cleanout_to_flue_base",
    at_most=True,
)
def cleanout(facts: Facts) -> Compared:
    """Soot that nobody can reach catches fire some day."""
    if (outcome := _cleanout(facts)) is not None:
        return outcome
    stack = facts.stack
    if stack.cleanout is False:
        return Compared(FALLS_SHORT, "no clean-out", inches(6), "A clean-out is required.")
    if stack.cleanout is None and stack.cleanout_to_flue_base is None:
        return unknown("Whether there is a clean-out")
    return at_most(facts.stack.cleanout_to_flue_base, inches(6))


@IRC.rule(
    "CHM-12",
    "R1003.17",
    "Clean-out below the lowest inlet",
    "in",
    "lowest_inlet_minus_cleanout_top",
)
def cleanout_below(facts: Facts) -> Compared:
    """Soot must have room to fall past the inlet."""
    return _cleanout_place(facts) or at_least(
        facts.stack.lowest_inlet_minus_cleanout_top, inches(6)
    )


@IRC.rule("CHM-13", "R1003.17", "Clean-out height", "in", "cleanout_height")
def cleanout_height(facts: Facts) -> Compared:
    """A hand and a shovel have to go in."""
    outcome = _cleanout_place(facts)
    return outcome or with_note(
        at_least(facts.stack.cleanout_height, inches(6)), "Its cover must not burn."
    )


@IRC.rule(
    "CHM-14", "R1003.10.1", "Veneer on a framed chimney", "yes-no", "through_flashing; weep_holes"
)
def veneer(facts: Facts) -> Compared:
    """Water that gets in behind a veneer has to get out again."""
    if facts.stack.veneer_on_frame is None:
        return unknown("Whether this is a veneer on framing")
    if not facts.stack.veneer_on_frame:
        return not_applicable("The chimney is masonry through and through.")
    return all_of(yes(facts.stack.through_flashing), yes(facts.stack.weep_holes))


@IRC.rule("CHM-15", "R1003.1", "What a masonry chimney is built of", "word", "masonry_kind")
def material(facts: Facts) -> Compared:
    """Hollow units let heat and sparks through to whatever leans against them."""
    return one_of(
        facts.chimney_masonry_kind,
        MASONRY,
        "Whether the chimney's block is grouted solid is not known yet."
        if facts.design.chimney.masonry == "block"
        else "",
    )
