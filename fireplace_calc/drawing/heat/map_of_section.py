"""Temperatures in the section on the center line at one hour."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.heat.map_of_plan import (
    key_of_bands,
    lay_hollows,
    placed_with_key,
    temperatures,
)
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit, title
from fireplace_calc.geometry.mesh import FlatCut
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.heat.conduction.mesh import HeatMesh
from fireplace_calc.heat.cuts.section_cut import HOT
from fireplace_calc.heat.cuts.wall_plan import STUD_DEEP


def section_map(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    mesh: HeatMesh,
    points: Array,
    hour: float,
    units: str,
    key_at: Pair | None = None,
) -> View:
    """Draw the section with its temperatures, the room at the left.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        [mm]
    geometry : Geometry
        Whose outlines are drawn over it.
    mesh : HeatMesh
    points : array (points,)
        [C]
    hour : float
        Written under it. [h]
    units : str
    key_at : float, float or None
        Upper left corner of the key; under the map, on narrow paper, when None. [mm]
    """
    low, high = float(mesh.y[0]), float(mesh.y[-1])
    extent = (float(mesh.x[0]), low, float(mesh.x[-1]), high)
    if key_at is None:
        view = placed_with_key(sheet, cell, extent, units, True)
    else:
        view, _ = fit(sheet, cell, extent, (4, 16, 18, 6), LADDER)
        key_of_bands(sheet, *key_at, units)
    temperatures(view, mesh, points)
    whole = box(extent[0], extent[2], low, high)
    open_ = [ring for name in HOT for ring in geometry.by_name[name].section()]
    lay_hollows(view, whole, _solid(geometry, whole), [_between(ring, low, high) for ring in open_])
    for part in geometry.parts:
        if part.material != "air":
            for ring in part.section():
                if max(z for _, z in ring) > low and min(z for _, z in ring) < high:
                    view.seen(_between(ring, low, high))
    _words(view, geometry, mesh)
    title(sheet, cell, f"In section, {hour:g} h after lighting")
    return view


def _words(view: View, geometry: Geometry, mesh: HeatMesh) -> None:
    """What is what, where there is room for it: fire, flue, wood."""
    f = geometry.frame
    low = (f.hearth + f.opening_top) / 2
    places = [
        ("fire", f.depth / 2, low, f.depth),
        ("flue", f.flue_y, f.shoulder_top + 0.15, f.bore.depth),
    ]
    for word, y, z, wide in places:
        if width(word, SMALL) + 1 < wide * view.scale:
            view.sheet.text(*view.at(y, z), word, size=SMALL, va="middle")
    if geometry.design.chimney.location != "exterior":
        far, ends = float(mesh.x[-1]), (float(mesh.y[0]), float(mesh.y[-1]))
        for y in (far - STUD_DEEP, far):
            view.path([(y, ends[0]), (y, ends[1])], "seen")
        x, up = view.at(far, low)
        view.sheet.text(x + 1.0, up, "framing", size=SMALL, ha="left", va="middle")


def _between(ring: Polygon, low: float, high: float) -> Polygon:
    """An outline pressed between two levels. [m]"""
    return tuple((y, min(max(z, low), high)) for y, z in ring)


def _solid(geometry: Geometry, whole: Polygon) -> Iterator[FlatCut]:
    """All that the section cuts, and the wood behind it."""
    for part in geometry.parts:
        if part.material != "air":
            yield part.section(), ()
    if geometry.design.chimney.location != "exterior":
        far, low, high = whole[2][0], whole[0][1], whole[2][1]
        yield (box(far - STUD_DEEP, far, low, high),), ()
