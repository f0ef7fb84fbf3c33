"""A brick arch, brick by brick: how many rings, round each, and behind one another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.unit import Unit, facing_brick
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.parts import Geometry


@dataclass(frozen=True, slots=True)
class LaidRing:
    """One ring of a brick arch.

    Attributes
    ----------
    inner, outer : float
        Share of the arch's depth where it begins and ends, from the soffit. [-]
    round : int
        Bricks round it, odd for a key. [-]
    """

    inner: float
    outer: float
    round: int


@dataclass(frozen=True, slots=True)
class ArchBricks:
    """All bricks of one arch.

    Attributes
    ----------
    rings : tuple of LaidRing
        From the soffit out.
    deep : int
        Bricks behind one another through the breast. [-]
    unit : Unit
        ``height`` round the ring, ``length`` across it, ``depth`` through the breast. [m]
    """

    rings: tuple[LaidRing, ...]
    deep: int
    unit: Unit

    @property
    def count(self) -> int:
        """Of all rings. [-]"""
        return self.deep * sum(ring.round for ring in self.rings)


def arch_bricks(ring: ArchRing, brick: Unit) -> ArchBricks:
    """Lay a ring on edge or on end, whichever comes nearer to its depth in whole rings.

    Parameters
    ----------
    ring : ArchRing
    brick : Unit
        Facing brick, as in a wall. [m]

    Returns
    -------
    ArchBricks
        Each ring takes the odd number that comes nearest to the brick's own course along the
        middle of that ring; its joints are wedges.
    """
    on_edge = replace(brick, length=brick.depth, depth=brick.length)

    def rows(unit: Unit) -> int:
        return max(round((ring.depth + unit.joint) / (unit.length + unit.joint)), 1)

    def miss(unit: Unit) -> float:
        n = rows(unit)
        return round(abs(n * unit.length + (n - 1) * unit.joint - ring.depth), 6)

    unit = min((on_edge, brick), key=miss)
    number = rows(unit)
    laid = []
    for k in range(number):
        middle = 2 * ring.half_angle * (ring.radius + (k + 0.5) / number * ring.depth)
        odd = 2 * max(round((middle / unit.course - 1) / 2), 1) + 1
        laid.append(LaidRing(k / number, (k + 1) / number, odd))
    behind = (ring.thickness + unit.joint) / (unit.depth + unit.joint)
    return ArchBricks(tuple(laid), max(ceil(behind - ROUNDING), 1), unit)


def laid_arch(geometry: Geometry) -> ArchBricks | None:
    """The brick arch of a design, where it has one.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    ArchBricks or None
        None under a straight head, or an arch of stone.
    """
    arch = geometry.parts_by_name.get("arch")
    if arch is None or arch.material != "brick" or not isinstance(arch.adds[0], ArchRing):
        return None
    return arch_bricks(arch.adds[0], facing_brick(geometry.design))


def voussoirs(geometry: Geometry, inner: Array, outer: Array) -> Iterator[Array]:
    """Joints of a brick arch: between the bricks of each ring, and between the rings.

    Parameters
    ----------
    geometry : Geometry
        With a brick arch; any other yields nothing.
    inner, outer : array, each (n, 2)
        Soffit and back of the ring, from one end to the other. [mm]

    Returns
    -------
    iterator of array, each (k, 2, 2)
        Segments. [mm]
    """
    laid = laid_arch(geometry)
    import numpy as np  # here, so that importing the package does not wait for it

    steps = np.arange(len(inner))
    for ring in laid.rings if laid else ():
        at = np.linspace(0, len(inner) - 1, ring.round + 1)
        low, high = (inner + share * (outer - inner) for share in (ring.inner, ring.outer))
        yield np.stack(
            [np.stack([np.interp(at, steps, c[:, k]) for k in (0, 1)], 1) for c in (low, high)], 1
        )
        if ring.outer < 1:
            yield np.stack([high[:-1], high[1:]], 1)
