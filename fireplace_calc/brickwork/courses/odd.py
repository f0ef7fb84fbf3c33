"""What does not come out in whole courses, said in sentences, and how to even it out."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fireplace_calc.base.printing import show
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.courses.gauged import ODD
from fireplace_calc.brickwork.courses.listed import FACING, course_list
from fireplace_calc.brickwork.courses.of_brick import WALLS, face_reach
from fireplace_calc.brickwork.courses.of_sections import FLUES
from fireplace_calc.brickwork.coursing import SIXTEENTH, even_courses
from fireplace_calc.brickwork.seen.coursing_of_face import coursed_face
from fireplace_calc.brickwork.unit import common_brick
from fireplace_calc.brickwork.work import lining_bricks
from fireplace_calc.geometry.parts import Geometry

WIDEST_FIREBRICK_JOINT = INCH / 4
"""Between firebricks: what the residential code and practice allow, see their rules. [m]"""
BLOCK = {
    "base walls": "Base block",
    "hearth extension base": "Block under the hearth extension",
    "hearth seat base": "Block under the hearth seat",
}
Shown = Callable[[float], str]
"""A length in the reader's units."""


def odd_courses(geometry: Geometry, units: str) -> tuple[str, ...]:
    """What a mason has to know before he sets out: courses that are cut, and what would make them
    whole.

    Parameters
    ----------
    geometry : Geometry
    units : str
        The reader's: ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of str
        Sentences, from the base up; none where everything comes out whole.
    """
    return tuple(_said(geometry, lambda value: show(value, "length", units)))


def _said(geometry: Geometry, long: Shown) -> Iterator[str]:
    found = course_list(geometry)
    for part, name in BLOCK.items():
        yield from (
            f"{name}, course {c.number}: {c.note}, {long(c.height)} high."
            for c in found.of(part)
            if c.cut
        )
    yield from _lining(geometry, found.of("firebox lining"), long)
    chamber = found.of("smoke chamber lining")
    if chamber and chamber[-1].cut:
        top = long(chamber[-1].height)
        yield f"Smoke chamber lining: course {chamber[-1].number}, the top one, is cut to {top}."
    yield from _face(geometry, found.of(FACING), long)
    for part in FLUES[::2]:
        for high in (c for c in found.of(part)[-1:] if c.cut):
            flue = part.removesuffix(" liner").capitalize()
            if found.of(part)[-2:-1] and found.of(part)[-2].cut:
                yield (
                    f"{flue}: sections {high.number - 1} and {high.number}, the top ones, are both"
                    f" cut to {long(high.height)}: one alone would be too thin."
                )
                continue
            yield f"{flue}: section {high.number}, the top one, is cut to {long(high.height)}."
    leaning = [c for c in found.of("flue liner") if c.along]
    if leaning:
        steep = max(leaning, key=lambda c: c.along / c.height)
        yield (
            f"Where the flue shifts sideways, a section has to be {long(steep.along)} long to rise"
            f" {long(steep.height)}."
        )
    for name in WALLS:
        last = found.of(name)[-1:]
        if last and last[0].cut:
            yield (
                f"{name.capitalize()}: the top course at {long(last[0].top)} is cut to"
                f" {long(last[0].height)}, no bed can take it up."
            )


def _lining(geometry: Geometry, courses: tuple[Course, ...], long: Shown) -> Iterator[str]:
    f, last = geometry.frame, courses[-1:]
    if len(courses) > 1 and last[0].cut and courses[-2].cut and len(courses) > 2:
        yield (
            f"Firebox lining: courses {last[0].number - 1} and {last[0].number}, the top ones, are"
            f" both cut to {long(last[0].height)}: one alone would be too thin."
        )
    elif last and last[0].cut:
        top = last[0]
        whole = _whole(geometry, top.kind)
        said = f"Firebox lining: course {top.number}, the top one, is cut to {long(top.height)}."
        even = even_courses(f.throat - f.slab_top, whole, top.bed)
        if top.kind == "firebrick" and SIXTEENTH <= even.joint <= WIDEST_FIREBRICK_JOINT + ROUNDING:
            yield f"{said} {even.courses} whole ones come out with joints of {long(even.joint)}."
        elif geometry.design.piece_set is not None:
            yield said
        else:
            yield (
                f"{said} It is whole with the throat {long(whole - top.height)} higher, and not"
                f" needed with the throat {long(top.height + top.bed)} lower."
            )
    raked = [c for c in courses if c.along and not c.cut]
    if raked:
        steep = max(raked, key=lambda c: c.along / c.height)
        rise = steep.height**2 / steep.along
        yield (
            f"On the raked back a course of {long(steep.height)} takes a piece"
            f" {long(steep.along)} high along the slope. A piece of {long(steep.height)} rises"
            f" {long(rise)}."
        )


def _whole(geometry: Geometry, kind: str) -> float:
    """How high a whole one of the lining's is: its lowest may be cut, and be its only one. [m]"""
    if kind == "firebrick":
        return lining_bricks(geometry).unit.height
    design = geometry.design
    return design.firebox.section_height if kind == "section" else common_brick(design).height


def _face(geometry: Geometry, courses: tuple[Course, ...], long: Shown) -> Iterator[str]:
    if not courses or geometry.design.surround.face != "brick":
        return
    f, step = geometry.frame, coursed_face(geometry).course
    low, high, reach = courses[0], courses[-1], face_reach(geometry)
    if _off(f.hearth, step) > ODD:
        cut = f" The lowest course is cut to {long(low.height)}." if low.cut else ""
        yield (
            f"From floor to hearth it is {_counted(f.hearth, step, long)} of face brick.{cut}"
            f" It comes out even with the hearth at {_nearest(f.hearth, step, long)}."
        )
    head, name = f.spring - f.hearth, "spring line" if f.spring < f.opening_top else "head"
    if _off(head, step) > ODD:
        yield (
            f"From hearth to {name} it is {_counted(head, step, long)} of face brick."
            f" The {name} comes on a bed at {_nearest(head, step, long)} over the hearth."
        )
    shoulder = f.block_top - f.hearth
    if f.block_top < reach - ODD and _off(shoulder, step) > ODD:
        yield (
            f"From hearth to shoulder it is {_counted(shoulder, step, long)} of face brick."
            f" The shoulder begins on a bed at {_nearest(shoulder, step, long)} over the hearth."
        )
    where = "ceiling" if reach >= geometry.design.house.ceiling - ODD else "upper edge of the face"
    if high.cut:
        yield f"Under the {where} the top course of face brick is cut to {long(high.height)}."
    elif reach - high.top > ODD:
        yield f"Under the {where} {long(reach - high.top)} is left: take it up in the beds."


def _off(level: float, step: float) -> float:
    """How far a level is from the nearest course line. [m]"""
    return abs(level - round(level / step) * step)


def _counted(level: float, step: float, long: Shown) -> str:
    """Whole courses, and what is over. [m]"""
    whole = int(level / step + 1e-9)
    rest = long(level - whole * step)
    return f"{whole} {'course' if whole == 1 else 'courses'} and {rest}" if whole else rest


def _nearest(level: float, step: float, long: Shown) -> str:
    """The course lines under and over a level."""
    under = int(level / step + 1e-9)
    return " or ".join(long(n * step) for n in (under, under + 1) if n)
