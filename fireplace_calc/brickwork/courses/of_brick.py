"""Courses of brick: the firebrick of the lining, the face that the room sees, and the walls."""

from __future__ import annotations

from functools import lru_cache
from math import ceil

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.courses.gauged import CUT, even_bed, gauged
from fireplace_calc.brickwork.seen.coursing_of_face import coursed_face, face_joint_widths
from fireplace_calc.brickwork.unit import LEAST_CUT, Unit, block, common_brick
from fireplace_calc.brickwork.work import lining_bricks, lining_courses_of
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.parts import Geometry, Part

LAID_IN_COURSES = ("running", "stack")
"""Bonds of a lining that have level courses."""
WALLS = (
    *("firebox walls", "smoke chamber walls", "masonry round the set"),
    *("breast walls", "shoulder", "chimney walls"),
)
"""Walls of brick or block, one on another."""
LEAST_FACE = 3 * INCH / 4
"""No course of a face is cut lower; the beds take up what is less: our own habit. [m]"""
NOT_COURSED = ("stone", "concrete", "refractory")
"""Walls of these have no courses of one height."""
BY_ITSELF = "sides only: the raked back is laid by itself along its slope"
GOES_ON = "its top courses go on into the next part"


def lining_courses(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Firebrick, or common brick, of the firebox lining; level round the sides.

    Parameters
    ----------
    geometry : Geometry
    part : Part

    Returns
    -------
    tuple of Course
        None of a bond that has no level courses.
    """
    f, d = geometry.frame, geometry.design
    if part.material == "firebrick":
        made = lining_gauge(geometry) if d.firebox.bond in LAID_IN_COURSES else ()
    else:
        unit = common_brick(d)
        bed = unit.course - unit.height
        made = gauged(part.name, "brick", f.slab_top, f.throat, unit.height, bed)
    return made if f.lean <= 0 else tuple(_beside_rake(c, f.back_bend) for c in made)


def lining_gauge(geometry: Geometry) -> tuple[Course, ...]:
    """Courses in which firebrick shows its ends beside the opening, whatever the bond of its faces.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Course
    """
    f, unit = geometry.frame, lining_bricks(geometry).unit
    bed, first = lining_courses_of(geometry)
    return gauged("firebox lining", "firebrick", f.slab_top, f.throat, unit.height, bed, first)


def _beside_rake(course: Course, bend: float) -> Course:
    """A course over whose foot the back leans."""
    if course.top <= bend + ROUNDING:
        return course
    return course._replace(note=f"{course.note}; {BY_ITSELF}" if course.note else BY_ITSELF)


def face_reach(geometry: Geometry) -> float:
    """Up to where the room sees the face: ceiling, mantel, or the end of the masonry.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m]
    """
    return min(face_end(geometry), geometry.frame.crown_bottom)


def facing_courses(geometry: Geometry) -> tuple[Course, ...]:
    """Brick or tile of the face that the room sees: set out from the hearth, up to where the face
    ends and down to the floor.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Course
        Whole ones from the hearth; the lowest on the floor and the highest are cut where it does
        not come out.
    """
    hearth, bed = geometry.frame.hearth, face_joint_widths(geometry)[1]
    step, kind = coursed_face(geometry).course, geometry.design.surround.face
    end = face_reach(geometry)
    made: list[Course] = []
    under = 0.0
    for row in range(-ceil(hearth / step - ROUNDING), ceil((end - hearth) / step)):
        low, high = hearth + row * step + bed, hearth + (row + 1) * step
        bottom, top = max(low, bed), min(high, end)
        if top - bottom < LEAST_FACE - ROUNDING:
            continue
        cut = bottom > low + ROUNDING or top < high - ROUNDING
        note = CUT if cut else ""
        made.append(Course("facing", len(made) + 1, bottom, top, cut, note, kind, bottom - under))
        under = top
    return tuple(made)


def wall_courses(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Brick or block of a wall. Walls of the same units that stand on each other are one work:
    their courses run through from what the lowest stands on, with beds stretched so that they come
    out at the top.

    Parameters
    ----------
    geometry : Geometry
    part : Part

    Returns
    -------
    tuple of Course
        Those whose units begin in the part.
    """
    unit, kind = _unit(geometry, part)
    run = _run_with(geometry, part, unit)
    bottoms = tuple([one.bottom for one in run])
    n, bed = run.index(part), unit.course - unit.height
    return _of_run(part.name, part.top, n, bottoms, run[-1].top, kind, unit.height, bed)


@lru_cache(maxsize=256)
def _of_run(
    name: str,
    end: float,
    n: int,
    bottoms: tuple[float, ...],
    top: float,
    kind: str,
    high: float,
    told: float,
) -> tuple[Course, ...]:
    """Courses of one of several walls on each other, by their bottoms and the top of all. [m]"""
    bottom = bottoms[0]
    even = even_bed(top - bottom, high, told)
    whole = gauged(kind, kind, bottom, top, high, told if even is None else even)
    low = bottoms[n] - ROUNDING
    upto = bottoms[n + 1] - ROUNDING if n + 1 < len(bottoms) else top + 1.0
    mine = [c for c in whole if low <= c.bottom - c.bed < upto]
    made = [
        Course(name, k, c.bottom, c.top, c.cut, c.note, kind, c.bed) for k, c in enumerate(mine, 1)
    ]
    if made and made[-1].top > end + LEAST_CUT:
        made[-1] = made[-1]._replace(note=GOES_ON)
    return tuple(made)


def _run_with(geometry: Geometry, part: Part, unit: Unit) -> list[Part]:
    """The walls of the same units under and over a part, with it, bottom to top."""
    run: list[Part] = []
    for name in WALLS:
        other = geometry.parts_by_name.get(name)
        if other is None or other.volume <= 0 or other.material == "refractory":
            continue
        if other.material in NOT_COURSED or _unit(geometry, other)[0] != unit:
            if part in run:
                break
            run = []
        else:
            run.append(other)
    return run


def _unit(geometry: Geometry, part: Part) -> tuple[Unit, str]:
    if part.material in ("block", "grouted block"):
        return block(geometry), "block"
    return common_brick(geometry.design), "brick"
