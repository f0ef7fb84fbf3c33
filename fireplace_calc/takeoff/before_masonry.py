"""What stands before the masonry: a finish with its bed, mantel and trim, each with what it weighs,
and a metal hood.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.finishes import finishes
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import SQFT
from fireplace_calc.geometry.mantel.on_face import MantelPart, mantel_parts
from fireplace_calc.geometry.mantel.sizes import mantel_place
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.facing import (
    BEFORE_BASE,
    BEFORE_HEARTH,
    facing_of,
    finish_area,
    plastered_area,
)
from fireplace_calc.takeoff.share import Share

FACE, MANTEL, HOOD = "face", "mantel", "hood"
"""Whose shares those are."""


def face_shares(geometry: Geometry) -> Iterator[Share]:
    """Whatever stands before the masonry: a finish; facing brick before the block of
    a raised base, and of a raised hearth that is faced.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    surround = geometry.design.surround
    if surround.face == "brick":
        for name in (BEFORE_BASE, BEFORE_HEARTH):
            face = facing_of(geometry, name)
            if face.volume > 0:
                bare = face.volume * face.laid.share
                yield Share(
                    *(FACE, "Facing brick", "brick", bare, bare * density("brick")),
                    face.volume * face.laid.per_volume,
                    face.note,
                )
                yield _mortar(face.volume - bare)
    else:
        yield from _finish(surround.face, finish_area(geometry), surround.thickness)
    over = plastered_area(geometry)
    thick = surround.thickness if surround.face == "plaster" else None
    yield from _finish("plaster", over, thick, ", over the mantel")


def _finish(face: str, area: float, told: float | None, where: str = "") -> Iterator[Share]:
    """A finish with its bed over so much of the masonry."""
    if area <= 0:
        return
    usual = finishes()[face]
    thick = usual.thickness if told is None else told
    bare = area * thick * (1 - usual.mortar)
    note = f"{feet_inches(thick)} thick with its bed, before the masonry as it is drawn{where}"
    yield Share(
        *(FACE, f"Face {face}", face, bare, bare * density(face)),
        area / SQFT,
        f"{note}; usual, {usual.source.confidence}" if told is None else note,
    )
    if usual.mortar > 0:
        yield _mortar(area * thick * usual.mortar)


def _mortar(volume: float) -> Share:
    return Share(FACE, "Mortar", "mortar", volume, volume * density("mortar"))


def trim_shares(geometry: Geometry) -> Iterator[Share]:
    """Mantel and trim: wood where it burns, else stone, or the brick of a shelf in courses.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    for part in mantel_parts(geometry):
        if part.group.volume <= 0:
            continue
        if part.material == "brick":
            yield from _brick_shelf(geometry, part)
            continue
        of, volume = "wood" if part.burns else "stone", part.group.volume
        unknown = part.told is not None and part.told.projection is None
        yield Share(
            *(MANTEL, f"Mantel and trim, {of}", of, volume, volume * density(of)),
            note=part.name + ("; size unknown, as drawn" if unknown else _made(part)),
        )


def _made(part: MantelPart) -> str:
    """What the list does not hold of a piece of a family."""
    said = ""
    if part.burns and any(run.round for run in part.group.runs):
        said = "; moldings by their own section: the stock they are cut from is more"
    return f"{said}; paint is not counted" if part.material == "painted wood" else said


def _brick_shelf(geometry: Geometry, part: MantelPart) -> Iterator[Share]:
    """Courses of facing brick; their tails lie in the face, of which nothing is taken off."""
    place, volume, whole = mantel_place(geometry), part.group.volume, 0
    for run in part.group.runs:
        left, right, *_ = run.bounds
        whole += ceil((right - left + place.joint) / (place.brick + place.joint) - ROUNDING)
    bare = volume * place.height / place.course * place.brick / (place.brick + place.joint)
    note = f"{part.name} in {len(part.group.runs)} corbelled courses, weighed as it stands out"
    yield Share(
        *(MANTEL, "Mantel and trim, brick", "brick", bare, bare * density("brick")), whole, note
    )
    yield replace(_mortar(volume - bare), part=MANTEL)


def hood(geometry: Geometry) -> Iterator[Share]:
    """The metal hood, bought in one piece and weighed by its maker; none where none is drawn.

    Yields
    ------
    Share
    """
    f = geometry.frame
    if f.hood > 0:
        size = f"{feet_inches(2 * f.half_width)} by {feet_inches(f.hood)}"
        yield Share(HOOD, "Metal hood", "metal", 0.0, 0.0, 1, size)
