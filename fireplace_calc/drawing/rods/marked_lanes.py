"""What is marked on a rod: lanes of courses side by side, and levels with names."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.brickwork.courses import FACING, Course, course_list
from fireplace_calc.geometry.parts import Geometry

SET = "set"
"""What is built in heights of its own: base, pieces, sections, flue."""
LINED = "lined"
"""Firebrick that stands before pieces."""
FACED = "face"
"""Brick that is seen, and over it the brick of the chimney."""
LETTERS = {
    "base walls": "B",
    "base plates": "P",
    "firebox lining": "L",
    "firebox walls": "W",
    "lintel": "H",
    "throat back": "T",
    "smoke shelf": "T",
    "throat front": "T",
    "smoke chamber lining": "S",
    "smoke chamber walls": "C",
    "flue liner": "F",
    "flue casing": "F",
}
"""Before the number of a course, by its part."""
IN_HEIGHTS = (
    "base walls",
    "base plates",
    "firebox walls",
    "lintel",
    "throat back",
    "smoke chamber lining",
    "smoke chamber walls",
)
"""Parts of the set lane beside lining and flue, where they are not laid in brick."""


@dataclass(frozen=True, slots=True)
class Lane:
    """Courses that stand over one another.

    Attributes
    ----------
    name : str
    courses : tuple of Course
        From the bottom up.
    """

    name: str
    courses: tuple[Course, ...]


@dataclass(frozen=True, slots=True)
class NamedLevel:
    """A level with a name. ``measured`` ones are what everything is measured from. [m]"""

    level: float
    name: str
    measured: bool = False


def lanes(geometry: Geometry) -> tuple[Lane, ...]:
    """Lanes of a rod, from the left; one that would be empty is left out.

    Parameters
    ----------
    geometry : Geometry
    """
    listed = course_list(geometry)

    def of(part: str) -> tuple[Course, ...]:
        return tuple(c for c in listed.of(part) if c.kind not in ("brick", "tile"))

    lining, pieces = of("firebox lining"), of("firebox walls")
    flue = of("flue liner") or of("flue casing")
    heights = [course for part in IN_HEIGHTS for course in of(part)]
    heights += flue if pieces else [*lining, *flue]
    face = listed.of(FACING)
    over = face[-1].top if face else geometry.frame.shoulder_top
    over = max(over, geometry.frame.shoulder_top) if not face else over
    stack = tuple(c for c in listed.of("chimney walls") if c.bottom >= over - 1e-6)
    made = (
        Lane(SET, tuple(_once(sorted(heights, key=lambda c: c.bottom)))),
        Lane(LINED, lining if pieces else ()),
        Lane(FACED, (*face, *stack)),
    )
    return tuple(lane for lane in made if lane.courses)


def _once(courses: list[Course]) -> list[Course]:
    """Of pieces that stand beside each other, one."""
    kept: list[Course] = []
    for course in courses:
        if not kept or course.bottom > kept[-1].bottom + 1e-6:
            kept.append(course)
    return kept


def course_name(course: Course) -> str:
    """What a course is called on the rod: its letter and number, of brick the number alone.

    Examples
    --------
    >>> course_name(Course("base walls", 3, 0.0, 0.2))
    'B3'
    """
    if course.part in ("lintel", "throat back", "smoke shelf", "throat front", "base plates"):
        return LETTERS[course.part]
    letter = "" if course.kind in ("brick", "tile") else LETTERS.get(course.part, "")
    return f"{letter}{course.number}"


def named_levels(geometry: Geometry) -> tuple[NamedLevel, ...]:
    """Levels that have a name, from the footing up.

    Parameters
    ----------
    geometry : Geometry
    """
    f, design = geometry.frame, geometry.design
    found = [
        NamedLevel(f.footing_bottom, "footing, under"),
        NamedLevel(f.footing_top, "footing, top"),
        NamedLevel(f.grade, "grade"),
        NamedLevel(f.slab_bottom, "slab, under"),
        NamedLevel(f.slab_top, "slab, top"),
        NamedLevel(0.0, "FLOOR", True),
        NamedLevel(f.hearth, "HEARTH", True),
        NamedLevel(f.opening_top, "opening, top"),
        NamedLevel(f.throat, "throat"),
        NamedLevel(f.taper_top, "chamber, top"),
        NamedLevel(f.flue_start, "flue starts"),
        NamedLevel(f.block_top, "shoulder begins"),
        NamedLevel(f.shoulder_top, "shoulder, top"),
        NamedLevel(design.house.ceiling, "ceiling"),
        NamedLevel(f.downhill_contact, "roof, downhill"),
        NamedLevel(f.uphill_contact, "roof, uphill"),
        NamedLevel(f.crown_bottom, "crown, under"),
        NamedLevel(f.crown_top, "crown, top"),
        NamedLevel(f.liner_top, "flue, top"),
    ]
    if f.spring < f.opening_top - 1e-6:
        found.append(NamedLevel(f.spring, "arch springs"))
    if f.back_bend < f.throat - 1e-6 and f.lean > 0:
        found.append(NamedLevel(f.back_bend, "back bends"))
    if f.second is not None:
        found += [
            NamedLevel(f.second.start, "second flue starts"),
            NamedLevel(f.second.top, "second flue, top"),
        ]
    return _together(sorted(found, key=lambda one: one.level))


def _together(levels: list[NamedLevel]) -> tuple[NamedLevel, ...]:
    """Names that share a level share a mark."""
    kept: list[NamedLevel] = []
    for one in levels:
        if kept and abs(kept[-1].level - one.level) < 1e-4:
            last = kept.pop()
            name = f"{last.name}, {one.name}" if not one.measured else f"{one.name}, {last.name}"
            kept.append(NamedLevel(last.level, name, last.measured or one.measured))
        else:
            kept.append(one)
    return tuple(kept)
