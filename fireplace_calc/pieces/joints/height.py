"""How far from its level a top comes by pieces over and under size. [m]"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array


def height_within(errors: Array, replanned: bool) -> float:
    """How far from its level 19 of 20 tops stay, by pieces over and under size and uneven beds.

    Parameters
    ----------
    errors : array, shape (n,)
        Of each lift from top to top: what 19 of 20 stay within. [m]
    replanned : bool
        Whether each top is measured and the beds above planned again.

    Returns
    -------
    float
        Either way. Planned again, the last lift's own is left, as long as the joints have room
        (``height_left``). [m]
    """
    return float(np.abs(errors[-1])) if replanned else float(np.sqrt(np.sum(np.square(errors))))


def height_left(over: Array, thinner: Array, thicker: Array) -> Array:
    """How much too high each top stands when every bed takes up what it can of what is below it.

    Parameters
    ----------
    over : array, shape (..., n)
        How much higher than told each piece is, from the base up. [m]
    thinner, thicker : array, shape (n,)
        How much each bed can be less, or more, than planned; nought or more. [m]

    Returns
    -------
    array, shape (..., n)
        A piece's own error is met by the next bed, so the top one's stays. [m]

    Examples
    --------
    >>> eighth, room = np.array([0.125, 0, 0, 0]), np.full(4, 0.0625)
    >>> height_left(eighth, room, room).tolist()
    [0.125, 0.0625, 0.0, 0.0]
    """
    left, standing = np.empty(np.shape(over)), np.zeros(np.shape(over)[:-1])
    for n in range(np.shape(over)[-1]):
        standing = standing - np.clip(standing, -thicker[n], thinner[n]) + over[..., n]
        left[..., n] = standing
    return left
