"""The design record: everything somebody chooses, each input declared once.

Levels count from the finished floor of the room. Left and right are as seen from the room.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.inputs import choice, count, length, quantity, text, yes_no
from fireplace_calc.design.sitework import Abroad, Air, Anchorage, Ground, Loads, Stack, Work
from fireplace_calc.design.surroundings import (
    Clearance,
    Fire,
    House,
    Measured,
    Roof,
    Site,
    Surround,
    Waste,
)

BRICKS = ("9 x 4-1/2 x 2-1/2 in", "9 x 4-1/2 x 3 in", "9 x 4-1/2 x 2 in")
MASONRY = ("solid units", "hollow grouted solid", "stone", "concrete", "hollow ungrouted")


@dataclass(frozen=True, slots=True)
class Opening:
    """The clear opening at the face."""

    width: float = length(
        "Opening width",
        "36 in",
        "18 in",
        "96 in",
        "Clear, jamb to jamb at the face.",
        "opening_width",
    )
    standard_height: float = length(
        "Standard height", "30 in", "16 in", "60 in", "Clear height before anything is raised."
    )
    extension: float = length(
        "Firebox extension",
        "0 in",
        "0 in",
        "24 in",
        "How far the firebox is raised above its standard height.",
    )
    head: str = choice(
        "Head", "straight", ("straight", "segmental"), "Lintel or arch over the opening."
    )
    rise: float = length(
        "Arch rise", "4 in", "1 in", "48 in", "Spring line to crown; for a segmental head only."
    )
    type: str = choice(
        "Fireplace type",
        "ordinary",
        ("ordinary", "shallow"),
        "Shallow is the Rumford pattern; it has to be declared, nothing infers it.",
    )

    @property
    def height(self) -> float:
        """Clear height on the centre line, extension included. [m]"""
        return self.standard_height + self.extension


@dataclass(frozen=True, slots=True)
class Lintel:
    """What carries the masonry over the opening."""

    material: str | None = choice(
        "Lintel material",
        "steel",
        ("steel", "reinforced concrete", "reinforced masonry", "stone", "masonry arch", "timber"),
        "Timber burns and is never accepted.",
        "lintel_material",
        optional=True,
    )
    height: float = length(
        "Lintel height",
        "3-1/2 in",
        "1/4 in",
        "24 in",
        "Leg of the angle, or depth of the stone or ring.",
    )
    thickness: float = length(
        "Steel thickness", "1/4 in", "1/8 in", "1 in", "Of an angle; other lintels fill the breast."
    )
    bearing: float | None = length(
        "Lintel bearing",
        "6 in",
        "0 in",
        "24 in",
        "At each end.",
        "lintel_bearing_each_end",
        optional=True,
    )


@dataclass(frozen=True, slots=True)
class Firebox:
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
        "Vertical back", "14 in", "0 in", "60 in", "Height before the back leans forward."
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
        ("firebrick", "refractory section", "other approved", "none"),
        "What faces the fire.",
        "firebox_lining",
        optional=True,
    )
    lining_thickness: float = length(
        "Lining thickness",
        "4-1/2 in",
        "1/2 in",
        "12 in",
        "Square to the face.",
        "firebrick_thickness",
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


@dataclass(frozen=True, slots=True)
class Base:
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


@dataclass(frozen=True, slots=True)
class Hearth:
    """The extension in front, where a spark can land."""

    front: float = length(
        "Hearth in front",
        "20 in",
        "0 in",
        "72 in",
        "From the plane of the opening.",
        "hearth_extension_front",
    )
    side: float = length(
        "Hearth beside",
        "12 in",
        "0 in",
        "48 in",
        "Beyond each side of the opening.",
        "hearth_extension_side",
    )
    thickness: float = length(
        "Hearth extension thickness",
        "2 in",
        "1/8 in",
        "12 in",
        "Finished layer.",
        "hearth_extension_thickness",
    )
    bed: float = length(
        "Hearth extension bed", "4 in", "1 in", "24 in", "Concrete that carries the extension."
    )
    drop: float = length(
        "Hearth step",
        "0 in",
        "0 in",
        "48 in",
        "Firebox floor above the top of the extension.",
        "opening_bottom_above_extension_top",
    )
    material: str | None = choice(
        "Hearth material",
        "stone",
        ("concrete", "masonry", "brick", "stone", "tile", "wood"),
        "Of the extension.",
        "hearth_material",
        optional=True,
    )
    support: str | None = choice(
        "Hearth support",
        None,
        ("noncombustible", "combustible"),
        "What carries the hearth.",
        "hearth_support",
    )
    forms_removed: bool | None = yes_no(
        "Forms removed", None, "No timber formwork is left under the hearth."
    )


@dataclass(frozen=True, slots=True)
class Throat:
    """The slot above the fire and the damper in it."""

    height: float = length(
        "Throat height",
        "8 in",
        "0 in",
        "36 in",
        "Above the top of the opening.",
        "throat_height_above_opening",
    )
    depth: float = length(
        "Throat depth", "4-1/2 in", "1 in", "24 in", "Front to back.", "throat_depth"
    )
    damper: str | None = choice(
        "Damper place",
        "throat",
        ("throat", "flue top", "none"),
        "Where the damper sits.",
        optional=True,
    )
    damper_height: float | None = length(
        "Damper height",
        None,
        "0 in",
        "60 in",
        "Above the top of the opening; unknown takes the throat's.",
        "damper_height_above_opening",
    )
    damper_area: float | None = quantity(
        "area",
        "Damper free area",
        None,
        "1 in2",
        "4000 in2",
        "Wide open, from the damper's own data.",
        "damper_free_area",
    )
    damper_material: str | None = choice(
        "Damper material",
        None,
        ("ferrous", "other metal", "other"),
        "Of blade and frame.",
        "damper_material",
    )
    worked_from_room: bool | None = yes_no(
        "Damper worked from the room",
        None,
        "Without reaching into a fire.",
        "damper_operable_from_room",
    )


@dataclass(frozen=True, slots=True)
class SmokeChamber:
    """From throat to flue."""

    height: float = length(
        "Smoke chamber height",
        "28 in",
        "6 in",
        "96 in",
        "Throat to start of the flue.",
        "smoke_chamber_height",
    )
    construction: str | None = choice(
        "Smoke chamber construction",
        "corbelled",
        ("corbelled", "sloped units", "prefabricated lining"),
        "How the inside is drawn in.",
        optional=True,
    )
    wall: float = length(
        "Smoke chamber wall",
        "8 in",
        "2 in",
        "36 in",
        "Front, back and sides, lining counted in.",
        "smoke_chamber_wall_thickness",
    )
    lining: str | None = choice(
        "Smoke chamber lining",
        "parged",
        ("parged", "firebrick", "vitrified clay"),
        "Parging is a coat, not a lining.",
        optional=True,
    )
    lining_thickness: float = length(
        "Smoke chamber lining thickness",
        "1/2 in",
        "1/8 in",
        "6 in",
        "Or of the parging.",
        "smoke_chamber_lining_thickness",
    )
    transition: float = length(
        "Transition", "4 in", "1 in", "24 in", "Bearing piece that turns the chamber into the flue."
    )
    course: float | None = length(
        "Corbel course",
        "2-2/3 in",
        "1 in",
        "12 in",
        "Height of one corbelled course.",
        optional=True,
    )
    unit_height: float | None = length(
        "Corbel unit height",
        "2-1/4 in",
        "1 in",
        "12 in",
        "Of one brick.",
        "unit_height",
        optional=True,
    )
    unit_bed: float | None = length(
        "Corbel unit bed",
        "3-5/8 in",
        "2 in",
        "16 in",
        "Bed depth of one brick.",
        "unit_thickness",
        optional=True,
    )


@dataclass(frozen=True, slots=True)
class Flue:
    """The flue, section by section."""

    shape: str = choice(
        "Flue shape", "rectangular", ("round", "rectangular"), "Square counts as rectangular."
    )
    size: str = text(
        "Flue size",
        "13x13",
        'Round by inside diameter ("12"), rectangular by outside size ("13x13"), or "own".',
    )
    own_width: float = length(
        "Own flue width", "12 in", "3 in", "48 in", "Inside, left to right; diameter when round."
    )
    own_depth: float = length("Own flue depth", "12 in", "3 in", "48 in", "Inside, front to back.")
    own_wall: float = length("Own liner wall", "1 in", "1/4 in", "6 in", "Thickness.")
    turned: bool = yes_no(
        "Long side front to back", False, "Turns a rectangular liner.", optional=False
    )
    section_height: float = length(
        "Flue section height", "24 in", "4 in", "60 in", "Of one section or liner."
    )
    sections: int = count("Flue sections", 10, 4, 40, "How many stand on the smoke chamber.")
    joint: float = length("Flue joint", "1/8 in", "0 in", "1 in", "Between sections.")
    casing: float = length(
        "Flue casing", "2-1/2 in", "1 in", "12 in", "Cast round the liner in one piece (modular)."
    )
    offset: float = length("Flue offset", "0 in", "0 in", "60 in", "Sideways shift of the flue.")
    offset_rise: float = length(
        "Offset rise", "48 in", "6 in", "240 in", "Height over which the flue shifts."
    )
    liner: str | None = choice(
        "Liner kind",
        "ASTM C315 clay",
        (
            "ASTM C315 clay",
            "UL 1777 system",
            "listed factory unit",
            "approved to 1800 F",
            "unlined",
            "other",
        ),
        "What the smoke touches.",
        "liner_kind",
        optional=True,
    )
    area_from: str | None = choice(
        "Flue area from",
        "table",
        ("table", "manufacturer", "field measured", "own sum"),
        "Where the net area comes from.",
        "flue_area_source",
        optional=True,
    )
    route: str | None = choice(
        "Flue sizing route",
        "ratio",
        ("ratio", "chart"),
        "Two routes are offered; the chart could not be read.",
        optional=True,
    )
    gap_vents: bool | None = yes_no(
        "Gap round liner used as a vent", None, "It may not be.", "liner_gap_used_as_vent"
    )
    relined: bool | None = yes_no("Relined", False, "An old chimney with a new liner.")
    label: bool | None = yes_no("Relining label", None, "On a relined flue.", "label_present")


@dataclass(frozen=True, slots=True)
class Chimney:
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


@dataclass(frozen=True, slots=True)
class Design:
    """A fireplace and its chimney, as somebody chose it."""

    name: str = text("Name", "A plain fireplace", "Shown on every sheet.")
    note: str = text("Note", "", "Whatever the reader should know; invented data says so here.")
    method: str = choice(
        "Way of building",
        "laid",
        ("laid", "modular"),
        "Laid in brick round clay liners, or set by hand in refractory sections.",
    )
    site: Site = Site()
    house: House = House()
    opening: Opening = Opening()
    lintel: Lintel = Lintel()
    firebox: Firebox = Firebox()
    base: Base = Base()
    hearth: Hearth = Hearth()
    throat: Throat = Throat()
    smoke_chamber: SmokeChamber = SmokeChamber()
    flue: Flue = Flue()
    chimney: Chimney = Chimney()
    clearance: Clearance = Clearance()
    roof: Roof = Roof()
    surround: Surround = Surround()
    fire: Fire = Fire()
    waste: Waste = Waste()
    ground: Ground = Ground()
    anchorage: Anchorage = Anchorage()
    stack: Stack = Stack()
    air: Air = Air()
    abroad: Abroad = Abroad()
    measured: Measured = Measured()
    loads: Loads = Loads()
    work: Work = Work()
