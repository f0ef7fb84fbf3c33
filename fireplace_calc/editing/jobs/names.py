"""Names that readers give: to a job, to an option, to what was done."""

from __future__ import annotations

import re
import unicodedata

from fireplace_calc.base.units import InputError

LONGEST_NAME = 60
"""Letters of a name. [-]"""
LONGEST_KEPT = 200
"""Letters by which two names are told apart. [-]"""
LONGEST_FOLDER = 120
"""Bytes of a folder's name in any script; a disk takes 255, some take 143. [-]"""
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


def plain(name: str, usual: str) -> str:
    """A name as any disk takes it: small letters, digits and hyphens, 46 of them at most.

    Parameters
    ----------
    name : str
        In any letters.
    usual : str
        What it is called where nothing is left of it, or only what a disk keeps for itself.

    Returns
    -------
    str

    Examples
    --------
    >>> plain("Häuschen am See!", "job"), plain("小屋", "job"), plain("CON", "job")
    ('hauschen-am-see', 'job', 'job-con')
    """
    bare = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    stem = re.sub(r"[^a-z0-9]+", "-", bare).strip("-")[:40].strip("-")
    if not stem or _DEVICES.fullmatch(stem):
        stem = "-".join(filter(None, (usual, stem)))
    return stem


def file_stem(name: str, words: dict[str, str]) -> str:
    """How the files of a design of that name begin. Another name that comes to the same gets a
    number, so that neither writes over the other's.

    Parameters
    ----------
    name : str
    words : dict
        Words that are kept with the job; which name has which beginning is kept among them.

    Examples
    --------
    >>> words = {}
    >>> file_stem("Hut!", words), file_stem("Hut?", words), file_stem("Hut!", words)
    ('hut', 'hut-2', 'hut')
    """
    name = one_line(name, LONGEST_KEPT)
    begun = plain(name, "fireplace")
    stem, number = begun, 1
    while words.setdefault(f"files-{stem}", name) != name:
        number += 1
        stem = f"{begun}-{number}"
    return stem


def folder_for(name: str, taken: frozenset[str] | set[str]) -> str:
    """Name of a folder that any disk takes, and that none of the others has.

    >>> folder_for("Lake house, 2nd try", {"lake-house-2nd-try"})
    'lake-house-2nd-try-2'
    >>> folder_for("../..", set())
    'job'
    """
    stem = plain(name, "job")
    if stem.startswith("copy-"):
        stem = f"job-{stem}"
    made, number = stem, 1
    while made in taken or made == BIN:
        number += 1
        made = f"{stem}-{number}"
    return made


def in_any_letters(name: str, taken: set[str], usual: str) -> str:
    """Name of a folder that keeps the letters of any script, and that none of the others has.

    Parameters
    ----------
    name : str
        As somebody calls himself.
    taken : set of str
        Names that are given, in small letters.
    usual : str
        What it is called where nothing is left of it, or only what a disk keeps for itself.

    Returns
    -------
    str
        Small letters, digits and hyphens; no more than any disk takes.

    Examples
    --------
    >>> in_any_letters("Zoë O'Shea", set(), "student"), in_any_letters("../..", set(), "student")
    ('zoë-o-shea', 'student')
    >>> in_any_letters("小屋", {"小屋"}, "student"), in_any_letters("NUL", set(), "student")
    ('小屋-2', 'student-nul')
    """
    letters = unicodedata.normalize("NFC", name.casefold())
    words = "".join(letter if letter.isalnum() else " " for letter in letters).split()
    stem = "-".join(words)[:40]
    while len(stem.encode()) > LONGEST_FOLDER:
        stem = stem[:-1]
    stem = stem.strip("-")
    if not stem or _DEVICES.fullmatch(stem):
        stem = "-".join(filter(None, (usual, stem)))
    made, number = stem, 1
    while made in taken:
        number += 1
        made = f"{stem}-{number}"
    return made
