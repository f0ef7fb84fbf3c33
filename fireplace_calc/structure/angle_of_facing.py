"""The steel angle that carries the facing before the pieces of a set."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import G
from fireplace_calc.design.opening import AngleLegs
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.beam import (
    angle,
    bending,
    deflection,
    deflection_limit,
    triangle_load,
)
from fireplace_calc.structure.figures import figure


@dataclass(frozen=True, slots=True)
class FacingAngle:
    """How an angle under the facing is stressed.

    Attributes
    ----------
    stress, allowed : float
        In bending. [Pa]
    deflection, deflection_limit : float
        At the middle. [m]
    """

    stress: float
    allowed: float
    deflection: float
    deflection_limit: float


def facing_angle(design: Design, frame: Frame, legs: AngleLegs) -> FacingAngle:
    """Bend the angle under the facing.

    Parameters
    ----------
    design : Design
        With a set, a facing, and an angle under it.
    frame : Frame
    legs : AngleLegs
        As it is drawn.

    Returns
    -------
    FacingAngle

    Notes
    -----
    It carries the facing within 45 degrees and itself; the rest arches past. Span is the clear
    opening and one bearing, as for any lintel. The gap stands between it and the set, so nothing
    bears on it but the facing.
    """
    around = design.pieces
    made = angle(around.angle_height, legs.level, legs.thickness)
    span = 2 * frame.half_width + (around.angle_bearing or 0.0)
    wall = triangle_load(G * density("brick") * around.facing, span)
    own = G * density("steel") * made.area
    moment = bending(span, wall, own)
    stiff = figure("steel modulus") * made.inertia
    return FacingAngle(
        moment / made.modulus,
        figure("steel bending"),
        deflection(span, stiff, wall, own),
        deflection_limit(span),
    )
