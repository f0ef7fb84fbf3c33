"""The firebox and the base it stands on."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.base.units import INCH
from fireplace_calc.design.declarations import choice, length, quantity, yes_no

BRICKS = (
    "9 x 4-1/2 x 2-1/2 in",
    "9 x 4-1/2 x 3 in",
    "9 x 4-1/2 x 2 in",
    "9 x 4-1/2 x 1-1/4 in",
)


STEEL_UNIT = "steel unit"
DRAWN_PLATE = INCH / 4
"""Plate of a steel unit while nobody has told it. [m]"""
MASONRY = ("solid units", "hollow grouted solid", "stone", "concrete", "hollow ungrouted")


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Firebox(Record):
    """The box the fire stands in."""

    depth: float = length(
        "Firebox depth",
        "20 in",
        "10 in",
        "48 in",
        "Opening plane to back at the hearth.",
        "firebox_depth",
    )
    back_width: float | None = length(
        "Back width",
        None,
        "6 in",
        "96 in",
        "Of the back at the hearth; unknown lets it follow the splay.",
    )
    splay: float = quantity(
        "ratio",
        "Splay",
        "4:12",
        "0",
        "1",
        "How far each side closes in over the depth; used while the back width is unknown.",
    )
    vertical_back: float = length(
        "Vertical back", "14 in", "0 in", "84 in", "Height before the back leans forward."
    )
    rake: float = length(
        "Rake",
        "7-1/2 in",
        "0 in",
        "30 in",
        "How far the back leans forward by the throat; less where the box is too shallow for it.",
    )
    breast: float = length(
        "Breast", "8 in", "2 in", "24 in", "Thickness of the wall over the opening."
    )
    jamb: float = length(
        "Jamb", "12 in", "2 in", "48 in", "Masonry beside the opening, at the face."
    )
    wall: float = length(
        "Firebox wall",
        "8-1/2 in",
        "2 in",
        "36 in",
        "Back and sides, lining counted in.",
        "firebox_wall_thickness_total",
    )
    lining: str | None = choice(
        "Lining",
        "firebrick",
        ("firebrick", "refractory section", "other approved", "none", STEEL_UNIT),
        "What faces the fire.",
        "firebox_lining",
        optional=True,
    )
    lining_thickness: float = length(
        "Lining thickness",
        "4-1/2 in",
        "1/2 in",
        "12 in",
        "Square to the face; of a steel unit its plate and its air chamber together.",
        "firebrick_thickness",
    )
    plate: float | None = length(
        "Steel unit's plate",
        None,
        "1/16 in",
        "1/2 in",
        "Of a steel firebox unit; not told, it is drawn 1/4 in thick.",
        "steel_plate_thickness",
    )
    unit_listed: bool | None = yes_no(
        "Steel unit listed", None, "Then it is set as its listing says."
    )
    lining_approved: bool | None = yes_no(
        "Lining approved",
        None,
        "By the building official, where it is not of firebrick.",
    )
    brick: str = choice("Firebrick", BRICKS[0], BRICKS, "Straight brick the lining is laid with.")
    joint: float | None = length(
        "Firebrick joint",
        "1/8 in",
        "0 in",
        "1 in",
        "Between firebricks.",
        "firebrick_joint_width",
        optional=True,
    )
    bond: str = choice(
        "Bond",
        "running",
        ("running", "stack", "herringbone 90", "herringbone 45", "basketweave"),
        "How the lining is laid.",
    )
    floor_bond: str = choice(
        "Floor bond",
        "running",
        ("running", "stack", "herringbone 90", "herringbone 45", "basketweave"),
        "How the firebox floor is paved.",
    )
    floor: float = length(
        "Firebrick floor", "2-1/2 in", "1/2 in", "9 in", "Thickness of the paving under the fire."
    )
    section_height: float = length(
        "Firebox section height",
        "8 in",
        "2 in",
        "48 in",
        "Height of one refractory section (modular).",
    )
    masonry: str | None = choice(
        "Masonry",
        "solid units",
        MASONRY,
        "Behind the lining, and for the smoke chamber.",
        "masonry_kind",
        optional=True,
    )
    brick_standard: str | None = choice(
        "Firebrick standard",
        None,
        ("ASTM C27", "ASTM C1261", "other"),
        "Printed on the pallet label.",
        "firebrick_standard",
    )
    mortar_standard: str | None = choice(
        "Refractory mortar standard",
        None,
        ("ASTM C199 medium-duty", "other"),
        "Printed on the pail.",
        "mortar_standard",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Base(Record):
    """From the ground to the hearth."""

    hearth_level: float = length(
        "Hearth level", "0 in", "0 in", "48 in", "Finished firebox floor above finished room floor."
    )
    slab: float = length(
        "Hearth slab", "4 in", "1 in", "24 in", "Concrete under the firebrick floor."
    )
    block_height: float = length(
        "Block height", "7-5/8 in", "3 in", "16 in", "Actual, of one base block."
    )
    block_width: float = length(
        "Block width", "7-5/8 in", "3 in", "16 in", "Actual; the thickness of the base wall."
    )
    block_length: float = length("Block length", "15-5/8 in", "7 in", "32 in", "Actual.")
    bed: float = length("Block bed", "3/8 in", "1/8 in", "1 in", "Mortar bed between base blocks.")
    core: str = choice("Base core", "grouted", ("hollow", "grouted"), "Inside the base walls.")
    footing_thickness: float = length(
        "Footing thickness", "12 in", "4 in", "48 in", "Concrete.", "footing_thickness"
    )
    footing_projection: float = length(
        "Footing projection",
        "6 in",
        "0 in",
        "36 in",
        "Beyond the base, every side.",
        "footing_projection_min_side",
    )
    footing_depth: float = length(
        "Footing depth",
        "36 in",
        "6 in",
        "144 in",
        "Underside of the footing below grade.",
        "footing_bottom_depth",
    )
