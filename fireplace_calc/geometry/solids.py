"""The few shapes a fireplace is made of, each with its exact volume and its cut at any height.

A horizontal cut is a polygon: a tuple of ``(x, y)`` in metres, x to the right, y away from the
room.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, pi, sin, sqrt

Point = tuple[float, float]
Polygon = tuple[Point, ...]

CIRCLE = tuple((cos(2 * pi * i / 72), sin(2 * pi * i / 72)) for i in range(72))


def area(polygon: Polygon) -> float:
    """Area inside a simple polygon. [m2]

    >>> area(((0, 0), (2, 0), (2, 1), (0, 1)))
    2.0
    """
    double = 0.0
    px, py = polygon[-1]
    for x, y in polygon:
        double += px * y - x * py
        px, py = x, y
    return abs(double) / 2


def box(x0: float, x1: float, y0: float, y1: float) -> Polygon:
    """Rectangle from its four sides. [m]"""
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def chord(polygon: Polygon, x: float) -> tuple[float, float] | None:
    """Where the line at ``x`` enters and leaves a convex polygon, as two values of y. [m]"""
    found = []
    px, py = polygon[-1]
    for qx, qy in polygon:
        if (px <= x) != (qx <= x):
            found.append(py + (x - px) * (qy - py) / (qx - px))
        px, py = qx, qy
    return (min(found), max(found)) if found else None


@dataclass(frozen=True, slots=True)
class Loft:
    """Straight-sided solid between two level polygons of equally many corners.

    Its volume is the prismatoid rule, which is exact here: the cut's area is quadratic in the
    height.
    """

    bottom: float
    top: float
    lower: Polygon
    upper: Polygon

    @property
    def volume(self) -> float:
        """Volume. [m3]"""
        if self.lower == self.upper:
            return (self.top - self.bottom) * area(self.lower)
        middle = tuple(
            ((a + c) / 2, (b + d) / 2)
            for (a, b), (c, d) in zip(self.lower, self.upper, strict=True)
        )
        return (
            (self.top - self.bottom) * (area(self.lower) + 4 * area(middle) + area(self.upper)) / 6
        )

    def cut(self, z: float) -> Polygon | None:
        """Polygon at height ``z``, or nothing outside the solid."""
        if not self.bottom <= z <= self.top:
            return None
        t = (z - self.bottom) / (self.top - self.bottom)
        return tuple(
            (a + t * (c - a), b + t * (d - b))
            for (a, b), (c, d) in zip(self.lower, self.upper, strict=True)
        )


def prism(bottom: float, top: float, outline: Polygon) -> Loft:
    """Upright solid of one outline."""
    return Loft(bottom, top, outline, outline)


@dataclass(frozen=True, slots=True)
class Cylinder:
    """Round solid whose centre may shift sideways between bottom and top."""

    bottom: float
    top: float
    radius: float
    centre: Point
    shift: float = 0.0

    @property
    def volume(self) -> float:
        """Volume; a sheared cylinder holds as much as an upright one. [m3]"""
        return pi * self.radius**2 * (self.top - self.bottom)

    def cut(self, z: float) -> Polygon | None:
        """Polygon of 72 corners at height ``z``, or nothing outside the solid."""
        if not self.bottom <= z <= self.top:
            return None
        cx = self.centre[0] + self.shift * (z - self.bottom) / (self.top - self.bottom)
        return tuple((cx + self.radius * c, self.centre[1] + self.radius * s) for c, s in CIRCLE)


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
    """

    spring: float
    rise: float
    span: float
    thickness: float
    splay: float

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
        """Exact: the segment's area, integrated over the depth as the sides close in. [m3]"""
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
        """Polygon at height ``z``, or nothing outside the void."""
        if not self.bottom <= z <= self.top:
            return None
        flat = self.radius - self.rise
        reach = sqrt(max(self.radius**2 - (z - self.spring + flat) ** 2, 0.0))
        front, back = self.span / 2, self.span / 2 - self.splay * self.thickness
        if reach <= back:
            return box(-reach, reach, 0.0, self.thickness)
        bend = (front - reach) / self.splay if self.splay else 0.0
        right = ((reach, 0.0), (reach, bend), (back, self.thickness))
        return right + tuple((-x, y) for x, y in reversed(right))


@dataclass(frozen=True, slots=True)
class ArchRing:
    """Segmental ring over the opening, its ends cut on the radius."""

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
        """From the centre line to either skewback. [rad]"""
        return asin(min(self.span / 2 / self.radius, 1.0))

    @property
    def bottom(self) -> float:
        """Lowest point, at the spring line. [m]"""
        return self.spring

    @property
    def top(self) -> float:
        """Top of the ring on the centre line. [m]"""
        return self.spring + self.rise + self.depth

    @property
    def volume(self) -> float:
        """Ring sector times thickness. [m3]"""
        return ((self.radius + self.depth) ** 2 - self.radius**2) * self.half_angle * self.thickness

    def cuts(self, z: float) -> tuple[Polygon, ...]:
        """One polygon over the crown, two beside it."""
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
        """Tangent of the half angle: where the skewback stands at a height over the centre. [-]"""
        return sin(self.half_angle) / max(cos(self.half_angle), 1e-12)


def spans(solid: Solid, z: float) -> list[tuple[float, float]]:
    """Where the line front to back on a solid's own centre runs inside it at height ``z``, as pairs
    of y. [m]

    A shifted flue is followed to where it stands, so a section shows it whole.
    """
    if isinstance(solid, Cylinder):
        inside = solid.bottom <= z <= solid.top
        return [(solid.centre[1] - solid.radius, solid.centre[1] + solid.radius)] if inside else []
    if isinstance(solid, ArchRing):
        over = z - solid.spring - solid.rise
        return [(0.0, solid.thickness)] if -1e-9 <= over <= solid.depth + 1e-9 else []
    if isinstance(solid, ArchVoid):
        return [(0.0, solid.thickness)] if solid.bottom <= z <= solid.top else []
    found = (chord(p, sum(x for x, _ in p) / len(p)) for p in level_cuts(solid, z))
    return [c for c in found if c]


Solid = Loft | Cylinder | ArchVoid | ArchRing


def level_cuts(solid: Solid, z: float) -> tuple[Polygon, ...]:
    """Polygons of any solid at height ``z``."""
    if isinstance(solid, ArchRing):
        return solid.cuts(z)
    polygon = solid.cut(z)
    return () if polygon is None else (polygon,)
