"""What burns, and the outdoor air it is given."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length, quantity, yes_no


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Fire(Record):
    """What burns."""

    wood: str = choice("Wood", "hardwood", ("hardwood", "softwood"), "Kind of firewood.")
    moisture: float = quantity(
        "ratio",
        "Wood moisture",
        "20 %",
        "0 %",
        "70 %",
        "Water over wet wood; green wood up to two thirds.",
    )
    burn_rate: float = quantity(
        "mass rate", "Burn rate", "3.5 kg/h", "0.5 kg/h", "30 kg/h", "Wood as burned."
    )
    bed_height: float | None = length(
        "Fire bed over the hearth",
        None,
        "2 in",
        "15 in",
        "Middle of the burning wood; unknown takes 150 mm, wood on a low grate.",
    )
    doors_inlet: float | None = quantity(
        "area",
        "Glass doors' inlet",
        None,
        "1 in2",
        "400 in2",
        "Free area with the doors shut while it burns; unknown figures an open fire.",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Air(Record):
    """Outdoor air for the fire."""

    exterior_air_supply: bool | None = yes_no(
        "Outdoor air supply", None, "For the fire.", "exterior_air_supply"
    )
    pressure_held: bool | None = yes_no(
        "Room kept at neutral or positive pressure", False, "By mechanical ventilation."
    )
    listed_duct: bool | None = yes_no("Listed duct", None, "Tested as a unit.")
    duct_per_listing: bool | None = yes_no(
        "Duct as its listing says", None, "Installed so.", "duct_per_listing"
    )
    intake_location: str | None = choice(
        "Air intake",
        None,
        ("outdoors", "crawl space", "attic", "garage", "basement"),
        "From where.",
        "intake_location",
    )
    intake_ventilated: bool | None = yes_no(
        "Crawl space or attic ventilated", None, "Where the air is taken from one of them."
    )
    intake_elevation: float | None = length(
        "Air intake level", None, "-40 ft", "80 ft", "Above the finished floor.", "intake_elevation"
    )
    intake_screen_mesh: float | None = length(
        "Air intake mesh", None, "1/16 in", "2 in", "Corrosion resistant.", "intake_screen_mesh"
    )
    near_outlet: bool | None = yes_no(
        "Duct within 5 ft of its outlet", True, "Some of it always is."
    )
    duct_clearance: float | None = length(
        "Air round the duct", None, "0 in", "24 in", "To anything that burns.", "duct_clearance"
    )
    outlet_place: str | None = choice(
        "Air outlet", None, ("firebox", "hearth"), "In the firebox, or at hearth level outside it."
    )
    outlet_distance_to_opening: float | None = length(
        "Air outlet to opening", None, "0 in", "240 in", "Level.", "outlet_distance_to_opening"
    )
    outlet_closable: bool | None = yes_no(
        "Air outlet can be closed", None, "From the room.", "outlet_closable"
    )
    ember_guard: bool | None = yes_no(
        "Air outlet holds embers back", None, "So none falls into the duct.", "ember_guard"
    )
    tight_damper_or_doors: bool | None = yes_no(
        "Tight damper or doors", None, "Energy chapter.", "tight_damper_or_doors"
    )
    other_intake: bool | None = yes_no(
        "Another outdoor air intake near the chimney", None, "Of the house's ventilation."
    )
    intake_to_chimney_distance: float | None = length(
        "That intake to the chimney", None, "0 ft", "200 ft", "Level.", "intake_to_chimney_distance"
    )
    intake_below_outlet: float | None = length(
        "That intake below the chimney top",
        None,
        "-40 ft",
        "120 ft",
        "Height.",
        "intake_below_outlet",
    )
