"""What stands over the flue: a rain cap on its posts, and the mesh of a spark arrester."""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box

PLATE, OVER = 1 * INCH, 1.5 * INCH
"""Thickness of the plate and how far it stands over the liner, as drawn. [m]"""


def clear_height(geometry: Geometry) -> float:
    """How far a cap stands over the flue: its free area over the flue's outline. Where that is not
    told, four flues' worth, drawn hidden. [m]
    """
    bore = geometry.frame.bore
    area = geometry.design.chimney.rain_cap_area or 4 * bore.area
    return area / (2 * (bore.width + bore.depth))


def over_flue(geometry: Geometry) -> float:
    """Room that cap and arrester take over the top of the flue. [m]"""
    ch = geometry.design.chimney
    if ch.rain_cap:
        return clear_height(geometry) + PLATE
    return min(geometry.frame.bore.width, geometry.frame.bore.depth) if ch.arrester else 0.0


def draw_cap(view: View, geometry: Geometry, left: float, right: float, low: float) -> None:
    """Draw them over a flue that is seen between two places, and ends at a level. [m]"""
    ch = geometry.design.chimney
    high = low + over_flue(geometry)
    if ch.arrester:
        top = high - PLATE if ch.rain_cap else high
        count = 8
        steps = [left + (right - left) * k / count for k in range(count + 1)]
        for x in steps:
            view.path([(x, low), (x, top)], "fine")
        for k in range(1, 4):
            view.path(
                [(left, low + (top - low) * k / 4), (right, low + (top - low) * k / 4)], "fine"
            )
        view.path([(left, low), (left, top), (right, top), (right, low)], "seen")
    if ch.rain_cap:
        told = "seen" if ch.rain_cap_area is not None else "hidden"
        for x in (left, right):
            view.path([(x, low), (x, high - PLATE)], told)
        plate = box(left - OVER, right + OVER, high - PLATE, high)
        if told == "seen":
            view.seen(plate, "steel", "seen", layer=-1)
        else:
            view.path([*plate, plate[0]], "hidden")
