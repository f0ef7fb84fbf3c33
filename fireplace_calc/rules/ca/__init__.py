"""National Building Code of Canada, with Ontario."""

from fireplace_calc.rules.ca import chimney, fireplace, flue, flue_tables, hearth

FAMILIES = (chimney, fireplace, flue, flue_tables, hearth)
"""Modules that file their rules when they are read."""
