"""Designs with planted faults: each breaks one rule of the code and nothing else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import repeat
from random import Random

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.lessons.fault_hunt.dealing import DEALT, deck, hand
from fireplace_calc.lessons.fault_records import Fault, FaultFinding
from fireplace_calc.lessons.faults import FAULTS
from fireplace_calc.lessons.seeds import place_in_row, require_seed
from fireplace_calc.lessons.valid_designs import broken_by, require_taught, told, valid_design
from fireplace_calc.rules import Pack
from fireplace_calc.rules.comparing import FALLS_SHORT

TRIES = 60
"""Sound designs tried before one of them takes the faults. [-]"""
DEALT_TRIES = 400
"""Sound designs tried with the faults that are dealt, before others stand in for them. [-]"""


def latest_edition() -> int:
    """Number of the list as it is now, and of the way to take faults from it. [-]"""
    return max(DEALT, *(fault.since for fault in FAULTS))


def offered(edition: int | None = None) -> tuple[Fault, ...]:
    """Faults of one edition of the list, and of those before it.

    Parameters
    ----------
    edition : int or None
        Of the list; the latest when not told. [-]

    Raises
    ------
    InputError
        When there is no such edition.
    """
    latest = latest_edition()
    edition = latest if edition is None else edition
    if not 1 <= edition <= latest:
        raise InputError(
            f"Edition of the list of faults is {edition!r}, but 1 to {latest} are known. A later"
            " one belongs to a newer version of this program.",
            "Edition",
            f"1 to {latest}",
            edition,
        )
    return tuple(fault for fault in FAULTS if fault.since <= edition)


def _one_more(
    design: Design, fault: Fault, pack: Pack, rng: Random, already: tuple[str, ...]
) -> tuple[Design, set[str]] | None:
    """The design with one fault more, and the keys of all rules that it breaks; nothing unless the
    fault breaks one rule of its own and nothing else.
    """
    wrong = fault.plant(design, pack, fault, rng)
    if wrong is None:
        return None
    verdicts = broken_by(wrong, pack, {*already, *fault.rules})
    new = set(verdicts) - set(already)
    alone = len(new) == 1 and new <= set(fault.rules) and set(already) <= set(verdicts)
    if not alone or set(verdicts.values()) != {FALLS_SHORT}:
        return None
    return wrong, set(verdicts)


def _tried(
    edition: int, seed: str, faults: int, book: Pack, place: int | None, deal: str, rng: Random
) -> Iterator[Sequence[Fault]]:
    """For each sound design the faults that it is tried with, in their order."""
    choice = offered(edition)
    if edition < DEALT:
        for _ in range(TRIES):
            yield rng.sample(choice, len(choice))
        return
    known = tuple(fault for fault in choice if set(fault.rules) & set(book.keys))
    order = deck(known, faults, book.name, deal)
    start = faults * place_in_row(seed, place)
    yield from repeat(hand(order, start, faults), DEALT_TRIES)
    yield from repeat(hand(order, start, len(order)), TRIES)


def planted(
    seed: int | str,
    faults: int = 1,
    pack: str = DEFAULT_PACK,
    edition: int | None = None,
    place: int | None = None,
    deal: str = "",
) -> FaultFinding:
    """A design in which so many rules are broken, each by one fault; the same for the same seed,
    edition, place and deal, whatever is added to the list later on.

    Parameters
    ----------
    seed : int or str
        Whatever tells one student from the next.
    faults : int
        How many, 1 to 4. [-]
    pack : str
        One of ``SEARCHED``.
    edition : int or None
        Of the list of faults; the latest when not told. [-]
    place : int or None
        Of the student in the class: faults go round by it, so that none comes up more than twice
        as often as another. Without it a whole-number seed is taken for the place. [-]
    deal : str
        Tells one class from the next, so that a place does not get the same faults in both.

    Returns
    -------
    FaultFinding

    Raises
    ------
    InputError
        For another pack, edition or number of faults, or when none fits in any design tried.

    Examples
    --------
    >>> fault_finding = planted(3, faults=2)
    >>> len(fault_finding.findings), {f.verdict for f in fault_finding.findings}
    (2, {'falls short'})
    """
    book = require_taught(pack)
    if faults not in (1, 2, 3, 4):
        raise InputError(
            f"Faults are {faults!r}, but 1 to 4 can be planted in one design.",
            "Faults",
            "1 to 4",
            faults,
        )
    told_seed, edition = require_seed(seed), latest_edition() if edition is None else edition
    rng = Random(f"faults {told_seed} {pack} {faults}")
    tried = _tried(edition, told_seed, faults, book, place, deal, rng)
    for attempt, choice in enumerate(tried):
        own = f"{seed}" if not attempt else f"{seed}, draw {attempt + 1}"
        wants = (
            dict(want for fault in choice for want in fault.wants) if len(choice) == faults else {}
        )
        design = replace(valid_design(own, pack, wants), name=f"Exercise {seed}")
        if made := _all_planted(design, choice, faults, book, rng):
            wrong, found = made
            known = {finding.key: finding for finding in book.check(told(wrong), found)}
            findings = tuple(known[key] for key in found)
            return FaultFinding(seed, pack, wrong, tuple(found.values()), findings, edition)
    raise InputError(
        f"Seed {seed!r} took no {faults} faults in {attempt + 1} designs; take another seed.",
        "Seed",
        "another",
        seed,
    )


def _all_planted(
    design: Design, choice: Sequence[Fault], faults: int, book: Pack, rng: Random
) -> tuple[Design, dict[str, Fault]] | None:
    """A design with so many of some faults, each by the key of the rule that it breaks; nothing
    where it does not take them.
    """
    made = dict[str, Fault]()
    for fault in choice:
        if not set(fault.rules) & set(book.keys):
            continue
        if more := _one_more(design, fault, book, rng, tuple(made)):
            design, keys = more
            made |= {key: fault for key in keys if key not in made}
        elif len(choice) == faults:
            return None
        if len(made) == faults:
            return design, made
    return None
