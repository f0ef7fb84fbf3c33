"""In what order a set is set: a piece after what carries it, and after what it is lowered over.

A piece comes down from above. So it waits for what it rests on, for whatever it covers seen from
above, and for what its file says. Of what is free the lowest lift goes next, in it the heaviest,
of two alike the left one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from itertools import combinations

from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.lowering import covers, laps_over
from fireplace_calc.geometry.assembled.seats import carriers
from fireplace_calc.geometry.assembled.solids import middle_of_mass, piece_weight
from fireplace_calc.geometry.from_set.lining_piece import LINING
from fireplace_calc.pieces.records import FirebrickLining
from fireplace_calc.pieces.roles import FIREBOX

GRAM = 3
"""Weights are compared to so many decimals of a kilogram, so that both hands of a pair are alike.
[-]
"""


@dataclass(frozen=True, slots=True)
class SettingStep:
    """One piece set, or the lining laid.

    Attributes
    ----------
    number : int
        From 1. [-]
    name : str
        Of the piece, mark and number, or ``lining``.
    placed : Placed or None
        None for the lining.
    carried_by : tuple of str
        What it rests on.
    after : tuple of str
        Everything that has to stand before it, what carries it among that.
    """

    number: int
    name: str
    placed: Placed | None
    carried_by: tuple[str, ...]
    after: tuple[str, ...]


def order_of_setting(
    made: Assembly, lining: FirebrickLining | None = None
) -> tuple[SettingStep, ...]:
    """Every piece once, and the lining where there is one.

    Parameters
    ----------
    made : Assembly
        A set that fits.
    lining : FirebrickLining or None
        Laid when the pieces stand that it names, and the walls it is laid against.

    Returns
    -------
    tuple of SettingStep

    Raises
    ------
    InputError
        When pieces wait for each other; it names them.
    """
    carried = carried_by(made)
    waits = {name: set(under) for name, under in carried.items()}
    _add_covered(made, waits)
    _add_told(made, lining, waits)
    placed = {p.name: p for p in made.placed}
    rank = {name: _rank(one) for name, one in placed.items()} | {LINING: (-1, 0.0, 0.0, LINING)}
    names = _sorted(waits, rank)
    order = {name: number for number, name in enumerate(names, 1)}
    return tuple(
        SettingStep(
            order[name],
            name,
            placed.get(name),
            tuple(sorted(carried.get(name, ()), key=order.__getitem__)),
            tuple(sorted(waits[name], key=order.__getitem__)),
        )
        for name in names
    )


def steps_by_name(made: Assembly, lining: FirebrickLining | None = None) -> dict[str, int]:
    """Number of the step in which each piece is set, and the lining laid.

    Parameters
    ----------
    made : Assembly
    lining : FirebrickLining or None

    Returns
    -------
    dict of str to int
        By the name of the piece, or ``lining``; empty where pieces wait for each other. [-]
    """
    try:
        steps = order_of_setting(made, lining)
    except InputError:
        return {}
    return {step.name: step.number for step in steps}


def stopped_by(steps: Iterable[SettingStep], missing: Iterable[str]) -> tuple[SettingStep, ...]:
    """Steps that cannot be done while some pieces are missing: theirs, and all that waits for them.

    Parameters
    ----------
    steps : iterable of SettingStep
        In order.
    missing : iterable of str
        Names of pieces.

    Returns
    -------
    tuple of SettingStep
        In order.
    """
    gone, found = set(missing), []
    for step in steps:
        if step.name in gone or gone.intersection(step.after):
            gone.add(step.name)
            found.append(step)
    return tuple(found)


def _rank(one: Placed) -> tuple[float, float, float, str]:
    """The lowest, then the heaviest, then from left to right."""
    weight = round(piece_weight(one.piece), GRAM)
    return one.lift, -weight, round(middle_of_mass(one.piece)[0], 6), one.name


def carried_by(made: Assembly) -> dict[str, tuple[str, ...]]:
    """What each piece rests on, by names.

    Parameters
    ----------
    made : Assembly

    Returns
    -------
    dict of str to tuple of str
        Nothing under a piece of the first lift.
    """
    found: dict[str, tuple[str, ...]] = {}
    for number, here in enumerate(made.by_lift):
        below = made.by_lift[number - 1] if number else ()
        kinds = tuple(b.piece for b in below)
        for one in here:
            under = carriers(one.piece, kinds)
            found[one.name] = tuple(b.name for b in below if b.piece in under)
    return found


def _add_covered(made: Assembly, waits: Mapping[str, set[str]]) -> None:
    """A piece waits for what it covers: that could not be lowered past it afterwards."""
    for lower, upper in combinations(made.placed, 2):
        if lower.lift < upper.lift:
            if covers(upper.piece, lower.piece):
                waits[upper.name].add(lower.name)
            continue
        up = round(upper.level - lower.level, 7)
        over, under = (
            laps_over(upper.piece, lower.piece, up),
            laps_over(lower.piece, upper.piece, -up),
        )
        if over and not under:
            waits[upper.name].add(lower.name)
        elif under and not over:
            waits[lower.name].add(upper.name)
        elif over and not _told_apart(upper, lower):
            raise InputError(
                f"{lower.name} and {upper.name} lock into each other: neither can be lowered past"
                ' the other. If one is slid in from the side, say so with "after" in the set\'s'
                " file.",
                "after",
                "the mark that stands first",
                lower.piece.mark,
            )


def _told_apart(one: Placed, other: Placed) -> bool:
    return other.piece.mark in one.piece.after or one.piece.mark in other.piece.after


def _add_told(made: Assembly, lining: FirebrickLining | None, waits: dict[str, set[str]]) -> None:
    """What the set's file says: marks that stand before a piece, and before the lining."""
    marks: dict[str, set[str]] = {}
    for one in made.placed:
        marks.setdefault(one.piece.mark, set()).add(one.name)
    if lining is not None:
        walls = {p.name for p in made.placed if p.piece.role in FIREBOX - {"lintel"}}
        told = (marks.get(mark, set()) for mark in lining.after)
        waits[LINING] = walls.union(*told)
    for one in made.placed:
        for mark in one.piece.after:
            if mark == LINING and lining is not None:
                waits[one.name].add(LINING)
            else:
                waits[one.name] |= marks.get(mark, set())


def _sorted(
    waits: Mapping[str, set[str]], rank: Mapping[str, tuple[float, float, float, str]]
) -> list[str]:
    sorter = TopologicalSorter(waits)
    try:
        sorter.prepare()
    except CycleError as error:
        ring = " waits for ".join(reversed(error.args[1]))
        raise InputError(
            f'Nothing can be set first: {ring}. Look at "after" in the set\'s file.',
            "after",
            "marks that stand before the piece",
            error.args[1],
        ) from None
    out: list[str] = []
    free: list[str] = []
    while sorter.is_active():
        free = sorted([*free, *sorter.get_ready()], key=rank.__getitem__)
        out.append(free.pop(0))
        sorter.done(out[-1])
    return out
