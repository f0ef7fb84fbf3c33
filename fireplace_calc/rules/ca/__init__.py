"""National Building Code of Canada, with Ontario."""

from fireplace_calc.rules.ca import chimney, fireplace, flue, hearth

FAMILIES = (chimney, fireplace, flue, hearth)
"""Modules that file their rules when they are read."""
