"""What somebody did, in a few words: the name of a step in the history of a job."""

from __future__ import annotations

from fireplace_calc.design.records import Design
from fireplace_calc.report.alternatives import differences

MOST = 2
"""Inputs that are named; the rest are counted. [-]"""
LONGEST = 100
"""Letters of a step. [-]"""


def step_words(before: Design, after: Design, units: str) -> str:
    r"""What was done between two designs.

    Parameters
    ----------
    before, after : Design
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str

    Examples
    --------
    >>> from fireplace_calc.editing.changes import change
    >>> step_words(Design(), change(Design(), {"opening.width": "42 in"}), "feet-inches")
    'Opening width 3\'-6"'
    """
    said = list(differences(before, after, units))
    if before.name != after.name:
        said.insert(0, f"Name {after.name}")
    if before.note != after.note:
        said.append("Note")
    if not said:
        told = len(after.told - before.told)
        return f"Confirmed: {told} input{'s' * (told != 1)}" if told else "Told otherwise"
    more = len(said) - MOST
    words = ", ".join(said[:MOST]) + (f" and {more} more" if more > 0 else "")
    return words if len(words) <= LONGEST else f"{words[: LONGEST - 3].rstrip()}..."
