"""A chimney wall that warms up: liner and masonry in layers, heat going straight through."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables import densities
from fireplace_calc.base.tables.draft import conductivities, heat_capacities
from fireplace_calc.draft.physics.walls import AIR_GAP

SLICE = 0.006
"""No slice of a layer is thicker. [m]"""


@dataclass(frozen=True, slots=True)
class SlicedWall:
    """A wall in slices, from the smoke outwards, each a square meter of it.

    Attributes
    ----------
    stores : array, shape (slices,)
        Heat that a slice takes for each kelvin. [J/(m2 K)]
    passes : array, shape (slices - 1,)
        Conductance between the middles of neighbors. [W/(m2 K)]
    face : float
        From the first middle to the inside face. [W/(m2 K)]
    outside : float
        From the last middle to what lies round the chimney, its film counted in. [W/(m2 K)]
    """

    stores: Array
    passes: Array
    face: float
    outside: float


def sliced_wall(layers: Sequence[tuple[str, float]], film: float) -> SlicedWall:
    """Cut the layers of a wall into slices.

    Parameters
    ----------
    layers : sequence of (str, float)
        Material and thickness [m], ``air gap`` for a closed air space; from the smoke outwards. The
        first is no gap.
    film : float
        Outer film coefficient. [W/(m2 K)]

    Returns
    -------
    SlicedWall

    Raises
    ------
    KeyError
        When conductivity, density or heat capacity of a material is not known.
    """
    stores: list[float] = []
    halves: list[float] = []  # resistance of half a slice
    gaps: list[float] = []  # resistance of what lies before a slice
    gap: float = 0.0
    for material, thickness in layers:
        if material == "air gap":
            gap += AIR_GAP
            continue
        count = max(2, int(np.ceil(thickness / SLICE - 1e-9)))
        each = thickness / count
        heat = densities()[material][0] * heat_capacities()[material][0] * each
        stores += [heat] * count
        halves += [each / conductivities()[material][0] / 2] * count
        gaps += [gap] + [0.0] * (count - 1)
        gap = 0.0
    half, between = np.array(halves), np.array(gaps)
    return SlicedWall(
        np.array(stores),
        1.0 / (half[:-1] + half[1:] + between[1:]),
        float(1.0 / half[0]),
        float(1.0 / (half[-1] + gap + 1.0 / film)),
    )


def warming(wall: SlicedWall, step: float) -> Array:
    r"""What takes the slices from one moment to the next, implicit in time: stable at any step.

    Parameters
    ----------
    wall : SlicedWall
    step : float
        [s]

    Returns
    -------
    array, shape (slices, slices)
        Inverse of the balance of every slice, each divided by what it stores. [-]

    Notes
    -----
    .. math:: C_k (T_k' - T_k) / \Delta t = \sum_j G_{kj} (T_j' - T_k') + q_k
    """
    count = len(wall.stores)
    flows = np.zeros((count, count))
    steps = np.arange(count - 1)
    flows[steps, steps] += wall.passes
    flows[steps + 1, steps + 1] += wall.passes
    flows[steps, steps + 1] -= wall.passes
    flows[steps + 1, steps] -= wall.passes
    flows[-1, -1] += wall.outside
    return np.asarray(np.linalg.inv(np.eye(count) + flows * (step / wall.stores)[:, None]), float)


def warmed(
    wall: SlicedWall, inverse: Array, slices: Array, heat: Array, around: Array, step: float
) -> Array:
    """The slices a step later.

    Parameters
    ----------
    wall : SlicedWall
    inverse : array
        Of ``warming`` for this step. [-]
    slices : array, shape (slices, ...)
        Their temperatures. [K]
    heat : array
        That goes into the inside face, steady through the step. [W/m2]
    around : array
        Temperature of what lies round the chimney. [K]
    step : float
        [s]

    Returns
    -------
    array, shape (slices, ...)
        Temperatures. What went in is stored or has gone out, by the temperatures at the end of the
        step. [K]
    """
    known = slices - around
    known[0] = known[0] + heat * step / wall.stores[0]
    return np.asarray(around + inverse @ known)


def face_temperature(wall: SlicedWall, slices: Array, heat: Array) -> Array:
    """Temperature of the inside face.

    Parameters
    ----------
    wall : SlicedWall
    slices : array, shape (slices, ...)
        Their temperatures. [K]
    heat : array
        That goes in. [W/m2]

    Returns
    -------
    array
        [K]
    """
    return np.asarray(slices[0] + heat / wall.face)
