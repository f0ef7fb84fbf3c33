"""What the file of an exercise works with: figures drawn on the reader's own grid, limits of the
reader's book, and the steps of the level.
"""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Any

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.units import FEET_INCHES, INCH, MM, POUND, SQIN
from fireplace_calc.design.records import Design
from fireplace_calc.lessons.answers.exercise_records import ExerciseStep, Given
from fireplace_calc.lessons.answers.printed_answer import shown
from fireplace_calc.lessons.answers.replying import apart
from fireplace_calc.lessons.making.figure_maker import FigureMaker
from fireplace_calc.lessons.making.limits import CodeLimit, code_limit
from fireplace_calc.rules import Pack

ALL = (1, 2, 3)
GRID_MM = 5
"""What a drawn length is rounded to for a reader of millimetres. [mm]"""


@dataclass(frozen=True, slots=True)
class Way:
    """How a step is done: a hint, a bigger one, and the whole of it."""

    hint: str
    more: str
    working: str


class TaskMaker:
    """One exercise in the making.

    Parameters
    ----------
    pack : Pack
        The reader's code.
    book : str
        ``US``, ``CA`` or ``UK``.
    level : int
    units : str
        The reader's.
    branch : str
        Which way it goes.
    rng : Random
        Of this exercise alone.
    """

    def __init__(
        self, pack: Pack, book: str, level: int, units: str, branch: str, rng: Random
    ) -> None:
        self.pack, self.book, self.level, self.units = pack, book, level, units
        self.branch, self.rng = branch, rng
        self.feet = units == FEET_INCHES
        self.figure = FigureMaker()
        self.given: list[Given] = []
        self.steps: list[ExerciseStep] = []
        self.handed: set[str] = set()
        self.design: Design | None = None
        self.said = self.source = ""

    def length(self, low: float, high: float, by: float = 1.0) -> float:
        """A round length between two, both counted in [in]: on a tape of the reader's. [m]"""
        drawn = low + by * self.rng.randrange(round((high - low) / by) + 1)
        return self.on_tape(drawn * INCH)

    def on_tape(self, length: float, finest: int = GRID_MM) -> float:
        """The nearest length of the reader's tape: a sixteenth, or so many millimetres. [m]"""
        grid = INCH / 16 if self.feet else finest * MM
        return round(length / grid) * grid

    def printed(self, value: float, kind: str) -> float:
        """A given as it is printed, so that nothing is worked out from what nobody sees. [SI]"""
        grid = {
            "area": (1e-4, 0.1 * SQIN),
            "mass": (1.0, POUND),
            "length": (MM, INCH / 16),
        }[kind][self.feet]
        return round(value / grid) * grid

    def show(self, value: float, kind: str = "length", limit: str = "") -> str:
        """A value in the reader's units."""
        return shown(value, kind, self.units, limit)

    def side(self, value: float) -> str:
        """A length that is multiplied: inches alone, or millimetres."""
        if self.feet:
            return feet_inches(value, inches_only=True)
        return f"{round(value / MM, 1):g} mm"

    def text(self, value: float) -> str:
        """A length as a change of the design reads it."""
        return f"{value!r} m"

    def limit(self, keys: tuple[str, ...], changes: dict[str, Any] | None = None) -> CodeLimit:
        """What the reader's code asks for; the design is kept for the key."""
        found = code_limit(self.pack, changes or {}, keys, self.units)
        self.design = found.design
        return found

    def give(
        self,
        name: str,
        value: float | str,
        kind: str = "length",
        at: tuple[int, ...] = ALL,
        key: str = "",
    ) -> None:
        """Hand a figure over at some levels; with a key it is the answer of a step that is asked
        at the others.
        """
        if self.level in at:
            self.given.append(Given(name, value, kind))
            self.handed |= {key} - {""}

    def ask(
        self,
        key: str,
        question: str,
        expected: float,
        kind: str,
        way: Way,
        wrong: list[tuple[float, str]],
        at: tuple[int, ...] = ALL,
        limit: str = "",
        code: CodeLimit | None = None,
        options: tuple[str, ...] = (),
    ) -> None:
        """Ask for something at some levels."""
        if self.level not in at:
            return
        known = apart(expected, kind, wrong)
        made = ExerciseStep(
            key, question, expected, kind, way.hint, way.more, way.working, known,
            code.rule if code else "", limit, options, code.clause if code else "",
        )  # fmt: skip
        self.steps.append(made)

    def choose(
        self,
        key: str,
        question: str,
        right: str,
        options: dict[str, str],
        way: Way,
        at: tuple[int, ...] = ALL,
        code: CodeLimit | None = None,
    ) -> None:
        """Ask for one of some options, each with what to say to who takes it wrongly."""
        names = tuple(options)
        wrong = [(float(k), options[n]) for k, n in enumerate(names) if n != right]
        self.ask(
            key, question, float(names.index(right)), "choice", way, wrong, at, "", code, names
        )
