"""Which levers to move together: what pairs and triples promise, foretold from what each does."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.explore.together.effects import Effects, useful
from fireplace_calc.explore.together.forecast import sums


class Team(NamedTuple):
    """Levers that promise to mend something together.

    Attributes
    ----------
    rows : tuple of int
        Numbers of the levers. [-]
    goal : frozenset of str
        Keys of what they promise to mend.
    cost : float
        What the cheapest settings that were looked at would cost. [-]
    """

    rows: tuple[int, ...]
    goal: frozenset[str]
    cost: float


def _bits(good: BoolArray, aims: int) -> IntArray:
    """Which aims are mended, a bit each; none where anything is broken. [-]"""
    weights = 1 << np.arange(aims)
    return np.asarray((good[..., :aims] @ weights) * good[..., aims:].all(axis=-1))


def _inside(bits: IntArray) -> Iterator[tuple[int, BoolArray]]:
    """Sets of aims that only all levers together mend, most first, and where."""
    inner = bits[(slice(1, None),) * bits.ndim]
    faces = np.concatenate([np.moveaxis(bits, axis, 0)[0].ravel() for axis in range(bits.ndim)])
    taken: list[int] = []
    for one in sorted(map(int, np.unique(inner)), key=lambda n: -n.bit_count()):
        if not one or any(one & more == one for more in taken):
            continue
        if not ((faces & one) == one).any():
            taken.append(one)
            yield one, np.asarray((inner & one) == one)


def _honest(effects: Effects, rows: tuple[int, ...], goal: frozenset[str]) -> bool:
    """Whether every lever may be moved for the sake of something in the goal."""
    return all(
        not only or any(key.startswith(only) for key in goal)
        for only in (effects.rows[r].lever.only_for for r in rows)
    )


def promising(effects: Effects, size: int, at_least: int, unmended: frozenset[str]) -> list[Team]:
    """What so many levers promise together and no fewer of them do.

    Parameters
    ----------
    effects : Effects
    size : int
        How many levers. [-]
    at_least : int
        How many aims they have to mend to be worth it, [-]
    unmended : frozenset of str
        or which aims one of.

    Returns
    -------
    list of Team
        What mends most first, then the cheapest.
    """
    names = effects.keys[: effects.aims]
    wanted = np.array([name in unmended for name in names])
    helps = {r: effects.helps(r) for r in useful(effects)}
    found: list[Team] = []
    for rows in combinations(helps, size):
        hope = np.any([helps[r][: effects.aims] for r in rows], axis=0)
        if hope.sum() < at_least and not (hope & wanted).any():
            continue
        if not effects.apart(rows):
            continue
        foretold = effects.together(rows, [effects.places[r] for r in rows])
        bits = _bits(foretold > 0, effects.aims)
        for mask, where in _inside(bits):
            goal = frozenset(name for n, name in enumerate(names) if mask >> n & 1)
            if len(goal) < at_least and not goal & unmended or not _honest(effects, rows, goal):
                continue
            found.append(Team(rows, goal, _cheapest(effects, rows, where)))
    return sorted(found, key=lambda one: (-len(one.goal), one.cost))


def _cheapest(effects: Effects, rows: tuple[int, ...], where: BoolArray) -> float:
    """What the cheapest of some settings costs; the first row of each lever is left out."""
    tables: list[Array] = [effects.costs(r)[effects.places[r]][:, None] for r in rows]
    cost = sums(tables, np.zeros(1))[(slice(1, None),) * len(rows)][..., 0]
    return float(cost[where].min())
