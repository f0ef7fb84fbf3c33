"""Figures for counting brick and block that no layout gives."""

from __future__ import annotations

from fireplace_calc.base.units import CUFT, INCH

WALL_MEASURE = 22.5 / CUFT
"""Brick by old wall measure, a way of pricing and no count: USDA FB 1889, p. 44 (read twice).
[1/m3]
"""

CORELESS = 0.27 * CUFT / (7.625 * INCH * 7.625 * INCH * 15.625 * INCH)
"""Share of a hollow 8 in block that is concrete: Masonry Magazine June 1989, p. 10, measured
(read). [-]
"""
