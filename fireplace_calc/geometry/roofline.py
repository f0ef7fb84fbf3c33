"""Where the roof meets the chimney, and what stands higher within reach."""

from __future__ import annotations

from fireplace_calc.base.units import FOOT
from fireplace_calc.design.records import Design

REACH = 10 * FOOT
"""Level distance within which the chimney top is compared with the building. [m]"""


def roof_contacts(design: Design, across: float, deep: float) -> tuple[float, float, float, str]:
    """Where the roof meets the chimney, and the highest thing within reach of its uphill face.

    Parameters
    ----------
    design : Design
    across, deep : float
        Outside of the chimney, left to right and front to back. [m]

    Returns
    -------
    tuple
        Level of the uphill and of the downhill contact, and of the highest thing within ``REACH``,
        above the room floor [m]; then what that is.
    """
    roof = design.roof
    up_slope = deep if roof.ridge_runs == "along the opening" else across
    if roof.position == "through the ridge":
        contact, ridge_distance = roof.ridge_level, 0.0
        downhill = contact - roof.pitch * up_slope / 2
    else:
        ridge_distance = roof.ridge_distance
        contact = roof.ridge_level - roof.pitch * ridge_distance
        downhill = contact - roof.pitch * up_slope
    highest, what = highest_within(design, contact, REACH)
    return contact, downhill, highest, "roof 10 ft uphill" if what == "roof" else what


def highest_within(design: Design, contact: float, distance: float) -> tuple[float, str]:
    """Highest part of the building within a level distance of the uphill chimney face.

    Parameters
    ----------
    design : Design
    contact : float
        Level at which the roof meets that face, above the room floor. [m]
    distance : float
        How far is looked. [m]

    Returns
    -------
    tuple
        Its level above the room floor [m], and what it is.
    """
    roof, slack = design.roof, 1e-9 * REACH
    ridge_distance = 0.0 if roof.position == "through the ridge" else roof.ridge_distance
    reached = [
        (
            contact + roof.pitch * min(ridge_distance, distance),
            "ridge" if ridge_distance <= distance + slack else "roof",
        )
    ]
    reached += [
        (part.drawn_level, part.name)
        for part in roof.nearby
        if part.drawn_distance <= distance + slack
    ]
    return max(reached, key=lambda pair: pair[0])
