"""How much of the masonry shows in the room: facing brick by volume, another finish by area."""

from __future__ import annotations

from math import hypot

from fireplace_calc.brickwork.unit import facing_brick
from fireplace_calc.geometry.parts import Geometry, Part


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
    design, f, laid = geometry.design, geometry.frame, facing_brick(geometry.design)
    deep, ceiling = laid.depth + laid.joint, design.house.ceiling
    if design.surround.face != "brick":
        return 0.0
    if part.name == "shoulder":
        return _over_chamber(geometry, f.flue_start, f.shoulder_top) * deep
    if part.name == "chimney walls":
        return _over_chamber(geometry, f.shoulder_top, f.crown_bottom) * deep
    wide = 2 * f.block_half
    if part.name == "smoke chamber walls":
        return wide * max(min(f.flue_start, ceiling) - f.throat, 0.0) * deep
    lining = 2 * (f.half_width + design.firebox.lining_thickness * hypot(1.0, f.side_slope))
    under_arch = f.opening_area - 2 * f.half_width * (f.spring - f.hearth)
    head = geometry.by_name.get("arch") or geometry.by_name["lintel"]
    head_face = 0.0 if head.material == "steel" else head.volume / f.breast
    face = wide * (min(f.throat, ceiling) - f.slab_top) - lining * (f.spring - f.slab_top)
    return max(face - under_arch - head_face, 0.0) * deep


def finish_area(geometry: Geometry) -> float:
    """A finish over the masonry: the breast from floor to ceiling less the opening.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m2]
    """
    f, ceiling = geometry.frame, geometry.design.house.ceiling
    area = 2 * f.block_half * min(f.flue_start, ceiling) - f.opening_area
    area += _over_chamber(geometry, f.flue_start, f.crown_bottom)
    return max(area, 0.0)


def _over_chamber(geometry: Geometry, low: float, high: float) -> float:
    """Front of shoulder and stack between two levels, as far as the room goes up. [m2]"""
    f, area = geometry.frame, 0.0
    high = min(high, geometry.design.house.ceiling)
    a, b = (min(max(z, f.flue_start), f.shoulder_top) for z in (low, high))
    if b > a:
        over = [1 - (z - f.flue_start) / (f.shoulder_top - f.flue_start) for z in (a, b)]
        area += (b - a) * (2 * f.stack_half + (f.block_half - f.stack_half) * sum(over))
    return area + 2 * f.stack_half * max(high - max(low, f.shoulder_top), 0.0)
