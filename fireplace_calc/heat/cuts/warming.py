"""What is read off wood that warms while a fire burns and goes on warming after it."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array


class Warming:
    """How a run tells of its wood; whoever is one has the three that stand here.

    Attributes
    ----------
    times : array (n,)
        [h]
    wood : array (n,)
        The hottest wood at each time. [C]
    out : float
        When the fire goes out for the last time. [h]
    """

    __slots__ = ()
    times: Array
    wood: Array
    out: float

    @property
    def at_fire_out(self) -> float:
        """The hottest wood when the fire goes out. [C]"""
        return float(np.interp(self.out, self.times, self.wood))

    @property
    def highest(self) -> float:
        """The hottest the wood becomes. [C]"""
        return float(self.wood.max())

    @property
    def hours_after(self) -> float:
        """How long after the fire went out that is. [h]"""
        return float(self.times[int(self.wood.argmax())] - self.out)
