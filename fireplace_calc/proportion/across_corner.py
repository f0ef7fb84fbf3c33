"""A fireplace across a corner in words: whether its masonry has room before the corner."""

from __future__ import annotations

from math import ceil

from fireplace_calc.base.printing import show
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.geometry.frame import Framed
from fireplace_calc.geometry.in_room.cut_corner import CutCorner, corner_of


def corner_of_room(geometry: Framed) -> CutCorner | None:
    """The wall across the corner, where the fireplace stands in one.

    Parameters
    ----------
    geometry : Framed
    """
    return corner_of(geometry.design, geometry.frame)


def corner_fit(geometry: Framed, units: str = FEET_INCHES) -> str:
    """How much too deep the masonry is for its corner, and which wall would do.

    Parameters
    ----------
    geometry : Framed
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        Without a full stop; empty where it fits, and where it stands in a wall.
    """
    corner = corner_of_room(geometry)
    if corner is None or not corner.too_deep:
        return ""
    gap = geometry.design.clearance
    told = gap.side is not None or gap.back is not None
    deep, wide = (
        show(_up(size, units), "length", units) for size in (corner.too_deep, corner.needed)
    )
    air = "with its air" if told else "air not told and not counted"
    return f"masonry, {air}, is {deep} too deep for the corner: a wall {wide} across would do"


def _up(size: float, units: str) -> float:
    """Rounded up to what a tape finds. [m]"""
    step = INCH / 2 if units == FEET_INCHES else 0.005
    return step * ceil((size - ROUNDING) / step)
