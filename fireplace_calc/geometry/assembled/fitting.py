"""Do all pieces meet? Every seat, every joint, every nest, and one way for the smoke. [m]"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
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

FINE = 9
"""Decimals of a meter that tell two beds apart. [-]"""


@lru_cache(maxsize=64)
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
    below: tuple[Placed, ...] = ()
    for number, here in enumerate(made.by_lift):
        over = None if head is None else (number > head) - (number < head)
        beds = tuple(round(p.bed, FINE) for p in here)
        kinds = tuple(p.piece for p in here)
        if not _sound(kinds, beds, tuple(p.piece for p in below), over):
            found += _faults(here, below, over)
        below = here
    return tuple(found)


@lru_cache(maxsize=4096)
def _sound(
    kinds: tuple[SetPiece, ...],
    beds: tuple[float, ...],
    under: tuple[SetPiece, ...],
    over: int | None,
) -> bool:
    """Whether a lift meets the one under it, wherever in a set it stands. Kept by content: most
    lifts stay as they are when one joint or one piece changes, and flue pieces are alike.
    """
    below = tuple(Placed(p, 0, n, 0.0, -p.height) for n, p in enumerate(under))
    here = tuple(
        Placed(p, 1, n, bed, bed) for n, (p, bed) in enumerate(zip(kinds, beds, strict=True))
    )
    return next(iter(_faults(here, below, over)), None) is None


def _faults(
    here: tuple[Placed, ...], below: tuple[Placed, ...], over: int | None
) -> Iterator[Misfit]:
    """What does not meet in a lift and under it; ``over`` is its place over (1), at (0) or under
    (-1) the lintel's.
    """
    yield from _beds(here)
    if below:
        yield from _seats(here, below)
    yield from way_faults(here, below, over)
    yield from _seams(here)
    yield from _clashes(here, below)


def _beds(here: tuple[Placed, ...]) -> Iterable[Misfit]:
    """Beds out of the range that their pieces allow."""
    for one in here:
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
