"""How many bricks the cut pieces come out of: two halves make one brick, the saw's cut between them
lost.
"""

from __future__ import annotations

from collections.abc import Iterable

from fireplace_calc.base.units import INCH

KERF = INCH / 8
"""What the saw takes: common practice, no source. [m]"""


def bricks_for(lengths: Iterable[float], brick: float, kerf: float = KERF) -> int:
    """Bricks to cut pieces from, the longest first, each from the first brick with enough left.

    Parameters
    ----------
    lengths : iterable of float
        What each piece needs of a brick's length. [m]
    brick : float
        Length of a brick. [m]
    kerf : float
        Lost between two pieces. [m]

    Returns
    -------
    int
        Bricks. [-]

    Examples
    --------
    >>> bricks_for([4.0, 4.0, 5.0, 2.0], 9.0, 0.125)
    2
    """
    left: list[float] = []
    for length in sorted(lengths, reverse=True):
        for k, rest in enumerate(left):
            if length <= rest + 1e-9:
                left[k] = rest - length - kerf
                break
        else:
            left.append(brick - length - kerf)
    return len(left)
