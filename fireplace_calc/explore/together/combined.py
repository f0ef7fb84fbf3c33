"""The cheapest two or three changes that mend what fewer do not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.design.records import Design
from fireplace_calc.explore.mending.least_steps import assess_unless_worse
from fireplace_calc.explore.mending.remedies import find_remedies, remedy_of, screened
from fireplace_calc.explore.mending.remedy import Remedy, ranked
from fireplace_calc.explore.mending.trials import Baseline
from fireplace_calc.explore.stepwise import Steps, finished
from fireplace_calc.explore.together.effects import Effects
from fireplace_calc.explore.together.hunt import Hunt
from fireplace_calc.explore.together.pairs import pair_up
from fireplace_calc.explore.together.teams import Team, promising
from fireplace_calc.takeoff.cost import Price, bill
from fireplace_calc.takeoff.cost import prices as price_list

MOST_TEAMS = {2: 24, 3: 12}
"""Sets of levers that are hunted through at most, by how many levers. [-]"""


def _run(effects: Effects, hunts: Sequence[Hunt]) -> Iterator[None]:
    """All hunts to their ends, what they want to see looked at together, round by round."""
    while wanted := {point: None for hunt in hunts for point in hunt.wants()}:
        found = effects.look(wanted)
        for hunt in hunts:
            if hunt.asked and not hunt.dead and all(hunt.point(at) in found for at in hunt.asked):
                hunt.take(found)
        yield


def _wanted(aims: frozenset[str], known: Iterable[Remedy]) -> tuple[int, frozenset[str]]:
    """How many aims something has to mend to be worth it, [-] or which of them one."""
    mends = [one.mends for one in known]
    return max(map(len, mends), default=1), aims.difference(*mends)


def _chosen(promised: Iterable[Team], aims: frozenset[str], known: Sequence[Remedy]) -> list[Team]:
    """Of what is promised: what mends most, and what mends something that nothing else does; the
    cheapest first.
    """
    at_least, unmended = _wanted(aims, known)
    cheap = [(frozenset(one.mends), one.cost) for one in known if one.cost is not None]
    worth = [
        team
        for team in sorted(promised, key=lambda one: (-len(one.goal), one.cost))
        if len(team.goal) >= at_least or team.goal & unmended
        if not any(team.goal <= mended and cost <= team.cost for mended, cost in cheap)
    ]
    best = max((len(team.goal) for team in worth), default=0)
    first = [team for team in worth if len(team.goal) == best]
    return first + [team for team in worth if len(team.goal) < best and team.goal & unmended]


def _proved(base: Baseline, effects: Effects, hunts: Sequence[Hunt]) -> Iterator[None]:
    """The best of every hunt assessed in full, in the hunt's ``proof``; one that proves worse goes
    on for its next best.
    """
    while left := [one for one in hunts if one.proof is None and not one.dead]:
        drawn = [base.tried(effects.changes(one.point(one.best))) for one in left]
        there = [design for design in drawn if design is not None]
        results = iter(assess_unless_worse(base, there))
        for one, design in zip(left, drawn, strict=True):
            one.proof = None if design is None else next(results)
            if one.proof is None:
                one.refuse()
        yield
        yield from _run(effects, [one for one in left if one.proof is None])


def _hunted(
    effects: Effects, size: int, known: Sequence[Remedy], whole: int
) -> Steps[list[Remedy]]:
    """What so many levers mend together that nothing known does, or does dearer: what promises most
    first, and where it comes to nothing what the same levers, or others, promise less of.
    """
    base, rows, prices = effects.base, effects.rows, effects.prices
    was, found, done = bill(base.now.takeoff, prices), list[Remedy](), 3 * size - 4
    promised = promising(effects, size, *_wanted(base.aims, known))
    left, tried, dead = MOST_TEAMS[size], set[object](), dict[tuple[int, ...], Hunt]()
    while chosen := _chosen(promised, base.aims, [*known, *found])[:left]:
        hunts = [
            dead.pop(team.rows).again(team.goal)
            if team.rows in dead
            else Hunt(effects, team.rows, team.goal)
            for team in chosen
        ]
        for _ in _run(effects, hunts):
            yield done, whole, f"{size} changes together"
        done = 3 * size - 3
        for _ in _proved(base, effects, hunts):
            yield done, whole, f"{size} changes together, in full"
        for hunt in hunts:
            if hunt.proof is None:
                dead[hunt.rows] = hunt
                promised += hunt.lesser()
            else:
                settings = tuple(rows[r].tried[k][0] for r, k in hunt.point(hunt.best))
                found.append(remedy_of(base, settings, hunt.proof, was, prices))
        left, tried = left - len(chosen), tried | {(team.rows, team.goal) for team in chosen}
        promised = [team for team in promised if (team.rows, team.goal) not in tried]
    return found


def looking_for_combinations(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    prices: Mapping[str, Price] | None = None,
    locks: Iterable[str] = (),
    most: int = 3,
) -> Steps[tuple[Remedy, ...]]:
    """``find_combinations`` step by step, for whoever shows how far it is.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims : iterable of str, optional
    prices : mapping of str to Price, optional
    locks : iterable of str, optional
        All three as for ``find_remedies``.
    most : int
        How many changes at most, 2 or 3. [-]

    Returns
    -------
    generator
        How far it is, of how far, and what comes next. [-]
    """
    locks, aims = tuple(locks), None if aims is None else tuple(aims)
    base, rows = screened(design, pack, aims, locks)
    if not rows:
        return ()
    priced = price_list() if prices is None else prices
    known = list(find_remedies(design, pack, aims, prices, locks))
    whole = 3 * most - 2
    yield 1, whole, "what each change does"
    effects = Effects(base, rows, priced)
    for _ in chain(effects.look_around(), pair_up(effects)):
        yield 2, whole, "what each change does"
    found: list[Remedy] = []
    for size in range(2, most + 1):
        found += yield from _hunted(effects, size, [*known, *found], whole)
    yield whole, whole, "ready"
    return ranked(found)


def find_combinations(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    prices: Mapping[str, Price] | None = None,
    locks: Iterable[str] = (),
    most: int = 3,
) -> tuple[Remedy, ...]:
    """Two or three changes together that mend what fewer do not, or what fewer mend dearer.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims : iterable of str, optional
    prices : mapping of str to Price, optional
    locks : iterable of str, optional
        All three as for ``find_remedies``.
    most : int
        How many changes at most, 2 or 3. [-]

    Returns
    -------
    tuple of Remedy
        Each assessed in full: it breaks nothing, no change in it can be left out or made by a step
        less, and of its levers no other least settings that mend the same are cheaper. Ranked as
        single remedies are.

    Notes
    -----
    Some settings are looked at, and the rest foretold from them: what no forecast shows is missed.
    """
    return finished(looking_for_combinations(design, pack, aims, prices, locks, most))
