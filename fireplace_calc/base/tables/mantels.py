"""Families of mantels: the sizes each has where nobody has chosen others."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import rows

SIZES = (
    *("over_opening", "depth", "thickness", "beyond", "support", "beside"),
    *("projection", "frieze", "overmantel"),
)
"""Columns that are lengths; a family has nothing of those that are empty."""


@lru_cache(maxsize=1)
def usual_mantels() -> Mapping[str, Mapping[str, float]]:
    """Usual sizes by family, by the names of ``SIZES``.

    Returns
    -------
    mapping of str to mapping of str to float
        [m]

    Examples
    --------
    >>> round(usual_mantels()["shelf"]["depth"] / 0.0254, 9)  # [in]
    7.0
    """
    return {
        r["family"]: {size: to_si(r[size], "length", size) for size in SIZES if r[size]}
        for r in rows("mantels.csv")
    }
