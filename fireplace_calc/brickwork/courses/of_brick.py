"""Courses of brick: the firebrick of the lining, the face that the room sees, and the walls."""

from __future__ import annotations

from math import ceil

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses.course import Course, Maker
from fireplace_calc.brickwork.courses.gauged import CUT, even_bed, gauged
from fireplace_calc.brickwork.seen.coursing_of_face import coursed_face, face_joint_widths
from fireplace_calc.brickwork.unit import LEAST_CUT, Unit, block, common_brick
from fireplace_calc.brickwork.work import lining_bricks
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
    return gauged("firebox lining", "firebrick", f.slab_top, f.throat, unit.height, unit.joint)


def _beside_rake(course: Course, bend: float) -> Course:
    """A course over whose foot the back leans."""
    if course.top <= bend + ROUNDING:
        return course
    return course._replace(note=f"{course.note}; {BY_ITSELF}" if course.note else BY_ITSELF)


def face_reach(geometry: Geometry) -> float:
    """Up to where the room sees the face: ceiling, mantel, or the end of the masonry. [m]"""
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


def wall_courses(geometry: Geometry) -> dict[str, Maker]:
    """Brick or block of the walls. Walls of the same units are one work: their courses run through
    from what the lowest stands on, with beds stretched so that they come out at the top.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of str and callable
        A course belongs to the part in which its unit begins.
    """
    found: dict[str, Maker] = {}
    run: list[tuple[Part, Unit | None, str]] = []
    for name in WALLS:
        part = geometry.by_name.get(name)
        if part is None or part.volume <= 0 or part.material == "refractory":
            continue
        unit, kind = _unit(geometry, part)
        if run and run[-1][1] != unit:
            found |= _makers(run)
            run = []
        run.append((part, unit, kind))
    return found | (_makers(run) if run else {})


def _unit(geometry: Geometry, part: Part) -> tuple[Unit | None, str]:
    if part.material in ("stone", "concrete"):
        return None, ""
    if part.material in ("block", "grouted block"):
        return block(geometry), "block"
    return common_brick(geometry.design), "brick"


def _makers(run: list[tuple[Part, Unit | None, str]]) -> dict[str, Maker]:
    unit, kind = run[0][1:]
    if unit is None:
        return {}
    parts = [part for part, _, _ in run]
    return {
        part.name: lambda n=n: _of_run(parts, n, unit, kind)  # type: ignore[misc]
        for n, part in enumerate(parts)
    }


def _of_run(parts: list[Part], n: int, unit: Unit, kind: str) -> tuple[Course, ...]:
    bottom, top = parts[0].bottom, parts[-1].top
    told = unit.course - unit.height
    even = even_bed(top - bottom, unit.height, told)
    whole = gauged(kind, kind, bottom, top, unit.height, told if even is None else even)
    ends = [part.bottom for part in parts[1:]]
    low = ends[n - 1] if n else bottom
    high = ends[n] if n < len(ends) else top + 1.0
    mine = [c for c in whole if low - ROUNDING <= c.bottom - c.bed < high - ROUNDING]
    made = [c._replace(part=parts[n].name, number=k) for k, c in enumerate(mine, 1)]
    if made and made[-1].top > parts[n].top + LEAST_CUT:
        made[-1] = made[-1]._replace(note=GOES_ON)
    return tuple(made)
