"""What each lever does by itself, check by check, and what several would do together."""

from __future__ import annotations

from collections.abc import Generator, Iterable, Iterator, Mapping, Sequence
from itertools import combinations, pairwise, product
from typing import TypeVar

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.design.records import Design
from fireplace_calc.explore.mending.lever_settings import Changes
from fireplace_calc.explore.mending.trials import Baseline, LeverTrials
from fireplace_calc.explore.together.forecast import (
    by_the_nearest,
    filled,
    some_places,
    sums,
    telling,
)
from fireplace_calc.explore.together.looking import BARELY, SURE, Want, look, score
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import Finding
from fireplace_calc.takeoff import take_off
from fireplace_calc.takeoff.cost import Price, bill

FEW = 8
"""Settings of a lever of which all are looked at, as of the few next liners. [-]"""
AT_ONCE = 100
"""Designs looked at before anybody else is heard. [-]"""
CAPPED = 1e3
"""Of a change over nothing: as much as this. [-]"""
Key = TypeVar("Key")
Point = tuple[tuple[int, int], ...]
"""Levers by their number, each with the place of its setting, in order of the levers."""


def useful(effects: Effects) -> list[int]:
    """Levers that bring something to be mended nearer, or heal what such a one breaks.

    Parameters
    ----------
    effects : Effects

    Returns
    -------
    list of int
        Their numbers. [-]
    """
    every = range(len(effects.rows))
    movers = [r for r in every if effects.helps(r)[: effects.aims].any()]
    harmed = np.zeros(len(effects.keys), bool)
    for r in movers:
        harmed |= effects.harms(r)
    return sorted({*movers, *(r for r in every if (effects.helps(r) & harmed).any())})


class Effects:
    """Every lever by itself: scores and cost at each of its settings, straight between those looked
    at.

    Parameters
    ----------
    base : Baseline
    rows : list of LeverTrials
    prices : mapping of str to Price
        For what each setting costs.

    Attributes
    ----------
    keys : list of str
        Findings that count: what is to be mended, then all that some setting breaks.
    scores : list of array
        A row a setting, the first for the lever left alone; a column a key. [-]
    costs : list of array
        Of the materials over what they cost before, and a trifle for every part of what was there.
        [-]
    places : list of array
        Rows of ``scores`` that stand for all: the first and last, some between, and where anything
        turns from in order to out of it. [-]
    """

    def __init__(
        self, base: Baseline, rows: Sequence[LeverTrials], prices: Mapping[str, Price]
    ) -> None:
        self.base, self.rows, self.prices = base, rows, prices
        self._was = bill(base.now.takeoff, prices).total
        self._costs: dict[int, Array] = {}
        self._twists: dict[tuple[int, int], Array] = {}

    def look_around(self) -> Iterator[None]:
        """Look at every lever by itself, then at pairs of them; a few designs at a time, so that
        whoever waits can be heard between.
        """
        base, rows = self.base, self.rows
        first = [(r, k) for r, row in enumerate(rows) for k in (*row.probes, *range(len(row)))]
        first = [(r, k) for r, k in first if k in rows[r].probes or len(rows[r]) <= FEW]
        seen = yield from self._each(dict.fromkeys(first))
        broken = {
            f.key
            for one in seen.values()
            for f in one.values()
            if f.key not in base.foreign and f.key not in base.aims and base.worse(f)
        }
        self.keys = [*sorted(base.aims), *sorted(broken)]
        self.code = frozenset(self.keys)
        self.start = self._scores(base.before)
        known: list[dict[int, Array]] = [{0: self.start} for _ in rows]
        for (r, k), one in seen.items():
            known[r][k + 1] = self._scores(one)
        turns = [
            (r, k - 1)
            for r, table in enumerate(known)
            for low, high in pairwise(sorted(table))
            if ((table[low] > 0) != (table[high] > 0)).any()
            for k in range(low + 1, high)
        ]
        turned = yield from self._each(turns, self.code)
        for (r, k), one in turned.items():
            known[r][k + 1] = self._scores(one)
        self.scores = [filled(table, len(row) + 1) for table, row in zip(known, rows, strict=True)]
        self.places = [
            telling(scores, [0, *(k + 1 for k in row.probes)])
            for scores, row in zip(self.scores, rows, strict=True)
        ]
        yield from self._pair_up(useful(self))

    def _pair_up(self, rows: Sequence[int]) -> Iterator[None]:
        """Look at some settings of two levers together, to learn what neither shows by itself."""
        air, heavy = self._columns(self.base.airy), self._columns(self.base.heavy)
        moved = {r: (np.abs(self.scores[r] - self.start) > BARELY).any(axis=0) for r in rows}
        some = {r: some_places(len(self.rows[r])) for r in rows}
        wanted: dict[tuple[int, int], BoolArray] = {}
        for one, other in combinations(rows, 2):
            both = moved[one] & moved[other]
            blown = all(self.rows[r].lever.for_draft for r in (one, other))
            if self.apart((one, other)) and (blown or both.any()):
                wanted[one, other] = ~(air | heavy) | both
        points: dict[Point, Want] = {}
        for (one, other), columns in wanted.items():
            for i, k in product(some[one], some[other]):
                point = (one, i - 1), (other, k - 1)
                design = self.base.tried(self.changes(point))
                if design is not None:
                    points[point] = Want(
                        design, bool((columns & air).any()), bool((columns & heavy).any())
                    )
        seen = yield from self._some_at_a_time(points, self.code)
        for (one, other), columns in wanted.items():
            single = sums([self.scores[one], self.scores[other]], self.start)
            off: dict[tuple[int, ...], Array] = {}
            for i, k in product(some[one], some[other]):
                point = (one, i - 1), (other, k - 1)
                if point in seen:
                    off[i, k] = np.where(columns, self._scores(seen[point]) - single[i, k], 0.0)
            if off:
                self._twists[one, other] = by_the_nearest(single.shape[:-1], off)

    def _columns(self, keys: frozenset[str]) -> BoolArray:
        """Which of the keys are among some."""
        return np.array([key in keys for key in self.keys])

    def apart(self, rows: Sequence[int]) -> bool:
        """Whether no two of some levers, by their number [-], move the same input."""
        keys = [self.rows[r].keys for r in rows]
        return sum(map(len, keys)) == len(frozenset.union(*keys))

    def together(self, rows: tuple[int, ...], places: Sequence[IntArray] | None = None) -> Array:
        """Scores foretold for settings of several levers, by their number [-]; of all settings, or
        those at some places [-].

        Returns
        -------
        array, shape (settings of the first, of the second, ..., keys)
        """
        at = [np.arange(len(self.scores[r])) for r in rows] if places is None else places
        tables = [self.scores[r][k] for r, k in zip(rows, at, strict=True)]
        whole = sums(tables, self.start)
        for i, k in combinations(range(len(rows)), 2):
            twist = self._twists.get((rows[i], rows[k]))
            if twist is not None:
                part = twist[np.ix_(at[i], at[k])]
                shape = [1] * len(rows) + [len(self.keys)]
                shape[i], shape[k] = len(at[i]), len(at[k])
                whole = whole + part.reshape(shape)
        return whole

    def _each(
        self, places: Iterable[tuple[int, int]], only: frozenset[str] | None = None
    ) -> Generator[None, None, dict[tuple[int, int], dict[str, Finding]]]:
        """Findings with one lever, by its number, at one place."""
        wanted = {(r, k): self._want(((r, k),), self.rows[r].tried[k][1]) for r, k in places}
        return (yield from self._some_at_a_time(wanted, only))

    def _some_at_a_time(
        self, wanted: Mapping[Key, Want], only: frozenset[str] | None
    ) -> Generator[None, None, dict[Key, dict[str, Finding]]]:
        """Findings of many designs, by what they are asked for."""
        seen: dict[Key, dict[str, Finding]] = {}
        listed = list(wanted)
        for first in range(0, len(listed), AT_ONCE):
            part = listed[first : first + AT_ONCE]
            found = look(self.base, [wanted[key] for key in part], only)
            seen.update(zip(part, found, strict=True))
            yield
        return seen

    def _want(self, point: Point, design: Design) -> Want:
        levers = [self.rows[r].lever for r, _ in point]
        return Want(
            design,
            any(lever.for_draft for lever in levers),
            any(lever.loads for lever in levers),
        )

    def _scores(self, found: Mapping[str, Finding]) -> Array:
        return np.array([score(self.base, found[key]) for key in self.keys])

    @property
    def aims(self) -> int:
        """How many of the keys are to be mended. [-]"""
        return len(self.base.aims)

    def helps(self, r: int) -> BoolArray:
        """Which keys one lever, by its number [-], brings nearer to order at some setting."""
        return np.asarray((self.scores[r] > self.start + BARELY).any(axis=0))

    def harms(self, r: int) -> BoolArray:
        """Which keys one lever, by its number [-], breaks at some setting."""
        return np.asarray((self.scores[r] <= 0).any(axis=0) & (self.start > 0))

    def costs(self, r: int) -> Array:
        """What each setting of one lever, by its number [-], costs more."""
        if r not in self._costs:
            row = self.rows[r]
            known = {0: 0.0}
            for k in row.probes:
                order = take_off(build_geometry(row.tried[k][1]))
                known[k + 1] = bill(order, self.prices).total - self._was
            trifle = [0.0, *(min(one.relative, CAPPED) for one, _ in row.tried)]
            steps = np.arange(len(row) + 1)
            cost = np.interp(steps, list(known), list(known.values()))
            self._costs[r] = cost + 1e-6 * np.array(trifle)
        return self._costs[r]

    def changes(self, point: Point) -> Changes:
        """What some settings [-] change together, for ``change``."""
        return {
            key: value for r, k in point for key, value in self.rows[r].tried[k][0].change.items()
        }

    def look(self, points: Iterable[Point]) -> dict[Point, Array]:
        """Scores of settings together, one a key [-]; far out of order where it cannot be drawn."""
        listed = list(points)
        drawn = [(point, self.base.tried(self.changes(point))) for point in listed]
        seen = look(
            self.base,
            [self._want(point, design) for point, design in drawn if design is not None],
            self.code,
        )
        scored = dict.fromkeys(listed, np.full(len(self.keys), -SURE))
        there = [point for point, design in drawn if design is not None]
        return scored | {p: self._scores(one) for p, one in zip(there, seen, strict=True)}
