"""Edges of cells that are fine where something changes."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from fireplace_calc.base.arrays import Array


def graded(stops: Sequence[float], finest: float, growth: float = 1.3, most: float = 1e9) -> Array:
    """Edges of cells between stops, fine at each stop and wider away from it.

    Parameters
    ----------
    stops : sequence of float
        Rising; every one is an edge. [m]
    finest, most : float
        Of the cell at a stop, and of the widest. [m]
    growth : float
        Of each cell over the one before. [-]

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
        half, cell = (high - low) / 2, finest
        sizes: list[float] = []
        while sum(sizes) + cell <= half + 1e-12:
            sizes.append(cell)
            cell = min(cell * growth, most)
        sizes = [s * half / sum(sizes) for s in sizes] if sizes else [half]
        out = low + np.cumsum([*sizes, *sizes[::-1]])
        edges += out.tolist()
    return np.array(edges)
