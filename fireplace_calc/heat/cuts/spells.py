"""A run put together from spells: the fire burns, embers glow, the night goes by, each with its own
temperatures and films.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.driving import always
from fireplace_calc.heat.conduction.faces import Drives
from fireplace_calc.heat.conduction.grading import FINE, Cells
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import HeatMesh

HOUR = 3600.0


class Spells:
    """Spells one after the other, from a mesh that is everywhere as warm as the room.

    Parameters
    ----------
    mesh : HeatMesh
    room : float
        [C]
    cells : Cells
        How long its steps are, how close each is settled, and whether jumps are taken softly.

    Attributes
    ----------
    now : float
        Where the last spell ended. [h]
    last : array (n, points)
        What the last spell brought. [C]
    """

    def __init__(self, mesh: HeatMesh, room: float, cells: Cells = FINE) -> None:
        self.now, self.last = 0.0, np.full((1, mesh.points), room)
        self._solved = Conduction(mesh, close=cells.close)
        self._step, self._softly = cells.step, cells.softly
        self._times, self._points = [np.zeros(1)], [self.last]

    def go(
        self,
        drives: Drives,
        films: Mapping[str, float],
        hours: float,
        step: float | None = None,
        sudden: bool = True,
    ) -> None:
        """Go on for some hours.

        Parameters
        ----------
        drives : mapping
            Temperature of every space. [C]
        films : mapping
            Films that may have changed since. [W/(m2 K)]
        hours : float
            [h]
        step : float or None
            At most; as long as the cells ask when None. [s]
        sudden : bool
            Whether something changes at its start.
        """
        for space, film in films.items():
            self._solved.film(space, film)
        run = self._solved.run(
            always(drives),
            hours * HOUR,
            step or self._step,
            self.last[-1],
            sudden and self._softly,
        )
        self._times.append(run.times[1:] / HOUR + self.now)
        self.last = run.points[1:]
        self._points.append(self.last)
        self.now += hours

    @property
    def times(self) -> Array:
        """From the start on. [h]"""
        return np.concatenate(self._times)

    @property
    def points(self) -> Array:
        """Every point at these. [C]"""
        return np.concatenate(self._points)


def at_hour(times: Array, points: Array, hour: float) -> Array:
    """Every point at an hour, in a straight line between the two that were worked.

    Parameters
    ----------
    times : array (n,)
        Two at least. [h]
    points : array (n, points)
        [C]
    hour : float
        [h]

    Returns
    -------
    array (points,)
        [C]

    Examples
    --------
    >>> at_hour(np.array([0.0, 2.0]), np.array([[20.0], [60.0]]), 0.5)
    array([30.])
    """
    place = float(np.interp(hour, times, np.arange(len(times))))
    before = min(int(place), len(times) - 2)
    found: Array = points[before] + (place - before) * (points[before + 1] - points[before])
    return found
