"""What each field of a draft follows from: the inputs that can move it, so that a finding can say
which of them nobody has entered.
"""

from __future__ import annotations

from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.rules.tracing.follows import (
    BORE,
    CHAMBER,
    HEARTH,
    HOOD,
    LINER,
    MOUTH,
    OPENING_HIGH,
    ROOF,
    TO_LINER_TOP,
)
from fireplace_calc.rules.tracing.resting import Grounds

HOUSE = (
    *(f"house.{name}" for name in ("indoor", "volume", "leakage", "exhaust", "air_inlet")),
    *(f"house.{name}" for name in ("ceiling", "lowest_floor", "highest_ceiling", "attic_heated")),
    "roof.eaves_level",
)
AIR = ("site.altitude", "site.winter", "site.mild")
FIRE = tuple(key for key in all_inputs() if key.startswith("fire."))
OPENING = ("opening.width", *OPENING_HIGH, HOOD, "opening.head", "opening.rise")
DAMPER = ("throat.damper", "throat.damper_open", "throat.damper_area")
TOP = ("chimney.rain_cap", "chimney.rain_cap_area", "chimney.arrester")
HEIGHT = (*TO_LINER_TOP, *HEARTH)
SIZED = (
    *OPENING,
    *HEIGHT,
    *LINER,
    *MOUTH,
    *CHAMBER,
    *DAMPER,
    *TOP,
    *("flue.offset", "flue.offset_rise", "flue.liner"),
)
WALL = ("chimney.location", "chimney.masonry", "chimney.wall", "chimney.gap", "flue.casing")
STANDING = (*HEIGHT, *HOUSE, *AIR, *ROOF, "chimney.location", "flue.offset", "flue.offset_rise")
BURNING = (*SIZED, *WALL, *STANDING, *FIRE)

GROUNDS = Grounds(
    follows={
        "dew_points": BURNING,
        "fire": FIRE,
        "flows": BURNING,
        "lighting": STANDING,
        "linings": BURNING,
        "path": BURNING,
        "path.flue_area": BORE,
        "path.height": TO_LINER_TOP,
        "path.opening_area": OPENING,
        "shut": ("fire.doors_inlet",),
        "sizing_velocity": SIZED,
        "spills": BURNING,
        "surroundings": (*HOUSE, *AIR),
        "tended": BURNING,
        "tested": ("house.leakage",),
        "wind_case": (*ROOF, *HEIGHT),
        "wind_range": (*ROOF, *HEIGHT, "site.mild", "site.altitude"),
    },
    nested=frozenset({"path"}),
    taken=("throat.damper_area", "house.highest_ceiling", "fire.bed_height"),
    always=("stack.connector",),
)
