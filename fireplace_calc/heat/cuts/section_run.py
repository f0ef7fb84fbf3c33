"""A fire in the section on the center line, and the hours after it: for the map."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import WallFire, flue_fires
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.grading import Cells
from fireplace_calc.heat.conduction.mesh import HELD, HeatMesh
from fireplace_calc.heat.cuts.behind import EMBERS, EMBERS_FILM
from fireplace_calc.heat.cuts.round_flue import OUT_FILM, OUT_GAS
from fireplace_calc.heat.cuts.section_cut import GAS, SECTION, section_mesh
from fireplace_calc.heat.cuts.spells import Spells, at_hour
from fireplace_calc.heat.cuts.wall_plan import FIRE, OUTDOORS, ROOM

SENDS_UP = {"kind": "gentle", "middle": "usual", "hard": "hard"}
"""Which smoke goes with which fire: our judgement."""


@dataclass(frozen=True, slots=True)
class SectionRun:
    """Temperatures of the section.

    Attributes
    ----------
    mesh : HeatMesh
    times : array (n,)
        [h]
    points : array (n, points)
        [C]
    """

    mesh: HeatMesh
    times: Array
    points: Array

    def at(self, hour: float) -> Array:
        """Temperature of every point at an hour. [C]"""
        return at_hour(self.times, self.points, hour)


def burn_section(
    geometry: Geometry,
    fire: WallFire,
    hours: float,
    until: float,
    days: int = 1,
    cells: Cells = SECTION,
) -> SectionRun:
    """Burn a fire from cold in the section and let it go out.

    Parameters
    ----------
    geometry : Geometry
    fire : WallFire
        Its smoke goes with it: gentle, usual or hard.
    hours : float
        How long it burns, each time. [h]
    until : float
        How long is looked at. [h]
    days : int
        On how many days running it is lit at the same hour.
    cells : Cells
        How fine.
    """
    smoke = flue_fires()[SENDS_UP[fire.key]]
    mesh = section_mesh(geometry, fire, smoke, cells)
    room, winter = (k - 273.15 for k in (geometry.design.house.indoor, geometry.design.site.winter))
    around = {ROOM: room, OUTDOORS: winter}
    lit = {**around, FIRE: fire.face, GAS: smoke.gas}
    cold = {**around, FIRE: EMBERS, GAS: OUT_GAS}
    burns = (lit, HELD if fire.film is None else fire.film, smoke.film, hours)
    spells = Spells(mesh, room, cells)
    for day in range(days):
        rest = 24.0 - hours if day + 1 < days else until - spells.now - hours
        for drives, film, up, long in (burns, (cold, EMBERS_FILM, OUT_FILM, rest)):
            if long > 0:
                spells.go(drives, {FIRE: film, GAS: up}, long)
    return SectionRun(mesh, spells.times, spells.points)
