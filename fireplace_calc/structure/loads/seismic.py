"""Earthquake on the chimney: the force by coefficient, and the bars, ties and straps that codes ask
without any sum.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame, flue_count
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.loads.sections import edge_tension
from fireplace_calc.structure.loads.stack import LINING, WALLS, FreeStack
from fireplace_calc.structure.loads.weights import Weights

STRONG_SEISMIC = ("D0", "D1", "D2", "E")
"""Seismic design categories in which plain masonry chimneys are not built."""


def design_response(mapped: float, soil: float) -> float:
    r"""Short-period design response, ASCE 7's SDS.

    Parameters
    ----------
    mapped, soil : float
        SS off the map and Fa of the ground. [-]

    Returns
    -------
    float
        Over gravity. [-]

    Notes
    -----
    .. math:: S_{DS} = \tfrac{2}{3} F_a S_S

    References
    ----------
    ASCE 7-16, 11.4.
    """
    return 2 / 3 * soil * mapped


def force_bounds(response: float, importance: float = 1.0) -> tuple[float, float]:
    """Least and largest force on a component, over its weight.

    Parameters
    ----------
    response, importance : float
        SDS, and Ip, which is 1 for houses. [-]

    Returns
    -------
    tuple of float
        Over the weight. [-]

    References
    ----------
    ASCE 7-16, equations 13.3-2 and 13.3-3.
    """
    return (
        figure("component force, least") * response * importance,
        figure("component force, most") * response * importance,
    )


def component_force(
    response: float,
    amplification: float,
    level: float = 1.0,
    importance: float = 1.0,
    reduction: float | None = None,
) -> float:
    r"""Sideways force on a component of a house over its weight, ASCE 7-16's Fp.

    Parameters
    ----------
    response : float
        SDS. [-]
    amplification : float
        ap: 2.5 unbraced or braced below the center of mass, 1.0 braced above it. [-]
    level : float
        Where it is held over the roof's height: 1 at the roof; 0 only for a chimney on the ground
        by itself, and that is another chapter. [-]
    importance : float
        Ip. [-]
    reduction : float or None
        Rp; unknown takes the chimney's. [-]

    Returns
    -------
    float
        Over the weight, within its bounds. [-]

    Notes
    -----
    .. math:: F_p / W_p = 0.4\,a_p S_{DS} (1 + 2 z/h) I_p / R_p

    References
    ----------
    ASCE 7-16, equations 13.3-1 to 13.3-3.

    Examples
    --------
    >>> round(component_force(1.0, 2.5), 6)
    1.2
    """
    reduction = figure("component response factor") if reduction is None else reduction
    least, most = force_bounds(response, importance)
    found = (
        figure("component force factor")
        * amplification
        * response
        * importance
        / reduction
        * (1 + 2 * level)
    )
    return min(max(found, least), most)


@dataclass(frozen=True, slots=True)
class SeismicLoad:
    """Earthquake on the part above the last support.

    Attributes
    ----------
    response, amplification, ratio : float
        SDS, ap, and Fp over the weight. [-]
    braced : bool
        Held above the center of mass of the stack.
    force, vertical : float
        Sideways, and up or down with it, at strength level. [N]
    moment : float
        At service level about the section. [N m]
    tension : float
        At the edge of the section, were it plain masonry. [Pa]
    """

    response: float
    amplification: float
    ratio: float
    braced: bool
    force: float
    vertical: float
    moment: float
    tension: float


def seismic_load(
    design: Design, frame: Frame, weights: Weights, stack: FreeStack
) -> SeismicLoad | None:
    """Earthquake on the free part; nothing where the response is not known.

    Parameters
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.
    stack : FreeStack

    Returns
    -------
    SeismicLoad or None

    Notes
    -----
    The liner shakes along but presses on nothing here. Service level is 0.7 of the force against
    0.6 of the weight, less 0.7 of the vertical shaking.
    """
    response = design.loads.sds
    if response is None:
        return None
    support, whole = design.loads.support, weights.point_mass(WALLS + LINING, frame.shoulder_top)
    braced = support is not None and support > whole.z
    amplification = figure("amplification, braced" if braced else "amplification, unbraced")
    ratio = component_force(response, amplification)
    force, vertical = (
        ratio * G * stack.seismic_mass.mass,
        figure("vertical shaking") * response * G * stack.seismic_mass.mass,
    )
    service, side = figure("service earthquake"), min(stack.sides, key=lambda s: s.modulus)
    moment = service * force * max(stack.seismic_mass.z - stack.base, 0.0)
    pressed = (
        figure("weight against wind") - service * figure("vertical shaking") * response
    ) * stack.weight
    offset_moment = stack.weight * max(s.offset for s in stack.sides)
    return SeismicLoad(
        response,
        amplification,
        ratio,
        braced,
        force,
        vertical,
        moment,
        edge_tension(
            moment + figure("weight against wind") * offset_moment, pressed, side.area, side.modulus
        ),
    )


@dataclass(frozen=True, slots=True)
class Steel:
    """What the codes ask of the drawn chimney where the ground shakes; bars and ties are counted
    from the footing to the crown.

    Attributes
    ----------
    bars : int or None
        No. 4, full height; unknown where the number of flues is. [-]
    bar_length : float
        Of each, footing to crown, laps not counted. [m]
    ties : int
        1/4 in, in the bed joints. [-]
    levels, straps : int
        Floors, ceilings and roof lines high over grade, and straps at all of them together. [-]
    """

    bars: int | None
    bar_length: float
    ties: int
    levels: int
    straps: int


def bar_count(width: float, flues: int) -> int:
    """Upright bars that a chimney takes by rule.

    Parameters
    ----------
    width : float
        Its longer side. [m]
    flues : int
        In it. [-]

    Returns
    -------
    int
        No. 4 bars; texts count the further ones by width or by flue, and the larger count is taken.
        [-]
    """
    step = figure("bars, width step")
    more = max(ceil((width - step) / step - LIMIT_SLACK), flues - 1, 0)
    return round(figure("bars") + figure("bars, more") * more)


def steel(design: Design, frame: Frame) -> Steel:
    """Bars, ties and straps by rule, for this chimney.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    Steel
    """
    anchorage = design.anchorage
    width = (
        2 * max(frame.stack_half, frame.stack_depth)
        if anchorage.chimney_width is None
        else anchorage.chimney_width
    )
    flues = flue_count(anchorage.n_flues, frame)
    length = frame.crown_bottom - frame.footing_top
    ties = ceil(length / figure("tie spacing") - LIMIT_SLACK) + 1
    least = frame.grade + figure("straps from")
    high = [
        level
        for level in (0.0, design.house.ceiling, frame.uphill_contact)
        if level > least + LIMIT_SLACK
    ]
    levels = 0 if design.chimney.location == "interior" else len(high)
    return Steel(
        None if flues is None else bar_count(width, flues),
        length,
        ties,
        levels,
        levels * round(figure("straps")),
    )
