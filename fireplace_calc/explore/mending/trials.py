"""Trying levers: which settings mend what, screened by quick checks and then assessed in full."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from fireplace_calc.assessment import Assessment
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.explore.mending.lever_settings import Setting
from fireplace_calc.explore.mending.levers import FOOT, Lever
from fireplace_calc.explore.mending.locks import foreign, stays
from fireplace_calc.explore.sketches import Sketch, sketch, try_change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure
from fireplace_calc.takeoff import weight_on_footing

SATISFIED = (MEETS, DOES_NOT_APPLY)
"""Verdicts of what is in order; *not checked* is none of them."""


@dataclass(frozen=True)
class Baseline:
    """What is to be mended, and every finding before a change.

    Attributes
    ----------
    now : Assessment
    before : dict of str to Finding
        Every finding by key.
    aims : frozenset of str
        Keys of what is to be mended.
    locked : frozenset of str
        Inputs that stay.
    """

    now: Assessment
    before: dict[str, Finding]
    aims: frozenset[str]
    locked: frozenset[str] = frozenset()

    @cached_property
    def foreign(self) -> frozenset[str]:
        """Keys of what another country's book says, which rejects nothing here."""
        return foreign(self.now.pack)

    @cached_property
    def code(self) -> frozenset[str]:
        """Aims of the code."""
        return self.aims & {f.key for f in self.now.findings}

    @cached_property
    def draft(self) -> frozenset[str]:
        """Aims on the draft."""
        return self.aims & {f.key for f in self.now.judgement}

    @cached_property
    def airy(self) -> frozenset[str]:
        """Findings on the draft."""
        return frozenset(f.key for f in self.now.judgement)

    @cached_property
    def heavy(self) -> frozenset[str]:
        """Findings on the structure, and of the code those that ask for the weight."""
        return self.needs_weight | {f.key for f in self.now.structure.findings}

    @cached_property
    def needs_weight(self) -> frozenset[str]:
        """Findings of the code that ask for the weight, which a sketch does not know."""
        quick = PACKS[self.now.pack].check(gather_facts(sketch(self.now.design)))
        return frozenset(f.key for f in quick if f.verdict != self.before[f.key].verdict)

    @cached_property
    def from_sketch(self) -> frozenset[str]:
        """Findings of the code that a sketch can answer."""
        return frozenset(f.key for f in self.now.findings) - self.needs_weight

    @cached_property
    def loads(self) -> frozenset[str]:
        """Clauses of the structure that something to be mended belongs to."""
        clauses = {f.clause for f in self.now.structure.findings if f.key in self.aims}
        return frozenset(clauses | (set(FOOT) if self.aims & self.needs_weight else set()))

    def mended(self, found: Iterable[Finding]) -> set[str]:
        """Aims that are now satisfied."""
        return {f.key for f in found if f.key in self.aims and f.verdict in SATISFIED}

    def worse(self, f: Finding) -> bool:
        """Whether something falls short that did not, or has no answer any more."""
        was = self.before[f.key].verdict
        if f.verdict == FALLS_SHORT:
            return was != FALLS_SHORT
        return f.verdict == NOT_CHECKED and was in SATISFIED

    def worsened(self, found: Iterable[Finding]) -> bool:
        """Whether any of these is worse than before by the books of this job."""
        return any(self.worse(f) for f in found if f.key not in self.foreign)

    def tried(self, changes: Mapping[str, object]) -> Design | None:
        """A changed design; nothing where it cannot be drawn, or moves what is locked."""
        if not self.locked.isdisjoint(changes):
            return None
        changed = try_change(self.now.design, changes)
        if changed is None or not stays(self.now.design, changed, self.locked):
            return None
        return changed


class LeverTrials:
    """The settings of one lever, and what is known of those that were screened."""

    def __init__(self, base: Baseline, settings: list[Setting]) -> None:
        self.base = base
        drawn = [(one, base.tried(one.change)) for one in settings]
        self.tried = [(one, design) for one, design in drawn if design is not None]
        self.mends: dict[int, set[str]] = {}
        self.bad: set[int] = set()

    def __len__(self) -> int:
        return len(self.tried)

    @property
    def lever(self) -> Lever:
        """Whose settings they are."""
        return self.tried[0][0].lever

    @property
    def keys(self) -> frozenset[str]:
        """Inputs that it moves."""
        return frozenset(key for one, _ in self.tried for key in one.change)

    @property
    def probes(self) -> list[int]:
        """Places of the settings to screen first: the first few, then ever further apart, and the
        last. [-]
        """
        last = len(self) - 1
        return sorted({k for k in (0, 1, 3, 6, 10, 15, 22, 30, 40) if k < last} | {last})

    def screen(self, places: Iterable[int]) -> None:
        """Which aims the settings at some places [-] would mend, as far as code and loads say."""
        lever, base = self.lever, self.base
        for k in places:
            found = list(
                PACKS[base.now.pack].check(
                    gather_facts(sketch(self.tried[k][1])), base.code - base.needs_weight
                )
            )
            if base.loads.intersection(lever.loads):
                made = build_geometry(self.tried[k][1])
                found += [
                    *assess_structure(made, base.now.pack).findings,
                    *PACKS[base.now.pack].check(
                        gather_facts(made, weight_on_footing(made)), base.code & base.needs_weight
                    ),
                ]
            self.mends[k] = base.mended(found)

    def draft_in_doubt(self, places: Iterable[int]) -> list[int]:
        """Of some settings, by place [-], those whose draft has to be worked out."""
        if not self.lever.for_draft:
            return []
        return [k for k in places if self.base.draft or self.mends[k]]

    def promises(self, k: int, reported: list[set[str]]) -> bool:
        """Whether the setting at one place [-] mends what no fewer steps do, as far as is known."""
        return (
            k not in self.bad
            and bool(self.mends[k])
            and not any(self.mends[k] <= one for one in reported)
        )

    def unscreened_below(self, k: int) -> list[int]:
        """Places [-] of the settings right below one that were not screened yet."""
        below = max((j for j in self.mends if j < k), default=-1)
        return list(range(below + 1, k))

    def add_draft(self, k: int, found: tuple[Finding, ...]) -> None:
        """Findings on the draft of one setting, by its place in the list. [-]"""
        self.mends[k] |= self.base.mended(found)
        if self.base.worsened(found):
            self.bad.add(k)


def screen(rows: list[LeverTrials], places: list[list[int]]) -> None:
    """Screen some settings of many levers, the draft of all of them in one search.

    Parameters
    ----------
    rows : list of LeverTrials
    places : list of list of int
        Which settings of each, from 0. [-]
    """
    new = [[k for k in ks if k not in row.mends] for row, ks in zip(rows, places, strict=True)]
    in_doubt: list[tuple[LeverTrials, int, Sketch]] = []
    for row, ks in zip(rows, new, strict=True):
        row.screen(ks)
        in_doubt += [(row, k, sketch(row.tried[k][1])) for k in row.draft_in_doubt(ks)]
    for (row, k, _), found in zip(
        in_doubt, draft_results([one for *_, one in in_doubt]), strict=True
    ):
        row.add_draft(k, judgement(found))


def between(row: LeverTrials) -> list[int]:
    """Settings between two probes where something is mended further on that is not before.

    Parameters
    ----------
    row : LeverTrials
        Its probes screened.

    Returns
    -------
    list of int
        Their numbers, from 0. [-]
    """
    probes = row.probes
    places: list[int] = []
    for low, high in zip([-1, *probes], probes, strict=False):
        if row.mends[high] - (row.mends[low] if low >= 0 else set()):
            places += range(low + 1, high)
    return places
