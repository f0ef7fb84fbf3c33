"""A wall that cuts off the corner of a room at 45 degrees, and what the masonry needs of the
triangle behind it. [m]

The room has axes of its own beside the fireplace's: their nought is the corner that is cut off, the
first runs along the wall at the right, the second, negative, along the wall at the left.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, inf, sqrt

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame

TURNED = -45.0
"""From the fireplace's axes to those of the room, to the left. [deg]"""
SIXTEENTH = INCH / 16
"""What is short by less fits: no tape finds it. [m]"""
FAR = 100.0
"""As far as a wall goes on whose length nobody has told. [m]"""
STEP = INCH / 2
"""A wall whose width nobody has told is drawn in whole steps, rounded up. [m]"""


@dataclass(frozen=True, slots=True)
class CutCorner:
    """The wall across the corner.

    Attributes
    ----------
    left, right : float
        Its ends, from the center line of the opening. [m]
    wall : float
        Its plane, behind the face. [m]
    needed : float
        Width at which the masonry with its air has room before the corner. [m]
    along, away : float or None
        The walls of the room at its right and at its left, from corner to corner. [m]
    """

    left: float
    right: float
    wall: float
    needed: float
    along: float | None
    away: float | None

    @property
    def width(self) -> float:
        """Of the wall across the corner. [m]"""
        return self.right - self.left

    @property
    def leg(self) -> float:
        """How much it takes of each wall of the room. [m]"""
        return self.width / sqrt(2)

    @property
    def corner(self) -> tuple[float, float]:
        """The corner that is cut off, right and away from the face. [m]"""
        return (self.left + self.right) / 2, self.wall + self.width / 2

    @property
    def too_deep(self) -> float:
        """How much deeper the masonry with its air is than the corner; nought where it fits. [m]"""
        short = self.needed - self.width
        return short / 2 if short > SIXTEENTH else 0.0

    def own(self, x: float, y: float) -> tuple[float, float]:
        """A place in the axes of the room. [m]

        Parameters
        ----------
        x, y : float
            Right of the center line, and behind the face. [m]

        Examples
        --------
        >>> corner = CutCorner(-1.0, 1.0, 0.0, 2.0, None, None)
        >>> [round(v, 3) for v in corner.own(1.0, 0.0)]
        [1.414, 0.0]
        """
        a, b = self.corner
        return (x - a - y + b) / sqrt(2), (x - a + y - b) / sqrt(2)

    def fire(self, along: float, away: float) -> tuple[float, float]:
        """A place in the fireplace's axes, of one in the room's. [m]

        Parameters
        ----------
        along, away : float
            Along the wall at the right; along the wall at the left, negative. [m]
        """
        a, b = self.corner
        return a + (along + away) / sqrt(2), b + (away - along) / sqrt(2)

    def walls_before(self, y: float) -> list[list[tuple[float, float]]]:
        """Lines of the room's walls, those beside the one across from a depth on. [m]

        Parameters
        ----------
        y : float
            Behind the face, no farther than the wall across. [m]
        """
        along, away, out = self.along or FAR, self.away or FAR, self.wall - y
        lines = [
            [(self.left - out, y), self.fire(0.0, -away)],
            [(self.right + out, y), self.fire(along, 0.0)],
        ]
        if self.along is not None:
            lines.append([self.fire(along, 0.0), self.fire(along, -away)])
        if self.away is not None:
            lines.append([self.fire(0.0, -away), self.fire(along, -away)])
        return lines

    def deep(self, half: float = 0.0) -> float:
        """How far the room goes straight on before the face, over a strip of its floor.

        Parameters
        ----------
        half : float
            Half the width of the strip. [m]

        Returns
        -------
        float
            Without end where the room is not known. [m]
        """
        x, y = self.corner
        ends = [
            sqrt(2) * long - y + side * x - half
            for long, side in ((self.along, 1), (self.away, -1))
            if long is not None
        ]
        return min(ends, default=inf)


def corner_of(design: Design, frame: Frame) -> CutCorner | None:
    """The wall across the corner, where the fireplace stands in one.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    CutCorner or None
        A wall whose width nobody has told is as wide as the masonry with its air needs.

    Notes
    -----
    At 45 degrees a place fits before the corner where its distance from the middle line and its
    depth behind the wall add up to no more than half the wall; air beside a slanting wall takes the
    square root of two times as much. Of the told air spaces beside and behind the larger counts,
    for the same framing is beside and behind; one that nobody has told counts nought.
    """
    breast, gap, house = design.breast, design.clearance, design.house
    if not breast.cornered:
        return None
    wall, off = breast.stands_out or 0.0, breast.off_center
    air = max(gap.side or 0.0, gap.back or 0.0)
    needed = max(2 * (_reach(design, frame) - wall + sqrt(2) * air), 0.0)
    width = breast.across
    if width is None:
        width = STEP * ceil((max(needed, least_across(design, frame)) - ROUNDING) / STEP)
    return CutCorner(
        -width / 2 - off, width / 2 - off, wall, needed, house.room_length, house.room_width
    )


def least_across(design: Design, frame: Frame) -> float:
    """Width of a wall in which masonry, hearth and seat find room.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    float
        [m]
    """
    off, sides = design.breast.off_center, [frame.block_half, frame.block_half]
    if design.hearth.front > 0:
        hearth, seat = frame.half_width + design.hearth.side, design.seat
        sides = [max(frame.block_half, hearth + reach) for reach in (seat.left, seat.right)]
    return 2 * max(sides[0] - off, sides[1] + off)


def _reach(design: Design, frame: Frame) -> float:
    """Distance from the middle line of the corner and depth behind the face, together, of what
    comes nearest to the corner: the breast's back edges, or a stack that leans aside. [m]
    """
    off = design.breast.off_center
    stack = frame.stack_middle + frame.shift_at(design.house.ceiling) + off
    return max(
        frame.block_half + abs(off) + frame.block_back,
        abs(stack) + frame.stack_half + frame.flue_y + frame.stack_depth,
    )
