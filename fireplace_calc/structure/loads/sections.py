"""Level sections through a chimney: area, modulus, and the stress at an edge."""

from __future__ import annotations


def ring(
    breadth: float, thickness: float, hole_breadth: float = 0.0, hole_thickness: float = 0.0
) -> tuple[float, float]:
    """Area and section modulus of a rectangle with a hole in its middle.

    Parameters
    ----------
    breadth, hole_breadth : float
        Across the wind. [m]
    thickness, hole_thickness : float
        Along the wind. [m]

    Returns
    -------
    tuple of float
        Area [m2] and section modulus [m3].
    """
    inertia = (breadth * thickness**3 - hole_breadth * hole_thickness**3) / 12
    return breadth * thickness - hole_breadth * hole_thickness, 2 * inertia / thickness


def with_holes(
    breadth: float, thickness: float, holes: tuple[tuple[float, float, float], ...]
) -> tuple[float, float, float]:
    """Area, section modulus and middle of a rectangle with holes in a row along the wind.

    Parameters
    ----------
    breadth, thickness : float
        Across and along the wind. [m]
    holes : tuple of tuple
        Of each: its middle from the rectangle's own along the wind, its breadth across and its
        thickness along the wind. [m]

    Returns
    -------
    tuple of float
        Area [m2], section modulus at the farther edge [m3], and the section's middle from the
        rectangle's. [m]
    """
    area = breadth * thickness - sum(b * t for _, b, t in holes)
    middle = -sum(x * b * t for x, b, t in holes) / area
    inertia = breadth * thickness**3 / 12 + breadth * thickness * middle**2
    inertia -= sum(b * t**3 / 12 + b * t * (x - middle) ** 2 for x, b, t in holes)
    return area, inertia / (thickness / 2 + abs(middle)), middle


def edge_tension(moment: float, weight: float, area: float, modulus: float) -> float:
    r"""Stress at the windward edge of a bed joint.

    Parameters
    ----------
    moment : float
        That bends it. [N m]
    weight : float
        That presses on it. [N]
    area : float
        Of the section. [m2]
    modulus : float
        Of the section. [m3]

    Returns
    -------
    float
        Tension positive, compression negative. [Pa]

    Notes
    -----
    .. math:: \sigma = M / S - N / A
    """
    return moment / modulus - weight / area


def free_height(weight_density: float, thickness: float, pressure: float) -> float:
    r"""How high a solid square stack may stand in even wind without any bond.

    Parameters
    ----------
    weight_density : float
        Of its masonry. [N/m3]
    thickness : float
        Side of the square. [m]
    pressure : float
        On its face, shape counted in. [Pa]

    Returns
    -------
    float
        Height at which the line of force leaves the middle third. [m]

    Notes
    -----
    .. math:: h = \gamma\,t^2 / 3 p
    """
    return weight_density * thickness**2 / (3 * pressure)
