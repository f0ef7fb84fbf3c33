"""One piece that is cut, its lengths counted in marks of the tape, and the lines of a set's file
that tell it. [-]
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import pi

from fireplace_calc.geometry.polygons import signed_area

Corner = tuple[int, int]
Ring = tuple[Corner, ...]


@dataclass(frozen=True, slots=True)
class Nest:
    """How flue pieces go into each other, in marks of the tape: the ring of the tongue, its height,
    depth of the socket, and the room round the tongue. [-]
    """

    tongue: int
    socket: int
    wall: int
    clearance: int


@dataclass(frozen=True, slots=True)
class CastPiece:
    """A piece, lengths in marks of the tape. [-]

    Attributes
    ----------
    mark, name, role : str
    outline, top : Ring
        At foot and at head, x to the right of the center line, y from the front.
    height : int
        Bed to bed.
    bore : tuple of int
        Clear inside, across, or left to right and front to back; empty where there is none.
    middle : Corner
        Of the bore.
    nest : Nest or None
    liner : int
        Wall of a liner cast in.
    mirror : str
        Mark that it is the other hand of.
    rows : tuple of str
        Further lines of its table.
    """

    mark: str
    name: str
    role: str
    outline: Ring
    height: int
    top: Ring = ()
    bore: tuple[int, ...] = ()
    middle: Corner = (0, 0)
    nest: Nest | None = None
    liner: int = 0
    mirror: str = ""
    rows: tuple[str, ...] = ()

    @property
    def volume(self) -> float:
        """In cubes of a mark, by the prismatoid. [-]"""
        upper = self.top or self.outline
        between = tuple(
            ((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(self.outline, upper, strict=True)
        )
        areas = [abs(signed_area(ring)) for ring in (self.outline, between, upper)]
        whole = self.height * (areas[0] + 4 * areas[1] + areas[2]) / 6
        if not self.bore:
            return whole
        whole -= self.height * self._within(0)
        if self.nest is not None:
            n = self.nest
            whole += n.tongue * (self._within(n.wall) - self._within(0))
            whole -= n.socket * (self._within(n.wall + n.clearance) - self._within(0))
        return whole

    def _within(self, more: int) -> float:
        """Area of the bore, so much wider all round. [-]"""
        sides = [side + 2 * more for side in self.bore]
        return pi * sides[0] ** 2 / 4 if len(sides) == 1 else sides[0] * sides[1]


class SetWriter:
    """Lines of a set's file, whose numbers are marks of the tape."""

    def __init__(self, metric: bool) -> None:
        self.metric = metric
        self.lines: list[str] = []

    def number(self, marks: int) -> str:
        """A length as the file has it: sixteenths as decimals of an inch, or whole mm. [-]"""
        return str(marks) if self.metric else repr(marks / 16).removesuffix(".0")

    def numbers(self, marks: Iterable[int]) -> str:
        """Some of them, in brackets. [-]"""
        return f"[{', '.join(self.number(m) for m in marks)}]"

    def ring(self, ring: Ring) -> str:
        """Corners of an outline. [-]"""
        return f"[{', '.join(self.numbers(corner) for corner in ring)}]"

    def piece(self, one: CastPiece) -> None:
        """A table for one mark."""
        put = self.lines.append
        self.lines += ["", "[[piece]]", f'mark = "{one.mark}"', f'name = "{one.name}"']
        if one.mirror:
            put(f'mirror = "{one.mirror}"')
            return
        put(f'role = "{one.role}"')
        x, y = one.middle
        if one.bore:
            put(f"at = {self.numbers(one.middle)}")
        put(f"outline = {self.ring(tuple((a - x, b - y) for a, b in one.outline))}")
        if one.top:
            put(f"top = {self.ring(tuple((a - x, b - y) for a, b in one.top))}")
        if one.bore:
            told = self.numbers(one.bore) if len(one.bore) > 1 else self.number(one.bore[0])
            put(f"bore = {told}")
        if one.liner:
            put(f"liner = {self.number(one.liner)}")
        if one.nest is not None:
            n = one.nest
            told = f"tongue = {self.number(n.tongue)}, wall = {self.number(n.wall)}"
            if n.socket:
                socket, room = self.number(n.socket), self.number(n.clearance)
                told += f", socket = {socket}, clearance = {room}"
            put(f"nest = {{ {told} }}")
        put(f"height = {self.number(one.height)}")
        self.lines += one.rows

    def lift(self, name: str, marks: Sequence[str], *rows: str) -> None:
        """A table for one lift."""
        held = ", ".join(f'"{m}"' for m in marks)
        self.lines += ["", "[[lift]]", f'name = "{name}"', f"pieces = [{held}]", *rows]


def box(left: int, right: int, front: int, back: int) -> Ring:
    """A rectangle.

    Parameters
    ----------
    left, right, front, back : int
        In marks of the tape. [-]

    Returns
    -------
    Ring
        [-]
    """
    return ((left, front), (right, front), (right, back), (left, back))


def other_hand(ring: Ring) -> Ring:
    """The same, left of the center line.

    Parameters
    ----------
    ring : Ring
        In marks of the tape. [-]

    Returns
    -------
    Ring
        [-]
    """
    return tuple((-x, y) for x, y in reversed(ring))
