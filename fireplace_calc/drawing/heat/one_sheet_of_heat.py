"""The heat on one sheet: the map at an hour, over or beside the curves of the three fires."""

from __future__ import annotations

from fireplace_calc.drawing.composed.compose import HEIGHT, WIDTH
from fireplace_calc.drawing.heat.curves import Reach, wood_curves
from fireplace_calc.drawing.heat.map_of_plan import heat_map
from fireplace_calc.drawing.heat.map_of_section import section_map
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.cuts.behind import WallRun
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.heat.cuts.section_run import SectionRun

FOOT = 82.0
"""Where the map stands over the curves. [mm]"""
NARROW, LEAST = 205.0, 120.0
"""Paper narrower than this has the key under the map; none is narrower than the least. [mm]"""
TALL, ASIDE = 240.0, 0.42
"""Height of narrow paper, and share of wide paper that a section takes. [mm], [-]"""


def heat_sheet(
    geometry: Geometry,
    runs: tuple[WallRun, ...],
    which: int,
    hour: float,
    units: str,
    section: SectionRun | None = None,
    wide: float = WIDTH,
    reach: Reach | None = None,
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
    wide : float
        Of the paper: the narrower, the larger its letters on a screen. [mm]
    reach : Reach or None
        Of the chart at rest, while a hand moves.
    """
    wide, run = min(max(wide, LEAST), WIDTH), runs[which]
    narrow = wide < NARROW
    high = TALL if narrow else HEIGHT
    sheet, top, foot = Sheet(wide, high), Cell(0.0, FOOT, wide, high), Cell(0.0, 0.0, wide, FOOT)
    if section is None:
        plan = wall_plan(geometry, run.fire)
        heat_map(sheet, top, run.mesh, run.at(hour), plan, hour, units, narrow)
    elif narrow:
        section_map(sheet, top, geometry, section.mesh, section.at(hour), hour, units)
    else:  # it is high, and stands beside its key and the curves
        at, points = ASIDE * wide, section.at(hour)
        side, foot = Cell(0.0, 0.0, at, high), Cell(at, 0.0, wide, FOOT)
        section_map(
            sheet, side, geometry, section.mesh, points, hour, units, (at + 4.0, high - 8.0)
        )
    wood_curves(sheet, foot, runs, hour, units, narrow or section is not None, reach)
    return sheet
