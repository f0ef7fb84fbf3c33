"""The cheapest least settings of two or three levers that mend something together: foretold from
what each does alone, looked at, and foretold again from what was seen.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.explore.together.effects import Effects, Point
from fireplace_calc.explore.together.forecast import by_the_nearest, sums

Corner = tuple[int, ...]
"""Of each lever, which setting: 0 for the lever left alone. [-]"""
ROUNDS, REFUSED = 24, 4
"""Looks at one set of levers before it is given up, and settings that prove worse in full. [-]"""


def least(good: BoolArray) -> BoolArray:
    """Of all that do, those of which no lever can take a step back; all levers moved.

    Examples
    --------
    >>> least(np.array([[False, False, True], [False, True, True]])).tolist()
    [[False, False, False], [False, True, False]]
    """
    kept = good.copy()
    for axis in range(good.ndim):
        moved = np.moveaxis(kept, axis, 0)
        moved[1:] &= ~np.moveaxis(good, axis, 0)[:-1]
        moved[0] = False
    return kept


class Hunt:
    """The search in one set of levers for one set of aims.

    Parameters
    ----------
    effects : Effects
    rows : tuple of int
        Numbers of the levers, rising. [-]
    goal : frozenset of str
        Keys to be mended, all of them.
    """

    def __init__(self, effects: Effects, rows: tuple[int, ...], goal: frozenset[str]) -> None:
        self.effects, self.rows, self.goal = effects, rows, goal
        columns = [n for n, key in enumerate(effects.keys) if n >= effects.aims or key in goal]
        self.columns = np.array(columns)
        self.foretold = effects.together(rows)[..., self.columns]
        self.cost = sums([effects.costs(r)[:, None] for r in rows], np.zeros(1))[..., 0]
        self.seen: dict[Corner, Array] = {}
        self.refused: set[Corner] = set()
        self.rounds, self.dead = 0, False
        self.best: Corner = ()
        self.proof: Assessment | None = None
        self.asked: list[Corner] = []

    def point(self, corner: Corner) -> Point:
        """The settings at a corner [-], without levers left alone."""
        return tuple((r, k - 1) for r, k in zip(self.rows, corner, strict=True) if k)

    def _good(self) -> BoolArray:
        """Which settings do it, as far as is known: those that were seen, the rest by the nearest
        of them.
        """
        scores = self.foretold
        if self.seen:
            off = {at: seen - self.foretold[at] for at, seen in self.seen.items()}
            scores = scores + by_the_nearest(self.cost.shape, off)
        good = np.asarray((scores > 0).all(axis=-1))
        for at, seen in self.seen.items():
            good[at] = (seen > 0).all()
        for at in self.refused:
            good[at] = False
        return good

    def wants(self) -> list[Point]:
        """Which settings [-] to look at next; none when the best is known, or there is none."""
        while not self.dead:
            good = self._good()
            open_to = least(good)
            if not open_to.any() or self.rounds >= ROUNDS:
                self.dead = True
                break
            cheapest = np.argmin(np.where(open_to, self.cost, np.inf))
            best = self.best = tuple(map(int, np.unravel_index(cheapest, self.cost.shape)))
            below = [
                tuple(k - (n == axis) for n, k in enumerate(best)) for axis in range(len(best))
            ]
            self.asked = [at for at in (best, *below) if at not in self.seen and any(at)]
            if not self.asked:
                break
            self.rounds += 1
            return [self.point(at) for at in self.asked]
        return []

    def take(self, found: Mapping[Point, Array]) -> None:
        """What was seen of all that was wanted, as scores. [-]"""
        for at in self.asked:
            self.seen[at] = found[self.point(at)][self.columns]

    def refuse(self) -> None:
        """The best proved worse in full: look for another."""
        self.refused.add(self.best)
        self.dead = len(self.refused) >= REFUSED
