"""Which stuff the eye sees on a part: the finish of the face in the room, else the material."""

from __future__ import annotations

from dataclasses import replace

from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.built.mantel import PART, trim_stuff
from fireplace_calc.scene.built.standing import ShownSolid, between_levels

FACED = (
    "base walls",
    "hearth slab",
    "firebox walls",
    "smoke chamber walls",
    "masonry round the set",
    "breast walls",
    "shoulder",
    "chimney walls",
)
"""Masonry that the room sees in its finish, from floor to ceiling, as the list counts the face."""
HEARTH_FRONT = ("hearth extension bed", "hearth extension base", *SEAT[1:])
"""In its finish too where ``hearth.faced`` says so."""
CONCEALED = ("base walls", "hearth slab", *HEARTH_FRONT)
"""Of these, what shows its own material once it is drawn apart."""
FACES = {"stone": "stone face"}
"""What a finish is called among the stuffs, where it is not by its own name."""
SLABS = {"stone": "hearth stone", "tile": "tile", "timber": "boards"}
"""What a hearth extension is to the eye, by its material."""
UNDER, OVER, PLASTERED = "under the floor", "over the ceiling", "over the mantel"
"""What of a part is not in the room, and what is plastered where the face ends at the mantel."""


def faced(geometry: Geometry, part: Part) -> tuple[ShownSolid, ...]:
    """A part as the room sees it; where it goes through floor or ceiling, in two or three.

    Parameters
    ----------
    geometry : Geometry
    part : Part

    Returns
    -------
    tuple of ShownSolid
        What stands in the room bears the part's own key.
    """
    floor, ceiling = 0.0, wall_top(geometry)
    here = ShownSolid(part.name, part.name, part.name, part.material, between_levels(part))
    if part.name not in _finished(geometry):
        return (here,)
    made: list[ShownSolid] = []
    if part.bottom < floor:
        made.append(_outside(here, UNDER, between_levels(part, high=floor)))
    end = face_end(geometry, ceiling)
    if part.top > floor and part.bottom < end:
        made.append(replace(here, body=between_levels(part, floor, end)))
    if end < ceiling and part.top > end and part.bottom < ceiling:
        made.append(_outside(here, PLASTERED, between_levels(part, end, ceiling)))
    if part.top > ceiling:
        made.append(_outside(here, OVER, between_levels(part, low=ceiling)))
    return tuple(made)


def _finished(geometry: Geometry) -> tuple[str, ...]:
    return (*FACED, *HEARTH_FRONT) if geometry.design.hearth.faced else FACED


def _outside(here: ShownSolid, where: str, body: object) -> ShownSolid:
    name = f"{here.part} {where}"
    return replace(here, key=name, name=name, body=body)


def stuff_of(geometry: Geometry, one: ShownSolid, apart: bool = False) -> str:
    """The row of the stuffs that a thing is shown in.

    Parameters
    ----------
    geometry : Geometry
    one : ShownSolid
    apart : bool
        Drawn apart: what the finish conceals shows what it is.

    Returns
    -------
    str
    """
    finished = _finished(geometry)
    if one.part in finished and one.key == one.part and not (apart and one.part in CONCEALED):
        face = geometry.design.surround.face
        return FACES.get(face, face)
    if one.part in finished and one.key.endswith(PLASTERED) and not apart:
        return "plaster"
    if one.part == PART:
        return trim_stuff(geometry, one)
    if one.part in ("hearth extension", "hearth seat"):
        return SLABS.get(one.material, one.material)
    return one.material
