"""Somebody who stands, for scale, as triangles: made once by ``tests/bench/person.py``."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.base.resources import DATA

STATURE = 1.75
"""Of the figure as it is kept. [m]"""
PIECES = ("shoes", "jumper", "trousers", "hair", "skin")
"""What it consists of."""
STEP = 1e-4
"""Its points are kept in whole steps. [m]"""


@dataclass(frozen=True, eq=False)
class FigurePiece:
    """One piece of the figure.

    Attributes
    ----------
    name : str
        One of ``PIECES``.
    points : array
        Corners, one a row; feet at nought, looking toward negative y. [m]
    faces : array
        [-]
    """

    name: str
    points: Array
    faces: IntArray


@lru_cache(maxsize=1)
def standing_person() -> tuple[FigurePiece, ...]:
    """The figure, piece by piece; no piece stands in another.

    Returns
    -------
    tuple of FigurePiece
    """
    import numpy as np

    with np.load(DATA / "person.npz") as kept:
        return tuple(
            FigurePiece(name, kept[f"{name} points"] * STEP, kept[f"{name} faces"].astype("int32"))
            for name in PIECES
        )
