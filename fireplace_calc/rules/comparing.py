"""Holding a figure against a limit: the verdicts, and the few ways a clause compares."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import floor
from typing import TypeAlias

from fireplace_calc.base.tolerances import LIMIT_SLACK, ROUNDING
from fireplace_calc.base.units import FOOT, INCH, MM

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
    missing: tuple[str, ...] = ()
    """Unknown inputs it waits for, by dotted key; of a code's rule ``tracing`` finds them out."""


class Printed(float):
    """A length as a book of inches prints it, with the millimetres it prints beside. [m]

    A length told as exactly those millimetres counts as the limit itself, wherever the two meet:
    in a limit and in a condition that picks one.
    """

    __slots__ = ("metric",)

    metric: tuple[float, ...]
    """To the nearest millimeter; under an inch books also print the nearest tenth. [m]"""

    def __new__(cls, limit: float) -> Printed:
        """Read it from the length that inches give. [m]"""
        made = super().__new__(cls, limit)
        whole, tenth = (floor(limit / step + 0.5 + ROUNDING) * step for step in (MM, MM / 10))
        made.metric = (whole,) if limit >= INCH else (whole, tenth)
        return made


def inches(number: float) -> Printed:
    """A limit as a book prints it.

    Parameters
    ----------
    number : float
        How many. [-]

    Returns
    -------
    Printed
        [m]

    Examples
    --------
    >>> inches(6).metric
    (0.152,)
    >>> [round(size, 4) for size in inches(1 / 4).metric]
    [0.006, 0.0064]
    """
    return Printed(number * INCH)


def feet(number: float) -> Printed:
    """A limit as a book prints it.

    Parameters
    ----------
    number : float
        How many. [-]

    Returns
    -------
    Printed
        [m]

    Examples
    --------
    >>> feet(2).metric
    (0.61,)
    """
    return Printed(number * FOOT)


def reaches(value: float, limit: float) -> bool:
    """At least the limit, give or take the slack. Either side may be the one that a book prints: to
    ask for no more than a limit, ask whether the limit reaches the value.

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
    >>> reaches(0.406, inches(16)), reaches(inches(6), 0.1525)
    (True, False)
    """
    return value >= limit - abs(limit) * LIMIT_SLACK or same(value, limit)


def exceeds(value: float, limit: float) -> bool:
    """More than the limit: neither the limit itself nor what counts as the limit.

    Parameters
    ----------
    value, limit : float
        Of one kind. [SI]

    Returns
    -------
    bool
    """
    return not reaches(limit, value)


def same(a: float, b: float) -> bool:
    """Equal, give or take the slack, or one the millimetres printed beside the other.

    Parameters
    ----------
    a, b : float
        Of one kind. [SI]

    Returns
    -------
    bool
    """
    return _close(a, b) or _beside(a, b) or _beside(b, a)


def _beside(limit: float, value: float) -> bool:
    """Whether a value is the millimetres printed beside a limit."""
    return isinstance(limit, Printed) and True in [_close(size, value) for size in limit.metric]


def _close(a: float, b: float) -> bool:
    return abs(a - b) <= LIMIT_SLACK * max(abs(a), abs(b))


def at_least(provided: float | None, limit: float | None, note: str = "") -> Compared:
    """Provided must reach the limit; the limit itself is enough.

    Parameters
    ----------
    provided, limit : float or None
        Where one is unknown, nothing is checked. [SI]
    note : str
        A remark on the finding.

    Returns
    -------
    Compared
    """
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    return Compared(MEETS if reaches(provided, limit) else FALLS_SHORT, provided, limit, note)


def at_most(provided: float | None, limit: float | None, note: str = "") -> Compared:
    """Provided must not pass the limit; the limit itself is allowed.

    Parameters
    ----------
    provided, limit : float or None
        Where one is unknown, nothing is checked. [SI]
    note : str
        A remark on the finding.

    Returns
    -------
    Compared
    """
    if provided is None or limit is None:
        return Compared(NOT_CHECKED, provided, limit, note)
    return Compared(MEETS if reaches(limit, provided) else FALLS_SHORT, provided, limit, note)


def nearest(
    distances: Sequence[float | None],
    limit: float,
    absent: str,
    perhaps: Sequence[float | None] = (),
) -> Compared:
    """The nearest of several things keeps its distance.

    Parameters
    ----------
    distances : sequence
        Of the things the clause is about; none for one that nobody has measured. [m]
    limit : float
        [m]
    absent : str
        Said where there is no such thing.
    perhaps : sequence
        Of things of which nobody knows whether the clause is about them. [m]

    Returns
    -------
    Compared
    """
    everything = [*distances, *perhaps]
    if not everything:
        return not_applicable(absent)
    sure = [d for d in distances if d is not None]
    found = at_least(min(sure, default=None), limit)
    if found.verdict == FALLS_SHORT:
        return found
    known = [d for d in everything if d is not None]
    if len(known) < len(everything) or not reaches(min(known), limit):
        return Compared(NOT_CHECKED, None, limit, "Size or place of a piece is not known yet.")
    return at_least(min(known), limit)


def one_of(value: str | None, allowed: Iterable[str], ask: str = "") -> Compared:
    """A word must be one of a few; ``ask`` is said only where nobody has told it."""
    allowed = tuple(allowed)
    if value is None:
        return Compared(NOT_CHECKED, None, " or ".join(allowed), ask)
    return Compared(MEETS if value in allowed else FALLS_SHORT, value, " or ".join(allowed))


def yes(value: bool | None, note: str = "", ask: str = "") -> Compared:
    """Something must be so; ``ask`` is said only where nobody has told it."""
    if value is None:
        return Compared(NOT_CHECKED, None, "yes", ask or note)
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


def unknown(what: str, *missing: str) -> Compared:
    """The clause cannot be held against the design until somebody says what is missing, in the
    inputs of these keys.
    """
    return Compared(NOT_CHECKED, note=f"{what} is not known yet.", missing=missing)


def with_note(compared: Compared, note: str) -> Compared:
    """The same finding with a remark."""
    return replace(compared, note=note)
