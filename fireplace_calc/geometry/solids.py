"""The few shapes a fireplace is made of, each with its exact volume and its cut at any height.

A horizontal cut is a polygon: a tuple of ``(x, y)``, x to the right, y away from the room. [m]
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, pi, sin

from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.polygons import Point, Polygon, area, chords, signed_area

CIRCLE = tuple((cos(2 * pi * i / 72), sin(2 * pi * i / 72)) for i in range(72))


@dataclass(frozen=True, slots=True)
class Loft:
    """Straight-sided solid between two level polygons of equally many corners.

    Its volume is the prismatoid rule, which is exact here: the cut's area is quadratic in the
    height.

    Attributes
    ----------
    bottom, top : float
        Levels. [m]
    lower, upper : Polygon
        Outline at either, corner by corner. [m]
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
        middle = [
            (a + c, b + d) for (a, b), (c, d) in zip(self.lower, self.upper, strict=True)
        ]  # twice as large, so four times the area
        return (
            (self.top - self.bottom)
            * (area(self.lower) + abs(signed_area(middle)) + area(self.upper))
            / 6
        )

    def cut(self, z: float) -> Polygon | None:
        """Polygon at a level, or nothing outside the solid. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        """
        if not self.bottom <= z <= self.top:
            return None
        if self.lower == self.upper:
            return self.lower
        t = (z - self.bottom) / (self.top - self.bottom)
        return tuple(
            (a + t * (c - a), b + t * (d - b))
            for (a, b), (c, d) in zip(self.lower, self.upper, strict=True)
        )


def prism(bottom: float, top: float, outline: Polygon) -> Loft:
    """Upright solid of one outline.

    Parameters
    ----------
    bottom, top : float
        Levels. [m]
    outline : Polygon
        Corners in order. [m]

    Returns
    -------
    Loft
    """
    return Loft(bottom, top, outline, outline)


@dataclass(frozen=True, slots=True)
class Cylinder:
    """Round solid whose center may shift sideways between bottom and top.

    Attributes
    ----------
    bottom, top : float
        Levels. [m]
    radius : float
        Of its level cut. [m]
    center : Point
        At the bottom. [m]
    shift : float
        Of the center at the top, to the right. [m]
    """

    bottom: float
    top: float
    radius: float
    center: Point
    shift: float = 0.0

    @property
    def volume(self) -> float:
        """Volume; a sheared cylinder holds as much as an upright one. [m3]"""
        return pi * self.radius**2 * (self.top - self.bottom)

    def cut(self, z: float) -> Polygon | None:
        """Polygon of 72 corners at a level, or nothing outside the solid. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        """
        if not self.bottom <= z <= self.top:
            return None
        cx = self.center[0] + self.shift * (z - self.bottom) / (self.top - self.bottom)
        return tuple((cx + self.radius * c, self.center[1] + self.radius * s) for c, s in CIRCLE)


def spans(solid: Solid, z: float) -> list[tuple[float, float]]:
    """Where the line front to back on a solid's own center runs inside it.

    A shifted flue is followed to where it stands, so a section shows it whole.

    Parameters
    ----------
    solid : Solid
    z : float
        Level. [m]

    Returns
    -------
    list of tuple
        Pairs of y, front to back. [m]
    """
    if isinstance(solid, Cylinder):
        inside = solid.bottom <= z <= solid.top
        return [(solid.center[1] - solid.radius, solid.center[1] + solid.radius)] if inside else []
    if isinstance(solid, ArchRing):
        over = z - solid.spring - solid.rise
        return [(0.0, solid.thickness)] if -1e-9 <= over <= solid.depth + 1e-9 else []
    if isinstance(solid, ArchVoid):
        inside = solid.bottom <= z <= solid.top
        return [(solid.front, solid.front + solid.thickness)] if inside else []
    return [pair for p in level_cuts(solid, z) for pair in chords(p, sum(x for x, _ in p) / len(p))]


Solid = Loft | Cylinder | ArchVoid | ArchRing


def level_cuts(solid: Solid, z: float) -> tuple[Polygon, ...]:
    """Polygons of any solid at a level.

    Parameters
    ----------
    solid : Solid
    z : float
        Level. [m]

    Returns
    -------
    tuple of Polygon
        Empty outside the solid. [m]
    """
    if isinstance(solid, ArchRing):
        return solid.cuts(z)
    polygon = solid.cut(z)
    return () if polygon is None else (polygon,)


def moved(solid: Solid, dx: float, dy: float, dz: float) -> Solid:
    """The same solid somewhere else.

    Parameters
    ----------
    solid : Solid
        An arch stays on the center line, and its ring at the opening plane.
    dx, dy, dz : float
        To the right, away from the room, up. [m]

    Returns
    -------
    Solid
    """
    if isinstance(solid, Loft):
        lower = tuple((x + dx, y + dy) for x, y in solid.lower)
        upper = (
            lower if solid.upper == solid.lower else tuple((x + dx, y + dy) for x, y in solid.upper)
        )
        return Loft(solid.bottom + dz, solid.top + dz, lower, upper)
    if isinstance(solid, Cylinder):
        center = (solid.center[0] + dx, solid.center[1] + dy)
        return replace(solid, bottom=solid.bottom + dz, top=solid.top + dz, center=center)
    if isinstance(solid, ArchVoid):
        return replace(solid, spring=solid.spring + dz, front=solid.front + dy)
    return replace(solid, spring=solid.spring + dz)
