"""The cheapest least settings of two or three levers that mend something together: foretold from
what each does alone, looked at, and foretold again from what was seen.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.explore.together.effects import Effects, Point
from fireplace_calc.explore.together.forecast import sums
from fireplace_calc.explore.together.teams import Team, goals, least, mended

Corner = tuple[int, ...]
"""Of each lever, which setting: 0 for the lever left alone. [-]"""
ROUNDS, REFUSED = {2: 20, 3: 8}, 4
"""Looks at so many levers before they are given up, and settings that prove worse in full. [-]"""
PRICED, DOUBTS = 8, 4
"""Settings whose cost is worked out before the cheapest is taken, and how often what is foretold
by a step is looked at all the same. [-]
"""


def _below(at: Corner) -> list[Corner]:
    """The settings a step less of one lever."""
    return [tuple(k - (n == m) for n, k in enumerate(at)) for m in range(len(at))]


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
        self.effects, self.rows = effects, rows
        self.scores = effects.together(rows)
        self.mends = mended(self.scores > 0, effects.aims)
        self.cost = sums([effects.costs(r)[:, None] for r in rows], np.zeros(1))[..., 0]
        self.where = np.indices(self.cost.shape)
        # What was looked at is foretold rightly: how far a setting is from that.
        self.away = self.where.sum(axis=0) - self.where.max(axis=0)
        for one, other in combinations(range(len(rows)), 2):
            for i, k in effects.known.get((rows[one], rows[other]), ()):
                corner = [0] * len(rows)
                corner[one], corner[other] = i, k
                self.away = np.minimum(self.away, self._away(tuple(corner)))
        self.seen: set[Corner] = set()
        self.priced: set[Corner] = set()
        self._aim_at(goal)

    def _aim_at(self, goal: frozenset[str]) -> None:
        names = self.effects.keys[: self.effects.aims]
        self.goal, self.mask = goal, sum(1 << n for n, name in enumerate(names) if name in goal)
        self.rounds = self.doubts = self.refused = 0
        self.dead = False
        self.best: Corner = ()
        self.proof: Assessment | None = None
        self.asked: list[Corner] = []

    def again(self, goal: frozenset[str]) -> Hunt:
        """The same search for another goal, when this one has come to its end."""
        self._aim_at(goal)
        return self

    def point(self, corner: Corner) -> Point:
        """The settings at a corner [-], without levers left alone."""
        return tuple((r, k - 1) for r, k in zip(self.rows, corner, strict=True) if k)

    def _away(self, at: Corner) -> IntArray:
        """How many steps every setting is from one. [-]"""
        return np.asarray(sum(np.abs(axis - k) for axis, k in zip(self.where, at, strict=True)))

    def _learn(self, at: Corner, seen: Array) -> None:
        """Correct the forecast at a corner, and wherever nothing nearer was seen."""
        off, away = seen - self.scores[at], self._away(at)
        nearer = away <= self.away
        self.away[nearer] = away[nearer]
        self.mends[nearer] = mended(self.scores[nearer] + off > 0, self.effects.aims)
        self.mends[at] = mended(seen > 0, self.effects.aims)
        self.seen.add(at)

    def _few(self, open_to: BoolArray) -> list[Corner]:
        """The few cheapest of some settings, as far as is known; of those that cost as much the
        first.
        """
        places = np.flatnonzero(open_to)
        few = places[np.argsort(self.cost.ravel()[places], kind="stable")[:PRICED]]
        return [tuple(map(int, np.unravel_index(one, self.cost.shape))) for one in few]

    def _price(self, open_to: BoolArray) -> bool:
        """Ask what the few cheapest of some settings really cost; whether that was news."""
        new = [at for at in self._few(open_to) if at not in self.priced]
        for at in new:
            self.cost[at] = self.effects.cost(self.point(at))
        self.priced.update(new)
        return bool(new)

    def _open(self, good: BoolArray) -> BoolArray:
        """Which settings may be the least: as foretold, and those seen that nothing seen belies."""
        open_to = least(good)
        for at in self.seen:
            if good[at] and all(at) and not any(good[b] for b in _below(at) if b in self.seen):
                open_to[at] = True
        return open_to

    def _rival(self, good: BoolArray) -> Corner | None:
        """What would be the best if the forecast were a step off where it was not looked at."""
        unseen = np.ones_like(good)
        for at in self.seen:
            unseen[at] = False
        front = least(good) & unseen
        less, more = np.zeros_like(good), np.zeros_like(good)
        for axis in range(good.ndim):
            np.moveaxis(less, axis, 0)[:-1] |= np.moveaxis(good, axis, 0)[1:]
            np.moveaxis(more, axis, 0)[1:] |= np.moveaxis(front, axis, 0)[:-1]
        rivals = (least(good, less & ~good) | more) & unseen
        if self.doubts >= DOUBTS or not rivals.any():
            return None
        while self._price(rivals):
            pass
        one = self._few(rivals)[0]
        return one if self.cost[one] < self.cost[self.best] else None

    def wants(self) -> list[Point]:
        """Which settings [-] to look at next; none when the best is known, or there is none."""
        while not self.dead:
            good = (self.mends & self.mask) == self.mask
            open_to, self.asked = self._open(good), []
            if not open_to.any():
                self.dead = True
                break
            self.best = self._few(open_to)[0]
            self.asked = self._unseen(self.best)
            if self.asked and self.rounds >= ROUNDS[len(self.rows)]:
                self._give_up(good)
                break
            if self.asked:
                self.rounds += 1
            elif self._price(open_to):
                continue
            elif (rival := self._rival(good)) is not None:
                self.doubts += 1
                self.asked = self._unseen(rival)
            return [self.point(at) for at in self.asked]
        return []

    def _unseen(self, at: Corner) -> list[Corner]:
        """A setting and those a step less, as far as they were not looked at."""
        return [one for one in (at, *_below(at)) if one not in self.seen and any(one)]

    def _give_up(self, good: BoolArray) -> None:
        """Take the cheapest of those that were seen to be least."""
        proven = [
            at
            for at in self.seen
            if good[at] and all(at) and all(b in self.seen and not good[b] for b in _below(at))
        ]
        self.best = min(proven, key=lambda at: float(self.cost[at]), default=())
        self.asked, self.dead = [], not proven

    def take(self, found: Mapping[Point, Array]) -> None:
        """What was seen of all that was wanted, as scores. [-]"""
        for at in self.asked:
            self._learn(at, found[self.point(at)])

    def refuse(self) -> None:
        """The best proved worse in full: look for another."""
        self.mends[self.best] = 0
        self.refused += 1
        self.dead = self.refused >= REFUSED

    def lesser(self) -> list[Team]:
        """What its levers promise yet, from all that was seen, where its goal came to nothing."""
        inner = self.cost[(slice(1, None),) * len(self.rows)]
        return [
            Team(self.rows, goal, float(inner[where].min()))
            for goal, where in goals(self.effects, self.rows, self.mends)
            if not goal >= self.goal
        ]
