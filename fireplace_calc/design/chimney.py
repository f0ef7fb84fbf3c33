"""The chimney round the flue: its masonry and top, the details its clauses ask about, and the
breast that stands in the room.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length, quantity, yes_no
from fireplace_calc.design.firebox import MASONRY

FORMS = ("shouldered", "straight", "flush")
"""How a breast stands in its wall and goes up."""
IN_A_WALL, ACROSS = "in a wall", "across a corner"
"""Where it stands in its room."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Chimney(Record):
    """What stands round the flue, and its top."""

    masonry: str = choice(
        "Chimney masonry", "brick", ("brick", "block", "stone", "concrete"), "Outer wall."
    )
    wall: float = length("Chimney wall", "4 in", "2 in", "24 in", "Masonry round the flue.")
    gap: float = length(
        "Gap round liner",
        "1/2 in",
        "0 in",
        "6 in",
        "Air or insulation between liner and wall.",
        "liner_gap",
    )
    location: str | None = choice(
        "Chimney location",
        "interior",
        ("interior", "within exterior wall", "exterior"),
        "Exterior means wholly outside.",
        "chimney_location",
        optional=True,
    )
    shoulder: float = length(
        "Shoulder",
        "12 in",
        "1 in",
        "96 in",
        "Height over which the breast draws in to the chimney.",
    )
    liner_above: float = length(
        "Liner above crown",
        "2 in",
        "0 in",
        "24 in",
        "How far the liner stands out at the top.",
        "liner_top_above_enclosing_wall",
    )
    crown: float = length("Crown", "4 in", "2 in", "16 in", "Thickness at the edge.")
    wash: float = length(
        "Crown slope", "2 in", "0 in", "12 in", "Extra thickness at the liner; zero is flat."
    )
    overhang: float = length(
        "Crown overhang", "2 in", "0 in", "12 in", "Beyond the wall, for the drip."
    )
    cap_material: str | None = choice(
        "Crown material",
        "concrete",
        ("concrete", "metal", "stone", "mortar"),
        "Of the cap.",
        "cap_material",
        optional=True,
    )
    drip: bool | None = yes_no("Drip edge", None, "Under the crown's edge.", "drip_edge")
    bond_break: bool | None = yes_no(
        "Bond break at liner",
        None,
        "The liner can grow without lifting the crown.",
        "liner_bond_break",
    )
    arrester: bool | None = yes_no("Spark arrester", False, "Mesh over the flue.")
    arrester_area: float | None = quantity(
        "area",
        "Arrester free area",
        None,
        "1 in2",
        "10000 in2",
        "Net of wire.",
        "arrester_free_area",
    )
    mesh: float | None = length(
        "Arrester mesh",
        None,
        "1/16 in",
        "3 in",
        "Sphere that just passes.",
        "arrester_opening_sphere",
    )
    arrester_metal: str | None = choice(
        "Arrester metal",
        None,
        ("19 gauge galvanized", "24 gauge stainless", "other"),
        "Or the equal of the named one.",
        "arrester_metal",
    )
    rain_cap: bool | None = yes_no("Rain cap", False, "Cover over the flue.")
    rain_cap_area: float | None = quantity(
        "area",
        "Rain cap free area",
        None,
        "1 in2",
        "10000 in2",
        "Open perimeter by clear height, less posts.",
        "rain_cap_free_area",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Stack(Record):
    """Details of the chimney that the clauses ask about."""

    corbelled: bool | None = yes_no("Chimney corbelled", False, "Out from a wall or foundation.")
    corbel_total: float | None = length(
        "Corbel, total", None, "0 in", "96 in", "Out from wall or foundation.", "corbel_total"
    )
    corbel_step: float | None = length(
        "Corbel step of the chimney",
        None,
        "0 in",
        "12 in",
        "Of one course; unknown takes the measured one, never the smoke chamber's as drawn.",
    )
    masonry_kind: str | None = choice(
        "Chimney units",
        None,
        MASONRY,
        "Brick, stone and concrete answer by themselves; block has to be asked.",
    )
    upper_storey: bool | None = yes_no(
        "Corbel on an upper story's outside", False, "Of a two-story house."
    )
    one_sided: bool | None = yes_no("Corbel on one side only", None, "Of the wall that carries it.")
    supporting_wall_thickness: float | None = length(
        "Wall under the corbel", None, "1 in", "48 in", "Thickness.", "supporting_wall_thickness"
    )
    unit_bed_depth: float | None = length(
        "Bed depth of the corbelled unit",
        None,
        "1 in",
        "16 in",
        "Actual; unknown takes the smoke chamber's unit where that is entered, else the chimney's"
        " own brick or block.",
        "unit_bed_depth",
    )
    unit_height: float | None = length(
        "Height of the corbelled unit",
        None,
        "1 in",
        "16 in",
        "Unknown takes the smoke chamber's unit where that is entered, else the chimney's own brick"
        " or block.",
    )
    changes: bool | None = yes_no("Wall or liner changes size or shape", None, "On its way up.")
    distance_change_to_penetration: float | None = length(
        "Change to next floor, ceiling or roof",
        None,
        "0 in",
        "240 in",
        "Level distance, up or down.",
        "distance_change_to_penetration",
    )
    offset_carried: bool | None = yes_no(
        "Offset carried by masonry below", None, "In an approved way."
    )
    imposed_load_on_chimney: float | None = quantity(
        "force",
        "Load put on the chimney",
        None,
        "0 lbf",
        "100000 lbf",
        "By beams or floors.",
        "imposed_load_on_chimney",
    )
    designed_for_load: bool | None = yes_no(
        "Designed for that load", False, "Or part of a masonry or concrete wall."
    )
    wythe_between_flues: float | None = length(
        "Masonry between flues",
        None,
        "0 in",
        "48 in",
        "Bonded into the walls.",
        "wythe_between_flues",
    )
    one_appliance: bool | None = yes_no(
        "Adjoining flues serve one appliance", False, "Then the liners may touch."
    )
    liner_joint_stagger: float | None = length(
        "Stagger of liner joints",
        None,
        "0 in",
        "48 in",
        "Of touching liners.",
        "liner_joint_stagger",
    )
    connector: bool | None = yes_no("Appliance connected to the flue", False, "By a connector.")
    inlet_side: str | None = choice(
        "Connector enters from", None, ("side", "other"), "Of the chimney.", "inlet_side"
    )
    thimble_material: str | None = choice(
        "Thimble",
        None,
        ("fireclay", "refractory", "metal", "other"),
        "Made of.",
        "thimble_material",
    )
    cleaned_through_opening: bool | None = yes_no(
        "Flue cleaned through the opening", True, "Then it needs no clean-out."
    )
    cleanout: bool | None = yes_no(
        "Clean-out at the foot of the flue", None, "A door or cover; its distances say yes too."
    )
    cleanout_to_flue_base: float | None = length(
        "Clean-out to flue base", None, "0 in", "96 in", "To it.", "cleanout_to_flue_base"
    )
    lowest_inlet_minus_cleanout_top: float | None = length(
        "Clean-out below inlet",
        None,
        "-96 in",
        "480 in",
        "Its top.",
        "lowest_inlet_minus_cleanout_top",
    )
    cleanout_height: float | None = length(
        "Clean-out height", None, "0 in", "48 in", "Of the opening.", "cleanout_height"
    )
    veneer_on_frame: bool | None = yes_no(
        "Veneer on a framed chimney", False, "Not a masonry chimney at all."
    )
    through_flashing: bool | None = yes_no(
        "Through flashing", None, "Behind the veneer.", "through_flashing"
    )
    weep_holes: bool | None = yes_no("Weep holes", None, "In the veneer.", "weep_holes")


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Breast(Record):
    """How the masonry stands in its wall, as the room sees it."""

    form: str = choice(
        "Breast form",
        "shouldered",
        FORMS,
        "Shouldered draws in over the smoke chamber; straight goes up to the ceiling as wide as it"
        " is, solid round the flue; flush has its face in the plane of the wall.",
    )
    projection: float | None = length(
        "Breast projection",
        None,
        "0 in",
        "72 in",
        "How far the face stands out of the wall beside it; unknown shows no returns and orders"
        " none. A flush breast has none.",
    )
    place: str = choice(
        "Place of the breast",
        IN_A_WALL,
        (IN_A_WALL, ACROSS),
        "Across a corner a wall cuts the corner off at 45 degrees; room length is then the wall at"
        " the right of it, room width the wall at the left.",
    )
    across: float | None = length(
        "Wall across the corner",
        None,
        "24 in",
        "20 ft",
        "Width of the wall that cuts the corner; unknown takes what the masonry needs. In a wall it"
        " moves nothing.",
    )
    off_center: float = length(
        "Off the middle of the wall",
        "0 in",
        "-50 ft",
        "50 ft",
        "Center line of the opening to the middle of its wall; to the right counts up, to the left"
        " down.",
    )

    @property
    def cornered(self) -> bool:
        """Whether it stands across a corner."""
        return self.place == ACROSS

    @property
    def stands_out(self) -> float | None:
        """How far the face stands out of the wall beside it; unknown where nobody has told. [m]"""
        return 0.0 if self.form == "flush" else self.projection
