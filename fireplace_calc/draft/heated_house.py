"""The warm part of the house: where it begins and ends, and how much of the flue stands in it."""

from __future__ import annotations

from typing import NamedTuple

from fireplace_calc.geometry.frame import Framed

SHELTER = {"interior": 1.0, "within exterior wall": 0.5}
"""Share of a chimney's faces that look at heated rooms where it passes them: engineering judgement;
none for a chimney outdoors, and none where nobody has said where it stands. [-]
"""


class Heated(NamedTuple):
    """Levels above the finished floor of the room. [m]"""

    bottom: float
    top: float


def heated(geometry: Framed) -> Heated:
    """From the lowest heated floor to the highest heated ceiling.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    Heated
        The room itself always counts as heated; where nobody has told the highest ceiling, the
        higher one of the room's and of the eaves is taken.
    """
    house, roof = geometry.design.house, geometry.design.roof
    top = roof.eaves_level if house.highest_ceiling is None else house.highest_ceiling
    return Heated(min(house.lowest_floor, 0.0), max(house.ceiling, top))


def indoors(geometry: Framed) -> float:
    """Share of the flue in heated rooms.

    Parameters
    ----------
    geometry : Framed

    Returns
    -------
    float
        From nought to 1. [-]

    Notes
    -----
    Between ceiling and roof the flue is as cold as the attic, unless that is heated too. An
    unheated attic is taken to be as cold as the outdoors: engineering judgement, attics are vented.
    """
    f, design = geometry.frame, geometry.design
    roof = f.uphill_contact
    top = roof if design.house.attic_heated else min(heated(geometry).top, roof)
    share = (top - f.flue_start) / (f.liner_top - f.flue_start)
    return SHELTER.get(design.chimney.location or "", 0.0) * min(max(share, 0.0), 1.0)
