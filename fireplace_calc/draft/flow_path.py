"""The way the smoke takes, as numbers: what the physics has to know of a fireplace, and nothing
else.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import MM
from fireplace_calc.draft.heated_house import heated, indoors
from fireplace_calc.draft.physics.losses import (
    bend_loss,
    contraction_loss,
    handbook_friction,
    hydraulic_diameter,
    mouth_loss,
    throat_loss,
    top_loss,
)
from fireplace_calc.draft.physics.walls import film, transmittance, wall_resistance
from fireplace_calc.geometry.frame import Framed
from fireplace_calc.rules.told_areas import believed_areas

DATUMS = ("opening top", "mid opening", "hearth")
"""Where the height of the draft may be counted from. The books disagree; half a metre in six is 4 %
of the face velocity.
"""


FIRE_BED = 0.15
"""Height of the burning fuel over the hearth where nobody has told it: engineering judgement for a
fire laid on a low grate. [m]
"""


DOOR_SPEED = 3.0
"""Air through the inlet of shut doors, for the film in the flue alone: what 15 Pa drive,
engineering judgement. [m/s]
"""


@dataclass(frozen=True, slots=True)
class FlowPath:
    """From the room through the opening to the open air; each field a number or an array, all of
    shapes that broadcast. Losses are in velocity heads of the flue.

    Attributes
    ----------
    opening_area, flue_area : float or array
        [m2]
    opening_height : float or array
        [m]
    flue_perimeter : float or array
        Inside. [m]
    height : float or array
        Of the draft, from its datum to the top. [m]
    length : float or array
        Along the flue. [m]
    roughness : float or array
        Of the liner. [m]
    mouth, throat, chamber, bends, cap, screen : float or array
        Loss coefficients: mouth of the fireplace, throat, smoke chamber, offset, rain cap, spark
        screen. [-]
    transmittance : float or array
        Of the chimney wall, on the flue's inside. [W/(m2 K)]
    indoors : float or array
        Share of the flue that stands in heated rooms. [-]
    bottom, top : float or array
        Lowest heated floor and highest heated ceiling of the house over the datum. [m]
    fire_bed : float or array
        Height of the burning fuel over the hearth. [m]
    doors : float or array
        Free area of the inlet of glass doors that are shut while it burns; nought where there are
        none, or where they stand open. [m2]
    """

    opening_area: Number
    opening_height: Number
    flue_area: Number
    flue_perimeter: Number
    height: Number
    length: Number
    roughness: Number
    mouth: Number
    throat: Number
    chamber: Number
    bends: Number
    cap: Number
    screen: Number
    transmittance: Number
    indoors: Number
    bottom: Number = 0.0
    top: Number = 0.0
    fire_bed: Number = FIRE_BED
    doors: Number = 0.0

    @property
    def face_area(self) -> Number:
        """Through which the room's air comes in: the opening, or the inlet of shut doors. [m2]"""
        return np.minimum(self.opening_area, np.where(self.shut, self.doors, np.inf))

    @property
    def shut(self) -> BoolArray:
        """Whether glass doors are shut before the fire."""
        shut: BoolArray = np.asarray(self.doors) > 0
        return shut

    @property
    def diameter(self) -> Number:
        """Hydraulic diameter of the flue. [m]"""
        return hydraulic_diameter(self.flue_area, self.flue_perimeter)

    @property
    def inlet(self) -> Number:
        """Mouth and throat together. [-]"""
        return self.mouth + self.throat

    @property
    def other(self) -> Number:
        """Everything but mouth, throat, friction and the velocity head. [-]"""
        return self.chamber + self.bends + self.cap + self.screen

    @property
    def handbook_resistance(self) -> Number:
        """All losses with the handbook's friction, the velocity head once. [-]"""
        return (
            coefficient("velocity head")
            + self.inlet
            + self.other
            + handbook_friction(self.length, self.diameter)
        )


ROUGHNESS = {
    "unlined": "roughness, brick",
    "UL 1777 system": "roughness, metal",
    "listed factory unit": "roughness, metal",
}
"""Roughness of a liner where it is not that of clay."""


def trace_flow_path(geometry: Framed, datum: str = "opening top", opened: bool = False) -> FlowPath:
    """The way of the smoke through one design.

    Parameters
    ----------
    geometry : Framed
    datum : str
        What the height of the draft counts from, one of ``DATUMS``.
    opened : bool
        Whether glass doors, where there are any, stand open.

    Returns
    -------
    FlowPath
        Of floats. A figure measured on site goes before the drawing's own, as far as it can be.
    """
    design, f = geometry.design, geometry.frame
    areas, bore = believed_areas(design, f), f.bore
    flue = areas.flue or bore.table_area or bore.area
    throat = min(a for a in (areas.throat, areas.damper) if a is not None)
    if design.throat.damper != "none":
        throat *= design.throat.damper_open
    perimeter = np.pi * bore.width if bore.round else 2 * (bore.width + bore.depth)
    start = {
        "opening top": f.clear_top,
        "mid opening": (f.clear_top + f.hearth) / 2,
        "hearth": f.hearth,
    }[datum]
    slopes, warm = f.chamber_slopes, heated(geometry)
    inlet = design.fire.doors_inlet
    doors = 0.0 if opened or inlet is None else inlet
    foot = f.throat_width * (f.depth - f.throat_front)
    cap, screen = top_loss(
        design.chimney.rain_cap, design.chimney.arrester, design.chimney.rain_cap_area, flue
    )
    roughness = coefficient(ROUGHNESS.get(design.flue.liner or "", "roughness, clay liner")) * MM
    return FlowPath(
        opening_area=areas.opening,
        opening_height=design.opening.clear_height,
        flue_area=flue,
        flue_perimeter=float(perimeter),
        height=f.liner_top - start,
        length=f.flue_length,
        roughness=roughness,
        mouth=mouth_loss(),
        throat=throat_loss(flue, throat),
        chamber=float(
            contraction_loss(foot, flue, max(2 * slopes["sides"], slopes["front"] + slopes["back"]))
        ),
        bends=2 * float(bend_loss(f.offset_slope)),
        cap=cap,
        screen=screen,
        transmittance=_transmittance(
            geometry, flue, float(perimeter), roughness, areas.opening, doors
        ),
        indoors=indoors(geometry),
        bottom=warm.bottom - start,
        top=warm.top - start,
        fire_bed=FIRE_BED if design.fire.bed_height is None else design.fire.bed_height,
        doors=doors,
    )


def _transmittance(
    geometry: Framed,
    flue: float,
    perimeter: float,
    roughness: float,
    opening: float,
    doors: float,
) -> float:
    """Of liner, casing, gap and masonry, with the film of a fire that just reaches the published
    face velocity, or that draws through the inlet of shut doors.
    """
    air = opening * coefficient("face velocity")
    flow = 1.2 * (min(air, doors * DOOR_SPEED) if doors else air)
    inside = film(flow, flue, hydraulic_diameter(flue, perimeter), roughness, 350.0)
    return float(
        transmittance(inside, wall_resistance(wall_layers(geometry)), outer_film(geometry))
    )


def wall_layers(geometry: Framed) -> list[tuple[str, float]]:
    """The layers of the chimney wall, from the smoke outwards.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    list of (str, float)
        Material and thickness of liner, casing, gap and masonry. [m]
    """
    design, f = geometry.design, geometry.frame
    layers = [("clay liner", f.bore.wall)]
    if design.method == "modular":
        layers.append(("refractory", design.flue.casing))
    if design.chimney.gap > 0:
        layers.append(("air gap", design.chimney.gap))
    layers.append((design.chimney.masonry, design.chimney.wall))
    return layers


def outer_film(geometry: Framed) -> float:
    """The film outside the chimney wall.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    float
        Film coefficient. [W/(m2 K)]
    """
    outdoors = geometry.design.chimney.location == "exterior"
    return coefficient("film outdoors" if outdoors else "film inside a building")
