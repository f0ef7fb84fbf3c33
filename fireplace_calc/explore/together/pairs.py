"""Pairs of levers looked at together, to learn what neither of them shows by itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, product
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.explore.mending.levers import NEXT
from fireplace_calc.explore.together.effects import Effects, Point
from fireplace_calc.explore.together.forecast import between, some_places, sums
from fireplace_calc.explore.together.looking import BARELY, Want


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


class Pair(NamedTuple):
    """Two levers, by their number.

    Attributes
    ----------
    one, other : int
        [-]
    columns : array of bool
        Keys that both of them may move.
    """

    one: int
    other: int
    columns: BoolArray


def _pairs(effects: Effects, rows: Sequence[int]) -> Iterator[Pair]:
    """Pairs that may touch the same check: both move it, or one does while it has nothing to say
    about the other; the draft where both are for the draft, the loads where both load.
    """
    air, heavy = effects.columns(effects.base.airy), effects.columns(effects.base.heavy)
    moved = {r: (np.abs(effects.scores[r] - effects.start) > BARELY).any(axis=0) for r in rows}
    for one, other in combinations(rows, 2):
        levers = [effects.rows[r].lever for r in (one, other)]
        blown, loaded = all(x.for_draft for x in levers), all(x.loads for x in levers)
        both = moved[one] & (moved[other] | effects.silent[other])
        both |= moved[other] & effects.silent[one]
        both &= ~(air & (not blown)) & ~(heavy & (not loaded))
        if effects.apart((one, other)) and (blown or both.any()):
            yield Pair(one, other, ~(air | heavy) | both)


def pair_up(effects: Effects) -> Iterator[None]:
    """Look at some settings of two levers together; a few designs at a time.

    Parameters
    ----------
    effects : Effects
        Every lever looked at by itself; what is learned goes into ``twists`` and ``known``.
    """
    air, heavy = effects.columns(effects.base.airy), effects.columns(effects.base.heavy)
    rows = useful(effects)
    few = {r: some_places(len(effects.rows[r])) for r in rows}
    more = {r: range(1, len(effects.rows[r]) + 1) if _unlike(effects, r) else few[r] for r in rows}
    pairs = list(_pairs(effects, rows))
    points: dict[Point, Want] = {}
    for one, other, columns in pairs:
        blown, loaded = bool((columns & air).any()), bool((columns & heavy).any())
        for i, k in product(more[one], more[other]):
            design = effects.base.tried(effects.changes(point := ((one, i - 1), (other, k - 1))))
            if design is not None:
                points[point] = Want(design, blown, loaded and i in few[one] and k in few[other])
    seen = yield from effects.some_at_a_time(points, effects.code)
    for one, other, columns in pairs:
        single = sums([effects.scores[one], effects.scores[other]], effects.start)
        off: dict[tuple[int, int], Array] = {}
        for i, k in product(more[one], more[other]):
            if (point := ((one, i - 1), (other, k - 1))) in seen:
                off[i, k] = np.where(columns, effects.scored(seen[point]) - single[i, k], 0.0)
        if not off:
            continue
        shape = single.shape[0], single.shape[1]
        weighed = {at: it for at, it in off.items() if at[0] in few[one] and at[1] in few[other]}
        light = np.where(heavy, 0.0, between(shape, off))
        effects.twists[one, other] = (
            np.where(heavy, between(shape, weighed), light) if weighed else light
        )
        effects.known[one, other] = list(weighed)


def _unlike(effects: Effects, r: int) -> bool:
    """Whether no setting of a lever, by its number [-], stands for the one beside it."""
    return effects.rows[r].lever.step.endswith(NEXT)
