"""Edges of cells that are fine where something changes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array


class Low(NamedTuple):
    """By how much the hottest wood may come out under what far finer cells give.

    Attributes
    ----------
    kelvin : float
        [K]
    share : float
        Of its rise, besides. [-]
    """

    kelvin: float = 0.0
    share: float = 0.0


class Cells(NamedTuple):
    """How fine a cut is worked, in space and time.

    Attributes
    ----------
    finest, most : float
        Of the cells beside every face, and of the widest. [m]
    growth : float
        Of each cell over the one before. [-]
    low : Low
        Held over random designs, on which far finer cells were tried too.
    least : float
        A layer no thicker than this is one cell; others are two at least. [m]
    step : float
        In time, at most. [s]
    close : float
        To which a step is settled. [K]
    softly : bool
        Whether a jump is taken in simple steps that never overshoot; without, the first step may
        by a tenth of the jump, and all later ones are nearer.
    """

    finest: float
    growth: float
    most: float
    low: Low = Low()
    least: float = 0.0
    step: float = 1200.0
    close: float = 5e-3
    softly: bool = True


FINE = Cells(0.012, 1.5, 0.08, Low(2.5, 0.045))
"""What is told, at rest."""
COARSE = Cells(0.02, 1.6, 0.1, Low(4.5, 0.1))
"""As soon as a hand rests, for what changes by how much, and for lessons."""
MOVING = Cells(0.04, 2.0, 0.2, least=0.04, step=5400.0, close=3.0, softly=False)
"""While a hand moves a slider: for a picture without figures of the wood."""


def graded(
    stops: Sequence[float],
    finest: float,
    growth: float = 1.3,
    most: float = 1e9,
    least: float = 0.0,
) -> Array:
    """Edges of cells between stops, fine at each stop and wider away from it.

    Parameters
    ----------
    stops : sequence of float
        Rising; every one is an edge. [m]
    finest, most : float
        Of the cell at a stop, and of the widest. [m]
    growth : float
        Of each cell over the one before. [-]
    least : float
        Between stops no farther apart than this is one cell; elsewhere are two at least. [m]

    Returns
    -------
    array
        [m]

    Examples
    --------
    >>> graded([0.0, 0.1], 0.01, 1.5).round(3)
    array([0.   , 0.011, 0.026, 0.05 , 0.074, 0.089, 0.1  ])
    """
    edges = [float(stops[0])]
    for low, high in zip(stops, stops[1:], strict=False):
        if high - low <= least:
            edges.append(float(high))
            continue
        half, cell = (high - low) / 2, finest
        sizes: list[float] = []
        while sum(sizes) + cell <= half + 1e-12:
            sizes.append(cell)
            cell = min(cell * growth, most)
        whole = sum(sizes)
        sizes = [size * half / whole for size in sizes] or [half]
        edges += (float(low) + done for done in accumulate([*sizes, *sizes[::-1]]))
    return np.array(edges)
