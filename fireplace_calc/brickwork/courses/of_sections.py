"""Courses of what is set in sections: flues, refractory linings, and the pieces of a set."""

from __future__ import annotations

from functools import lru_cache
from math import hypot

from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.courses.gauged import gauged
from fireplace_calc.brickwork.work import usual_joint
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.pieces.roles import PARTS

FLUES = ("flue liner", "flue casing", "second flue liner", "second flue casing")
RAKED = "goes up the raked back: its back piece is higher along the slope"
LEANING = "leans with the flue: it is higher along the slope"


def flue_courses(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Sections of a flue, each on its bed.

    Parameters
    ----------
    geometry : Geometry
    part : Part
        A liner or its casing, of the first flue or of the second.

    Returns
    -------
    tuple of Course
        Of a flue that shifts sideways, how high those that lean are along their slope.
    """
    flue, f = geometry.design.flue, geometry.frame
    made = gauged(part.name, "section", part.bottom, part.top, flue.section_height, flue.joint)
    if not f.offset or f.offset_top <= f.offset_bottom:
        return made
    return tuple(
        _leaning(
            course,
            hypot(course.height, f.shift_at(course.top) - f.shift_at(course.bottom)),
            LEANING,
        )
        for course in made
    )


def lining_sections(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Refractory sections of the firebox lining, level all round, each on its bed.

    Parameters
    ----------
    geometry : Geometry
    part : Part

    Returns
    -------
    tuple of Course
        Over the bend of the back, how high the back's piece is along the slope.
    """
    d, f = geometry.design, geometry.frame
    high = d.firebox.section_height
    return _raked(part.name, f.slab_top, f.throat, high, usual_joint(d), f.back_bend, f.lean)


@lru_cache(maxsize=64)
def _raked(
    part: str, bottom: float, top: float, high: float, joint: float, bend: float, lean: float
) -> tuple[Course, ...]:
    """Sections that lean from the level of a bend on, by so much per unit of height."""
    made = gauged(part, "section", bottom, top, high, joint)
    if lean <= 0:
        return made
    longer = hypot(1.0, lean) - 1
    return tuple(
        _leaning(c, c.height + longer * max(c.top - max(c.bottom, bend), 0.0), RAKED) for c in made
    )


def _leaning(course: Course, along: float, why: str) -> Course:
    if along - course.height < 1e-6:
        return course
    note = f"{course.note}; {why}" if course.note else why
    return course._replace(along=along, note=note)


def chamber_sections(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Clay sections that line a smoke chamber, each on its bed; upright heights. [m]"""
    box = geometry.design.firebox
    return gauged(
        part.name,
        "section",
        part.bottom,
        part.top,
        box.section_height,
        usual_joint(geometry.design),
    )


def piece_courses(geometry: Geometry, part: Part) -> tuple[Course, ...]:
    """Pieces of a set that belong to a part, lift by lift.

    Parameters
    ----------
    geometry : Geometry
        Of a design with a set.
    part : Part
        One of ``PARTS``.

    Returns
    -------
    tuple of Course
        Of a lift whose pieces differ in height, from the lowest foot to the highest head.
    """
    from fireplace_calc.geometry.from_set.set_up import set_up  # wakes manifold3d

    up, f = set_up(geometry.design), geometry.frame
    start = f.hearth - up.floor - up.read.plate_top
    made: list[Course] = []
    for n, here in enumerate(up.assembly.by_lift):
        mine = [one for one in here if one.piece.role in PARTS[part.name]]
        if not mine:
            continue
        under = up.assembly.tops[n - 1] if n else up.assembly.start
        foot, head = min(one.level for one in mine), max(one.top for one in mine)
        made.append(
            Course(
                *(part.name, len(made) + 1, start + foot, start + head),
                kind="piece",
                bed=foot - under,
            )
        )
    return tuple(made)
