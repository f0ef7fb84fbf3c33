"""Books that were read in part: the International Building Code, Germany, France and Australia."""

from fireplace_calc.rules.others import australia, building_code, france, germany

FAMILIES = (australia, building_code, france, germany)
"""Modules that file their rules when they are read."""
