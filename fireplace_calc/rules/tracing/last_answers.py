"""What the rules of one pack found when they were asked last: one moved input mostly leaves nine of
ten as they were.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import compress
from operator import ne
from typing import TYPE_CHECKING, Any, NamedTuple

from fireplace_calc.base.record import all_at

if TYPE_CHECKING:
    from fireplace_calc.rules.core import Finding, Rule
    from fireplace_calc.rules.facts import Facts
    from fireplace_calc.rules.tracing.traced import Assumptions, Standing


class Answers(NamedTuple):
    """Findings, and all that they rest on; never changed, so that two may ask at the same time.

    Attributes
    ----------
    standing : Standing or None
        What of the design decides besides the facts.
    readers : mapping
        Where a fact stands, to the keys of the rules that read it.
    values : tuple
        What those facts were.
    findings : mapping
        By the rule's key.
    """

    standing: Standing | None
    readers: Mapping[str, frozenset[str]]
    values: tuple[Any, ...]
    findings: Mapping[str, Finding]

    def still(self, values: tuple[Any, ...]) -> dict[str, Finding]:
        """Findings of rules that have read nothing but what is as it was."""
        moved = compress(self.readers.values(), map(ne, values, self.values))
        gone = frozenset[str]().union(*moved)
        return {key: found for key, found in self.findings.items() if key not in gone}


NONE = Answers(None, {}, (), {})


class LastAnswers:
    """Asks a rule again only where something that it read is no longer what it was."""

    def __init__(self) -> None:
        self._kept = NONE

    def clear(self) -> None:
        """Forget all of them."""
        self._kept = NONE

    def ask(self, rules: Sequence[Rule[Facts]], edition: str, design: Assumptions) -> list[Finding]:
        """Rules held against a design.

        Parameters
        ----------
        rules : sequence of Rule
            All of one pack, or some.
        edition : str
        design : Assumptions
            Of the design. Where a told area is doubted every rule is asked, and none kept.

        Returns
        -------
        list of Finding
            In the order of the rules.
        """
        kept, facts = self._kept, design.facts
        if design.doubted:
            return [design.checked(rule, edition)[0] for rule in rules]
        if kept.standing is not design.standing:
            kept = Answers(design.standing, {}, (), {})
        values = all_at(*kept.readers)(facts)
        findings, readers = kept.still(values), dict(kept.readers)
        for rule in [rule for rule in rules if rule.key not in findings]:
            findings[rule.key], read = design.checked(rule, edition)
            for place in read:
                readers[place] = readers.get(place, frozenset()) | {rule.key}
        if len(readers) > len(values):
            values = all_at(*readers)(facts)
        self._kept = Answers(design.standing, readers, values, findings)
        return [findings[rule.key] for rule in rules]
