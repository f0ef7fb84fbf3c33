"""The two shapes of an arch: the air under it, and its ring."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, sin, sqrt

from fireplace_calc.geometry.polygons import Polygon, box


@dataclass(frozen=True, slots=True)
class ArchVoid:
    """Air under a segmental arch, from spring line to crown, between sides that close in with
    depth.

    Attributes
    ----------
    spring, rise, span, thickness : float
        Spring line, height over it, width at the face, and how deep the arch is front to back. [m]
    splay : float
        How far each side closes in per unit of depth. [-]
    front : float
        Where it starts behind the opening plane. [m]
    """

    spring: float
    rise: float
    span: float
    thickness: float
    splay: float
    front: float = 0.0

    @property
    def radius(self) -> float:
        """Radius of the soffit. [m]"""
        return (self.span**2 / 4 + self.rise**2) / (2 * self.rise)

    @property
    def bottom(self) -> float:
        """Spring line. [m]"""
        return self.spring

    @property
    def top(self) -> float:
        """Crown. [m]"""
        return self.spring + self.rise

    @property
    def volume(self) -> float:
        """Exact: the segment's area, integrated over the depth as the sides close in. [m3]

        Notes
        -----
        With half width ``a`` left of a segment of radius ``r`` over the chord ``flat`` above its
        center, half the area is the integral of ``sqrt(r**2 - x**2) - flat`` from 0 to ``a``; the
        half width shrinks evenly with depth, so that integrating once more over ``a`` gives the
        volume.
        """
        r, flat = self.radius, self.radius - self.rise
        half = self.span / 2

        def under(a: float) -> float:
            return (
                a * sqrt(max(r * r - a * a, 0.0)) + r * r * asin(min(a / r, 1.0))
            ) / 2 - flat * a

        def under_summed(a: float) -> float:
            root = sqrt(max(r * r - a * a, 0.0))
            return (
                -(root**3) / 3 + r * r * (a * asin(min(a / r, 1.0)) + root)
            ) / 2 - flat * a * a / 2

        narrowed = self.splay * self.thickness
        if narrowed < 1e-6:
            return 2 * under(half - narrowed / 2) * self.thickness
        return 2 * (under_summed(half) - under_summed(half - narrowed)) / self.splay

    def cut(self, z: float) -> Polygon | None:
        """Polygon at a level, or nothing outside the void. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        """
        if not self.bottom <= z <= self.top:
            return None
        flat = self.radius - self.rise
        reach = sqrt(max(self.radius**2 - (z - self.spring + flat) ** 2, 0.0))
        front, back = self.span / 2, self.span / 2 - self.splay * self.thickness
        rear = self.front + self.thickness
        if reach <= back:
            return box(-reach, reach, self.front, rear)
        bend = (front - reach) / self.splay if self.splay else 0.0
        right = ((reach, self.front), (reach, self.front + bend), (back, rear))
        return right + tuple((-x, y) for x, y in reversed(right))


@dataclass(frozen=True, slots=True)
class ArchRing:
    """Segmental ring over the opening, its ends cut on the radius.

    Attributes
    ----------
    spring, rise, span : float
        Spring line, height of the soffit over it, and width of the opening. [m]
    depth : float
        Of the ring, square to the soffit. [m]
    thickness : float
        Front to back. [m]
    """

    spring: float
    rise: float
    span: float
    depth: float
    thickness: float

    @property
    def radius(self) -> float:
        """Radius of the soffit. [m]"""
        return (self.span**2 / 4 + self.rise**2) / (2 * self.rise)

    @property
    def half_angle(self) -> float:
        """From the center line to either skewback. [rad]"""
        return asin(min(self.span / 2 / self.radius, 1.0))

    @property
    def bottom(self) -> float:
        """Lowest point, at the spring line. [m]"""
        return self.spring

    @property
    def top(self) -> float:
        """Top of the ring on the center line. [m]"""
        return self.spring + self.rise + self.depth

    @property
    def volume(self) -> float:
        """Ring sector times thickness. [m3]"""
        return ((self.radius + self.depth) ** 2 - self.radius**2) * self.half_angle * self.thickness

    def cuts(self, z: float) -> tuple[Polygon, ...]:
        """Polygons at a level: one over the crown, two beside it. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        """
        if not self.bottom <= z <= self.top:
            return ()
        h = z - self.spring + self.radius - self.rise
        outer = min(
            sqrt(max((self.radius + self.depth) ** 2 - h * h, 0.0)), h * self.half_width_per_height
        )
        inner = sqrt(max(self.radius**2 - h * h, 0.0))
        if inner <= 0.0:
            return (box(-outer, outer, 0.0, self.thickness),)
        return (
            (box(-outer, -inner, 0.0, self.thickness), box(inner, outer, 0.0, self.thickness))
            if outer > inner
            else ()
        )

    @property
    def half_width_per_height(self) -> float:
        """Tangent of the half angle: where the skewback stands at a height over the center. [-]"""
        return sin(self.half_angle) / max(cos(self.half_angle), 1e-12)
