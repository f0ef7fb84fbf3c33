"""Messages about what cannot be used: one sentence, on one line, of a length that can be read."""

from __future__ import annotations

from typing import Any

LONGEST_MESSAGE = 600
"""Letters of a message; of a longer one the middle is left out. [-]"""
BEYOND = 10**300
"""A whole number over this is not written out. [-]"""
LONGEST_SHOWN = 60
"""Letters of a value that is shown in a message. [-]"""


def shown(value: Any) -> str:
    """A value as it can stand in a message, whatever it is.

    >>> shown("36"), shown([1] * 100)[:12], shown(10**9999)
    ("'36'", '[1, 1, 1, 1,', 'a number beyond all bounds')
    """
    if isinstance(value, int) and abs(value) > BEYOND:
        return "a number beyond all bounds"
    cut = value[: 2 * LONGEST_SHOWN] if isinstance(value, (str, bytes)) else value
    text = _quoted(cut) if isinstance(cut, str) else repr(cut)
    return text if len(text) <= LONGEST_SHOWN else f"{text[: LONGEST_SHOWN - 3]}..."


def _quoted(text: str) -> str:
    """A text between marks that do not stand in it, so that feet and inches need no backslash."""
    if not text.isprintable() or "\\" in text:
        return repr(text)
    left, right = next(
        (pair for pair in ("''", '""', "“”") if not set(pair) & set(text)), ("«", "»")
    )
    return f"{left}{text}{right}"


def one_line(message: str) -> str:
    r"""A message without line breaks and control letters, cut in the middle where it is too long.

    >>> one_line("Opening width is 36\n37 in")
    'Opening width is 36 37 in'
    """
    half = LONGEST_MESSAGE // 2
    if len(message) > LONGEST_MESSAGE:
        message = f"{message[:half]} ... {message[-half:]}"
    return "".join(c if c.isprintable() else "?" for c in " ".join(message.split()))
