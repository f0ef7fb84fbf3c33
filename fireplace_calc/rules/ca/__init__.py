"""National Building Code of Canada, with Ontario."""

from fireplace_calc.rules.ca import chimney, fireplace

FAMILIES = (chimney, fireplace)
"""Modules that file their rules when they are read."""
