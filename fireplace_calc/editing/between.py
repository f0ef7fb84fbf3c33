"""Refusing an input beside another: the most or the least that fits, and why; what must hold of
wall and seat in the room.
"""

from __future__ import annotations

from math import sqrt

from fireplace_calc.base.printing import named_in_both
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.in_room.cut_corner import corner_of, least_across

LEAST_SEAT, LEAST_NICHE = 10 * INCH, 6 * INCH
"""From front to back to sit on, and clear under its bed: engineering judgement. [m]"""
LEFT_OF_A_WALL = 12 * INCH
"""Of each wall of a room whose corner is cut off; our own choice. [m]"""


def require_at_most(label: str, value: float, limit: float, why: str) -> None:
    """Refuse a length over what fits. [m]

    Raises
    ------
    InputError
        Names the input, the most that fits, and why.
    """
    if value > limit + ROUNDING:
        given, most = named_in_both(value, "length"), named_in_both(limit, "length")
        fits = f"at most {most} fits" if limit > ROUNDING else "there is no room for it"
        raise InputError(f"{label} is {given}, but {fits}: {why}", label, f"at most {most}", value)


def require_at_least(label: str, value: float, limit: float, why: str) -> None:
    """Refuse a length under what fits. [m]

    Raises
    ------
    InputError
        Names the input, the least that fits, and why.
    """
    if value < limit - ROUNDING:
        given, least = named_in_both(value, "length"), named_in_both(limit, "length")
        raise InputError(
            f"{label} is {given}, but at least {least} fits: {why}",
            label,
            f"at least {least}",
            value,
        )


def require_wall(design: Design, frame: Frame) -> None:
    """Off the middle, masonry and hearth end at the end of the wall, where its length is known.

    Parameters
    ----------
    design : Design
    frame : Frame

    Raises
    ------
    InputError
    """
    long, off = design.house.room_length, design.breast.off_center
    if long is None or off == 0 or design.breast.cornered:
        return
    side = design.opening.width / 2 + design.hearth.side if design.hearth.front > 0 else 0.0
    require_at_most(
        "Off the middle of the wall",
        abs(off),
        max(long / 2 - max(frame.block_half, side), 0.0),
        "masonry and hearth end at the end of the wall.",
    )


def require_corner(design: Design, frame: Frame) -> None:
    """A wall across a corner carries masonry, hearth and seat, and leaves some of both walls.

    Parameters
    ----------
    design : Design
    frame : Frame

    Raises
    ------
    InputError
    """
    corner = corner_of(design, frame)
    if corner is None:
        return
    label = "Wall across the corner"
    require_at_least(
        label,
        corner.width,
        least_across(design, frame),
        "masonry, hearth and seat end at the end of that wall.",
    )
    for long, name in ((corner.along, "length"), (corner.away, "width")):
        if long is not None:
            require_at_most(
                label,
                corner.width,
                max(long - LEFT_OF_A_WALL, 0.0) * sqrt(2),
                f"a foot of the room's {name} has to be left beside it.",
            )


def seat_most(design: Design, sign: int) -> float | None:
    """How far a seat reaches beside the hearth at most; unknown where no wall ends it.

    Parameters
    ----------
    design : Design
    sign : int
        -1 at the left, 1 at the right.

    Returns
    -------
    float or None
        [m]
    """
    wall, near = design.house.room_length, design.opening.width / 2 + design.hearth.side
    if wall is None or design.breast.cornered:
        return None
    return max(wall / 2 - sign * design.breast.off_center - near, 0.0)


def require_bench(design: Design, extension_top: float) -> None:
    """A seat carries the hearth on: it needs one in front, slab and bed, and piers beside a niche.

    Parameters
    ----------
    design : Design
    extension_top : float
        Top of the hearth extension over the floor. [m]

    Raises
    ------
    InputError
    """
    seat, hearth = design.seat, design.hearth
    if seat.niche != "none" and not all(
        reach > 0
        for name, reach in (("left", seat.left), ("right", seat.right))
        if seat.niche in (name, "both")
    ):
        raise InputError(
            f"Wood store is {seat.niche}, but there is no seat there: it is a niche in the seat;"
            " give the seat a length first.",
            "Wood store",
            "where there is a seat",
            seat.niche,
        )
    require_at_least("Hearth in front", hearth.front, LEAST_SEAT, "the seat is as deep as that.")
    require_at_least(
        "Seat height",
        extension_top if seat.height is None else seat.height,
        hearth.thickness + hearth.bed + (LEAST_NICHE if seat.niche != "none" else 0.0),
        "slab and bed take so much of it, and a wood store wants 6 in under them."
        if seat.niche != "none"
        else "slab and bed take so much of it; unknown, it is the top of the hearth extension.",
    )
    for sign, reach, stored in seat.stretches():
        name = "left" if sign < 0 else "right"
        if (most := seat_most(design, sign)) is not None:
            require_at_most(f"Seat at the {name}", reach, most, "it ends at the end of the wall.")
        if stored:
            require_at_most(
                "Wood store width",
                seat.niche_width,
                max(reach - 2 * design.base.block_width, 0.0),
                "a pier as thick as the block stands at both sides of it.",
            )
