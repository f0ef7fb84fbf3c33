"""Values in the reader's units as they stand in a formula: lengths as a tape has them, all else as
plain decimals.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.units import FOOT, PCF, POUND, PSF, SQIN, G


@dataclass(frozen=True, slots=True)
class PlainDecimals:
    """Prints SI values in the reader's units.

    Attributes
    ----------
    metric : bool
        Meters and newtons; otherwise inches, feet and pounds.
    """

    metric: bool

    def _text(self, value: float, digits: int, unit: str) -> str:
        text = f"{value:.{digits}f}"
        return f"{text.rstrip('0').rstrip('.') if '.' in text else text} {unit}"

    def length(self, value: float) -> str:
        """A length [m], of a part: all of it in inches, to a sixteenth."""
        return self._text(value, 3, "m") if self.metric else feet_inches(value, inches_only=True)

    def level(self, value: float) -> str:
        """A level or a height [m] that is added or taken away."""
        return self._text(value, 3, "m") if self.metric else feet_inches(value)

    def long_length(self, value: float) -> str:
        """A length [m], of a wall or a chimney, that is multiplied."""
        return self._text(value, 3, "m") if self.metric else self._text(value / FOOT, 2, "ft")

    def area(self, value: float) -> str:
        """An area. [m2]"""
        return self._text(value, 4, "m²") if self.metric else self._text(value / SQIN, 1, "in²")

    def pressure(self, value: float) -> str:
        """A pressure. [Pa]"""
        return (
            self._text(value, 0, "N/m²") if self.metric else self._text(value / PSF, 1, "lbf/ft²")
        )

    def density(self, value: float) -> str:
        """A density of air or gas. [kg/m3]"""
        return f"{value:.3f} kg/m³" if self.metric else f"{value / PCF:.5f} lb/ft³"

    def force(self, value: float) -> str:
        """A force. [N]"""
        return (
            self._text(value, 0, "N") if self.metric else self._text(value / (POUND * G), 0, "lbf")
        )
