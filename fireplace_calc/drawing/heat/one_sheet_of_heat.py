"""The heat on one sheet: the map at an hour over the curves of the three fires."""

from __future__ import annotations

from fireplace_calc.drawing.composed.compose import HEIGHT, WIDTH
from fireplace_calc.drawing.heat.curves import wood_curves
from fireplace_calc.drawing.heat.map_of_plan import heat_map
from fireplace_calc.drawing.heat.map_of_section import section_map
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.cuts.behind import WallRun
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.heat.cuts.section_run import SectionRun

FOOT = 82.0
"""Where the map stands over the curves. [mm]"""


def heat_sheet(
    geometry: Geometry,
    runs: tuple[WallRun, ...],
    which: int,
    hour: float,
    units: str,
    section: SectionRun | None = None,
) -> Sheet:
    """Draw one of three fires at an hour, and the curves of all.

    Parameters
    ----------
    geometry : Geometry
    runs : tuple of WallRun
        Of that geometry.
    which : int
        Place in ``runs`` of the fire whose map is drawn.
    hour : float
        After lighting. [h]
    units : str
    section : SectionRun or None
        Of that fire, to be shown in place of the plan.
    """
    sheet, run = Sheet(WIDTH, HEIGHT), runs[which]
    top = Cell(0.0, FOOT, WIDTH, HEIGHT)
    if section is None:
        heat_map(sheet, top, run.mesh, run.at(hour), wall_plan(geometry, run.fire), hour, units)
    else:
        section_map(sheet, top, geometry, section.mesh, section.at(hour), hour, units)
    wood_curves(sheet, Cell(0.0, 0.0, WIDTH, FOOT), runs, hour, units)
    return sheet
