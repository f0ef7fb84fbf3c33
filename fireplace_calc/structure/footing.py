"""Pressure under the footing: everything on it, itself once, and the wind."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.allowables import bearing
from fireplace_calc.structure.loads.stack import FreeStack
from fireplace_calc.structure.loads.weights import Weights
from fireplace_calc.structure.loads.wind_pressure import service_factor


def edge_factor(eccentricity: float, length: float) -> float | None:
    r"""Pressure under the edge of a footing over the mean.

    Parameters
    ----------
    eccentricity : float
        Of the load from the middle. [m]
    length : float
        Of the footing, the way it is off. [m]

    Returns
    -------
    float or None
        None where the load passes the edge and the footing overturns. [-]

    Notes
    -----
    .. math:: 1 + 6e/B \quad (e \le B/6), \qquad \frac{4}{3(1 - 2e/B)} \quad (e > B/6)

    The second is :math:`2N / 3L(B/2 - e)`: the far side has lifted off.
    """
    ratio = abs(eccentricity) / length
    if ratio <= 1 / 6:
        return 1 + 6 * ratio
    return 4 / (3 * (1 - 2 * ratio)) if ratio < 0.5 else None


def area_for(load: float, own: float, allowed: float) -> float:
    """Least area of a footing under an even load.

    Parameters
    ----------
    load, own : float
        On it, and its own weight. [N]
    allowed : float
        Pressure of the ground. [Pa]

    Returns
    -------
    float
        Area. [m2]
    """
    return (load + own) / allowed


@dataclass(frozen=True, slots=True)
class Footing:
    """The footing as drawn.

    Attributes
    ----------
    width, depth, thickness, projection : float
        Along the breast, front to back, of the concrete, and beyond the base. [m]
    load : float
        All that stands on it, and itself. [N]
    off_side, off_back : float
        Of that weight from the middle of the footing, sideways and toward the back. [m]
    mean, pressure : float or None
        Even, and under the worst edge; no pressure where it overturns. [Pa]
    wind_pressure : float or None
        Under the worst edge with service wind on a chimney that nothing else holds. [Pa]
    overturns : bool
        In that wind the load passes the edge.
    supported : bool
        Something above holds the chimney, so that its wind goes into the house.
    wind_known : bool
    allowed : float or None
        Presumptive pressure of the soil. [Pa]
    least_area : float or None
        That the even load would need. [m2]
    """

    width: float
    depth: float
    thickness: float
    projection: float
    load: float
    off_side: float
    off_back: float
    mean: float
    pressure: float | None
    wind_pressure: float | None
    overturns: bool
    supported: bool
    wind_known: bool
    allowed: float | None
    least_area: float | None


def _worst(mean: float, side: float, back: float, width: float, depth: float) -> float | None:
    """Off both ways at once: the product is never less than the sum of the books. [Pa]"""
    one, other = edge_factor(side, width), edge_factor(back, depth)
    return None if one is None or other is None else mean * one * other


def assess_footing(design: Design, frame: Frame, weights: Weights, stack: FreeStack) -> Footing:
    """Pressure under the footing, still air and wind.

    Parameters
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.
    stack : FreeStack
        The chimney and its wind.

    Returns
    -------
    Footing

    Notes
    -----
    The hearth extension is counted on the footing, where it would stand if it were cantilevered
    from the base; a seat beside it stands on the floor and is not. Earth on the projection is not
    counted. Wind on the breast below the shoulder goes into the house wall it stands in.
    """
    out = design.base.footing_projection
    width, depth = 2 * (frame.block_half + out), frame.block_back + 2 * out
    whole = weights.point_mass([name for name in weights.masses if name not in SEAT])
    load = G * whole.mass
    side, back = whole.x, whole.y - frame.block_back / 2
    mean = load / (width * depth)
    supported = design.loads.support is not None
    wind_pressure, overturns = None, False
    winds = [side.wind_load for side in stack.sides if side.wind_load is not None]
    if stack.wind_known and not supported:
        service = service_factor(design.loads.wind_map)
        across, along = (service * w.moment(frame.footing_bottom) / load for w in winds)
        edges = [
            _worst(mean, abs(side) + across, back, width, depth),
            _worst(mean, side, abs(back) + along, width, depth),
        ]
        pressures = [edge for edge in edges if edge is not None]
        overturns = len(pressures) < len(edges)
        wind_pressure = None if overturns else max(pressures)
    allowed = bearing(design.site.soil) if design.site.soil is not None else None
    own = G * weights.masses["footing"]
    return Footing(
        width,
        depth,
        design.base.footing_thickness,
        out,
        load,
        side,
        back,
        mean,
        _worst(mean, side, back, width, depth),
        wind_pressure,
        overturns,
        supported,
        stack.wind_known,
        allowed,
        area_for(load - own, own, allowed) if allowed else None,
    )
