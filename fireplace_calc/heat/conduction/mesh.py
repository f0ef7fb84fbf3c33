"""A cut through a building in rectangular cells: what is solid, and what each free face looks on.

Cells carry the heat that is kept; every free face has a point of its own without any, so that what
goes on at a face is asked of the face's own temperature.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from math import pi
from typing import Any

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.heat.conduction.exchange import FREE_FACE, LEVEL

EDGES: dict[str, tuple[Any, Any]] = {
    "left": np.s_[1:-1, 0],
    "right": np.s_[1:-1, -1],
    "bottom": np.s_[0, 1:-1],
    "top": np.s_[-1, 1:-1],
}
"""Where they lie round the cells."""
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
        self._middles = (self.x[1:] + self.x[:-1]) / 2, (self.y[1:] + self.y[:-1]) / 2
        self._spaces = [*self.stuff, *self.edges.values()]
        self._stepped = np.array([s.stepped if isinstance(s, Film) else 1.0 for s in self._spaces])
        self.pairs: list[tuple[IntArray, IntArray, Array, Array]] = []
        self.points = self.cells
        self.center: list[Array] = []
        self._owners: list[IntArray] = [np.arange(self.cells)]
        self._found: list[tuple[Any, ...]] = []
        around = self._surrounded()
        for axis in (0,) if self.ring else (0, 1):
            self._along(axis, around)
        self.capacity = np.zeros(self.points)
        self.capacity[: self.cells] = (c[self.which] * cross)[self.solid]
        self.faces = [*self._sorted_faces()]

    # -- neighbors ------------------------------------------------------------------------------
    def _surrounded(self) -> IntArray:
        """What each cell is, with what lies beyond the edges round it, as places in the spaces;
        -1 where no heat passes.
        """
        around = np.pad(self.which, 1, constant_values=-1)
        for n, edge in enumerate(self.edges, len(self.stuff)):
            around[EDGES[edge]] = n
        return around

    def _along(self, axis: int, around: IntArray) -> None:
        """Neighbors along an axis: conduction between solids, a face where one is a space."""
        level = axis == 0
        low, up = (np.s_[:, :-1], np.s_[:, 1:]) if level else (np.s_[:-1, :], np.s_[1:, :])
        below = around[1:-1, :-2] if level else around[:-2, 1:-1]
        beyond = around[1:-1, 2:] if level else around[2:, 1:-1]
        (toward_low, toward_up), sides = self._halves(axis)
        one, other = self.number[low], self.number[up]
        both = (one >= 0) & (other >= 0)
        here, there = toward_up[low][both], toward_low[up][both]
        share = here / (here + there)
        self.pairs.append((one[both], other[both], share * there, share))
        opens = [
            not isinstance(space, Solid) and not (isinstance(space, Gap) and space.across != axis)
            for space in self._spaces
        ]
        free = np.array([*opens, False])  # the last is found by -1
        self._faces(axis, 1, beyond, free, toward_up, sides[1])
        self._faces(axis, -1, below, free, toward_low, sides[0])

    def _halves(self, axis: int) -> tuple[tuple[Array, Array], tuple[Array, Array]]:
        """Of every cell, toward its low and its high side: conductance from its middle [W/(m K)],
        and size of that side, a meter deep or all round. [m2]
        """
        if self.ring:
            middle = (self.x[1:] + self.x[:-1]) / 2
            with np.errstate(divide="ignore"):  # nothing lies inside the axis
                thin, thick = np.log(middle / self.x[:-1]), np.log(self.x[1:] / middle)
            around = np.broadcast_to(2 * pi * self.x, (1, len(self.x)))
            all_round = 2 * pi * self._k
            return (all_round / thin, all_round / thick), (around[:, :-1], around[:, 1:])
        wide, high = self._wide, self._high[:, None]
        long, step = (high, wide) if axis == 0 else (wide, high)
        half, side = self._k * long / (step / 2), np.broadcast_to(long, self.which.shape)
        return (half, half), (side, side)

    def _faces(
        self, axis: int, sign: int, beyond: IntArray, free: BoolArray, half: Array, area: Array
    ) -> None:
        """Give faces that look one way points of their own, tied to their cells."""
        rows, columns = at = np.nonzero(self.solid & free[beyond])
        space, cell = beyond[at], self.number[at]
        share = self._stepped[space]
        node = self.points + np.arange(len(rows))
        self.points += len(rows)
        self.pairs.append((cell, node, half[at] * share, np.zeros(len(node))))
        middle_x, middle_y = self._middles
        x, y = middle_x[columns], middle_y[rows]
        if axis == 0:
            x = self.x[columns + (sign > 0)]
        else:
            y = self.y[rows + (sign > 0)]
        self.center.append(np.stack([x, y], 1))
        self._owners.append(cell)
        lane, along = (rows, x) if axis == 0 else (columns, y)
        self._found.append((space, node, area[at] * share, lane, along, np.full(len(node), sign)))

    def _sorted_faces(self) -> Iterator[FreeFaces]:
        """All faces space by space; of a gap those that look at each other."""
        which, *told = (np.concatenate(part) for part in zip(*self._found, strict=True))
        first = {space: n for n, space in reversed([*enumerate(self._spaces)])}
        which = np.array([first[space] for space in self._spaces])[which]
        order = np.lexsort((told[3], told[2], which))  # along each lane of each space
        which, *told = (part[order] for part in (which, *told))
        starts = np.flatnonzero(np.diff(which, prepend=-1))
        for start, end in pairwise([*starts.tolist(), len(which)]):
            node, area, lane, along, sign = (part[start:end] for part in told)
            space = self._spaces[which[start]]
            assert not isinstance(space, Solid)
            if not isinstance(space, Gap):
                yield FreeFaces(node, node, area, np.zeros(len(node)), space)
                continue
            one = np.flatnonzero((lane[:-1] == lane[1:]) & (sign[:-1] > 0) & (sign[1:] < 0))
            yield FreeFaces(node[one], node[one + 1], area[one], along[one + 1] - along[one], space)

    @cached_property
    def owner(self) -> IntArray:
        """Of every point, the cell it is or belongs to."""
        return np.concatenate(self._owners)

    # -- asking ---------------------------------------------------------------------------------
    def places(self) -> Array:
        """Middle of every cell, then of every face, (points, 2). [m]"""
        x, y = self._middles
        rows, columns = np.nonzero(self.solid)
        return np.concatenate([np.stack([x[columns], y[rows]], 1), *self.center])
