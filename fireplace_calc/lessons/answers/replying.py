"""The reply to an answer: right, or what the student did."""

from __future__ import annotations

import re
from dataclasses import dataclass

from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, MILLIMETRES, MM, InputError
from fireplace_calc.lessons.answers.exercise_records import ExerciseStep, Mistake
from fireplace_calc.lessons.answers.printed_answer import tolerance
from fireplace_calc.lessons.answers.written import read_answer

SLIPS = {
    "length": (
        (FOOT / INCH, "You mixed up feet and inches."),
        (1 / 0.0254, "You mixed up inches and meters."),
        (25.4, "You mixed up millimeters and inches."),
        (10.0, "You mixed up centimeters and millimeters."),
        (1000.0, "You mixed up millimeters and meters."),
    ),
    "area": (
        ((FOOT / INCH) ** 2, "You mixed up square feet and square inches."),
        (FOOT / INCH, "You took one side in feet and the other in inches."),
        (25.4**2, "You mixed up square millimeters and square inches."),
        (100.0, "You mixed up square centimeters and square millimeters."),
    ),
    "mass": ((2.20462, "You mixed up pounds and kilograms."),),
    "pressure": (
        (10.0, "Your decimal point is one place off."),
        (1000.0, "You mixed up pascals and kilopascals."),
    ),
}
"""How many times too much or too little an answer is when a unit slips, and what to say. [-]"""
SHARP = 0.1 * MM
"""What a least or a most length may be passed by, for a figure that was read off a print. [m]"""


@dataclass(frozen=True, slots=True)
class Reply:
    """Whether an answer is right, and what to say of it; ``mistake`` is the reason that was
    recognised, or empty.
    """

    right: bool
    text: str
    mistake: str = ""


def apart(expected: float, kind: str, mistakes: list[tuple[float, str]]) -> tuple[Mistake, ...]:
    """The mistakes that can be told from the answer and from each other, first come first kept."""
    kept: list[Mistake] = []
    for value, reason in mistakes:
        near = tolerance(expected, kind) + tolerance(value, kind)
        if all(abs(value - other) > near for other in (expected, *(m.value for m in kept))):
            kept.append(Mistake(value, reason))
    return tuple(kept)


def step(
    ask: str,
    expected: float,
    kind: str,
    how: str,
    mistakes: list[tuple[float, str]] | None = None,
    rule: str = "",
) -> ExerciseStep:
    """A step whose mistakes are sorted out."""
    return ExerciseStep(
        "", ask, expected, kind, how, how, how, apart(expected, kind, mistakes or []), rule
    )


def _name(text: str) -> str:
    """A choice without what may be left out: letters and figures alone."""
    plain = text.lower().replace("×", "x").replace("by", "x").replace("round", "")
    return re.sub(r"inches|inch|\bin\b|mm|[^a-z0-9./]", "", re.sub(r"(?<=\d)in\b", "", plain))


def _chosen(asked: ExerciseStep, text: str) -> float:
    """The place of the option that was written or clicked.

    Raises
    ------
    InputError
        When it is none of them.
    """
    names = [_name(option) for option in asked.options]
    if text in asked.options:
        return float(asked.options.index(text))
    if (said := _name(text)) in names:
        return float(names.index(said))
    listed = ", ".join(asked.options)
    raise InputError(f"Choose one of these: {listed}.", "Your answer", listed, text)


def check(asked: ExerciseStep, text: str, units: str = FEET_INCHES) -> Reply:
    """Read an answer and reply.

    Parameters
    ----------
    asked : ExerciseStep
    text : str
        As people write it; a bare number is in the reader's units.
    units : str
        The reader's.

    Returns
    -------
    Reply
        For a wrong answer what was done, as far as it can be recognised, else a hint; never the
        answer itself.

    Examples
    --------
    >>> one = step("How wide?", 0.9144, "length", "Measure it.", [(0.4572, "You took half of it.")])
    >>> check(one, "914.4 mm").right, check(one, "18").text
    (True, 'Not yet. You took half of it.')
    """
    try:
        value = (
            _chosen(asked, text)
            if asked.kind == "choice"
            else read_answer(text, asked.kind, units, asked.expected)
        )
    except InputError as trouble:
        return Reply(False, str(trouble), "unreadable")
    near = abs(value - asked.expected) <= asked.tolerance * (1 + 1e-9)
    if near and _passes_limit(asked, value):
        return Reply(True, f"Right: {asked.answer(units)}. {asked.working}")
    for mistake in asked.mistakes:
        if abs(value - mistake.value) <= tolerance(mistake.value, asked.kind):
            return Reply(False, f"Not yet. {mistake.reason}", mistake.cause or mistake.reason)
    if near:
        return Reply(False, f"Not yet. {_rounded(asked)}", "rounded")
    if slip := _slipped(value, asked):
        said = _in_english(slip, units)
        return Reply(False, f"Not yet. The figures are right. {said}", said)
    if value * asked.expected < 0 and abs(value + asked.expected) <= asked.tolerance:
        return Reply(
            False, "Not yet. Right except for the sign: subtract the other way around.", "sign"
        )
    side = (
        "" if asked.kind == "choice" else "Too much. " if value > asked.expected else "Too little. "
    )
    return Reply(False, f"Not yet. {side}{asked.hint}")


def _passes_limit(asked: ExerciseStep, value: float) -> bool:
    """Whether a least answer reaches the figure and a most one does not pass it."""
    over = value - asked.expected
    slack = max(1e-6 * abs(asked.expected), SHARP if asked.kind == "length" else 0.0)
    return {"least": over >= -slack, "most": over <= slack}.get(asked.limit, True)


def _rounded(asked: ExerciseStep) -> str:
    if asked.limit == "least":
        return "You rounded down, and a least figure must be reached. Round up."
    return "You rounded up, and a greatest figure must not be passed. Round down."


def _slipped(value: float, asked: ExerciseStep) -> str:
    for times, said in SLIPS.get(asked.kind, ()):
        for factor in (times, 1 / times):
            if abs(value - asked.expected * factor) <= asked.tolerance * factor:
                return said
    return ""


def _in_english(said: str, units: str) -> str:
    return said.replace("meters", "metres") if units == MILLIMETRES else said
