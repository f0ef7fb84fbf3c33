"""What a rule reads of the facts, noted as it reads: which of it nobody has entered, and which
unknown inputs it waits for.
"""

from __future__ import annotations

from dataclasses import astuple
from functools import cached_property
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

NOUGHT = frozenset({"air_passage_area"})
"""Facts of which nought says that nobody has told them."""

DEEPER = frozenset({"frame.second"})
"""Lines of the frame that are records of their own, where there are any."""


class Traced:
    """Facts that note the name of each that is read. A rule cannot tell them from the facts.

    Parameters
    ----------
    record : Facts
        Or a record among them.
    read, blank : set of str
        Take the names of what is read, and of what is unknown of it; those of the design are the
        dotted keys of inputs.
    prefix : str or None
        What stands before a name; ``None`` for the facts themselves.
    own : frozenset of str
        Facts that the rule itself has put in place of the design's: reading them is no news.
    """

    __slots__ = ("_blank", "_own", "_prefix", "_read", "_record")

    def __init__(
        self,
        record: Any,
        read: set[str],
        blank: set[str],
        prefix: str | None = None,
        own: frozenset[str] = frozenset(),
    ) -> None:
        self._record, self._read, self._blank = record, read, blank
        self._prefix, self._own = prefix, own

    def __getattr__(self, name: str) -> Any:
        """The fact itself, its name noted."""
        value, inside = getattr(self._record, name), self._prefix
        if inside is None and name in NESTED:
            return self._deeper(value, NESTED[name])
        if inside == "" and hasattr(value, "with_read"):
            return self._deeper(value, f"{name}.")
        if inside is None and name in self._own:
            return value
        fact = f"{inside}{name}" if inside else name
        self._read.add(fact)
        if value is None or (not value and fact in NOUGHT):
            self._blank.add(fact)
        return self._deeper(value, f"{fact}.") if fact in DEEPER and value is not None else value

    def _deeper(self, record: Any, prefix: str) -> Traced:
        return Traced(record, self._read, self._blank, prefix)

    def but(self, **others: Any) -> Self:
        """The same facts with other values for some."""
        own = self._own | set(others)
        return type(self)(self._record.but(**others), self._read, self._blank, own=own)


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
        """A rule held against the design, with what it rests on that nobody has entered, or the
        unknown inputs it waits for.
        """
        read: set[str] = set()
        blank: set[str] = set()
        finding = rule.check(cast("Facts", Traced(self.facts, read, blank)), edition)
        for fact in read.intersection(self.doubted):
            finding = self._doubted(rule, finding, fact)
        if finding.verdict == NOT_CHECKED:
            return finding._replace(missing=self.missing(read, blank))
        behind = tuple(
            key for key in self.behind(read) if key not in TURNS or rule.key in TURNS[key]
        )
        return finding._replace(assumed=behind) if behind else finding

    def missing(self, read: set[str], blank: set[str]) -> tuple[str, ...]:
        """Unknown inputs behind what is unknown, and lists with a piece nobody has measured; dotted
        keys in the order of the alphabet.
        """
        unknown = {
            key
            for fact in blank
            for key in follows_from(fact)
            if value_of(self.design, key) is None or fact in NOUGHT
        }
        lists = {key for key in self._unmeasured if any(key in follows_from(fact) for fact in read)}
        return tuple(sorted(unknown | lists))

    @cached_property
    def _unmeasured(self) -> tuple[str, ...]:
        """Lists in which a piece's size or place is unknown."""
        return tuple(
            key
            for key in ("roof.nearby", "surround.trim")
            if any(None in astuple(piece) for piece in value_of(self.design, key))
        )

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
