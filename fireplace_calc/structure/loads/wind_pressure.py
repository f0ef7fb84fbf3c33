"""Wind by ASCE 7: its pressure at a height, the shape of a chimney against it, and the factor of
what stands on a roof.
"""

from __future__ import annotations

from itertools import pairwise
from math import exp

from fireplace_calc.base.units import InputError
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

    References
    ----------
    ASCE 7-16, 26.10, and ASCE 7-22.

    Examples
    --------
    >>> round(exposure_factor(5.0, "C"), 4)
    0.865
    """
    ground = terrain(exposure, edition)
    over: float = (max(height, ground.lowest) / ground.gradient) ** (2 / ground.alpha)
    return ground.coefficient * over


def altitude_factor(altitude: float) -> float:
    r"""Thinner air pushes less, ASCE 7's Ke.

    Parameters
    ----------
    altitude : float
        Over the sea. [m]

    Returns
    -------
    float
        Factor on the pressure. [-]

    Notes
    -----
    .. math:: K_e = e^{-c\,z}

    References
    ----------
    ASCE 7-16, table 26.9-1.
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

    References
    ----------
    ASCE 7-16, equation 26.10-1.
    """
    return figure("wind pressure factor") * exposure * hill * directionality * altitude * speed**2


def force_coefficient(slenderness: float, section: str = FACE) -> float:
    """Shape of a chimney against the wind, ASCE 7's Cf.

    Parameters
    ----------
    slenderness : float
        Height over least side; under 1 counts as 1, over 25 as 25. [-]
    section : str
        ``FACE`` or ``DIAGONAL``: wind on the face of a square, or on its diagonal.

    Returns
    -------
    float
        Coefficient, on the area as the wind sees it. [-]

    Raises
    ------
    InputError
        When the table does not hold the section.

    References
    ----------
    ASCE 7-16, figure 29.4-1.
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

    References
    ----------
    ASCE 7-16, 29.4.1.
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
