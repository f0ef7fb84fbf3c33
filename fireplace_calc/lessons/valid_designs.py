"""Random designs that break nothing: every question of the code is answered, and every answer is
good enough.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterable, Iterator, Mapping
from math import ceil
from random import Random
from types import MappingProxyType
from typing import Any

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import INCH, SQIN, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore import sketch, try_change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons.answered import _answered, _indoors, _outdoors
from fireplace_calc.lessons.fault_hunt.fault_books import (
    FAULT_BOOKS,
    RECTANGULAR,
    ROUND,
    FaultBook,
    fault_book,
)
from fireplace_calc.lessons.seeds import require_seed
from fireplace_calc.rules import PACKS, Pack
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.takeoff import weight_on_footing

SEARCHED = tuple(n for n in PACKS if n.startswith(tuple(book.start for book in FAULT_BOOKS)))
"""Packs that faults are planted for."""
TRIES = 400
"""Designs drawn before one that breaks nothing has to be among them; about one in three is. [-]"""
OPEN = (FALLS_SHORT, NOT_CHECKED)
GUIDES = frozenset(key for book in FAULT_BOOKS for key in book.guides)


def require_taught(pack: str) -> Pack:
    """The pack of a name, or a sentence that says for which ones faults are planted.

    Raises
    ------
    InputError
        For any other.
    """
    if pack not in SEARCHED:
        raise InputError(
            f"Code pack is {pack!r}, but faults are planted for {', '.join(SEARCHED)} only.",
            "Code pack",
            ", ".join(SEARCHED),
            pack,
        )
    return PACKS[pack]


def told(design: Design) -> Facts:
    """Everything the rules may ask, weights too: what ``assess`` holds against the code."""
    made = build_geometry(design)
    return gather_facts(made, weight_on_footing(made))


def broken(pack: Pack, facts: Facts, only: Iterable[str] | None = None) -> dict[str, str]:
    """What falls short or could not be checked, by the key of its rule; guides are left out."""
    return {
        key: verdict
        for key, verdict in pack.verdicts(facts, only).items()
        if verdict in OPEN and key not in GUIDES
    }


def broken_by(design: Design, pack: Pack, may: Collection[str] = ()) -> dict[str, str]:
    """What a design breaks, as ``broken`` has it. It is weighed last, for what is not known without
    its weight, and not at all where something falls short that may not.
    """
    found = broken(pack, gather_facts(sketch(design)))
    short = {key: verdict for key, verdict in found.items() if verdict == FALLS_SHORT}
    if not short.keys() <= set(may):
        return found
    return short | broken(pack, told(design), found.keys() - short.keys())


def nudged(design: Design, key: str, by: float) -> Design | None:
    """The design with one length longer by so much [m], or one count by so many; nothing where it
    cannot be drawn.
    """
    group, _, name = key.partition(".")
    record = getattr(design, group)
    if (value := getattr(record, name)) is None:
        return None
    count = inputs_of(record)[name].kind == "count"
    return try_change(
        design, {key: int(value + by) if count else f"{round((value + by) / INCH, 6)!r} in"}
    )


def tall_enough(design: Design, pack: Pack) -> Design | None:
    """The design with the fewest flue sections that reach as far over the roof as the code asks;
    nothing if forty do not.
    """
    tall: dict[int, Design] = {}

    def reaches(count: int) -> bool:
        tried = try_change(design, {"flue.sections": count})
        if tried is None or broken(pack, gather_facts(sketch(tried)), fault_book(pack.name).above):
            return False
        tall[count] = tried
        return True

    return tall.get(bisect_left(range(4, 41), True, key=reaches) + 4)


def _flue_for(design: Design, pack: Pack, rng: Random) -> Design | None:
    """The design with the smallest liner of its shape that is large enough for the opening, or the
    next one.
    """
    sizes = ROUND if design.flue.shape == "round" else RECTANGULAR
    for place, size in enumerate(sizes):
        tried = try_change(design, {"flue.size": size})
        if tried and not broken(pack, gather_facts(sketch(tried)), fault_book(pack.name).flue):
            larger = sizes[min(place + (rng.random() < 0.2), len(sizes) - 1)]
            return tried if larger == size else try_change(tried, {"flue.size": larger})
    return None


def _follows(design: Design, pack: Pack, rng: Random) -> Design | None:
    """Hearth and smoke chamber as the opening asks, with something to spare."""
    changes: dict[str, str] = {}
    following = fault_book(pack.name).following
    for finding in pack.check(gather_facts(sketch(design)), following, resting=False):
        if isinstance(finding.required, float):
            spare = rng.randrange(5) * (1 if finding.unit == "in" else 25)
            more = -2 * spare if finding.key == "SMK-04" else spare
            changes[following[finding.key]] = f"{finding.required + more:g} {finding.unit}"
    return try_change(design, changes)


def _fitted(design: Design, pack: Pack, rng: Random) -> Design | None:
    """Sizes that follow from others: hearth, smoke chamber, flue, damper, arrester, cricket,
    sections.
    """
    followed = _follows(design, pack, rng)
    made = followed and _flue_for(followed, pack, rng)
    if made is None:
        return None
    work, book = gather_facts(sketch(made)), fault_book(pack.name)
    flue, throat = work.flue_net_area, work.throat_area
    if flue is None or throat < flue or broken(pack, work, book.chamber):
        return None
    changes: dict[str, Any] = {
        "throat.damper_area": f"{ceil((flue + (throat - flue) * rng.random()) / SQIN)} in2"
    }
    if book.vent:
        spare = 1.05 + 0.4 * rng.random()
        changes["house.air_inlet"] = f"{ceil(book.vent * throat * spare / SQIN)} in2"
    if work.arrester:
        changes["chimney.arrester_area"] = f"{round(4.5 * flue / SQIN)} in2"
    asked = next(iter(pack.check(work, ("ROF-09",), resting=False)), None)
    if asked and isinstance(asked.required, float):
        changes["roof.cricket_height"] = f"{int(asked.required) + rng.choice((1, 2))} in"
    fitted = try_change(made, changes)
    return fitted and tall_enough(fitted, pack)


def _drawn(rng: Random, book: FaultBook) -> dict[str, Any]:
    """Whatever comes out of the stream, with what holds in the book over it."""
    drawn = _indoors(rng) | _outdoors(rng)
    if drawn["flue.shape"] not in book.shapes:
        drawn |= {"flue.shape": book.shapes[0], "flue.size": ROUND[0]}
    return drawn | book.told


def _wanted(
    rng: Random, book: FaultBook, wants: Mapping[str, tuple[str, ...]]
) -> Iterator[Design | None]:
    """As many designs as are tried, of those that are as wanted; none where one cannot be."""
    for _ in range(TRIES):
        drawn = _drawn(rng, book)
        while not all(drawn[key] in words for key, words in wants.items()):
            drawn = _drawn(rng, book)
        yield try_change(_answered(), drawn)


def valid_design(
    seed: int | str,
    pack: str = DEFAULT_PACK,
    wants: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
) -> Design:
    """A design that breaks nothing and leaves nothing unchecked; the same for the same seed.

    Parameters
    ----------
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One of ``SEARCHED``.
    wants : mapping
        Inputs to the words that one of them has to be.

    Returns
    -------
    Design
        Invented, and it says so.

    Raises
    ------
    InputError
        When there is no such pack, the seed is too long, or none of the first ``TRIES`` designs
        will do.

    Examples
    --------
    >>> valid_design(7) == valid_design(7), valid_design(7) == valid_design(8)
    (True, False)
    """
    book, rng = require_taught(pack), Random(f"sound {require_seed(seed)} {pack}")
    for drawn in _wanted(rng, fault_book(pack), wants):
        if drawn is None or (drawn.site.frost_depth or 0.0) > drawn.base.footing_depth:
            continue
        fitted = _fitted(drawn, book, rng)
        if fitted is not None and not broken_by(fitted, book):
            return change(fitted, {"name": f"Exercise {seed}"})
    raise InputError(
        f"Seed {seed!r} gave no design that breaks nothing in {TRIES} draws; take another seed.",
        "Seed",
        "another",
        seed,
    )
