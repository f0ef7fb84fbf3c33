"""The chimney in bare outlines, against the roof and at its top, to put arrows on. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin

from fireplace_calc.drawing.roof.roof_lines import along, roof_at
from fireplace_calc.drawing.survey.rings import Line, Ring, closed
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box

TOP = 0.55
"""How much of the chimney is shown under its crown. [m]"""
LIFT = 0.16
"""Between plan and side of the top. [m]"""
CORNER = 0.12
"""How much of a liner's side its rounding takes in the sketch. [-]"""


def roof_outlines(g: Geometry) -> Iterator[Line]:
    """Chimney, roof, ceiling and ground, seen along the ridge. [m]

    Parameters
    ----------
    g : Geometry
    """
    f, d = g.frame, g.design
    low, high, stack = along(g)
    left, _, right, _ = roof_window(g)
    yield [(left, f.grade), (right, f.grade)], "ground"
    yield [(left, 0.0), (low, 0.0)], "seen"
    ceiling = d.house.ceiling
    yield [(left, ceiling), (-stack, ceiling)], "fine"
    yield [(0.0, ceiling), (right, ceiling)], "fine"
    for a, b in ((left, -stack), (0.0, right)):
        ridge = d.roof.ridge_distance
        at = [a, *([ridge] if a < ridge < b else []), b]
        yield [(u, roof_at(g, u)) for u in at], "cut"
        yield [(u, roof_at(g, u) - 0.2) for u in at], "fine"
    yield (
        [
            (low, f.grade),
            (low, f.block_top),
            (-stack, f.shoulder_top),
            (-stack, f.crown_bottom),
            (0.0, f.crown_bottom),
            (0.0, f.shoulder_top),
            (high, f.block_top),
            (high, f.grade),
        ],
        "seen",
    )
    over = d.chimney.overhang
    yield closed(box(-stack - over, over, f.crown_bottom, f.crown_top)), "seen"
    half = (f.bore.depth if d.roof.ridge_runs == "along the opening" else f.bore.width) / 2
    for u in (-stack / 2 - half, -stack / 2 + half):
        yield [(u, f.flue_start), (u, f.liner_top)], "hidden"
    yield [(-stack / 2 - half, f.liner_top), (-stack / 2 + half, f.liner_top)], "seen"


def roof_window(g: Geometry) -> tuple[float, float, float, float]:
    """What of it is shown. [m]

    Parameters
    ----------
    g : Geometry
    """
    f, (low, high, _) = g.frame, along(g)
    right = max(min(g.design.roof.ridge_distance, 3.2) + 0.5, high + 0.5)
    top = max(f.liner_top, min(g.design.roof.ridge_level, f.liner_top + 1.0))
    return low - 0.9, f.grade - 0.1, right, top + 0.3


def top_outlines(g: Geometry) -> Iterator[Line]:
    """Plan of the top below, its side above, one over the other."""
    f, d = g.frame, g.design
    x, y, over = f.stack_half, f.stack_depth, d.chimney.overhang
    yield closed(box(-x, x, -y, y)), "hidden"
    yield closed(box(-x - over, x + over, -y - over, y + over)), "seen"
    yield from ((ring, "cut") for ring in _liner(g))
    up = y + over + LIFT
    z = {"foot": up, "low": up + TOP, "edge": up + TOP + d.chimney.crown}
    meet = z["edge"] + d.chimney.wash
    liner = f.bore.width / 2 + f.bore.wall
    yield [(-x, z["foot"]), (-x, z["low"])], "seen"
    yield [(x, z["foot"]), (x, z["low"])], "seen"
    yield (
        [
            (-x - over, z["low"]),
            (x + over, z["low"]),
            (x + over, z["edge"]),
            (liner, meet),
            (-liner, meet),
            (-x - over, z["edge"]),
            (-x - over, z["low"]),
        ],
        "seen",
    )
    for s in (-1, 1):
        yield [(s * liner, meet), (s * liner, meet + d.chimney.liner_above)], "cut"
    high = meet + d.chimney.liner_above
    yield [(-liner, high), (liner, high)], "cut"


def corner_radius(g: Geometry) -> float:
    """Rounding of the liner's corners as it is sketched; the whole side of a round one. [m]

    Parameters
    ----------
    g : Geometry
    """
    bore = g.frame.bore
    return min(bore.width, bore.depth) * (0.5 if bore.round else CORNER)


def _liner(g: Geometry) -> Iterator[Ring]:
    bore, r = g.frame.bore, corner_radius(g)
    for grow in (0.0, bore.wall):
        a, b, q = bore.width / 2 + grow, bore.depth / 2 + grow, r + grow
        ring = [
            (cx * (a - q) + q * cos(t), cy * (b - q) + q * sin(t))
            for quarter, (cx, cy) in enumerate(((1, 1), (-1, 1), (-1, -1), (1, -1)))
            for t in ((quarter + k / 6) * pi / 2 for k in range(7))
        ]
        yield [*ring, ring[0]]


def top_window(g: Geometry) -> tuple[float, float, float, float]:
    """What of it is shown. [m]

    Parameters
    ----------
    g : Geometry
    """
    f, d = g.frame, g.design
    out = d.chimney.overhang + 0.05
    y = f.stack_depth
    high = y + out + LIFT + TOP + d.chimney.crown + d.chimney.wash + d.chimney.liner_above
    return -f.stack_half - out, -y - out, f.stack_half + out, high + 0.05


def crown_levels(g: Geometry) -> dict[str, float]:
    """Levels of the top's side as it is sketched over its plan. [m]

    Parameters
    ----------
    g : Geometry
    """
    up = g.frame.stack_depth + g.design.chimney.overhang + LIFT
    chimney = g.design.chimney
    edge = up + TOP + chimney.crown
    meet = edge + chimney.wash
    return {
        "foot": up,
        "low": up + TOP,
        "edge": edge,
        "meet": meet,
        "top": meet + chimney.liner_above,
    }
