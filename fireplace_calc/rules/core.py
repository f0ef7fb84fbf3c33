"""What a rule is: a small named thing that picks a limit, compares, and gives its reason.

Four verdicts. A missing input is *not checked*, never a pass.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, NamedTuple, TypeVar

from fireplace_calc.base.tables import Source
from fireplace_calc.base.units import in_unit
from fireplace_calc.rules.comparing import (
    DOES_NOT_APPLY,
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    Shown,
    same,
)

PASSING = (MEETS, DOES_NOT_APPLY)
"""Verdicts that leave nothing to do: on an assumption they mislead."""
EDITIONS = ("2015", "2018", "2021", "2024")


class Finding(NamedTuple):
    """One rule held against one design.

    ``provided``, ``required`` and ``margin`` are in ``unit`` as the book prints it; words for a
    rule about a kind or a yes. ``margin`` is what there is to spare, negative for what is lacking.
    """

    key: str
    clause: str
    title: str
    verdict: str
    provided: Shown
    required: Shown
    margin: float | None
    unit: str
    why: str
    confidence: str
    edition: str
    source: str
    note: str = ""
    assumed: tuple[str, ...] = ()
    """Inputs it rests on that nobody has entered, by dotted key."""
    missing: tuple[str, ...] = ()
    """Unknown inputs that a finding which is *not checked* waits for, by dotted key."""

    @property
    def on_assumption(self) -> bool:
        """Whether it passes, or does not apply, for all that anybody has entered."""
        return bool(self.assumed) and self.verdict in PASSING

    @property
    def said(self) -> str:
        """The verdict as a reader is told it."""
        return f"{self.verdict}, on an assumption" if self.on_assumption else self.verdict

    @property
    def numbers(self) -> tuple[float, float] | None:
        """Provided and required, where both are numbers. [unit]"""
        if isinstance(self.provided, float) and isinstance(self.required, float):
            return self.provided, self.required
        return None

    def resting(self, assumed: tuple[str, ...], missing: tuple[str, ...]) -> Finding:
        """The same finding with what it rests on and what it waits for."""
        return Finding(*self[:-2], assumed, missing)

    def in_edition(self, edition: str) -> Finding:
        """The same finding in another edition."""
        return self._replace(edition=edition)


Subject = TypeVar("Subject")
"""What a rule is held against: the facts of a design, its draft, its structure."""


@dataclass(frozen=True, slots=True)
class Rule(Generic[Subject]):
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
    function: Callable[[Subject], Compared]
    outside: bool = False
    """Filed for completeness: it is about work that no design here can be, such as a factory-built
    fireplace, and only says so.
    """

    def check(self, subject: Subject, edition: str) -> Finding:
        """Hold the rule against one design."""
        found = self.function(subject)
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
            if isinstance(found.provided, float) and isinstance(found.required, float):
                margin = 0.0 if same(found.provided, found.required) else margin
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
            missing=found.missing,
        )


JUDGEMENT = "engineering judgement"
"""Edition of findings that no code book stands behind."""


Judgement = Callable[[Subject], Compared]
"""A function that holds a draft, or a structure, against a limit."""


def filing(
    rules: list[Rule[Subject]],
) -> Callable[..., Callable[[Judgement[Subject]], Judgement[Subject]]]:
    """A decorator that files functions among ``rules`` as engineering judgement and hands them back
    unchanged.

    It is called with key, mode, title, unit, source and, for a limit not to be passed, ``over``;
    the docstring is the reason.
    """

    def judged(
        key: str, mode: str, title: str, unit: str, known: Source, over: bool = False
    ) -> Callable[[Judgement[Subject]], Judgement[Subject]]:
        def file(function: Judgement[Subject]) -> Judgement[Subject]:
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
