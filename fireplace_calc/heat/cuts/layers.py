"""One line of layers away from the heat: through a flue's wall, or down through a hearth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.mesh import Film, Gap, HeatMesh, Room, Solid, Space
from fireplace_calc.heat.cuts.wall_plan import WOOD_SENDS


@dataclass(frozen=True, slots=True)
class HeatLayer:
    """Something that the line goes through.

    Attributes
    ----------
    name : str
    thick : float
        [m]
    stuff : Solid or Gap
    """

    name: str
    thick: float
    stuff: Solid | Gap


def layer_mesh(
    layers: Sequence[HeatLayer],
    inside: Film,
    outside: str,
    cell: float,
    start: float = 0.0,
    ring: bool = False,
) -> HeatMesh:
    """Layers in cells between a film and a room.

    Parameters
    ----------
    layers : sequence of HeatLayer
        The hot one first; the last is wood.
    inside : Film
        At the first.
    outside : str
        What the room is driven by.
    cell : float
        About how thick a cell is; no layer has less than four. [m]
    start : float
        Where the first begins: of rings the radius inside. [m]
    ring : bool
        Whether they are rings.
    """
    edges, which = [start], []
    stuff: list[Solid | Space] = []
    for n, layer in enumerate(layers):
        count = 1 if isinstance(layer.stuff, Gap) else max(round(layer.thick / cell), 4)
        edges += (edges[-1] + layer.thick * np.arange(1, count + 1) / count).tolist()
        which += [n] * count
        stuff.append(layer.stuff)
    return HeatMesh(
        np.array(edges),
        np.array([0.0, 1.0]),
        stuff,
        np.array([which]),
        {"left": inside, "right": Room(outside, WOOD_SENDS)},
        ring=ring,
    )


def at_edge(mesh: HeatMesh, points: Array, place: float) -> Array:
    """Temperature of a face that lies across the line: its own where it is free, else between the
    two cells that touch there, as their conductances have it.

    Parameters
    ----------
    mesh : HeatMesh
        Of one row.
    points : array (n, points)
        [C]
    place : float
        [m]

    Returns
    -------
    array (n,)
        [C]
    """
    n = int(np.abs(mesh.x - place).argmin())
    left, right = (int(k) for k in np.pad(mesh.number[0], 1, constant_values=-1)[n : n + 2])
    if left >= 0 and right >= 0:
        k = [_conductance(mesh, n - 1), _conductance(mesh, n)]
        joined: Array = (k[0] * points[:, left] + k[1] * points[:, right]) / sum(k)
        return joined
    free = np.flatnonzero(np.abs(mesh.places()[:, 0] - place) < 1e-9)
    found: Array = points[:, free[0]]
    return found


def _conductance(mesh: HeatMesh, n: int) -> float:
    """From the middle of a cell to its end, for its face. [W/(m2 K)]"""
    solid = mesh.stuff[mesh.which[0, n]]
    assert isinstance(solid, Solid)
    return float(solid.conductivity / (mesh.x[n + 1] - mesh.x[n]))
