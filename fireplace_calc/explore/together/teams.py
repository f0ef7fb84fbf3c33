"""Which levers to move together: what pairs and triples promise, foretold from what each does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import BoolArray, IntArray
from fireplace_calc.explore.together.effects import Effects
from fireplace_calc.explore.together.forecast import sums
from fireplace_calc.explore.together.pairs import useful


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


def mended(good: BoolArray, aims: int) -> IntArray:
    """Which aims are mended, a bit each; none where anything is broken.

    Parameters
    ----------
    good : array of bool, shape (..., keys)
        What each check says.
    aims : int
        How many of them, the first, are to be mended. [-]

    Returns
    -------
    array of int
        [-]
    """
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


def goals(
    effects: Effects, rows: tuple[int, ...], bits: IntArray
) -> Iterator[tuple[frozenset[str], BoolArray]]:
    """What some levers promise to mend together and no fewer of them do.

    Parameters
    ----------
    effects : Effects
    rows : tuple of int
        Their numbers. [-]
    bits : array of int
        Which aims each of their settings mends, a bit each; the first of each for the lever left
        alone. [-]

    Yields
    ------
    tuple of frozenset of str and array of bool
        Keys, and at which settings that move all of them; what is most first.
    """
    names = effects.keys[: effects.aims]
    for mask, where in _inside(bits):
        goal = frozenset(name for n, name in enumerate(names) if mask >> n & 1)
        if _honest(effects, rows, goal):
            yield goal, where


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
    """
    wanted = np.array([name in unmended for name in effects.keys[: effects.aims]])
    helps = {r: effects.helps(r) for r in useful(effects)}
    found: list[Team] = []
    for rows in combinations(helps, size):
        hope = np.any([helps[r][: effects.aims] for r in rows], axis=0)
        if hope.sum() < at_least and not (hope & wanted).any():
            continue
        if not effects.apart(rows):
            continue
        places = [effects.places[r] for r in rows]
        for goal, where in goals(
            effects, rows, mended(effects.together(rows, places) > 0, effects.aims)
        ):
            if len(goal) >= at_least or goal & unmended:
                found.append(Team(rows, goal, _cheapest(effects, rows, places, where)))
    return found


def _cheapest(
    effects: Effects, rows: tuple[int, ...], places: Sequence[IntArray], where: BoolArray
) -> float:
    """What the cheapest of some settings costs; the first place of each lever is left out."""
    tables = [effects.costs(r)[at][1:, None] for r, at in zip(rows, places, strict=True)]
    return float(sums(tables, np.zeros(1))[..., 0][where].min())
