"""Cells of a cut by the outlines of what stands there."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.geometry.mesh import together
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.heat.conduction.mesh import Solid

LITTLE = 0.05
"""A lining that stands no farther aside of the fire is heated by it, whatever lies between: our
judgement. [m]
"""


@dataclass(frozen=True, slots=True)
class Body:
    """Something solid of the masonry, cut level.

    Attributes
    ----------
    solid : Solid
    rings : tuple of polygon
        Outlines; right of the center line is enough. [m]
    holes : tuple of polygon
        What is taken out of them. [m]
    """

    solid: Solid
    rings: tuple[Polygon, ...]
    holes: tuple[Polygon, ...] = ()


def inside(ring: Polygon, x: Array, y: Array) -> BoolArray:
    """Which places lie in a polygon by how often a ray to the right crosses
    its sides.
    """
    odd = np.zeros(x.shape, bool)
    for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if y0 != y1:
            odd ^= ((y0 > y) != (y1 > y)) & (x < (x1 - x0) * (y - y0) / (y1 - y0) + x0)
    return odd


def in_any(rings: tuple[Polygon, ...], x: Array, y: Array) -> BoolArray:
    """Which places lie in any of some polygons."""
    found = np.zeros(x.shape, bool)
    for ring in rings:
        found |= inside(ring, x, y)
    return found


def reach_the_wall(which: IntArray, fire: int, slot: int, aside: int, x: Array) -> None:
    """Row by row a fire reaches as far as the first solid to its right: a lining that stands a
    little aside of the fire's outline is heated all the same. Into a slot that runs off to the
    side, as behind the facing of a set, it does not: no flame stands in half an inch.

    Parameters
    ----------
    which : array of int (ny, nx)
        What each cell is; changed.
    fire, slot, aside : int
        The fire; hollows that are wider than high, and others.
    x : array
        Edges. [m]
    """
    for n in np.flatnonzero((which == fire).any(axis=1)):
        row = which[n]
        start = int(np.flatnonzero(row == fire)[-1]) + 1
        beyond = np.flatnonzero(~np.isin(row[start:], (slot, aside)))
        if not len(beyond):
            continue
        end = start + beyond[0]
        if x[end] - x[start] < LITTLE or slot not in row[start:end]:
            row[start:end] = fire


def the_narrow_way(which: IntArray, hollow: int, along_x: int, x: Array, y: Array) -> None:
    """Heat crosses a hollow inside the masonry the narrow way.

    Parameters
    ----------
    which : array of int (ny, nx)
        What each cell is; changed.
    hollow, along_x : int
        A hollow, which heat crosses along y; and one that it crosses along x.
    x, y : array
        Edges. [m]
    """
    empty = which == hollow
    if empty.any():
        wide, high = _runs(empty, np.diff(x)), _runs(empty.T, np.diff(y)).T
        which[empty & (wide < high - 1e-9)] = along_x


def _runs(empty: BoolArray, sizes: Array) -> Array:
    """Of every empty cell of a row, the length of the unbroken run round it. [m]"""
    begins = empty.copy()
    begins[:, 1:] &= ~empty[:, :-1]
    run = np.cumsum(begins).reshape(empty.shape) * empty  # nought is none
    long = np.bincount(run.ravel(), np.broadcast_to(sizes, empty.shape).ravel())[run]
    return long.astype(float)


def corners_of(bodies: Iterable[Body]) -> list[Array]:
    """Corners of all that is of one solid, taken together: a joint between two of them is none.

    Parameters
    ----------
    bodies : iterable of Body

    Returns
    -------
    list of array (n, 2)
        [m]
    """
    alike = defaultdict(list)
    for body in bodies:
        alike[body.solid].append((body.rings, body.holes))
    return [ring for cuts in alike.values() for ring in together(cuts)]


def apart(stops: set[float]) -> list[float]:
    """Stops in their order without those that nearly fall together. [m]"""
    kept: list[float] = []
    for stop in sorted(stops):
        if not kept or stop - kept[-1] > 1e-4:
            kept.append(stop)
    return kept
