"""The thrust of a segmental arch, and the line that it follows."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, hypot, sin, sqrt

from fireplace_calc.rules.comparing import reaches
from fireplace_calc.structure.figures import figure

POINTS = 20
"""Of the line of thrust, crown to skewback."""
THIRD = 1 / 6
"""How far the line may lie off the middle of the ring, over its depth: the middle third. [-]"""


@dataclass(frozen=True, slots=True)
class Ring:
    """A segmental ring.

    Attributes
    ----------
    span, rise : float
        Of the underside. [m]
    depth, breadth : float
        Of the ring, and how thick it is front to back. [m]
    """

    span: float
    rise: float
    depth: float
    breadth: float

    @property
    def radius(self) -> float:
        """Of the underside. [m]"""
        return self.span**2 / (8 * self.rise) + self.rise / 2

    @property
    def skew(self) -> float:
        """Skewback from the vertical. [rad]"""
        return asin(min(self.span / (2 * self.radius), 1.0))

    @property
    def minor(self) -> bool:
        """Small and flat enough for the rules of thumb."""
        return reaches(figure("minor arch span"), self.span) and reaches(
            figure("minor arch rise"), self.rise / self.span
        )

    def at(self, x: float, share: float) -> float:
        """Height over the spring line at ``x`` of the arc a share of the depth out from the
        underside. [m]
        """
        return (
            sqrt(max((self.radius + share * self.depth) ** 2 - x * x, 0.0))
            - self.radius
            + self.rise
        )

    def eccentricity(self, x: float, z: float) -> float:
        """How far a point lies off the middle of the ring, over its depth; outward positive. [-]"""
        return (hypot(x, z - self.rise + self.radius) - self.radius) / self.depth - 0.5


@dataclass(frozen=True, slots=True)
class Load:
    """What lies on an arch.

    Attributes
    ----------
    span : float
        Of the arch. [m]
    triangular : float
        The whole of a triangle with its peak over the crown. [N]
    uniform : float
        The whole of an even load. [N]
    """

    span: float
    triangular: float
    uniform: float

    @property
    def total(self) -> float:
        """Both. [N]"""
        return self.triangular + self.uniform

    @property
    def centroid(self) -> float:
        """Of the half beside the crown, from the crown. [m]"""
        return self.span * (self.triangular / 6 + self.uniform / 4) / self.total

    def moment(self, x: float) -> float:
        """Moment about the point at ``x`` of the load between it and the crown. [N m]"""
        half, inside = self.span / 2, min(x, self.span / 2)
        triangular = self.triangular / half * (inside**2 / 2 - inside**3 / (6 * half))
        return triangular + self.uniform / self.span * inside**2 / 2 + self.total / 2 * (x - inside)


def parabola_thrust(ring: Ring, load: Load) -> float:
    r"""Thrust of the line through crown and springs of the underside: high, and so the one for the
    abutment.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    float
        Level. [N]

    Notes
    -----
    .. math:: H = W S / 8 r

    under an even load; a triangle thrusts a third more.
    """
    return load.total / 2 * (load.span / 2 - load.centroid) / ring.rise


def third_thrust(ring: Ring, load: Load) -> float:
    """Thrust of the line through the upper third at the crown and the lower third at the skewback.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    float
        Level; less than the parabola's: use it for the ring, and with care. [N]
    """
    d, g = ring.depth, ring.skew
    return (
        load.total
        / 2
        * (load.span / 2 - load.centroid + d / 3 * sin(g))
        / (ring.rise + 2 * d / 3 - d / 3 * cos(g))
    )


@dataclass(frozen=True, slots=True)
class ThrustLine:
    """A line of thrust.

    Attributes
    ----------
    thrust : float
        Level, the same all along. [N]
    points : tuple of tuple of float
        ``(x, z)`` from the left skewback to the right, z over the spring line. [m]
    eccentricity : float
        Farthest off the middle of the ring, over its depth: a sixth is the middle third, a half the
        edge. [-]
    """

    thrust: float
    points: tuple[tuple[float, float], ...]
    eccentricity: float

    @property
    def inside(self) -> bool:
        """It keeps to the middle third."""
        return reaches(THIRD, self.eccentricity)


def _line(
    ring: Ring, load: Load, crown: float, thrust: float, moments: list[tuple[float, float]]
) -> ThrustLine:
    """The line with a height at the crown and a thrust, from moments at places beside the crown."""
    half = [(x, crown - moment / thrust) for x, moment in moments]
    points = tuple((-x, z) for x, z in reversed(half[1:])) + tuple(half)
    return ThrustLine(thrust, points, max(abs(ring.eccentricity(x, z)) for x, z in half))


def thrust_line(ring: Ring, load: Load) -> ThrustLine:
    """The line through the third points; where that leaves the middle third, the one of least
    thrust that keeps to it.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    ThrustLine
        If no line keeps to the middle third, the one through the third points.

    Notes
    -----
    A plain arch stands when any line of thrust lies in it. The higher the line at the crown, the
    less it thrusts; so the least of all passes the upper third there, and is just flat enough for
    every other place. Where that line does not keep to the middle third, none was found that does,
    for loads between an even one and a triangle (two thousand arches, by linear programming).

    References
    ----------
    Heyman, J., 1969, Int. J. Mech. Sci. 11, 363: the safe theorem; from memory.
    """
    end = (ring.radius + ring.depth / 3) * sin(ring.skew)
    xs = [end * k / POINTS for k in range(POINTS + 1)]
    moments = [(x, load.moment(x)) for x in xs]
    crown = ring.rise + 2 * ring.depth / 3
    first = _line(ring, load, crown, third_thrust(ring, load), moments)
    if first.inside:
        return first
    least = max(moment / (crown - ring.at(x, 1 / 3)) for x, moment in moments[1:])
    lightest = _line(ring, load, crown, least, moments)
    return lightest if lightest.inside else first
