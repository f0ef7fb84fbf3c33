"""A design under somebody's hands: the way back and forward again, and options put aside."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from time import monotonic
from typing import Any

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.printing import messages_in
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.jobs.history import ELSEWHERE, History, beginning
from fireplace_calc.editing.jobs.names import as_name
from fireplace_calc.editing.jobs.options import (
    MOST_KNOWN,
    MOST_OPTIONS,
    MOST_REMOVED,
    Option,
    Shelf,
    removed,
    shown,
)
from fireplace_calc.report.steps import step_words
from fireplace_calc.survey.kept import Survey, read_survey, survey_text

PAUSE = 1.0
"""A hand that rests longer has made a move of its own, to be undone alone. [s]"""


@lru_cache(maxsize=64)
def _survey_of(text: str) -> Survey:
    return read_survey(text) if text else Survey()


class WorkInHand:
    """A design with its past, kept nowhere.

    Parameters
    ----------
    first : Design
        Where it begins.
    units : str
        What steps are named in: ``feet-inches`` or ``millimetres``.

    Attributes
    ----------
    history : History
        What was done, step by step; its last step stands until something else is done.
    designs : dict
        Design of every option that any step knows, by number.
    """

    def __init__(self, first: Design, units: str) -> None:
        self.units = units
        self.begin(first)

    def begin(self, design: Design, folder: Path | None = None) -> None:
        """Begin anew, with nothing to go back to."""
        self.designs: dict[int, Design] = {}
        self.history = History([beginning(design)], self._named, folder)
        self._run = ("", 0.0)

    # -- the design -------------------------------------------------------------------------------
    @property
    def design(self) -> Design:
        """As it stands now."""
        return self.history.design_of(self.history.at)

    @property
    def past(self) -> list[Design]:
        """Every design that can be gone back to, the oldest first."""
        return [self.history.design_of(number) for number in range(self.history.at)]

    @property
    def coming(self) -> list[Design]:
        """Every design that was taken back, the one taken back last first in line at the end."""
        last = len(self.history.moments) - 1
        return [self.history.design_of(number) for number in range(last, self.history.at, -1)]

    def take(self, changes: Mapping[str, Any], run: str = "") -> None:
        """Change some inputs.

        Raises
        ------
        InputError
            And nothing is changed.
        """
        with messages_in(self.units):
            made = change(self.design, changes)
        self.put(made, run)

    def put(self, design: Design, run: str = "", did: str = "") -> None:
        """Lay another design on the table. Moves of one run, without a pause between them, are one
        step back; the same design again is none.
        """
        now = monotonic()
        if run and self._run[0] == run and now - self._run[1] < PAUSE:
            self.history.replace(design)
        elif design != self.design:
            self.history.add(design, self.shelf, did, moving=bool(run))
        else:
            run = ""
        self._run = (run, now)

    # -- what was measured ------------------------------------------------------------------------
    @property
    def survey(self) -> Survey:
        """What has been measured on a fireplace that stands."""
        return _survey_of(self.history.now.survey)

    @property
    def measured_last(self) -> bool:
        """Whether the last step was an entry of the survey."""
        at, moments = self.history.at, self.history.moments
        return at > 0 and moments[at].survey != moments[at - 1].survey

    def measure(self, survey: Survey, did: str) -> None:
        """Take another survey, as one step; the same again is none.

        Parameters
        ----------
        survey : Survey
        did : str
            What was entered.
        """
        if survey != self.survey:
            text = "" if survey == Survey() else survey_text(survey)
            self.history.add(self.design, self.shelf, did, survey=text)
        self._run = ("", 0.0)

    def take_up_survey(self, survey: Survey) -> None:
        """Stand where the survey's file stands. A history that knows of none has had it from the
        beginning; what none of its steps says was entered elsewhere.
        """
        moments = self.history.moments
        for moment in moments:
            try:
                _survey_of(moment.survey)
            except InputError:
                moment.survey = ""
        if survey == self.survey:
            return
        text = survey_text(survey)
        if any(moment.survey for moment in moments):
            self.history.add(self.design, self.shelf, ELSEWHERE, survey=text)
        else:
            for moment in moments:
                moment.survey = text

    # -- the way back -----------------------------------------------------------------------------
    def undo(self) -> bool:
        """One step back, over options and what was measured too; false when there is none.

        Raises
        ------
        InputError
            When the design of that step cannot be read any more.
        """
        return self._go(self.history.at - 1)

    def redo(self) -> bool:
        """Forward again; false when nothing was undone.

        Raises
        ------
        InputError
            When the design of that step cannot be read any more.
        """
        return self._go(self.history.at + 1)

    def go(self, number: int) -> bool:
        """To any step of the history, by its number; false when there is none.

        Raises
        ------
        InputError
            When the design of that step cannot be read any more.
        """
        return self._go(number)

    def _go(self, number: int) -> bool:
        if not 0 <= number < len(self.history.moments):
            return False
        self.history.go(number)
        self._run = ("", 0.0)
        return True

    @property
    def steps(self) -> list[str]:
        """What was done, step by step, the oldest first; ``history.at`` is where things stand."""
        return [self.history.did(number) for number in range(len(self.history.moments))]

    def _named(self, before: Design, after: Design) -> str:
        return step_words(before, after, self.units)

    def without(self, key: str) -> Design:
        """The design with one input at its default and without name and note, to tell whether
        anything else has changed.
        """
        group, _, name = key.partition(".")
        record = getattr(self.design, group)
        default = inputs_of(record)[name].default
        return replace(self.design, name="", note="", **{group: replace(record, **{name: default})})

    # -- options ----------------------------------------------------------------------------------
    @property
    def shelf(self) -> Shelf:
        """Every option, those to be put back among them."""
        return self.history.now.shelf

    @property
    def options(self) -> list[Design]:
        """Designs on the shelf, in the order in which they were put aside."""
        return [self.designs[option.number] for option in shown(self.shelf)]

    def put_aside(self, name: str = "") -> int:
        """Keep the design as an option beside the others; gives its number, which no other gets.

        Raises
        ------
        InputError
            When there is no room for another.
        """
        self._room()
        number = max((*self.designs, *self.history.numbers(), 0)) + 1
        name = as_name(name or f"Option {number}", "The option")
        self.designs[number] = self.design
        self._shelve((*self.shelf, Option(number, name)), f"Put aside: {name}")
        return number

    def rename_option(self, number: int, name: str) -> None:
        """Call an option otherwise.

        Raises
        ------
        InputError
            When there is no name left.
        """
        name = as_name(name, "The option")
        self._shelve(self._with(number, name=name), f"Option renamed: {name}")

    def remove_option(self, number: int) -> None:
        """Take an option off the shelf; it can be put back."""
        shelf = self._with(number, removed=True)
        for old in removed(shelf)[:-MOST_REMOVED]:
            shelf = tuple(option for option in shelf if option.number != old.number)
        self._shelve(shelf, f"Removed: {self._option(number).name}")

    def put_back_option(self, number: int) -> None:
        """Put a removed option on the shelf again, where it stood.

        Raises
        ------
        InputError
            When there is no room for it.
        """
        self._room()
        self._shelve(self._with(number, removed=False), f"Put back: {self._option(number).name}")

    def bring_back_option(self, number: int) -> None:
        """Work on an option's design; the option stays."""
        self.put(self.designs[number], did=f"Brought back: {self._option(number).name}")

    def _room(self) -> None:
        if len(shown(self.shelf)) >= MOST_OPTIONS:
            raise InputError(
                f"There are {MOST_OPTIONS} options already; remove one first.",
                "Options",
                f"up to {MOST_OPTIONS}",
                "",
            )

    def _option(self, number: int) -> Option:
        return next(option for option in self.shelf if option.number == number)

    def _with(self, number: int, **changes: Any) -> Shelf:
        return tuple(replace(o, **changes) if o.number == number else o for o in self.shelf)

    def _shelve(self, shelf: Shelf, did: str) -> None:
        if shelf != self.shelf:
            self.history.add(self.design, shelf, did)
            while len(self.history.numbers()) > MOST_KNOWN and self.history.at:
                self.history.drop(1)
        self._run = ("", 0.0)
