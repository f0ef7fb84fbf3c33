"""The roster of a class: names or numbers, each once, each with a place that it keeps."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError
from fireplace_calc.editing.jobs.names import LONGEST_KEPT, LONGEST_NAME, one_line
from fireplace_calc.lessons.seeds import MOST, seeds_of

NUMBERS = frozenset("0123456789-,; ")
"""What a line of numbers and runs is made of."""


def same_name(name: str) -> str:
    """A name as two are compared: capitals, blanks and the way an accent is typed do not count.

    >>> same_name("Zoë  Brown") == same_name("ZOE\N{COMBINING DIAERESIS} brown")
    True
    """
    return unicodedata.normalize("NFKC", one_line(name, LONGEST_KEPT)).casefold()


def student_name(text: str) -> str:
    """A student's name or number as it is kept and printed.

    Raises
    ------
    InputError
        When nothing is left of it, or it is too long.
    """
    name = unicodedata.normalize("NFC", one_line(text, LONGEST_KEPT))
    if not name or len(name) > LONGEST_NAME:
        allowed = f"a name or a number, up to {LONGEST_NAME} letters"
        raise InputError(f"Name is {shown(text)}, but {allowed} is wanted.", "Name", allowed, text)
    return name


def roster_of(text: str) -> tuple[str, ...]:
    """Names of a class, one a line; a line of numbers may hold runs.

    Raises
    ------
    InputError
        When there is nobody, somebody stands there twice, or the class is too large.

    Examples
    --------
    >>> roster_of("Ann Lee; Bo Ray"), roster_of("1-3, 7")
    (('Ann Lee', 'Bo Ray'), ('1', '2', '3', '7'))
    """
    names: dict[str, str] = {}
    for line in filter(None, map(str.strip, text.splitlines())):
        numbers = set(line) <= NUMBERS
        parts = map(str, seeds_of(line)) if numbers else filter(str.strip, line.split(";"))
        for name in map(student_name, parts):
            if (known := names.get(same_name(name))) is not None:
                raise InputError(
                    f"{name} stands on the roster twice ({known}, {name}): add a second name or a"
                    " number to one of them.",
                    "Roster",
                    "every name once",
                    text,
                )
            names[same_name(name)] = name
    if not 0 < len(names) <= MOST:
        raise InputError(
            f"The roster has {len(names)} names, but a class has 1 to {MOST} students.",
            "Roster",
            f"1 to {MOST} names",
            text,
        )
    return tuple(names.values())


def placed(names: tuple[str, ...], before: Mapping[str, int]) -> dict[str, int]:
    """Every student's place; whoever had one keeps it, so that a ticket once handed out stays good.

    Parameters
    ----------
    names : tuple of str
    before : mapping of str to int
        Places given so far, also to those who have left.

    Returns
    -------
    dict of str to int

    Examples
    --------
    >>> placed(("Ann", "Cy", "Bo"), {"Bo": 1, "Ann": 2})
    {'Ann': 2, 'Cy': 3, 'Bo': 1}
    """
    known = {same_name(name): place for name, place in before.items()}
    following = max(known.values(), default=0)
    made = {}
    for name in names:
        if (place := known.get(same_name(name))) is None:
            place = following = following + 1
        made[name] = place
    return made
