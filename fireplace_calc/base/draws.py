"""How odds are drawn everywhere: how often, from which seed, and how they are said."""

from __future__ import annotations

DRAWS, SEED = 10_000, 1889
"""How often, and where the drawing starts: the same seed gives the same odds."""


def of_hundred(share: float) -> str:
    """A share as one says it.

    >>> of_hundred(0.004), of_hundred(0.483)
    ('fewer than 1 of 100', '48 of 100')
    """
    return "fewer than 1 of 100" if share * 100 < 1 else f"{share * 100:.0f} of 100"
