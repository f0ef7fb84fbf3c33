"""The skeleton of a fireplace: every level, line and slope that its parts are hung on. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, hypot, inf
from typing import Protocol

from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.geometry.second_flue.placing import Beside

LEAST_SETBACK = INCH
"""Less than this no stack is set back behind the breast: a step that nobody can lay or weather, our
own habit. [m]
"""


class Framed(Protocol):
    """A design with its frame: all that most checks and the draft read. A geometry is one, and so
    is a sketch without parts.
    """

    @property
    def design(self) -> Design:
        """What somebody chose."""

    @property
    def frame(self) -> Frame:
        """Every level and line of it."""


def flue_count(told: int | None, frame: Frame) -> int | None:
    """Flues in the chimney: as told, but no fewer than are drawn beside each other.

    Parameters
    ----------
    told : int or None
        Nobody may have counted them. [-]
    frame : Frame

    Returns
    -------
    int or None
        [-]
    """
    return told if frame.second is None else max(told or 0, 2)


@dataclass(frozen=True, slots=True)
class Frame:
    """Levels count from the finished room floor, y from the opening plane away from the room, x
    from the center line. [m]

    Up to ``block_top`` the masonry is as wide and deep as at the firebox. ``side_slope`` is how far
    a side closes in per unit of depth [-]; ``bore`` is the flue's inside; ``stack_middle`` is how
    far the middle of the chimney stands to the right of the flue's.
    """

    # levels, bottom to top
    footing_bottom: float
    footing_top: float
    grade: float
    slab_bottom: float
    slab_top: float
    hearth: float
    extension_top: float
    back_bend: float
    spring: float
    opening_top: float
    throat: float
    taper_top: float
    flue_start: float
    block_top: float
    shoulder_top: float
    crown_bottom: float
    crown_top: float
    liner_top: float
    # plan
    half_width: float
    side_slope: float
    back_width: float
    breast: float
    depth: float
    throat_front: float
    throat_back: float
    block_half: float
    block_back: float
    # flue
    bore: Bore
    unit_half: float
    unit_depth: float
    cavity_half: float
    cavity_depth: float
    stack_half: float
    stack_depth: float
    stack_middle: float
    flue_y: float
    offset: float
    offset_bottom: float
    offset_top: float
    # roof, at the chimney
    uphill_contact: float
    downhill_contact: float
    highest_within_reach: float
    highest_within_reach_is: str
    hood: float
    """How far a metal hood hangs down from the head."""
    second: Beside | None = None
    """A second flue in the same chimney."""
    adjusted: tuple[str, ...] = ()
    """What was drawn otherwise than asked, because the parts would not fit: one sentence each."""

    @property
    def lining_front(self) -> float:
        """Where the firebox lining begins behind the opening plane. [m]"""
        return 0.0

    @property
    def beds(self) -> tuple[tuple[float, float], ...]:
        """Bottom and top of every bed under the flue, of a set of pieces; none without one. [m]"""
        return ()

    @property
    def highest(self) -> float:
        """Top of the higher liner. [m]"""
        return self.liner_top if self.second is None else max(self.liner_top, self.second.top)

    def half_at(self, y: float) -> float:
        """Half the width between the splayed sides. [m]

        Parameters
        ----------
        y : float
            Depth from the opening plane. [m]
        """
        return self.half_width - self.side_slope * y

    def front_at(self, z: float) -> float:
        """How far the front of the masonry has drawn back from the face over its shoulder. [m]

        Parameters
        ----------
        z : float
            Level, from the slab up. [m]
        """
        rise, back = self.shoulder_top - self.block_top, self.flue_y - self.stack_depth
        return back * min(max((z - self.block_top) / rise, 0.0), 1.0)

    def front_reaches(self, y: float) -> float:
        """Level over which the front lies farther back than ``y``; infinite where it never does,
        and where ``y`` is nought the level of the shoulder. [m]

        Parameters
        ----------
        y : float
            Depth behind the face. [m]
        """
        rise, back = self.shoulder_top - self.block_top, self.flue_y - self.stack_depth
        return inf if y >= back else self.block_top + rise * y / back

    @property
    def lean(self) -> float:
        """Forward lean of the raked back per unit of height. [-]"""
        raked = self.throat - self.back_bend
        return (self.depth - self.throat_back) / raked if raked > 0 else 0.0

    def back_at(self, z: float) -> float:
        """Depth of the back from the opening plane. [m]

        Parameters
        ----------
        z : float
            Level, from hearth to throat. [m]
        """
        return self.depth - self.lean * max(z - self.back_bend, 0.0)

    @property
    def throat_width(self) -> float:
        """Width between the sides at the front of the throat. [m]"""
        return 2 * self.half_at(self.throat_front)

    @property
    def throat_area(self) -> float:
        """Real free area of the throat, a trapezoid between splayed sides. [m2]"""
        return (self.throat_back - self.throat_front) * (
            self.half_at(self.throat_front) + self.half_at(self.throat_back)
        )

    @property
    def clear_top(self) -> float:
        """Top of what stays open: underside of a hood, else of the head. [m]"""
        return self.opening_top - self.hood

    @property
    def clear_area(self) -> float:
        """What a hood leaves of the opening's area. [m2]"""
        if self.hood <= 0:
            return self.opening_area
        return 2 * self.half_width * (self.clear_top - self.hearth)

    @property
    def opening_area(self) -> float:
        """Of the masonry, true under an arch: the rectangle up to the spring line, and the
        segment of a circle over it. [m2]
        """
        full = 2 * self.half_width * (self.opening_top - self.hearth)
        rise = self.opening_top - self.spring
        if rise <= 0:
            return full
        radius = (self.half_width**2 + rise**2) / (2 * rise)
        half_angle = 2 * atan(rise / self.half_width)
        segment = radius**2 * half_angle - self.half_width * (radius - rise)
        return full - 2 * self.half_width * rise + segment

    @property
    def chamber_slopes(self) -> dict[str, float]:
        """Lean of each inside face of the smoke chamber from the vertical. [rad]"""
        rise = self.taper_top - self.throat
        flue_front = self.flue_y - self.bore.depth / 2
        side = abs(self.throat_width - self.bore.width) / 2
        flue_back = self.flue_y + self.bore.depth / 2
        return {
            "sides": atan(side / rise),
            "front": atan(abs(flue_front - self.throat_front) / rise),
            "back": atan(abs(flue_back - self.depth) / rise),
        }

    @property
    def chamber_least_section(self) -> float:
        """Smallest level section of the smoke chamber, bottom or top. [m2]

        The top is the mouth of the flue: of a tabled rectangular liner it is the table's own net
        area, not the rectangle that its walls, rounded in print, leave.
        """
        bottom = self.throat_width * (self.depth - self.throat_front)
        mouth = None if self.bore.round else self.bore.table_area
        return min(bottom, mouth or self.bore.width * self.bore.depth)

    @property
    def offset_slope(self) -> float:
        """Lean of the offset part of the flue from the vertical. [rad]"""
        rise = self.offset_top - self.offset_bottom
        return atan(self.offset / rise) if rise > 0 else 0.0

    @property
    def flue_length(self) -> float:
        """Along the center line of the flue, start to top. [m]"""
        rise = self.offset_top - self.offset_bottom
        return self.liner_top - self.flue_start - rise + hypot(rise, self.offset)

    def shift_at(self, z: float) -> float:
        """Sideways shift of the flue's center line. [m]

        Parameters
        ----------
        z : float
            Level; the shift grows evenly over the offset. [m]
        """
        rise = self.offset_top - self.offset_bottom
        return (
            0.0 if rise <= 0 else self.offset * min(max((z - self.offset_bottom) / rise, 0.0), 1.0)
        )
