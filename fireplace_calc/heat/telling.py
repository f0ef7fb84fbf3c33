"""Temperatures as a judgement tells them: up to the next 5 °C, in the reader's degrees."""

from __future__ import annotations

from math import ceil

from fireplace_calc.base.units import FEET_INCHES

STEP = 5.0
"""To whose next multiple a temperature is told, on either scale. [C], [F]"""
SLIGHT = 1e-9
"""Of a step: what a float may be over one. [-]"""


def next_step(value: float) -> float:
    """Up to the next multiple of five.

    Examples
    --------
    >>> next_step(110.2), next_step(110.0)
    (115.0, 110.0)
    """
    return STEP * ceil(value / STEP - SLIGHT)


def told(*celsius: float, units: str) -> str:
    """Temperatures as they are told: a reader of Fahrenheit is told the same 5 °C in 5 °F.

    Examples
    --------
    >>> told(112.0, units="millimetres"), told(35.0, 68.2, units="feet-inches")
    ('115 °C', '95, 160 °F')
    """
    steps = [next_step(t) for t in celsius]
    if units == FEET_INCHES:
        return ", ".join(f"{next_step(t * 1.8 + 32):.0f}" for t in steps) + " °F"
    return ", ".join(f"{t:.0f}" for t in steps) + " °C"


def exactly(celsius: float, units: str) -> str:
    """A limit, or what is worked elsewhere, to a degree.

    Examples
    --------
    >>> exactly(71.0, "feet-inches"), exactly(71.0, "millimetres")
    ('160 °F', '71 °C')
    """
    return f"{celsius * 1.8 + 32:.0f} °F" if units == FEET_INCHES else f"{celsius:.0f} °C"
