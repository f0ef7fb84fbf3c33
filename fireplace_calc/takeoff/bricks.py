"""Figures for counting brick and block that no layout gives."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import CUFT, FEET_INCHES, INCH, SQFT
from fireplace_calc.brickwork.unit import Unit

WALL_MEASURE = 22.5 / CUFT
"""Brick by old wall measure, a way of pricing and no count: USDA FB 1889, p. 44 (read twice).
[1/m3]
"""

CORELESS = 0.27 * CUFT / (7.625 * INCH * 7.625 * INCH * 15.625 * INCH)
"""Share of a hollow 8 in block that is concrete: Masonry Magazine June 1989, p. 10, measured
(read). [-]
"""


@lru_cache(maxsize=64)
def size_note(unit: Unit) -> str:
    """What brick it is, and how many the work takes.

    Parameters
    ----------
    unit : Unit
        As it is laid. [m]

    Returns
    -------
    str
    """
    sides = " x ".join(
        show(side, "length", FEET_INCHES) for side in (unit.length, unit.height, unit.depth)
    )
    return (
        f"brick {sides}, {unit.per_area * SQFT:.2f} to the square foot of face and"
        f" {unit.per_volume * CUFT:.1f} to the cubic foot with its joints"
    )
