"""Numbers to work out, drawn from a seed; every answer is read from the geometry, the facts or the
checks of a design.
"""

from __future__ import annotations

from random import Random

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.heights import draft, roof
from fireplace_calc.lessons.passages import chamber, throat
from fireplace_calc.lessons.reply import Exercise
from fireplace_calc.lessons.sizes import flue, hearth, mantel
from fireplace_calc.lessons.valid_designs import require_taught

KINDS = {
    "flue": flue,
    "roof": roof,
    "mantel": mantel,
    "hearth": hearth,
    "chamber": chamber,
    "throat": throat,
    "draft": draft,
}
"""Kinds of exercise, in the order of the lessons."""


def exercise(kind: str, seed: int | str, pack: str = DEFAULT_PACK) -> Exercise:
    """One exercise; the same for the same seed.

    Parameters
    ----------
    kind : str
        One of ``KINDS``.
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One of ``TAUGHT``.

    Returns
    -------
    Exercise

    Raises
    ------
    InputError
        When there is no such kind or pack.

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
    return KINDS[kind](seed, book, Random(f"{kind} {seed} {pack}"))


def exercises(
    seed: int | str, pack: str = DEFAULT_PACK, kinds: tuple[str, ...] = tuple(KINDS)
) -> tuple[Exercise, ...]:
    """One of every kind, for one student."""
    return tuple(exercise(kind, seed, pack) for kind in kinds)


MOST = 200
"""Students of one class. [-]"""


def seeds_of(text: str) -> tuple[int, ...]:
    """Seeds of a class, from a list of numbers and of runs.

    Raises
    ------
    InputError
        When it cannot be read, or the class is too large.

    Examples
    --------
    >>> seeds_of("1-3, 12")
    (1, 2, 3, 12)
    """
    allowed = "numbers and runs such as 1-24, 30"
    found: dict[int, None] = {}
    for part in text.replace(";", ",").split(","):
        first, dash, last = part.strip().partition("-")
        if not first.strip().isdecimal() or (dash and not last.strip().isdecimal()):
            raise InputError(
                f"Seeds are {text!r}, but {allowed} are wanted.", "Seeds", allowed, text
            )
        run = range(int(first), int(last if dash else first) + 1)
        if len(run) == 0 or len(found) + len(run) > MOST:
            raise InputError(
                f"Seeds are {text!r}, but a run goes upward and a class has 1 to {MOST} students.",
                "Seeds",
                allowed,
                text,
            )
        found |= dict.fromkeys(run)
    return tuple(found)
