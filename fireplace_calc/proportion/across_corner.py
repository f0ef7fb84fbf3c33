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


def corner_short(geometry: Framed, units: str = FEET_INCHES) -> tuple[str, str] | None:
    """How much too deep the masonry with its air is for its corner, and how wide a wall would do.

    Parameters
    ----------
    geometry : Framed
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of str or None
        Rounded up; nothing where it fits, and where it stands in a wall.
    """
    corner = corner_of_room(geometry)
    if corner is None or not corner.too_deep:
        return None
    deep, wide = (_up(size, units) for size in (corner.too_deep, corner.needed))
    return show(deep, "length", units), show(wide, "length", units)


def corner_fit(geometry: Framed, units: str = FEET_INCHES) -> str:
    """The same in words.

    Parameters
    ----------
    geometry : Framed
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        Without a full stop; empty where it fits with its air, and where it stands in a wall.
    """
    short, gap = corner_short(geometry, units), geometry.design.clearance
    told = gap.side is not None or gap.back is not None
    if short is None:
        open_ = corner_of_room(geometry) is not None and not told
        return "whether it fits the corner is not checked: its air is not told" if open_ else ""
    air = "with its air" if told else "its air not told and not counted"
    return (
        f"the masonry, {air}, is {short[0]} too deep for the corner: a wall {short[1]} across"
        " would do"
    )


def _up(size: float, units: str) -> float:
    """Rounded up to what a tape finds. [m]"""
    step = INCH / 2 if units == FEET_INCHES else 0.005
    return step * ceil((size - ROUNDING) / step)
