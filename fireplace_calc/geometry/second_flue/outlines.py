"""Outlines of the chimney round two flues, and of the second one."""

from __future__ import annotations

from fireplace_calc.geometry.outlines import Outlines
from fireplace_calc.geometry.solids import Solid


class FlueOutlines(Outlines):
    """The chimney's outside, and the second flue; nothing of that where there is none. [m]"""

    def stack_outside(self, bottom: float, top: float) -> list[Solid]:
        """Outside of the chimney's walls.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        """
        f = self.frame
        return self.along_flue(bottom, top, f.stack_half, f.stack_depth, aside=f.stack_middle)

    def second_bore(self, bottom: float, top: float, wall: float = 0.0) -> list[Solid]:
        """Inside of the second flue, or with a wall its liner's outside, as far as it goes.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        wall : float
            Thickness of the liner. [m]
        """
        second = self.frame.second
        if second is None:
            return []
        low, high = max(bottom, second.start), min(top, second.top)
        return self._liner(second.bore, low, high, wall, second.x)

    def second_unit(self, bottom: float, top: float) -> list[Solid]:
        """Outside of the second flue's units: cast sections, or bare liners.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        """
        second = self.frame.second
        if second is None:
            return []
        if self.design.method != "modular":
            return self.second_bore(bottom, top, second.bore.wall)
        return self.along_flue(
            max(bottom, second.start),
            min(top, second.top),
            second.unit_half,
            second.unit_depth,
            aside=second.x,
        )

    def second_cavity(self, bottom: float, top: float) -> list[Solid]:
        """The second flue with the gap round it, up to the crown.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        """
        f = self.frame
        if f.second is None:
            return []
        return self.along_flue(
            max(bottom, f.second.start),
            min(top, f.crown_bottom),
            f.second.cavity_half,
            f.second.cavity_depth,
            aside=f.second.x,
        )
