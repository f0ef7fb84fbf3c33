"""Names that readers give: to a job, to an option, to what was done."""

from __future__ import annotations

import re

from fireplace_calc.base.units import InputError

LONGEST_NAME = 60
"""Letters of a name. [-]"""
BIN = "bin"
"""Folder of the jobs folder that holds what was thrown away."""
_DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)", re.ASCII)
"""Names that a Windows disk keeps for itself."""


def one_line(text: str, longest: int = LONGEST_NAME) -> str:
    r"""What a reader typed, as one line without anything that cannot be shown.

    >>> one_line(" With\n an   arch ")
    'With an arch'
    """
    whole = "".join(letter if letter.isprintable() else " " for letter in text)
    return " ".join(whole.split())[:longest].rstrip()


def as_name(text: str, of: str) -> str:
    """A name for a job or an option.

    Parameters
    ----------
    text : str
        As it was typed.
    of : str
        What gets the name, for the message.

    Returns
    -------
    str
        On one line, as much of it as a list can show.

    Raises
    ------
    InputError
        When nothing is left of it.
    """
    name = one_line(text)
    if not name:
        raise InputError(
            f"{of} has no name: type one, such as Lake house.", of, "a few words", text
        )
    return name


def folder_for(name: str, taken: frozenset[str] | set[str]) -> str:
    """Name of a folder that any disk takes, and that none of the others has.

    >>> folder_for("Lake house, 2nd try", {"lake-house-2nd-try"})
    'lake-house-2nd-try-2'
    >>> folder_for("../..", set())
    'job'
    """
    stem = re.sub(r"[^a-z0-9]+", "-", name.lower(), flags=re.ASCII).strip("-")[:40].strip("-")
    if not stem or _DEVICES.fullmatch(stem):
        stem = "-".join(filter(None, ("job", stem)))
    if stem.startswith("copy-"):
        stem = f"job-{stem}"
    made, number = stem, 1
    while made in taken or made == BIN:
        number += 1
        made = f"{stem}-{number}"
    return made
