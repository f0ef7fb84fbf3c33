"""Temperatures of a mesh: in the end, or hour by hour.

Conduction never changes, so its matrix is factored once. What depends on temperature (radiation,
air that moves by itself) stands in the matrix with its slope at a guess and is put right on the
other side until nothing moves.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import sqrt

import numpy as np
from scipy.sparse import coo_matrix, csc_matrix
from scipy.sparse.linalg import SuperLU, splu

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.faces import Bends, Drives
from fireplace_calc.heat.conduction.mesh import Film, FreeFaces, HeatMesh, NotWorked, Room

GAMMA = 1 - 2**-0.5
"""Of the two-stage method: second order, and a sudden step dies away at once (L-stable)."""
SOFT = 4
"""Simple steps, each as long as a stage, that reach just over the first whole one. [-]"""
NOT_YET = 1 - 1e-12
"""Just before a step ends. [-]"""
SETTLED = 1e-4
"""Of a steady answer. [K]"""
UNTRIED = 0.25
"""Share of one correction that the next moves, before any was seen. [-]"""
PATIENCE = 5
"""Corrections before the matrix is made anew, about as hot as it has become."""
TURNS, SWINGS = 12, 3
"""Times that is done before giving up, and before it is taken for a swing."""
NO_REST = "Temperatures beside this wall do not come to rest: its heat is not worked out."


@dataclass(frozen=True, slots=True)
class HeatRun:
    """Temperatures in time.

    Attributes
    ----------
    times : array (n,)
        [s]
    points : array (n, points)
        Every cell, then every face of the mesh. [C]
    """

    times: Array
    points: Array


class NotSettled(NotWorked):
    """No temperatures were found that agree with all that depends on them."""


class Conduction:
    """A mesh made ready to be solved.

    Parameters
    ----------
    mesh : HeatMesh
    guess : float or array (points,)
        About what everything will be; an answer does not depend on it. [C]
    close : float
        To which a stage in time is settled. [K]
    """

    def __init__(self, mesh: HeatMesh, guess: float | Array = 80.0, close: float = 5e-3) -> None:
        self.mesh, self.bends, self._close = mesh, Bends(mesh), close
        self.films = [faces for faces in mesh.faces if isinstance(faces.space, Film)]
        one, other, passes, _ = (np.concatenate(part) for part in zip(*mesh.pairs, strict=True))
        self._own = np.bincount(one, passes, mesh.points) + np.bincount(other, passes, mesh.points)
        self._passing = -np.concatenate([passes, passes])
        number, gaps = np.arange(mesh.points), self.bends.gaps
        node, across = self.bends.node[gaps], self.bends.other[gaps]
        places = (
            np.concatenate([number, one, other, node, across]),
            np.concatenate([number, other, one, across, node]),
        )
        which = np.arange(len(places[0]))  # every value of the matrix stands alone in its place
        self._which = coo_matrix((which, places), (mesh.points, mesh.points)).tocsc()
        self._factors: dict[float, SuperLU] = {}
        self._films: dict[str, float] = {}
        self.guess(guess)

    def film(self, drive: str, film: float) -> None:
        """Change the film between faces and a driven space, as when a fire goes out. [W/(m2 K)]"""
        if self._films.get(drive) != film:
            self._films[drive] = film
            self._factors.clear()

    def guess(self, temperatures: float | Array, drives: Drives | None = None) -> None:
        """Put what depends on temperature into the matrix as it is at these. [C]"""
        points = np.zeros(self.mesh.points) + temperatures
        self._slopes, self._share = self.bends.slopes(points, drives), UNTRIED
        self._factors.clear()

    def _matrix(self, per_second: float) -> csc_matrix:
        """Of a step in time; what films and bends let through is put on the way. [W/(m K)]"""
        bends, (hot, cold, away), which = self.bends, self._slopes, self._which
        gaps = bends.gaps
        own = self._own + per_second * self.mesh.capacity
        own[bends.node] += hot + away
        own[bends.other[gaps]] += cold[gaps] + away[gaps]
        for faces in self.films:
            own[faces.node] += faces.area * self._film(faces)
        values = np.concatenate([own, self._passing, -cold[gaps], -hot[gaps]])
        return csc_matrix((values[which.data], which.indices, which.indptr), which.shape)

    def _factor(self, per_second: float) -> SuperLU:
        if per_second not in self._factors:
            self._factors[per_second] = splu(
                self._matrix(per_second),
                permc_spec="MMD_AT_PLUS_A",
                diag_pivot_thresh=0.0,
                relax=1,
                panel_size=1,  # these matrices are too sparse for larger ones to pay
                options={"SymmetricMode": True},
            )
        return self._factors[per_second]

    def _film(self, faces: FreeFaces) -> float:
        """Film of some faces. [W/(m2 K)]"""
        assert isinstance(faces.space, Film)
        return self._films.get(faces.space.drive, faces.space.film)

    # -- what goes in ---------------------------------------------------------------------------
    def _driven(self, drives: Drives) -> Array:
        """Heat that films would bring to faces at nought. [W/m]"""
        heat = np.zeros(self.mesh.points)
        for faces in self.films:
            heat[faces.node] = faces.area * self._film(faces) * drives[faces.space.drive]
        return heat

    def _solved(self, per_second: float, fixed: Array, points: Array, drives: Drives) -> Array:
        """Temperatures within a step; too steep slopes settle slowly, too flat ones not at all.

        What is still to come is told from how much less each correction moves than the one before;
        after the first, from how much less the last ones did, trusted by half.
        Where corrections swing to and fro (air that is fed and just begins to turn) the air carries
        what it last did.
        """
        bends, start = self.bends, points
        for turn in range(TURNS):
            factor, slopes = self._factor(per_second), self._slopes
            old, before = points, 0.0
            air = bends.air(points, drives) if turn >= SWINGS else None
            for _ in range(PATIENCE):
                found: Array = factor.solve(fixed + bends.amiss(points, drives, slopes, air))
                moved = float(np.abs(found - points).max())
                if before:
                    self._share = moved / before
                share = self._share if before else sqrt(self._share)
                to_come = moved * share / (1 - share) if share < 1 else moved
                if not bends.count or to_come < self._close:
                    return found
                points, before = found, moved
            cold, hot = min(old.min(), *drives.values()), max(start.max(), *drives.values())
            points = np.clip(points, cold, hot)
            self.guess(points + 10.0 * (turn + 1))
        raise NotSettled(NO_REST)

    # -- answers --------------------------------------------------------------------------------
    def steady(self, drives: Drives) -> Array:
        """Temperatures when nothing changes any more.

        Parameters
        ----------
        drives : mapping
            Temperature of every space. [C]

        Returns
        -------
        array (points,)
            [C]

        Raises
        ------
        NotSettled
            When they cannot be found.
        """
        fixed, (cold, hot) = self._driven(drives), (min(drives.values()), max(drives.values()))
        points = np.zeros(self.mesh.points) + np.mean([*drives.values()])
        for _ in range(TURNS):
            self.guess(points, drives)
            factor, before = self._factor(0.0), np.inf
            for _ in range(PATIENCE):
                solved = factor.solve(fixed + self.bends.amiss(points, drives, self._slopes))
                found: Array = np.clip(solved, cold, hot)
                moved = float(np.abs(found - points).max())
                points = found
                if moved < SETTLED or not self.bends.count:
                    return points
                if moved > before / 2:
                    break  # slopes have changed too much: they are taken anew
                before = moved
        raise NotSettled(NO_REST)

    def run(
        self,
        drives: Callable[[float], Drives],
        until: float,
        step: float,
        start: float | Array = 21.0,
        sudden: bool = True,
    ) -> HeatRun:
        """Temperatures from a start, step by step.

        Parameters
        ----------
        drives : callable
            Temperature of every space [C] at a time [s]. It may jump where a step ends: a stage at
            the end of a step asks for just before it.
        until, step : float
            [s]
        start : float or array (points,)
            [C]
        sudden : bool
            Whether anything jumps at the start, so that it is taken softly.

        Returns
        -------
        HeatRun

        Raises
        ------
        NotSettled
            When what depends on temperature cannot be brought to agree.
        """
        steps = max(round(until / step), 1)
        step = until / steps
        points = np.zeros(self.mesh.points) + start
        course = np.empty((steps + 1, self.mesh.points))
        course[0] = points
        if sudden:
            course[1] = points = self._softly(drives, step, points)
        rate = 1 / (GAMMA * step)
        to_first, to_last = np.zeros((2, self.mesh.points))  # as in the step before
        for n in range(1 if sudden else 0, steps):
            now, old = n * step, points
            first = self._stage(rate, old, old + to_first, drives(now + GAMMA * step))
            between = old + (1 - GAMMA) / GAMMA * (first - old)
            points = self._stage(rate, between, first + to_last, drives((now + step) * NOT_YET))
            to_first, to_last = first - old, points - first
            course[n + 1] = points
        return HeatRun(np.linspace(0.0, until, steps + 1), course)

    def _softly(self, drives: Callable[[float], Drives], step: float, points: Array) -> Array:
        """The first step in simple ones that cannot overshoot, as long as a stage: one matrix."""
        ends, last = GAMMA * step * np.arange(1, SOFT + 1), points
        for end in ends:
            told, last = drives(min(end, step * NOT_YET)), points
            points = self._stage(1 / (GAMMA * step), points, points, told)
        share = float((ends[-1] - step) / (GAMMA * step))
        at_end: Array = share * last + (1 - share) * points
        return at_end

    def _stage(self, rate: float, from_: Array, points: Array, drives: Drives) -> Array:
        fixed = rate * self.mesh.capacity * from_ + self._driven(drives)
        return self._solved(rate, fixed, points, drives)

    def flow(self, points: Array, drives: Drives) -> dict[str, float]:
        """Heat that goes out to each space, of a meter's depth. [W/m]

        Parameters
        ----------
        points : array (points,)
            [C]
        drives : mapping
            [C]

        Returns
        -------
        dict
            By the space's drive; more than nought where heat leaves the mesh.
        """
        out: dict[str, float] = {}

        def add(drive: str, heat: Array) -> None:
            out[drive] = out.get(drive, 0.0) + float(heat.sum())

        for faces in self.films:
            through = (
                faces.area * self._film(faces) * (points[faces.node] - drives[faces.space.drive])
            )
            add(faces.space.drive, through)
        bends, at = self.bends, 0
        crossing, leaving, leaving_other = bends.flows(points, drives)
        for space, count in bends.spaces:
            here, at = slice(at, at + count), at + count
            add(space.drive, leaving[here] + leaving_other[here])
            if isinstance(space, Room):
                add(space.drive, crossing[here])
        return out
