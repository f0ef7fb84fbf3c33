"""What a form is that a tape can measure: the lengths it asks for, and where each of them runs.

Values come by letter, in the sheet's unit, x to the right and y to the back from the piece's own
left front corner. What may be left empty is not among them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.typed import Corner

Values = Mapping[str, Any]
"""Lengths by letter, and corners where a form asks for them. [in or mm]"""
Ring = list[Corner]


@dataclass(frozen=True, slots=True)
class Dim:
    """One length that a form asks for.

    Attributes
    ----------
    key : str
        Its letter on the drawing.
    name : str
    typical : Fraction
        What is drawn while nothing is typed; in inches, invented.
    optional : bool
        May stay empty.
    corners : bool
        Asks for an outline, not for one length.
    """

    key: str
    name: str
    typical: Fraction = Fraction(0)
    optional: bool = False
    corners: bool = False


@dataclass(frozen=True, slots=True)
class Span:
    """Where a length runs on the drawing.

    Attributes
    ----------
    key : str
        Letter.
    view : str
        ``plan``, ``front`` or ``side``.
    edge : str
        Edge of the view it is written at: ``below``, ``above``, ``left`` or ``right``.
    low, high : Fraction
        From where to where along that edge, from the piece's left front corner or its bed.
        [in or mm]
    """

    key: str
    view: str
    edge: str
    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Shaped:
    """A piece as its form makes it.

    Attributes
    ----------
    table : dict
        Fields of the set's file but for its place, lengths as fractions. [in or mm]
    left, front : Fraction
        Of the piece's left front corner, from the corner that its outline is measured from.
        [in or mm]
    width : Fraction
        Over all. [in or mm]
    spans : tuple of Span
    """

    table: dict[str, Any]
    left: Fraction
    front: Fraction
    width: Fraction
    spans: tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class Form:
    """A form: its name, the lengths it asks for, and how they make a piece."""

    name: str
    dims: tuple[Dim, ...]
    shape: Callable[[Values], Shaped]

    def dim(self, key: str) -> Dim | None:
        """The length of a letter; none where the form does not ask for it."""
        return next((d for d in self.dims if d.key == key), None)


def less(v: Values, key: str, than: Fraction, name: str, what: str) -> None:
    """Refuse a length that is not less than another.

    Raises
    ------
    InputError
        Named by its letter.
    """
    if v[key] >= than:
        wanted = f"less than {what}"
        raise InputError(f"{key}, the {name}, is not {wanted}.", key, wanted, str(v[key]))


def no_more(v: Values, key: str, than: Fraction, name: str, what: str) -> None:
    """Refuse a length that is more than another.

    Raises
    ------
    InputError
        Named by its letter.
    """
    if v[key] > than:
        wanted = f"at most {what}"
        raise InputError(f"{key}, the {name}, is more than {what}.", key, wanted, str(v[key]))


def rectangle(left: Fraction, front: Fraction, right: Fraction, back: Fraction) -> Ring:
    """Four corners, from the left front one. [in or mm]"""
    return [(left, front), (right, front), (right, back), (left, back)]


NOUGHT = Fraction(0)
BLOCK = (
    Dim("A", "width", Fraction(24)),
    Dim("B", "depth", Fraction(12)),
    Dim("C", "height", Fraction(8)),
)


def whole(v: Values) -> tuple[Span, ...]:
    """Width, depth and height over all, in every form that has them as A, B and C."""
    return (
        Span("A", "plan", "below", NOUGHT, v["A"]),
        Span("B", "plan", "left", NOUGHT, v["B"]),
        Span("C", "front", "left", NOUGHT, v["C"]),
    )


def made(v: Values, ring: Ring, spans: tuple[Span, ...] = (), **more: Any) -> Shaped:
    """A piece of one outline, from its left front corner."""
    table = {"outline": ring, "height": v["C"], **more}
    return Shaped(table, NOUGHT, NOUGHT, max(x for x, _ in ring), (*whole(v), *spans))
