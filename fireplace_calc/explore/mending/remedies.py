"""What is the least change that mends it: every lever by its smallest steps, each answer assessed
in full.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.explore.mending.lever_settings import Setting, settings_of
from fireplace_calc.explore.mending.levers import LEVERS
from fireplace_calc.explore.mending.remedy import RejectedRemedy, Remedy
from fireplace_calc.explore.mending.trials import (
    Baseline,
    LeverTrials,
    between,
    least_settings,
    screen,
)
from fireplace_calc.explore.raising import by_kind, every_finding
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.takeoff.cost import Bill, Price, bill
from fireplace_calc.takeoff.cost import prices as price_list

USUAL = {
    ("flue.sections", "+"),
    ("flue.size", "+"),
    ("throat.depth", "+"),
    ("house.air_inlet", "+"),
}
"""Changes that come to mind first: key of the lever and which way it goes."""


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


def _remedy(
    base: Baseline,
    one: Setting,
    result: Assessment,
    mended: set[str],
    was: Bill,
    priced: Mapping[str, Price],
) -> Remedy:
    now, after = bill(result.takeoff, priced), every_finding(result)
    aims = sorted(base.aims)
    return Remedy(
        one.lever,
        one.change,
        one.before,
        one.after,
        one.steps,
        tuple(k for k in aims if k in mended),
        tuple(k for k in aims if k not in mended),
        tuple(after[k] for k in aims),
        {kind: _count(found) for kind, found in by_kind(result).items()},
        _extra_cost(was, now, one.lever.extra),
        now.currency,
        was.invented or now.invented,
        result.weight - base.now.weight,
        one.relative,
        one.piece,
    )


def _baseline(design: Design, pack: str, aims: Iterable[str] | None) -> Baseline:
    now = assess(design, pack)
    before = every_finding(now)
    wanted = before if aims is None else tuple(aims)
    for key in wanted:
        if key not in before:
            raise InputError(
                f"There is no finding named {key} under {pack}.",
                "Aims",
                "keys such as FLU-10, DRF-01 or STR-04",
                key,
            )
    return Baseline(
        now, before, frozenset(key for key in wanted if before[key].verdict == FALLS_SHORT)
    )


def rejected_remedies(
    design: Design, pack: str = DEFAULT_PACK, aims: Iterable[str] | None = None
) -> tuple[RejectedRemedy, ...]:
    """Of the changes that come to mind first, those whose least step that mends something breaks
    something else.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims : iterable of str, optional
        As for ``find_remedies``.

    Returns
    -------
    tuple of RejectedRemedy
        More sections, a larger liner, a bigger throat, more outdoor air: each at most once,
        assessed in full.

    Raises
    ------
    InputError
        When there is no such book, or no such finding in it.
    """
    base = _baseline(design, pack, aims)
    found: list[RejectedRemedy] = []
    levers = [lever for lever in LEVERS if (lever.key, lever.step[0]) in USUAL] if base.aims else []
    rows = [
        row
        for lever in levers
        for settings in settings_of(design, lever)
        if len(row := LeverTrials(base, settings))
    ]
    screen(rows, [row.probes for row in rows])
    screen(rows, [between(row) for row in rows])
    for row in rows:
        least = next((k for k in sorted(row.mends) if row.mends[k]), None)
        if least is None:
            continue
        one, changed = row.tried[least]
        after = every_finding(assess(changed, pack))
        broken = tuple(f for f in after.values() if base.worsened([f]))
        if broken:
            found.append(
                RejectedRemedy(
                    one.lever,
                    one.change,
                    one.before,
                    one.after,
                    tuple(sorted(base.mended(after.values()))),
                    broken,
                )
            )
    return tuple(found)


def find_remedies(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    prices: Mapping[str, Price] | None = None,
) -> tuple[Remedy, ...]:
    """The least changes that mend what falls short, best first.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check it against.
    aims : iterable of str, optional
        Keys of findings to mend, of code, draft or structure; all that fall short when left out.
        What does not fall short is passed over.
    prices : mapping of str to Price, optional
        As ``takeoff.prices`` reads them; the example list, which is invented, when left out.

    Returns
    -------
    tuple of Remedy
        Each assessed in full: it mends at least one aim, breaks nothing that was in order, and
        turns no answer into a question. For one lever there is one remedy for each set of aims that
        no fewer steps mend.

    Notes
    -----
    Ranked by how many aims are mended, most first; then by cost, cheapest first and unknown last;
    then by the relative change. Mended means *meets* or *does not apply*; *not checked* mends
    nothing. A lever is tried in ever larger steps, and step by step between two of them where the
    second mends what the first does not; what it mends only between two is not seen.

    Raises
    ------
    InputError
        When there is no such book, or no such finding in it.

    Examples
    --------
    >>> found = find_remedies(Design(), aims=["DRF-05"])
    >>> all(one.mends == ("DRF-05",) for one in found)
    True
    """
    base, now = _baseline(design, pack, aims), assess(design, pack)
    if not base.aims:
        return ()
    rows = [
        row
        for lever in LEVERS
        for settings in settings_of(design, lever)
        if len(row := LeverTrials(base, settings))
    ]
    screen(rows, [row.probes for row in rows])
    screen(rows, [between(row) for row in rows])
    priced = price_list() if prices is None else prices
    was = bill(now.takeoff, priced)
    found = [_remedy(base, *one, was, priced) for row in rows for one in least_settings(base, row)]
    found = [
        one
        for one in found
        if not one.lever.only_for or any(key.startswith(one.lever.only_for) for key in one.mends)
    ]
    found.sort(key=lambda r: (-len(r.mends), r.cost is None, r.cost or 0.0, r.relative))
    return tuple(replace(one, rank=k) for k, one in enumerate(found, 1))
