"""A lesson in the words of a country: blocks that replace what is there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.lessons.course.records import BOOKS, COUNTRIES
from fireplace_calc.lessons.course.told_lines import Path

_HANDLES = ("letter", "name")
"""What an entry of a list goes by in a block; one without either goes by its number."""


def country_of(book: str) -> str:
    """In whose words a book's lesson is told.

    Parameters
    ----------
    book : str
        Name of a pack.

    Examples
    --------
    >>> country_of("Canada Ontario"), country_of("UK ADJ"), country_of("US IRC 2024")
    ('canadian', 'english', 'american')
    """
    starts = {"Canada": COUNTRIES[1], "UK": COUNTRIES[2]}
    return next((name for start, name in starts.items() if book.startswith(start)), COUNTRIES[0])


def home_book(country: str) -> str:
    """The book that a country's lesson opens with."""
    return BOOKS[COUNTRIES.index(country)]


def overlaid(part: Any, block: Any, path: Path, wrong: list[tuple[Path, str]]) -> Any:
    """A copy of a table with what a country's block replaces.

    Parameters
    ----------
    part : table
        As the lesson has it for everybody.
    block : table
        Of the same shape; an entry of a list goes by its letter, name or number. A list in it
        takes the place of the whole list.
    path : tuple
        Where the block stands in the file.
    wrong : list
        Takes a note for each entry that is not there to be replaced.
    """
    if isinstance(part, Mapping) and isinstance(block, Mapping):
        made = dict(part)
        for key, value in block.items():
            made[key] = overlaid(part[key], value, (*path, key), wrong) if key in part else value
        return made
    if isinstance(part, list) and isinstance(block, Mapping):
        copy = list(part)
        for key, value in block.items():
            at = _place(part, key)
            if at is None:
                wrong.append(((*path, key), f"{path[-1]} {key} is not there to be replaced."))
            else:
                copy[at] = overlaid(part[at], value, (*path, key), wrong)
        return copy
    return block


def _place(entries: list[Any], handle: str) -> int | None:
    """Which entry of a list goes by a letter, a name or a number."""
    for at, entry in enumerate(entries):
        if isinstance(entry, Mapping) and handle in [entry.get(name) for name in _HANDLES]:
            return at
    number = int(handle) - 1 if handle.isdigit() else -1
    return number if 0 <= number < len(entries) else None
