"""The cheapest least settings of two or three levers that mend something together: foretold from
what each does alone, looked at, and foretold again from what was seen.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.explore.together.effects import Effects, Point
from fireplace_calc.explore.together.forecast import sums

Corner = tuple[int, ...]
"""Of each lever, which setting: 0 for the lever left alone. [-]"""
ROUNDS, REFUSED = {2: 20, 3: 8}, 4
"""Looks at so many levers before they are given up, and settings that prove worse in full. [-]"""


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
        self.plain = effects.together(rows)[..., self.columns]
        self.foretold = self.plain.copy()
        self.cost = sums([effects.costs(r)[:, None] for r in rows], np.zeros(1))[..., 0]
        self.where = np.indices(self.cost.shape)
        # One lever by itself is foretold rightly: how far a setting is from that.
        self.away = self.where.sum(axis=0) - self.where.max(axis=0)
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
        good = np.asarray((self.foretold > 0).all(axis=-1))
        for at, seen in self.seen.items():
            good[at] = (seen > 0).all()
        for at in self.refused:
            good[at] = False
        return good

    def _learn(self, at: Corner, seen: Array) -> None:
        """Correct the forecast at a corner, and wherever nothing nearer was seen."""
        off = seen - self.plain[at]
        away = np.sum([np.abs(axis - k) for axis, k in zip(self.where, at, strict=True)], axis=0)
        nearer = away <= self.away
        self.away[nearer] = away[nearer]
        self.foretold[nearer] = self.plain[nearer] + off
        self.seen[at] = seen

    def wants(self) -> list[Point]:
        """Which settings [-] to look at next; none when the best is known, or there is none."""
        while not self.dead:
            good = self._good()
            open_to = least(good)
            if not open_to.any() or self.rounds >= ROUNDS[len(self.rows)]:
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
            self._learn(at, found[self.point(at)][self.columns])

    def refuse(self) -> None:
        """The best proved worse in full: look for another."""
        self.refused.add(self.best)
        self.dead = len(self.refused) >= REFUSED
