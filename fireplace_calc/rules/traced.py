"""What a rule reads of the facts, noted as it reads, and which of it nobody has entered."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Self, cast

from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import value_of
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.core import Finding, Rule
from fireplace_calc.rules.follows import BESIDE, BESIDE_SECOND, MEASURED, TURNS, follows_from, idle
from fireplace_calc.rules.told_areas import doubted_areas

if TYPE_CHECKING:
    from fireplace_calc.rules.facts import Facts

NESTED = {
    "design": "",
    "frame": "frame.",
    "ground": "ground.",
    "anchorage": "anchorage.",
    "stack": "stack.",
    "air": "air.",
    "abroad": "abroad.",
}
"""Facts that are records of their own, and what stands before the names in them."""

DEEPER = frozenset({"frame.second"})
"""Lines of the frame that are records of their own, where there are any."""


class Traced:
    """Facts that note the name of each that is read. A rule cannot tell them from the facts.

    Parameters
    ----------
    record : Facts
        Or a record among them.
    read : set of str
        Takes the names; those of the design are the dotted keys of inputs.
    prefix : str or None
        What stands before a name; ``None`` for the facts themselves.
    own : frozenset of str
        Facts that the rule itself has put in place of the design's: reading them is no news.
    """

    __slots__ = ("_own", "_prefix", "_read", "_record")

    def __init__(
        self,
        record: Any,
        read: set[str],
        prefix: str | None = None,
        own: frozenset[str] = frozenset(),
    ) -> None:
        self._record, self._read, self._prefix, self._own = record, read, prefix, own

    def __getattr__(self, name: str) -> Any:
        """The fact itself, its name noted."""
        value = getattr(self._record, name)
        if self._prefix is None:
            if name in NESTED:
                return Traced(value, self._read, NESTED[name])
            if name not in self._own:
                self._read.add(name)
        elif self._prefix == "" and hasattr(value, "with_read"):
            return Traced(value, self._read, f"{name}.")
        else:
            self._read.add(self._prefix + name)
            if self._prefix + name in DEEPER and value is not None:
                return Traced(value, self._read, f"{self._prefix}{name}.")
        return value

    def but(self, **others: Any) -> Self:
        """The same facts with other values for some."""
        return type(self)(self._record.but(**others), self._read, own=self._own | set(others))


class Assumptions:
    """Which inputs behind what has been read nobody has entered.

    Parameters
    ----------
    facts : Facts
        Of one design.
    """

    def __init__(self, facts: Facts) -> None:
        self.facts, self.design = facts, facts.design
        self.assumed = assumed(self.design) - idle(self.design)
        self._known: dict[str, frozenset[str]] = {}
        self.doubted = doubted_areas(self.design, facts.frame)

    def checked(self, rule: Rule[Facts], edition: str) -> Finding:
        """A rule held against the design, with what it rests on that nobody has entered."""
        read: set[str] = set()
        finding = rule.check(cast("Facts", Traced(self.facts, read)), edition)
        for fact in read.intersection(self.doubted):
            finding = self._doubted(rule, finding, fact)
        behind = tuple(
            key for key in self.behind(read) if key not in TURNS or rule.key in TURNS[key]
        )
        if finding.verdict == NOT_CHECKED or not behind:
            return finding
        return finding._replace(assumed=behind)

    def _doubted(self, rule: Rule[Facts], finding: Finding, fact: str) -> Finding:
        """Not checked, on a told area that cannot be; but what falls short, or does not apply, with
        the area told as with the drawing's own, does so.
        """
        as_told = self.facts.but(**{fact: self.doubted[fact].told})
        either_way = rule.function(as_told).verdict == finding.verdict
        if either_way and finding.verdict in (FALLS_SHORT, DOES_NOT_APPLY):
            return finding
        return finding._replace(verdict=NOT_CHECKED, margin=None, note=self.doubted[fact].why)

    def behind(self, read: set[str]) -> tuple[str, ...]:
        """Dotted keys in the order of the alphabet."""
        found: set[str] = set()
        for fact in read:
            if fact not in self._known:
                self._known[fact] = self._of(fact)
            found |= self._known[fact]
        return tuple(sorted(found))

    def _of(self, fact: str) -> frozenset[str]:
        decided = MEASURED.get(fact)
        if decided and value_of(self.design, decided) is not None:
            return frozenset()
        beside = self.design.second_flue.drawn and fact in BESIDE_SECOND
        return self.assumed.intersection(follows_from(fact).union(BESIDE if beside else ()))
