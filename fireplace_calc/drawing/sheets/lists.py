"""Words and tables on paper: text that wraps, rows that go on over the page, boxes to tick."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.drawing.sheets.lettering import fitting, in_rows, unbroken, width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE

PITCH, GAP = 4.1, 1.5
"""From line to line, and between rows. [mm]"""


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its heading, its share of the width [-], and which way it is set."""

    heading: str
    share: float
    ha: str = "left"


@dataclass(frozen=True, slots=True)
class Table:
    """A heading, and rows of words under columns; ``tick`` puts an empty box before each row."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    tick: bool = False
    before: str = ""


@lru_cache(maxsize=8192)
def _wide(word: str, bold: bool) -> float:
    return width(word, SMALL, bold)


@lru_cache(maxsize=4096)
def wrapped(text: str, room: float, bold: bool = False) -> tuple[str, ...]:
    """Lines of a text that fit a width.

    Parameters
    ----------
    text : str
    room : float
        [mm]
    bold : bool

    Returns
    -------
    tuple of str
        At least one; a word too long for the width is broken.
    """
    lines: list[str] = []
    line: list[str] = []
    used, space = 0.0, _wide(" ", bold)
    for whole in unbroken(" ".join(text.split())):
        word = whole
        while _wide(word, bold) > room and len(word) > 1:
            cut = max(fitting(word, room, SMALL, bold), 1)
            if line:
                lines.append(" ".join(line))
                line, used = [], 0.0
            lines.append(word[:cut])
            word = word[cut:]
        long = _wide(word, bold)
        if line and used + space + long > room:
            lines.append(" ".join(line))
            line, used = [], 0.0
        used += long + (space if line else 0.0)
        line.append(word)
    return tuple([*lines, " ".join(line)] if line else lines or [""])


class TextFlow:
    """Fills one sheet after another from the top; ``sheets`` are the ones begun."""

    def __init__(self, width: float, height: float, cell: Cell) -> None:
        self.size, self.cell, self.y = (width, height), cell, 0.0
        self.sheets: list[Sheet] = []
        self._next()

    def _next(self) -> None:
        self.sheets.append(Sheet(*self.size))
        self.y = self.cell.top - 4.0

    @property
    def sheet(self) -> Sheet:
        """The one that is being filled."""
        return self.sheets[-1]

    def room(self, high: float) -> None:
        """Begin a new sheet unless so much is left. [mm]"""
        if self.y - high < self.cell.bottom + 2.0:
            self._next()

    def heading(self, text: str) -> None:
        """A title over what follows, never alone at the foot of a sheet."""
        rows = in_rows(text, self.cell.right - self.cell.left - 6, TITLE, True)
        self.room(24.0 + (len(rows) - 1) * (TITLE + 1.6))
        self.y -= TITLE + 1.0
        for n, row in enumerate(rows):
            self.y -= n and TITLE + 1.6
            self.sheet.text(self.cell.left + 3, self.y, row, size=TITLE, ha="left", bold=True)
        self.y -= 2.5

    def words(self, text: str, indent: float = 0.0, bold: bool = False) -> None:
        """A paragraph."""
        for line in wrapped(text, self.cell.right - self.cell.left - 6 - indent, bold):
            self.room(PITCH)
            self.y -= PITCH
            self.sheet.text(
                self.cell.left + 3 + indent, self.y, line, size=SMALL, ha="left", bold=bold
            )
        self.y -= GAP

    def table(self, table: Table) -> None:
        """Rows under their headings; the headings come again on every sheet."""
        self.heading(table.title)
        if table.before:
            self.words(table.before)
        left, right = self.cell.left + 3 + (5.5 if table.tick else 0.0), self.cell.right - 3
        edges = _edges(table.columns, left, right)
        self._headings(table, edges)
        for row in table.rows:
            lines = [wrapped(text, edges[k + 1] - edges[k] - 2.0) for k, text in enumerate(row)]
            high = PITCH * max(map(len, lines)) + GAP
            if self.y - high < self.cell.bottom + 2.0:
                self._next()
                self._headings(table, edges)
            for k, (column, cell) in enumerate(zip(table.columns, lines, strict=True)):
                x = edges[k] if column.ha == "left" else edges[k + 1] - 2.0
                for n, line in enumerate(cell, 1):
                    if line:
                        self.sheet.text(x, self.y - n * PITCH, line, size=SMALL, ha=column.ha)
            if table.tick:
                x, y = self.cell.left + 3, self.y - PITCH
                self.sheet.line(
                    [(x, y - 0.3), (x + 3, y - 0.3), (x + 3, y + 2.7), (x, y + 2.7)],
                    "seen",
                    closed=True,
                )
            self.y -= high
            self.sheet.line([(left, self.y + 0.15), (right, self.y + 0.15)], "fine")
        self.y -= 3.0

    def _headings(self, table: Table, edges: Sequence[float]) -> None:
        lines = [
            wrapped(column.heading, edges[k + 1] - edges[k] - 2.0, True)
            for k, column in enumerate(table.columns)
        ]
        high = PITCH * max(map(len, lines)) + GAP
        self.room(high + PITCH + GAP)  # never alone at the foot of a sheet, under a long paragraph
        for k, (column, cell) in enumerate(zip(table.columns, lines, strict=True)):
            x = edges[k] if column.ha == "left" else edges[k + 1] - 2.0
            for n, line in enumerate(cell, 1):
                self.sheet.text(x, self.y - n * PITCH, line, size=SMALL, ha=column.ha, bold=True)
        self.y -= high
        self.sheet.line([(edges[0], self.y + 0.15), (edges[-1], self.y + 0.15)], "seen")


def _edges(columns: Iterable[Column], left: float, right: float) -> list[float]:
    shares = [column.share for column in columns]
    edges, whole = [left], sum(shares)
    for share in shares:
        edges.append(edges[-1] + (right - left) * share / whole)
    return edges
