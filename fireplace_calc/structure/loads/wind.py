"""Wind on the part of a chimney that stands in it: pressure, shape, and the force by both ways the
standard offers.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import exp

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.figures import figure, force_coefficients, terrain

FACE, DIAGONAL = "square, wind on face", "square, wind on diagonal"


def exposure_factor(height: float, exposure: str, edition: str = "7-16") -> float:
    r"""How much of the wind at 10 m in open country is left or gained, ASCE 7's Kz.

    Parameters
    ----------
    height : float
        Over the ground; up to 15 ft it makes no difference. [m]
    exposure : str
        ``B``, ``C`` or ``D``.
    edition : str
        ``7-16``, which stands for 7-10 too, or ``7-22``.

    Returns
    -------
    float
        Factor on the pressure. [-]

    Notes
    -----
    .. math:: K_z = c\,(z/z_g)^{2/\alpha}

    The formula, not the rounded table: they differ by up to 0.01. Exposure B's second figure for
    low houses is not for this use.

    Examples
    --------
    >>> round(exposure_factor(5.0, "C"), 4)
    0.865
    """
    ground = terrain(exposure, edition)
    return ground.coefficient * (max(height, ground.lowest) / ground.gradient) ** (2 / ground.alpha)


def altitude_factor(altitude: float) -> float:
    """Thinner air pushes less, ASCE 7's Ke.

    Parameters
    ----------
    altitude : float
        Over the sea. [m]

    Returns
    -------
    float
        Factor on the pressure. [-]
    """
    return exp(-figure("air thinning") * altitude)


def velocity_pressure(
    speed: float, exposure: float, directionality: float, altitude: float = 1.0, hill: float = 1.0
) -> float:
    r"""Pressure of the wind, ASCE 7-16's qz.

    Parameters
    ----------
    speed : float
        Gust of three seconds off the map. [m/s]
    exposure, directionality, altitude, hill : float
        Factors Kz, Kd, Ke and Kzt. From 7-22 on Kd stands in the force instead: give 1 here and
        multiply there, never both. [-]

    Returns
    -------
    float
        Pressure. [Pa]

    Notes
    -----
    .. math:: q = 0.613\,K_z K_{zt} K_d K_e V^2
    """
    return figure("wind pressure factor") * exposure * hill * directionality * altitude * speed**2


def force_coefficient(slenderness: float, section: str = FACE) -> float:
    """Shape of a chimney against the wind, ASCE 7's Cf.

    Parameters
    ----------
    slenderness : float
        Height over least side; under 1 counts as 1, over 25 as 25. [-]
    section : str
        Wind on the face of a square, or on its diagonal.

    Returns
    -------
    float
        Coefficient, on the area as the wind sees it. [-]
    """
    known = force_coefficients()
    if section not in known:
        raise InputError(
            f"Section is {section!r}, but the table holds only {', '.join(known)}.",
            "Section",
            ", ".join(known),
            section,
        )
    table = known[section]
    for (low, start), (high, end) in pairwise(table):
        if slenderness <= high:
            return start + (end - start) * max(slenderness - low, 0.0) / (high - low)
    return table[-1][1]


def rooftop_factor(area: float, front: float | None) -> float:
    """What stands on a roof gets more than its share, ASCE 7's GCr; gust and shape are in it.

    Parameters
    ----------
    area : float
        Of the chimney over the roof, as the wind sees it. [m2]
    front : float or None
        Width of the building square to the wind times its mean roof height; unknown takes the
        largest factor. [m2]

    Returns
    -------
    float
        1.9 up to a tenth of the front, then on a straight line to 1.0 at the whole of it. [-]
    """
    small, large = figure("rooftop factor, small"), figure("rooftop factor, large")
    if front is None or front <= 0:
        return small
    share = min(max((area / front - 0.1) / 0.9, 0.0), 1.0)
    return small + (large - small) * share


def service_factor(wind_map: str) -> float:
    """What of the map's wind goes into a check at allowable stress.

    Parameters
    ----------
    wind_map : str
        ``ultimate`` for maps of 2010 and later, ``allowable`` for the older ones.

    Returns
    -------
    float
        Factor on the force. [-]
    """
    return figure(f"service wind, {wind_map} map")


@dataclass(frozen=True, slots=True)
class Strip:
    """Upright rectangle that the wind sees. [m]"""

    bottom: float
    top: float
    width: float

    def over(self, level: float) -> Strip | None:
        """What of it lies above a level."""
        return Strip(max(self.bottom, level), self.top, self.width) if self.top > level else None

    @property
    def area(self) -> float:
        """Area. [m2]"""
        return (self.top - self.bottom) * self.width

    @property
    def middle(self) -> float:
        """Level of its middle. [m]"""
        return (self.bottom + self.top) / 2


def strips(design: Design, frame: Frame, sideways: bool) -> tuple[Strip, ...]:
    """Stack, crown, liner over the crown and cap as the wind sees them, from the shoulder up.

    Parameters
    ----------
    design : Design
    frame : Frame
    sideways : bool
        Wind along the breast, on the chimney's side; otherwise on its front or back.

    Returns
    -------
    tuple of Strip
        From the bottom up. [m]

    Notes
    -----
    The crown is taken with its full width up to the top of its slope. A rain cap or an arrester is
    taken as wide as the flue unit and one foot high, where one is fitted or nobody knows.
    """
    stack, unit = (
        (frame.stack_depth, frame.unit_depth) if sideways else (frame.stack_half, frame.unit_half)
    )
    found = [
        Strip(frame.shoulder_top, frame.crown_bottom, 2 * stack),
        Strip(frame.crown_bottom, frame.crown_top, 2 * (stack + design.chimney.overhang)),
        Strip(frame.crown_top, frame.liner_top, 2 * unit),
    ]
    if design.chimney.rain_cap is not False or design.chimney.arrester is not False:
        found.append(Strip(frame.liner_top, frame.liner_top + figure("cap allowance"), 2 * unit))
    return tuple(strip for strip in found if strip.top > strip.bottom)


@dataclass(frozen=True, slots=True)
class WindLoad:
    """Wind on one side of a chimney, as strong as the map has it.

    Attributes
    ----------
    side : str
        Where the wind comes from.
    area, middle : float
        What it sees [m2], and at what level. [m]
    pressure, coefficient : float
        At that level [Pa], and the chimney's shape. [-]
    rooftop_pressure, rooftop : float
        At mean roof height [Pa], and the factor of what stands on a roof. [-]
    as_structure, as_rooftop : float
        Force by either way. [N]
    structure_arm, rooftop_arm : float
        Level at which either force acts. [m]
    """

    side: str
    area: float
    middle: float
    pressure: float
    coefficient: float
    rooftop_pressure: float
    rooftop: float
    as_structure: float
    as_rooftop: float
    structure_arm: float
    rooftop_arm: float

    def moment(self, level: float) -> float:
        """The larger of both about a level. [N m]"""
        return max(
            self.as_structure * (self.structure_arm - level),
            self.as_rooftop * (self.rooftop_arm - level),
        )

    @property
    def governs(self) -> str:
        """Which of both ways gives the larger force."""
        return "rooftop structure" if self.as_rooftop > self.as_structure else "other structure"


def wind_load(design: Design, frame: Frame, sideways: bool, base: float) -> WindLoad | None:
    """Wind on what stands in it above a level; nothing when speed or exposure is not known.

    Parameters
    ----------
    design : Design
    frame : Frame
    sideways : bool
        Wind along the breast, on the chimney's side.
    base : float
        Below this level something holds the chimney. [m]

    Returns
    -------
    Push or None
        Forces as the map has them, not yet at service level. [N]

    Notes
    -----
    A chimney inside the house stands in the wind from the lowest roof contact up, any other from
    grade. The shape goes by the height from the ground, which gives more than the height of the
    stub. Ground is taken as flat.
    """
    loads, site = design.loads, design.site
    if site.wind is None or loads.exposure is None:
        return None
    roof = frame.downhill_contact
    lowest = max(base, roof if design.chimney.location == "interior" else frame.grade)
    seen = [
        kept
        for strip in strips(design, frame, sideways)
        if (kept := strip.over(lowest)) is not None
    ]
    if not seen:
        return WindLoad("", 0.0, lowest, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, lowest, lowest)
    area = sum(strip.area for strip in seen)
    middle = sum(strip.area * strip.middle for strip in seen) / area
    air, direction = altitude_factor(site.altitude), figure("directionality, square chimney")

    def pressure(level: float) -> float:
        return velocity_pressure(
            site.wind, exposure_factor(level - frame.grade, loads.exposure), direction, air
        )

    tall = (seen[-1].top - frame.grade) / (2 * min(frame.stack_half, frame.stack_depth))
    shape, here = force_coefficient(tall), pressure(middle)
    eaves = (design.roof.eaves_level + design.roof.ridge_level) / 2
    front = (
        loads.building_width * (eaves - frame.grade) if loads.building_width is not None else None
    )
    over = [kept for strip in seen if (kept := strip.over(roof)) is not None]
    stands = sum(strip.area for strip in over)
    factor, there = rooftop_factor(stands, front), pressure(eaves)
    plain, extra = figure("gust factor") * shape * here, there * factor
    beneath, first = area - stands, area * middle - sum(strip.area * strip.middle for strip in over)
    both = plain * beneath + extra * stands
    arm = (plain * first + extra * (area * middle - first)) / both
    side = "from the side" if sideways else "from the front or the back"
    return WindLoad(side, area, middle, here, shape, there, factor, plain * area, both, middle, arm)
