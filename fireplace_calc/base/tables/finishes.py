"""Finishes of the breast: how thick they are, bed and all, and what of it is mortar."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import Source, rows, source_of


@dataclass(frozen=True, slots=True)
class Finish:
    """One finish: ``thickness`` with its bed [m], share of ``mortar`` in that [-], its source."""

    thickness: float
    mortar: float
    source: Source


@lru_cache(maxsize=1)
def finishes() -> dict[str, Finish]:
    """Usual finishes by the name of the face.

    Returns
    -------
    dict of str to Finish
        Lengths. [m]

    Examples
    --------
    >>> round(finishes()["plaster"].thickness / 0.0254, 9)  # [in]
    0.5
    """
    return {
        r["face"]: Finish(
            to_si(r["thickness"], "length", "thickness"), float(r["mortar"]), source_of(r)
        )
        for r in rows("finishes.csv")
    }
