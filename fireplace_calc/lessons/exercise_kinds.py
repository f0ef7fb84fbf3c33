"""Kinds of exercise: one file a kind under ``exercises``, known by being there."""

from __future__ import annotations

from functools import lru_cache
from importlib import import_module
from pkgutil import iter_modules
from random import Random
from zlib import crc32

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError
from fireplace_calc.lessons import exercises as files
from fireplace_calc.lessons.answers.exercise_records import Exercise
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.task_maker import TaskMaker
from fireplace_calc.lessons.seeds import place_in_row, require_seed
from fireplace_calc.rules import PACKS

LEVELS = (1, 2, 3)
BOOKS = {"US IRC": "US", "Canada": "CA", "UK ADJ": "UK"}
"""Beginnings of the packs that exercises are drawn for, and the letters of their books."""
TAUGHT = tuple(name for name in PACKS if name.startswith(tuple(BOOKS)))
"""Packs that exercises are drawn for."""


@lru_cache(maxsize=1)
def known_kinds() -> dict[str, ExerciseKind]:
    """Every kind by its key, in the order of the lessons."""
    made = [
        import_module(f"{files.__name__}.{found.name}").KIND
        for found in iter_modules(files.__path__)
    ]
    return {kind.key: kind for kind in sorted(made, key=lambda kind: (kind.place, kind.key))}


def kinds_of(pack: str) -> tuple[str, ...]:
    """Kinds that a code has figures for.

    Parameters
    ----------
    pack : str
        One of ``TAUGHT``.

    Returns
    -------
    tuple of str
    """
    book = book_of(pack)
    return tuple(key for key, kind in known_kinds().items() if book in kind.branches)


def book_of(pack: str) -> str:
    """Letters of a pack's book.

    Raises
    ------
    InputError
        When no exercises are drawn for it.
    """
    if pack not in TAUGHT:
        raise InputError(
            f"Code pack is {pack!r}, but exercises are drawn for {', '.join(TAUGHT)} only.",
            "Code pack",
            ", ".join(TAUGHT),
            pack,
        )
    return next(book for start, book in BOOKS.items() if pack.startswith(start))


def exercise(
    kind: str,
    seed: int | str,
    pack: str = DEFAULT_PACK,
    level: int = 3,
    units: str = FEET_INCHES,
    place: int | None = None,
) -> Exercise:
    """One exercise; the same for the same seed.

    Parameters
    ----------
    kind : str
        One of ``kinds_of(pack)``.
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One of ``TAUGHT``.
    level : int
        1 to 3.
    units : str
        The reader's: ``feet-inches`` or ``millimetres``.
    place : int, optional
        Of the student in the class: branches go round by it, so that none comes up twice as often
        as another. Without it a whole-number seed is taken for the place. [-]

    Returns
    -------
    Exercise

    Raises
    ------
    InputError
        When there is no such kind, pack or level, the book has no such figure, or the seed is too
        long.

    Examples
    --------
    >>> [step.ask for step in exercise("hearth", 5, level=1).steps]
    ['How far must the hearth reach in front of the opening, at least?']
    """
    known, book = known_kinds(), book_of(pack)
    for name, value, allowed in (
        ("Exercise", kind, tuple(known)),
        ("Level", level, LEVELS),
        ("Units", units, SYSTEMS),
    ):
        if value not in allowed:
            listed = ", ".join(map(str, allowed))
            raise InputError(f"{name} is {value!r}, but there is {listed}.", name, listed, value)
    one = known[kind]
    if book not in one.branches:
        raise InputError(
            f"{pack} gives no figure for {one.title.lower()}: take another exercise, or another"
            " book.",
            "Exercise",
            ", ".join(kinds_of(pack)),
            kind,
        )
    told = require_seed(seed)
    branches = one.branches[book]
    at = place_in_row(told, place)
    branch = branches[(at + crc32(kind.encode())) % len(branches)]
    maker = TaskMaker(
        PACKS[pack], book, level, units, branch, Random(f"{kind}/{level}/{told}/{pack}")
    )
    story = one.draw(maker)
    steps = tuple(maker.steps)
    return Exercise(
        kind, one.lesson, one.title, seed, pack, story, tuple(maker.given), steps, maker.design,
        level, units, branch,
        maker.figure.made(maker.said, [step.key for step in steps], maker.handed),
        maker.source,
    )  # fmt: skip
