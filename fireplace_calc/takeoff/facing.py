"""What shows in the room: facing brick one wythe deep, another finish over the masonry, mantel
and trim, each with what it weighs, and a metal hood.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.finishes import finishes
from fireplace_calc.base.units import SQFT
from fireplace_calc.brickwork.unit import facing_brick, in_mass
from fireplace_calc.design.opening import Trim
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff.bricks import size_note
from fireplace_calc.takeoff.share import Share

FACE, MANTEL, HOOD = "face", "mantel", "hood"
"""Whose shares those are that stand before the masonry."""
BEFORE_BASE = "base walls"
"""What shows of the front under the walls, beside and over a raised hearth."""


def head_shows(geometry: Geometry) -> bool:
    """Whether what carries the wall over the opening is seen from the room.

    An angle lies behind the brick; a finish over the masonry covers brick and concrete.
    """
    head = _head(geometry).material
    return head != "steel" and (
        geometry.design.surround.face == "brick" or head not in ("brick", "concrete")
    )


def jambs_show(geometry: Geometry) -> bool:
    """Whether the ends of the lining are seen beside the opening, in a face of brick."""
    lining = geometry.by_name["firebox lining"].material
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
    return geometry.by_name.get("arch") or geometry.by_name["lintel"]


def shown_areas(geometry: Geometry) -> dict[str, float]:
    """What of the face shows in the room, as it is drawn: floor to ceiling, less the opening, what
    is seen of lintel, arch and lining, and what the hearth hides.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of float
        By the part behind it. [m2]
    """
    f, d = geometry.frame, geometry.design
    ceiling, foot, wide = d.house.ceiling, max(f.slab_top, 0.0), 2 * f.block_half
    apron = max(f.extension_top, 0.0) if d.hearth.front > 0 else 0.0
    half = min(f.half_width + d.hearth.side, f.block_half)
    riser = 2 * f.half_width * max(f.hearth - max(foot, apron), 0.0)
    walls = wide * (min(f.throat, ceiling) - foot) - f.opening_area
    walls -= 2 * f.half_width * max(f.hearth - foot, 0.0)
    walls -= 2 * (half - f.half_width) * max(apron - foot, 0.0)
    if head_shows(geometry):
        walls -= _head(geometry).volume / f.breast
    if jambs_show(geometry):
        ends = d.firebox.lining_thickness * hypot(1.0, f.side_slope)
        walls -= 2 * ends * max(f.spring - jamb_foot(geometry), 0.0)
    return {
        BEFORE_BASE: wide * foot - 2 * half * min(apron, foot) + riser,
        "firebox walls": max(walls, 0.0),
        "smoke chamber walls": wide * max(min(f.flue_start, ceiling) - f.throat, 0.0),
        "shoulder": _over_chamber(geometry, f.flue_start, f.shoulder_top),
        "chimney walls": _over_chamber(geometry, f.shoulder_top, f.crown_bottom),
    }


def _over_chamber(geometry: Geometry, low: float, high: float) -> float:
    """Front of shoulder and stack between two levels, as far as the room goes up. [m2]"""
    f, area = geometry.frame, 0.0
    high = min(high, geometry.design.house.ceiling)
    a, b = (min(max(z, f.flue_start), f.shoulder_top) for z in (low, high))
    if b > a:
        over = [1 - (z - f.flue_start) / (f.shoulder_top - f.flue_start) for z in (a, b)]
        area += (b - a) * (2 * f.stack_half + (f.block_half - f.stack_half) * sum(over))
    return area + 2 * f.stack_half * max(high - max(low, f.shoulder_top), 0.0)


def facing_volume(geometry: Geometry, part: Part) -> float:
    """Brick of a part that shows in the room, one wythe deep: beside and over the opening, over the
    throat, and up to the ceiling.

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
    if geometry.design.surround.face != "brick":
        return 0.0
    laid = facing_brick(geometry.design)
    return shown_areas(geometry)[part.name] * (laid.depth + laid.joint)


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
    face, parts = geometry.design.surround.face, geometry.by_name
    return sum(
        area
        for name, area in shown_areas(geometry).items()
        if face != "stone" or name not in parts or parts[name].material != "stone"
    )


def face_shares(geometry: Geometry) -> Iterator[Share]:
    """Whatever stands before the masonry: a finish; facing brick before the block of a raised base.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    surround = geometry.design.surround
    if surround.face == "brick":
        laid = facing_brick(geometry.design)
        filled = shown_areas(geometry)[BEFORE_BASE] * (laid.depth + laid.joint)
        if filled > 0:
            mass, note = in_mass(laid), f"one wythe in the room; {size_note(laid)}"
            bare = filled * mass.share
            yield Share(
                *(FACE, "Facing brick", "brick", bare, bare * density("brick")),
                filled * mass.per_volume,
                note,
            )
            yield _mortar(filled - bare)
        return
    usual, area = finishes()[surround.face], finish_area(geometry)
    thick = usual.thickness if surround.thickness is None else surround.thickness
    if area > 0:
        bare = area * thick * (1 - usual.mortar)
        note = f"{feet_inches(thick)} thick with its bed, before the masonry as it is drawn"
        yield Share(
            *(FACE, f"Face {surround.face}", surround.face, bare, bare * density(surround.face)),
            area / SQFT,
            f"{note}; usual, {usual.source.confidence}" if surround.thickness is None else note,
        )
        if usual.mortar > 0:
            yield _mortar(area * thick * usual.mortar)


def _mortar(volume: float) -> Share:
    return Share(FACE, "Mortar", "mortar", volume, volume * density("mortar"))


def trim_boxes(geometry: Geometry) -> Iterator[tuple[Trim, tuple[float, float, float, float]]]:
    """Every piece of mantel and trim as it is drawn: one over the opening, two beside it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    iterator of Trim and tuple of float
        The piece; left, right, bottom and top of what is seen from the front. [m]
    """
    f = geometry.frame
    for piece in geometry.design.surround.trim:
        if piece.place == "above":
            low = f.opening_top + piece.drawn_distance
            half = min(f.block_half, f.half_width + max(piece.drawn_distance, 0.1))
            yield piece, (-half, half, low, low + piece.height)
        else:
            near = f.half_width + piece.drawn_distance
            yield piece, (-near - piece.height, -near, f.hearth, f.opening_top)
            yield piece, (near, near + piece.height, f.hearth, f.opening_top)


def trim_shares(geometry: Geometry) -> Iterator[Share]:
    """Mantel and trim: wood where it burns, else stone.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    for piece, (left, right, low, top) in trim_boxes(geometry):
        volume = (right - left) * (top - low) * piece.drawn_projection
        of = "wood" if piece.combustible else "stone"
        note = "; size unknown, as drawn" if piece.projection is None else ""
        if volume > 0:
            yield Share(
                *(MANTEL, f"Mantel and trim, {of}", of, volume, volume * density(of)),
                note=f"{piece.name}{note}",
            )


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
