"""What a class is set, and who is in it."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from functools import cached_property

from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.answers.exercise_records import Exercise
from fireplace_calc.lessons.classroom.tickets import place_of, seed_of, ticket_of
from fireplace_calc.lessons.exercise_kinds import exercise, kinds_of
from fireplace_calc.lessons.fault_hunt.planting import latest_edition, offered
from fireplace_calc.lessons.fault_hunt.search_of_class import SEARCH, search_exercise
from fireplace_calc.lessons.valid_designs import SEARCHED
from fireplace_calc.report.sentences import require_units

MOST_EXERCISES = 12
"""Of one student. [-]"""
LEVELS = {1: "One step", 2: "Two or three steps", 3: "The whole job"}
"""Of an exercise."""
HELPS = {
    "none": "Right or not yet, nothing else",
    "hints": "Reasons and hints",
    "working": "Reasons, hints and the full working",
}
"""How far a student's page helps."""


def _require(name: str, value: object, allowed: tuple[object, ...]) -> None:
    if value not in allowed:
        said = ", ".join(map(str, allowed))
        raise InputError(f"{name} is {value!r}, but {said} is allowed.", name, said, value)


def topics_of(pack: str) -> tuple[str, ...]:
    """Topics that a class can be set in a code: its kinds of exercise, and the search for faults.

    >>> topics_of("UK ADJ")[-1]
    'faults'
    """
    return (*kinds_of(pack), *([SEARCH] if pack in SEARCHED else []))


@dataclass(frozen=True)
class ClassTask:
    """What every student of a class is set; nothing in it is secret.

    Attributes
    ----------
    title : str
        What the class is called.
    key : str
        Tells one class from the next.
    kinds : tuple of str
        Of exercise, in their order; some of ``topics_of``.
    count : int
        Exercises a student. [-]
    level : int
        1 to 3. [-]
    pack, units : str
        Code and unit system.
    helps : str
        One of ``HELPS``.
    made_by : str
        Name and version of the program that set it.
    edition : int
        Of the list of faults and how they are dealt: it stays what it was when the class was set.
        [-]
    """

    title: str
    key: str
    kinds: tuple[str, ...]
    count: int
    level: int
    pack: str
    units: str
    helps: str
    made_by: str
    edition: int = field(default_factory=latest_edition)

    def __post_init__(self) -> None:
        require_units(self.units)
        for kind in self.kinds or ("",):
            _require("Topic", kind, topics_of(self.pack))
        offered(self.edition)
        _require("Help", self.helps, tuple(HELPS))
        _require("Level", self.level, tuple(LEVELS))
        _require("Exercises a student", self.count, tuple(range(1, MOST_EXERCISES + 1)))

    @property
    def parts(self) -> tuple[tuple[str, int], ...]:
        """Kind of every exercise, and which of its kind it is; the kinds take turns."""
        many = len(self.kinds)
        return tuple((self.kinds[n % many], n // many + 1) for n in range(self.count))

    def draw(self, seed: str, number: int) -> Exercise:
        """One exercise of one student; the number counts from 1. [-]"""
        kind, which = self.parts[number - 1]
        own, place, told = f"{seed}.{which}", place_of(seed) + which, (self.level, self.units)
        if kind == SEARCH:
            return search_exercise(own, self.pack, *told, self.edition, place, self.key)
        return exercise(kind, own, self.pack, *told, place)

    def draw_all(self, seed: str) -> tuple[Exercise, ...]:
        """Every exercise of one student."""
        return tuple(self.draw(seed, number) for number in range(1, self.count + 1))


@dataclass(frozen=True)
class SchoolClass:
    """A class as its trainer keeps it.

    Attributes
    ----------
    task : ClassTask
    secret : str
        The students' tickets are worked out of it; it stays in the trainer's folder.
    places : dict of str to int
        Every student, in the order of the roster, and the place he keeps.
    left : dict of str to int
        Those who have left, so that nobody else is given their places.
    """

    task: ClassTask
    secret: str = field(repr=False)
    places: dict[str, int]
    left: dict[str, int]

    @cached_property
    def tickets(self) -> dict[str, str]:
        """Every student's ticket, in the order of the roster."""
        return {name: ticket_of(self.secret, name, at) for name, at in self.places.items()}

    def seed(self, name: str) -> str:
        """What one student's exercises are drawn from."""
        return seed_of(self.tickets[name], name)


def figures_digest(drawn: Exercise, answers: bool) -> str:
    """What an exercise's figures come to, however they are worded.

    Parameters
    ----------
    drawn : Exercise
    answers : bool
        Whether the answers count in, as on paper; a student's own files say nothing of them.

    Examples
    --------
    >>> figures_digest(exercise("hearth", 5), True) == figures_digest(exercise("hearth", 6), True)
    False
    """
    told = [drawn.kind, drawn.pack]
    told += [g.value if isinstance(g.value, str) else f"{g.value:.9g}" for g in drawn.given]
    told += [step.kind + (f" {step.expected:.9g}" if answers else "") for step in drawn.steps]
    return hashlib.sha256("\n".join(told).encode()).hexdigest()[:8]


def class_digest(digests: tuple[str, ...]) -> str:
    """What the exercises of a whole class come to, for the foot of every sheet and of the key."""
    return hashlib.sha256(" ".join(digests).encode()).hexdigest()[:8]
