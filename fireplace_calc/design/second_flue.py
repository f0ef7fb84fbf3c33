"""A second flue in the chimney: of another fireplace, or of a heating appliance."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length, quantity, text, yes_no
from fireplace_calc.design.smoke_path import ALONG

NONE, FIREPLACE, APPLIANCE = "none", "fireplace", "appliance"
SOLID_FUEL, GAS, OIL, PELLETS = "solid fuel", "gas", "oil", "pellets"


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class SecondFlue(Record):
    """The flue beside the first one, in the same chimney.

    What burns below it has a design of its own; here it is its flue. Sections, joints, gap, casing
    and wall are the first flue's.
    """

    serves: str = choice(
        "Second flue serves",
        NONE,
        (NONE, FIREPLACE, APPLIANCE),
        "What stands in the same chimney beside the first flue.",
    )
    side: str = choice(
        "Second flue stands", "right", ("left", "right"), "Of the first, as seen from the room."
    )
    shape: str = choice(
        "Second flue shape",
        "rectangular",
        ("round", "rectangular"),
        "Square counts as rectangular.",
    )
    size: str = text(
        "Second flue size",
        "8.5x8.5",
        'Round by inside diameter ("8"), rectangular by outside size ("8.5x13"), or "own".',
    )
    own_width: float = length(
        "Own second flue width",
        "8 in",
        "3 in",
        "48 in",
        "Inside, left to right; diameter when round.",
    )
    own_depth: float = length(
        "Own second flue depth", "8 in", "3 in", "48 in", "Inside, front to back."
    )
    own_wall: float = length("Own second liner wall", "1 in", "1/4 in", "6 in", "Thickness.")
    long_side: str = choice(
        "Second flue's long side runs",
        ALONG,
        (ALONG, "front to back"),
        "Which way a liner lies that is not square; own sizes are set as they are told.",
    )
    wythe: float = length(
        "Masonry drawn between the flues",
        "4 in",
        "0 in",
        "48 in",
        "More is drawn where the second flue has to pass the firebox.",
    )
    bonded: bool | None = yes_no(
        "Masonry between the flues bonded", None, "Into the chimney's walls, course by course."
    )
    start: float | None = length(
        "Second flue starts",
        None,
        "-240 in",
        "960 in",
        "Level of the foot of its liner; not told, it is drawn from where the first flue starts.",
    )
    top: float = length(
        "Second flue's top over the first",
        "0 in",
        "-24 in",
        "48 in",
        "How much higher its liner ends; less than nothing is lower.",
    )
    liner: str | None = choice(
        "Second flue's liner",
        None,
        (
            "ASTM C315 clay",
            "UL 1777 system",
            "listed factory unit",
            "approved to 1800 F",
            "unlined",
            "other",
        ),
        "What its smoke touches.",
    )
    area_from: str | None = choice(
        "Second flue's area from",
        None,
        ("table", "manufacturer", "field measured"),
        "Where its net area comes from.",
    )
    net_area: float | None = quantity(
        "area",
        "Second flue's net area",
        None,
        "4 in2",
        "4000 in2",
        "From its maker or a tape; the table's own needs no telling.",
    )
    opening_area: float | None = quantity(
        "area",
        "Second fireplace's opening",
        None,
        "50 in2",
        "10000 in2",
        "Clear width by clear height.",
    )
    fuel: str | None = choice(
        "Appliance burns",
        None,
        (SOLID_FUEL, GAS, OIL, PELLETS),
        "On the second flue; gas is not checked here.",
    )
    connector_area: float | None = quantity(
        "area", "Appliance's connector", None, "4 in2", "1000 in2", "Inside area of its pipe."
    )
    inlet: float | None = length(
        "Second flue's lowest inlet",
        None,
        "-240 in",
        "960 in",
        "Level of its underside.",
    )
    inlet_side: str | None = choice(
        "Second flue's inlet enters from", None, ("side", "other"), "Of the chimney."
    )
    thimble: str | None = choice(
        "Second flue's thimble",
        None,
        ("fireclay", "refractory", "metal", "other"),
        "Made of.",
    )
    cleanout_to_base: float | None = length(
        "Second flue's clean-out to its base",
        None,
        "0 in",
        "96 in",
        "How far over the foot of the flue it lies.",
    )
    cleanout_below_inlet: float | None = length(
        "Second flue's clean-out below its inlet", None, "-96 in", "480 in", "Its top."
    )
    cleanout_height: float | None = length(
        "Second flue's clean-out height", None, "0 in", "48 in", "Of the opening."
    )

    @property
    def drawn(self) -> bool:
        """Whether there is one."""
        return self.serves != NONE
