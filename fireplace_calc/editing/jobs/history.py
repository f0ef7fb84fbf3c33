"""What was done with a job, step by step with its name: the way back, and forward again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.editing.jobs.deltas import Delta, Lines, apply_to, between
from fireplace_calc.editing.jobs.options import Shelf

STEPS_BACK = 500
"""Steps that are remembered. [-]"""
BEGINNING = "Beginning"
ELSEWHERE = "Changed outside the workbench"
"""Names of steps: the first one, and one that was made by editing a file."""

Namer = Callable[[Design, Design], str]
"""Says what was done between two designs."""


@dataclass(slots=True)
class Moment:
    """How things stood at one time.

    Attributes
    ----------
    did : str
        What was done to come here; empty until somebody asks.
    shelf : Shelf
        Options of the moment.
    design : Design or None
        None as long as it is only known as text.
    survey : str
        Text of the survey of the moment; empty where nothing was measured.
    delta : Delta or None
        From the text of the moment before; None until it is written.
    """

    did: str
    shelf: Shelf
    design: Design | None = None
    delta: Delta | None = None
    survey: str = ""


def beginning(design: Design, shelf: Shelf = (), did: str = BEGINNING) -> Moment:
    """The moment that a history begins with."""
    return Moment(did, shelf, design)


class History:
    """Every moment that can be gone back to, the oldest first.

    Parameters
    ----------
    moments : list of Moment
        At least the one it begins with.
    namer : callable
        Names a step that was given no name.
    folder : path, optional
        Of the job; a set's file is looked for there.
    base : list of str, optional
        Text of the first moment's design, line by line, where it was read from a file.

    Attributes
    ----------
    at : int
        Number of the moment that things stand at. [-]
    moving : bool
        Whether that moment is one of a moving hand, whose last place only the design file knows.
    version : int
        Grows with every step, not with the places of a moving hand. [-]
    """

    def __init__(
        self,
        moments: list[Moment],
        namer: Namer,
        folder: Path | None = None,
        base: Lines | None = None,
    ) -> None:
        self.moments, self.namer, self.folder, self.base = moments, namer, folder, base
        self.at, self.moving, self.version = 0, False, 0

    @property
    def now(self) -> Moment:
        """The moment that things stand at."""
        return self.moments[self.at]

    def add(
        self,
        design: Design,
        shelf: Shelf,
        did: str = "",
        moving: bool = False,
        survey: str | None = None,
    ) -> None:
        """One step on; what was to come is forgotten, and so is the oldest of too many. What was
        measured stays, unless another survey is told.
        """
        measured = self.now.survey if survey is None else survey
        del self.moments[self.at + 1 :]
        self.moments.append(Moment(did, shelf, design, survey=measured))
        self.drop(len(self.moments) - 1 - STEPS_BACK)
        self.at, self.moving = len(self.moments) - 1, moving
        self.version += 1

    def replace(self, design: Design) -> None:
        """The moment that things stand at was only on the way to this one."""
        self.now.design, self.now.delta, self.now.did = design, None, ""

    def drop(self, count: int) -> None:
        """Forget the oldest, as many as this."""
        if count > 0:
            self.base = self.lines(count)
            del self.moments[:count]
            self.moments[0].delta = None
            self.at -= count

    def go(self, number: int) -> None:
        """Stand at another moment.

        Raises
        ------
        InputError
            When its design cannot be read any more; then nothing is changed.
        """
        self.design_of(number)
        self.at, self.moving = number, False
        self.version += 1

    def design_of(self, number: int) -> Design:
        """The design of one moment.

        Raises
        ------
        InputError
            When its text cannot be read any more: its set has gone, say.
        """
        moment = self.moments[number]
        if moment.design is None:
            moment.design = load_text("\n".join(self.lines(number)), "history", self.folder)
        return moment.design

    def did(self, number: int) -> str:
        """What was done to come to one moment."""
        moment = self.moments[number]
        if not moment.did and number:
            moment.did = self.namer(self.design_of(number - 1), self.design_of(number))
        return moment.did

    def lines(self, number: int) -> Lines:
        """Text of the design of one moment, line by line. What is written down goes before what
        would be written today: the steps behind it count its lines.
        """
        known = number
        while known and self.moments[known].delta is not None:
            known -= 1
        design = self.moments[known].design
        first = self.base if not known and self.base is not None else None
        found = list(first) if first is not None else text_of(design or Design()).split("\n")
        for moment in self.moments[known + 1 : number + 1]:
            apply_to(found, moment.delta or ())
        return found

    def settle(self) -> None:
        """Name every step and write down what it changed, before all of it is written."""
        if self.base is None:
            self.base = self.lines(0)
        for number, moment in enumerate(self.moments):
            if number and moment.delta is None:
                moment.delta = between(self.lines(number - 1), self.lines(number))
                self.did(number)

    def numbers(self) -> frozenset[int]:
        """Numbers of all options that any moment knows."""
        return frozenset(option.number for moment in self.moments for option in moment.shelf)

    def take_up(self, design: Design, shelf: Shelf) -> None:
        """Stand where the files stand: at the nearest moment that is like them. What no moment is
        like was done elsewhere, or by the last moves of a hand.
        """
        text, like, found = text_of(design).split("\n"), [], self.lines(0)
        for number, moment in enumerate(self.moments):
            apply_to(found, (number and moment.delta) or ())
            if found == text and moment.shelf == shelf:
                like.append(number)
        if not like and shelf == self.now.shelf and self._reads_as(design):
            like = [self.at]
        if like:
            nearest = min(like, key=lambda number: (abs(number - self.at), -number))
            self.moving = self.moving and nearest == self.at
            self.at = nearest
            self.now.design = design
        elif self.moving and shelf == self.now.shelf and self.at == len(self.moments) - 1:
            self.replace(design)
        else:
            self.add(design, shelf, ELSEWHERE)

    def _reads_as(self, design: Design) -> bool:
        """Whether the moment is like a design, though its text was written in another way."""
        try:
            return self.design_of(self.at) == design
        except InputError:
            return False
