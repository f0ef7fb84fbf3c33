"""US IRC R1001: smoke chamber, hearth and hearth extension."""

from __future__ import annotations

from fireplace_calc.base.units import DEG, SQFT
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    NOT_CHECKED,
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
from fireplace_calc.rules.us.book import IRC

LARGE = 6 * SQFT
"""Opening from which the larger hearth is asked; the size itself counts as large. [m2]"""
RAISED = inches(8)
"""Step from which an opening counts as raised. [m]"""
CHAMBER_LININGS = {"firebrick": inches(2), "vitrified clay": inches(5 / 8)}
EARTHEN = ("concrete", "masonry", "brick", "stone", "tile")


def chamber_lined(facts: Facts) -> bool | None:
    """Whether the smoke chamber's lining earns the thinner wall."""
    if facts.smoke_chamber_lining is None:
        return None
    needed = CHAMBER_LININGS.get(facts.smoke_chamber_lining)
    return needed is not None and reaches(facts.smoke_chamber_lining_thickness, needed)


@IRC.rule("SMK-01", "R1001.8", "Smoke chamber wall, unlined", "in", "smoke_chamber_wall_thickness")
def chamber_wall(facts: Facts) -> Compared:
    """Flame reaches in here when the fire is high, and soot catches."""
    if (good := chamber_lined(facts)) is None:
        return unknown("The smoke chamber's lining")
    if good:
        return not_applicable("The smoke chamber is lined.")
    return at_least(facts.smoke_chamber_wall_thickness, inches(8))


@IRC.rule("SMK-02", "R1001.8", "Smoke chamber wall, lined", "in", "smoke_chamber_wall_thickness")
def chamber_wall_lined(facts: Facts) -> Compared:
    """A lining takes part of the heat, so less wall will do."""
    if (good := chamber_lined(facts)) is None:
        return unknown("The smoke chamber's lining")
    if not good:
        return not_applicable("The smoke chamber has no lining that counts.")
    return at_least(facts.smoke_chamber_wall_thickness, inches(6))


@IRC.rule("SMK-03", "R1001.8", "Smoke chamber lining", "in", "smoke_chamber_lining_thickness")
def chamber_lining(facts: Facts) -> Compared:
    """Only a lining of this thickness earns the thinner wall."""
    if facts.smoke_chamber_lining is None:
        return unknown("The smoke chamber's lining")
    needed = CHAMBER_LININGS.get(facts.smoke_chamber_lining)
    if needed is None:
        return not_applicable("Parging is a coat, not a lining.")
    return at_least(facts.smoke_chamber_lining_thickness, needed)


@IRC.rule("SMK-04", "R1001.8.1", "Smoke chamber height", "in", "smoke_chamber_height", at_most=True)
def chamber_height(facts: Facts) -> Compared:
    """A tall chamber cools the smoke and lets it tumble before the flue takes it."""
    return at_most(facts.smoke_chamber_height, facts.opening_width)


@IRC.rule(
    "SMK-05",
    "R1001.8.1",
    "Smoke chamber slope, smooth",
    "deg",
    "smoke_chamber_slope_from_vertical",
    at_most=True,
)
def slope_smooth(facts: Facts) -> Compared:
    """Smoke follows a steep wall; off a flat one it rolls back."""
    if facts.smoke_chamber_construction is None:
        return unknown("How the smoke chamber is built")
    if facts.smoke_chamber_construction == "corbelled":
        return not_applicable("The smoke chamber is corbeled.")
    return at_most(
        facts.smoke_chamber_slope_from_vertical,
        45 * DEG,
        "From the vertical, at the face that leans most.",
    )


@IRC.rule(
    "SMK-06",
    "R1001.8.1",
    "Smoke chamber slope, corbeled",
    "deg",
    "smoke_chamber_slope_from_vertical",
    at_most=True,
)
def slope_corbelled(facts: Facts) -> Compared:
    """Steps trip the smoke and hold soot, so corbeling has to be steeper than a smooth face."""
    if facts.smoke_chamber_construction is None:
        return unknown("How the smoke chamber is built")
    if facts.smoke_chamber_construction != "corbelled":
        return not_applicable("The smoke chamber is not corbeled.")
    return at_most(
        facts.smoke_chamber_slope_from_vertical,
        30 * DEG,
        "From the vertical, at the face that leans most.",
    )


@IRC.rule(
    "SMK-07",
    "R606.5.2",
    "Corbel step, general masonry",
    "in",
    "corbel_per_course",
    at_most=True,
    editions=("2021",),
)
def corbel_step(facts: Facts) -> Compared:
    """A brick that stands out too far tips before the next course holds it down."""
    if facts.smoke_chamber_construction is None:
        return unknown("How the smoke chamber is built")
    if facts.smoke_chamber_construction != "corbelled":
        return not_applicable("The smoke chamber is not corbeled.")
    if facts.corbel_per_course is None or facts.unit_height is None or facts.unit_thickness is None:
        return unknown("The corbeled course or its brick")
    found = at_most(facts.corbel_per_course, min(facts.unit_height / 2, facts.unit_thickness / 3))
    if found.verdict == FALLS_SHORT:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            (
                "Over the limit of chapter 6, which the fireplace chapter does not call up. "
                "Settle it with the building official."
            ),
        )
    return found


@IRC.rule("HTH-01", "R1001.9", "Hearth and what carries it", "word", "hearth_material")
def hearth_material(facts: Facts) -> Compared:
    """Embers lie here for hours and the heat works downward."""
    return all_of(
        one_of(facts.hearth_material, EARTHEN, "The material of the hearth is not known yet."),
        one_of(
            facts.hearth_support, ("noncombustible",), "What carries the hearth is not known yet."
        ),
        yes(
            facts.hearth_forms_removed, ask="Whether the wood forms have come out is not known yet."
        ),
    )


@IRC.rule("HTH-02", "R1001.9.1; Table R1001.1", "Hearth thickness", "in", "hearth_thickness")
def hearth_thickness(facts: Facts) -> Compared:
    """The floor under the fire has to keep the heat from what lies below."""
    return at_least(facts.hearth_thickness, inches(4))


def _raised(facts: Facts) -> bool:
    return at_least(facts.opening_bottom_above_extension_top, RAISED).verdict == "meets"


@IRC.rule("HTH-03", "R1001.9.2", "Hearth extension thickness", "in", "hearth_extension_thickness")
def extension_thickness(facts: Facts) -> Compared:
    """Fire at floor level heats what lies in front of it."""
    if _raised(facts):
        return not_applicable("The opening is raised 8 in or more over the extension.")
    return at_least(facts.hearth_extension_thickness, inches(2))


@IRC.rule(
    "HTH-04",
    "R1001.9.2 exception",
    "Hearth extension thickness, raised opening",
    "in",
    "hearth_extension_thickness",
)
def extension_thickness_raised(facts: Facts) -> Compared:
    """A raised fire heats the extension less; it may be thin, but not smaller in plan."""
    if not _raised(facts):
        return not_applicable("The opening is raised less than 8 in over the extension.")
    return at_least(facts.hearth_extension_thickness, inches(3 / 8))


SMALL_ONLY = "The opening is 6 sq ft or larger."
LARGE_ONLY = "The opening is smaller than 6 sq ft."


@IRC.rule("HTH-05", "R1001.10", "Hearth in front, small opening", "in", "hearth_extension_front")
def front_small(facts: Facts) -> Compared:
    """Floor a spark can land on."""
    if reaches(facts.opening_area, LARGE):
        return not_applicable(SMALL_ONLY)
    return at_least(facts.hearth_extension_front, inches(16))


@IRC.rule("HTH-06", "R1001.10", "Hearth beside, small opening", "in", "hearth_extension_side")
def side_small(facts: Facts) -> Compared:
    """Sparks fly sideways too."""
    if reaches(facts.opening_area, LARGE):
        return not_applicable(SMALL_ONLY)
    return at_least(facts.hearth_extension_side, inches(8))


@IRC.rule("HTH-07", "R1001.10", "Hearth in front, large opening", "in", "hearth_extension_front")
def front_large(facts: Facts) -> Compared:
    """Floor a spark can land on; a bigger opening throws farther."""
    if not reaches(facts.opening_area, LARGE):
        return not_applicable(LARGE_ONLY)
    return at_least(facts.hearth_extension_front, inches(20))


@IRC.rule("HTH-08", "R1001.10", "Hearth beside, large opening", "in", "hearth_extension_side")
def side_large(facts: Facts) -> Compared:
    """Sparks fly sideways too, and farther from a bigger opening."""
    if not reaches(facts.opening_area, LARGE):
        return not_applicable(LARGE_ONLY)
    return at_least(facts.hearth_extension_side, inches(12))
