"""An exercise as ordered steps, and the reply to what somebody answers: right, or why not."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, InputError
from fireplace_calc.design.records import Design

SLIPS = {
    "length": (
        (FOOT / INCH, "feet and inches are mixed up"),
        (1 / 0.0254, "inches and metres are mixed up"),
        (25.4, "millimetres and inches are mixed up"),
        (10.0, "centimetres and millimetres are mixed up"),
        (1000.0, "millimetres and metres are mixed up"),
    ),
    "area": (
        ((FOOT / INCH) ** 2, "square feet and square inches are mixed up"),
        (FOOT / INCH, "one side is in feet, the other in inches"),
        (25.4**2, "square millimetres and square inches are mixed up"),
        (100.0, "square centimetres and square millimetres are mixed up"),
    ),
    "pressure": (
        (10.0, "the point is one place off"),
        (1000.0, "pascals and kilopascals are mixed up"),
    ),
}
"""How many times too much or too little an answer is when a unit slips, and what to say. [-]"""


def shown(value: float, kind: str, units: str = FEET_INCHES) -> str:
    r"""A value in the reader's units; small metric areas in square centimeters, so that a flue
    and a damper can be told apart.

    >>> shown(0.05, "area", "millimetres"), shown(0.9144, "length")
    ('500 cm²', '3\'-0"')
    """
    if kind == "area" and units != FEET_INCHES and abs(value) < 1.0:
        return f"{value * 1e4:.0f} cm²"
    return show(value, kind, units)


@dataclass(frozen=True, slots=True)
class Reply:
    """Whether an answer is right, and what to say of it; ``mistake`` is the reason that was
    recognised, or empty.
    """

    right: bool
    text: str
    mistake: str = ""


@dataclass(frozen=True, slots=True)
class Mistake:
    """What somebody gets who goes wrong in one known way, worked out. [SI]"""

    value: float
    reason: str


@dataclass(frozen=True, slots=True)
class ExerciseStep:
    """One thing to work out.

    Attributes
    ----------
    prompt : str
        What is asked.
    expected : float
        The answer. [SI]
    kind : str
        ``length``, ``area``, ``pressure``, ``temperature`` or ``count``.
    how : str
        The way to it, in words: the hint, and the working on the key.
    mistakes : tuple of Mistake
        Usual ones, each apart from the answer and from the others.
    rule : str
        Key of the rule behind it, where there is one.
    """

    prompt: str
    expected: float
    kind: str
    how: str
    mistakes: tuple[Mistake, ...] = ()
    rule: str = ""

    @property
    def tolerance(self) -> float:
        """How far off an answer may be: one part in two hundred, and never less than what rounding
        for print takes. [SI]
        """
        return tolerance(self.expected, self.kind)


@dataclass(frozen=True, slots=True)
class Given:
    """A figure of the exercise: name, value [SI] and kind; a word where the kind is ``word``."""

    name: str
    value: float | str
    kind: str = "length"

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
    steps : tuple of Step
    design : Design
        What the figures were taken from; the key agrees with its assessment.
    """

    kind: str
    lesson: str
    title: str
    seed: int | str
    pack: str
    story: str
    given: tuple[Given, ...]
    steps: tuple[ExerciseStep, ...]
    design: Design


LEAST = {"length": INCH / 16, "area": 0.00035, "pressure": 0.06, "temperature": 1.5, "count": 0.0}
"""What rounding for print may take from an answer. [SI]"""


def tolerance(value: float, kind: str) -> float:
    """How far off an answer may be. [SI]"""
    if kind in ("count", "temperature"):  # degrees have no nought to take a share from
        return LEAST[kind]
    return max(abs(value) / 200, LEAST[kind])


def apart(expected: float, kind: str, mistakes: list[tuple[float, str]]) -> tuple[Mistake, ...]:
    """The mistakes that can be told from the answer and from each other, first come first kept."""
    kept: list[Mistake] = []
    for value, reason in mistakes:
        near = tolerance(expected, kind) + tolerance(value, kind)
        if all(abs(value - other) > near for other in (expected, *(m.value for m in kept))):
            kept.append(Mistake(value, reason))
    return tuple(kept)


def step(
    prompt: str,
    expected: float,
    kind: str,
    how: str,
    mistakes: list[tuple[float, str]] | None = None,
    rule: str = "",
) -> ExerciseStep:
    """A step whose mistakes are sorted out."""
    return ExerciseStep(prompt, expected, kind, how, apart(expected, kind, mistakes or []), rule)


def read(text: str, kind: str) -> float:
    """What somebody wrote, in SI.

    Raises
    ------
    InputError
        When it cannot be read, or has no unit.
    """
    if kind != "count":
        return to_si(text, kind, "Your answer")
    try:
        return float(int(text.strip()))
    except ValueError:
        raise InputError(
            f"Your answer is {text!r}, but a whole number is wanted.",
            "Your answer",
            "a whole number",
            text,
        ) from None


def check(asked: ExerciseStep, text: str, units: str = FEET_INCHES) -> Reply:
    """Read an answer and reply.

    Parameters
    ----------
    asked : Step
    text : str
        With its unit, in either system.
    units : str
        Of the reply.

    Returns
    -------
    Reply
        For a wrong answer the reason, as far as it can be recognised, else a hint; never the answer
        itself.

    Examples
    --------
    >>> one = step("How wide?", 0.9144, "length", "Measure it.", [(0.4572, "That is half of it.")])
    >>> check(one, "914 mm").right, check(one, "18 in").text
    (True, 'Not yet. That is half of it.')
    """
    try:
        value = read(text, asked.kind)
    except InputError as trouble:
        return Reply(False, str(trouble), "unreadable")
    if abs(value - asked.expected) <= asked.tolerance * (1 + 1e-9):
        return Reply(True, f"Right: {shown(asked.expected, asked.kind, units)}. {asked.how}")
    for mistake in asked.mistakes:
        if abs(value - mistake.value) <= tolerance(mistake.value, asked.kind):
            return Reply(False, f"Not yet. {mistake.reason}", mistake.reason)
    if slip := _slipped(value, asked):
        return Reply(False, f"Not yet. The figures are right, but {slip}.", slip)
    if value * asked.expected < 0 and abs(value + asked.expected) <= asked.tolerance:
        return Reply(
            False, "Not yet. Right except for the sign: subtract the other way around.", "sign"
        )
    side = "Too much" if value > asked.expected else "Too little"
    return Reply(False, f"Not yet. {side}. {asked.how}")


def _slipped(value: float, asked: ExerciseStep) -> str:
    for times, said in SLIPS.get(asked.kind, ()):
        for factor in (times, 1 / times):
            if abs(value - asked.expected * factor) <= asked.tolerance * factor:
                return said
    return ""
