"""Do the pieces measured so far meet? What can be said before the set is whole. [m]"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.geometry.assembled.assembly import assemble
from fireplace_calc.geometry.assembled.fitting import Misfit, fit
from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.joints.rise import rise_of
from fireplace_calc.pieces.measured.lifts import MeasuredLift
from fireplace_calc.pieces.roles import HEADS

WAITS = frozenset(("way", "bed"))
"""What cannot be said of a lift that others may still belong to."""


def fit_so_far(
    lifts: Sequence[MeasuredLift], whole: bool, units: str = FEET_INCHES
) -> tuple[Misfit, ...]:
    """Everything that does not meet among the pieces that are there.

    Parameters
    ----------
    lifts : sequence of MeasuredLift
        From the base up; there may be gaps between their numbers.
    whole : bool
        No role is missing: the uppermost lift is held to everything too.
    units : str
        Of a sentence on heights.

    Returns
    -------
    tuple of Misfit
        One for each pair of marks and kind. Of the uppermost lift, and of those that share a piece
        with it, nothing is said yet of the ring that they close.
    """
    found: dict[tuple[object, ...], Misfit] = {}
    growing = frozenset() if whole else _growing(lifts)
    for head in HEADS:
        for raised in (True, False):
            kept = [lift for lift in lifts if raised or not lift.extension]
            for run in _runs(kept, lifts):
                for one in _of_run(run, head, growing, units):
                    marks = tuple(name.partition(".")[0] for name in one.names)
                    found.setdefault((one.kind, marks), one)
    return tuple(found.values())


def _runs(
    kept: Sequence[MeasuredLift], every: Sequence[MeasuredLift]
) -> Iterable[list[MeasuredLift]]:
    """Lifts on each other; a gap that an extension left out leaves is none."""
    out = sorted({lift.number for lift in every} - {lift.number for lift in kept})
    numbered = [(lift.number - sum(o < lift.number for o in out), lift) for lift in kept]
    for _, run in groupby(enumerate(numbered), key=lambda pair: pair[1][0] - pair[0]):
        yield [lift for _, (_, lift) in run]


def _of_run(
    run: Sequence[MeasuredLift], head: str, growing: frozenset[int], units: str
) -> Iterable[Misfit]:
    chosen: list[ChosenLift] = []
    rises: list[float] = []
    numbers: list[int] = []
    uneven: set[str] = set()
    for lift in run:
        lintel = tuple(piece for name, piece in lift.heads if name == head)
        pieces = (*lift.pieces, *lintel)
        try:
            rise = rise_of(lift.name, pieces, units)
        except InputError as wrong:
            tall = max(pieces, key=lambda p: p.height + p.bed.least)
            short = min(pieces, key=lambda p: p.height + p.bed.most)
            uneven.update(p.mark for p in pieces)
            yield Misfit((tall.mark, short.mark), "level", 0.0, str(wrong))
            height = max(p.height + p.bed.wanted for p in pieces)
        else:
            height = min(max(rise.wanted, rise.least), rise.most)
        twice = 2 if lift.times[1] > 1 else 1  # on its own kind too
        chosen += [ChosenLift(lift.name, pieces, lift.extension)] * twice
        rises += [height] * twice
        numbers += [lift.number] * twice
    made = assemble(chosen, rises)
    waiting = {p.name for p in made.placed if numbers[p.lift] in growing}
    for one in fit(made):
        marks = [name.partition(".")[0] for name in one.names]
        if one.kind in ("wide", "tight") and len(marks) == 1 and marks[0] in uneven:
            continue  # said by their heights
        if not (one.kind in WAITS and one.names[0] in waiting):
            yield one


def _growing(lifts: Sequence[MeasuredLift]) -> frozenset[int]:
    """Lifts that more pieces may still come to: the uppermost, and those that share one with it."""
    if not lifts:
        return frozenset()
    top = {p.mark for p in lifts[-1].pieces}
    shared = {lift.number for lift in lifts if top & {p.mark for p in lift.pieces}}
    return frozenset(shared | {lifts[-1].number})
