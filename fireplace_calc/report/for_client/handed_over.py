"""Whose fireplace it is and who drew it: names and a mark, kept with the job."""

from __future__ import annotations

from base64 import b64decode, b64encode
from binascii import Error
from collections.abc import Mapping
from dataclasses import dataclass

from fireplace_calc.base.units import InputError

CLIENT, DESIGNER, MARK = "paper_client", "paper_designer", "paper_mark"
"""Under which words a job keeps them."""
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


def names_in(words: Mapping[str, str]) -> Names:
    """Names and mark out of the words of a job; a mark that is no picture is left out.

    Parameters
    ----------
    words : mapping of str to str
    """
    try:
        mark = b64decode(words.get(MARK, ""), validate=True)
    except Error:
        mark = b""
    kept = mark if mark.startswith(PNG) else b""
    return Names(words.get(CLIENT, ""), words.get(DESIGNER, ""), kept)


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
