"""Many changed designs looked at together, and how far each check of them is in order."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.explore.mending.trials import SATISFIED, Baseline
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import NOT_CHECKED
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure
from fireplace_calc.takeoff import weight_on_footing

SURE, BARELY = 1e6, 1e-9
"""How far in order something is, or out of it, that is no number, and the least of a number."""


class Want(NamedTuple):
    """A design to look at, and whether its draft and its loads differ from before."""

    design: Design
    draft: bool
    loads: bool


def score(base: Baseline, finding: Finding) -> float:
    """How far a finding is in order, in the book's own unit: over nought where it is. [-]

    Parameters
    ----------
    base : Baseline
    finding : Finding
        After a change: of what is to be mended whether it is, of all else whether it is not broken.

    Returns
    -------
    float
        [-]
    """
    aim = finding.key in base.aims
    good = finding.verdict in SATISFIED if aim else not base.worse(finding)
    if finding.margin is None or not good and finding.verdict == NOT_CHECKED:  # it waits
        return SURE if good else -SURE
    return max(finding.margin, BARELY) if good else min(finding.margin, -BARELY)


def look(
    base: Baseline, wanted: Sequence[Want], only: frozenset[str] | None = None
) -> list[dict[str, Finding]]:
    """Findings on many designs, the draft of all of them in one search.

    Parameters
    ----------
    base : Baseline
    wanted : sequence of Want
    only : frozenset of str, optional
        Keys of the code that are asked for; all when left out.

    Returns
    -------
    list of dict of Finding
        By key; what a change leaves alone is as before.
    """
    book, code = PACKS[base.now.pack], base.from_sketch if only is None else base.from_sketch & only
    found: list[dict[str, Finding]] = []
    for one in wanted:
        known = dict(base.before)
        known |= {f.key: f for f in book.check(gather_facts(sketch(one.design)), code)}
        if one.loads:
            made = build_geometry(one.design)
            known |= {f.key: f for f in assess_structure(made, base.now.pack).findings}
            heavy = gather_facts(made, weight_on_footing(made))
            known |= {f.key: f for f in book.check(heavy, base.needs_weight)}
        found.append(known)
    blown = [(one, known) for one, known in zip(wanted, found, strict=True) if one.draft]
    results = draft_results([sketch(one.design) for one, _ in blown])
    for (_, known), result in zip(blown, results, strict=True):
        known |= {f.key: f for f in judgement(result)}
    return found
