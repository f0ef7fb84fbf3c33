"""The segmental arch: its shape, its thrust, the line that the thrust follows, and the jamb that
has to take it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, hypot, sin, sqrt

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.rules.comparing import reaches
from fireplace_calc.structure.beam import low_wall, triangle
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.lintel import wall_weight
from fireplace_calc.structure.loads.weights import Weights

POINTS = 20
"""Of the line of thrust, crown to skewback."""
THIRD = 1 / 6
"""How far the line may stray from the middle of the ring, over its depth. [-]"""


@dataclass(frozen=True, slots=True)
class Ring:
    """A segmental ring: clear span, rise, depth of the ring, and how thick it is front to back. [m]"""

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

    def stray(self, x: float, z: float) -> float:
        """How far a point lies off the middle of the ring, over its depth; outward positive. [-]"""
        return (hypot(x, z - self.rise + self.radius) - self.radius) / self.depth - 0.5


@dataclass(frozen=True, slots=True)
class Load:
    """On an arch: the whole of a triangle with its peak over the crown, and the whole of an even
    load. [N]
    """

    span: float
    peaked: float = 0.0
    even: float = 0.0

    @property
    def total(self) -> float:
        """Both. [N]"""
        return self.peaked + self.even

    @property
    def middle(self) -> float:
        """Of the half beside the crown, from the crown. [m]"""
        return self.span * (self.peaked / 6 + self.even / 4) / self.total

    def turning(self, x: float) -> float:
        """Moment about the point at ``x`` of the load between it and the crown. [N m]"""
        half, inside = self.span / 2, min(x, self.span / 2)
        peaked = self.peaked / half * (inside**2 / 2 - inside**3 / (6 * half))
        return peaked + self.even / self.span * inside**2 / 2 + self.total / 2 * (x - inside)


def parabola_thrust(ring: Ring, load: Load) -> float:
    """Thrust of the line through crown and springs of the underside: high, and so the one for the
    abutment.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    float
        Even load: W S / 8 r; a triangle a third more. [N]
    """
    return load.total / 2 * (load.span / 2 - load.middle) / ring.rise


def third_thrust(ring: Ring, load: Load) -> float:
    """Thrust of the line through the upper third at the crown and the lower third at the skewback.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    float
        Less than the parabola's: use it for the ring, and with care. [N]
    """
    d, g = ring.depth, ring.skew
    return (
        load.total
        / 2
        * (load.span / 2 - load.middle + d / 3 * sin(g))
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
    stray : float
        Farthest off the middle of the ring, over its depth: a sixth is the middle third, a half the
        edge. [-]
    """

    thrust: float
    points: tuple[tuple[float, float], ...]
    stray: float

    @property
    def inside(self) -> bool:
        """It keeps to the middle third."""
        return reaches(THIRD, self.stray)


def _line(
    ring: Ring, load: Load, crown: float, thrust: float, ends: list[tuple[float, float]]
) -> ThrustLine:
    half = [(x, crown - turning / thrust) for x, turning in ends]
    points = tuple((-x, z) for x, z in reversed(half[1:])) + tuple(half)
    return ThrustLine(thrust, points, max(abs(ring.stray(x, z)) for x, z in half))


def thrust_line(ring: Ring, load: Load) -> ThrustLine:
    """The line through the third points; where that strays, the one of least thrust that keeps to
    the middle third.

    Parameters
    ----------
    ring : Ring
    load : Load

    Returns
    -------
    Line
        If no line keeps to the middle third, the one through the third points, which strays. [N, m]

    Notes
    -----
    A plain arch stands when any line of thrust lies in it. With the crown of the line at one of
    nine places in the middle third, every point of the arch sets a least and a largest thrust;
    where they leave room, the least is taken.
    """
    end = (ring.radius + ring.depth / 3) * sin(ring.skew)
    xs = [end * k / POINTS for k in range(POINTS + 1)]
    turned = [(x, load.turning(x)) for x in xs]
    first = _line(ring, load, ring.rise + 2 * ring.depth / 3, third_thrust(ring, load), turned)
    if first.inside:
        return first
    bounds = [(turning, ring.at(x, 1 / 3), ring.at(x, 2 / 3)) for x, turning in turned[1:]]
    found = []
    for place in range(8, -1, -1):
        crown = ring.rise + ring.depth / 3 * (1 + place / 8)
        least = max(
            turning / (crown - low) if crown > low else float("inf") for turning, low, _ in bounds
        )
        most = min(
            (turning / (crown - high) for turning, _, high in bounds if crown > high + 1e-12),
            default=float("inf"),
        )
        if least <= most and least < float("inf"):
            found.append(_line(ring, load, crown, least, turned))
    return min((line for line in found if line.inside), key=lambda line: line.thrust, default=first)


@dataclass(frozen=True, slots=True)
class Arch:
    """A segmental head, what it carries, and what its jambs take.

    Attributes
    ----------
    ring : Ring
    load : Load
        Triangle or low wall over it, and its own weight. [N]
    low : bool
        The triangle runs out of the breast.
    parabola, thirds : float
        Thrust by either way. [N]
    line : Line
        z over the spring line. [m]
    spring : float
        Level of the spring line. [m]
    ring_stress : float
        At the crown with the thrust on its third point: twice the mean. [Pa]
    abutment : float
        Thrust that either jamb is held against: the larger one. [N]
    jamb_weight : float
        That presses on the bed joint of the jamb at the spring line. [N]
    friction : float
        What that joint takes without bond. [N]
    toppling : float
        Moment that keeps the jamb up over the one that tips it. [-]
    """

    ring: Ring
    load: Load
    low: bool
    parabola: float
    thirds: float
    line: ThrustLine
    spring: float
    ring_stress: float
    abutment: float
    jamb_weight: float
    friction: float
    toppling: float

    @property
    def drawn(self) -> tuple[tuple[float, float], ...]:
        """Line of thrust as ``(x, z)``, z from the room floor. [m]"""
        return tuple((x, self.spring + z) for x, z in self.line.points)


def assess_arch(design: Design, frame: Frame, weighed: Weights) -> Arch | None:
    """The arched head of a design; nothing under a straight one.

    Parameters
    ----------
    design : Design
    frame : Frame
    weighed : Weights
        Mass of every part. [kg]

    Returns
    -------
    Arch or None
        Thrust, line and jamb. [N, m]

    Notes
    -----
    The triangle stands on the spring line, and the air under the arch is not taken off: the safe
    side. All that stands over the spring line is shared evenly by what is solid there; of the jamb,
    as much counts as the thrust spreads to at 45 degrees from the back of the ring. Friction alone
    holds the bed joint, and the pier is held at its foot by the hearth slab.
    """
    if frame.spring >= frame.opening_top:
        return None
    ring = Ring(
        2 * frame.half_width, frame.opening_top - frame.spring, design.lintel.height, frame.breast
    )
    wall, cover = wall_weight(frame, weighed), frame.flue_start - frame.spring
    own, low = G * weighed.masses.get("arch", 0.0), cover < ring.span / 2
    load = (
        Load(ring.span, 0.0, own + low_wall(wall, ring.span, cover))
        if low
        else Load(ring.span, triangle(wall, ring.span), own)
    )
    line, parabola = thrust_line(ring, load), parabola_thrust(ring, load)
    abutment = max(parabola, line.thrust)

    jamb = frame.block_half - frame.half_width
    deep = min(frame.block_back, frame.breast + jamb)
    back = frame.back_at(frame.spring)
    solid = 2 * frame.block_half * frame.block_back - back * (
        frame.half_width + frame.half_at(back)
    )
    standing = [name for name in weighed.masses if not name.startswith("hearth extension")]
    pressed = G * weighed.point_mass(standing, frame.spring).mass * jamb * deep / solid
    tall = frame.spring - frame.slab_top
    pier = G * weighed.density("firebox walls", density("brick")) * jamb * deep * tall
    toppling = (pressed + pier) * jamb / 2 / (abutment * tall)
    return Arch(
        ring,
        load,
        low,
        parabola,
        third_thrust(ring, load),
        line,
        frame.spring,
        2 * line.thrust / (ring.breadth * ring.depth),
        abutment,
        pressed,
        figure("bed joint friction") * pressed,
        toppling,
    )
