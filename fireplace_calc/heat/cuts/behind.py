"""How hot what burns behind a firebox becomes: with the fire, after it, for three kinds of fire.

Engineering judgement. The code's clearance stands whatever this says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import WallFire, wall_fires
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.grading import FINE, Cells, Low
from fireplace_calc.heat.conduction.mesh import HeatMesh
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.heat.cuts.spells import Spells, at_hour
from fireplace_calc.heat.cuts.wall_plan import FIRE, OUTDOORS, ROOM, WallPlan, plan_mesh
from fireplace_calc.heat.cuts.warming import Warming

STANDS = "The code's clearance stands, whatever this says."
EMBERS, EMBERS_FILM = 25.0, 10.0
"""What a firebox without a fire is, and its film: our judgement. [C], [W/(m2 K)]"""
LONGEST = 72.0
"""Hours after which a run ends though the wood is still getting warmer. [h]"""
LATER = 24.0
"""A place that is still getting warmer is waited for where it would be the hottest of all within so
many hours at its pace: behind a thick back that may be a day after the side. [h]
"""
WINDOW = 4.0
"""From one look at it to the next. [h]"""


@dataclass(frozen=True, slots=True)
class WallRun(Warming):
    """A fire and the hours after it.

    Attributes
    ----------
    fire : WallFire
    burns : float
        How long, each time. [h]
    out : float
        When it goes out for the last time. [h]
    mesh : HeatMesh
    times : array (n,)
        [h]
    points : array (n, points)
        Of every point of the mesh. [C]
    wood : array (n,)
        The hottest wood at each time; of masonry that stands free, the hottest of its back. [C]
    framed : bool
        Whether anything that burns is framed there.
    low : Low
        By how much such cells may read the wood low.
    """

    fire: WallFire
    burns: float
    out: float
    mesh: HeatMesh
    times: Array
    points: Array
    wood: Array
    framed: bool
    low: Low = FINE.low

    @property
    def passed(self) -> bool:
        """Whether the run went on until the wood was past its hottest."""
        return int(self.wood.argmax()) < len(self.wood) - 1

    def at(self, hour: float) -> Array:
        """Temperature of every point at an hour. [C]"""
        return at_hour(self.times, self.points, hour)


def burn(
    plan: WallPlan,
    fire: WallFire,
    hours: float,
    room: float = 21.0,
    outdoors: float = 21.0,
    cells: Cells = FINE,
    days: int = 1,
) -> WallRun:
    """Burn a fire from cold, let it go out, and wait until the wood is past its hottest.

    Parameters
    ----------
    plan : WallPlan
    fire : WallFire
    hours : float
        How long it burns. [h]
    room, outdoors : float
        [C]
    cells : Cells
        How fine.
    days : int
        On how many days running it is lit at the same hour.

    Returns
    -------
    WallRun
    """
    mesh = plan_mesh(plan, cells)
    wood = HottestWood(mesh, plan)
    lit = {FIRE: fire.face, ROOM: room, OUTDOORS: outdoors}
    cold, embers = {**lit, FIRE: EMBERS}, {FIRE: EMBERS_FILM}
    spells = Spells(mesh, room, cells)
    for day in range(days):
        spells.go(lit, {FIRE: plan.film}, hours)
        if day + 1 < days:
            spells.go(cold, embers, 24.0 - hours)
    out = spells.now
    while spells.now < out + LONGEST:
        spells.go(cold, embers, WINDOW, sudden=spells.now == out)
        last = wood.each(spells.last)
        later = last[-1] + (last[-1] - last[0]) * LATER / WINDOW
        if max(last[-1].max(), later.max()) < wood.at(spells.points).max():
            break
    every = spells.points
    return WallRun(
        fire,
        hours,
        out,
        mesh,
        spells.times,
        every,
        wood.at(every),
        plan.framing is not None,
        cells.low,
    )


def three_fires(
    geometry: Geometry, hours: float, cells: Cells = FINE, days: int = 1
) -> Iterator[WallRun]:
    """The kind, the middle and the hard fire behind a geometry, one after the other.

    Parameters
    ----------
    geometry : Geometry
    hours : float
        How long each burns. [h]
    cells : Cells
        How fine.
    days : int
        On how many days running.
    """
    for fire in wall_fires().values():
        yield one_fire(geometry, fire, hours, cells, days)


def one_fire(
    geometry: Geometry,
    fire: WallFire,
    hours: float,
    cells: Cells = FINE,
    days: int = 1,
) -> WallRun:
    """A fire behind a geometry, room and outdoors as warm as its design says of a winter evening.

    Parameters
    ----------
    geometry : Geometry
    fire : WallFire
    hours : float
        How long it burns. [h]
    cells : Cells
        How fine.
    days : int
        On how many days running.
    """
    design = geometry.design
    room, outdoors = design.house.indoor - 273.15, design.site.winter - 273.15
    plan = wall_plan(geometry, fire)
    return burn(plan, fire, hours, room, outdoors, cells, days)


class HottestWood:
    """Where all that burns is looked at: its cells, and its faces, free or touching something else;
    of masonry that stands free, its back.

    Parameters
    ----------
    mesh : HeatMesh
    plan : WallPlan
    """

    def __init__(self, mesh: HeatMesh, plan: WallPlan) -> None:
        none = np.zeros(0, int)
        self._one, self._other, self._share = none, none, np.zeros(0)
        if plan.framing is None:
            self._seen = np.flatnonzero(np.abs(mesh.places()[:, 1] - plan.deep) < 1e-6)
            return
        wood = [n for n, stuff in enumerate(mesh.stuff) if stuff is plan.framing.wood]
        cells = np.isin(mesh.which[mesh.solid], wood)
        self._seen = np.flatnonzero(cells[mesh.owner])
        one, other, _, share = (np.concatenate(part) for part in zip(*mesh.pairs, strict=True))
        touching = cells[mesh.owner[one]] != cells[mesh.owner[other]]
        self._one, self._other, self._share = one[touching], other[touching], share[touching]

    def at(self, points: Array) -> Array:
        """The hottest at each time.

        Parameters
        ----------
        points : array (n, points)
            [C]

        Returns
        -------
        array (n,)
            [C]
        """
        hottest: Array = self.each(points).max(axis=1)
        return hottest

    def each(self, points: Array) -> Array:
        """Every place that is looked at, at each time.

        Parameters
        ----------
        points : array (n, points)
            [C]

        Returns
        -------
        array (n, places)
            [C]
        """
        found: Array = points[:, self._seen]
        if not len(self._one):
            return found
        faces = self._share * points[:, self._one] + (1 - self._share) * points[:, self._other]
        return np.concatenate([found, faces], axis=1)
