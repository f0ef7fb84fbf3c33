"""A face of brick in its bond, with its returns, and a face of tile."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork.face_bond import FaceBond, lapped
from fireplace_calc.brickwork.seen.coursing_of_face import (
    bonded_units,
    course_heads,
    coursed_face,
    face_joint_widths,
)
from fireplace_calc.brickwork.unit import Unit, common_brick, facing_brick
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.layouts.turned_corners import Corner, corners
from fireplace_calc.scene.records import FaceLayout
from fireplace_calc.scene.stuffs import joint_color

WIDE, HIGH = 2.2, 2.1
"""About so much is laid before it comes again, so that nobody sees that it does. [m]"""
RETURN, RETURN_HIGH = 0.9, 1.1
"""About so much of a return is laid: out from the corner, and up. [m]"""
STRAY = 0.01
"""A brick that shows no more than this over its own end is seen by its end. [m]"""


def brick_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """Facing brick in its bond, counted from the middle of the hearth as on the elevation; on the
    sides what the corner bricks leave. Beside another face, common brick.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
    """
    d, hearth = geometry.design, geometry.frame.hearth
    if d.surround.face == "brick":
        unit, bond = facing_brick(d), coursed_face(geometry)
        for corner in corners(geometry):
            long = _long_at(bond, unit, corner)
            rings = _return_units(bond, unit, face_joint_widths(geometry), long)
            height = len(long) * bond.course
            yield FaceLayout(
                *("brick", (corner.at, 0.0, hearth), RETURN, height, tuple(rings)),
                # From the corner back, on either side.
                along=(0.0, 1.0, 0.0),
                up=(0.0, 0.0, 1.0),
                things=corner.things,
                normal=(float(corner.side), 0.0, 0.0),
                joint=joint_color(d),
            )
        yield _periodic("brick", geometry, bond, face_joint_widths(geometry), joint_color(d))
        return
    unit = common_brick(d)
    bond = lapped(unit.course, unit.length + unit.joint)
    joints = unit.joint, unit.joint if unit.bed is None else unit.bed
    yield _periodic("brick", geometry, bond, joints, "")


def tile_layouts(geometry: Geometry) -> Iterator[FaceLayout]:
    """Tile, counted likewise.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    FaceLayout
    """
    yield _periodic("tile", geometry, coursed_face(geometry), face_joint_widths(geometry), "")


def _periodic(
    stuff: str, geometry: Geometry, bond: FaceBond, joints: tuple[float, float], joint: str
) -> FaceLayout:
    modules, rows = period(bond)
    units = bonded_units(bond, joints, modules, rows)
    return FaceLayout(
        *(stuff, (0.0, 0.0, geometry.frame.hearth), modules * bond.module, rows * bond.course),
        tuple(units),
        joint=joint,
    )


def period(bond: FaceBond) -> tuple[int, int]:
    """Modules and courses that are laid before they come again.

    Parameters
    ----------
    bond : FaceBond

    Returns
    -------
    tuple of int
        [-]
    """
    rows = max(round(HIGH / bond.course / bond.repeat), 1) * bond.repeat
    return max(round(WIDE / bond.module), 1), rows


def _long_at(bond: FaceBond, unit: Unit, corner: Corner) -> tuple[bool, ...]:
    """Of each course of the repeat: whether the brick at a corner shows more than its end."""
    found = []
    rows = max(round(RETURN_HIGH / bond.course / bond.repeat), 1) * bond.repeat
    for row in range(rows):
        heads = np.array(course_heads(bond, row))
        # How far in from the corner the next head joint stands.
        to_next = np.min((corner.side * (corner.at - heads) - 1e-9) % bond.module)
        found.append(bool(to_next - unit.joint / 2 > unit.depth + STRAY))
    return tuple(found)


def _return_units(
    bond: FaceBond, unit: Unit, joints: tuple[float, float], long: tuple[bool, ...]
) -> list[Array]:
    """Units of a return, course by course from the corner: the end of a brick that shows its length
    in front, else its length; then on in the bond.
    """
    head, bed = joints
    made = []
    for row, in_front in enumerate(long):
        low, high = row * bond.course + bed, (row + 1) * bond.course
        all_ends = bond.headers and len(course_heads(bond, row)) * bond.header > bond.module * 0.9
        rest = unit.depth if all_ends and not in_front else unit.length
        left, wide = 0.0, unit.depth if in_front else unit.length
        while left < RETURN - head:
            right = min(left + wide, RETURN - head)
            made.append(np.array([(left, low), (right, low), (right, high), (left, high)]))
            flemish = bond.name == "Flemish" and wide == unit.length
            left, wide = left + wide + head, unit.depth if flemish else rest
    return made
