"""The way of the smoke: throat, smoke chamber and flue."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, count, length, quantity, text, yes_no
from fireplace_calc.pieces.liner_kinds import LINERS

ALONG = "along the opening"
"""The long side of a liner left to right, as most stacks have it."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Throat(Record):
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
    damper_open: float = quantity(
        "ratio",
        "Damper opened",
        "100 %",
        "10 %",
        "100 %",
        "While the fire burns; the draft takes the free area to go with it.",
    )
    worked_from_room: bool | None = yes_no(
        "Damper worked from the room",
        None,
        "Without reaching into a fire.",
        "damper_operable_from_room",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class SmokeChamber(Record):
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
        "2-3/4 in",
        "1 in",
        "12 in",
        "Of one corbelled course; until it is entered, of the brick or block it is built of.",
        optional=True,
    )
    unit_height: float | None = length(
        "Corbel unit height",
        "2-1/4 in",
        "1 in",
        "12 in",
        "Of one brick or block; until it is entered, of what the chamber is built of.",
        "unit_height",
        optional=True,
    )
    unit_bed: float | None = length(
        "Corbel unit bed",
        "3-3/4 in",
        "2 in",
        "16 in",
        "Bed depth of one; until it is entered, of the brick or block it is built of.",
        "unit_thickness",
        optional=True,
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Flue(Record):
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
    long_side: str = choice(
        "Long side runs",
        ALONG,
        (ALONG, "front to back"),
        "Which way a liner lies that is not square; own sizes are set as they are told.",
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
        LINERS,
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
