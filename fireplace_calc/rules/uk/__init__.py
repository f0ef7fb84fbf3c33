"""Approved Document J of England with its neighbors."""

from fireplace_calc.rules.uk import details, flue

FAMILIES = (details, flue)
"""Modules that file their rules when they are read."""
