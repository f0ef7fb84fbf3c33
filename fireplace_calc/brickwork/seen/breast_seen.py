"""What the room sees of the breast, its returns, and the front of a raised hearth."""

from __future__ import annotations

from itertools import pairwise

from fireplace_calc.brickwork.unit import facing_brick
from fireplace_calc.geometry.parts import Geometry


def breast_shown(geometry: Geometry, low: float, high: float) -> float:
    """Front and returns over the throat between two levels.

    Parameters
    ----------
    geometry : Geometry
    low, high : float
        Levels. [m]


    Returns
    -------
    float
        [m2]
    """
    f, out = geometry.frame, geometry.design.breast.stands_out
    high = max(low, high)
    bends = {f.block_top, f.shoulder_top}
    if out is not None:
        bends |= {f.front_reaches(out), f.front_reaches(max(out - _corner(geometry), 0.0))}
        back = f.flue_y + f.stack_depth  # over the shoulder
        if back < out < f.block_back:
            share = (f.block_back - out) / (f.block_back - back)
            bends.add(f.block_top + share * (f.shoulder_top - f.block_top))
    levels = sorted({low, high, *(z for z in bends if low < z < high)})
    area = 0.0
    for a, b in pairwise(levels):
        middle = (a + b) / 2  # between two bends the mean
        if out is not None and f.front_at(middle) > out:
            break
        over = (middle - f.block_top) / (f.shoulder_top - f.block_top)
        half = f.block_half + (f.stack_half - f.block_half) * min(max(over, 0.0), 1.0)
        area += (b - a) * (2 * half + returns(geometry, middle))
    return area


def behind_seat(geometry: Geometry, low: float, high: float) -> float:
    """What a seat hides of front and returns between two levels.

    Parameters
    ----------
    geometry : Geometry
    low, high : float
        Levels. [m]


    Returns
    -------
    float
        [m2]
    """
    f, d = geometry.frame, geometry.design
    if not d.seat.drawn:
        return 0.0
    top = f.extension_top if d.seat.height is None else d.seat.height
    near, wide = f.half_width + d.hearth.side, 0.0
    for _, reach, _ in d.seat.stretches():
        wide += max(min(near + reach, f.block_half) - near, 0.0)
        if near + reach > f.block_half:
            wide += returns(geometry, low) / 2
    return wide * max(min(top, high) - low, 0.0)


def returns(geometry: Geometry, z: float) -> float:
    """Both sides of the breast at a level, from the face back to the wall; nothing where nobody has
    told how far it stands out.

    Parameters
    ----------
    geometry : Geometry
    z : float
        Level. [m]


    Returns
    -------
    float
        [m]
    """
    f, out = geometry.frame, geometry.design.breast.stands_out
    if out is None:
        return 0.0
    over = min(max((z - f.block_top) / (f.shoulder_top - f.block_top), 0.0), 1.0)
    back = f.block_back + (f.flue_y + f.stack_depth - f.block_back) * over
    return 2 * max(min(out, back) - f.front_at(z) - _corner(geometry), 0.0)


def _corner(geometry: Geometry) -> float:
    """What of a return is the end of a brick in the front. [m]"""
    design = geometry.design
    return facing_brick(design).depth if design.surround.face == "brick" else 0.0


def hearth_fronts(geometry: Geometry) -> float:
    """Front and free ends of what stands under the slabs of a raised hearth and its seat, where the
    finish of the breast is carried over them.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        Nought where they stay bare. [m2]
    """
    f, d = geometry.frame, geometry.design
    deep = d.hearth.front
    if not d.hearth.faced or deep <= 0:
        return 0.0
    near, wall = f.half_width + d.hearth.side, d.breast.stands_out or 0.0
    high = max(f.extension_top - d.hearth.thickness, 0.0)
    top = f.extension_top if d.seat.height is None else d.seat.height
    under = max(top - d.hearth.thickness, 0.0)
    clear = max(under - d.hearth.bed, 0.0)
    seats = d.seat.stretches()
    area = 2 * near * high + (2 - len(seats)) * deep * high
    for _, reach, stored in seats:
        area += deep * max(high - top, 0.0)
        area += reach * under - (d.seat.niche_width * clear if stored else 0.0)
        area += (deep + (wall if near + reach > f.block_half else 0.0)) * under
        area += deep * max(under - max(f.extension_top, 0.0), 0.0)
    return area
