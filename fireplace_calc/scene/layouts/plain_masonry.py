"""Block, and the tile and liner joints of what is not the face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.block_work import LaidBlock
from fireplace_calc.brickwork.courses import Course, course_list
from fireplace_calc.brickwork.face_bond import lapped
from fireplace_calc.brickwork.seen.coursing_of_face import TILE, TILE_JOINT, bonded_units
from fireplace_calc.brickwork.unit import block
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.records import FaceLayout


def plain_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """Block where it is seen from outside, and tile beside a face that has its own.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
    """
    work, unit = lay_brickwork(geometry), block(geometry)
    front = work.extension_block
    levels = course_list(geometry).of("hearth extension base")
    rings = _front_of(front, levels) if front is not None else []
    if rings:
        corners = np.concatenate(rings)
        low, size = corners.min(axis=0), np.ptp(corners, axis=0)
        yield FaceLayout(
            *("block", (float(low[0]), 0.0, float(low[1])), float(size[0]), float(size[1])),
            tuple(ring - low for ring in rings),
            along=(1.0, 0.0, 0.0),
            up=(0.0, 0.0, 1.0),
            things=("hearth extension base",),
            normal=(0.0, -1.0, 0.0),
            repeats=False,
        )
    joints = unit.joint, unit.joint if unit.bed is None else unit.bed
    bond = lapped(unit.course, unit.length + unit.joint)
    rings = list(bonded_units(bond, joints, 4, 6))
    foot = (0.0, 0.0, geometry.frame.footing_top)
    for stuff in ("block", "grouted block"):
        yield FaceLayout(stuff, foot, 4 * bond.module, 6 * bond.course, tuple(rings))
    if geometry.design.surround.face != "tile":
        tile = lapped(*TILE, name="stack")
        rings = list(bonded_units(tile, (TILE_JOINT, TILE_JOINT), 8, 8))
        yield FaceLayout("tile", (0.0, 0.0, 0.0), 8 * TILE[1], 8 * TILE[0], tuple(rings))


def _front_of(laid: LaidBlock, levels: Sequence[Course]) -> list[Array]:
    """Every block in the front row, course by course, as it is seen from the room."""
    made = []
    for course, level in zip(laid.courses, levels, strict=False):
        front = min((ring[0][1] for ring, _ in course.blocks), default=0.0)
        row = sorted((ring[0][0], ring[1][0]) for ring, _ in course.blocks if ring[0][1] == front)
        low, top = level.bottom, level.top
        for left, right in row:
            made.append([(left, low), (right, low), (right, top), (left, top)])
    return [np.array(ring) for ring in made]
