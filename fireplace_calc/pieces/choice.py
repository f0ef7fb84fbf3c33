"""Which pieces of a set are taken: its width, its raise, its head, and how many flue pieces. [m]"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.records import PieceSet, Round, SetPiece, Shape, Tapered, Width
from fireplace_calc.pieces.shape_text import shifted


@dataclass(frozen=True, slots=True)
class Choice:
    """What a set leaves open.

    Attributes
    ----------
    width : int
        Number of one of its widths. [-]
    extensions : int
        Courses that raise the firebox. [-]
    head : str
        ``straight`` or ``segmental``.
    flues : int or None
        Flue pieces; none takes the least. [-]
    """

    width: int = 0
    extensions: int = 0
    head: str = "straight"
    flues: int | None = None


@dataclass(frozen=True, slots=True)
class ChosenLift:
    """Pieces whose tops come level, as they are to stand.

    Attributes
    ----------
    name : str
    pieces : tuple of SetPiece
    extension : bool
    """

    name: str
    pieces: tuple[SetPiece, ...]
    extension: bool = False


def extensions_of(made: PieceSet) -> int:
    """How many courses a set has to raise the firebox with. [-]"""
    return sum(lift.extension for lift in made.lifts)


def heads_of(made: PieceSet) -> tuple[str, ...]:
    """Heads that a set has a lintel for; none where its lintel is no choice."""
    return tuple(head for lift in made.lifts for head, _ in lift.heads)


def flues_of(made: PieceSet) -> tuple[int, int]:
    """Least and most flue pieces. [-]"""
    flue = _flue(made)
    return next((lift.times for lift in made.lifts if lift.name == flue), (1, 1))


def _flue(made: PieceSet) -> str:
    """Name of the lift that is set as often as wanted: the last that may be."""
    many = [lift.name for lift in made.lifts if lift.times[1] > lift.times[0]]
    return many[-1] if many else ""


def choose(made: PieceSet, choice: Choice) -> tuple[ChosenLift, ...]:
    """The lifts of a set, its choices settled.

    Parameters
    ----------
    made : PieceSet
    choice : Choice

    Returns
    -------
    tuple of ChosenLift
        From the base up.

    Raises
    ------
    InputError
        When the set has no such width, head, extension or flue.
    """
    _allow("width", choice.width, 0, len(made.widths) - 1)
    _allow("extension courses", choice.extensions, 0, extensions_of(made))
    heads, flue = heads_of(made), _flue(made)
    if heads and choice.head not in heads:
        raise InputError(
            f"Head is {choice.head}, but {made.name} comes with {' or '.join(heads)}.",
            "head",
            ", ".join(heads),
            choice.head,
        )
    least, most = flues_of(made)
    times = least if choice.flues is None else choice.flues
    _allow("flue pieces", times, least, most)
    width, out, raised = made.widths[choice.width], [], 0
    for lift in made.lifts:
        raised += lift.extension
        if lift.extension and raised > choice.extensions:
            continue
        marks = lift.marks + tuple(mark for head, mark in lift.heads if head == choice.head)
        pieces = tuple(_of_width(made, mark, width) for mark in marks)
        count = times if lift.name == flue else lift.times[0]
        names = [lift.name] if count == 1 else [f"{lift.name} {n + 1}" for n in range(count)]
        out += [ChosenLift(name, pieces, lift.extension) for name in names]
    return tuple(out)


def _allow(what: str, count: int, low: int, high: int) -> None:
    if not low <= count <= high:
        raise InputError(
            f"The set has {low} to {high} {what}, not {count}.", what, f"{low} to {high}", count
        )


def _of_width(made: PieceSet, mark: str, width: Width) -> SetPiece:
    swapped = dict(width.swaps).get(mark)
    return made.piece(swapped) if swapped else _set_out(made.piece(mark), width.shift)


@lru_cache(maxsize=512)
def _set_out(piece: SetPiece, shift: float) -> SetPiece:
    """A piece farther from the center line, where it stands on one side of it."""
    if not shift:
        return piece
    left, right = across(piece.adds)
    if left < 0 < right:
        return piece
    dx = shift if left >= 0 else -shift
    return replace(
        piece,
        adds=tuple(shifted(s, dx) for s in piece.adds),
        cuts=tuple(shifted(s, dx) for s in piece.cuts),
    )


def across(shapes: tuple[Shape, ...]) -> tuple[float, float]:
    """How far solids reach to the left and to the right. [m]"""
    ends: list[float] = []
    for s in shapes:
        if isinstance(s, Tapered):
            ends += [x for x, _ in (*s.lower, *s.upper)]
        elif isinstance(s, Round):
            ends += [s.center[0] - s.radius, s.center[0] + s.radius]
        else:
            ends += [-s.span / 2, s.span / 2]
    return min(ends), max(ends)
