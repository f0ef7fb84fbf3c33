"""What the room sees: the opening, what carries the masonry over it, hearth and surround."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from fireplace_calc.base.record import Record
from fireplace_calc.base.units import INCH
from fireplace_calc.design.declarations import choice, count, length, pieces, text, yes_no

SIZES = (
    *("common", "modular", "engineer modular", "closure modular", "roman", "norman"),
    *("engineer norman", "utility", "standard", "engineer standard", "closure standard"),
    *("king", "queen", "UK metric"),
)
"""By the trade's names, each a row of ``data/brick_sizes.csv``."""
BARS = ("No. 3", "No. 4", "No. 5", "No. 6")
"""Each a row of ``data/reinforcing_bars.csv``."""
FACE_BONDS = ("running", "third running", "stack", "common", "English", "Flemish")
"""How a face may be bonded."""
MORTAR_COLORS = ("gray", "white", "buff", "charcoal")
"""Gray is plain cement and lime; white is made with white cement, the others with a pigment."""
STONE_BONDS = ("coursed rubble", "random rubble")
"""How a face of stone may be laid: in level courses, or stone fitted to stone."""


@dataclass(frozen=True, slots=True)
class Opening(Record):
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
    hood: float | None = length(
        "Metal hood",
        None,
        "1 in",
        "18 in",
        "How far it lowers the top of the opening; unknown draws none.",
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
        """Of the masonry's opening on the center line, extension included. [m]"""
        return self.standard_height + self.extension

    @property
    def clear_height(self) -> float:
        """What a hood leaves of it. [m]"""
        return self.height - (self.hood or 0.0)


class AngleLegs(NamedTuple):
    """A steel angle as it is drawn under a breast, and how far on the next one stands."""

    pitch: float
    """From one angle to the next behind it. [m]"""
    level: float
    """Its level leg. [m]"""
    thickness: float
    """Of both legs. [m]"""


@dataclass(frozen=True, slots=True)
class Lintel(Record):
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
        "Upright leg of the angle, or depth of the stone or ring.",
    )
    level_leg: float = length(
        "Level leg",
        "3-1/2 in",
        "1 in",
        "12 in",
        "Of an angle; no longer than its part of the breast.",
    )
    angles: int = count(
        "Angles", 1, 1, 3, "Side by side, each under its own part of a thick breast."
    )
    thickness: float = length(
        "Steel thickness", "1/4 in", "1/8 in", "1 in", "Of an angle; other lintels fill the breast."
    )
    bars: int | None = count(
        "Lintel bars", None, 1, 6, "Of reinforced masonry, side by side in its lower part."
    )
    bar: str | None = choice("Lintel bar", None, BARS, "By the trade's number, eighths of an inch.")
    bar_center: float | None = length(
        "Lintel bars over the underside", None, "1/2 in", "12 in", "To the middle of the bars."
    )
    bar_grade: str | None = choice(
        "Lintel bar steel", None, ("grade 40", "grade 60"), "As rolled into the bar."
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

    def legs(self, breast: float) -> AngleLegs:
        """Its steel angles, each set to the front of its part of a breast so thick. [m]"""
        pitch = breast / self.angles
        level = min(self.level_leg, pitch)
        return AngleLegs(pitch, level, min(self.thickness, self.height, level))


@dataclass(frozen=True, slots=True)
class Hearth(Record):
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
class Trim(Record):
    """One step of a mantel or trim profile."""

    name: str = text("Trim piece", "mantel shelf", "What it is.")
    place: str = choice("Trim place", "above", ("above", "beside"), "Of the opening.")
    distance: float | None = length(
        "Trim distance",
        None,
        "0 in",
        "60 in",
        "Edge of the opening to the nearest point; unknown is drawn at 12 in.",
        "trim_distance_to_opening",
    )
    projection: float | None = length(
        "Trim projection",
        None,
        "0 in",
        "36 in",
        "Out from the face; unknown is drawn at 1-1/2 in.",
        "trim_projection",
    )
    height: float = length(
        "Trim height", "2 in", "1/4 in", "60 in", "Of the piece, as seen from the front."
    )
    combustible: bool = yes_no("Trim burns", True, "Wood and most composites do.", optional=False)

    @property
    def drawn_distance(self) -> float:
        """From the edge of the opening, as drawn; no code reads it. [m]"""
        return 12 * INCH if self.distance is None else self.distance

    @property
    def drawn_projection(self) -> float:
        """Out from the face, as drawn; no code reads it. [m]"""
        return 1.5 * INCH if self.projection is None else self.projection


@dataclass(frozen=True, slots=True)
class Surround(Record):
    """What the room sees of it."""

    face: str = choice(
        "Face", "brick", ("brick", "stone", "plaster", "tile"), "Finish of the breast in the room."
    )
    thickness: float | None = length(
        "Face thickness",
        None,
        "1/8 in",
        "12 in",
        "Of stone, plaster or tile with its bed; unknown takes 4 in, 1/2 in and 7/8 in. Brick has"
        " its own. It is weighed, not drawn.",
    )
    mortar: str = choice(
        "Face mortar",
        "gray",
        MORTAR_COLORS,
        "Color of the joints in the face. It moves no check; a pigment is not on the list.",
    )
    stone_bond: str = choice(
        "Stone bond", "coursed rubble", STONE_BONDS, "How a face of stone is laid."
    )
    trim: tuple[Trim, ...] = pieces(
        Trim, "Mantel and trim", "Every step of a molded profile, one by one."
    )


@dataclass(frozen=True, slots=True)
class Brick(Record):
    """One brick for the face, one for all other brickwork; what is drawn is what is counted."""

    facing: str = choice(
        "Facing brick", "common", SIZES, "What shows in the room, and the ring of a brick arch."
    )
    facing_joint: float | None = length(
        "Facing brick joint",
        None,
        "1/8 in",
        "1 in",
        "Bed and head; unknown takes the one this brick is made for.",
    )
    facing_bond: str = choice(
        "Facing bond",
        "running",
        FACE_BONDS,
        "How the face is laid. Common has headers every sixth course. In England running is"
        " stretcher bond, and common is English garden wall bond.",
    )
    common: str = choice(
        "Common brick", "common", SIZES, "Behind the face, in the stack and under a brick hearth."
    )
    common_joint: float | None = length(
        "Common brick joint",
        None,
        "1/8 in",
        "1 in",
        "Bed and head; unknown takes the one this brick is made for.",
    )
