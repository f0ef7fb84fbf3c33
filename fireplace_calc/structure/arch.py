"""The arched head of a design: what it carries, its thrust, and the jamb that has to take it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.arch_thrust import (
    Load,
    Ring,
    ThrustLine,
    parabola_thrust,
    third_thrust,
    thrust_line,
)
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.lintel import wall_weight
from fireplace_calc.structure.loads.weights import Weights
from fireplace_calc.structure.opening_load import head_load


@dataclass(frozen=True, slots=True)
class Arch:
    """A segmental head, what it carries, and what its jambs take.

    Attributes
    ----------
    ring : Ring
    load : Load
        Triangle or low wall over it, and its own weight.
    low_cover : bool
        The triangle runs out of the breast.
    parabola_thrust, third_thrust : float
        Thrust by either way. [N]
    line : ThrustLine
        z over the spring line. [m]
    spring : float
        Level of the spring line. [m]
    ring_stress : float
        At the crown with the thrust on its third point: twice the mean. [Pa]
    abutment_thrust : float
        Thrust that either jamb is held against: the larger one. [N]
    jamb_weight : float
        That presses on the bed joint of the jamb at the spring line. [N]
    friction : float
        What that joint takes without bond. [N]
    overturning : float
        Moment that keeps the jamb up over the one that tips it. [-]
    """

    ring: Ring
    load: Load
    low_cover: bool
    parabola_thrust: float
    third_thrust: float
    line: ThrustLine
    spring: float
    ring_stress: float
    abutment_thrust: float
    jamb_weight: float
    friction: float
    overturning: float

    @property
    def line_points(self) -> tuple[tuple[float, float], ...]:
        """Line of thrust as ``(x, z)``, z from the room floor. [m]"""
        return tuple((x, self.spring + z) for x, z in self.line.points)


def assess_arch(design: Design, frame: Frame, weights: Weights) -> Arch | None:
    """The arched head of a design; nothing under a straight one, or under a set's own lintel.

    Parameters
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.

    Returns
    -------
    Arch or None
        Thrust, line and jamb.

    Notes
    -----
    A beam on it is left to an engineer. The triangle stands on the spring line, and the air under
    the arch is not taken off: the safe side. All that stands over the spring line is shared evenly
    by what is solid there; of the jamb, as much counts as the thrust spreads to at 45 degrees from
    the back of the ring. Friction alone holds the bed joint, and the pier is held at its foot by
    the hearth slab.
    """
    if frame.spring >= frame.opening_top or design.piece_set is not None:
        return None
    ring = Ring(
        2 * frame.half_width, frame.opening_top - frame.spring, design.lintel.height, frame.breast
    )
    wall, cover = wall_weight(frame, weights), frame.block_top - frame.spring
    above = head_load(design.loads, wall, ring.span, cover)
    own = G * weights.masses.get("arch", 0.0)
    load = Load(ring.span, above.triangular, own + above.uniform)
    line, parabola = thrust_line(ring, load), parabola_thrust(ring, load)
    abutment = max(parabola, line.thrust)

    jamb = frame.block_half - frame.half_width
    deep = min(frame.block_back, frame.breast + jamb)
    back = frame.back_at(frame.spring)
    solid = 2 * frame.block_half * frame.block_back - back * (
        frame.half_width + frame.half_at(back)
    )
    standing = [
        name for name in weights.masses if not name.startswith(("hearth extension", "hearth seat"))
    ]
    pressed = G * weights.point_mass(standing, frame.spring).mass * jamb * deep / solid
    tall = frame.spring - frame.slab_top
    pier = G * weights.density("firebox walls", density("brick")) * jamb * deep * tall
    toppling = (pressed + pier) * jamb / 2 / (abutment * tall)
    return Arch(
        ring,
        load,
        above.low_cover,
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
