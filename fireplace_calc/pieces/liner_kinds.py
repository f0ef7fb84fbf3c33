"""Kinds of liner, by the words that a design and a set's file use."""

LINERS = (
    "ASTM C315 clay",
    "UL 1777 system",
    "listed factory unit",
    "approved to 1800 F",
    "unlined",
    "other",
)
"""What the smoke touches."""
