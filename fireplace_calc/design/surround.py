"""What the room sees round the opening: finish of the breast, mantel and trim, and the brick."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.base.units import INCH
from fireplace_calc.design.declarations import choice, length, pieces, text, yes_no

SIZES = (
    *("common", "modular", "engineer modular", "closure modular", "roman", "norman"),
    *("engineer norman", "utility", "standard", "engineer standard", "closure standard"),
    *("king", "queen", "UK metric"),
)
"""By the trade's names, each a row of ``data/brick_sizes.csv``."""
FACE_BONDS = ("running", "third running", "stack", "common", "English", "Flemish")
"""How a face may be bonded."""
MORTAR_COLORS = ("gray", "white", "buff", "charcoal")
"""Gray is plain cement and lime; white is made with white cement, the others with a pigment."""
STONE_BONDS = ("coursed rubble", "random rubble")
"""How a face of stone may be laid: in level courses, or stone fitted to stone."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Surround(Record):
    """What the room sees of it."""

    face: str = choice(
        "Face", "brick", ("brick", "stone", "plaster", "tile"), "Finish of the breast in the room."
    )
    face_height: str = choice(
        "Face height",
        "to the ceiling",
        ("to the ceiling", "to the mantel"),
        "To the mantel: the face ends at the top of shelf or beam, over that is plaster.",
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


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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
