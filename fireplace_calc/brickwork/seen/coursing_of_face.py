"""How the face that the room sees is coursed: brick in its bond, and tile."""

from __future__ import annotations

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.face_bond import FaceBond, face_bond, lapped
from fireplace_calc.brickwork.unit import facing_brick
from fireplace_calc.geometry.parts import Geometry

TILE = (6 * INCH, 6 * INCH)
"""Height and length of tiles with their joints, as drawn. [m]"""
TILE_JOINT = INCH / 8
"""As drawn. [m]"""


def coursed_face(geometry: Geometry) -> FaceBond:
    """How the face is coursed: brick in its bond, tile as it is drawn.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    FaceBond
        That of the chosen brick, too, where the face is neither. [m]
    """
    d = geometry.design
    if d.surround.face == "tile":
        return lapped(*TILE)
    return face_bond(facing_brick(d), d.brick.facing_bond)


def face_joint_widths(geometry: Geometry) -> tuple[float, float]:
    """Head joint and bed joint of that face.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        [m]
    """
    if geometry.design.surround.face == "tile":
        return TILE_JOINT, TILE_JOINT
    unit = facing_brick(geometry.design)
    return unit.joint, unit.joint if unit.bed is None else unit.bed


def course_heads(bond: FaceBond, row: int) -> list[float]:
    """Where the head joints of one course stand in its module, from left to right.

    Parameters
    ----------
    bond : FaceBond
    row : int
        Of the course, counted from the hearth. [-]

    Returns
    -------
    list of float
        Middles of the joints. [m]
    """
    found = (at % bond.module for at, rows in bond.heads if row % bond.repeat in rows)
    return sorted(round(at, 9) for at in found)


def bonded_units(bond: FaceBond, joints: tuple[float, float], modules: int, rows: int) -> Array:
    """Outlines of so many modules and courses, laid out from where the bond is set out.

    Parameters
    ----------
    bond : FaceBond
    joints : tuple of float
        Head joint and bed joint. [m]
    modules, rows : int
        [-]

    Returns
    -------
    array, (k, 4, 2)
        Corners counter-clockwise, course by course; a unit may reach over the right end, where it
        comes again at the left. Each stands on its bed, as in the list of courses. [m]
    """
    import numpy as np  # here, so that whoever only counts courses need not wait for it

    head, bed = joints
    made = []
    for row in range(rows):
        ends = course_heads(bond, row)
        starts = np.array([at + k * bond.module for k in range(modules) for at in ends])
        stops = np.append(starts[1:], starts[0] + modules * bond.module)
        low, high = row * bond.course + bed, (row + 1) * bond.course
        left, right = starts + head / 2, stops - head / 2
        corners = [(left, low), (right, low), (right, high), (left, high)]
        made.append(np.stack([np.stack(np.broadcast_arrays(*c), -1) for c in corners], 1))
    return np.concatenate(made)
