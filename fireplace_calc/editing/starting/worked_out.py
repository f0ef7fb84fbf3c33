"""What follows from the answers: stories and roof to levels, a height to a count of sections."""

from __future__ import annotations

from math import ceil, floor

from fireplace_calc.base.printing import named
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FOOT, INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.geometry.frame_builder import build_frame

FLOOR = 1.0 * FOOT
"""Thickness taken for a floor between two storeys, ceiling to floor: engineering judgement. [m]"""


def levels(design: Design, storeys: int) -> dict[str, str]:
    """Eaves and highest heated ceiling over the floor of the room.

    Parameters
    ----------
    design : Design
        With its ceiling.
    storeys : int
        Over the floor of the room, its own counted in. [-]
    """
    top = storeys * design.house.ceiling + (storeys - 1) * FLOOR
    return {"roof.eaves_level": f"{top} m", "house.highest_ceiling": f"{top} m"}


def ridge(design: Design) -> dict[str, str]:
    """Level of the ridge, from pitch, eaves and distance: an outside chimney stands at the eaves,
    one inside has the room's depth between it and them. To the next whole inch up.

    Parameters
    ----------
    design : Design
        With pitch, distance and eaves.
    """
    frame, roof = build_frame(design), design.roof
    inside = design.chimney.location == "interior"
    run = roof.ridge_distance + frame.stack_depth + (design.house.room_width or 0.0) * inside
    inches = ceil((roof.eaves_level + roof.pitch * run) / INCH - ROUNDING)
    return {"roof.ridge_level": f"{inches} in"}


def sections_for(design: Design, top: float) -> int:
    """The count of flue sections that brings the top of the chimney nearest to the height asked; of
    two that are as near, the higher.

    Parameters
    ----------
    design : Design
    top : float
        Of the crown, over the floor of the room. [m]

    Returns
    -------
    int
        [-]

    Raises
    ------
    InputError
        When fewer or more sections than a flue may have would do it.
    """
    spec = all_inputs()["flue.sections"]
    least, most = (round(bound) for bound in spec.bounds)
    first, last = (crown_with(design, count) for count in (least, most))
    each = (last - first) / (most - least)
    count = least + floor((top + ROUNDING - first) / each + 0.5)
    if not least <= count <= most:
        raise InputError(
            f"Chimney height is {named(top, 'length')} over the floor, but {least} to {most}"
            f" sections bring its top to {named(first, 'length')} to {named(last, 'length')}.",
            "Chimney height",
            f"{named(first, 'length')} to {named(last, 'length')}",
            named(top, "length"),
        )
    return count


def crown_with(design: Design, sections: int) -> float:
    """Top of the crown over the floor of the room, with so many sections. [m]"""
    more = sections - design.flue.sections
    each = design.flue.section_height + design.flue.joint
    return build_frame(design).crown_top + more * each
