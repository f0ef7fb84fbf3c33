"""One pinned design, reckoned once: by the package, and by hand."""

from __future__ import annotations

from functools import cache, cached_property

from naive import fire, levels, reading
from naive.clauses import Work as Clauses
from naive.order import Order
from naive.reading import PINS
from naive.solids import Parts
from naive.stand import Stands
from naive.work import Work

NAMES = tuple(sorted(path.stem for path in PINS.glob("*.toml") if path.stem != "defaults"))
"""Every pinned design."""


class Naive:
    """All of it by hand, each piece when it is first wanted."""

    def __init__(self, name: str):
        self.d = reading.read(name)
        self.s = levels.levels(self.d)

    parts = cached_property(lambda self: Parts(self.s).all())
    voids = cached_property(lambda self: Parts(self.s).voids())
    order = cached_property(lambda self: Order(self.s))
    rows = cached_property(lambda self: self.order.rows())
    clauses = cached_property(lambda self: Clauses(self.s))
    stands = cached_property(lambda self: Stands(self.s, self.order))
    work = cached_property(lambda self: Work(self.s, self.order))
    fire = cached_property(lambda self: fire.told(self.s))


@cache
def naive(name: str) -> Naive:
    """By hand."""
    return Naive(name)


@cache
def assessed(name: str, pack: str = "US IRC 2021"):
    """By the package."""
    from fireplace_calc import assess, load

    return assess(load(PINS / f"{name}.toml"), pack)


def differs(mine: dict, theirs: dict, rel: float = 1e-9, least: float = 1e-9) -> dict:
    """What two tables of numbers and words do not agree on, within a share of each number or a smallest amount."""
    found = {}
    for key in mine.keys() | theirs.keys():
        a, b = mine.get(key, "nothing"), theirs.get(key, "nothing")
        if isinstance(a, (int, float)) and hasattr(b, "__float__"):
            if abs(float(a) - float(b)) > max(rel * abs(float(a)), least):
                found[key] = (a, float(b))
        elif a != b:
            found[key] = (a, b)
    return found
