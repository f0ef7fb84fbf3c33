"""Whose fireplace it is and who drew it: names out of the design, and a mark kept with the job."""

from __future__ import annotations

from base64 import b64decode, b64encode
from binascii import Error
from collections.abc import Mapping, MutableMapping
from dataclasses import dataclass

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import value_of

MARK = "paper_mark"
"""Under which word a job keeps the mark."""
OLD_WORDS = {"paper_client": "job.client", "paper_designer": "job.drawn"}
"""Words under which older jobs kept names, and the inputs that hold them now."""
LARGEST_MARK = 200_000
"""Of the file of a mark. [bytes]"""
PNG = b"\x89PNG\r\n\x1a\n"
"""How a picture of that kind begins."""


@dataclass(frozen=True, slots=True)
class Names:
    """Who stands on a paper that is handed over.

    Attributes
    ----------
    client, designer : str
        Empty where nobody has said.
    mark : bytes
        The designer's mark as a PNG; empty for initials.
    """

    client: str = ""
    designer: str = ""
    mark: bytes = b""

    @property
    def initials(self) -> str:
        """Of the designer, at most three letters.

        >>> Names(designer="Oak and Stone, masons").initials
        'OS'
        """
        words = [word for word in self.designer.split() if word[:1].isalpha()]
        return "".join(word[0] for word in words if word[0].isupper())[:3]


def names_of(design: Design, words: Mapping[str, str] | None = None) -> Names:
    """Names of a design, and the mark out of the words of its job; a mark that is no picture is
    left out.

    Parameters
    ----------
    design : Design
    words : mapping of str to str, optional
        None where there is no mark.
    """
    words = words or {}
    try:
        mark = b64decode(words.get(MARK, ""), validate=True)
    except Error:
        mark = b""
    kept = mark if mark.startswith(PNG) else b""
    return Names(design.job.client, design.job.drawn, kept)


def taken_over(words: MutableMapping[str, str], design: Design) -> dict[str, str]:
    """Names that an older job kept among its words, apart from the design; they are taken out.

    Parameters
    ----------
    words : mapping of str to str
        Of the job.
    design : Design

    Returns
    -------
    dict
        Changes that put them into the design, but for what it tells itself.
    """
    told = {key: words.pop(word, "") for word, key in OLD_WORDS.items()}
    return {key: name for key, name in told.items() if name and not value_of(design, key)}


def mark_words(content: bytes) -> str:
    """A mark as a job keeps it.

    Parameters
    ----------
    content : bytes
        Of the file.

    Raises
    ------
    InputError
        When it is no PNG, or too large.
    """
    if not content.startswith(PNG) or len(content) > LARGEST_MARK:
        raise InputError(
            f"The mark is a file of {len(content)} bytes, but a PNG of at most"
            f" {LARGEST_MARK // 1000} kB is wanted; was another kind of picture chosen?",
            "mark",
            "a PNG",
            "",
        )
    return b64encode(content).decode()
