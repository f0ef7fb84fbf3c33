"""Where a check is measured: from which point to which, on which view. [m]"""

from __future__ import annotations

from collections.abc import Callable
from math import hypot, sqrt

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.roof.roof_lines import along
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.mantel.on_face import trim_steps
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.rules.comparing import reaches

Span = tuple[Pair, Pair]


def _hearth_front(g: Geometry) -> Span:
    x = g.frame.half_width * 0.4
    return (x, 0.0), (x, -g.design.hearth.front)


def _hearth_side(g: Geometry) -> Span:
    y, w = -g.design.hearth.front / 2, g.frame.half_width
    return (w, y), (w + g.design.hearth.side, y)


def _depth(g: Geometry) -> Span:
    return (0.0, 0.0), (0.0, g.frame.depth)


def _wall(g: Geometry) -> Span:
    """Behind, or beside the splayed side where that is thinner."""
    f = g.frame
    splay = hypot(1.0, f.side_slope)
    jamb = (f.block_half - f.half_width) / splay
    if jamb < g.design.firebox.wall:
        return (f.half_width, 0.0), (f.half_width + jamb / splay, jamb * f.side_slope / splay)
    return (0.0, g.frame.depth), (0.0, g.frame.depth + g.design.firebox.wall)


def _lining(g: Geometry) -> Span:
    return (0.0, g.frame.depth), (0.0, g.frame.depth + g.design.firebox.lining_thickness)


def _air_behind(g: Geometry) -> Span:
    """Square off the back; across a corner square off the wall nearest to its edge."""
    if g.design.breast.cornered:
        x, y, off = g.frame.block_half, g.frame.block_back, (g.design.clearance.back or 0.0)
        return (x, y), (x + off / sqrt(2), y + off / sqrt(2))
    return (g.frame.half_width / 3, g.frame.block_back), (
        g.frame.half_width / 3,
        g.frame.block_back + (g.design.clearance.back or 0.0),
    )


def _air_narrower(g: Geometry) -> Span:
    gaps, y = g.design.clearance, g.frame.block_back / 2
    if g.design.breast.cornered:  # where the wall across ends beside it
        y = (g.design.breast.stands_out or 0.0) + INCH
    if gaps.side is not None and (gaps.back is None or gaps.side < gaps.back):
        return (-g.frame.block_half, y), (-g.frame.block_half - gaps.side, y)
    return _air_behind(g)


def _back(g: Geometry) -> Span:
    half = g.frame.back_width / 2
    return (-half, g.frame.depth), (half, g.frame.depth)


def _throat_height(g: Geometry) -> Span:
    y = (g.frame.throat_front + g.frame.throat_back) / 2
    return (y, g.frame.opening_top), (y, g.frame.throat)


def _throat_depth(g: Geometry) -> Span:
    return (g.frame.throat_front, g.frame.throat), (g.frame.throat_back, g.frame.throat)


def _shelf(g: Geometry) -> Span:
    return (g.frame.throat_back, g.frame.throat), (g.frame.depth, g.frame.throat)


def _chamber(g: Geometry) -> Span:
    return (g.frame.flue_y, g.frame.throat), (g.frame.flue_y, g.frame.flue_start)


def _hearth_thickness(g: Geometry) -> Span:
    thick = g.design.base.slab + g.design.firebox.floor
    return (g.frame.depth / 2, g.frame.hearth), (g.frame.depth / 2, g.frame.hearth - thick)


def _extension_thickness(g: Geometry) -> Span:
    y = -g.design.hearth.front / 2
    return (y, g.frame.extension_top), (y, g.frame.extension_top - g.design.hearth.thickness)


def _footing(g: Geometry) -> Span:
    y = g.frame.block_back / 2
    return (y, g.frame.footing_bottom), (y, g.frame.footing_top)


def _footing_out(g: Geometry) -> Span:
    z = (g.frame.footing_bottom + g.frame.footing_top) / 2
    return (g.frame.block_back, z), (g.frame.block_back + g.design.base.footing_projection, z)


def _footing_deep(g: Geometry) -> Span:
    y = g.frame.block_back + g.design.base.footing_projection * 0.5
    return (y, g.frame.grade), (y, g.frame.footing_bottom)


def _opening_width(g: Geometry) -> Span:
    z = g.frame.hearth + g.design.opening.height * 0.4
    return (-g.frame.half_width, z), (g.frame.half_width, z)


def _opening_height(g: Geometry) -> Span:
    return (0.0, g.frame.hearth), (0.0, g.frame.opening_top)


def _jamb(g: Geometry) -> Span:
    z = g.frame.hearth + g.design.opening.height * 0.4
    return (g.frame.half_width, z), (g.frame.half_width + g.design.firebox.jamb, z)


def _on_jamb(g: Geometry, high: float, out: float | None) -> Span:
    half, z = g.frame.half_width, g.frame.opening_top + high / 2
    return (half, z), (half + (out or 0.0), z)


def _bearing(g: Geometry) -> Span:
    return _on_jamb(g, g.design.lintel.height, g.design.lintel.bearing)


def _facing_bearing(g: Geometry) -> Span:
    around = g.design.pieces
    if g.design.piece_set is None or around.facing <= 0:
        return _bearing(g)
    return _on_jamb(g, around.angle_height, around.angle_bearing)


def _mantel(g: Geometry) -> Span:
    above = [t.drawn_distance for t in trim_steps(g) if t.combustible and t.place == "above"]
    top = g.frame.opening_top
    return (0.0, top), (0.0, top + (min(above) if above else 0.0))


def _over_contact(g: Geometry, top: str = "crown_top") -> Span:
    return (0.0, g.frame.uphill_contact), (0.0, getattr(g.frame, top))


def _off_ridge(g: Geometry) -> Span:
    """Over the slope; where that is too little and the top is no lower than the ridge, over it."""
    start, end = _over_contact(g, "liner_top")
    ridge = g.design.roof.ridge_level
    by_ridge = not reaches(end[1] - start[1], 1.0) and reaches(end[1], ridge)
    return ((0.0, ridge), end) if by_ridge else (start, end)


def _over_reach(g: Geometry) -> Span:
    return (0.35, g.frame.highest_within_reach), (0.35, g.frame.crown_top)


def _over_opening(g: Geometry) -> Span:
    middle = -along(g)[2] / 2
    return (middle, g.frame.opening_top), (middle, g.frame.liner_top)


PLACES: dict[str, tuple[str, Callable[[Geometry], Span]]] = {
    **dict.fromkeys(
        ("HTH-05", "HTH-07", "CA-050", "CA-052", "CA-053", "UK-045", "UK-047"),
        ("plan", _hearth_front),
    ),
    **dict.fromkeys(("HTH-06", "HTH-08", "CA-051", "UK-046", "UK-048"), ("plan", _hearth_side)),
    **dict.fromkeys(("FBX-09", "FBX-10", "CA-049", "PRA-05", "PRA-08"), ("plan", _depth)),
    **dict.fromkeys(("FBX-01", "FBX-02", "CA-046", "UK-050"), ("plan", _wall)),
    **dict.fromkeys(("FBX-03", "CA-042"), ("plan", _lining)),
    "CLR-02": ("plan", _air_behind),
    **dict.fromkeys(("CA-064", "CA-065", "CA-066", "CA-067"), ("plan", _air_narrower)),
    "PRA-03": ("plan", _back),
    **dict.fromkeys(("THR-01", "THR-04", "THR-05", "PRA-12"), ("section", _throat_height)),
    "THR-02": ("section", _throat_depth),
    "PRA-13": ("section", _shelf),
    "SMK-04": ("section", _chamber),
    **dict.fromkeys(("HTH-02", "UK-042"), ("section", _hearth_thickness)),
    **dict.fromkeys(("HTH-03", "HTH-04"), ("section", _extension_thickness)),
    "FND-01": ("section", _footing),
    **dict.fromkeys(("FND-02", "FND-12"), ("section", _footing_out)),
    "FND-03": ("section", _footing_deep),
    **dict.fromkeys(("PRA-06", "PRA-09"), ("front", _opening_height)),
    "PRA-07": ("front", _opening_width),
    "PRA-17": ("front", _jamb),
    "LIN-01": ("front", _bearing),
    "LIN-03": ("front", _facing_bearing),
    **dict.fromkeys(("CLR-07", "CA-061", "CA-062", "PRA-18"), ("front", _mantel)),
    **dict.fromkeys(("ROF-01", "CA-023"), ("roof", _over_contact)),
    "ROF-02": ("roof", _over_reach),
    "CA-019": ("roof", lambda g: _over_contact(g, "liner_top")),
    "UK-011": ("roof", _off_ridge),
    "UK-007": ("roof", _over_opening),
}
"""Where a check is measured: its view, and from where to where on it. [m]"""
