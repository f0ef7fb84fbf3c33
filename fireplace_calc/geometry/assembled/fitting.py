"""Do all pieces meet? Every seat, every joint, every nest, and one way for the smoke. [m]"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import combinations

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.clash import clash
from fireplace_calc.geometry.assembled.closing.ways import way_faults
from fireplace_calc.geometry.assembled.joints import seam
from fireplace_calc.geometry.assembled.seats import seat_fault
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.assembled.wording import Misfit, small
from fireplace_calc.pieces.records import SetPiece

__all__ = ["Misfit", "fit"]


def fit(made: Assembly) -> tuple[Misfit, ...]:
    """Everything that does not meet, from the base up; nothing where all of it does.

    Parameters
    ----------
    made : Assembly

    Returns
    -------
    tuple of Misfit
    """
    head = made.first("lintel")
    found: list[Misfit] = []
    for number, here in enumerate(made.by_lift):
        below = made.by_lift[number - 1] if number else ()
        found += _beds(made, number)
        if number:
            found += _seats(here, below)
        found += way_faults(here, below, number, head)
        found += _seams(here)
        found += _clashes(here, below)
    return tuple(found)


def _beds(made: Assembly, number: int) -> Iterable[Misfit]:
    """Beds out of the range that their pieces allow."""
    for one in made.by_lift[number]:
        over, under = one.bed - one.piece.bed.most, one.piece.bed.least - one.bed
        if max(over, under) > CONTACT_GAP:
            kind, word = ("wide", "too thick") if over > under else ("tight", "too thin")
            by = max(over, under)
            says = f"{one.name}: its bed is {small(one.bed)}, {small(by)} {word}."
            yield Misfit((one.name,), kind, by, says)


def _seats(here: tuple[Placed, ...], below: tuple[Placed, ...]) -> Iterable[Misfit]:
    kinds = tuple(b.piece for b in below)
    for one in here:
        fault = seat_fault(one.piece, kinds)
        if fault is not None:
            others = " or ".join(b.name for b in below)
            says = f"{one.name} {fault.says} {others}."
            yield Misfit((one.name, *(b.name for b in below)), fault.kind, fault.by, says)


def _seams(here: tuple[Placed, ...]) -> Iterable[Misfit]:
    for a, b in combinations(here, 2):
        least, widest = _pair(a.piece, b.piece)
        found = seam(a.piece, b.piece)
        names, both = (a.name, b.name), f"{a.name} and {b.name}"
        if found.least < least - CONTACT_GAP:
            by = least - found.least
            says = f"{both}: their joint is {small(found.least)}, {small(by)} too tight."
            yield Misfit(names, "tight", by, says)
        if found.most > widest + CONTACT_GAP:
            by = found.most - widest
            says = f"{both}: their joint is {small(found.most)}, {small(by)} too wide."
            yield Misfit(names, "wide", by, says)


def _pair(one: SetPiece, other: SetPiece) -> tuple[float, float]:
    """The joint that both allow: the greater least, and the lesser most. [m]"""
    return (
        max(one.perpend.least, other.perpend.least),
        min(one.perpend.most, other.perpend.most),
    )


def _clashes(here: tuple[Placed, ...], below: tuple[Placed, ...]) -> Iterable[Misfit]:
    pairs = [*combinations(here, 2), *((a, b) for a in here for b in below)]
    for a, b in pairs:
        if not _near(a, b):
            continue
        found = clash(a.piece, b.piece, round(b.level - a.level, 7))
        if found is not None:
            by, way = found
            says = f"{a.name} stands {small(by)} inside {b.name}, {way}."
            yield Misfit((a.name, b.name), "clash", by, says)


@lru_cache(maxsize=8192)
def _plans_meet(one: SetPiece, other: SetPiece) -> bool:
    a, b = extent(one), extent(other)
    return a[0] < b[1] and b[0] < a[1] and a[2] < b[3] and b[2] < a[3]


def _near(a: Placed, b: Placed) -> bool:
    """Whether the boxes round two pieces run into each other at all."""
    up = extent(a.piece)[5] + a.level > b.level and extent(b.piece)[5] + b.level > a.level
    return up and _plans_meet(a.piece, b.piece)
