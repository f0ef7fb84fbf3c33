"""What a rule reads of the facts, noted as it reads: which of it nobody has entered, and which
unknown inputs it waits for.
"""

from __future__ import annotations

from dataclasses import astuple
from functools import lru_cache
from itertools import compress, repeat
from operator import attrgetter, is_not
from typing import TYPE_CHECKING, Any, NamedTuple, Self, cast

from fireplace_calc.editing.assumptions import Held, held_by_record
from fireplace_calc.editing.changes import value_of
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.core import Finding, Rule
from fireplace_calc.rules.told_areas import doubted_areas
from fireplace_calc.rules.tracing.follows import (
    BESIDE,
    BESIDE_SECOND,
    MEASURED,
    TURNS,
    follows_from,
    idle,
)

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


class Reading:
    """What one rule has read of the facts.

    Attributes
    ----------
    read, blank : set of str
        Names of what was read, and of what is unknown of it; those of the design are the dotted
        keys of inputs.
    values : list of (str, object)
        Where each stands among the facts, with dots, and what it was.
    """

    __slots__ = ("blank", "read", "values")

    def __init__(self) -> None:
        self.read: set[str] = set()
        self.blank: set[str] = set()
        self.values: list[tuple[str, Any]] = []


class Traced:
    """Facts that note the name of each that is read. A rule cannot tell them from the facts.

    Parameters
    ----------
    record : Facts
        Or a record among them.
    reading : Reading
        Takes what is read.
    prefix : str or None
        What stands before a name; ``None`` for the facts themselves.
    path : str
        Where the record stands among the facts.
    own : frozenset of str
        Facts that the rule itself has put in place of the design's: reading them is no news.
    """

    __slots__ = ("_own", "_path", "_prefix", "_reading", "_record")

    def __init__(
        self,
        record: Any,
        reading: Reading,
        prefix: str | None = None,
        path: str = "",
        own: frozenset[str] = frozenset(),
    ) -> None:
        self._record, self._reading = record, reading
        self._prefix, self._path, self._own = prefix, path, own

    def __getattr__(self, name: str) -> Any:
        """The fact itself, its name noted."""
        value, inside, reading = getattr(self._record, name), self._prefix, self._reading
        if inside is None:
            if name in self._own:
                return value
            if name in NESTED:
                return Traced(value, reading, NESTED[name], f"{name}.")
            fact = name
        elif inside:
            fact = inside + name
        elif hasattr(value, "with_read"):
            return Traced(value, reading, f"{name}.", f"{self._path}{name}.")
        else:
            fact = name
        reading.read.add(fact)
        reading.values.append((self._path + name, value))
        if value is None or (not value and fact in NOUGHT):
            reading.blank.add(fact)
        elif fact in DEEPER:
            return Traced(value, reading, f"{fact}.", f"{fact}.")
        return value

    def but(self, **others: Any) -> Self:
        """The same facts with other values for some."""
        own = self._own | set(others)
        return type(self)(self._record.but(**others), self._reading, own=own)


class Standing(NamedTuple):
    """What of a design decides, besides the facts that a rule has read, what it is told to rest on
    or to wait for.
    """

    assumed: frozenset[str]
    decided: frozenset[str]
    unknown: frozenset[str]
    unmeasured: tuple[str, ...]
    beside: bool


@lru_cache(maxsize=8)
def _one(standing: Standing) -> Standing:
    """The first of those that are equal, so that the next is known at a glance."""
    return standing


@lru_cache(maxsize=8)
def _standing(
    held: tuple[Held, ...],
    entered: frozenset[str],
    decided: frozenset[str],
    unmeasured: tuple[str, ...],
    beside: bool,
) -> Standing:
    """Put together once for what it is made of."""
    at_default, unknown = (frozenset[str]().union(*sets) for sets in zip(*held, strict=True))
    return _one(Standing(at_default - entered, decided, unknown, unmeasured, beside))


_measured = attrgetter(*MEASURED.values())
"""Of a design, what may have been told of facts that one input decides alone."""


@lru_cache(maxsize=8)
def _unmeasured(pieces: tuple[Any, ...]) -> bool:
    """Whether a list holds a piece of which something is unknown."""
    return any(None in astuple(piece) for piece in pieces)


class Assumptions:
    """Which inputs behind what has been read nobody has entered.

    Parameters
    ----------
    facts : Facts
        Of one design.
    """

    def __init__(self, facts: Facts) -> None:
        self.facts, self.design = facts, facts.design
        self.doubted = doubted_areas(self.design, facts.frame)
        still = idle(self.design)
        self.standing = _standing(
            held_by_record(self.design),
            self.design.told | still,
            frozenset(compress(MEASURED, map(is_not, _measured(self.design), repeat(None)))),
            tuple(
                [
                    key
                    for key in ("roof.nearby", "surround.trim")
                    if key not in still and _unmeasured(value_of(self.design, key))
                ]
            ),
            self.design.second_flue.drawn,
        )

    def checked(self, rule: Rule[Facts], edition: str) -> tuple[Finding, dict[str, Any]]:
        """A rule held against the design, with what it rests on that nobody has entered, or the
        unknown inputs it waits for.

        Parameters
        ----------
        rule : Rule
        edition : str

        Returns
        -------
        Finding
        dict
            What it read, by where that stands among the facts.
        """
        reading = Reading()
        finding = rule.check(cast("Facts", Traced(self.facts, reading)), edition)
        for fact in filter(reading.read.__contains__, self.doubted):
            finding = self._doubted(rule, finding, fact)
        if finding.verdict == NOT_CHECKED:
            finding = finding.resting((), self.missing(reading.read, reading.blank))
        elif behind := _behind(self.standing, frozenset(reading.read), rule.key):
            finding = finding.resting(behind, ())
        return finding, dict(reading.values)

    def missing(self, read: set[str], blank: set[str]) -> tuple[str, ...]:
        """Unknown inputs behind what is unknown, and lists with a piece nobody has measured; dotted
        keys in the order of the alphabet.
        """
        waits = {
            key
            for fact in blank
            for key in follows_from(fact)
            if key in self.standing.unknown or fact in NOUGHT
        }
        lists = self.standing.unmeasured
        if lists:
            waits.update(key for key in lists if any(key in follows_from(fact) for fact in read))
        return tuple(sorted(waits))

    def _doubted(self, rule: Rule[Facts], finding: Finding, fact: str) -> Finding:
        """Not checked, on a told area that cannot be; but what falls short, or does not apply, with
        the area told as with the drawing's own, does so.
        """
        as_told = self.facts.but(**{fact: self.doubted[fact].told})
        either_way = rule.function(as_told).verdict == finding.verdict
        if either_way and finding.verdict in (FALLS_SHORT, DOES_NOT_APPLY):
            return finding
        return finding._replace(verdict=NOT_CHECKED, margin=None, note=self.doubted[fact].why)


@lru_cache(maxsize=4096)
def _behind(standing: Standing, read: frozenset[str], rule: str) -> tuple[str, ...]:
    """Inputs that nobody has entered behind the facts that a rule has read, in the order of the
    alphabet; one moved input mostly leaves all alike.
    """
    found: set[str] = set()
    for fact in read - standing.decided:
        found.update(follows_from(fact))
        if standing.beside and fact in BESIDE_SECOND:
            found.update(BESIDE)
    return tuple(
        key for key in sorted(standing.assumed & found) if key not in TURNS or rule in TURNS[key]
    )
