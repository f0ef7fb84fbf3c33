"""What the opening radiates on to each step of mantel and trim, and how far off is far enough."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables.heat import WallFire, wall_fires
from fireplace_calc.geometry.mantel.on_face import trim_steps
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.from_opening import ShiningOpening, distance_for, flux

BED_SHARE, BED_HIGH = 0.6, 0.25
"""Of the opening's width that the fire takes, and how high it stands: our judgement. [-], [m]"""


@dataclass(frozen=True, slots=True)
class TrimFlux:
    """Radiation on the underside of a step of trim, at its outer edge.

    Attributes
    ----------
    name : str
    distance, projection : float
        Over the opening, and out from the face. [m]
    falls : tuple of float
        For the kind, the middle and the hard fire. [W/m2]
    """

    name: str
    distance: float
    projection: float
    falls: tuple[float, ...]


def shining(geometry: Geometry) -> ShiningOpening:
    """The opening of a design with a fire in it."""
    f = geometry.frame
    wide, high = 2 * f.half_width, f.clear_top - f.hearth
    return ShiningOpening(wide, high, BED_SHARE * wide, min(BED_HIGH, high))


def on_trim(geometry: Geometry) -> tuple[TrimFlux, ...]:
    """Every step over the opening whose place is known and that stands out from the face.

    Parameters
    ----------
    geometry : Geometry
    """
    opening = shining(geometry)
    found = []
    for step in trim_steps(geometry):
        if step.place != "above" or step.distance is None or not step.projection:
            continue
        place = (0.0, step.projection, opening.high + step.distance)
        falls = tuple(
            flux(opening, place, (0.0, 0.0, -1.0), fire) for fire in wall_fires().values()
        )
        found.append(TrimFlux(step.name, step.distance, step.projection, falls))
    return tuple(found)


def keep_off(geometry: Geometry, fire: WallFire) -> float | None:
    """How far before the opening the flux has fallen to the least that lit wood. [m]"""
    return distance_for(shining(geometry), fire)
