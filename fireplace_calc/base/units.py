"""Units at the door: text with a unit in, SI float out; SI float in, text in the reader's units
out.

Inside the package every number is an SI float. This is the only module that knows pint, and it
wakes pint only for texts the short rules below cannot read.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from fireplace_calc.base.messages import one_line

if TYPE_CHECKING:
    from pint import UnitRegistry

EXACT_INCH, EXACT_FOOT, _LB = Fraction("0.0254"), Fraction("0.3048"), Fraction("0.45359237")
_PSF = _LB * Fraction("9.80665") / EXACT_FOOT**2
_H, _MILE = Fraction(3600), Fraction("1609.344")

INCH, FOOT, MM = float(EXACT_INCH), float(EXACT_FOOT), 0.001
SQIN, SQFT = float(EXACT_INCH**2), float(EXACT_FOOT**2)
CUFT, CUYD = float(EXACT_FOOT**3), float(27 * EXACT_FOOT**3)
POUND, G, DEG = float(_LB), 9.80665, math.pi / 180
PSF, PCF = float(_PSF), float(_LB / EXACT_FOOT**3)

FEET_INCHES, MILLIMETRES = "feet-inches", "millimetres"
SYSTEMS = (FEET_INCHES, MILLIMETRES)

SI_UNIT = {
    "length": "m",
    "area": "m**2",
    "volume": "m**3",
    "angle": "rad",
    "temperature": "K",
    "pressure": "Pa",
    "bearing": "Pa",
    "strength": "Pa",
    "speed": "m/s",
    "mass": "kg",
    "mass rate": "kg/s",
    "density": "kg/m**3",
    "ratio": "",
    "power": "W",
    "flow": "m**3/s",
    "force": "N",
}
"""Kinds of quantity, and the SI unit each is held in. What the ground bears and what concrete
resists are pressures, told in units of their own.
"""

EXAMPLES = {
    "length": """36 in, 3'-0" or 914 mm""",
    "area": '"864 in2" or "0.56 m2"',
    "volume": '"400 m3" or "14000 ft3"',
    "angle": '"45 deg"',
    "temperature": '"-10 degC" or "14 degF"',
    "pressure": '"5 Pa"',
    "bearing": '"3000 psf" or "150 kPa"',
    "strength": '"3000 psi" or "20 MPa"',
    "speed": '"50 m/s" or "115 mph"',
    "mass": '"20 kg" or "44 lb"',
    "mass rate": '"3.5 kg/h"',
    "density": '"2300 kg/m3"',
    "ratio": '"0.2", "20 %" or "7:12"',
    "power": '"10 kW"',
    "flow": '"50 L/s" or "100 cfm"',
    "force": '"500 lbf" or "2 kN"',
}

_DEG = Fraction(DEG)
_PRESSURES = {
    "Pa": Fraction(1),
    "kPa": Fraction(1000),
    "MPa": Fraction(10**6),
    "psf": _PSF,
    "psi": 144 * _PSF,
}
FACTORS: dict[str, dict[str, Fraction]] = {
    "length": {
        "in": EXACT_INCH,
        "inch": EXACT_INCH,
        "inches": EXACT_INCH,
        '"': EXACT_INCH,
        "ft": EXACT_FOOT,
        "foot": EXACT_FOOT,
        "feet": EXACT_FOOT,
        "'": EXACT_FOOT,
        "mm": Fraction(1, 1000),
        "cm": Fraction(1, 100),
        "m": Fraction(1),
        "yd": 3 * EXACT_FOOT,
    },
    "area": {
        "in2": EXACT_INCH**2,
        "ft2": EXACT_FOOT**2,
        "mm2": Fraction(1, 10**6),
        "cm2": Fraction(1, 10**4),
        "m2": Fraction(1),
    },
    "volume": {
        "ft3": EXACT_FOOT**3,
        "yd3": 27 * EXACT_FOOT**3,
        "m3": Fraction(1),
        "L": Fraction(1, 1000),
    },
    "angle": {"deg": _DEG, "degrees": _DEG, "°": _DEG, "rad": Fraction(1)},
    "pressure": _PRESSURES,
    "bearing": _PRESSURES,
    "strength": _PRESSURES,
    "speed": {"m/s": Fraction(1), "mph": _MILE / _H, "km/h": 1000 / _H},
    "mass": {"kg": Fraction(1), "lb": _LB, "t": Fraction(1000)},
    "mass rate": {"kg/h": 1 / _H, "kg/s": Fraction(1), "lb/h": _LB / _H},
    "density": {"kg/m3": Fraction(1), "pcf": _LB / EXACT_FOOT**3, "lb/ft3": _LB / EXACT_FOOT**3},
    "ratio": {"": Fraction(1), "%": Fraction(1, 100)},
    "power": {"W": Fraction(1), "kW": Fraction(1000)},
    "force": {"N": Fraction(1), "kN": Fraction(1000), "lbf": _LB * Fraction("9.80665")},
    "flow": {
        "m3/s": Fraction(1),
        "L/s": Fraction(1, 1000),
        "m3/h": 1 / _H,
        "cfm": EXACT_FOOT**3 / 60,
    },
}
"""What one of each unit is in SI, exactly, so that 3'-0", 3 ft and 36 in come out as the same
float.
"""

PRINTED = {
    "in": INCH,
    "ft": FOOT,
    "m": 1.0,
    "mm": MM,
    "in2": SQIN,
    "ft2": SQFT,
    "m2": 1.0,
    "mm2": 1e-6,
    "ft3": CUFT,
    "yd3": CUYD,
    "m3": 1.0,
    "deg": DEG,
    "psf": PSF,
    "lb": POUND,
    "kg": 1.0,
    "-": 1.0,
    "count": 1.0,
    "%": 0.01,
    "Pa": 1.0,
    "ft/s": FOOT,
    "m/s": 1.0,
    "K": 1.0,
    "psi": 144 * PSF,
    "kg/m3": 1.0,
    "lbf": POUND * G,
    "ratio": 1.0,
}
"""Units that rules and tables print in, and what one of each is in SI."""


class InputError(ValueError):
    """Something that came in cannot be used; the message is one sentence for the reader.

    Attributes
    ----------
    name, allowed, received : str
        Which input, what it may be, what came.
    """

    def __init__(self, message: str, name: str = "", allowed: str = "", received: Any = "") -> None:
        super().__init__(one_line(message))
        self.name, self.allowed, self.received = name, allowed, received


@lru_cache(maxsize=1)
def registry() -> UnitRegistry[Any]:
    """The one pint registry of the project, made when first needed."""
    import pint

    return pint.UnitRegistry(cache_folder=None, autoconvert_offset_to_baseunit=True)


def in_unit(value: float, unit: str) -> float:
    """An SI value in a printed unit.

    Parameters
    ----------
    value : float
        The quantity. [SI]
    unit : str
        One of ``PRINTED``.

    Returns
    -------
    float
        How many of that unit it is. [unit]

    Examples
    --------
    >>> round(in_unit(0.9144, "in"), 9)
    36.0
    """
    return value / PRINTED[unit]


def from_unit(value: float, unit: str) -> float:
    """A printed value in SI; the other way round from ``in_unit``.

    Parameters
    ----------
    value : float
        As printed. [unit]
    unit : str
        One of ``PRINTED``.

    Returns
    -------
    float
        The quantity. [SI]
    """
    return value * PRINTED[unit]
