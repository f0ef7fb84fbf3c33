"""Blocks of rows that are put on sheets column by column, each with a frame to be torn off by; no
row is broken, and one that goes on elsewhere says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marks import MIDDLE, SMALL
from fireplace_calc.drawing.plates.sizes import AIR, Paper
from fireplace_calc.drawing.plates.title_block import elided
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import Column, Table, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet

NARROWEST, GUTTER = 175.0, 8.0
"""A column of blocks, and between two. [mm]"""
PITCH = 3.7
"""From line to line. [mm]"""
HEAD, TAIL = 3.4, 1.6
"""From the rule over a row to its first base line, and from its last one to the rule under it.
[mm]"""
SIDE = 1.6
"""Between a frame or a column's edge and its letters. [mm]"""
TITLE = 7.2
"""Height of a block's title. [mm]"""
TEAR = 5.0
"""Between two blocks, where they are torn apart. [mm]"""
JOINED = re.compile(r"(?<=\d) (?=\d|mm\b|lb\b|kg\b)")
"""A blank within a figure, or between it and its unit: no line is broken there."""
STAND_IN = "\u00a6"
"""As wide as a blank, and in no text."""
LEAST_ROWS = 3
"""A block that goes on elsewhere leaves at least so many rows behind. [-]"""


@dataclass(frozen=True, slots=True)
class OrderBlock:
    """One table in a frame.

    Attributes
    ----------
    title : str
    aside : str
        At the right of the title.
    before : tuple of str
        Paragraphs under the title.
    columns : tuple of Column
    rows : tuple of tuple of str
        A cell of two parts has a line break between them.
    after : tuple of str
        Paragraphs under the rows.
    boxed : int
        So many columns at the right have upright rules: somebody writes into them. [-]
    tick : bool
        Whether a box to tick stands before each row that has something in its second column.
    flows : bool
        It goes on elsewhere wherever that saves paper; else only where no column holds it whole.
    """

    title: str
    aside: str
    before: tuple[str, ...]
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    after: tuple[str, ...] = ()
    boxed: int = 0
    tick: bool = False
    flows: bool = False

    def words(self) -> Iterator[str | Table]:
        """The same for a screen."""
        rows = tuple(
            tuple(", ".join(filter(None, cell.split("\n"))) for cell in row) for row in self.rows
        )
        title = f"{self.title} ({self.aside})" if self.aside else self.title
        yield Table(title, self.columns, rows, before=" ".join(self.before))
        yield from self.after


@dataclass(slots=True)
class _Place:
    """What is left of one column of a sheet."""

    sheet: Sheet
    cell: Cell
    top: float

    @property
    def left(self) -> float:
        """Height that is free. [mm]"""
        return self.top - self.cell.bottom


def columns_of(paper: Paper) -> list[Cell]:
    """Columns of a sheet; one that keeps clear of the title block reaches down beside it. [mm]"""
    f = paper.field
    wide = f.right - f.left
    count = max(1, int((wide + GUTTER) / (NARROWEST + GUTTER)))
    each = (wide - GUTTER * (count - 1)) / count
    found = []
    for n in range(count):
        left = f.left + n * (each + GUTTER)
        beside = left + each <= paper.block.left - AIR
        found.append(Cell(left, paper.strip.bottom if beside else f.bottom, left + each, f.top))
    return found


def laid_out(name: str, blocks: Sequence[OrderBlock], paper: Paper) -> list[Plate]:
    """Blocks on as few sheets as hold them, each in the first column that has room.

    Parameters
    ----------
    name : str
        Of every sheet.
    blocks : sequence of OrderBlock
    paper : Paper

    Returns
    -------
    list of Plate
    """
    plates: list[Plate] = []
    places: list[_Place] = []
    cells = columns_of(paper)
    wide, tallest = cells[0].right - cells[0].left, max(cell.top - cell.bottom for cell in cells)
    for whole in blocks:
        block: OrderBlock | None = whole
        while block is not None:
            high = _height(block, wide)
            place = next((one for one in places if one.left >= high), None)
            if place is None and (block.flows or high > tallest):
                place = next((one for one in places if _fitting(block, wide, one.left)), None)
            if place is None:
                sheet = Sheet(paper.width, paper.height)
                plates.append(Plate(name, sheet))
                fresh = [_Place(sheet, cell, cell.top) for cell in cells]
                place = next((one for one in fresh if one.left >= high), fresh[0])
                places += fresh
            block = _put(place, block, wide)
    return plates


def _edges(block: OrderBlock, left: float, right: float) -> list[float]:
    start = left + (6.5 if block.tick else 0.0)
    whole = sum(column.share for column in block.columns)
    edges = [start]
    for column in block.columns:
        edges.append(edges[-1] + (right - start) * column.share / whole)
    return edges


def _lines(block: OrderBlock, wide: float) -> list[list[tuple[str, ...]]]:
    """Cells of the headings and of every row, broken into lines."""
    edges = _edges(block, 0.0, wide)
    rooms = [b - a - 2 * SIDE for a, b in zip(edges, edges[1:], strict=False)]
    headings = [broken(c.heading, r, True) for c, r in zip(block.columns, rooms, strict=True)]
    return [
        headings,
        *([_cell(t, r) for t, r in zip(row, rooms, strict=True)] for row in block.rows),
    ]


def broken(text: str, room: float, bold: bool = False) -> tuple[str, ...]:
    """Lines of a text that fit a width, no figure broken. [mm]

    >>> broken('a leg of 3 1/2" and more', 22.0)
    ('a leg of', '3 1/2" and', 'more')
    """
    lines = wrapped(JOINED.sub(STAND_IN, text), room, bold)
    return tuple(line.replace(STAND_IN, " ") for line in lines)


def _cell(text: str, room: float) -> tuple[str, ...]:
    """Lines of a cell; where it has two parts, the second begins a line unless both fit in one."""
    parts = [part for part in text.split("\n") if part]
    if len(parts) < 2 or width(", ".join(parts), SMALL) <= room:
        return broken(", ".join(parts), room)
    return tuple(line for part in parts for line in broken(part, room))


def _high(lines: Sequence[tuple[str, ...]]) -> float:
    return HEAD + PITCH * (max(map(len, lines)) - 1) + TAIL


def _words(texts: Sequence[str], wide: float) -> list[str]:
    return [line for text in texts for line in broken(text, wide - 2 * SIDE)]


def _worded(count: int) -> float:
    return HEAD + PITCH * (count - 1) + TAIL if count else 0.0


def _height(block: OrderBlock, wide: float) -> float:
    """Of a block, and of the air under it where another follows. [mm]"""
    before, after = (_worded(len(_words(said, wide))) for said in (block.before, block.after))
    table = sum(map(_high, _lines(block, wide))) if block.rows else 0.0
    return TITLE + before + table + after


def _fitting(block: OrderBlock, wide: float, room: float) -> int:
    """How many rows of a block find room, with the line that sends a reader on; none where they are
    too few to begin there. [-]
    """
    heights = list(map(_high, _lines(block, wide)))
    used = TITLE + _worded(len(_words(block.before, wide))) + heights[0]
    count = 0
    for high in heights[1:]:
        used += high
        if used + _worded(1) > room:
            break
        count += 1
    return count if count >= min(LEAST_ROWS, len(block.rows)) else 0


def _put(place: _Place, block: OrderBlock, wide: float) -> OrderBlock | None:
    """Draw as much of a block as finds room; the rest is handed back."""
    if _height(block, wide) <= place.left or not block.rows:
        _draw(place, block, wide)
        return None
    count = max(1, _fitting(block, wide, place.left))
    here = replace(block, rows=block.rows[:count], after=("Continued in the next block.",))
    while _height(here, wide) > place.left and count > 1:
        count -= 1
        here = replace(here, rows=block.rows[:count])
    _draw(place, here, wide)
    title = block.title if block.title.endswith(", continued") else f"{block.title}, continued"
    return replace(block, title=title, before=(), rows=block.rows[count:])


def _draw(place: _Place, block: OrderBlock, wide: float) -> None:
    sheet, left, right, top = place.sheet, place.cell.left, place.cell.right, place.top
    y = top - TITLE
    room = wide - 2 * SIDE
    beside = max(room - width(block.title, MIDDLE, True) - 4.0, 0.0)
    aside = elided(block.aside, beside, SMALL) if block.aside else ""
    sheet.text(left + SIDE, y + 2.0, block.title, size=MIDDLE, ha="left", bold=True)
    if aside:
        sheet.text(right - SIDE, y + 2.0, aside, size=SMALL, ha="right")
    sheet.line([(left, y), (right, y)], "seen")
    y = _write(sheet, _words(block.before, wide), left, y)
    if block.before and block.rows:
        sheet.line([(left, y), (right, y)], "fine")
    if block.rows:
        y = _rows(sheet, block, left, right, y)
    if block.after:
        y = _write(sheet, _words(block.after, wide), left, y)
    sheet.line([(left, top), (right, top), (right, y), (left, y)], "seen", closed=True)
    place.top = y - TEAR


def _write(sheet: Sheet, lines: Sequence[str], left: float, y: float) -> float:
    for n, line in enumerate(lines):
        sheet.text(left + SIDE, y - HEAD - n * PITCH, line, size=SMALL, ha="left")
    return y - _worded(len(lines))


def _rows(sheet: Sheet, block: OrderBlock, left: float, right: float, y: float) -> float:
    edges, top = _edges(block, left, right), y
    for number, lines in enumerate(_lines(block, right - left)):
        for k, (column, cell) in enumerate(zip(block.columns, lines, strict=True)):
            x = edges[k] + SIDE if column.ha == "left" else edges[k + 1] - SIDE
            for n, line in enumerate(cell):
                if line:
                    at = y - HEAD - n * PITCH
                    sheet.text(x, at, line, size=SMALL, ha=column.ha, bold=not number)
        if block.tick and number and block.rows[number - 1][1]:
            x, low = left + SIDE + 0.4, y - HEAD - 0.2
            sheet.line(
                [(x, low), (x + 3, low), (x + 3, low + 3), (x, low + 3)], "seen", closed=True
            )
        y -= _high(lines)
        sheet.line([(left, y), (right, y)], "fine" if number else "seen")
    for x in edges[len(block.columns) - block.boxed : -1] if block.boxed else ():
        sheet.line([(x, top), (x, y)], "fine")
    return y
