"""Seeds: what tells one student's exercise from the next one's, and the seeds of a whole class."""

from __future__ import annotations

from zlib import crc32

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError

MOST = 200
"""Students of one class. [-]"""
LONGEST_SEED = 60
"""Letters or digits of a seed; it stands on every sheet. [-]"""
LONGEST_NUMBER = 9
"""Digits of a seed in the list of a class. [-]"""


def require_seed(seed: int | str) -> str:
    """A seed as text, as it is drawn from and printed.

    Raises
    ------
    InputError
        When it is no whole number and no line of text, or too long to be printed.

    Examples
    --------
    >>> require_seed(7), require_seed("Tuesday")
    ('7', 'Tuesday')
    """
    whole = isinstance(seed, int) and not isinstance(seed, bool) and abs(seed) < 10**LONGEST_SEED
    text = str(seed) if whole or isinstance(seed, str) else ""
    if not 0 < len(text) <= LONGEST_SEED + 1 or not text.isprintable():
        allowed = f"a whole number or a line of text, up to {LONGEST_SEED} letters"
        raise InputError(f"Seed is {shown(seed)}, but {allowed} is wanted.", "Seed", allowed, seed)
    return text


def place_in_row(seed: str, place: int | None = None) -> int:
    """Place that branches and faults go round by; without one, a whole-number seed is it. [-]

    >>> place_in_row("7"), place_in_row("Ann", 3)
    (7, 3)
    """
    if place is not None:
        return place
    return int(seed) if seed.isdecimal() else crc32(seed.encode())


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
    allowed = f"numbers of up to {LONGEST_NUMBER} digits and runs such as 1-24, 30"
    said = f"Seeds are {shown(text)}, but"
    found: dict[int, None] = {}
    for part in text.replace(";", ",").split(","):
        first, dash, last = part.strip().partition("-")
        ends = (first.strip(), last.strip() if dash else first.strip())
        if not all(end.isdecimal() and len(end) <= LONGEST_NUMBER for end in ends):
            raise InputError(f"{said} {allowed} are wanted.", "Seeds", allowed, text)
        run = range(int(ends[0]), int(ends[1]) + 1)
        if len(run) == 0 or len(found) + len(run) > MOST:
            raise InputError(
                f"{said} a run goes upward and a class has 1 to {MOST} students.",
                "Seeds",
                allowed,
                text,
            )
        found |= dict.fromkeys(run)
    return tuple(found)
