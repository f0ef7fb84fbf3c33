"""What a lesson file holds, as frozen records: the fields here are the format.

A field without a default must be there. ``from`` and ``to``, which a program cannot use as names,
are ``start_at`` and ``end_at`` of a control and ``measured_from`` of a rule.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from fireplace_calc.lessons.course.sums import Given

COUNTRIES = ("american", "canadian", "english")
"""In whose words a lesson is told."""
BOOKS = ("US IRC 2021", "Canada NBC", "UK ADJ")
"""The books a lesson sets side by side, one a country."""
HAVE, NEED, BOTH, SHOWN = "have", "need", "both", "shown"
"""What a control moves; ``shown`` is something beside the rule."""
VERDICT = "verdict"
ALIAS = {"measured_from": "from", "start_at": "from", "end_at": "to", "tries": "try"}
"""Names of fields as a file spells them, where the two differ."""


@dataclass(frozen=True, slots=True)
class LessonRule:
    """One card: what is asked, where the tape starts, and why.

    Attributes
    ----------
    letter : str
    text, measured_from, why : str
    question : str
        Row of ``data/questions.csv``, which names the rule's keys in each book.
    keys : tuple of str
        Keys of rules instead of, or fewer than, those of the question.
    source : str
        What stands behind a rule that no code gives.
    have, need : sum
        Of a rule without keys.
    most : bool
        Such a rule's need is not to be passed.
    exact : bool
        Such a rule's need is to be met, to a sixteenth of an inch either way.
    plus, times : sum
        Added to both figures of the finding, or multiplied with both: what is measured from a
        higher start, a share of an area.
    reading : str
        What is a reading of ours and not the book's word.
    """

    letter: str
    text: str
    measured_from: str
    why: str
    question: str = ""
    keys: tuple[str, ...] = ()
    source: str = ""
    have: Given = ""
    need: Given = ""
    most: bool = False
    exact: bool = False
    plus: Given = ""
    times: Given = ""
    reading: str = ""


@dataclass(frozen=True, slots=True)
class LessonPicture:
    """The live picture: a drawing, the design it starts from, inputs as sums of the controls."""

    draw: str
    design: str
    fixed: Mapping[str, Any] = field(default_factory=dict)
    values: Mapping[str, Given] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class LessonControl:
    """One control: from, to, step, start with a unit, or choices."""

    name: str
    label: str
    start: Given
    moves: str
    start_at: Given = ""
    end_at: Given = ""
    step: Given = ""
    unit: str = ""
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LessonTry:
    """Something to try, what is seen then, and what changes: have, need or verdict."""

    do: str
    see: str
    set: Mapping[str, Given]
    changes: str


@dataclass(frozen=True, slots=True)
class WorkedStep:
    """One step of a worked example: words, a sum, what the picture shows, and a name for the
    answer.
    """

    say: str
    sum: str = ""
    shows: tuple[str, ...] = ()
    answer: Given = ""
    name: str = ""


@dataclass(frozen=True, slots=True)
class WorkedExample:
    """Steps at one place of the controls."""

    title: str
    step: tuple[WorkedStep, ...]
    values: Mapping[str, Given] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class LessonOption:
    """One answer to choose, and what is said then."""

    say: str
    told: str
    right: bool = False


@dataclass(frozen=True, slots=True)
class LessonFault:
    """What goes wrong on site, drawn.

    Attributes
    ----------
    title, ask, told, cure : str
    draw : str
        The drawing's mark of the fault.
    options : tuple of LessonOption
    values : mapping
        Place of the controls.
    shows, solved : tuple of str
        Marks beside it, before and after somebody has found it.
    """

    title: str
    ask: str
    draw: str
    told: str
    cure: str
    options: tuple[LessonOption, ...]
    values: Mapping[str, Given] = field(default_factory=dict)
    shows: tuple[str, ...] = ("have",)
    solved: tuple[str, ...] = ("have", "need", "gap")


@dataclass(frozen=True, slots=True)
class CheckQuestion:
    """One question to check oneself."""

    ask: str
    options: tuple[LessonOption, ...]
    values: Mapping[str, Given] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class CourseLesson:
    """One lesson, in the words of one country."""

    format: int
    key: str
    number: int
    title: str
    minutes: int
    needs: tuple[str, ...]
    next: str
    aim: str
    cautions: tuple[str, ...]
    exercises: tuple[str, ...]
    rule: tuple[LessonRule, ...]
    picture: LessonPicture
    control: tuple[LessonControl, ...]
    tries: tuple[LessonTry, ...]
    worked: WorkedExample
    fault: LessonFault
    question: tuple[CheckQuestion, ...]
    verdict: Mapping[str, str]
    words: Mapping[str, str] = field(default_factory=dict)
    books: tuple[str, ...] = BOOKS

    @property
    def shows(self) -> tuple[str, ...]:
        """Marks of the live picture: all that the drawing has for the rules."""
        return (HAVE, NEED, "gap", "rule")
