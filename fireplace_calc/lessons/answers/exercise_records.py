"""What an exercise is: figures given, a drawing with a question mark, and steps in their order."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.lessons.answers.printed_answer import answer_unit, shown, tolerance
from fireplace_calc.lessons.exercise_figure import ExerciseFigure


@dataclass(frozen=True, slots=True)
class Mistake:
    """What somebody gets who goes wrong in one known way, and what he did. [SI]

    Where the reason speaks of one student's figures, ``cause`` is what all have in common who did
    the same.
    """

    value: float
    reason: str
    cause: str = ""


@dataclass(frozen=True, slots=True)
class ExerciseStep:
    """One thing to work out.

    Attributes
    ----------
    key : str
        Its name within the exercise.
    ask : str
        A question.
    expected : float
        The answer; of a choice, the place of the right option. [SI]
    kind : str
        ``length``, ``area``, ``mass``, ``pressure``, ``temperature``, ``count`` or ``choice``.
    hint, more, working : str
        What to think of, how to go about it, and all of it with its figures.
    mistakes : tuple of Mistake
        Usual ones, each apart from the answer and from the others.
    rule : str
        Key of the rule behind it, where there is one.
    limit : str
        ``least`` where an answer has to reach the figure, ``most`` where it must not pass it.
    options : tuple of str
        Of a choice, in the order they are shown.
    clause : str
        Where the reader's book has that rule.
    """

    key: str
    ask: str
    expected: float
    kind: str
    hint: str
    more: str
    working: str
    mistakes: tuple[Mistake, ...] = ()
    rule: str = ""
    limit: str = ""
    options: tuple[str, ...] = ()
    clause: str = ""

    @property
    def tolerance(self) -> float:
        """How far off an answer may be: one part in two hundred, and never less than what rounding
        for print takes. [SI]
        """
        return tolerance(self.expected, self.kind)

    def answer(self, units: str = FEET_INCHES) -> str:
        """The answer as it is printed: a least one rounded up, a most one rounded down."""
        return self.told(self.expected, units, self.limit)

    def told(self, value: float, units: str = FEET_INCHES, limit: str = "") -> str:
        """Any answer to this step as it is printed."""
        if self.kind == "choice":
            return self.options[round(value)]
        return shown(value, self.kind, units, limit)

    def unit(self, units: str = FEET_INCHES) -> str:
        """What a bare number is taken to be in; empty for a count and a choice."""
        return answer_unit(self.kind, units, self.expected)


@dataclass(frozen=True, slots=True)
class Given:
    """A figure of the exercise: name, value [SI] and kind; a word where the kind is ``word``. Of a
    whole design ``group`` is the part it belongs to.
    """

    name: str
    value: float | str
    kind: str = "length"
    group: str = ""

    def shown(self, units: str) -> str:
        """In the reader's units."""
        if self.kind == "word" or isinstance(self.value, str):
            return str(self.value)
        return shown(self.value, self.kind, units)


@dataclass(frozen=True, slots=True)
class Exercise:
    """Something to work out.

    Attributes
    ----------
    kind, lesson, title : str
    seed : int or str
    pack : str
    story : str
        What it is about.
    given : tuple of Given
    steps : tuple of ExerciseStep
    design : Design or None
        What the limits were asked for; the key agrees with its assessment.
    level : int
        1: one step, its givens handed; 2: two or three steps; 3: the whole job.
    units : str
        That its words and figures are in.
    branch : str
        Which way it goes: the rule that decides, the shape of the liner.
    figure : ExerciseFigure or None
        Drawing with a question mark at each answer.
    source : str
        What stands behind it where no clause does.
    any_order : bool
        Whether the steps ask the same and may be answered in any order: faults of a design.
    """

    kind: str
    lesson: str
    title: str
    seed: int | str
    pack: str
    story: str
    given: tuple[Given, ...]
    steps: tuple[ExerciseStep, ...]
    design: Design | None = None
    level: int = 3
    units: str = FEET_INCHES
    branch: str = ""
    figure: ExerciseFigure | None = None
    source: str = ""
    any_order: bool = False
