"""US IRC R1001: firebox, throat, damper and lintel."""

from __future__ import annotations

from fireplace_calc.design.firebox import STEEL_UNIT
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
)
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.us.book import IRC

MASONRY_KINDS = ("solid units", "hollow grouted solid", "stone", "concrete")
SHALLOW = "The shallow (Rumford) type follows the exception instead."
ORDINARY = "Only for the shallow (Rumford) type, which has to be declared."
NO_STEEL_BOX = "No steel firebox unit is part of this design."
STEEL_BOX = "The firebox is a steel unit; see FBX-06 to FBX-08."
AS_LISTED = "A listed unit is set as its listing says."
FIREBRICK_LINING = inches(2)


def lined(facts: Facts) -> bool | None:
    """Whether the lining earns the thinner wall; unknown lining or approval, unknown answer."""
    if facts.firebox_lining in (None, "none"):
        return None if facts.firebox_lining is None else False
    if facts.firebox_lining == "firebrick":
        return reaches(facts.firebrick_thickness, FIREBRICK_LINING)
    return facts.lining_approved


def _asked(facts: Facts) -> Compared:
    return unknown(
        "The lining" if facts.firebox_lining is None else "Whether the lining is approved"
    )


@IRC.rule(
    "FBX-01", "R1001.5", "Firebox back and sides, lined", "in", "firebox_wall_thickness_total"
)
def wall_lined(facts: Facts) -> Compared:
    """Heat stored in the wall must not reach what can burn behind it; a lining takes the worst of
    it.
    """
    if facts.firebox_lining == STEEL_UNIT:
        return not_applicable(STEEL_BOX)
    if (good := lined(facts)) is None:
        return _asked(facts)
    if not good:
        return not_applicable(
            "Without 2 in of firebrick, or another lining that is approved, the thicker wall is"
            " needed."
        )
    return at_least(facts.firebox_wall_thickness_total, inches(8))


@IRC.rule(
    "FBX-02", "R1001.5", "Firebox back and sides, unlined", "in", "firebox_wall_thickness_total"
)
def wall_unlined(facts: Facts) -> Compared:
    """Bare masonry has to do by thickness what a lining would do."""
    if facts.firebox_lining == STEEL_UNIT:
        return not_applicable(STEEL_BOX)
    if (good := lined(facts)) is None:
        return _asked(facts)
    if good:
        return not_applicable("The firebox is lined.")
    return at_least(facts.firebox_wall_thickness_total, inches(10))


@IRC.rule("FBX-03", "R1001.5", "Firebrick lining", "in", "firebrick_thickness")
def lining_thickness(facts: Facts) -> Compared:
    """A thin lining cracks and lets the heat through; then the wall counts as unlined."""
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != "firebrick":
        return not_applicable("The lining is not firebrick.")
    return at_least(facts.firebrick_thickness, FIREBRICK_LINING)


@IRC.rule(
    "FBX-04",
    "R1001.5; Table R1001.1 letter E",
    "Joint between firebricks",
    "in",
    "firebrick_joint_width",
    at_most=True,
)
def firebrick_joint(facts: Facts) -> Compared:
    """Refractory mortar is the weak part of the lining: the less of it faces the fire, the longer
    it lasts.
    """
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != "firebrick":
        return not_applicable("The lining is not firebrick.")
    return at_most(facts.firebrick_joint_width, inches(1 / 4))


@IRC.rule("FBX-05", "R1001.5", "Firebrick and its mortar", "word", "firebrick_standard")
def firebrick_standards(facts: Facts) -> Compared:
    """Brick and mortar must take red heat again and again; common ones do not."""
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != "firebrick":
        return not_applicable("The lining is not firebrick.")
    return all_of(
        one_of(
            facts.firebrick_standard,
            ("ASTM C27", "ASTM C1261"),
            "Read the firebrick's standard off its pallet.",
        ),
        one_of(
            facts.mortar_standard,
            ("ASTM C199 medium-duty",),
            "Read the mortar's standard off its pail.",
        ),
    )


def _no_steel(facts: Facts) -> Compared | None:
    if facts.firebox_lining is None:
        return unknown("The lining")
    if facts.firebox_lining != STEEL_UNIT:
        return not_applicable(NO_STEEL_BOX)
    listed = facts.design.firebox.unit_listed
    if listed is None:
        return unknown("Whether the steel unit is listed")
    return not_applicable(AS_LISTED) if listed else None


@IRC.rule(
    "FBX-06",
    "R1001.5.1",
    "Steel firebox unit, plate",
    "in",
    "steel_plate_thickness",
)
def steel_plate(facts: Facts) -> Compared:
    """Thin plate burns through."""
    return _no_steel(facts) or at_least(facts.design.firebox.plate, inches(1 / 4))


@IRC.rule(
    "FBX-07",
    "R1001.5.1",
    "Masonry around a steel unit, total",
    "in",
    "steel_unit_surround_total",
)
def steel_surround(facts: Facts) -> Compared:
    """The steel gets hotter than a masonry box and needs the full wall around it."""
    return _no_steel(facts) or at_least(
        facts.firebox_wall_thickness_total, inches(8), "Air chamber counted in."
    )


@IRC.rule(
    "FBX-08",
    "R1001.5.1",
    "Masonry around a steel unit, solid part",
    "in",
    "steel_unit_surround_solid",
)
def steel_surround_solid(facts: Facts) -> Compared:
    """Part of the wall may be the air chamber, not all of it."""
    if outcome := _no_steel(facts):
        return outcome
    solid = facts.firebox_wall_thickness_total - facts.firebrick_thickness
    if facts.masonry_kind is None:
        return unknown("The kind of masonry")
    if facts.masonry_kind not in MASONRY_KINDS:
        return Compared(FALLS_SHORT, 0.0, inches(4), "The masonry around the unit is hollow.")
    return at_least(
        solid, inches(4), "Lead the chamber's air indoors, in ducts of metal or masonry."
    )


@IRC.rule("FBX-09", "R1001.6", "Firebox depth", "in", "firebox_depth")
def depth(facts: Facts) -> Compared:
    """A shallow fire leans out of the box, and its smoke with it."""
    if facts.shallow:
        return not_applicable(SHALLOW)
    return at_least(facts.firebox_depth, inches(20))


@IRC.rule("FBX-10", "R1001.6 exception", "Firebox depth, shallow type", "in", "firebox_depth")
def depth_shallow(facts: Facts) -> Compared:
    """The shallow pattern trades depth for widely splayed sides, but only in proportion to its
    width.
    """
    if not facts.shallow:
        return not_applicable(ORDINARY)
    return at_least(facts.firebox_depth, max(inches(12), facts.opening_width / 3))


@IRC.rule("FBX-11", "R1001.5; R1003.1", "Kind of masonry", "word", "masonry_kind")
def masonry_kind(facts: Facts) -> Compared:
    """Open cells carry fire and smoke through the wall."""
    return one_of(facts.masonry_kind, MASONRY_KINDS)
