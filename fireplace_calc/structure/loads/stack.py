"""The free-standing chimney above its last support: weight, section, and what wind does to it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.loads.weights import PointMass, Weights
from fireplace_calc.structure.loads.wind import (
    DIAGONAL,
    WindLoad,
    force_coefficient,
    service_factor,
    wind_load,
)

WALLS = ("chimney walls", "crown")
"""Parts whose weight presses on the section; the liner stands free on its own seat, with no bond
and no stiffness.
"""
LINING = ("flue liner", "flue casing")


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
        Area [m2] and section modulus. [m3]
    """
    inertia = (breadth * thickness**3 - hole_breadth * hole_thickness**3) / 12
    return breadth * thickness - hole_breadth * hole_thickness, 2 * inertia / thickness


def edge_tension(moment: float, weight: float, area: float, modulus: float) -> float:
    """Stress at the windward edge of a bed joint.

    Parameters
    ----------
    moment : float
        That bends it. [N m]
    weight : float
        That presses on it. [N]
    area, modulus : float
        Of the section. [m2, m3]

    Returns
    -------
    float
        Tension positive, compression negative. [Pa]
    """
    return moment / modulus - weight / area


def free_height(weight_density: float, thickness: float, pressure: float) -> float:
    """How high a solid square stack may stand in even wind without any bond.

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
    """
    return weight_density * thickness**2 / (3 * pressure)


@dataclass(frozen=True, slots=True)
class Side:
    """The section at the support, and what wind along one direction does to it.

    Attributes
    ----------
    thickness, area, modulus : float
        Along the wind [m], of the ring without its liner [m2, m3].
    lean : float
        How far the weight above stands off the middle of the section, where the flue is drawn
        sideways. [m]
    push : WindLoad or None
        As the map has it.
    moment : float or None
        Of the wind at service level about the section. [N m]
    tension, corner : float or None
        At the windward edge, and at a corner with the wind on the diagonal. [Pa]
    eccentricity, kern : float or None
        Where the resultant of wind and six tenths of the weight passes the section, and how far it
        may. [m]
    overturning : float or None
        Full weight over service wind, about the leeward edge. [-]
    """

    thickness: float
    area: float
    modulus: float
    lean: float
    wind_load: WindLoad | None
    moment: float | None
    tension: float | None
    corner: float | None
    eccentricity: float | None
    kern: float
    overturning: float | None


@dataclass(frozen=True, slots=True)
class FreeStack:
    """A chimney above its last support.

    Attributes
    ----------
    base, top : float
        Level of the section that is checked, and of the liner's top. [m]
    held : bool
        Held up to its crown, so that nothing stands free.
    weight : float
        Of walls and crown above the section. [N]
    body : PointMass
        The same with the liner, which shakes along; mass [kg] and middle. [m]
    sides : tuple of Side
        Wind from the side; wind from the front or the back.
    """

    base: float
    top: float
    held: bool
    weight: float
    body: PointMass
    sides: tuple[Side, Side]

    @property
    def height(self) -> float:
        """From the section to the top. [m]"""
        return max(self.top - self.base, 0.0)

    @property
    def windy(self) -> bool:
        """Wind is known."""
        return self.sides[0].wind_load is not None

    @property
    def worst(self) -> Side:
        """The direction with the larger tension; the thinner way while wind is not known."""
        return max(
            self.sides, key=lambda side: -side.thickness if side.tension is None else side.tension
        )


def _side(design: Design, frame: Frame, sideways: bool, base: float, standing: PointMass) -> Side:
    along, across = (
        (frame.stack_half, frame.stack_depth) if sideways else (frame.stack_depth, frame.stack_half)
    )
    hole, hole_across = (
        (frame.cavity_half, frame.cavity_depth)
        if sideways
        else (frame.cavity_depth, frame.cavity_half)
    )
    thickness = 2 * along
    area, modulus = ring(2 * across, thickness, 2 * hole_across, 2 * hole)
    lean = abs(standing.x - frame.shift_at(base)) if sideways else abs(standing.y - frame.flue_y)
    lean = lean if lean > 1e-9 else 0.0
    wind, weight = wind_load(design, frame, sideways, base), G * standing.mass
    if wind is None or weight <= 0:
        return Side(
            thickness, area, modulus, lean, wind, None, None, None, None, modulus / area, None
        )
    moment = service_factor(design.loads.wind_map) * wind.moment(base)
    pressed = figure("weight against wind") * weight
    bending = moment + pressed * lean
    slender = (frame.liner_top - frame.grade) / (2 * min(frame.stack_half, frame.stack_depth))
    askew = 2 * force_coefficient(slender, DIAGONAL) / force_coefficient(slender)
    return Side(
        thickness,
        area,
        modulus,
        lean,
        wind,
        moment,
        edge_tension(bending, pressed, area, modulus),
        edge_tension(moment * askew + pressed * lean, pressed, area, modulus),
        bending / pressed,
        modulus / area,
        weight * (thickness / 2 - lean) / moment if moment > 0 else None,
    )


def free_stack(design: Design, frame: Frame, weighed: Weights) -> FreeStack:
    """The chimney above its last support, or above its shoulder where nobody knows of one.

    Parameters
    ----------
    design : Design
    frame : Frame
    weighed : Weights
        Mass of every part. [kg]

    Returns
    -------
    Stack
        Loads at service level. [N]

    Notes
    -----
    Service wind is 0.6 of what an ultimate map gives, and the whole of an older map's; 0.6 of the
    weight stands against it where tension is looked for, all of it against overturning. A corner
    under diagonal wind meets about 1.5 times the bending of the face: the force is nine hundredths
    more and the section modulus less by the root of two.
    """
    told = design.loads.support
    held = told is not None and told >= frame.crown_bottom
    base = min(
        max(frame.shoulder_top if told is None else told, frame.shoulder_top), frame.crown_bottom
    )
    standing, body = weighed.point_mass(WALLS, base), weighed.point_mass(WALLS + LINING, base)
    sides = (
        _side(design, frame, True, base, standing),
        _side(design, frame, False, base, standing),
    )
    return FreeStack(base, frame.liner_top, held, G * standing.mass, body, sides)
