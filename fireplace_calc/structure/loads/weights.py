"""What every part weighs and where its middle lies, so that the weight above any level is known
with its line of action.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import cached_property

from fireplace_calc.geometry.first_moments import Moments, moments
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff import part_weights


@dataclass(frozen=True, slots=True)
class PointMass:
    """A mass and the place of its middle.

    Attributes
    ----------
    mass : float
        [kg]
    x, y, z : float
        From the middle of the opening, the face of the wall and the room floor. [m]
    """

    mass: float
    x: float
    y: float
    z: float


@dataclass(frozen=True)
class Weights:
    """Mass of every part.

    Attributes
    ----------
    masses : dict of str to float
        By the part's name. [kg]
    parts : dict of str to Part
        Likewise.
    """

    masses: dict[str, float]
    parts: dict[str, Part]

    @cached_property
    def whole(self) -> dict[str, Moments]:
        """Volume [m3] and first moments [m4] of every part."""
        return {name: moments(known) for name, known in self.parts.items()}

    @property
    def total(self) -> float:
        """Of the whole, footing counted in. [kg]"""
        return sum(self.masses.values())

    def density(self, name: str, otherwise: float) -> float:
        """Of one part as built, joints and cores counted; ``otherwise`` where there is no such
        part. [kg/m3]
        """
        known = self.parts.get(name)
        return (
            self.masses[name] / known.volume
            if known is not None and known.volume > 0
            else otherwise
        )

    def point_mass(
        self, names: Collection[str] | None = None, level: float | None = None
    ) -> PointMass:
        """Some parts, or all, as one mass; with a level only what of them lies above it.

        Parameters
        ----------
        names : collection of str or None
            Of parts; those that the design does not have count nothing.
        level : float or None
            From the room floor. [m]

        Returns
        -------
        PointMass
        """
        mass = x = y = z = 0.0
        for name in self.masses if names is None else names:
            known = self.parts.get(name)
            if known is None or known.volume <= 0 or (level is not None and known.top <= level):
                continue
            density = self.masses[name] / known.volume
            volume, along, across, up = (
                self.whole[name]
                if level is None or known.bottom >= level
                else moments(known, level)
            )
            mass, x, y, z = (
                mass + density * volume,
                x + density * along,
                y + density * across,
                z + density * up,
            )
        return (
            PointMass(mass, x / mass, y / mass, z / mass)
            if mass > 0
            else PointMass(0.0, 0.0, 0.0, level or 0.0)
        )

    def each(self) -> Iterable[tuple[str, PointMass]]:
        """Every part with its mass and middle."""
        return ((name, self.point_mass((name,))) for name in self.masses)


def weigh(geometry: Geometry) -> Weights:
    """Mass of every part, as the takeoff counts it: brick and joints, hollow block and grout.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Weights
    """
    return Weights(dict(geometry.once(part_weights)), {part.name: part for part in geometry.parts})
