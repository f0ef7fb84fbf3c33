"""What a judgement on draft or structure rests on: which fields it reads, and which of the inputs
behind them nobody has entered.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, cast

from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import all_inputs, unknown_of
from fireplace_calc.rules.comparing import MEETS
from fireplace_calc.rules.core import JUDGEMENT, PASSING, Finding, Rule, Subject
from fireplace_calc.rules.tracing.follows import idle


class Noted:
    """A record that notes the name of each field that is read. A judgement cannot tell it from the
    record.

    Parameters
    ----------
    record : object
    read : set of str
        Takes the names, with dots.
    nested : container of str
        Noted that are records of their own and noted field by field.
    prefix : str
        What stands before a name.
    """

    __slots__ = ("_nested", "_prefix", "_read", "_record")

    def __init__(
        self, record: Any, read: set[str], nested: frozenset[str], prefix: str = ""
    ) -> None:
        self._record, self._read, self._nested, self._prefix = record, read, nested, prefix

    def __getattr__(self, name: str) -> Any:
        """The field itself, its name noted."""
        value, noted = getattr(self._record, name), f"{self._prefix}{name}"
        if noted in self._nested or hasattr(value, "with_read"):
            if value is not None:
                return Noted(value, self._read, self._nested, f"{noted}.")
            noted += ".none"
        self._read.add(noted)
        return value


@dataclass(frozen=True)
class Grounds:
    """On what the judgements of one subject rest.

    Attributes
    ----------
    follows : mapping
        Inputs that can move a field, by the field's name or by its first words; an input read by
        itself needs no entry.
    nested : frozenset of str
        Noted noted field by field; where there is no such record, as ``arch.none``.
    taken : tuple of str
        Inputs for which something is taken while they are unknown, and which another answer than
        that can turn a pass.
    always : tuple of str
        Inputs that every judgement rests on.
    """

    follows: Mapping[str, Iterable[str]]
    nested: frozenset[str]
    taken: tuple[str, ...]
    always: tuple[str, ...] = ()
    known: dict[str, frozenset[str]] = field(default_factory=dict, compare=False)
    """What has been looked up before."""

    def behind(self, name: str) -> frozenset[str]:
        """Inputs that can move a field; all of them where nothing is said of it."""
        if name not in self.known:
            self.known[name] = self._look_up(name)
        return self.known[name]

    def _look_up(self, name: str) -> frozenset[str]:
        key = name.removeprefix("design.")
        if key in all_inputs():
            return frozenset((key,))
        words = name.split(".")
        for count in range(len(words), 0, -1):
            if (found := self.follows.get(".".join(words[:count]))) is not None:
                return frozenset(found)
        return frozenset(all_inputs())


def hold(
    rules: Sequence[Rule[Subject]], subject: Subject, design: Design, grounds: Grounds
) -> tuple[Finding, ...]:
    """Judgements held against a subject; each that passes carries the inputs behind it that nobody
    has entered.

    Parameters
    ----------
    rules : sequence of Rule
    subject : object
        What they are held against, worked out from the design.
    design : Design
    grounds : Grounds
        What the subject's fields follow from.

    Returns
    -------
    tuple of Finding
        In the order of the rules.

    Notes
    -----
    Nothing is worked out a second time: an input is named because it can move what was read, not
    because another value of it was tried.
    """
    open_to_doubt = (assumed(design) - idle(design)).union(unknown_of(design, *grounds.taken))
    found = []
    for rule in rules:
        read: set[str] = set()
        finding = rule.check(cast("Subject", Noted(subject, read, grounds.nested)), JUDGEMENT)
        if finding.verdict in PASSING:
            always = grounds.always if finding.verdict == MEETS else ()
            behind = frozenset(always).union(*map(grounds.behind, read))
            finding = finding._replace(assumed=tuple(sorted(open_to_doubt & behind)))
        found.append(finding)
    return tuple(found)
