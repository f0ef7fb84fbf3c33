"""The least steps of a lever that mend something, each assessed in full."""

from __future__ import annotations

from collections.abc import Generator, Sequence

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results
from fireplace_calc.explore.mending.lever_settings import Setting
from fireplace_calc.explore.mending.trials import Baseline, LeverTrials, screen
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.gathering import gather_facts


def assess_unless_worse(base: Baseline, designs: Sequence[Design]) -> list[Assessment | None]:
    """Designs assessed in full, or nothing for one that breaks something; what is quick is checked
    first, and the draft of all that are left is worked out in one search.

    Parameters
    ----------
    base : Baseline
    designs : sequence of Design

    Returns
    -------
    list of Assessment or None
    """
    results = [_but_for_the_draft(base, design) for design in designs]
    left = [one for one in results if one is not None]
    for one, draft in zip(left, draft_results([one.geometry for one in left]), strict=True):
        one.__dict__["draft"] = draft  # as it would work it out itself
    return [None if one is None or base.worsened(one.judgement) else one for one in results]


def _but_for_the_draft(base: Baseline, design: Design) -> Assessment | None:
    """The design assessed, or nothing where code or loads are worse."""
    if base.worsened(PACKS[base.now.pack].check(gather_facts(sketch(design)), base.from_sketch)):
        return None
    result = assess(design, base.now.pack)
    if base.worsened(result.findings) or base.worsened(result.structure.findings):
        return None
    return result


Least = tuple[Setting, Assessment, set[str]]
"""A setting, what it makes, and the keys of what it mends."""


def least_settings(
    base: Baseline, row: LeverTrials
) -> Generator[Design, Assessment | None, list[Least]]:
    """Least steps of one lever for each set of aims that it mends; below a setting that proves good
    every one is screened.

    Parameters
    ----------
    base : Baseline
    row : LeverTrials

    Returns
    -------
    generator
        Gives a design to be assessed in full and wants what comes of it; in the end the least
        settings.
    """
    found: list[Least] = []
    reported: list[set[str]] = []
    proofs: dict[int, Assessment | None] = {}
    while (
        k := next(
            (k for k in sorted(row.mends) if row.promises(k, reported) and proofs.get(k, True)),
            None,
        )
    ) is not None:
        if k not in proofs:
            proofs[k] = yield row.tried[k][1]
        if (result := proofs[k]) is None:
            continue
        if below := row.unscreened_below(k):
            screen([row], [below])
            continue
        mended = base.mended(every_finding(result).values())
        if mended and not any(mended <= one for one in reported):
            found.append((row.tried[k][0], result, mended))
        reported.append(mended | row.mends[k])
    return found


def all_least(base: Baseline, rows: Sequence[LeverTrials]) -> list[Least]:
    """Least steps of every lever for each set of aims that it mends, all levers side by side.

    Parameters
    ----------
    base : Baseline
    rows : sequence of LeverTrials

    Returns
    -------
    list of tuple of Setting, Assessment and set of str
        In the order of the levers.
    """
    found: dict[int, list[Least]] = {}
    asked: dict[int, Design] = {}
    runs = [least_settings(base, row) for row in rows]

    def go_on(n: int, answer: Assessment | None) -> None:
        try:
            asked[n] = runs[n].send(answer)
        except StopIteration as done:
            found[n] = done.value

    for n in range(len(runs)):
        go_on(n, None)
    while asked:
        now = dict(asked)
        asked.clear()
        results = assess_unless_worse(base, list(now.values()))
        for n, result in zip(now, results, strict=True):
            go_on(n, result)
    return [one for n in sorted(found) for one in found[n]]
