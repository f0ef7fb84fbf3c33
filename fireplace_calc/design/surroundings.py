"""What the fireplace stands in: house, roof, and the clearances to whatever burns."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.base.units import FOOT
from fireplace_calc.design.declarations import choice, length, pieces, quantity, text, yes_no

FLOORS = ("oak boards", "pine boards", "stone flags", "tile", "carpet")
"""What the floor of the room may be covered with."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class House(Record):
    """The room and the air in it."""

    ceiling: float = length(
        "Ceiling height", "9 ft", "6 ft", "40 ft", "Finished floor to ceiling at the fireplace."
    )
    room_length: float | None = length(
        "Room length", "20 ft", "6 ft", "100 ft", "Along the fireplace wall.", optional=True
    )
    room_width: float | None = length(
        "Room width", "14 ft", "6 ft", "100 ft", "Away from the fireplace wall.", optional=True
    )
    floor: str = choice(
        "Floor finish", "oak boards", FLOORS, "Of the room; moves no check and is not ordered."
    )
    indoor: float = quantity(
        "temperature", "Room temperature", "20 degC", "0 degC", "35 degC", "At the hearth."
    )
    volume: float = quantity(
        "volume", "House volume", "400 m3", "20 m3", "20000 m3", "Heated volume behind the leakage."
    )
    lowest_floor: float = length(
        "Lowest heated floor",
        "0 ft",
        "-40 ft",
        "0 ft",
        "Below the room's floor: basement or storeys under it.",
    )
    highest_ceiling: float | None = length(
        "Highest heated ceiling",
        None,
        "6 ft",
        "100 ft",
        "Above the room's floor; unknown takes the eaves or the room's ceiling, the higher one.",
    )
    attic_heated: bool = yes_no(
        "Attic heated",
        False,
        "Between the highest ceiling and the roof; a cold attic cools the flue.",
        optional=False,
    )
    leakage: float | None = quantity(
        "ratio",
        "Air changes at 50 Pa",
        "5",
        "0.1",
        "40",
        "From a fan pressurisation test; unknown takes the middle of US houses. [1/h]",
        optional=True,
    )
    exhaust: float = quantity(
        "flow", "Exhaust fans", "0 L/s", "0 L/s", "2000 L/s", "All fans that may run with the fire."
    )
    air_inlet: float = quantity(
        "area",
        "Outdoor air inlet",
        "0 in2",
        "0 in2",
        "400 in2",
        "Free area of a duct for the fire.",
        "air_passage_area",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Clearance(Record):
    """Air between the masonry and anything that burns."""

    front: float | None = length(
        "Air in front",
        "2 in",
        "0 in",
        "48 in",
        "Masonry face to framing.",
        "clear_front",
        optional=True,
    )
    side: float | None = length(
        "Air beside",
        "2 in",
        "0 in",
        "48 in",
        "Masonry face to framing.",
        "clear_side",
        optional=True,
    )
    back: float | None = length(
        "Air behind",
        "4 in",
        "0 in",
        "48 in",
        "Masonry face to framing.",
        "clear_back",
        optional=True,
    )
    chimney: float | None = length(
        "Air round chimney",
        "2 in",
        "0 in",
        "48 in",
        "Masonry face to framing.",
        "clear_chimney",
        optional=True,
    )
    fill: str | None = choice(
        "In the air space",
        None,
        ("none", "fireblock", "noncombustible", "other"),
        "What has been put there.",
        "airspace_fill",
    )
    chimney_fill: str | None = choice(
        "In the chimney's air space",
        None,
        ("none", "fireblock", "noncombustible", "other"),
        "What has been put there; unknown takes what is said of the fireplace's air space.",
        "chimney_airspace_fill",
    )
    fireblock: str | None = choice(
        "Fireblock",
        None,
        ("noncombustible", "wood or gypsum", "none"),
        "Where floors and ceilings meet the masonry.",
        "fireblock_material",
    )
    fireblock_depth: float | None = length(
        "Fireblock depth", None, "0 in", "24 in", "Up and down.", "fireblock_depth"
    )
    fireplace_listed: bool | None = yes_no(
        "Listed for contact (UL 127)", False, "A listed masonry fireplace."
    )
    liner_listed: bool | None = yes_no(
        "Liner listed for contact (UL 1777)", False, "A listed lining system."
    )
    in_masonry_wall: bool | None = yes_no(
        "Built into a masonry or concrete wall", False, "Fireplace and chimney."
    )
    to_firebox_lining: float | None = length(
        "Combustible to firebox lining",
        None,
        "0 in",
        "60 in",
        "Through masonry to the inside face.",
        "combustible_to_firebox_lining_inner_face",
    )
    to_flue_lining: float | None = length(
        "Combustible to flue lining",
        None,
        "0 in",
        "60 in",
        "Through masonry to the inside face.",
        "combustible_to_flue_lining_inner_face",
    )
    edge_trim: bool | None = yes_no(
        "Trim or sheathing edge at the masonry", False, "Touching the sides."
    )
    accessory: bool | None = yes_no(
        "Fireplace accessory fitted", False, "Doors, grates with fans and the like."
    )
    accessory_ul907: bool | None = yes_no(
        "Accessory listed to UL 907", None, "On its label.", "accessory_standard"
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Nearby(Record):
    """Part of a building within reach of the chimney top."""

    name: str = text("Nearby part", "dormer", "What it is.")
    distance: float | None = length(
        "Nearby distance",
        None,
        "0 ft",
        "60 ft",
        "Level, from the nearest chimney face; unknown is drawn at 8 ft.",
    )
    level: float | None = length(
        "Nearby level",
        None,
        "0 ft",
        "120 ft",
        "Top, above finished floor; unknown is drawn at 16 ft.",
    )

    @property
    def drawn_distance(self) -> float:
        """Level, from the nearest chimney face, as drawn. [m]"""
        return 8 * FOOT if self.distance is None else self.distance

    @property
    def drawn_level(self) -> float:
        """Top above the finished floor, as drawn. [m]"""
        return 16 * FOOT if self.level is None else self.level


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Roof(Record):
    """The roof the chimney stands against."""

    pitch: float = quantity("ratio", "Roof pitch", "8:12", "0", "3", "Rise over run.", "roof_pitch")
    ridge_level: float = length("Ridge level", "22 ft", "7 ft", "100 ft", "Above finished floor.")
    ridge_distance: float = length(
        "Ridge distance", "8 ft", "0 ft", "80 ft", "Level, uphill chimney face to ridge."
    )
    position: str = choice(
        "Chimney on the roof",
        "on the slope",
        ("on the slope", "through the ridge"),
        "Where it comes out.",
    )
    ridge_runs: str = choice(
        "Ridge runs",
        "along the opening",
        ("along the opening", "front to back"),
        "Which chimney side lies along the ridge.",
    )
    eaves_level: float = length("Eaves level", "9 ft", "0 ft", "80 ft", "Above finished floor.")
    cricket: bool | None = yes_no(
        "Cricket", None, "Saddle behind the chimney that sheds water.", "cricket_present"
    )
    cricket_height: float | None = length(
        "Cricket height",
        None,
        "0 in",
        "96 in",
        "Ridge of the saddle over the roof.",
        "cricket_height",
    )
    nearby: tuple[Nearby, ...] = pieces(
        Nearby, "Anything within reach", "Dormers, parapets, other roofs."
    )
