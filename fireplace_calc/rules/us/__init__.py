"""International Residential Code, chapter 10, with five states."""

from fireplace_calc.rules.us import (
    air,
    chimney,
    clearance,
    firebox,
    flue,
    foundation,
    hearth,
    roof,
    seismic,
)

FAMILIES = (air, chimney, clearance, firebox, flue, foundation, hearth, roof, seismic)
"""Modules that file their rules when they are read."""
