"""In what order the parts go up, found from what each rests on, stands in, and leans on."""

from __future__ import annotations

from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from heapq import heappop, heappush
from itertools import combinations, pairwise

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.build.contact import Contacts
from fireplace_calc.build.lift_parts import (
    COURSED,
    FLUES,
    LiftPart,
    break_levels,
    set_level,
    split_into_lifts,
    working_floors,
)
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.pieces.roles import PARTS

CAST = ("concrete", "grout", "parging", "mortar")
"""Poured or coated: inside another part they come after it, for it is their form. Anything else is
built round.
"""
INSIDE_SET = ("firebox lining", "firebox floor", "lintel", "arch", "throat front")
"""Of a fireplace from a set, what its masonry does not wait for."""
LAID_INSIDE = ("firebox lining", "firebox floor")
LAST = ("hearth extension", "hearth seat")
"""Left to the end, so that nothing falls on it."""


@dataclass(frozen=True, slots=True)
class Dependency:
    """Why one lift part waits for another.

    Attributes
    ----------
    first, then : int
        Place of both in the list of lift parts, from 0. [-]
    how : str
        ``rests on``, ``stands in``, ``is cast against``, ``goes round``, ``leans on``, ``is
        steadied by``, ``goes on`` or ``comes after``.
    """

    first: int
    then: int
    how: str


@dataclass(frozen=True, slots=True)
class Order:
    """Lift parts in the order they are built, and every dependency between them."""

    lift_parts: tuple[LiftPart, ...]
    dependencies: tuple[Dependency, ...]


def _last_under(pieces: list[tuple[int, LiftPart]], level: float) -> int:
    """Number of the lift part that ends at a level or reaches over it."""
    return next(
        (n for n, s in pieces if s.low + CONTACT_GAP < level <= s.high + CONTACT_GAP), pieces[-1][0]
    )


def _nested(
    inner: Part, outer: Part, ins: list[tuple[int, LiftPart]], outs: list[tuple[int, LiftPart]]
) -> list[Dependency]:
    """Dependencies between a part and what it stands in."""
    dependencies, cast = [], inner.material in CAST
    for i, p in ins:
        level = p.low if inner.name in COURSED else max(p.low, set_level(inner))
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
    """Every lift part in the order of the parts, and what waits for what.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of list
        Lift parts, and dependencies between them by their place in the list.
    """
    parts = [p for p in geometry.parts if p.volume > 0]
    contacts = Contacts(parts)
    pairs = [
        (a, b)
        for a, b in combinations(parts, 2)
        if (h := contacts.shared_height(a, b))[0] <= h[1] + CONTACT_GAP
    ]
    nested = [
        (a, b)
        for one, other in pairs
        for a, b in ((one, other), (other, one))
        if contacts.inside(a, b) and not _beside_the_set(a, b)
    ]
    floors = working_floors(geometry)
    breaks = break_levels(
        geometry, [a for a, b in nested if a.name not in COURSED and b.name in COURSED], floors
    )
    lift_parts: list[LiftPart] = []
    pieces_of: dict[str, list[tuple[int, LiftPart]]] = {}
    for part in parts:
        pieces_of[part.name] = [
            (len(lift_parts) + n, s)
            for n, s in enumerate(split_into_lifts(part, geometry, breaks, floors))
        ]
        lift_parts += [s for _, s in pieces_of[part.name]]
    dependencies = [
        Dependency(a, b, "goes on")
        for part in parts
        for (a, _), (b, _) in pairwise(pieces_of[part.name])
    ]
    for inner, outer in nested:
        dependencies += _nested(inner, outer, pieces_of[inner.name], pieces_of[outer.name])
    within = {(a.name, b.name) for a, b in nested}
    apart = _parted_by_the_set(geometry)
    for one, other in pairs:
        for lower, upper in ((one, other), (other, one)):
            if (lower.name, upper.name) in apart:
                continue
            if (lower.name, upper.name) not in within and contacts.carries(lower, upper):
                dependencies.append(
                    Dependency(
                        _last_under(pieces_of[lower.name], upper.bottom),
                        pieces_of[upper.name][0][0],
                        "rests on",
                    )
                )
            elif (
                not within & {(one.name, other.name), (other.name, one.name)}
                and not (one.name in FLUES and other.name in FLUES)  # masonry stands between
                and contacts.leans(upper, lower)
            ):
                dependencies += [
                    Dependency(n, m, "leans on")
                    for m, u in pieces_of[upper.name]
                    for n, s in pieces_of[lower.name]
                    if min(u.high, s.high) - max(u.low, s.low) > CONTACT_GAP
                ]
    dependencies += _as_the_set_says(geometry, pieces_of)
    return lift_parts, dependencies


def _beside_the_set(inner: Part, outer: Part) -> bool:
    """The masonry round a set goes round its pieces, not round what is laid inside them."""
    return outer.name == "masonry round the set" and inner.name in INSIDE_SET


def _parted_by_the_set(geometry: Geometry) -> frozenset[tuple[str, str]]:
    """Of a set, which part never carries which: pieces rest on pieces, as their seats have it, and
    lean on nothing that is laid inside them, whatever mortar hangs over it.
    """
    if geometry.design.piece_set is None:
        return frozenset()
    from fireplace_calc.build.setting.setting_order import carried_by
    from fireplace_calc.geometry.from_set.set_up import set_up  # wakes manifold3d

    made = set_up(geometry.design).assembly
    of_role = {role: name for name, roles in PARTS.items() for role in roles}
    part_of = {p.name: of_role[p.piece.role] for p in made.placed}
    seats = {
        (part_of[under], part_of[name])
        for name, below in carried_by(made).items()
        for under in below
    }
    pieces = frozenset(part_of.values())
    between = ((a, b) for a in pieces for b in pieces if (a, b) not in seats)
    return frozenset((*between, *((laid, piece) for laid in LAID_INSIDE for piece in pieces)))


def _as_the_set_says(
    geometry: Geometry, pieces_of: dict[str, list[tuple[int, LiftPart]]]
) -> list[Dependency]:
    """What a set's file says has to stand before, although nothing rests on it."""
    made = geometry.design.piece_set
    if made is None:
        return []
    of_role = {role: name for name, roles in PARTS.items() for role in roles if name in pieces_of}
    lining = "firebox lining"
    waits = (
        {(lining, of_role.get(made.piece(m).role, "")) for m in made.lining.after}
        if made.lining
        else set()
    )
    for piece in made.pieces:
        for mark in piece.after:
            before = lining if mark == "lining" else of_role.get(made.piece(mark).role, "")
            waits.add((of_role.get(piece.role, ""), before))
    return [
        Dependency(n, m, "comes after")
        for later, before in sorted(waits)
        if later != before
        for n, _ in pieces_of.get(before, [])
        for m, _ in pieces_of.get(later, [])
    ]


def order_of_work(geometry: Geometry) -> Order:
    """The order of work: of everything whose supports stand, the lowest goes next.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Order
        Lift parts in turn, dependencies by their place in it.

    Raises
    ------
    ValueError
        When parts wait for each other in a ring, so that nothing could be built.
    """
    parts, dependencies = dependencies_of(geometry)
    waits: dict[int, set[int]] = {n: set() for n in range(len(parts))}
    for d in dependencies:
        waits[d.then].add(d.first)
    order = _sorted_by_level(parts, waits)
    place = {n: k for k, n in enumerate(order)}
    return Order(
        tuple(parts[n] for n in order),
        tuple(Dependency(place[d.first], place[d.then], d.how) for d in dependencies),
    )


def _sorted_by_level(parts: list[LiftPart], waits: dict[int, set[int]]) -> list[int]:
    """Numbers of the parts in the order they are built.

    graphlib says what is ready; of that the lowest working floor goes first, then the lowest
    underside, then the order of the parts, so that the same design gives the same order.
    """
    sorter = TopologicalSorter(waits)
    try:
        sorter.prepare()
    except CycleError as error:
        ring = ", ".join(parts[n].name for n in error.args[1])
        raise ValueError(
            f"These parts wait for each other and none can be built first: {ring}."
        ) from None
    ready: list[tuple[bool, float, float, int]] = []
    order: list[int] = []
    while sorter.is_active():
        for n in sorter.get_ready():
            heappush(ready, (parts[n].part in LAST, parts[n].floor, parts[n].low, n))
        n = heappop(ready)[-1]
        order.append(n)
        sorter.done(n)
    return order
