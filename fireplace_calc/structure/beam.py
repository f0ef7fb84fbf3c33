"""What a wall puts on a beam over an opening, and what a beam makes of it: plain formulas."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import FOOT
from fireplace_calc.rules.comparing import reaches
from fireplace_calc.structure.allowables import lintel_spans
from fireplace_calc.structure.figures import figure


def triangle_load(wall: float, span: float) -> float:
    """Weight of wall inside the 45 degree triangle over a span; the rest arches past it.

    Parameters
    ----------
    wall : float
        Weight of the wall by its face. [Pa]
    span : float
        Of the lintel. [m]

    Returns
    -------
    float
        The whole triangle. [N]
    """
    return wall * span**2 / 4


def low_wall_load(wall: float, span: float, height: float) -> float:
    """Weight under the 45 degree lines where the wall ends below their apex.

    Parameters
    ----------
    wall : float
        Weight of the wall by its face. [Pa]
    span, height : float
        Of the lintel, and of the wall over it. [m]

    Returns
    -------
    float
        The trapezoid; from half the span up it is the triangle. [N]
    """
    height = min(height, span / 2)
    return wall * (span * height - height**2)


def bending(
    span: float, triangular: float = 0.0, uniform: float = 0.0, point: float = 0.0
) -> float:
    r"""Largest moment on a lintel that rests on both ends.

    Parameters
    ----------
    span : float
        Clear opening and one bearing. [m]
    triangular : float
        Whole weight of a triangular load. [N]
    uniform : float
        Even load along it. [N/m]
    point : float
        At the middle. [N]

    Returns
    -------
    float
        At the middle. [N m]

    Notes
    -----
    .. math:: M = W L / 6 + w L^2 / 8 + P L / 4
    """
    return triangular * span / 6 + uniform * span**2 / 8 + point * span / 4


def reaction(
    span: float, triangular: float = 0.0, uniform: float = 0.0, point: float = 0.0
) -> float:
    """What the worse end carries; a point load stands right beside it.

    Parameters
    ----------
    span : float
        Clear opening and one bearing. [m]
    triangular : float
        Whole weight of a triangular load. [N]
    uniform : float
        Even load along it. [N/m]
    point : float
        At the middle. [N]

    Returns
    -------
    float
        Force. [N]
    """
    return (triangular + uniform * span) / 2 + point


def deflection(
    span: float,
    stiffness: float,
    triangular: float = 0.0,
    uniform: float = 0.0,
    point: float = 0.0,
) -> float:
    r"""Deflection at the middle.

    Parameters
    ----------
    span : float
        Clear opening and one bearing. [m]
    stiffness : float
        Modulus times second moment. [N m2]
    triangular : float
        Whole weight of a triangular load. [N]
    uniform : float
        Even load along it. [N/m]
    point : float
        At the middle. [N]

    Returns
    -------
    float
        Downward. [m]

    Notes
    -----
    .. math:: \delta = W L^3 / 60 E I + 5 w L^4 / 384 E I + P L^3 / 48 E I
    """
    even = triangular / 60 + 5 * uniform * span / 384 + point / 48
    return even * span**3 / stiffness


def deflection_limit(span: float) -> float:
    """Deflection that brick over a lintel can take.

    Parameters
    ----------
    span : float
        Of the lintel. [m]

    Returns
    -------
    float
        The smaller of a six-hundredth of the span and 0.3 in. [m]

    References
    ----------
    TMS 402, from memory.
    """
    return min(span / figure("lintel deflection ratio"), figure("lintel deflection"))


def slab_modulus(breadth: float, depth: float) -> float:
    """Section modulus of a stone.

    Parameters
    ----------
    breadth, depth : float
        Into the wall, and its height. [m]

    Returns
    -------
    float
        Section modulus. [m3]
    """
    return breadth * depth**2 / 6


@dataclass(frozen=True, slots=True)
class Angle:
    """Section of a steel angle.

    Attributes
    ----------
    area : float
        [m2]
    heel : float
        Of the middle over the heel. [m]
    inertia : float
        Second moment of area about the level axis. [m4]
    modulus : float
        Least section modulus. [m3]
    """

    area: float
    heel: float
    inertia: float
    modulus: float


def angle(vertical: float, horizontal: float, thickness: float) -> Angle:
    """Angle as two rectangles, bent about the level axis, its upright leg ``vertical``.

    Parameters
    ----------
    vertical, horizontal, thickness : float
        Legs and their thickness; roots and toes are not rounded. [m]

    Returns
    -------
    Angle
        Agrees with handbooks to half a percent.

    Examples
    --------
    >>> round(angle(0.1524, 0.0889, 0.0079375).inertia / 0.0254**4, 1)
    10.9
    """
    leg = max(vertical - thickness, 0.0)
    flat, upright = horizontal * thickness, leg * thickness
    area = flat + upright
    heel = (flat * thickness / 2 + upright * (thickness + leg / 2)) / area
    inertia = (
        horizontal * thickness**3 / 12
        + flat * (heel - thickness / 2) ** 2
        + thickness * leg**3 / 12
        + upright * (thickness + leg / 2 - heel) ** 2
    )
    return Angle(area, heel, inertia, inertia / max(heel, max(vertical, thickness) - heel))


def veneer_span(vertical: float, horizontal: float, thickness: float) -> float | None:
    """Clear span that the table of brick veneer lintels gives one angle with no storey over it.

    Parameters
    ----------
    vertical, horizontal, thickness : float
        Of the angle; the largest row that it covers in all three counts. [m]

    Returns
    -------
    float or None
        Span; none for an angle lighter than the first row. [m]
    """
    rows = [
        row.no_storey
        for row in lintel_spans()
        if row.pieces == 1
        and reaches(vertical, row.vertical)
        and reaches(horizontal, row.horizontal)
        and reaches(thickness, row.thickness)
    ]
    return max(rows, default=None)


def jack_skew(span: float) -> float:
    """How far the skewback of a flat arch leans out per unit of its depth: 1/2 in per foot of span
    in 4 in.

    Parameters
    ----------
    span : float
        Clear. [m]

    Returns
    -------
    float
        Tangent of its angle from the vertical. [-]
    """
    return span / FOOT / 8


def hot_growth(length: float, warmer: float = 300 / 1.8) -> float:
    """How much a steel lintel grows in the heat of the firebox head; leave that much free at its
    ends.

    Parameters
    ----------
    length : float
        Of the steel. [m]
    warmer : float
        Than when it was set. [K]

    Returns
    -------
    float
        About 0.09 in over 4 ft; 6.5e-6 per degree Fahrenheit, from memory. [m]
    """
    return 6.5e-6 * 1.8 * warmer * length
