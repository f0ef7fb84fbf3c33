"""Temperatures in the section on the center line at one hour."""

from __future__ import annotations

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.heat.map_of_plan import key_of_bands, key_width, temperatures
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.layout import LADDER, fit, title
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.heat.conduction.mesh import HeatMesh


def section_map(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    mesh: HeatMesh,
    points: Array,
    hour: float,
    units: str,
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
    """
    low, high = float(mesh.y[0]), float(mesh.y[-1])
    extent = (float(mesh.x[0]), low, float(mesh.x[-1]), high)
    view, _ = fit(sheet, cell, extent, (4, 16, key_width(units), 6), LADDER)
    temperatures(view, mesh, points)
    for left, right, foot, top in _hollows(mesh):
        sheet.fill([view.ring(box(left, right, foot, top))], "paper", layer=3)
    for part in geometry.parts:
        if part.material != "air":
            for ring in part.section():
                if max(z for _, z in ring) > low and min(z for _, z in ring) < high:
                    view.seen(_between(ring, low, high))
    key_of_bands(sheet, view.at(extent[2], 0)[0] + 5.0, view.at(0, high)[1], units)
    title(sheet, cell, f"In section on the center line, {hour:g} h after lighting")
    return view


def _between(ring: Polygon, low: float, high: float) -> list[tuple[float, float]]:
    """An outline pressed between two levels. [m]"""
    return [(y, min(max(z, low), high)) for y, z in ring]


def _hollows(mesh: HeatMesh) -> list[tuple[float, float, float, float]]:
    """Runs of cells with nothing solid, row by row: left, right, foot, top. [m]"""
    found = []
    for n, row in enumerate(mesh.solid):
        start = None
        for m, solid in enumerate([*row, True]):
            if not solid and start is None:
                start = m
            elif solid and start is not None:
                found.append((mesh.x[start], mesh.x[m], mesh.y[n], mesh.y[n + 1]))
                start = None
    return found
