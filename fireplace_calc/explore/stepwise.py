"""Work done step by step, for whoever shows how far it is, or all at once."""

from __future__ import annotations

from collections.abc import Generator
from typing import TypeAlias, TypeVar

Result = TypeVar("Result")
Steps: TypeAlias = Generator[tuple[int, int, str], None, Result]
"""How much is done, of how much, and what comes next; then what was found."""


def finished(steps: Steps[Result]) -> Result:
    """What comes out of work at its end.

    Parameters
    ----------
    steps : generator
        How far it is, of how far, and what comes next. [-]

    Returns
    -------
    object
        Of whatever kind. [-]
    """
    while True:
        try:
            next(steps)
        except StopIteration as done:
            result: Result = done.value
            return result
