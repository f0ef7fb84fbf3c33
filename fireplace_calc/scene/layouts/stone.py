"""A face of stone in its bond; stones go on round the corners."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import ceil, floor

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork.seen.random_rubble import HIGH, WIDE, random_rubble
from fireplace_calc.brickwork.seen.stone_face import Ends, stones
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.layouts.turned_corners import Corner, corners
from fireplace_calc.scene.records import FaceLayout
from fireplace_calc.scene.stuffs import joint_color

STUFF = "stone face"
STEP = 0.5
"""A face is laid out to whole steps, so that most moves of a slider leave it as it is. [m]"""
ROUND = 0.4
"""So much is laid beyond the corners, to go on round them. [m]"""


def stone_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """Stones of the face, counted from the middle of the hearth, in front and round each corner.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
    """
    f, surround = geometry.frame, geometry.design.surround
    if surround.stone_bond == "random rubble":
        left, low, wide, high, rings = 0.0, 0.0, WIDE, HIGH, random_rubble()
    else:
        half = ceil((max(f.block_half, f.half_width + 0.3) + ROUND) / STEP) * STEP
        low = floor(min(-f.hearth, 0.0) / STEP) * STEP
        top = ceil((wall_top(geometry) - f.hearth) / STEP) * STEP
        left, wide, high = -half, 2 * half, top - low
        rings = _from_the_corner(surround.stone_bond, (left, half, low, top))
    repeats, level = surround.stone_bond == "random rubble", f.hearth + low

    def laid(corner: Corner | None) -> FaceLayout:
        if corner is None:
            return FaceLayout(
                *(STUFF, (left, 0.0, level), wide, high, rings),
                repeats=repeats,
                joint=joint_color(geometry.design),
            )
        # The outlines go on where the front leaves off, backward along the side.
        front = -corner.side * (corner.at - left)
        return FaceLayout(
            *(STUFF, (corner.at, front, level), wide, high, rings),
            along=(0.0, float(corner.side), 0.0),
            up=(0.0, 0.0, 1.0),
            things=corner.things,
            normal=(float(corner.side), 0.0, 0.0),
            repeats=repeats,
            joint=joint_color(geometry.design),
        )

    yield from (laid(corner) for corner in corners(geometry))
    yield laid(None)


@lru_cache(maxsize=8)
def _from_the_corner(bond: str, ends: Ends) -> tuple[Array, ...]:
    """The stones of a face, counted from its lower left corner."""
    return tuple(ring - (ends[0], ends[2]) for ring in stones(bond, ends))
