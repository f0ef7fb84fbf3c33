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


def least(good: BoolArray, among: BoolArray | None = None) -> BoolArray:
    """Of all that do, or of some, those of which no step back does; all levers moved.

    Examples
    --------
    >>> least(np.array([[False, False, True], [False, True, True]])).tolist()
    [[False, False, False], [False, True, False]]
    """
    kept = (good if among is None else among).copy()
    for axis in range(good.ndim):
        moved = np.moveaxis(kept, axis, 0)
        moved[1:] &= ~np.moveaxis(good, axis, 0)[:-1]
        moved[0] = False
    return kept


def _inside(
    bits: IntArray, at_least: int, unmended: int, cheaper: bool
) -> Iterator[tuple[int, BoolArray]]:
    """Sets of aims that only all levers together mend, most first, and where; for what may be
    cheaper also those that fewer levers mend with more of their steps.
    """
    inner = (slice(1, None),) * bits.ndim
    faces = np.concatenate([np.moveaxis(bits, axis, 0)[0].ravel() for axis in range(bits.ndim)])
    taken: list[int] = []
    for one in sorted(map(int, np.unique(bits[inner])), key=lambda n: -n.bit_count()):
        if one.bit_count() < at_least and not one & unmended:
            continue
        if any(one & more == one for more in taken):
            continue
        good = (bits & one) == one
        if ((faces & one) == one).any():
            good = least(good) if cheaper else np.zeros_like(good)
        if good[inner].any():
            taken.append(one)
            yield one, np.asarray(good[inner])


def _honest(effects: Effects, rows: tuple[int, ...], goal: frozenset[str]) -> bool:
    """Whether every lever may be moved for the sake of something in the goal."""
    return all(
        not only or any(key.startswith(only) for key in goal)
        for only in (effects.rows[r].lever.only_for for r in rows)
    )


def goals(
    effects: Effects,
    rows: tuple[int, ...],
    bits: IntArray,
    at_least: int = 1,
    unmended: frozenset[str] = frozenset(),
) -> Iterator[tuple[frozenset[str], BoolArray]]:
    """What some levers promise to mend together and no fewer of them do; of two whose order tells
    their price also what one does with more of its steps, which may be dearer.

    Parameters
    ----------
    effects : Effects
    rows : tuple of int
        Their numbers. [-]
    bits : array of int
        Which aims each of their settings mends, a bit each; the first of each for the lever left
        alone. [-]
    at_least : int
        How many aims they have to mend to be worth it, [-]
    unmended : frozenset of str
        or which aims one of.

    Yields
    ------
    tuple of frozenset of str and array of bool
        Keys, and at which settings that move all of them; what is most first.
    """
    names = effects.keys[: effects.aims]
    missing = sum(1 << n for n, name in enumerate(names) if name in unmended)
    cheaper = len(rows) == 2 and not any(effects.rows[r].lever.extra for r in rows)
    for mask, where in _inside(bits, at_least, missing, cheaper):
        goal = frozenset(name for n, name in enumerate(names) if mask >> n & 1)
        if _honest(effects, rows, goal):
            yield goal, where


def promising(effects: Effects, size: int, at_least: int, unmended: frozenset[str]) -> list[Team]:
    """What so many levers promise together and no fewer of them do, or one with more steps.

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
        bits = mended(effects.together(rows, places) > 0, effects.aims)
        for goal, where in goals(effects, rows, bits, at_least, unmended):
            found.append(Team(rows, goal, _cheapest(effects, rows, places, where)))
    return found


def _cheapest(
    effects: Effects, rows: tuple[int, ...], places: Sequence[IntArray], where: BoolArray
) -> float:
    """What the cheapest of some settings costs; the first place of each lever is left out."""
    tables = [effects.costs(r)[at][1:, None] for r, at in zip(rows, places, strict=True)]
    return float(sums(tables, np.zeros(1))[..., 0][where].min())
