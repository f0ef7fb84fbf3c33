"""Rows of words in columns: bands that fill a sheet from the top, the columns of a band as low as
they can be, no row broken; what does not fit goes on to another sheet.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.lettering import in_rows
from fireplace_calc.drawing.sheets.lists import Column, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet

PITCH = 3.6
"""From line to line of small letters. [mm]"""
OVER, UNDER, TIGHT, PAST = 0.6, 1.62, 0.5, 0.15
"""Over the capitals of a row, under its last line with a line below and without, and past the line
below. [mm]
"""
BESIDE, BETWEEN, AFTER = 1.6, 6.0, 2.5
"""Between the cells of a row, two columns, two bands. [mm]"""
LEAST = 30.0
"""Less than this is left blank at the foot of a sheet rather than begun. [mm]"""
MOST_LINES = 24
"""A row with more lines goes on as another. [-]"""


@dataclass(frozen=True, slots=True)
class Together:
    """What stays together in a column.

    Attributes
    ----------
    high : float
        [mm]
    paint : callable
        Draws it on a sheet, from its left and top. [mm]
    leads : bool
        Whether it stands over what follows, and so never last in a column.
    """

    high: float
    paint: Callable[[Sheet, float, float], None]
    leads: bool = False


def edges(columns: Sequence[Column], wide: float) -> list[float]:
    """Where the cells of a row begin, and where the last ends. [mm]

    Examples
    --------
    >>> edges([Column("", 1), Column("", 3)], 100.0)
    [0.0, 25.0, 100.0]
    """
    whole, found = sum(column.share for column in columns), [0.0]
    for column in columns:
        found.append(found[-1] + wide * column.share / whole)
    return found


def row(
    columns: Sequence[Column],
    texts: Sequence[str],
    wide: float,
    under: str = "",
    bold: bool = False,
    weight: str = "fine",
    leads: bool = False,
    box: bool = False,
) -> list[Together]:
    """A row of a table with a line under it; an endless one in several blocks.

    Parameters
    ----------
    columns : sequence of Column
    texts : sequence of str
        One a column.
    wide : float
        [mm]
    under : str
        Said under them, from the second column to the end.
    bold : bool
    weight : str
        Of the line; empty for none.
    leads : bool
        Whether it stands over what follows.
    box : bool
        An empty box to tick in the first column.
    """
    at = edges(columns, wide)
    cells = [
        wrapped(text, at[n + 1] - at[n] - (BESIDE if n + 1 < len(texts) else 0.0), bold)
        for n, text in enumerate(texts)
    ]
    below = wrapped(under, wide - at[min(1, len(at) - 2)]) if under else ()
    lines = max(map(len, cells))
    made: list[tuple[float, float, str, str, bool]] = []
    for n, cell in enumerate(cells):
        right = columns[n].ha == "right"
        x = at[n + 1] - BESIDE if right else at[n]
        made += [(k, x, text, columns[n].ha, bold) for k, text in enumerate(cell) if text]
    made += [(lines + k, at[min(1, len(at) - 2)], t, "left", False) for k, t in enumerate(below)]
    count = lines + len(below)
    return [
        _lines(
            [
                (cell[0] - first, *cell[1:])
                for cell in made
                if first <= cell[0] < first + MOST_LINES
            ],
            min(MOST_LINES, count - first),
            wide,
            weight if first + MOST_LINES >= count else "",
            leads,
            box and first == 0,
        )
        for first in range(0, count, MOST_LINES)
    ]


def _lines(
    texts: Sequence[tuple[float, float, str, str, bool]],
    count: int,
    wide: float,
    weight: str,
    leads: bool,
    box: bool,
) -> Together:
    high = OVER + SMALL + (count - 1) * PITCH + (UNDER if weight else TIGHT)

    def paint(sheet: Sheet, left: float, top: float) -> None:
        for k, x, text, ha, bold in texts:
            y = top - OVER - SMALL - k * PITCH
            sheet.text(left + x, y, text, size=SMALL, ha=ha, bold=bold)
        if box:
            y = top - OVER - SMALL
            square = [(0.2, -0.2), (3.0, -0.2), (3.0, 2.6), (0.2, 2.6)]
            sheet.line([(left + x, y + v) for x, v in square], "seen", closed=True)
        if weight:
            low = top - high + PAST
            sheet.line([(left, low), (left + wide, low)], weight)

    return Together(high, paint, leads)


def heading(text: str, wide: float, size: float = SMALL, over: float = 2.2) -> Together:
    """Bold words over what follows. [mm]"""
    rows = in_rows(text, wide, size, bold=True)

    def paint(sheet: Sheet, left: float, top: float) -> None:
        for n, line in enumerate(rows, 1):
            sheet.text(
                left, top - over - n * size * 1.4 + 0.4 * size, line, size, "left", bold=True
            )

    return Together(over + size * 1.4 * len(rows) + 0.25 * size, paint, leads=True)


def words(text: str, wide: float, size: float = SMALL, bold: bool = False) -> list[Together]:
    """A paragraph, without a line; an endless one in several blocks."""
    if size == SMALL:
        return row((Column("", 1),), (text,), wide, bold=bold, weight="")
    lines, step = in_rows(text, wide, size, bold), size * 1.45

    def paint(sheet: Sheet, left: float, top: float) -> None:
        for n, line in enumerate(lines):
            sheet.text(left, top - OVER - size - n * step, line, size, "left", bold=bold)

    return [Together(OVER + len(lines) * step + UNDER - 0.45 * size, paint)]


class Bands:
    """Sheets that are filled band by band.

    Parameters
    ----------
    paper : Paper
    cell : Cell or None
        Where words stand on each sheet; all the width above the title block when left out. [mm]
    """

    def __init__(self, paper: Paper, cell: Cell | None = None) -> None:
        self.paper, self.cell = paper, cell or paper.field
        self.sheets: list[Sheet] = []
        self.y = 0.0
        self.begin()

    def begin(self) -> None:
        """Go on with a new sheet."""
        self.sheets.append(Sheet(self.paper.width, self.paper.height))
        self.y = self.cell.top

    @property
    def wide(self) -> float:
        """Of a band of one column. [mm]"""
        return self.cell.right - self.cell.left

    @property
    def room(self) -> float:
        """What is left of the sheet that is being filled. [mm]"""
        return self.y - self.cell.bottom

    def column(self, count: int) -> float:
        """Width of one of several columns. [mm]"""
        return (self.wide - BETWEEN * (count - 1)) / count

    def band(
        self,
        blocks: Sequence[Together],
        count: int = 1,
        head: Sequence[Together] = (),
        after: float = AFTER,
    ) -> None:
        """Put blocks into columns as low as they can be, on as many sheets as it takes.

        Parameters
        ----------
        blocks : sequence of Together
        count : int
            Of columns. [-]
        head : sequence of Together
            Over each column.
        after : float
            Left blank under it. [mm]
        """
        left = list(blocks)
        while left:
            over = sum(block.high for block in head)
            if (high := lowest(left, count, self.room - over)) is not None:
                self._put(split(left, count, high)[0], count, head)
                self.y -= high + over + after
                return
            if self.room < LEAST + over and self.y < self.cell.top:
                self.begin()
                continue
            columns, rest = split(left, count, self.room - over)
            if not any(columns) or len(rest) == len(left):
                if self.y < self.cell.top:
                    self.begin()
                    continue
                columns, rest = [left[:1]], left[1:]
            self._put(columns, count, head)
            left = rest
            if left:
                self.begin()

    def _put(
        self, columns: Sequence[Sequence[Together]], count: int, head: Sequence[Together]
    ) -> None:
        for n, blocks in enumerate(columns):
            if not blocks:
                continue
            x, y = self.cell.left + n * (self.column(count) + BETWEEN), self.y
            for block in (*head, *blocks):
                block.paint(self.sheets[-1], x, y)
                y -= block.high


def split(
    blocks: Sequence[Together], count: int, high: float
) -> tuple[list[list[Together]], list[Together]]:
    """Blocks in columns of a height, one after the other, and what has no room.

    A block that leads takes the one after it with it. [mm]
    """
    columns: list[list[Together]] = []
    n = 0
    for _ in range(count):
        used = 0.0
        column: list[Together] = []
        while n < len(blocks):
            together = 1
            while blocks[n + together - 1].leads and n + together < len(blocks):
                together += 1
            tall = sum(block.high for block in blocks[n : n + together])
            if used + tall > high + 1e-6:
                break
            column += blocks[n : n + together]
            used += tall
            n += together
        columns.append(column)
    return columns, list(blocks[n:])


def lowest(blocks: Sequence[Together], count: int, most: float) -> float | None:
    """Least height of columns that hold all blocks; None where it is over the most. [mm]"""
    high = sum(block.high for block in blocks) / count
    while high <= most + 1e-6:
        if not split(blocks, count, high)[1]:
            return high
        high += 0.5
    return most if most > 0 and not split(blocks, count, most)[1] else None
