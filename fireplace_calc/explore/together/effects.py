"""What each lever does by itself, check by check, and what several would do together."""

from __future__ import annotations

from collections.abc import Generator, Iterable, Iterator, Mapping, Sequence
from itertools import combinations, pairwise
from typing import TypeVar

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.design.records import Design
from fireplace_calc.explore.mending.lever_settings import Changes
from fireplace_calc.explore.mending.trials import Baseline, LeverTrials
from fireplace_calc.explore.together.forecast import (
    filled,
    largest,
    sums,
    telling,
)
from fireplace_calc.explore.together.looking import BARELY, SURE, Want, look, score
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED
from fireplace_calc.takeoff import take_off
from fireplace_calc.takeoff.cost import Price, bill

FEW = 8
"""Settings of a lever of which all are looked at, as of the few next liners. [-]"""
AT_ONCE = 100
"""Designs looked at before anybody else is heard. [-]"""
UNSATISFIED = (FALLS_SHORT, NOT_CHECKED)
"""Verdicts of what may have become worse."""
REST = "all else"
"""Stands among the keys for every finding that no lever breaks by itself."""
CAPPED = 1e3
"""Of a change over nothing: as much as this. [-]"""
Key = TypeVar("Key")
Point = tuple[tuple[int, int], ...]
"""Levers by their number, each with the place of its setting, in order of the levers."""


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
        Findings that count: what is to be mended, then all that some setting breaks, then the rest.
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
        self.twists: dict[tuple[int, int], Array] = {}
        self.known: dict[tuple[int, int], list[tuple[int, int]]] = {}

    def look_around(self) -> Iterator[None]:
        """Look at every lever by itself; a few designs at a time, so that whoever waits can be
        heard between.
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
        self.keys = [*sorted(base.aims), *sorted(broken), REST]
        self.code = frozenset(self.keys)
        self._counted = self.code | base.foreign
        start = self._said(base.before)
        known: list[dict[int, Array]] = [{0: start} for _ in rows]
        for (r, k), one in seen.items():
            known[r][k + 1] = self._said(one)
        turns = [
            (r, k - 1)
            for r, table in enumerate(known)
            for low, high in pairwise(sorted(table))
            if ((table[low] > 0) != (table[high] > 0)).any()
            for k in range(low + 1, high)
        ]
        turned = yield from self._each(turns, self.code)
        for (r, k), one in turned.items():
            known[r][k + 1] = self._said(one)
        said = [np.array(list(table.values())) for table in known]
        number = [(np.abs(one) < SURE).any(axis=0) for one in said]
        self.silent = [np.any(number, axis=0) & ~one for one in number]
        self.sure = largest(np.concatenate(said))
        self.start = self.scored(base.before)
        self.scores = [
            filled({k: self._in_scale(one) for k, one in table.items()}, len(row) + 1)
            for table, row in zip(known, rows, strict=True)
        ]
        self.places = [
            telling(scores, [0, *(k + 1 for k in row.probes)])
            for scores, row in zip(self.scores, rows, strict=True)
        ]

    def columns(self, keys: frozenset[str]) -> BoolArray:
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
            twist = self.twists.get((rows[i], rows[k]))
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
        return (yield from self.some_at_a_time(wanted, only))

    def some_at_a_time(
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

    def _said(self, found: Mapping[str, Finding]) -> Array:
        broken = any(
            f.verdict in UNSATISFIED and f.key not in self._counted and self.base.worse(f)
            for f in found.values()
        )
        scores = [score(self.base, found[key]) for key in self.keys[:-1]]
        return np.array([*scores, -1.0 if broken else 1.0])

    def _in_scale(self, said: Array) -> Array:
        return np.where(np.abs(said) >= SURE, np.copysign(self.sure, said), said)

    def scored(self, found: Mapping[str, Finding]) -> Array:
        """How far each of the keys is in order among some findings, where no number says it by the
        largest that was seen. [-]
        """
        return self._in_scale(self._said(found))

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
        """What each setting of one lever, by its number [-], costs more; straight between some."""
        if r not in self._costs:
            row = self.rows[r]
            known = {0: 0.0} | {k + 1: self._priced(row.tried[k][1]) for k in row.probes}
            trifle = [0.0, *(self._trifle(r, k) for k in range(len(row)))]
            steps = np.arange(len(row) + 1)
            cost = np.interp(steps, list(known), list(known.values()))
            self._costs[r] = cost + np.array(trifle)
        return self._costs[r]

    def cost(self, point: Point) -> float:
        """What some settings cost more together, as ordered; nothing else is as sure. [-]"""
        design = self.base.tried(self.changes(point))
        if design is None:
            return np.inf
        return self._priced(design) + sum(self._trifle(r, k) for r, k in point)

    def _priced(self, design: Design) -> float:
        return bill(take_off(build_geometry(design)), self.prices).total - self._was

    def _trifle(self, r: int, k: int) -> float:
        return 1e-6 * min(self.rows[r].tried[k][0].relative, CAPPED)

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
        )
        scored = dict.fromkeys(listed, -self.sure)
        there = [point for point, design in drawn if design is not None]
        return scored | {p: self.scored(one) for p, one in zip(there, seen, strict=True)}
