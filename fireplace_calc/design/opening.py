"""What the room sees: the opening, what carries the masonry over it, and the hearth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, count, length, yes_no

BARS = ("No. 3", "No. 4", "No. 5", "No. 6")
"""Each a row of ``data/reinforcing_bars.csv``."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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
    faced: bool = yes_no(
        "Hearth front faced",
        False,
        "The finish of the breast goes over front and ends of a raised hearth and its seat, under"
        " their slabs.",
        optional=False,
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Seat(Record):
    """The hearth carried on along the wall as a bench of masonry, as deep as it is in front."""

    left: float = length(
        "Seat at the left", "0 in", "0 in", "144 in", "Beyond the hearth extension; nought is none."
    )
    right: float = length(
        "Seat at the right",
        "0 in",
        "0 in",
        "144 in",
        "Beyond the hearth extension; nought is none.",
    )
    height: float | None = length(
        "Seat height",
        None,
        "6 in",
        "30 in",
        "Top over the floor, 16 to 18 in to sit on; unknown takes the top of the hearth extension.",
    )
    niche: str = choice(
        "Wood store",
        "none",
        ("none", "left", "right", "both"),
        "A niche in the front of the seat, down to the floor.",
    )
    niche_width: float = length(
        "Wood store width",
        "20 in",
        "6 in",
        "72 in",
        "Clear, in the middle of the seat between piers.",
    )
    carried_by: str | None = choice(
        "Seat stands on",
        None,
        ("footing or slab on ground", "floor framing"),
        "What carries its weight.",
    )
    niche_bars: bool | None = yes_no(
        "Bars over the wood store", None, "In the bed that spans it, low down."
    )

    @property
    def drawn(self) -> bool:
        """Whether there is a seat at all."""
        return self.left > 0 or self.right > 0

    def stretches(self) -> tuple[tuple[int, float, bool], ...]:
        """Every seat: left is -1, right 1; how far beyond the hearth extension [m], and whether a
        wood store is in it.
        """
        both = ((-1, "left", self.left), (1, "right", self.right))
        return tuple(
            (sign, reach, self.niche in (name, "both")) for sign, name, reach in both if reach > 0
        )
