"""What has to be known before the first course: how each face is laid, courses that come out even,
block brought to a level, what does not come out.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from fireplace_calc.base.printing import show
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.block_work import LaidBlock
from fireplace_calc.brickwork.courses import odd_courses
from fireplace_calc.brickwork.fitted.gauge import LEAST_PIECE
from fireplace_calc.brickwork.layout import Layout
from fireplace_calc.brickwork.work import split_brick
from fireplace_calc.geometry.parts import Geometry

TEN = 10
"""Courses by which a gauge is told. [-]"""


def before_laying(geometry: Geometry, units: str) -> Iterator[str]:
    """Sentences, in the order of the work.

    Parameters
    ----------
    geometry : Geometry
    units : str
    """
    work = lay_brickwork(geometry)
    for name, laid in (
        ("Block under the hearth slab", work.base_block),
        ("Block under the hearth extension", work.extension_block),
    ):
        if laid:
            yield _block(name, laid, units)
    if not work.layouts:
        yield "Nothing in the firebox is laid brick by brick."
    yield from (_face(layout, units) for layout in work.layouts)
    if even := work.lining_courses:
        fits = "" if even.fits else ", wider than a firebox allows"
        yield (
            f"Lining to the underside of the smoke shelf: {even.courses} courses come out even with"
            f" joints of {show(even.joint, 'length', units)}{fits}."
        )
    if said := split_brick(geometry):
        yield said
    yield from odd_courses(geometry, units)


def _face(layout: Layout, units: str) -> str:
    face = layout.face
    start = "its center line" if face.centred else "the front arris"
    moved = f", moved {show(layout.shifted, 'length', units)}" if layout.shifted else ""
    thin = len(layout.slivers)
    slivers = f"; {thin} under a quarter brick" if thin else ""
    note = f" {layout.note[0].upper()}{layout.note[1:]}." if layout.note else ""
    note += _fitted(layout, units)
    twice = " (two, one mirrored)" if face.alike == 2 else ""
    return (
        f"{face.name.capitalize()}{twice}: {layout.bond} bond, set out from {start}{moved};"
        f" {layout.whole} whole, {layout.cut} cut{slivers}.{note}"
    )


def _fitted(layout: Layout, units: str) -> str:
    """What was done so that no piece is thinner than can be cut."""
    unit, told = layout.unit, partial(show, kind="length", units=units)
    bed, said = unit.course - unit.height, []
    if abs(unit.joint - layout.joint) > ROUNDING:
        said.append(f"joints {told(unit.joint)}, not {told(layout.joint)}")
    elif abs(bed - layout.joint) > ROUNDING:
        way = "wider" if bed > layout.joint else "thinner"
        said.append(f"beds a little {way}, {TEN} courses to {told(TEN * unit.course)}")
    if layout.first < unit.height - ROUNDING:
        said.append(f"the lowest course cut to {told(layout.first)}")
    if layout.closers:
        ends = "1 end" if layout.closers == 1 else f"{layout.closers} ends"
        said.append(f"a three-quarter brick, or two alike, at {ends}")
    least = told(LEAST_PIECE)
    made = f" So that no piece is thinner than {least}: {', '.join(said)}." if said else ""
    if layout.left_out:
        places = "1 place is" if layout.left_out == 1 else f"{layout.left_out} places are"
        made += f" {places} thinner than {least}, which no saw gives: fill with mortar."
    return made


def _block(name: str, laid: LaidBlock, units: str) -> str:
    coursing = laid.coursing
    kinds = (("whole", coursing.whole), ("half-high", coursing.half), ("packing", coursing.packing))
    told = ", ".join(f"{number} {kind}" for kind, number in kinds if number)
    if coursing.sawn:
        told += f"{', ' if told else ''}1 sawn to {show(coursing.sawn, 'length', units)}"
    level = (
        f"level to {'1/16 in' if units == FEET_INCHES else '2 mm'}"
        if coursing.level
        else f"out by {show(abs(coursing.miss), 'length', units)}"
    )
    beds = f"first bed {show(coursing.first_bed, 'length', units)}"
    if coursing.courses > 1:
        beds += f", others {show(coursing.bed, 'length', units)}"
    return f"{name}: courses, {told}; {beds}; {level}."
