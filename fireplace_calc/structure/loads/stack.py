"""The free-standing chimney above its last support: weight, section, and what wind does to it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.loads.compression import PressedSection, pressed_section
from fireplace_calc.structure.loads.sections import edge_tension, ring, with_holes
from fireplace_calc.structure.loads.weights import PointMass, Weights
from fireplace_calc.structure.loads.wind import WindLoad, wind_load
from fireplace_calc.structure.loads.wind_pressure import (
    DIAGONAL,
    force_coefficient,
    service_factor,
)

WALLS = ("chimney walls", "crown")
"""Parts whose weight presses on the section; the liner stands free on its own seat, with no bond
and no stiffness.
"""
LINING = ("flue liner", "flue casing", "second flue liner", "second flue casing")


@dataclass(frozen=True, slots=True)
class Side:
    """The section at the support, and what wind along one direction does to it.

    Attributes
    ----------
    thickness, area, modulus : float
        Along the wind [m], of the ring without its liner [m2, m3].
    offset : float
        How far the weight above lies off the middle of the section, where the flue is drawn
        sideways. [m]
    wind_load : WindLoad or None
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
    offset: float
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
    supported : bool
        Held up to its crown, so that nothing stands free.
    weight : float
        Of walls and crown above the section. [N]
    seismic_mass : PointMass
        Of the same with the liner, which shakes along.
    sides : tuple of Side
        Wind from the side; wind from the front or the back.
    pressed : tuple of PressedSection
        Where it stands free; and at its foot over the shoulder, where something holds it higher up.
    """

    base: float
    top: float
    supported: bool
    weight: float
    seismic_mass: PointMass
    sides: tuple[Side, Side]
    pressed: tuple[PressedSection, ...] = ()

    @property
    def wind_known(self) -> bool:
        """Whether wind speed and exposure are known."""
        return self.sides[0].wind_load is not None

    @property
    def worst(self) -> Side:
        """The direction with the larger tension; the thinner way while wind is not known."""
        return max(
            self.sides, key=lambda side: -side.thickness if side.tension is None else side.tension
        )


def _section(
    frame: Frame, sideways: bool, base: float, breadth: float, thickness: float
) -> tuple[float, float, float]:
    """Area [m2], modulus [m3] and middle [m] of the chimney at a level, one flue's hole or two."""
    second = frame.second
    if second is None:
        hole = frame.cavity_depth, frame.cavity_half
        across, along = hole if sideways else hole[::-1]
        return (*ring(breadth, thickness, 2 * across, 2 * along), 0.0)
    cavities = [(-frame.stack_middle, frame.cavity_half, frame.cavity_depth)]
    if second.start <= base:
        cavities.append((second.x - frame.stack_middle, second.cavity_half, second.cavity_depth))
    holes = tuple(
        (x, 2 * deep, 2 * half) if sideways else (0.0, 2 * half, 2 * deep)
        for x, half, deep in cavities
    )
    return with_holes(breadth, thickness, holes)


def _side(design: Design, frame: Frame, sideways: bool, base: float, above: PointMass) -> Side:
    along, across = (
        (frame.stack_half, frame.stack_depth) if sideways else (frame.stack_depth, frame.stack_half)
    )
    thickness = 2 * along
    area, modulus, middle = _section(frame, sideways, base, 2 * across, thickness)
    offset = (
        abs(above.x - frame.shift_at(base) - frame.stack_middle - middle)
        if sideways
        else abs(above.y - frame.flue_y)
    )
    offset = offset if offset > 1e-9 else 0.0
    wind, weight = wind_load(design, frame, sideways, base), G * above.mass
    if wind is None or weight <= 0:
        return Side(
            thickness, area, modulus, offset, wind, None, None, None, None, modulus / area, None
        )
    moment = service_factor(design.loads.wind_map) * wind.moment(base)
    pressed = figure("weight against wind") * weight
    bending = moment + pressed * offset
    slender = (frame.liner_top - frame.grade) / (2 * min(frame.stack_half, frame.stack_depth))
    askew = 2 * force_coefficient(slender, DIAGONAL) / force_coefficient(slender)
    return Side(
        thickness,
        area,
        modulus,
        offset,
        wind,
        moment,
        edge_tension(bending, pressed, area, modulus),
        edge_tension(moment * askew + pressed * offset, pressed, area, modulus),
        bending / pressed,
        modulus / area,
        weight * (thickness / 2 - offset) / moment if moment > 0 else None,
    )


def _pressed(
    design: Design, frame: Frame, weights: Weights, sides: tuple[Side, Side], base: float
) -> tuple[PressedSection, ...]:
    """The free part over its section, full weight and service wind; and the foot, where the house
    holds the stack above it and the weight alone leans.
    """
    weight = G * weights.point_mass(WALLS, base).mass
    bent = [
        (side.thickness, side.modulus, (side.moment or 0.0) + weight * side.offset)
        for side in sides
    ]
    found = [pressed_section(base, weight, sides[0].area, bent, 2 * (frame.liner_top - base))]
    foot = frame.shoulder_top
    if base > foot:
        above = weights.point_mass(WALLS, foot)
        both = [_side(design, frame, sideways, foot, above) for sideways in (True, False)]
        leaning = [(s.thickness, s.modulus, G * above.mass * s.offset) for s in both]
        found.append(pressed_section(foot, G * above.mass, both[0].area, leaning, base - foot))
    return tuple(found)


def free_stack(design: Design, frame: Frame, weights: Weights) -> FreeStack:
    """The chimney above its last support, or above its shoulder where none is known.

    Parameters
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.

    Returns
    -------
    FreeStack
        Loads at service level.

    Notes
    -----
    Service wind is 0.6 of what an ultimate map gives, and the whole of an older map's; 0.6 of the
    weight stands against it where tension is looked for, all of it against overturning. A corner
    under diagonal wind meets about 1.5 times the bending of the face: the force is nine hundredths
    more and the section modulus less by the root of two.
    """
    support = design.loads.support
    supported = support is not None and support >= frame.crown_bottom
    base = min(
        max(frame.shoulder_top if support is None else support, frame.shoulder_top),
        frame.crown_bottom,
    )
    above, seismic_mass = weights.point_mass(WALLS, base), weights.point_mass(WALLS + LINING, base)
    sides = (
        _side(design, frame, True, base, above),
        _side(design, frame, False, base, above),
    )
    pressed = _pressed(design, frame, weights, sides, base)
    return FreeStack(base, frame.liner_top, supported, G * above.mass, seismic_mass, sides, pressed)
