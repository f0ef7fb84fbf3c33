"""What shows in the room: the face by what stands behind it, facing brick in its bond, and the area
of another finish.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import hypot

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import SQFT
from fireplace_calc.brickwork.face_bond import face_bond, snapped_from_one
from fireplace_calc.brickwork.seen.breast_seen import (
    behind_seat,
    breast_shown,
    hearth_fronts,
    returns,
)
from fireplace_calc.brickwork.unit import Unit, UnitMasonry, facing_brick
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff.bricks import size_note

BEFORE_BASE = "base walls"
"""What shows of the front under the walls, beside and over a raised hearth."""
BEFORE_HEARTH = "hearth extension base"
"""Front and ends of a raised hearth and its seat, where they are faced."""


def head_shows(geometry: Geometry) -> bool:
    """Whether what carries the wall over the opening is seen from the room.

    An angle lies behind the brick, and the lintel of a set behind its facing; a finish over the
    masonry covers brick and concrete.
    """
    if geometry.frame.lining_front > 0:
        return False
    head = _head(geometry).material
    return head != "steel" and (
        geometry.design.surround.face == "brick" or head not in ("brick", "concrete")
    )


def jambs_show(geometry: Geometry) -> bool:
    """Whether the ends of the lining are seen beside the opening, in a face of brick."""
    if geometry.frame.lining_front > 0:
        return False
    lining = geometry.facing_fire.material
    return geometry.design.surround.face == "brick" and lining not in ("brick", "steel")


def jamb_foot(geometry: Geometry) -> float:
    """From which level the jambs are seen: floor, slab or top of the hearth.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m]
    """
    f = geometry.frame
    return max(f.slab_top, f.extension_top if geometry.design.hearth.front > 0 else 0.0, 0.0)


def _head(geometry: Geometry) -> Part:
    return geometry.parts_by_name.get("arch") or geometry.parts_by_name["lintel"]


def shown_areas(geometry: Geometry) -> dict[str, float]:
    """What of the face shows in the room, as it is drawn: floor to ceiling or to the mantel, less
    the opening, what is seen of lintel, arch and lining, and what the hearth hides; the returns
    too, and nothing behind the wall, where it is known how far the breast stands out of it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of float
        By the part behind it. [m2]
    """
    return _areas_up_to(geometry, face_end(geometry))


def plastered_area(geometry: Geometry) -> float:
    """What of the breast is plastered over a face that ends at the mantel.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        Nought where the face goes to the ceiling. [m2]
    """
    ceiling, end = geometry.design.house.ceiling, face_end(geometry)
    if end >= ceiling:
        return 0.0
    whole, faced = (sum(_areas_up_to(geometry, top).values()) for top in (ceiling, end))
    return max(whole - faced, 0.0)


def _areas_up_to(geometry: Geometry, ceiling: float) -> dict[str, float]:
    """What shows of the breast from the floor up to a level, by the part behind it. [m2]"""
    f, d = geometry.frame, geometry.design
    foot, wide = max(f.slab_top, 0.0), 2 * f.block_half
    apron = max(f.extension_top, 0.0) if d.hearth.front > 0 else 0.0
    half = min(f.half_width + d.hearth.side, f.block_half)
    low, high = (behind_seat(geometry, a, b) for a, b in ((0.0, foot), (foot, f.throat)))
    riser = 2 * f.half_width * max(f.hearth - max(foot, apron), 0.0)
    walls = wide * (min(f.throat, ceiling) - foot) - f.opening_area
    walls -= 2 * f.half_width * max(f.hearth - foot, 0.0)
    walls -= 2 * (half - f.half_width) * max(apron - foot, 0.0)
    if head_shows(geometry):
        walls -= _head(geometry).volume / f.breast
    if jambs_show(geometry):
        ends = d.firebox.lining_thickness * hypot(1.0, f.side_slope)
        walls -= 2 * ends * max(f.spring - jamb_foot(geometry), 0.0)
    walls = max(walls - high, 0.0) + returns(geometry, foot) * max(
        min(f.throat, ceiling) - foot, 0.0
    )
    chamber = breast_shown(geometry, f.throat, min(f.flue_start, ceiling))
    masonry = (
        {"firebox walls": walls, "smoke chamber walls": chamber}
        if d.piece_set is None
        else {"masonry round the set": walls + chamber}
    )
    return {
        BEFORE_BASE: (wide + returns(geometry, foot)) * foot
        - 2 * half * min(apron, foot)
        + riser
        - low,
        BEFORE_HEARTH: hearth_fronts(geometry),
        **masonry,
        "breast walls": breast_shown(geometry, f.flue_start, min(f.block_top, ceiling)),
        "shoulder": breast_shown(geometry, f.block_top, min(f.shoulder_top, ceiling)),
        "chimney walls": breast_shown(geometry, f.shoulder_top, min(f.crown_bottom, ceiling)),
    }


@dataclass(frozen=True, slots=True)
class Facing:
    """Brick of the face before or in one part.

    Attributes
    ----------
    volume : float
        Of brick and joints. [m3]
    laid : UnitMasonry
        How it fills that.
    note : str
        How it was counted.
    """

    volume: float
    laid: UnitMasonry
    note: str


def facing_of(geometry: Geometry, name: str) -> Facing:
    """Brick that shows in the room, one wythe deep, and its headers: whole ones where the wall
    behind is brick and deep enough for their tails, else snapped off, so many out of one brick.

    Parameters
    ----------
    geometry : Geometry
    name : str
        Of the part behind it, a key of ``shown_areas``.

    Returns
    -------
    Facing
        Nothing of it where the face is not brick.
    """
    design, unit = geometry.design, facing_brick(geometry.design)
    area = geometry.once(shown_areas)[name] if design.surround.face == "brick" else 0.0
    behind = {
        "chimney walls": design.chimney.wall,
        "smoke chamber walls": design.smoke_chamber.wall,
    }.get(name, unit.length)
    brick_built = (
        name in geometry.parts_by_name and geometry.parts_by_name[name].material == "brick"
    )
    tails = brick_built and behind > unit.length - ROUNDING
    deep, laid, note = _wythe(unit, design.brick.facing_bond, tails)
    return Facing(area * deep, laid, note)


@lru_cache(maxsize=64)
def _wythe(unit: Unit, bonded: str, tails: bool) -> tuple[float, UnitMasonry, str]:
    """Depth of a face in its bond, headers averaged in [m], how brick fills it, and how it was
    counted; ``tails`` where its headers are whole and reach into the wall.
    """
    bond = face_bond(unit, bonded)
    tail, of_one = (unit.length, 1) if tails else (unit.depth, snapped_from_one(unit))
    ends = bond.headers * bond.header * bond.course
    deep = (1 - ends) * (unit.depth + unit.joint) + ends * (tail + unit.joint)
    bare = unit.height * unit.depth
    filled = bond.stretchers * bare * unit.length + bond.headers * bare * tail
    count = bond.stretchers + bond.headers / of_one
    note = f"one wythe in the room, {bond.name} bond; {size_note(unit)}"
    if bond.headers:
        headers = "tail into the wall" if tails else f"are snapped, {of_one} out of one brick"
        share = f"{bond.headers * SQFT:.2f} headers to the square foot {headers}"
        note = f"{note}; {share}"
    note = f"{note}; {bond.note}" if bond.note else note
    return deep, UnitMasonry(unit, 0, count / deep, filled / deep), note


def facing_volume(geometry: Geometry, part: Part) -> float:
    """Brick of a part that shows in the room: beside and over the opening, over the throat, and up
    to the ceiling.

    Parameters
    ----------
    geometry : Geometry
    part : Part
        Firebox walls, smoke chamber walls, shoulder or chimney walls.

    Returns
    -------
    float
        Brick with its joints; none where the face is not brick. [m3]
    """
    return facing_of(geometry, part.name).volume


def finish_area(geometry: Geometry) -> float:
    """A finish over the masonry; a wall of stone needs no stone before it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m2]
    """
    face, parts = geometry.design.surround.face, geometry.parts_by_name
    return sum(
        area
        for name, area in shown_areas(geometry).items()
        if face != "stone" or name not in parts or parts[name].material != "stone"
    )
