"""What a rule is: a small named thing that picks a limit, compares, and gives its reason.

Four verdicts. A missing input is *not checked*, never a pass.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, NamedTuple

from fireplace_calc.base.tables import Source, rule_sources
from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.base.units import MM, in_unit
from fireplace_calc.rules.facts import Facts

MEETS, FALLS_SHORT, DOES_NOT_APPLY, NOT_CHECKED = (
    "meets",
    "falls short",
    "does not apply",
    "not checked",
)
WORST_FIRST = (FALLS_SHORT, NOT_CHECKED, MEETS, DOES_NOT_APPLY)


EDITIONS = ("2015", "2018", "2021", "2024")


@dataclass(frozen=True, slots=True)
class Compared:
    """What a rule found, in SI, before it is put into the book's unit."""

    verdict: str
    provided: Any = None
    required: Any = None
    note: str = ""


class Finding(NamedTuple):
    """One rule held against one design.

    ``provided``, ``required`` and ``margin`` are in ``unit`` as the book prints it; words for a
    rule about a kind or a yes. ``margin`` is what there is to spare, negative for what is lacking.
    """

    key: str
    clause: str
    title: str
    verdict: str
    provided: Any
    required: Any
    margin: float | None
    unit: str
    why: str
    confidence: str
    edition: str
    source: str
    note: str = ""

    def under(self, edition: str) -> Finding:
        """The same finding in another edition."""
        return self._replace(edition=edition)


def printed(limit: float) -> float:
    """The whole millimetres a book prints beside a length in inches. [m]"""
    return round(limit / MM) * MM


def reaches(value: float, limit: float) -> bool:
    """At least the limit, give or take the slack.

    >>> reaches(36 * 0.0254 * (24 * 0.0254), 6 * 0.3048**2)
    True
    """
    return value >= limit - abs(limit) * LIMIT_SLACK


def _same(a: float, b: float) -> bool:
    return abs(a - b) <= LIMIT_SLACK * max(abs(a), abs(b))


def at_least(
    provided: float | None, limit: float | None, note: str = "", soft: bool = False
) -> Compared:
    """Provided must reach the limit; the limit itself is enough.

    ``soft`` limits are lengths that the book also prints in whole millimetres: exactly that figure
    is enough too.
    """
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    good = reaches(provided, limit) or (soft and _same(provided, printed(limit)))
    return Compared(MEETS if good else FALLS_SHORT, provided, limit, note)


def at_most(
    provided: float | None, limit: float | None, note: str = "", soft: bool = False
) -> Compared:
    """Provided must not pass the limit; the limit itself is allowed."""
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    good = reaches(limit, provided) or (soft and _same(provided, printed(limit)))
    return Compared(MEETS if good else FALLS_SHORT, provided, limit, note)


def one_of(value: str | None, allowed: Iterable[str], note: str = "") -> Compared:
    """A word must be one of a few."""
    allowed = tuple(allowed)
    if value is None:
        return Compared(NOT_CHECKED, None, " or ".join(allowed), note)
    return Compared(MEETS if value in allowed else FALLS_SHORT, value, " or ".join(allowed), note)


def yes(value: bool | None, note: str = "") -> Compared:
    """Something must be so."""
    if value is None:
        return Compared(NOT_CHECKED, None, "yes", note)
    return Compared(MEETS if value else FALLS_SHORT, "yes" if value else "no", "yes", note)


def all_of(*compared: Compared) -> Compared:
    """Several demands of one clause: one that fails decides, else one that is not known."""
    for verdict in (FALLS_SHORT, NOT_CHECKED):
        bad = [c for c in compared if c.verdict == verdict]
        if bad:
            return bad[0]
    return Compared(
        MEETS,
        ", ".join(str(c.provided) for c in compared),
        ", ".join(str(c.required) for c in compared),
    )


def not_applicable(reason: str) -> Compared:
    """The clause is about something else, and says why."""
    return Compared(DOES_NOT_APPLY, note=reason)


def unknown(what: str) -> Compared:
    """The clause cannot be held against the design until somebody says what is missing."""
    return Compared(NOT_CHECKED, note=f"{what} is not known yet.")


@dataclass(frozen=True, slots=True)
class Rule:
    """A clause as a function of the facts, with its name, unit and reason."""

    key: str
    clause: str
    title: str
    unit: str
    quantity: str
    at_most: bool
    editions: tuple[str, ...]
    why: str
    confidence: str
    source: str
    function: Callable[[Facts], Compared]

    def check(self, facts: Facts, edition: str) -> Finding:
        """Hold the rule against the facts of one design."""
        found = self.function(facts)
        provided, required, margin = found.provided, found.required, None
        number = self.unit not in ("word", "yes-no")
        if number and provided is not None and not isinstance(provided, str):
            provided = round(in_unit(provided, self.unit), 9)
        if number and required is not None and not isinstance(required, str):
            required = round(in_unit(required, self.unit), 9)
        if isinstance(provided, float) and isinstance(required, float):
            margin = round(required - provided if self.at_most else provided - required, 9)
            if found.verdict == FALLS_SHORT:
                margin = -abs(margin)
            if abs(margin) <= LIMIT_SLACK * max(abs(required), abs(provided)):
                margin = 0.0
        note = found.note
        if found.verdict == NOT_CHECKED and not note:
            note = (
                f"{self.quantity.replace('_', ' ').replace(';', ',').capitalize()} is not known"
                " yet."
            )
        return Finding(
            self.key,
            self.clause,
            self.title,
            found.verdict,
            provided,
            required,
            margin,
            self.unit,
            self.why,
            self.confidence,
            edition,
            self.source,
            note,
        )


class Book:
    """The rules of one code, filed by their decorator, and its editions as packs."""

    def __init__(self, name: str, editions: tuple[str, ...] = EDITIONS):
        self.name, self.editions = name, editions
        self.rules: list[Rule] = []

    def rule(
        self,
        key: str,
        clause: str,
        title: str,
        unit: str,
        quantity: str,
        at_most: bool = False,
        editions: tuple[str, ...] | None = None,
    ) -> Callable:
        """File a function as a rule and hand it back unchanged. Its docstring is the reason the
        rule exists.
        """

        def file(function: Callable[[Facts], Compared]) -> Callable[[Facts], Compared]:
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
                )
            )
            return function

        return file

    def pack(self, edition: str, name: str = "") -> Pack:
        """The rules in force in one edition, under the book's own name for it or another."""
        chosen = tuple(r for r in self.rules if edition in r.editions)
        return Pack(name or f"{self.name} {edition}", edition, chosen)


class Amended(Book):
    """A place's own changes to one edition: its rules stand in for those with the same key, the
    rest stays. ``book`` is what the place calls its own print.
    """

    def __init__(self, base: Book, edition: str, place: str, book: str, confidence: str = "read"):
        super().__init__(base.name, (edition,))
        self.base, self.edition, self.place = base, edition, place
        self.book, self.confidence = book, confidence

    def amend(self, key: str) -> Callable:
        """File a function in the place of the rule of this key and hand it back; a reason of its
        own in its docstring.
        """

        def file(function: Callable[[Facts], Compared]) -> Callable[[Facts], Compared]:
            stands = next(r for r in self.base.rules if r.key == key and self.edition in r.editions)
            why = " ".join((function.__doc__ or stands.why).split())
            self.rules.append(
                replace(
                    stands,
                    function=function,
                    why=why,
                    source=f"{self.book}, {stands.clause}",
                    confidence=self.confidence,
                    clause=f"{stands.clause}, {self.place}",
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
    rules: tuple[Rule, ...]

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """Keys of all rules, in the book's order."""
        return tuple(r.key for r in self.rules)

    def check(self, facts: Facts, only: Container[str] | None = None) -> tuple[Finding, ...]:
        """Every rule, or only those with certain keys, held against one design, worst first."""
        return worst_first(
            rule.check(facts, self.edition)
            for rule in self.rules
            if only is None or rule.key in only
        )


RANK = {verdict: k for k, verdict in enumerate(WORST_FIRST)}


def worst_first(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings in the order a reader wants them."""
    return tuple(sorted(found, key=lambda f: (RANK[f.verdict], f.key)))


def check_all(facts: Facts, packs: Iterable[Pack]) -> dict[str, tuple[Finding, ...]]:
    """Many packs held against one design; a rule that several share is worked out once."""
    known: dict[int, Finding] = {}
    said = {}
    for pack in packs:
        found = []
        for rule in pack.rules:
            if id(rule) not in known:
                known[id(rule)] = rule.check(facts, pack.edition)
            finding = known[id(rule)]
            found.append(
                finding if finding.edition == pack.edition else finding.under(pack.edition)
            )
        said[pack.name] = worst_first(found)
    return said


def with_note(compared: Compared, note: str) -> Compared:
    """The same finding with a remark."""
    return replace(compared, note=note)


JUDGEMENT = "engineering judgement"
"""Edition of findings that no code book stands behind."""


def filing(rules: list[Rule]) -> Callable:
    """A decorator that files functions among ``rules`` as engineering judgement and hands them back
    unchanged.

    It is called with key, mode, title, unit, source and, for a limit not to be passed, ``over``;
    the docstring is the reason.
    """

    def judged(
        key: str, mode: str, title: str, unit: str, known: Source, over: bool = False
    ) -> Callable:
        def file(function: Callable) -> Callable:
            why = " ".join((function.__doc__ or "").split())
            rules.append(
                Rule(
                    key,
                    mode,
                    title,
                    unit,
                    title,
                    over,
                    (JUDGEMENT,),
                    why,
                    known.confidence,
                    known.text,
                    function,
                )
            )
            return function

        return file

    return judged
