"""Designs put aside: each with a number that stays, the name a reader gave it, and whether it has
been removed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from fireplace_calc.editing.file_text import HEADER

MOST_OPTIONS, MOST_REMOVED, MOST_KNOWN = 6, 8, 24
"""On the shelf, beside it to be put back, and in all that the history knows of."""
OPTION_FILE = "option-{}.toml"
_NUMBERED = re.compile(r"option-([1-9]\d{0,5})\.toml", re.ASCII)
_WORDS = {"shown": "Put aside as", "removed": "Removed; was", "undone": "Undone; was"}
_LINE = re.compile(r"^# (Put aside as|Removed; was|Undone; was): (.*)$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Option:
    """A design put aside.

    Attributes
    ----------
    number : int
        Never given to another. [-]
    name : str
        As the reader calls it.
    removed : bool
        Taken off the shelf, and can be put back.
    """

    number: int
    name: str
    removed: bool = False


Shelf = tuple[Option, ...]
"""Every option of one moment."""


def shown(shelf: Shelf) -> Shelf:
    """Those on the shelf."""
    return tuple(option for option in shelf if not option.removed)


def removed(shelf: Shelf) -> Shelf:
    """Those that can be put back."""
    return tuple(option for option in shelf if option.removed)


def number_of(file: str) -> int | None:
    """Number of an option, from the name of its file.

    >>> number_of("option-12.toml"), number_of("option-1-unreadable-1.toml")
    (12, None)
    """
    found = _NUMBERED.fullmatch(file)
    return int(found[1]) if found else None


def option_text(text: str, number: int, shelf: Shelf) -> str:
    """Text of an option's file, with its name in it.

    Parameters
    ----------
    text : str
        Of the design, as it stands there or anew.
    number : int
        Of the option. [-]
    shelf : Shelf
        Of the moment; an option that is not on it has been undone and waits.
    """
    mine: Mapping[int, Option] = {option.number: option for option in shelf}
    option, before = mine.get(number), read_option(text, number)
    state = "undone" if option is None else "removed" if option.removed else "shown"
    name = before[0].name if option is None else option.name
    line = f"# {_WORDS[state]}: {name}\n"
    if found := _LINE.search(text):
        return text[: found.start()] + line.rstrip("\n") + text[found.end() :]
    if text.startswith(HEADER):
        return HEADER + line + text.removeprefix(HEADER)
    return line + text


def read_option(text: str, number: int) -> tuple[Option, bool]:
    """The option that a file tells of, and whether it counts: one that was undone waits to be done
    again. A file without a name, from before there were any, is on the shelf under its number.

    >>> read_option("", 3)
    (Option(number=3, name='Option 3', removed=False), True)
    """
    found = _LINE.search(text)
    if not found:
        return Option(number, f"Option {number}"), True
    name = found[2].strip() or f"Option {number}"
    return Option(number, name, found[1] == _WORDS["removed"]), found[1] != _WORDS["undone"]
