"""A lesson in the words of a country: blocks that replace texts, and words that differ."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Any

from fireplace_calc.base.tables import rows
from fireplace_calc.lessons.course.records import BOOKS, COUNTRIES
from fireplace_calc.lessons.course.told_lines import Path

_WORD = re.compile(r"\{w:([^{}]*)\}")
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


@cache
def _words() -> dict[str, dict[str, str]]:
    return {row["key"]: row for row in rows("lesson_words.csv")}


def in_words(part: Any, country: str, wrong: list[tuple[Path, str]], path: Path = ()) -> Any:
    """A copy of a table in which every ``{w:word}`` is a country's own word.

    Parameters
    ----------
    part : table, list or text
    country : str
        One of ``COUNTRIES``.
    wrong : list
        Takes a note for each word that ``data/lesson_words.csv`` lacks.
    path : tuple
        Where it stands in the file.
    """
    if isinstance(part, Mapping):
        return {key: in_words(each, country, wrong, (*path, key)) for key, each in part.items()}
    if isinstance(part, list):
        return [in_words(each, country, wrong, (*path, k)) for k, each in enumerate(part)]
    if not isinstance(part, str):
        return part

    def word(found: re.Match[str]) -> str:
        row = _words().get(found[1])
        if row is None:
            wrong.append((path, f"{{w:{found[1]}}} is no row of lesson_words.csv."))
            return found[1]
        return row[country]

    return _WORD.sub(word, part)


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
