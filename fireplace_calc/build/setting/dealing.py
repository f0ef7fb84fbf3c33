"""Which load goes to which spot, so that the least weight is carried the least way."""

from __future__ import annotations

from collections.abc import Sequence

from fireplace_calc.build.setting.piles import EITHER, LEFT, RIGHT, Pile

Dealt = tuple[tuple[str, int], ...]
"""Of each pile, its side and the number of its spot there, the nearest nought."""


def deal_by_weight(piles: Sequence[Pile], left: Sequence[float], right: Sequence[float]) -> Dealt:
    """Deal piles to spots on two sides, left ones to the left, right ones to the right.

    Parameters
    ----------
    piles : sequence of Pile
    left, right : sequence of float
        Way from each spot to the work, the nearest first. [m]

    Returns
    -------
    tuple of (str, int)
        One for each pile, in the same order; there has to be a spot for each. [-]

    Notes
    -----
    The least sum of weight times way. On one side it is reached when the heaviest stands nearest:
    of two sums of products of the same numbers the one with the rows in opposite order is the least
    (rearrangement inequality). Which side each pile across the middle goes to is settled for all
    together, heaviest first: how many have gone left says which spots are free. Of equal weights
    the one set first stands nearer.
    """
    order = sorted(range(len(piles)), key=lambda n: (-piles[n].weight, piles[n].step))
    least: dict[int, tuple[float, tuple[str, ...]]] = {0: (0.0, ())}
    for done, n in enumerate(order):
        grown: dict[int, tuple[float, tuple[str, ...]]] = {}
        for gone, (cost, sides) in least.items():
            for side in (LEFT, RIGHT):
                ways, taken = (left, gone) if side == LEFT else (right, done - gone)
                if piles[n].side not in (side, EITHER) or taken >= len(ways):
                    continue
                way = ways[taken]
                more = (cost + piles[n].weight * way, (*sides, side))
                key = gone + (side == LEFT)
                if key not in grown or more[0] < grown[key][0]:
                    grown[key] = more
        least = grown
    _, sides = min(least.values(), key=lambda one: one[0])
    return _numbered(order, sides)


def deal_as_delivered(piles: Sequence[Pile], left: int, right: int) -> Dealt:
    """Deal piles to the nearest free spot as they come, those across the middle to either side.

    Parameters
    ----------
    piles : sequence of Pile
        In the order of the delivery.
    left, right : int
        Spots; there has to be one for each pile. [-]

    Returns
    -------
    tuple of (str, int)
        One for each pile, in the same order. [-]
    """
    free = {LEFT: left, RIGHT: right}
    for pile in piles:
        if pile.side:
            free[pile.side] -= 1
    sides: list[str] = []
    for pile in piles:
        side = pile.side or (LEFT if free[LEFT] >= free[RIGHT] else RIGHT)
        free[side] -= not pile.side
        sides.append(side)
    return _numbered(range(len(piles)), sides)


def that_fit(piles: Sequence[Pile], left: int, right: int) -> tuple[Pile, ...]:
    """Piles that so many spots have room for, those first that are set first.

    Parameters
    ----------
    piles : sequence of Pile
    left, right : int
        Spots. [-]

    Returns
    -------
    tuple of Pile
        In the same order.
    """
    room = {LEFT: left, RIGHT: right}
    free, taken = left + right, set()
    for n in sorted(range(len(piles)), key=lambda n: piles[n].step):
        side = piles[n].side
        if free and (not side or room[side]):
            free -= 1
            taken.add(n)
            if side:
                room[side] -= 1
    return tuple(pile for n, pile in enumerate(piles) if n in taken)


def _numbered(order: Sequence[int], sides: Sequence[str]) -> Dealt:
    """Spots in the order of dealing, as one for each pile in its own order."""
    taken = {LEFT: 0, RIGHT: 0}
    found: dict[int, tuple[str, int]] = {}
    for n, side in zip(order, sides, strict=True):
        found[n] = (side, taken[side])
        taken[side] += 1
    return tuple(found[n] for n in sorted(found))
