"""What is measured and seen from the firebox, looking up."""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.survey.asked.entry import GREATEST, LEAST, UP, SurveyEntry, at, own_length

_up = at(UP)
SMOKE = "The tightest place lets the least smoke through."

ENTRIES: tuple[SurveyEntry, ...] = (
    _up(
        "throat height",
        "From the top of the opening straight up to the tightest place, the throat.",
        "throat.height",
        ("left", "right"),
        LEAST,
        "The nearer the throat is to the opening, the sooner smoke rolls out.",
    ),
    _up(
        "throat depth",
        "Front to back at the throat, the damper wide open.",
        "throat.depth",
        ("left", "middle", "right"),
        LEAST,
        SMOKE,
    ),
    _up(
        "throat length",
        "Side to side at the throat, between masonry or the damper's frame.",
        "measured.throat_area",
        ("front", "back"),
        LEAST,
        SMOKE,
        own_length("Throat length", 3 * INCH, 96 * INCH),
    ),
    _up("damper", "Where the damper is.", "throat.damper"),
    _up(
        "damper height",
        "From the top of the opening straight up to the damper blade.",
        "throat.damper_height",
    ),
    _up(
        "damper material",
        "Of blade and frame. A magnet holds on ferrous metal.",
        "throat.damper_material",
    ),
    _up(
        "damper worked from the room",
        "Open and close it, standing before the hearth.",
        "throat.worked_from_room",
    ),
    _up(
        "smoke chamber height",
        "From the throat up to the foot of the flue.",
        "smoke_chamber.height",
    ),
    _up("smoke chamber", "How the inside is drawn in.", "smoke_chamber.construction"),
    _up(
        "smoke chamber lean",
        "Angle from the vertical of the face that leans most, with a bevel and a level.",
        "measured.chamber_slope",
        ("front", "sides", "back"),
        GREATEST,
        "The flattest face holds soot and slows smoke.",
    ),
    _up(
        "corbel step",
        "How far one course steps out past the one under it.",
        "measured.corbel",
        ("one course", "another"),
        GREATEST,
        "The longest step bears on the least.",
    ),
    _up(
        "smoke chamber lining",
        "What covers the inside. A smooth coat is parging. Bare brick: leave it out here, and say"
        " so among the signs of trouble.",
        "smoke_chamber.lining",
    ),
    _up(
        "liner kind",
        "What the smoke touches above the chamber. Bare brick or stone is unlined.",
        "flue.liner",
    ),
)
