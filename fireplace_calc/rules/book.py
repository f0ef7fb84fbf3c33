"""A code book: rules filed by their decorator, its editions as packs, a place's own changes."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import chain
from operator import attrgetter
from typing import TypeVar

from fireplace_calc.base.tables import rule_sources
from fireplace_calc.rules.comparing import WORST_FIRST, Compared
from fireplace_calc.rules.core import EDITIONS, Finding, Rule
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import doubted_areas
from fireplace_calc.rules.tracing.last_answers import LastAnswers
from fireplace_calc.rules.tracing.traced import Assumptions

Question = TypeVar("Question", bound=Callable[..., Compared])
"""A rule's function: it takes the facts; some take more from a state's amendment."""


class Book:
    """The rules of one code, filed by their decorator, and its editions as packs; ``reach`` says
    how far a book was read that was not read whole.
    """

    def __init__(self, name: str, editions: tuple[str, ...] = EDITIONS, reach: str = "") -> None:
        self.name, self.editions, self.reach = name, editions, reach
        self.rules: list[Rule[Facts]] = []

    def rule(
        self,
        key: str,
        clause: str,
        title: str,
        unit: str,
        quantity: str,
        at_most: bool = False,
        editions: tuple[str, ...] | None = None,
        outside: bool = False,
    ) -> Callable[[Question], Question]:
        """File a function as a rule and hand it back unchanged. Its docstring is the reason the
        rule exists; ``outside`` where it can only say that it does not apply.
        """

        def file(function: Question) -> Question:
            known = rule_sources().get(key)
            if known is None:
                raise LookupError(
                    f"Rule {key} has no source: put its row into the book's file in data/, such as"
                    " data/us_irc_sources.csv."
                )
            why = " ".join((function.__doc__ or "").split())
            self.rules.append(
                Rule(
                    key,
                    clause,
                    title,
                    unit,
                    quantity,
                    at_most,
                    editions or self.editions,
                    why,
                    known.source.confidence,
                    known.citation,
                    function,
                    outside,
                )
            )
            return function

        return file

    def pack(self, edition: str, name: str = "") -> Pack:
        """The rules in force in one edition, under the book's own name for it or another."""
        chosen = tuple(r for r in self.rules if edition in r.editions)
        return Pack(name or f"{self.name} {edition}", edition, chosen, self.reach)


class Amended(Book):
    """A place's own changes to one edition: its rules stand in for those with the same key, the
    rest stays. ``book`` is what the place calls its own print.
    """

    def __init__(
        self, base: Book, edition: str, place: str, book: str, confidence: str = "read"
    ) -> None:
        super().__init__(base.name, (edition,))
        self.base, self.edition, self.place = base, edition, place
        self.book, self.confidence = book, confidence

    def amend(self, key: str) -> Callable[[Question], Question]:
        """File a function in the place of the rule of this key and hand it back; a reason of its
        own in its docstring.
        """

        def file(function: Question) -> Question:
            national = next(
                r for r in self.base.rules if r.key == key and self.edition in r.editions
            )
            why = " ".join((function.__doc__ or national.why).split())
            self.rules.append(
                replace(
                    national,
                    function=function,
                    why=why,
                    source=f"{self.book}, {national.clause}",
                    confidence=self.confidence,
                    clause=f"{national.clause}, {self.place}",
                )
            )
            return function

        return file

    def pack(self, edition: str = "", name: str = "") -> Pack:
        """The edition with the place's changes in it."""
        base, own = self.base.pack(edition or self.edition), {r.key: r for r in self.rules}
        return Pack(
            name or f"{base.name} {self.place}",
            f"{base.edition} {self.place}",
            tuple(own.get(r.key, r) for r in base.rules),
        )


@dataclass(frozen=True)
class Pack:
    """One edition of one book."""

    name: str
    edition: str
    rules: tuple[Rule[Facts], ...]
    reach: str = ""
    """How far a book that was read in part was read, for whoever reads what its rules say."""

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """Keys of all rules, in the book's order."""
        return tuple(r.key for r in self.rules)

    @cached_property
    def in_order(self) -> tuple[Rule[Facts], ...]:
        """All rules by the alphabet of their keys, as findings of one verdict stand."""
        return tuple(sorted(self.rules, key=attrgetter("key")))

    @cached_property
    def _by_key(self) -> dict[str, Rule[Facts]]:
        return {rule.key: rule for rule in self.rules}

    @cached_property
    def last(self) -> LastAnswers:
        """What each rule found when it was asked last."""
        return LastAnswers()

    def check(
        self, facts: Facts, only: Container[str] | None = None, resting: bool = True
    ) -> tuple[Finding, ...]:
        """Every rule, or only those with certain keys, held against one design, worst first; what
        findings rest on is left out for whoever tries many designs and does not ask for it.
        """
        rules = [rule for rule in self.in_order if only is None or rule.key in only]
        if not resting and not doubted_areas(facts.design, facts.frame):
            return _by_verdict([rule.check(facts, self.edition) for rule in rules])
        return _by_verdict(self.last.ask(rules, self.edition, Assumptions(facts)))

    def verdicts(self, facts: Facts, only: Iterable[str] | None = None) -> dict[str, str]:
        """The verdict of every rule, or of those with certain keys, and nothing else."""
        keys = [key for key in (self.keys if only is None else only) if key in self._by_key]
        if doubted_areas(facts.design, facts.frame):
            return {finding.key: finding.verdict for finding in self.check(facts, keys)}
        return {key: self._by_key[key].function(facts).verdict for key in keys}


RANK = {verdict: k for k, verdict in enumerate(WORST_FIRST)}


def worst_first(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings in the order a reader wants them."""
    return _by_verdict(sorted(found, key=attrgetter("key")))


def _by_verdict(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings of each verdict in the order in which they come."""
    ranks: tuple[list[Finding], ...] = tuple([] for _ in WORST_FIRST)
    for finding in found:
        ranks[RANK[finding.verdict]].append(finding)
    return tuple(chain.from_iterable(ranks))


def check_all(facts: Facts, packs: Iterable[Pack]) -> dict[str, tuple[Finding, ...]]:
    """Many packs held against one design; a rule that several share is worked out once."""
    known: dict[int, Finding] = {}
    assumptions = Assumptions(facts)
    results = {}
    for pack in packs:
        new = [rule for rule in pack.in_order if id(rule) not in known]
        known |= zip(map(id, new), pack.last.ask(new, pack.edition, assumptions), strict=True)
        found = (known[id(rule)] for rule in pack.in_order)
        results[pack.name] = _by_verdict(
            finding if finding.edition == pack.edition else finding.in_edition(pack.edition)
            for finding in found
        )
    return results
