"""Trying levers: which settings mend what, looked at cheaply first and in full before anything is
said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.explore.levers import FOOT, Try
from fireplace_calc.explore.reach import every_finding
from fireplace_calc.explore.sketches import Sketch, moved, sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure

SOUND = (MEETS, DOES_NOT_APPLY)
"""Verdicts of what stands; *not checked* is none of them."""


@dataclass(frozen=True)
class Case:
    """What is to be mended, and how everything stood before."""

    now: Assessment
    before: dict[str, Finding]
    aims: frozenset[str]

    @cached_property
    def code(self) -> frozenset[str]:
        """Aims of the code."""
        return self.aims & {f.key for f in self.now.findings}

    @cached_property
    def air(self) -> frozenset[str]:
        """Aims on the draft."""
        return self.aims & {f.key for f in self.now.judgement}

    @cached_property
    def weighed(self) -> frozenset[str]:
        """Findings of the code that ask for the weight, which a sketch does not know."""
        quick = PACKS[self.now.pack].check(gather_facts(sketch(self.now.design)))
        return frozenset(f.key for f in quick if f.verdict != self.before[f.key].verdict)

    @cached_property
    def sketched(self) -> frozenset[str]:
        """Findings of the code that a sketch can answer."""
        return frozenset(f.key for f in self.now.findings) - self.weighed

    @cached_property
    def loads(self) -> frozenset[str]:
        """Clauses of the structure that something to be mended stands under."""
        clauses = {f.clause for f in self.now.structure.findings if f.key in self.aims}
        return frozenset(clauses | (set(FOOT) if self.aims & self.weighed else set()))

    def mended(self, found: Iterable[Finding]) -> set[str]:
        """Aims that now stand."""
        return {f.key for f in found if f.key in self.aims and f.verdict in SOUND}

    def spoilt(self, found: Iterable[Finding]) -> bool:
        """Something falls short that did not, or has become a question where there was an answer."""
        return any(
            f.verdict == FALLS_SHORT
            and self.before[f.key].verdict != FALLS_SHORT
            or f.verdict == NOT_CHECKED
            and self.before[f.key].verdict in SOUND
            for f in found
        )


class TrialRow:
    """The settings of one lever, tried as far as asked."""

    def __init__(self, case: Case, settings: list[Try]):
        self.case = case
        drawn = [(one, moved(case.now.design, one.change)) for one in settings]
        self.tried = [(one, design) for one, design in drawn if design is not None]
        self.mends: dict[int, set[str]] = {}
        self.bad: set[int] = set()

    def __len__(self) -> int:
        return len(self.tried)

    @property
    def probes(self) -> list[int]:
        """Settings to look at first: the first few, then ever further apart, and the last."""
        last = len(self) - 1
        return sorted({k for k in (0, 1, 3, 6, 10, 15, 22, 30, 40) if k < last} | {last})

    def screen(self, places: Iterable[int]) -> None:
        """Which aims each setting would mend, as far as code and loads say."""
        lever, case = self.tried[0][0].lever, self.case
        for k in places:
            if k in self.mends:
                continue
            found = list(
                PACKS[case.now.pack].check(
                    gather_facts(sketch(self.tried[k][1])), case.code - case.weighed
                )
            )
            if case.loads.intersection(lever.bears):
                made = build_geometry(self.tried[k][1])
                found += [
                    *assess_structure(made).findings,
                    *PACKS[case.now.pack].check(gather_facts(made), case.code & case.weighed),
                ]
            self.mends[k] = case.mended(found)

    def wanted(self, places: Iterable[int]) -> list[int]:
        """Of some settings those whose air is worth a look."""
        if not self.tried[0][0].lever.air:
            return []
        return [k for k in places if self.case.air or self.mends[k]]

    def promises(self, k: int, said: list[set[str]]) -> bool:
        """Whether one setting mends what no fewer steps do, as far as is known."""
        return (
            k not in self.bad
            and bool(self.mends[k])
            and not any(self.mends[k] <= one for one in said)
        )

    def gap(self, k: int) -> list[int]:
        """Settings right below one that nobody has looked at."""
        below = max((j for j in self.mends if j < k), default=-1)
        return list(range(below + 1, k))

    def hear(self, k: int, found: tuple[Finding, ...]) -> None:
        """What the draft says of one setting."""
        self.mends[k] |= self.case.mended(found)
        if self.case.spoilt(found):
            self.bad.add(k)


def look(rows: list[TrialRow], places: list[list[int]]) -> None:
    """Screen some settings of many levers, the air of all of them in one search."""
    new = [[k for k in ks if k not in row.mends] for row, ks in zip(rows, places, strict=True)]
    asked: list[tuple[TrialRow, int, Sketch]] = []
    for row, ks in zip(rows, new, strict=True):
        row.screen(ks)
        asked += [(row, k, sketch(row.tried[k][1])) for k in row.wanted(ks)]
    for (row, k, _), found in zip(asked, draft_results([one for *_, one in asked]), strict=True):
        row.hear(k, judgement(found))


def between(row: TrialRow) -> list[int]:
    """Settings between two probes where something is mended further on that is not before."""
    probes, places = row.probes, []
    for low, high in zip([-1, *probes], probes, strict=False):
        if row.mends[high] - (row.mends[low] if low >= 0 else set()):
            places += range(low + 1, high)
    return places


def proved(case: Case, design: Design) -> Assessment | None:
    """The design assessed in full, or nothing where it breaks something; what is quick is asked
    first.
    """
    if case.spoilt(PACKS[case.now.pack].check(gather_facts(sketch(design)), case.sketched)):
        return None
    result = assess(design, case.now.pack)
    for found in (result.findings, result.structure.findings, result.judgement):
        if case.spoilt(found):
            return None
    return result


def mending(case: Case, row: TrialRow) -> Iterator[tuple[Try, Assessment, set[str]]]:
    """Least steps of one lever for each set of aims that it mends; below a setting that proves good
    nothing is left unlooked at.
    """
    said: list[set[str]] = []
    proofs: dict[int, Assessment | None] = {}
    while (
        k := next(
            (k for k in sorted(row.mends) if row.promises(k, said) and proofs.get(k, True)), None
        )
    ) is not None:
        if k not in proofs:
            proofs[k] = proved(case, row.tried[k][1])
        if (result := proofs[k]) is None:
            continue
        if gap := row.gap(k):
            look([row], [gap])
            continue
        mended = case.mended(every_finding(result).values())
        if mended and not any(mended <= one for one in said):
            yield row.tried[k][0], result, mended
        said.append(mended | row.mends[k])
