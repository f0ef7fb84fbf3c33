"""Which faults a student looks for: dealt round the class, as branches of exercises are."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations
from random import Random

from fireplace_calc.lessons.fault_records import FEW, Fault
from fireplace_calc.rules import PACKS

DEALT = 2
"""First edition of the list whose faults are dealt by the place in the class: those of edition 1
were drawn, and some came up four times in a class while others never did. [-]
"""
SHUFFLES = 300
"""Orders that are looked at for one that keeps apart what cannot be planted together. [-]"""


def clash(one: Fault, other: Fault, pack: str) -> bool:
    """Whether two faults can hardly stand in one design: they break the same rule, move the same
    thing, or each is taken by few designs.
    """
    same = set(one.rules) & set(other.rules) & set(PACKS[pack].keys)
    return bool(same or set(one.apart) & set(other.apart))


@lru_cache(maxsize=64)
def deck(choice: tuple[Fault, ...], many: int, pack: str, name: str) -> tuple[Fault, ...]:
    """The faults of a book in the order in which they are dealt, the same for the same name.

    Parameters
    ----------
    choice : tuple of Fault
        Those that the book has rules for.
    many : int
        How many a student is dealt. [-]
    pack : str
    name : str
        Key of the class: the next one's places get other faults.

    Returns
    -------
    tuple of Fault
        Each once; of many in a row, the first following the last, hardly any two clash.
    """
    rng = Random(f"deck {name} {pack} {many}")
    apart = {
        (one.name, other.name) for one in choice for other in choice if clash(one, other, pack)
    }
    orders = [tuple(rng.sample(choice, len(choice))) for _ in range(SHUFFLES)]

    def clashes(order: tuple[Fault, ...]) -> int:
        rows = (hand(order, start, many) for start in range(len(order)))
        pairs = (pair for row in rows for pair in combinations(row, 2))
        return sum((one.name, other.name) in apart for one, other in pairs)

    return min(orders, key=clashes)


def hand(order: Sequence[Fault], start: int, many: int) -> tuple[Fault, ...]:
    """So many faults from a place of the deck on; those that few designs take come first. [-]"""
    dealt = [order[(start + k) % len(order)] for k in range(many)]
    return tuple(sorted(dealt, key=lambda fault: FEW not in fault.apart))
