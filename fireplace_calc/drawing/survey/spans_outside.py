"""Where the tape is held on the roof and where the house hides the masonry. [m]"""

from __future__ import annotations

from fireplace_calc.drawing.roof.roof_lines import along, roof_at
from fireplace_calc.drawing.survey.chimney_outlines import corner_radius, crown_levels
from fireplace_calc.drawing.survey.tape import Held, TapeSpan, across, both, upright
from fireplace_calc.geometry.parts import Geometry


def _chimney(g: Geometry) -> tuple[TapeSpan, ...]:
    u = -along(g)[2] / 2
    return (((u, g.frame.liner_top), (u, g.frame.hearth)),)


def _ridge(g: Geometry) -> tuple[TapeSpan, ...]:
    away = min(g.design.roof.ridge_distance, 3.2)
    z = roof_at(g, away) + 0.12
    return (((0.0, z), (away, z)),)


def _pitch(g: Geometry) -> tuple[TapeSpan, ...]:
    low = along(g)[0] - 0.3
    return (((low - 0.5, roof_at(g, low - 0.5) + 0.08), (low, roof_at(g, low) + 0.08)),)


def _near(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    u = min(g.design.roof.ridge_distance, 3.2) * 0.72
    return (((u, f.crown_top), (u, f.highest_within_reach)),)


def _air_round(g: Geometry) -> tuple[TapeSpan, ...]:
    z = (g.design.house.ceiling + g.frame.uphill_contact) / 2
    stack, gap = along(g)[2], max(g.design.clearance.chimney or 0.05, 0.25)
    return ((-stack - gap, z), (-stack, z)), ((0.0, z), (gap, z))


def _behind(g: Geometry) -> tuple[TapeSpan, ...]:
    f, x = g.frame, g.frame.half_width * 0.3
    return (((x, f.block_back), (x, f.block_back + (g.design.clearance.back or 0.1))),)


def _corner(g: Geometry) -> tuple[TapeSpan, ...]:
    bore, r = g.frame.bore, corner_radius(g)
    x, y = bore.width / 2, -bore.depth / 2
    return (((x - r, y), (x, y)),)


OUTSIDE: dict[str, Held] = {
    "chimney height": (("roof", _chimney),),
    "top over the roof": (
        ("roof", lambda g: upright(0.1, g.frame.crown_top, g.frame.uphill_contact)),
    ),
    "top over what is near": (("roof", _near),),
    "ridge distance": (("roof", _ridge),),
    "roof pitch": (("roof", _pitch),),
    "chimney along the ridge": (
        (
            "top",
            across(lambda g: crown_levels(g)["foot"] + 0.12, lambda g: g.frame.stack_half),
        ),
    ),
    "flue width": (("top", across(lambda g: 0.03, lambda g: g.frame.bore.width / 2)),),
    "flue depth": (
        ("top", lambda g: upright(-0.06, -g.frame.bore.depth / 2, g.frame.bore.depth / 2)),
    ),
    "rounding of the corners": (("top", _corner),),
    "liner wall": (
        (
            "top",
            lambda g: (
                (
                    (g.frame.bore.width / 2, 0.06),
                    (g.frame.bore.width / 2 + g.frame.bore.wall, 0.06),
                ),
            ),
        ),
    ),
    "liner over the crown": (
        (
            "top",
            lambda g: upright(
                -g.frame.bore.width / 2 - g.frame.bore.wall - 0.04,
                crown_levels(g)["meet"],
                crown_levels(g)["top"],
            ),
        ),
    ),
    "crown thickness": (
        (
            "top",
            lambda g: upright(
                g.frame.stack_half + g.design.chimney.overhang + 0.02,
                crown_levels(g)["low"],
                crown_levels(g)["edge"],
            ),
        ),
    ),
    "crown overhang": (
        (
            "top",
            lambda g: (
                (
                    (-g.frame.stack_half, crown_levels(g)["low"] - 0.03),
                    (
                        -g.frame.stack_half - g.design.chimney.overhang,
                        crown_levels(g)["low"] - 0.03,
                    ),
                ),
            ),
        ),
    ),
    "air around the chimney": (("roof", _air_round),),
    "air beside the fireplace": (
        (
            "plan",
            both(
                lambda g: (
                    (g.frame.block_half, g.frame.block_back * 0.5),
                    (
                        g.frame.block_half + (g.design.clearance.side or 0.05),
                        g.frame.block_back * 0.5,
                    ),
                )
            ),
        ),
    ),
    "air behind the fireplace": (("plan", _behind),),
    "hearth thickness under the fire": (
        (
            "section",
            lambda g: upright(g.frame.depth * 0.4, g.frame.slab_bottom, g.frame.hearth),
        ),
    ),
    "floor above grade": (("roof", lambda g: upright(along(g)[0] - 0.4, g.frame.grade, 0.0)),),
}
"""By the key of the entry."""
