"""What is the least change that mends it: every lever by its smallest steps, each answer assessed
in full.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.explore.mending.least_steps import all_least
from fireplace_calc.explore.mending.lever_settings import Setting, settings_of
from fireplace_calc.explore.mending.levers import LEVERS
from fireplace_calc.explore.mending.locks import foreign, locked_inputs
from fireplace_calc.explore.mending.remedy import RejectedRemedy, Remedy, ranked
from fireplace_calc.explore.mending.trials import (
    Baseline,
    LeverTrials,
    between,
    screen,
)
from fireplace_calc.explore.raising import by_kind, every_finding
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.takeoff.cost import Bill, Price, bill
from fireplace_calc.takeoff.cost import prices as price_list


class Screened(NamedTuple):
    """A design with what is to be mended, and every lever with what was seen of it.

    Attributes
    ----------
    base : Baseline
    rows : tuple of LeverTrials
        Only levers that can be moved at all.
    """

    base: Baseline
    rows: tuple[LeverTrials, ...]


def _count(found: Iterable[Finding]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for f in found:
        counts[f.verdict] = counts.get(f.verdict, 0) + 1
    return counts


def _extra_cost(was: Bill, now: Bill, extra: str) -> float | None:
    """What the order costs more, where the list prices all that has changed."""

    def unpriced(of: Bill) -> dict[str, float]:
        return {line.row.item: line.row.order for line in of.lines if line.price is None}

    return None if extra or unpriced(was) != unpriced(now) else now.total - was.total


def remedy_of(
    base: Baseline,
    settings: tuple[Setting, ...],
    result: Assessment,
    was: Bill,
    prices: Mapping[str, Price],
) -> Remedy:
    """A remedy from what its settings make.

    Parameters
    ----------
    base : Baseline
    settings : tuple of Setting
    result : Assessment
        Of the design with all of them.
    was : Bill
        Before.
    prices : mapping of str to Price
    """
    now, after = bill(result.takeoff, prices), every_finding(result)
    aims, mended = sorted(base.aims), base.mended(after.values())
    return Remedy(
        settings,
        tuple(k for k in aims if k in mended),
        tuple(k for k in aims if k not in mended),
        tuple(after[k] for k in aims),
        tuple(f for k in sorted(base.foreign) if base.worse(f := after[k])),
        {kind: _count(found) for kind, found in by_kind(result).items()},
        _extra_cost(was, now, "".join(one.lever.extra for one in settings)),
        now.currency,
        was.invented or now.invented,
        result.weight - base.now.weight,
        base.now,
        result,
    )


@lru_cache(maxsize=2)
def _screened(
    design: Design, pack: str, aims: tuple[str, ...] | None, locked: frozenset[str]
) -> Screened:
    now = assess(design, pack)
    before = every_finding(now)
    wanted = [k for k in before if k not in foreign(pack)] if aims is None else aims
    for key in wanted:
        if key not in before:
            raise InputError(
                f"There is no finding named {key} under {pack}.",
                "Aims",
                "keys such as FLU-10, DRF-01 or STR-04",
                key,
            )
    short = frozenset(key for key in wanted if before[key].verdict == FALLS_SHORT)
    base = Baseline(now, before, short, locked)
    if not short:
        return Screened(base, ())
    rows = [
        row
        for lever in LEVERS
        for settings in settings_of(design, lever)
        if len(row := LeverTrials(base, settings))
    ]
    screen(rows, [row.probes for row in rows])
    screen(rows, [between(row) for row in rows])
    return Screened(base, tuple(rows))


def screened(
    design: Design, pack: str, aims: Iterable[str] | None, locks: Iterable[str]
) -> Screened:
    """Every lever of a design, tried in ever larger steps; kept for the next who asks.

    Parameters
    ----------
    design : Design
    pack : str
    aims, locks : iterable of str
        As for ``find_remedies``.

    Returns
    -------
    Screened

    Raises
    ------
    InputError
        When there is no such book, no such finding in it, or nothing of that name to keep.
    """
    return _screened(design, pack, None if aims is None else tuple(aims), locked_inputs(locks))


def rejected_remedies(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    locks: Iterable[str] = (),
) -> tuple[RejectedRemedy, ...]:
    """Changes whose least step that mends something breaks something else.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims, locks : iterable of str, optional
        As for ``find_remedies``.

    Returns
    -------
    tuple of RejectedRemedy
        Each lever at most once, assessed in full; what would mend most first.

    Raises
    ------
    InputError
        When there is no such book, no such finding in it, or nothing of that name to keep.
    """
    base, rows = screened(design, pack, aims, locks)
    found: list[RejectedRemedy] = []
    for row in rows:
        least = next((k for k in sorted(row.mends) if row.mends[k]), None)
        if least is None:
            continue
        one, changed = row.tried[least]
        after = every_finding(assess(changed, pack))
        mended = base.mended(after.values())
        broken = tuple(f for f in after.values() if f.key not in base.foreign and base.worse(f))
        if broken and mended and _honest(one, mended):
            found.append(
                RejectedRemedy(
                    one.lever, one.change, one.before, one.after, tuple(sorted(mended)), broken
                )
            )
    return tuple(sorted(found, key=lambda one: (-len(one.mends), len(one.breaks))))


def _honest(one: Setting, mended: Iterable[str]) -> bool:
    """Whether a lever is moved for the sake of something that it is for."""
    only = one.lever.only_for
    return not only or any(key.startswith(only) for key in mended)


def find_remedies(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    prices: Mapping[str, Price] | None = None,
    locks: Iterable[str] = (),
) -> tuple[Remedy, ...]:
    """The least single changes that mend what falls short, best first.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims : iterable of str, optional
        Keys of the findings to mend, of code, draft or structure; all that fall short when left
        out, but not what falls short by another country's table alone. What does not fall short is
        passed over.
    prices : mapping of str to Price, optional
        As ``takeoff.prices`` reads them; the example list, which is invented, when left out.
    locks : iterable of str, optional
        What stays as it is: names of ``LOOKS``, and dotted names of inputs.

    Returns
    -------
    tuple of Remedy
        Each assessed in full: it mends at least one aim, breaks nothing that was in order, and
        turns no answer into a question. For one lever there is one remedy for each set of aims that
        no fewer steps mend. What another country's table then says stands in ``warns``.

    Notes
    -----
    Ranked by how many aims are mended, most first; then by cost, cheapest first and unknown last;
    then by the relative change; what has warnings comes after all others. Mended means *meets* or
    *does not apply*; *not checked* mends nothing. A lever is tried in ever larger steps, and step
    by step between two of them where the second mends what the first does not; what it mends only
    between two is not seen.

    Raises
    ------
    InputError
        When there is no such book, no such finding in it, or nothing of that name to keep.

    Examples
    --------
    >>> found = find_remedies(Design(), aims=["DRF-05"])
    >>> all(one.mends == ("DRF-05",) for one in found)
    True
    """
    base, rows = screened(design, pack, aims, locks)
    if not base.aims:
        return ()
    priced = price_list() if prices is None else prices
    was = bill(base.now.takeoff, priced)
    return ranked(
        remedy_of(base, (one,), result, was, priced)
        for one, result, mended in all_least(base, rows)
        if _honest(one, mended)
    )
