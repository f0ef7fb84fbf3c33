"""Temperatures of a mesh: in the end, or hour by hour.

Conduction never changes, so its matrix is factored once. What depends on temperature (radiation,
air that moves by itself) stands in the matrix with its slope at a guess and is put right on the
other side until nothing moves.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_matrix, csc_matrix
from scipy.sparse.linalg import SuperLU, splu

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.heat.conduction.faces import Drives, face_flows, face_slopes
from fireplace_calc.heat.conduction.mesh import Film, FreeFaces, Gap, HeatMesh

GAMMA = 1 - 2**-0.5
"""Of the two-stage method: second order, and a sudden step dies away at once (L-stable)."""
SOFT = 6
"""Into how many simple steps the first is cut. [-]"""
SETTLED = 1e-4
"""Of a steady answer. [K]"""
CLOSE = 5e-3
"""Of a stage in time. [K]"""
PATIENCE = 5
"""Corrections before the matrix is made anew, about as hot as it has become."""
TURNS = 12
"""Times that is done before giving up."""


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


class NotSettled(ArithmeticError):
    """No temperatures were found that agree with all that depends on them."""


class Conduction:
    """A mesh made ready to be solved.

    Parameters
    ----------
    mesh : HeatMesh
    guess : float or array (points,)
        About what everything will be; an answer does not depend on it. [C]
    """

    def __init__(self, mesh: HeatMesh, guess: float | Array = 80.0) -> None:
        self.mesh = mesh
        self.bends = [faces for faces in mesh.faces if not isinstance(faces.space, Film)]
        self.films = [faces for faces in mesh.faces if isinstance(faces.space, Film)]
        one, other = (np.concatenate([pair[n] for pair in mesh.pairs]) for n in (0, 1))
        conductance = np.concatenate([pair[2] for pair in mesh.pairs])
        self._conduction = _laplacian(mesh.points, one, other, conductance)
        self._factors: dict[float, SuperLU] = {}
        self._films: dict[str, float] = {}
        self._guess = guess
        self.guess(guess)

    def film(self, drive: str, film: float) -> None:
        """Change the film between faces and a driven space, as when a fire goes out. [W/(m2 K)]"""
        self._films[drive] = film
        self.guess(self._guess)

    def guess(self, temperatures: float | Array) -> None:
        """Put what depends on temperature into the matrix as it is at these. [C]"""
        self._guess = points = np.zeros(self.mesh.points) + temperatures
        rows, columns, values = [], [], []
        own = np.zeros(self.mesh.points)
        for faces in self.films:
            np.add.at(own, faces.node, faces.area * self._film(faces))
        self._slopes = []
        for faces in self.bends:
            room = float(np.mean(points)) - 40.0
            slopes = face_slopes(faces, points[faces.node], points[faces.other], room)
            self._slopes.append(slopes)
            across, away, away_other = slopes
            np.add.at(own, faces.node, away)
            if isinstance(faces.space, Gap):
                np.add.at(own, faces.other, away_other)
                rows += [faces.node]
                columns += [faces.other]
                values += [across]
        tied = csc_matrix((self.mesh.points,) * 2)
        if rows:
            met = np.concatenate(rows), np.concatenate(columns)
            tied = _laplacian(self.mesh.points, *met, np.concatenate(values))
        number = np.arange(self.mesh.points)
        self._matrix = (self._conduction + tied + csc_matrix((own, (number, number)))).tocsc()
        self._factors.clear()

    def _factor(self, per_second: float) -> SuperLU:
        if per_second not in self._factors:
            number = np.arange(self.mesh.points)
            kept = csc_matrix((self.mesh.capacity * per_second, (number, number)))
            self._factors[per_second] = splu(
                (self._matrix + kept).tocsc(),
                permc_spec="MMD_AT_PLUS_A",
                diag_pivot_thresh=0.0,
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
            np.add.at(heat, faces.node, faces.area * self._film(faces) * drives[faces.space.drive])
        return heat

    def _corrected(self, points: Array, drives: Drives) -> Array:
        """What the matrix takes out at its slopes, less what really goes. [W/m]"""
        heat = np.zeros(self.mesh.points)
        for faces, (across, away, away_other) in zip(self.bends, self._slopes, strict=True):
            one, other = points[faces.node], points[faces.other]
            crossing, leaving, leaving_other = face_flows(faces, one, other, drives)
            if isinstance(faces.space, Gap):
                step = across * (one - other) - crossing
                np.add.at(heat, faces.node, step + away * one - leaving)
                np.add.at(heat, faces.other, away_other * other - leaving_other - step)
            else:
                np.add.at(heat, faces.node, away * one - leaving)
        return heat

    def _solved(self, per_second: float, fixed: Array, points: Array, drives: Drives) -> Array:
        """Temperatures within a step; too steep slopes settle slowly, too flat ones not at all."""
        hottest = max(points.max(), *drives.values())
        for turn in range(TURNS):
            factor, old = self._factor(per_second), points
            for _ in range(PATIENCE):
                found: Array = factor.solve(fixed + self._corrected(points, drives))
                if not self.bends or np.abs(found - points).max() < CLOSE:
                    return found
                points = found
            points = np.clip(points, min(old.min(), *drives.values()), hottest)
            self.guess(points + 10.0 * (turn + 1))
        raise NotSettled("What depends on temperature does not settle within a step.")

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
        fixed = self._driven(drives)
        points = np.zeros(self.mesh.points) + np.mean([*drives.values()])
        for _ in range(TURNS):
            self.guess(points)
            factor = self._factor(0.0)
            for _ in range(PATIENCE):
                found: Array = factor.solve(fixed + self._corrected(points, drives))
                moved = np.abs(found - points).max()
                points = found
                if moved < SETTLED or not self.bends:
                    return points
        raise NotSettled(f"Temperatures still move by {moved:.2g} K.")

    def run(
        self,
        drives: Callable[[float], Drives],
        until: float,
        step: float,
        start: float | Array = 21.0,
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
        rate = 1 / (GAMMA * step)
        points = np.zeros(self.mesh.points) + start
        course = np.empty((steps + 1, self.mesh.points))
        course[0] = points
        for n in range(SOFT):  # a sudden start: small steps that cannot overshoot
            small = step / SOFT
            points = self._stage(1 / small, points, points, drives((n + 1) * small * (1 - 1e-12)))
        course[1] = points
        for n in range(1, steps):
            now = n * step
            first = self._stage(rate, points, points, drives(now + GAMMA * step))
            between = points + (1 - GAMMA) / GAMMA * (first - points)
            points = self._stage(rate, between, first, drives((now + step) * (1 - 1e-12)))
            course[n + 1] = points
        return HeatRun(np.linspace(0.0, until, steps + 1), course)

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
        for faces in self.bends:
            _, leaving, leaving_other = face_flows(
                faces, points[faces.node], points[faces.other], drives
            )
            add(faces.space.drive, leaving)
            if isinstance(faces.space, Gap):
                add(faces.space.drive, leaving_other)
        return out


def _laplacian(points: int, one: IntArray, other: IntArray, conductance: Array) -> csc_matrix:
    number = np.concatenate([one, other, one, other])
    across = np.concatenate([one, other, other, one])
    value = np.concatenate([conductance, conductance, -conductance, -conductance])
    return coo_matrix((value, (number, across)), shape=(points, points)).tocsc()
