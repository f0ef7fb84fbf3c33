"""In what order the parts go up, found from what each rests on, stands in, and leans on."""

from __future__ import annotations

import heapq
from dataclasses import dataclass
from itertools import combinations, pairwise

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.build.contact import Contacts
from fireplace_calc.build.lift_parts import (
    LAID,
    LiftPart,
    break_levels,
    set_level,
    split_into_lifts,
    working_floors,
)
from fireplace_calc.geometry.parts import Geometry, Part

CAST = ("concrete", "grout", "parging", "mortar")
"""Poured or coated: inside another part they come after it, for it is their form. Anything else is
built round.
"""
LAST = ("hearth extension",)
"""Left to the end, so that nothing falls on it."""


@dataclass(frozen=True, slots=True)
class Dependency:
    """Why one stretch waits for another: numbers of both in the list of stretches, and the reason.

    ``how`` is one of ``rests on``, ``stands in``, ``is cast against``, ``goes round``, ``leans
    on``, ``is steadied by``, ``goes on``.
    """

    first: int
    then: int
    how: str


@dataclass(frozen=True, slots=True)
class Order:
    """Stretches in the order they are built, and every tie between them."""

    lift_parts: tuple[LiftPart, ...]
    dependencies: tuple[Dependency, ...]


def _last_under(pieces: list[tuple[int, LiftPart]], level: float) -> int:
    """The stretch that ends at a level or reaches over it."""
    return next(
        (n for n, s in pieces if s.low + CONTACT_GAP < level <= s.high + CONTACT_GAP), pieces[-1][0]
    )


def _nested(
    inner: Part, outer: Part, ins: list[tuple[int, LiftPart]], outs: list[tuple[int, LiftPart]]
) -> list[Dependency]:
    """Ties between a part and what it stands in."""
    dependencies, cast = [], inner.material in CAST
    for i, p in ins:
        level = p.low if inner.name in LAID else max(p.low, set_level(inner))
        below = [o for o, q in outs if q.high <= level + CONTACT_GAP]
        for o, q in outs[len(below) - 1 if below and not cast else 0 :]:
            if q.low >= p.high:
                break
            meets = min(p.high, q.high) - max(p.low, q.low) > CONTACT_GAP
            if cast and meets:
                dependencies.append(Dependency(o, i, "is cast against"))
            elif not cast and q.high <= level + CONTACT_GAP:
                dependencies.append(Dependency(o, i, "stands in" if meets else "is steadied by"))
            elif not cast and meets:
                dependencies.append(Dependency(i, o, "goes round"))
    return dependencies


def dependencies_of(geometry: Geometry) -> tuple[list[LiftPart], list[Dependency]]:
    """Every stretch in the order of the parts, and what waits for what.

    Parameters
    ----------
    geometry : Geometry
        Its parts, cut at their contacts. [m]

    Returns
    -------
    tuple of list
        Stretches, and ties between them by number. [-]
    """
    parts = [p for p in geometry.parts if p.volume > 0]
    touch = Contacts(parts)
    pairs = [
        (a, b)
        for a, b in combinations(parts, 2)
        if (h := touch.shared_height(a, b))[0] <= h[1] + CONTACT_GAP
    ]
    nested = [
        (a, b)
        for one, other in pairs
        for a, b in ((one, other), (other, one))
        if touch.inside(a, b)
    ]
    floors = working_floors(geometry)
    breaks = break_levels(
        geometry, [a for a, b in nested if a.name not in LAID and b.name in LAID], floors
    )
    made: list[LiftPart] = []
    of: dict[str, list[tuple[int, LiftPart]]] = {}
    for part in parts:
        of[part.name] = [
            (len(made) + n, s)
            for n, s in enumerate(split_into_lifts(part, geometry, breaks, floors))
        ]
        made += [s for _, s in of[part.name]]
    dependencies = [
        Dependency(a, b, "goes on") for part in parts for (a, _), (b, _) in pairwise(of[part.name])
    ]
    for inner, outer in nested:
        dependencies += _nested(inner, outer, of[inner.name], of[outer.name])
    within = {(a.name, b.name) for a, b in nested}
    for one, other in pairs:
        for lower, upper in ((one, other), (other, one)):
            if (lower.name, upper.name) not in within and touch.carries(lower, upper):
                dependencies.append(
                    Dependency(
                        _last_under(of[lower.name], upper.bottom), of[upper.name][0][0], "rests on"
                    )
                )
            elif not within & {(one.name, other.name), (other.name, one.name)} and touch.leans(
                upper, lower
            ):
                dependencies += [
                    Dependency(n, m, "leans on")
                    for m, u in of[upper.name]
                    for n, s in of[lower.name]
                    if min(u.high, s.high) - max(u.low, s.low) > CONTACT_GAP
                ]
    return made, dependencies


def order_of_work(geometry: Geometry) -> Order:
    """The order of work: of everything whose supports stand, the lowest goes next.

    Parameters
    ----------
    geometry : Geometry
        With its design's staging lift. [m]

    Returns
    -------
    Order
        Stretches in turn, ties by their number in it. [-]

    Raises
    ------
    ValueError
        When parts wait for each other in a ring, so that nothing could be built.
    """
    made, dependencies = dependencies_of(geometry)
    waits: list[set[int]] = [set() for _ in made]
    frees: list[set[int]] = [set() for _ in made]
    for t in dependencies:
        waits[t.then].add(t.first)
        frees[t.first].add(t.then)

    def turn(n: int) -> tuple:
        return (made[n].part in LAST, made[n].floor, made[n].low, n)

    ready = [turn(n) for n, firsts in enumerate(waits) if not firsts]
    heapq.heapify(ready)
    done: list[int] = []
    while ready:
        n = heapq.heappop(ready)[-1]
        done.append(n)
        for after in sorted(frees[n]):
            waits[after].discard(n)
            if not waits[after]:
                heapq.heappush(ready, turn(after))
    if len(done) < len(made):
        stuck = ", ".join(s.name for n, s in enumerate(made) if n not in done)
        raise ValueError(f"These parts wait for each other and none can be built first: {stuck}.")
    place = {n: k for k, n in enumerate(done)}
    return Order(
        tuple(made[n] for n in done),
        tuple(Dependency(place[t.first], place[t.then], t.how) for t in dependencies),
    )
