"""A cut through a building in rectangular cells: what is solid, and what each free face looks on.

Cells carry the heat that is kept; every free face has a point of its own without any, so that what
goes on at a face is asked of the face's own temperature.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import pi
from typing import Any

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.heat.conduction.exchange import FREE_FACE, LEVEL

HELD = 1e9
"""Film of a face whose temperature is given. [W/(m2 K)]"""


class NotWorked(ValueError):
    """Heat that is not worked out; the message says why."""


@dataclass(frozen=True, slots=True)
class Solid:
    """What conducts and keeps heat.

    Attributes
    ----------
    conductivity : float
        [W/(m K)]
    capacity : float
        [J/(m3 K)]
    """

    conductivity: float
    capacity: float


@dataclass(frozen=True, slots=True)
class Film:
    """A space at a driven temperature behind a film.

    Attributes
    ----------
    drive : str
        Whose temperature.
    film : float
        ``HELD`` for a face at just that temperature. [W/(m2 K)]
    stepped : float
        Share of a stair's faces that a slanted wall really has. [-]
    """

    drive: str
    film: float = HELD
    stepped: float = 1.0


@dataclass(frozen=True, slots=True)
class Room:
    """A space into which a face radiates and gives off heat by itself.

    Attributes
    ----------
    drive : str
    emissivity : float
        Of the face; the room counts as black. [-]
    coefficient : float
        Of air that moves by itself. [W/m2K(4/3)]
    """

    drive: str = "room"
    emissivity: float = 0.93
    coefficient: float = FREE_FACE


@dataclass(frozen=True, slots=True)
class Gap:
    """An air layer between two faces that look straight at each other.

    Attributes
    ----------
    across : int
        Axis on which heat crosses: 0 is x, 1 is y.
    emittance : float
        Effective. [-]
    air : float
        Heat that air from the room carries through it, of a degree and a square meter. [W/(m2 K)]
    drive : str
        Where that air comes from.
    way : str
        ``level``, ``up`` or ``down``.
    """

    across: int
    emittance: float = 0.8425
    air: float = 0.0
    drive: str = "room"
    way: str = LEVEL


Space = Film | Room | Gap
Stuff = Solid | Space


@dataclass(frozen=True)
class FreeFaces:
    """Free faces of one kind, one entry each.

    Attributes
    ----------
    node, other : array of int
        Number of the face's point; of a gap, of the face across.
    area : array
        A meter deep. [m2]
    width : array
        Of a gap. [m]
    space : Space
    """

    node: IntArray
    other: IntArray
    area: Array
    width: Array
    space: Space


@dataclass
class HeatMesh:
    """Cells, conductances and free faces of a cut.

    Attributes
    ----------
    x, y : array
        Edges of the cells, rising. [m]
    stuff : sequence of Stuff
    which : array of int, (ny, nx)
        What each cell is, as its place in ``stuff``.
    edges : mapping
        ``left``, ``right``, ``bottom``, ``top``: the space beyond that edge; none where no heat
        passes.
    pairs : list of (array, array, array, array)
        Points that touch, what passes [W/(m K)], and the first's share in the face between. [-]
    """

    x: Array
    y: Array
    stuff: Sequence[Stuff]
    which: IntArray
    edges: Mapping[str, Space] = field(default_factory=dict)
    ring: bool = False
    """Whether x is the radius of a round wall, all round; then there is one row."""

    def __post_init__(self) -> None:
        shape = len(self.y) - 1, len(self.x) - 1
        if self.which.shape != shape:
            raise ValueError(f"which is {self.which.shape}, but there are {shape} cells.")
        self.solid = np.array([isinstance(s, Solid) for s in self.stuff])[self.which]
        self.number = np.full(shape, -1)
        self.number[self.solid] = np.arange(self.solid.sum())
        self.cells = int(self.solid.sum())
        wide, high = np.diff(self.x), np.diff(self.y)
        cross = high[:, None] * wide
        if self.ring:
            cross = pi * np.diff(self.x**2)[None, :]
        k = np.array([s.conductivity if isinstance(s, Solid) else 0.0 for s in self.stuff])
        c = np.array([s.capacity if isinstance(s, Solid) else 0.0 for s in self.stuff])
        self._k = k[self.which]
        self._wide, self._high = wide, high
        self.pairs: list[tuple[IntArray, IntArray, Array, Array]] = []
        self._faces: dict[Space, list[tuple[Any, ...]]] = {}
        self.points = self.cells
        self.center: list[Array] = []
        self._owners: list[IntArray] = [np.arange(self.cells)]
        for axis in (0,) if self.ring else (0, 1):
            self._inside(axis)
        self._edges()
        self.capacity = np.zeros(self.points)
        self.capacity[: self.cells] = (c[self.which] * cross)[self.solid]
        self.faces = [made for space in self._faces for made in self._made(space)]

    # -- neighbors ------------------------------------------------------------------------------
    def _inside(self, axis: int) -> None:
        """Neighbors along an axis: conduction between solids, a face where one is a space."""
        low, up = self._halves(axis)
        toward_up, area_up = self._half(axis, 1)
        toward_low, area_low = self._half(axis, -1)
        one, other = self.number[low], self.number[up]
        both = (one >= 0) & (other >= 0)
        here, there = toward_up[low][both], toward_low[up][both]
        share = here / (here + there)
        self.pairs.append((one[both], other[both], share * there, share))
        for solid, beyond, sign, half, area in (
            (low, up, 1, toward_up, area_up),
            (up, low, -1, toward_low, area_low),
        ):
            free = (self.number[solid] >= 0) & (self.number[beyond] < 0)
            rows, columns = np.nonzero(free)
            at = rows + (solid[0].start or 0), columns + (solid[1].start or 0)
            for n in np.unique(self.which[beyond][free]):
                here = self.which[beyond][free] == n
                space = self.stuff[n]
                assert not isinstance(space, Solid)
                place = at[0][here], at[1][here]
                self._face(space, axis, sign, place, half[place], area[place])

    def _half(self, axis: int, sign: int) -> tuple[Array, Array]:
        """Of every cell: conductance from its middle to a side [W/(m K)], and size of that side, a
        meter deep or all round. [m2]
        """
        shape = self.which.shape
        if self.ring:
            edge = self.x[1:] if sign > 0 else self.x[:-1]
            middle = (self.x[1:] + self.x[:-1]) / 2
            with np.errstate(divide="ignore"):  # nothing lies inside the axis
                thick = np.abs(np.log(edge / middle))
            return 2 * pi * self._k / thick, np.broadcast_to(2 * pi * edge, shape)
        long = np.broadcast_to(self._high[:, None] if axis == 0 else self._wide[None, :], shape)
        step = self._wide[None, :] if axis == 0 else self._high[:, None]
        return self._k * long / (step / 2), long

    def _halves(self, axis: int) -> tuple[Any, Any]:
        if axis == 0:
            return (slice(None), slice(None, -1)), (slice(None), slice(1, None))
        return (slice(None, -1), slice(None)), (slice(1, None), slice(None))

    def _edges(self) -> None:
        for name, space in self.edges.items():
            axis, sign, at = {
                "left": (0, -1, np.s_[:, :1]),
                "right": (0, 1, np.s_[:, -1:]),
                "bottom": (1, -1, np.s_[:1, :]),
                "top": (1, 1, np.s_[-1:, :]),
            }[name]
            rows, columns = np.nonzero(self.solid[at])
            rows += (len(self._high) - 1) if name == "top" else 0
            columns += (len(self._wide) - 1) if name == "right" else 0
            half, area = self._half(axis, sign)
            self._face(space, axis, sign, (rows, columns), half[rows, columns], area[rows, columns])

    def _face(
        self,
        space: Space,
        axis: int,
        sign: int,
        at: tuple[IntArray, IntArray],
        half: Array,
        area: Array,
    ) -> None:
        """Give faces points of their own, tied to their cells."""
        if isinstance(space, Gap) and space.across != axis:
            return
        share = space.stepped if isinstance(space, Film) else 1.0
        rows, columns = at
        node = self.points + np.arange(len(rows))
        self.points += len(rows)
        self.pairs.append((self.number[at], node, half * share, np.zeros(len(node))))
        x = (self.x[columns] + self.x[columns + 1]) / 2
        y = (self.y[rows] + self.y[rows + 1]) / 2
        if axis == 0:
            x = self.x[columns + (sign > 0)]
        else:
            y = self.y[rows + (sign > 0)]
        self.center.append(np.stack([x, y], 1))
        self._owners.append(self.number[at])
        lane, along = (rows, x) if axis == 0 else (columns, y)
        self._faces.setdefault(space, []).append(
            (node, area * share, lane, along, np.full(len(node), sign))
        )

    def _made(self, space: Space) -> list[FreeFaces]:
        node, area, lane, along, sign = (
            np.concatenate(part) for part in zip(*self._faces[space], strict=True)
        )
        if not isinstance(space, Gap):
            return [FreeFaces(node, node, area, np.zeros(len(node)), space)]
        order = np.lexsort((along, lane))
        node, area, lane, along, sign = (a[order] for a in (node, area, lane, along, sign))
        first = np.flatnonzero((lane[:-1] == lane[1:]) & (sign[:-1] > 0) & (sign[1:] < 0))
        return [
            FreeFaces(
                node[first], node[first + 1], area[first], along[first + 1] - along[first], space
            )
        ]

    @cached_property
    def owner(self) -> IntArray:
        """Of every point, the cell it is or belongs to."""
        return np.concatenate(self._owners)

    # -- asking ---------------------------------------------------------------------------------
    def places(self) -> Array:
        """Middle of every cell, then of every face, (points, 2). [m]"""
        x, y = (self.x[1:] + self.x[:-1]) / 2, (self.y[1:] + self.y[:-1]) / 2
        rows, columns = np.nonzero(self.solid)
        return np.concatenate([np.stack([x[columns], y[rows]], 1), *self.center])
