"""What has to be known before the first course: how each face is laid, courses that come out even,
block brought to a level, what does not come out.
"""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.block_work import LaidBlock
from fireplace_calc.brickwork.courses import odd_courses
from fireplace_calc.brickwork.layout import Layout
from fireplace_calc.brickwork.work import split_brick
from fireplace_calc.geometry.parts import Geometry


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
    twice = " (two, one mirrored)" if face.alike == 2 else ""
    return (
        f"{face.name.capitalize()}{twice}: {layout.bond} bond, set out from {start}{moved};"
        f" {layout.whole} whole, {layout.cut} cut{slivers}.{note}"
    )


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
