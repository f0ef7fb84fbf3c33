"""Lines and levels of a fireplace that is to be cast, counted in marks of the tape. [-]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil, floor, hypot

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.casting.wish import LEAST_COURSE, CastingWish
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.frame_builder import build_frame

UNLINED = ("refractory section", "other approved", "none")
"""Linings whose place the pieces themselves take."""
STEEPEST = 1.0
"""Most that a side closes in per unit of depth; a design that names the set takes no more. [-]"""


@dataclass(frozen=True)
class CastLines:
    """What the pieces are cut along; y counts from the opening plane, x from the center line.

    Attributes
    ----------
    design : Design
        Laid, one upright flue, a straight head.
    wish : CastingWish
    """

    design: Design
    wish: CastingWish

    @cached_property
    def frame(self) -> Frame:
        """Of the laid fireplace."""
        return build_frame(self.design)

    def marks(self, value: float) -> int:
        """A length in marks. [-]"""
        return self.wish.marks(value)

    def whole_marks(self, value: float) -> int:
        """Marks that a length has room for. [-]"""
        return floor(value / self.wish.tick + ROUNDING)

    # -- joints and thicknesses -------------------------------------------------------------------
    @cached_property
    def bed(self) -> tuple[int, int, int]:
        """Least, wanted and most under a piece, none outside what was asked. [-]"""
        return self._joint(self.wish.bed.least, self.wish.bed.wanted, self.wish.bed.most)

    @cached_property
    def perpend(self) -> tuple[int, int, int]:
        """The same beside a piece. [-]"""
        return self._joint(
            self.wish.perpend.least, self.wish.perpend.wanted, self.wish.perpend.most
        )

    def _joint(self, least: float, wanted: float, most: float) -> tuple[int, int, int]:
        tick = self.wish.tick
        low, high = ceil(least / tick - ROUNDING), self.whole_marks(most)
        return low, min(max(self.marks(wanted), low), high), high

    @cached_property
    def half_joint(self) -> int:
        """From the center line to a piece that ends there. [-]"""
        return max(self.perpend[1] // 2, ceil(self.perpend[0] / 2))

    @cached_property
    def least(self) -> int:
        """Lowest piece that is cast. [-]"""
        return self.marks(LEAST_COURSE)

    # -- firebox ----------------------------------------------------------------------------------
    @cached_property
    def lining(self) -> tuple[int, int, int] | None:
        """Firebrick, its joint, and the paving; none where the pieces face the fire. [-]"""
        firebox = self.design.firebox
        if firebox.lining in UNLINED:
            return None
        least = ceil(0.003 / self.wish.tick)  # an eighth of an inch
        return (
            self.marks(firebox.lining_thickness),
            max(self.marks(firebox.joint or 0.0), least),
            self.marks(firebox.floor),
        )

    @property
    def behind(self) -> int:
        """From the face of the firebrick to the pieces. [-]"""
        return self.lining[0] + self.lining[1] if self.lining else 0

    @property
    def floor(self) -> int:
        """Paving on the base plates. [-]"""
        return self.lining[2] if self.lining else 0

    @cached_property
    def slant(self) -> float:
        """Along the opening for one square to a splayed side. [-]"""
        return hypot(1.0, self.frame.side_slope)

    @cached_property
    def half(self) -> int:
        """Half the firebox between the pieces, in front. [-]"""
        return self.marks(self.frame.half_width) + round(self.behind * self.slant)

    @cached_property
    def deep(self) -> int:
        """Of the firebox to the back pieces. [-]"""
        return self.marks(self.frame.depth) + self.behind

    @property
    def lip(self) -> int:
        """Where the walls' rebate begins. [-]"""
        return self.deep - self.perpend[1]

    @property
    def rear(self) -> int:
        """Back of the pieces. [-]"""
        return self.deep + self.marks(self.wish.back)

    @cached_property
    def narrow(self) -> int:
        """Half the firebox at the lip. [-]"""
        inside = self.marks(self.frame.back_width / 2) + self.behind * self.slant
        run = self.marks(self.frame.half_width) - self.marks(self.frame.back_width / 2)
        return round(
            inside + run * (self.marks(self.frame.depth) - self.lip) / self.marks(self.frame.depth)
        )

    @cached_property
    def thick(self) -> int:
        """Of a wall, along the opening. [-]"""
        return ceil(self.marks(self.wish.wall) * self.slant)

    @property
    def reach(self) -> int:
        """Half the width of the pieces in front. [-]"""
        return self.half + self.thick

    @property
    def rebate(self) -> int:
        """How far the back stands behind the walls' lips, its joint counted in. [-]"""
        return round(self.marks(self.wish.wall) * 3 / 7)

    def side(self, y: int) -> int:
        """Half the firebox between the pieces at a depth. [-]"""
        return round(self.half - (self.half - self.narrow) * min(y, self.lip) / self.lip)

    # -- throat and flue --------------------------------------------------------------------------
    @cached_property
    def breast(self) -> int:
        """Depth of the lintel. [-]"""
        return self.marks(self.frame.breast)

    @property
    def behind_lintel(self) -> int:
        """Where the top walls begin. [-]"""
        return self.breast + self.perpend[1]

    @cached_property
    def slot(self) -> tuple[int, int, int]:
        """Front and back of the throat, and half its width. [-]"""
        f = self.frame
        middle = (f.half_at(f.throat_front) + f.half_at(f.throat_back)) / 2
        front = max(self.marks(f.throat_front), self.breast)
        return front, front + self.marks(f.throat_back - f.throat_front), self.marks(middle)

    @cached_property
    def bore(self) -> tuple[int, ...]:
        """Across, or left to right and front to back. [-]"""
        bore = self.frame.bore
        across = self.marks(bore.width)
        return (across,) if bore.round else (across, self.marks(bore.depth))

    @cached_property
    def shell(self) -> int:
        """From the bore to the outside of a flue piece. [-]"""
        return self.marks(self.frame.bore.wall) + self.marks(self.design.flue.casing)

    @cached_property
    def flue_middle(self) -> int:
        """Of the bore. [-]"""
        return self.marks(self.frame.flue_y)

    def around_bore(self, more: int) -> tuple[int, int, int]:
        """Half the width, front and back of what stands so far outside the bore. [-]"""
        half, deep = (ceil(side / 2) + more for side in (self.bore[0], self.bore[-1]))
        return half, self.flue_middle - deep, self.flue_middle + deep


def refuse_uncut(design: Design) -> None:
    """Refuse what cannot be cut into pieces.

    Parameters
    ----------
    design : Design

    Raises
    ------
    InputError
        One sentence: what stands against it, and what to do.
    """
    said = ""
    if design.piece_set is not None or design.pieces.set:
        said = "stands on a set already; take the laid design it comes from"
    elif design.opening.head != "straight":
        said = "has an arch over its opening; only a straight head is cut, so choose one"
    elif design.flue.offset:
        said = "has a flue that shifts sideways; only an upright one is cut, so take the offset out"
    elif design.second_flue.drawn:
        said = "has a second flue; a set carries one, so leave the second out"
    elif design.firebox.lining == STEEL_UNIT:
        said = "has a steel unit for its firebox; choose firebrick or a refractory section"
    elif build_frame(design).side_slope > STEEPEST:
        said = "closes in by more than its depth at either side; make the back wider"
    if said:
        raise InputError(
            f"This fireplace cannot be cut into pieces: it {said}.",
            "design",
            "a laid fireplace with a straight head and one upright flue",
            None,
        )
