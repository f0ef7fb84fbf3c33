"""What the smoke pays on its way: every loss as a number of velocity heads in the flue. Floats or
arrays alike.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import bends, coefficient, contractions


def inlet_loss(flue_area: Number, throat_area: Number) -> Number:
    r"""From the room into the flue: mouth of the fireplace and throat.

    Parameters
    ----------
    flue_area : float or array
        Clear area of the flue. [m2]
    throat_area : float or array
        Real free area of the throat, or of the damper where that is less. [m2]

    Returns
    -------
    float or array
        Loss coefficient on the flue's velocity pressure. [-]

    Notes
    -----
    .. math:: K = 0.5 + 2\,(A_{flue} / A_{throat})^2

    Passes through the three published values: 0.5 for an open cone, 1.0 for a throat of twice the
    flue, 2.5 for one of the flue's own area. Between them it is an interpolation of this project.

    References
    ----------
    The three values: chimney chapter of the ASHRAE handbook, from memory.

    Examples
    --------
    >>> inlet_loss(0.07, 0.14), inlet_loss(0.07, 0.07)
    (1.0, 2.5)
    """
    return mouth_loss() + throat_loss(flue_area, throat_area)


def mouth_loss() -> float:
    """The part of the inlet loss that no throat can save.

    Returns
    -------
    float
        Loss coefficient on the flue's velocity pressure. [-]
    """
    return coefficient("inlet, open cone")


def throat_loss(flue_area: Number, throat_area: Number) -> Number:
    r"""The part of the inlet loss that the throat makes.

    Parameters
    ----------
    flue_area : float or array
        Clear area of the flue. [m2]
    throat_area : float or array
        Real free area of the throat. [m2]

    Returns
    -------
    float or array
        Loss coefficient on the flue's velocity pressure. [-]

    Notes
    -----
    .. math:: K = 2\,(A_{flue} / A_{throat})^2
    """
    span = coefficient("inlet, throat as the flue") - coefficient("inlet, open cone")
    return span * (flue_area / throat_area) ** 2


def hydraulic_diameter(area: Number, perimeter: Number) -> Number:
    """Four times area over perimeter; the diameter of a round flue, the side of a square one.

    Parameters
    ----------
    area : float or array
        Clear. [m2]
    perimeter : float or array
        Wetted. [m]

    Returns
    -------
    float or array
        Hydraulic diameter. [m]

    Examples
    --------
    >>> hydraulic_diameter(0.09, 1.2)
    0.3
    """
    return 4.0 * area / perimeter


def friction_factor(reynolds: Number, relative_roughness: Number) -> Number:
    r"""Darcy's friction factor in a rough pipe, by Colebrook; by Poiseuille where the flow is
    laminar.

    Parameters
    ----------
    reynolds : float or array
        Above zero. [-]
    relative_roughness : float or array
        Roughness over hydraulic diameter, 0 to 0.05. [-]

    Returns
    -------
    float or array
        Darcy's friction factor. [-]

    Notes
    -----
    .. math:: 1/\sqrt f = -2 \log_{10}\left[\epsilon/3.7D + 2.51/(Re \sqrt f)\right]

    Haaland's explicit form starts it and one step of Colebrook's ends it, within 0.3 % above Re
    4000. The larger of the two laws is taken, so that there is no jump between them.

    References
    ----------
    Colebrook, C. F., 1939, J. Inst. Civ. Eng. 11, 133; Haaland, S. E., 1983, J. Fluids Eng. 105,
    89; both from memory, held against the fluids library in the tests.

    Examples
    --------
    >>> round(float(friction_factor(4e4, 0.005)), 4)
    0.0326
    """
    rough = relative_roughness / 3.7
    start = -1.8 * np.log10(rough**1.11 + 6.9 / reynolds)
    turbulent = (-2.0 * np.log10(rough + 2.51 * start / reynolds)) ** -2
    return np.maximum(64.0 / reynolds, turbulent)


def handbook_friction(length: Number, diameter: Number) -> Number:
    """Friction loss as the handbook sizes with: a fixed factor, whatever the wall.

    Parameters
    ----------
    length, diameter : float or array
        Both in the same unit; the printed 0.4 L/d has feet over inches. [m]

    Returns
    -------
    float or array
        Loss coefficient. [-]

    References
    ----------
    Chimney chapter of the ASHRAE handbook, from memory.

    Examples
    --------
    >>> round(handbook_friction(20 * 0.3048, 12 * 0.0254), 3)   # 0.4 x 20 / 12
    0.666
    """
    return coefficient("friction factor") * length / diameter


def bend_loss(angle: Number) -> Number:
    """One mitred bend, by its angle.

    Parameters
    ----------
    angle : float or array
        Change of direction, 0 to pi/2; past the ends of the table its last value is kept. [rad]

    Returns
    -------
    float or array
        Loss coefficient, straight lines between the tabled angles. [-]

    References
    ----------
    SMACNA duct fitting table, read; ``data/mitred_bends.csv``.

    Examples
    --------
    >>> round(float(bend_loss(3.14159265 / 6)), 3)
    0.16
    """
    angles, losses = bends()
    loss: Number = np.interp(angle, angles, losses)
    return loss


def contraction_loss(large: Number, small: Number, included_angle: Number) -> Number:
    """A converging chamber, on the velocity pressure of its small end.

    Parameters
    ----------
    large, small : float or array
        Areas of both ends; no loss when the first is not the larger. [m2]
    included_angle : float or array
        Between opposite faces. [rad]

    Returns
    -------
    float or array
        Loss coefficient, straight lines between the tabled ratios and angles; past the largest
        ratio its own value. [-]

    References
    ----------
    Converging transitions, ASHRAE Handbook Fundamentals, from memory; ``data/contractions.csv``.

    Examples
    --------
    >>> round(float(contraction_loss(0.2, 0.1, 1.0)), 2)
    0.06
    """
    table = contractions()
    ratios = np.array([1.0, *table])  # no loss where nothing narrows
    ratio, angle = np.broadcast_arrays(
        np.clip(np.asarray(large, float) / small, 1.0, ratios[-1]), included_angle
    )
    # One row for each tabled ratio, at the angles that are asked for; then between the two rows
    # beside each ratio that is asked for.
    by_ratio = np.stack(
        [np.zeros(angle.shape), *(np.interp(angle, *pair) for pair in table.values())]
    )
    k = np.clip(np.searchsorted(ratios, ratio) - 1, 0, len(ratios) - 2)
    low, high = (np.take_along_axis(by_ratio, (k + step)[None], axis=0)[0] for step in (0, 1))
    loss: Number = low + (ratio - ratios[k]) / (ratios[k + 1] - ratios[k]) * (high - low)
    return loss


def top_loss(
    rain_cap: bool | None, arrester: bool | None, cap_free_area: float | None, flue_area: float
) -> tuple[float, float]:
    """Rain cap and spark screen at the top; the open top's own velocity head is counted elsewhere,
    once.

    Parameters
    ----------
    rain_cap, arrester : bool or None
        Whether there is one; unknown counts as none.
    cap_free_area : float or None
        Open area round the cap. [m2]
    flue_area : float
        Clear area of the flue. [m2]

    Returns
    -------
    tuple of float
        Loss coefficients of cap and of screen. [-]

    Notes
    -----
    A cap whose free area is known to be at least four times the flue counts as one of low
    resistance: engineering judgement, after the code's measure for a screen.

    Examples
    --------
    >>> top_loss(True, False, None, 0.07)
    (1.5, 0.0)
    """
    generous = cap_free_area is not None and cap_free_area >= 4 * flue_area
    cap = coefficient("cap, low resistance" if generous else "cap, other") if rain_cap else 0.0
    return cap, coefficient("spark screen") if arrester else 0.0
