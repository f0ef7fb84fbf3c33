"""The bricks of an arch as they are seen from the room."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, sin

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.arch_ring import ArchBricks, laid_arch
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.records import FaceLayout
from fireplace_calc.scene.stuffs import joint_color

LEAST_JOINT = INCH / 8
"""At the soffit, where the joint of a wedge is thinnest. [m]"""
ROOM = 0.05
"""Beyond the ring on every side. [m]"""


def arch_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """The bricks of each ring, as many as are ordered; their joints are wedges.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
        None without a brick arch.
    """
    laid = laid_arch(geometry)
    if laid is None:
        return
    ring = geometry.parts_by_name["arch"].adds[0]
    assert isinstance(ring, ArchRing)
    units = arch_units(ring, laid)
    corners = np.concatenate(units)
    low, high = corners.min(axis=0) - ROOM, corners.max(axis=0) + ROOM
    yield FaceLayout(
        *("brick", (float(low[0]), 0.0, float(low[1]))),
        *(float(high[0] - low[0]), float(high[1] - low[1])),
        tuple(unit - low for unit in units),
        things=("arch",),
        normal=(0.0, -1.0, 0.0),
        repeats=False,
        joint=joint_color(geometry.design),
    )


def arch_units(ring: ArchRing, laid: ArchBricks) -> list[Array]:
    """Outline of every brick of an arch, ring by ring from the soffit, right to left.

    Parameters
    ----------
    ring : ArchRing
    laid : ArchBricks

    Returns
    -------
    list of array, each (4, 2)
        Right and up, counter-clockwise. [m]
    """
    middle = ring.spring + ring.rise - ring.radius
    made = []
    for one in laid.rings:
        turn = 2 * ring.half_angle / one.round
        inner = ring.radius + one.inner * ring.depth + laid.unit.joint / 2 * (one.inner > 0)
        outer = ring.radius + one.outer * ring.depth - laid.unit.joint / 2 * (one.outer < 1)
        half = min(laid.unit.height, turn * inner - LEAST_JOINT) / 2
        for k in range(one.round):
            a = ring.half_angle - (k + 0.5) * turn
            out, across = np.array([sin(a), cos(a)]), np.array([cos(a), -sin(a)])
            here = [inner * out - half * across, inner * out + half * across]
            here += [outer * out + half * across, outer * out - half * across]
            made.append(np.array(here) + (0.0, middle))
    return made
