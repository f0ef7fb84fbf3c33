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
    second_flue,
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
    second_flue,
    throat,
)
"""Modules that file their rules when they are read."""
