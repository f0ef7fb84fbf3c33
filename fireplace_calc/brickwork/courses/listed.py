"""The one list of courses: views, order, rod, cut list and order of work read it."""

from __future__ import annotations

from collections.abc import Callable

from fireplace_calc.brickwork.courses.course import Course, CourseList, Maker
from fireplace_calc.brickwork.courses.gauged import gauged
from fireplace_calc.brickwork.courses.of_block import block_courses
from fireplace_calc.brickwork.courses.of_brick import (
    NOT_COURSED,
    WALLS,
    facing_courses,
    lining_courses,
    wall_courses,
)
from fireplace_calc.brickwork.courses.of_sections import (
    FLUES,
    chamber_sections,
    flue_courses,
    lining_sections,
    piece_courses,
)
from fireplace_calc.brickwork.coursing import block_coursing
from fireplace_calc.brickwork.unit import block, firebrick
from fireplace_calc.brickwork.work import usual_joint
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.pieces.roles import PARTS

FACING = "facing"
"""What the face of the room is called in the list: it is no part of the geometry."""
IN_BLOCK = ("base walls", "hearth extension base", "hearth seat base")
LININGS = {
    "refractory": lining_sections,
    "firebrick": lining_courses,
    "brick": lining_courses,
}
COURSED_FACES = ("brick", "tile")


def course_list(geometry: Geometry) -> CourseList:
    """Every course of a fireplace.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CourseList
        Asked again for the same geometry, the same list.
    """
    return geometry.once(_listed)


def _listed(geometry: Geometry) -> CourseList:
    def names() -> tuple[str, ...]:
        return (*(part.name for part in geometry.parts), FACING)

    def maker(name: str) -> Maker | None:
        if name == FACING:
            coursed = geometry.design.surround.face in COURSED_FACES
            return (lambda: facing_courses(geometry)) if coursed else None
        part = geometry.parts_by_name.get(name)
        return _maker(geometry, part) if part is not None and part.volume > 0 else None

    return CourseList(names, maker)


def _maker(geometry: Geometry, part: Part) -> Maker | None:
    """How the courses of a part are made, where it has some."""
    of: Callable[[Geometry, Part], tuple[Course, ...]] | None = None
    if geometry.design.piece_set is not None and part.name in PARTS:
        of = piece_courses
    elif part.name in IN_BLOCK:
        of = _in_block
    elif part.name in FLUES:
        of = flue_courses
    elif part.name == "firebox lining":
        of = LININGS.get(part.material)
    elif part.name == "smoke chamber lining":
        of = {"clay liner": chamber_sections, "firebrick": _chamber_brick}.get(part.material)
    elif part.name in WALLS and part.material not in NOT_COURSED:
        of = wall_courses
    return None if of is None else lambda: of(geometry, part)


def _in_block(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    unit = block(geometry)
    coursing = block_coursing(part.top - part.bottom, unit.height, unit.joint)
    return block_courses(part.name, part.bottom, part.top, coursing)


def _chamber_brick(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    box, thickness = geometry.design.firebox, geometry.design.smoke_chamber.lining_thickness
    unit = firebrick(box.brick, thickness, usual_joint(geometry.design)).unit
    return gauged(part.name, "firebrick", part.bottom, part.top, unit.height, unit.joint)
