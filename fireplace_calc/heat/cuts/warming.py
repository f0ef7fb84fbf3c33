"""What is read off wood that warms while a fire burns and goes on warming after it."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.grading import Low


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
    low : Low
        By how much the cells may read the wood low: of one line of layers, which is the least.
    """

    __slots__ = ()
    times: Array
    wood: Array
    out: float
    low: Low = Low(0.1, 0.001)

    def safe(self, celsius: float) -> float:
        """A temperature of the wood with what the cells may read low added. [C]"""
        return celsius + self.low.kelvin + self.low.share * (celsius - float(self.wood[0]))

    @property
    def at_fire_out(self) -> float:
        """The hottest wood when the fire goes out. [C]"""
        return float(np.interp(self.out, self.times, self.wood))

    @property
    def highest(self) -> float:
        """The hottest the wood becomes. [C]"""
        return float(self.wood.max())

    @property
    def safe_highest(self) -> float:
        """The hottest the wood becomes, on the safe side of the cells. [C]"""
        return self.safe(self.highest)

    @property
    def hours_after(self) -> float:
        """How long after the fire went out that is. [h]"""
        return float(self.times[int(self.wood.argmax())] - self.out)
