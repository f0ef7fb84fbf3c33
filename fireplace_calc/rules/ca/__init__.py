"""National Building Code of Canada, with Ontario."""

from fireplace_calc.rules.ca import air, chimney, fireplace, flue, flue_tables, hearth

FAMILIES = (air, chimney, fireplace, flue, flue_tables, hearth)
"""Modules that file their rules when they are read."""
