"""Masonry pressed where the stack stands: its weight, and the edge that the wind leans on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt

from fireplace_calc.structure.figures import figure


@dataclass(frozen=True, slots=True)
class PressedSection:
    """A level cut through the stack, and what presses on it.

    Attributes
    ----------
    level : float
        [m]
    axial, bending : float
        Mean stress of the weight above, and what bending adds at the leeward edge. [Pa]
    slenderness : float
        Free height over the radius of gyration; twice the height where nothing holds the top. [-]
    """

    level: float
    axial: float
    bending: float
    slenderness: float

    def share(self, strength: float) -> float:
        r"""How much of what the masonry may bear is used up.

        Parameters
        ----------
        strength : float
            Of the masonry. [Pa]

        Returns
        -------
        float
            One is all of it. [-]

        Notes
        -----
        .. math:: f_a / F_a + f_b / F_b \le 1

        References
        ----------
        TMS 402, allowable stress design of plain masonry, from memory.
        """
        return self.axial / axial_allowed(strength, self.slenderness) + self.bending / (
            figure("masonry bending share") * strength
        )


def axial_allowed(strength: float, slenderness: float) -> float:
    r"""What plain masonry may bear along its axis.

    Parameters
    ----------
    strength : float
        Of the masonry as built. [Pa]
    slenderness : float
        Effective height over the radius of gyration. [-]

    Returns
    -------
    float
        Mean stress. [Pa]

    Notes
    -----
    .. math:: F_a = f'_m/4\;[1 - (h/140r)^2] \text{ up to 99, beyond } f'_m/4\;(70r/h)^2

    References
    ----------
    TMS 402, allowable stress design of plain masonry, from memory.

    Examples
    --------
    >>> axial_allowed(1000.0, 70.0)
    187.5
    """
    most = figure("masonry axial share") * strength
    if slenderness <= figure("masonry slenderness limit"):
        return most * (1 - (slenderness / figure("masonry slenderness, stout")) ** 2)
    return most * (figure("masonry slenderness, slender") / slenderness) ** 2


def pressed_section(
    level: float,
    weight: float,
    area: float,
    sides: Iterable[tuple[float, float, float]],
    height: float,
) -> PressedSection:
    """A section under its weight and the worst of two directions of bending.

    Parameters
    ----------
    level : float
        Of the section. [m]
    weight : float
        Of masonry above it. [N]
    area : float
        Of the section. [m2]
    sides : iterable of tuple
        Of each direction: thickness [m], section modulus [m3], moment [N m].
    height : float
        Effective, to where something holds it. [m]

    Returns
    -------
    PressedSection
    """
    sides = tuple(sides)
    radius = min(sqrt(modulus * thickness / 2 / area) for thickness, modulus, _ in sides)
    bending = max(moment / modulus for _, modulus, moment in sides)
    return PressedSection(level, weight / area, bending, height / radius)
