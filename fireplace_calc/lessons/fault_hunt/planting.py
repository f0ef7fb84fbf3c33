"""Designs with planted faults: each breaks one rule of the code and nothing else."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.lessons.fault_records import Fault, FaultFinding
from fireplace_calc.lessons.faults import FAULTS
from fireplace_calc.lessons.seeds import require_seed
from fireplace_calc.lessons.valid_designs import broken, require_taught, told, valid_design
from fireplace_calc.rules import Finding, Pack
from fireplace_calc.rules.comparing import FALLS_SHORT

TRIES = 60
"""Sound designs tried before one of them takes the faults. [-]"""


def latest_edition() -> int:
    """Number of the list as it is now. [-]"""
    return max(fault.since for fault in FAULTS)


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
) -> tuple[Design, dict[str, Finding]] | None:
    """The design with one fault more, and all that it breaks; nothing unless the fault breaks one
    rule of its own and nothing else.
    """
    wrong = fault.plant(design, pack, fault, rng)
    if wrong is None:
        return None
    found = {f.key: f for f in broken(pack.check(told(wrong)))}
    new = set(found) - set(already)
    alone = len(new) == 1 and new <= set(fault.rules) and set(already) <= set(found)
    return (
        (wrong, found) if alone and all(f.verdict == FALLS_SHORT for f in found.values()) else None
    )


def planted(
    seed: int | str, faults: int = 1, pack: str = DEFAULT_PACK, edition: int | None = None
) -> FaultFinding:
    """A design in which so many rules are broken, each by one fault; the same for the same seed and
    edition, whatever is added to the list later on.

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

    Returns
    -------
    FaultFinding

    Raises
    ------
    InputError
        For another pack, edition or number of faults, or when none fits within ``TRIES`` designs.

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
    choice, rng = offered(edition), Random(f"faults {require_seed(seed)} {pack} {faults}")
    for attempt in range(TRIES):
        design = valid_design(f"{seed}" if not attempt else f"{seed}, draw {attempt + 1}", pack)
        made: dict[str, Fault] = {}
        for fault in rng.sample(choice, len(choice)):
            if not set(fault.rules) & set(book.keys):
                continue
            if more := _one_more(design, fault, book, rng, tuple(made)):
                design, found = more
                made |= {key: fault for key in found if key not in made}
            if len(made) == faults:
                named = replace(design, name=f"Exercise {seed}")
                return FaultFinding(
                    seed,
                    pack,
                    named,
                    tuple(made.values()),
                    tuple(found[key] for key in made),
                    edition or latest_edition(),
                )
    raise InputError(
        f"Seed {seed!r} took no {faults} faults in {TRIES} designs; take another seed.",
        "Seed",
        "another",
        seed,
    )
