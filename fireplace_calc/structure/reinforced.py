"""A rectangular beam of reinforced masonry by working stresses: cracked below, plane above."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from fireplace_calc.base.tables.bars import reinforcing_bar
from fireplace_calc.design.opening import Lintel
from fireplace_calc.structure.figures import PSI, figure


@dataclass(frozen=True, slots=True)
class ReinforcedBeam:
    """A section with bars near its lower face.

    Attributes
    ----------
    breadth, depth : float
        Into the wall, and from the top to the middle of the bars. [m]
    steel : float
        Area of the bars. [m2]
    strength : float
        Of the masonry. [Pa]
    allowed : float
        Tension in the bars. [Pa]
    """

    breadth: float
    depth: float
    steel: float
    strength: float
    allowed: float

    @property
    def neutral(self) -> float:
        r"""Depth of the compressed part over the depth, k. [-]

        .. math:: k = \sqrt{2 \rho n + (\rho n)^2} - \rho n
        """
        modular = figure("steel modulus") / (
            figure("masonry modulus over strength") * self.strength
        )
        share = modular * self.steel / (self.breadth * self.depth)
        return sqrt(2 * share + share**2) - share

    @property
    def lever(self) -> float:
        """From the bars to the middle of compression. [m]"""
        return self.depth * (1 - self.neutral / 3)

    @property
    def modulus(self) -> float:
        """Moment over the stress in the bars. [m3]"""
        return self.steel * self.lever

    def compression(self, moment: float) -> float:
        """Stress at the upper edge.

        Parameters
        ----------
        moment : float
            On the beam. [N m]

        Returns
        -------
        float
            Of the masonry. [Pa]
        """
        return 2 * moment / (self.breadth * self.neutral * self.depth * self.lever)

    @property
    def compression_allowed(self) -> float:
        """At the upper edge. [Pa]"""
        return figure("masonry bending share, reinforced") * self.strength

    @property
    def shear_allowed(self) -> float:
        """Mean over breadth and depth, without stirrups. [Pa]"""
        return figure("masonry shear") * sqrt(self.strength / PSI) * PSI


def beam_shear(force: float, breadth: float, depth: float) -> float:
    """Mean shear of a beam with bars.

    Parameters
    ----------
    force : float
        Shear. [N]
    breadth, depth : float
        Of the section; its depth goes to the middle of the bars. [m]

    Returns
    -------
    float
        Stress. [Pa]
    """
    return force / (breadth * depth)


def reinforced_lintel(
    lintel: Lintel, breast: float, strength: float | None
) -> ReinforcedBeam | None:
    """The lintel as a beam with bars, once all of it is told.

    Parameters
    ----------
    lintel : Lintel
    breast : float
        Its breadth. [m]
    strength : float or None
        Of the masonry. [Pa]

    Returns
    -------
    ReinforcedBeam or None
    """
    bars, bar, low, grade = lintel.bars, lintel.bar, lintel.bar_center, lintel.bar_grade
    if bars is None or bar is None or low is None or grade is None or strength is None:
        return None
    steel = bars * reinforcing_bar(bar).area
    return ReinforcedBeam(
        breast, lintel.height - low, steel, strength, figure(f"bar steel, {grade}")
    )
