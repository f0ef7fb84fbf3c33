"""The whole height against the roof, as a figure of a sheet."""

from __future__ import annotations

from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.roof.cap import over_flue
from fireplace_calc.drawing.roof.roof_lines import _named, _width, along
from fireplace_calc.drawing.roof.roof_marks import Limits, _clearances, _heights, _high
from fireplace_calc.drawing.roof.roof_view import draw_chimney, draw_house
from fireplace_calc.drawing.room.for_scale import person
from fireplace_calc.drawing.sheets.dimensions import room_for
from fireplace_calc.drawing.sheets.sheet import Cell, View
from fireplace_calc.geometry.parts import Geometry

WIDE = 0.45
"""Of the drawing, in parts of its height, where the roof is long enough. [-]"""
ROW = 4.0
"""That a level takes of its column. [mm]"""


def _seen_from(geometry: Geometry) -> str:
    """Which way one looks; uphill is always to the right."""
    along_opening = geometry.design.roof.ridge_runs == "along the opening"
    return "room at the right" if along_opening else "seen from the room"


def height_figure(
    geometry: Geometry, units: str, scales: tuple[float, ...], limits: Limits
) -> Figure:
    """The figure of the chimney and the roof, seen along the ridge, uphill to the right.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    limits : Limits
        What the checks ask of the two heights over the roof.
    """
    f, d = geometry.frame, geometry.design
    ridge = min(d.roof.ridge_level, f.highest_within_reach + 1.0)
    top = max(f.highest + over_flue(geometry), f.highest_within_reach, ridge, 2.0) + 0.1
    bottom = min(f.footing_bottom, f.grade, f.uphill_contact, f.highest_within_reach) - 0.05
    left, right = _width(geometry, WIDE * (top - bottom))
    marks = level_marks(_named(geometry), lambda z: _high(z, units))
    heights = _heights(geometry, units, limits)
    values = room_for((t for _, lines, _ in heights for t in lines), bold=True)

    def room(denominator: float) -> Extent:
        """The smaller it is drawn, the higher its column of levels stands over it."""
        drawn = (top - bottom) * 1000 / denominator
        crowd = max(0.0, len(marks) * ROW - drawn - 10.0)
        return level_room(marks, False) + 6.0, 4.0, values + 6.0, 11.0 + crowd

    def paint(view: View) -> None:
        draw_house(view, geometry, left, right, (bottom, top))
        draw_chimney(view, geometry)
        person(view, along(geometry)[0] - 0.55, 0.0)
        (x0, y0), (x1, y1) = view.at(left, bottom), view.at(right, top)
        _, _, beside, over = room(1000 / view.scale)
        cell = Cell(x0 - 2.0, y0 - 14.0, x1 + beside, y1 + 10.0)
        _clearances(view, cell, geometry, units, heights, right, composed=True)
        levels(
            view.sheet,
            [(view.at(0, z)[1], value, name) for z, value, name in marks],
            [x0 - 0.4] * len(marks),
            x0 - 4.6,
            side=-1,
            limits=(y0 - 2.0, y1 + over - 3.0),
        )

    mark, name = marked("roof")
    return Figure(
        "roof",
        mark,
        name,
        (left, bottom, right, top),
        room,
        paint,
        scales,
        f"{d.flue.sections} flue sections, {_seen_from(geometry)}",
    )
