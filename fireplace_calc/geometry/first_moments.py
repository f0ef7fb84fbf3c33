"""Volume and first moments of the few shapes and of parts, so that a middle of mass is known."""

from __future__ import annotations

from functools import lru_cache
from math import asin, sin, sqrt

from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.parts import Part
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.geometry.solids import Cylinder, Loft, Solid

Moments = tuple[float, float, float, float]
"""Volume [m3] and its first moments along x, y and z. [m4]"""


def _plane(polygon: Polygon) -> tuple[float, float, float]:
    """Area of a level polygon [m2] and its first moments along x and y [m3]."""
    twice = along = across = 0.0
    px, py = polygon[-1]
    for x, y in polygon:
        cross = px * y - x * py
        twice += cross
        along += cross * (px + x)
        across += cross * (py + y)
        px, py = x, y
    sign = -1.0 if twice < 0 else 1.0
    return sign * twice / 2, sign * along / 6, sign * across / 6


def _loft(solid: Loft) -> Moments:
    """Simpson's rule, exact here: no first moment rises faster than the cube of the height."""
    high = solid.top - solid.bottom
    area, along, across = _plane(solid.lower)
    if solid.lower == solid.upper:
        return high * area, high * along, high * across, high * area * (solid.bottom + high / 2)
    middle = tuple(
        ((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(solid.lower, solid.upper, strict=True)
    )
    half, half_along, half_across = _plane(middle)
    upper, upper_along, upper_across = _plane(solid.upper)
    volume = high * (area + 4 * half + upper) / 6
    return (
        volume,
        high * (along + 4 * half_along + upper_along) / 6,
        high * (across + 4 * half_across + upper_across) / 6,
        volume * solid.bottom + high * high * (2 * half + upper) / 6,
    )


@lru_cache(maxsize=64)
def _under_arch(solid: ArchVoid) -> Moments:
    """Upright slices from the face to the back of the arch, summed by Simpson's rule; of each the
    area and what it turns about the spring line.
    """
    radius, flat, strips = solid.radius, solid.radius - solid.rise, 32
    area = deep = up = 0.0
    for k in range(strips + 1):
        weight = 1 if k in (0, strips) else 4 if k % 2 else 2
        y = solid.thickness * k / strips
        half = min(solid.span / 2 - solid.splay * y, radius)
        bow = half * sqrt(radius**2 - half**2) + radius**2 * asin(half / radius)
        area += weight * (bow - 2 * flat * half)
        deep += weight * (bow - 2 * flat * half) * y
        up += weight * ((radius**2 + flat**2) * half - half**3 / 3 - flat * bow)
    volume = solid.volume
    return volume, 0.0, volume * (solid.front + deep / area), volume * (solid.spring + up / area)


def _moments(solid: Solid) -> Moments:
    """Volume [m3] of a solid, and its first moments [m4]."""
    if isinstance(solid, Loft):
        return _loft(solid)
    volume = solid.volume
    if isinstance(solid, Cylinder):
        x, y, z = solid.center[0] + solid.shift / 2, solid.center[1], (solid.bottom + solid.top) / 2
    elif isinstance(solid, ArchRing):
        angle, inner, outer = solid.half_angle, solid.radius, solid.radius + solid.depth
        middle = 2 / 3 * (outer**3 - inner**3) / (outer**2 - inner**2) * sin(angle) / angle
        x, y, z = 0.0, solid.thickness / 2, solid.spring + solid.rise - inner + middle
    else:
        return _under_arch(solid)
    return volume, volume * x, volume * y, volume * z


def _over(solid: Solid, level: float) -> Solid | None:
    """What of a solid lies above a level; arches are small and stay whole, on the side of their
    middle.
    """
    if solid.bottom >= level:
        return solid
    if solid.top <= level:
        return None
    if isinstance(solid, Loft):
        lower = solid.cut(level)
        if lower is None:
            raise ValueError(f"A cut at {level} m misses its solid.")
        return Loft(level, solid.top, lower, solid.upper)
    if isinstance(solid, Cylinder):
        gone = solid.shift * (level - solid.bottom) / (solid.top - solid.bottom)
        return Cylinder(
            level,
            solid.top,
            solid.radius,
            (solid.center[0] + gone, solid.center[1]),
            solid.shift - gone,
        )
    return solid if (solid.bottom + solid.top) / 2 >= level else None


def moments(part: Part, level: float | None = None) -> Moments:
    """Volume and first moments of a part, or of what of it lies above a level.

    Parameters
    ----------
    part : Part
    level : float or None
        From the room floor. [m]

    Returns
    -------
    tuple of float
        Volume [m3], then its moments along x, y and z [m4].

    Notes
    -----
    Exact but for the air under an arch, which is summed by slices, to a hundredth of a millimetre.
    """
    total = [0.0, 0.0, 0.0, 0.0]
    for sign, solids in ((1.0, part.adds), (-1.0, part.cuts)):
        for solid in solids:
            kept = solid if level is None else _over(solid, level)
            if kept is not None:
                for k, value in enumerate(_moments(kept)):
                    total[k] += sign * value
    return total[0], total[1], total[2], total[3]
