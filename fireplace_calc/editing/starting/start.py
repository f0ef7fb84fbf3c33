"""A fireplace of one's own, one answer after the other; whole after every one of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Any

from fireplace_calc.base.places import Place, find, site
from fireplace_calc.base.printing import messages_in
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change, value_of
from fireplace_calc.editing.sets.deciding import decided
from fireplace_calc.editing.starting.answers import one_of, with_bare_unit
from fireplace_calc.editing.starting.outcomes import came_of
from fireplace_calc.editing.starting.questions import (
    BY_KEY,
    FEET,
    QUESTIONS,
    STOREYS,
    StartQuestion,
)
from fireplace_calc.editing.starting.worked_out import levels, ridge, sections_for

LEVELS = ("storeys", "ceiling")
RIDGE = (*LEVELS, "stands", "room", "pitch", "ridge")
"""Questions whose answers set eaves and ceiling, and the ridge."""


@dataclass(frozen=True)
class Start:
    """How far somebody has come.

    Attributes
    ----------
    design : Design
        Whole, whatever has been answered.
    answers : dict
        Text by question.
    units : str
        That a bare number is read in.
    """

    design: Design = Design()
    answers: dict[str, str] = field(default_factory=dict)
    units: str = FEET_INCHES

    def answer(self, key: str, text: str, books: Iterable[str] = ()) -> Start:
        """With one answer more, or another one; with an empty text the question is skipped.

        Parameters
        ----------
        key : str
            Of the question.
        text : str
        books : iterable of str
            Names of the codes, for that question.

        Raises
        ------
        InputError
            In one sentence, when it cannot be read or does not fit; nothing is lost.
        """
        if not text.strip():
            return self._without(key)
        with messages_in(self.units):
            return self._with(key, text, books)

    def _with(self, key: str, text: str, books: Iterable[str]) -> Start:
        question = BY_KEY[key]
        if key == "book":
            one_of(text, {book: book for book in books}, "Code")
        if key == "storeys":
            one_of(text, STOREYS, "Stories")
        if reason := self.decided_by_set(question):
            raise InputError(reason, question.words, "", text)
        kept = with_bare_unit(text, self.units, FEET) if key == "top" else text.strip()
        answers = self.answers | {key: kept}
        design = change(self.design, question.read(text, self.units))
        return replace(self, design=self._followed(design, answers, key), answers=answers)

    def _without(self, key: str) -> Start:
        """What was answered stays, but nobody is said to have told it."""
        left = {k: v for k, v in self.answers.items() if k != key}
        keys = BY_KEY[key].read(self.answers[key], self.units) if key in self.answers else ()
        untold = self.design.with_read({"told": self.design.told - set(keys)})
        return replace(self, design=untold, answers=left)

    def at(self, place: Place) -> Start:
        """At a weather station that was picked from several."""
        return replace(
            self,
            design=change(self.design, site(place)),
            answers=self.answers | {"place": place.name},
        )

    def _followed(self, design: Design, answers: dict[str, str], key: str) -> Design:
        """The design with what follows from its answers, whatever was answered last."""
        if key in LEVELS:
            storeys = int(one_of(answers.get("storeys", "one"), STOREYS, "Stories"))
            design = _following(design, levels(design, storeys))
        if key in RIDGE and {"pitch", "ridge"} & set(answers):
            design = _following(design, ridge(design))
        if key in ("head", "method") and design.piece_set is None and "head" in answers:
            arch = design.opening.head == "segmental"
            carried = "masonry arch" if arch else "steel"
            design = _following(design, {"lintel.material": carried})
        if "top" in answers:
            top = to_si(
                with_bare_unit(answers["top"], self.units, FEET), "length", "Chimney height"
            )
            design = _following(design, {"flue.sections": sections_for(design, top)})
        return design

    def decided_by_set(self, question: StartQuestion) -> str:
        """Why a question is none: the set has decided it; empty when it has not."""
        taken = decided(self.design) if question.decides else {}
        if not any(key in taken for key in question.decides):
            return ""
        name = self.design.pieces.set
        return f"The set {name} decides this: {self.became(question)}"

    def became(self, question: StartQuestion) -> str:
        """What came of an answer: how it was read, and what follows from it."""
        return came_of(question.key, self.design, self.answers, self.units)

    def worked_out(self) -> tuple[tuple[str, Any], ...]:
        """Inputs that nobody typed and that follow from an answer, with what they are. [SI]"""
        keys: list[str] = []
        if set(LEVELS) & set(self.answers):
            keys += ["roof.eaves_level", "house.highest_ceiling"]
        if {"pitch", "ridge"} & set(self.answers):
            keys.append("roof.ridge_level")
        if "head" in self.answers and self.design.piece_set is None:
            keys.append("lintel.material")
        if "top" in self.answers:
            keys.append("flue.sections")
        return tuple((key, value_of(self.design, key)) for key in keys)

    def left(self) -> tuple[StartQuestion, ...]:
        """Questions without an answer that the set has not decided either."""
        return tuple(
            question
            for question in QUESTIONS
            if question.key not in self.answers and not self.decided_by_set(question)
        )


def places(text: str) -> tuple[Place, ...]:
    """Weather stations to pick from, best first."""
    return find(text, limit=8) if text.strip() else ()


def _following(design: Design, changes: dict[str, Any]) -> Design:
    """With what follows from an answer: nobody has told it."""
    made = change(design, changes)
    return made.with_read({"told": made.told - (set(changes) - design.told)})
