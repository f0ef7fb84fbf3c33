"""Which whole unit each cut piece comes out of."""

from __future__ import annotations

from collections.abc import Sequence

from fireplace_calc.brickwork.cut_stock import KERF


def stock_plan(lengths: Sequence[float], stock: float, kerf: float = KERF) -> list[list[int]]:
    """Pieces out of whole units, the longest first, each from the first unit with enough left; of
    those as long as each other, to a thousandth of a millimeter, in the order in which they come.

    Parameters
    ----------
    lengths : sequence of float
        What each piece needs of a unit's length. [m]
    stock : float
        Length of a whole unit. [m]
    kerf : float
        Lost between two pieces. [m]

    Returns
    -------
    list of list of int
        For each unit the numbers of its pieces, as many units as ``bricks_for`` counts. [-]

    Examples
    --------
    >>> stock_plan([4.0, 5.0, 4.0, 2.0], 9.0, 0.125)
    [[1, 3], [0, 2]]
    """
    made: list[list[int]] = []
    left: list[float] = []
    for n in sorted(range(len(lengths)), key=lambda n: -round(lengths[n], 6)):
        k = next((k for k, rest in enumerate(left) if lengths[n] <= rest + 1e-9), len(made))
        if k == len(made):
            made.append([])
            left.append(stock)
        made[k].append(n)
        left[k] -= lengths[n] + kerf
    return made
