"""Numbers to work out, drawn from a seed; every answer is read from the geometry, the facts or the
checks of a design.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.lessons.exercises.heights import draft, roof
from fireplace_calc.lessons.exercises.mantels import hearth, mantel
from fireplace_calc.lessons.exercises.passages import chamber, throat
from fireplace_calc.lessons.exercises.sizes import flue
from fireplace_calc.lessons.exercises.walls import wood
from fireplace_calc.lessons.reply import Exercise
from fireplace_calc.lessons.seeds import require_seed
from fireplace_calc.lessons.valid_designs import require_taught

KINDS = {
    "flue": flue,
    "roof": roof,
    "mantel": mantel,
    "hearth": hearth,
    "chamber": chamber,
    "throat": throat,
    "wood": wood,
    "draft": draft,
}
"""Kinds of exercise, in the order of the lessons."""


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
        One of ``KINDS``.
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One of ``TAUGHT``.
    level : int
        1 to 3.
    units : str
        The reader's: ``feet-inches`` or ``millimetres``.
    place : int, optional
        Of the student in the class: branches go round by it. Else the seed decides. [-]

    Returns
    -------
    Exercise

    Raises
    ------
    InputError
        When there is no such kind or pack, or the seed is too long.

    Examples
    --------
    >>> [step.prompt for step in exercise("hearth", 5).steps][0]
    'Clear area of the opening'
    """
    if kind not in KINDS:
        raise InputError(
            f"Exercise is {kind!r}, but there are only {', '.join(KINDS)}.",
            "Exercise",
            ", ".join(KINDS),
            kind,
        )
    book = require_taught(pack)
    drawn = KINDS[kind](seed, book, Random(f"{kind} {require_seed(seed)} {pack}"))
    return replace(drawn, level=level, units=units)


def exercises(
    seed: int | str, pack: str = DEFAULT_PACK, kinds: tuple[str, ...] = tuple(KINDS)
) -> tuple[Exercise, ...]:
    """One of every kind, for one student."""
    return tuple(exercise(kind, seed, pack) for kind in kinds)
