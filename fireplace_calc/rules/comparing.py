"""Holding a figure against a limit: the verdicts, and the few ways a clause compares."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import TypeAlias

from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.base.units import MM

MEETS, FALLS_SHORT, DOES_NOT_APPLY, NOT_CHECKED = (
    "meets",
    "falls short",
    "does not apply",
    "not checked",
)
WORST_FIRST = (FALLS_SHORT, NOT_CHECKED, MEETS, DOES_NOT_APPLY)


Shown: TypeAlias = float | str | None
"""What a finding shows on either side: a number, words, or nothing that anybody knows."""


@dataclass(frozen=True, slots=True)
class Compared:
    """What a rule found, before it is put into the book's unit: ``provided``, ``required``. [SI]"""

    verdict: str
    provided: Shown = None
    required: Shown = None
    note: str = ""


def printed(limit: float) -> float:
    """The whole millimetres a book prints beside a length in inches.

    Parameters
    ----------
    limit : float
        As inches give it. [m]

    Returns
    -------
    float
        To the nearest millimeter. [m]
    """
    return round(limit / MM) * MM


def reaches(value: float, limit: float) -> bool:
    """At least the limit, give or take the slack.

    Parameters
    ----------
    value, limit : float
        Of one kind. [SI]

    Returns
    -------
    bool

    Examples
    --------
    >>> reaches(36 * 0.0254 * (24 * 0.0254), 6 * 0.3048**2)
    True
    """
    return value >= limit - abs(limit) * LIMIT_SLACK


def _same(a: float, b: float) -> bool:
    return abs(a - b) <= LIMIT_SLACK * max(abs(a), abs(b))


def at_least(
    provided: float | None, limit: float | None, note: str = "", soft: bool = False
) -> Compared:
    """Provided must reach the limit; the limit itself is enough.

    Parameters
    ----------
    provided, limit : float or None
        Where one is unknown, nothing is checked. [SI]
    note : str
        A remark on the finding.
    soft : bool
        The limit is a length that the book also prints in whole millimetres: exactly that figure is
        enough too.

    Returns
    -------
    Compared
    """
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    good = reaches(provided, limit) or (soft and _same(provided, printed(limit)))
    return Compared(MEETS if good else FALLS_SHORT, provided, limit, note)


def at_most(
    provided: float | None, limit: float | None, note: str = "", soft: bool = False
) -> Compared:
    """Provided must not pass the limit; the limit itself is allowed.

    Parameters
    ----------
    provided, limit : float or None
        Where one is unknown, nothing is checked. [SI]
    note : str
        A remark on the finding.
    soft : bool
        As in ``at_least``.

    Returns
    -------
    Compared
    """
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    good = reaches(limit, provided) or (soft and _same(provided, printed(limit)))
    return Compared(MEETS if good else FALLS_SHORT, provided, limit, note)


def one_of(value: str | None, allowed: Iterable[str], note: str = "") -> Compared:
    """A word must be one of a few."""
    allowed = tuple(allowed)
    if value is None:
        return Compared(NOT_CHECKED, None, " or ".join(allowed), note)
    return Compared(MEETS if value in allowed else FALLS_SHORT, value, " or ".join(allowed), note)


def yes(value: bool | None, note: str = "") -> Compared:
    """Something must be so."""
    if value is None:
        return Compared(NOT_CHECKED, None, "yes", note)
    return Compared(MEETS if value else FALLS_SHORT, "yes" if value else "no", "yes", note)


def all_of(*compared: Compared) -> Compared:
    """Several demands of one clause: one that fails decides, else one that is not known."""
    for verdict in (FALLS_SHORT, NOT_CHECKED):
        bad = [c for c in compared if c.verdict == verdict]
        if bad:
            return bad[0]
    return Compared(
        MEETS,
        ", ".join(str(c.provided) for c in compared),
        ", ".join(str(c.required) for c in compared),
    )


def not_applicable(reason: str) -> Compared:
    """The clause is about something else, and says why."""
    return Compared(DOES_NOT_APPLY, note=reason)


def unknown(what: str) -> Compared:
    """The clause cannot be held against the design until somebody says what is missing."""
    return Compared(NOT_CHECKED, note=f"{what} is not known yet.")


def with_note(compared: Compared, note: str) -> Compared:
    """The same finding with a remark."""
    return replace(compared, note=note)
