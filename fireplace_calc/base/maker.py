"""The name that files written here carry as their program."""

MAKER = "fireplace_calc"
