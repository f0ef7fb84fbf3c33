"""Wind on the part of a chimney that stands in it: the area it sees, and the force by both ways the
standard offers.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import unknown_of
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.loads.hill import HILL_INPUTS, hill_at, hill_known
from fireplace_calc.structure.loads.wind_pressure import (
    altitude_factor,
    exposure_factor,
    force_coefficient,
    rooftop_factor,
    velocity_pressure,
)


@dataclass(frozen=True, slots=True)
class Strip:
    """Upright rectangle that the wind sees.

    Attributes
    ----------
    bottom, top : float
        Levels. [m]
    width : float
        [m]
    """

    bottom: float
    top: float
    width: float

    def above(self, level: float) -> Strip | None:
        """What of it lies above a level [m]; nothing when it ends below."""
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
        From the bottom up.

    Notes
    -----
    The crown is taken with its full width up to the top of its slope. A rain cap or an arrester is
    taken as wide as the flue unit and one foot high, where one is fitted or that is not known.
    """
    stack, unit = (
        (frame.stack_depth, frame.unit_depth) if sideways else (frame.stack_half, frame.unit_half)
    )
    found = [
        Strip(frame.shoulder_top, frame.crown_bottom, 2 * stack),
        Strip(frame.crown_bottom, frame.crown_top, 2 * (stack + design.chimney.overhang)),
    ]
    over = figure("cap allowance")
    capped = design.chimney.rain_cap is not False or design.chimney.arrester is not False
    flues = [(frame.liner_top, unit)]
    if (second := frame.second) is not None:
        # Side by side for wind on the front; for wind along the breast one hides the other.
        other = second.unit_depth if sideways else second.unit_half
        flues = (
            [(frame.highest, max(unit, other))]
            if sideways
            else [(frame.liner_top, unit), (second.top, other)]
        )
    for top, half in flues:
        found.append(Strip(frame.crown_top, top, 2 * half))
        if capped:
            found.append(Strip(top, top + over, 2 * half))
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
    rooftop_pressure, rooftop_factor : float
        At mean roof height [Pa], and the factor of what stands on a roof. [-]
    structure_force, rooftop_force : float
        Force by either way: as another structure, and as a rooftop structure. [N]
    structure_arm, rooftop_arm : float
        Level at which either force acts. [m]
    """

    side: str
    area: float
    middle: float
    pressure: float
    coefficient: float
    rooftop_pressure: float
    rooftop_factor: float
    structure_force: float
    rooftop_force: float
    structure_arm: float
    rooftop_arm: float

    def moment(self, level: float) -> float:
        """The larger of both about a level. [N m]"""
        return max(
            self.structure_force * (self.structure_arm - level),
            self.rooftop_force * (self.rooftop_arm - level),
        )

    @property
    def governs(self) -> str:
        """Which of both ways gives the larger force."""
        return (
            "rooftop structure" if self.rooftop_force > self.structure_force else "other structure"
        )


def wind_asked(design: Design) -> tuple[str, ...]:
    """Inputs without which there is no wind to reckon with, by dotted key; those told left out."""
    hill = () if design.loads.hill == "flat" else HILL_INPUTS
    return unknown_of(design, "site.wind", "loads.exposure", *hill)


def wind_load(design: Design, frame: Frame, sideways: bool, base: float) -> WindLoad | None:
    """Wind on what stands in it above a level; nothing when speed, exposure or hill is not known.

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
    WindLoad or None
        Forces as the map has them, not yet at service level.

    Notes
    -----
    A chimney inside the house stands in the wind from the lowest roof contact up, any other from
    grade. The shape goes by the height from the ground, which gives more than the height of the
    stub.
    """
    loads, site = design.loads, design.site
    speed, exposure = site.wind, loads.exposure
    if speed is None or exposure is None or not hill_known(loads):
        return None
    roof = frame.downhill_contact
    lowest = max(base, roof if design.chimney.location == "interior" else frame.grade)
    seen = [
        kept
        for strip in strips(design, frame, sideways)
        if (kept := strip.above(lowest)) is not None
    ]
    if not seen:
        return WindLoad("", 0.0, lowest, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, lowest, lowest)
    area = sum(strip.area for strip in seen)
    middle = sum(strip.area * strip.middle for strip in seen) / area
    air, direction = altitude_factor(site.altitude), figure("directionality, square chimney")

    def pressure(level: float) -> float:
        height = level - frame.grade
        factor, hill = exposure_factor(height, exposure), hill_at(loads, height)
        return velocity_pressure(speed, factor, direction, air, hill)

    tall = (max(strip.top for strip in seen) - frame.grade) / (
        2 * min(frame.stack_half, frame.stack_depth)
    )
    shape, here = force_coefficient(tall), pressure(middle)
    eaves = (design.roof.eaves_level + design.roof.ridge_level) / 2
    front = (
        loads.building_width * (eaves - frame.grade) if loads.building_width is not None else None
    )
    over = [kept for strip in seen if (kept := strip.above(roof)) is not None]
    area_over = sum(strip.area for strip in over)
    factor, there = rooftop_factor(area_over, front), pressure(eaves)
    # Below the roof the chimney takes wind as any structure, over it as a rooftop structure.
    plain, rooftop = figure("gust factor") * shape * here, there * factor
    area_below = area - area_over
    first_below = area * middle - sum(strip.area * strip.middle for strip in over)
    both = plain * area_below + rooftop * area_over
    arm = (plain * first_below + rooftop * (area * middle - first_below)) / both
    side = "from the side" if sideways else "from the front or the back"
    return WindLoad(side, area, middle, here, shape, there, factor, plain * area, both, middle, arm)
