"""International Residential Code, chapter 10, with five states."""

from fireplace_calc.rules.us import (
    air,
    chimney,
    chimney_clearance,
    clearance,
    firebox,
    flue,
    foundation,
    hearth,
    roof,
    seismic,
    throat,
)

FAMILIES = (
    air,
    chimney,
    chimney_clearance,
    clearance,
    firebox,
    flue,
    foundation,
    hearth,
    roof,
    seismic,
    throat,
)
"""Modules that file their rules when they are read."""
