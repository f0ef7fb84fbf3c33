"""What a mason sets a segmental arch out by: center, skewbacks, ordinates from a straight edge, and
the bricks of each ring with their joints.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, sin, sqrt

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.arch_ring import laid_arch
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.parts import Geometry

WEDGE = (INCH / 8, 3 * INCH / 4)
"""Whole bricks are laid with wedge joints where these are no narrower at the soffit and no wider at
the back: our own habit. [m]
"""


@dataclass(frozen=True, slots=True)
class VoussoirRing:
    """One ring of an arch, brick by brick. A joint stands at each skewback too.

    Attributes
    ----------
    bricks : int
        Round it; the middle one is the key. [-]
    inner, outer : float
        Radius of its soffit and of its back. [m]
    angle : float
        From skewback to skewback. [rad]
    thick : float
        Of a brick as it comes, round the ring. [m]
    joint : float
        Of the brick's own bond: what bricks cut to a taper are laid with. [m]
    """

    bricks: int
    inner: float
    outer: float
    angle: float
    thick: float
    joint: float

    @property
    def wedge(self) -> tuple[float, float]:
        """Joint between whole bricks at soffit and back. [m]"""
        narrow, wide = (
            (self.angle * r - self.bricks * self.thick) / (self.bricks + 1)
            for r in (self.inner, self.outer)
        )
        return narrow, wide

    @property
    def taper(self) -> tuple[float, float]:
        """Width of a brick cut to a taper, at soffit and back, all joints alike. [m]"""
        low, high = (
            (self.angle * r - (self.bricks + 1) * self.joint) / self.bricks
            for r in (self.inner, self.outer)
        )
        return low, high

    @property
    def depth(self) -> float:
        """Soffit to back. [m]"""
        return self.outer - self.inner

    @property
    def whole(self) -> bool:
        """Whether whole bricks go round with joints that can be laid."""
        narrow, wide = self.wedge
        return narrow >= WEDGE[0] - ROUNDING and wide <= WEDGE[1] + ROUNDING

    @property
    def tapered(self) -> bool:
        """Whether they are cut instead: the brick has to be as thick as the taper at its back."""
        return not self.whole and self.taper[1] <= self.thick + ROUNDING and self.taper[0] > 0


@dataclass(frozen=True, slots=True)
class ArchSetting:
    """An arch as it is set out.

    Attributes
    ----------
    ring : ArchRing
    rings : tuple of VoussoirRing
        From the soffit out; empty for an arch of stone.
    deep : int
        Bricks behind one another. [-]
    """

    ring: ArchRing
    rings: tuple[VoussoirRing, ...]
    deep: int

    @property
    def center(self) -> float:
        """How far the center lies under the spring line. [m]"""
        return self.ring.radius - self.ring.rise

    @property
    def skewback(self) -> tuple[float, float]:
        """Across and up, from the springing to the back of the ring. [m]"""
        lean = self.ring.half_angle
        return self.ring.depth * sin(lean), self.ring.depth * cos(lean)

    def ordinate(self, x: float) -> float:
        """Height of the soffit over a straight edge laid from springing to springing.

        Parameters
        ----------
        x : float
            From the center line. [m]

        Returns
        -------
        float
            [m]
        """
        return sqrt(max(self.ring.radius**2 - x * x, 0.0)) - self.center

    def stations(self, step: float) -> tuple[float, ...]:
        """Where ordinates are taken: every step from the center line, the springing last.

        Parameters
        ----------
        step : float
            [m]

        Returns
        -------
        tuple of float
            [m]
        """
        half = self.ring.span / 2
        inner = tuple(k * step for k in range(int(half / step) + 1) if k * step < half - ROUNDING)
        return (*inner, half)


def arch_setting(geometry: Geometry) -> ArchSetting | None:
    """How the arch of a design is set out.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    ArchSetting or None
        Nothing under a straight head.
    """
    part = geometry.parts_by_name.get("arch")
    if part is None or not isinstance(part.adds[0], ArchRing):
        return None
    ring, laid = part.adds[0], laid_arch(geometry)
    if laid is None:
        return ArchSetting(ring, (), 0)
    unit, angle = laid.unit, 2 * ring.half_angle
    rings = tuple(
        VoussoirRing(
            one.round,
            ring.radius + one.inner * ring.depth,
            ring.radius + one.outer * ring.depth,
            angle,
            unit.height,
            unit.joint,
        )
        for one in laid.rings
    )
    return ArchSetting(ring, rings, laid.deep)
