"""The answer grid and the key of a class: a row to a student, a column to a question."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fireplace_calc.drawing.classroom.stamped import ClassStamp, cut_to
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.lessons import Exercise, ExerciseStep
from fireplace_calc.lessons.classroom.desk import MARKS

NAMES = 36.0
"""Widest column of names. [mm]"""
LINE = 3.6
"""From line to line within a row. [mm]"""
BETWEEN, ABOVE = 2.4, 1.4
"""Air beside a figure, and over the first line of a row. [mm]"""
TALLEST = 7.5
"""Highest line of a row. [mm]"""
BOX = 8.0
"""Least column of the grid. [mm]"""
CHOICE = 30.0
"""As much of a long choice as stands in the key. [mm]"""
KEY_NOTE = (
    "An answer counts within half a percent; a least figure has to be reached, a greatest one not"
    " passed."
)
SEARCH_NOTE = (
    "Of a search: the number of the rule on the list to look down. The order does not count."
)
GRID_NOTE = "Tick what is right. The last column is the count of ticks."


@dataclass(frozen=True, slots=True)
class ClassTable:
    """Cells of a grid or a key before they are laid out.

    Attributes
    ----------
    what : str
        For the foot.
    before : tuple of str
        Lines over the table, each as long as it wants to be.
    heads : tuple of str
        Of the columns.
    rows : tuple of (str, tuple of str)
        Name, and a cell for every column.
    ruled : bool
        Whether cells are boxes to write into.
    """

    what: str
    before: tuple[str, ...]
    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    ruled: bool


Drawn = Mapping[str, Mapping[int, Exercise]]
"""Exercises of the paper by the student's name, and by number."""


def key_table(drawn: Drawn, units: str) -> ClassTable:
    """Every answer of every student.

    Parameters
    ----------
    drawn : mapping of str to mapping of int to Exercise
        By the student's name and the exercise's number; the exercises of the paper alone.
    units : str
    """
    rows = tuple(
        (name, tuple(_answer(one, step, units) for one in own.values() for step in one.steps))
        for name, own in drawn.items()
    )
    heads = _heads(drawn)
    rows = tuple((name, (*cells, *[""] * (len(heads) - len(cells)))) for name, cells in rows)
    searches = any(one.any_order for own in drawn.values() for one in own.values())
    before = (_legend(drawn), KEY_NOTE, *([SEARCH_NOTE] if searches else []))
    return ClassTable("Key, for the trainer alone", before, heads, rows, False)


def _answer(drawn: Exercise, step: ExerciseStep, units: str) -> str:
    """What stands in the key; of a search the number on the list."""
    if drawn.any_order:
        return str(round(step.expected) + 1)
    answer = step.answer(units)
    return cut_to(answer, CHOICE, SMALL) if step.options else answer


def grid_table(drawn: Drawn) -> ClassTable:
    """A box for every question of every student, and one for the count."""
    heads = (*_heads(drawn), "all")
    rows = tuple((name, ("",) * len(heads)) for name in drawn)
    return ClassTable("Answer grid", (_legend(drawn), GRID_NOTE), heads, rows, True)


def table_sheets(table: ClassTable, stamp: ClassStamp) -> list[Sheet]:
    """The table on as few sheets as it takes: lying or standing, whichever is enough for one.

    Parameters
    ----------
    table : ClassTable
    stamp : ClassStamp
    """
    ways = [_way(table, stamp, lying) for lying in (True, False)]
    way = min(ways, key=lambda one: -(-len(table.rows) // one.many))
    pages, made = -(-len(table.rows) // way.many), []
    for page in range(pages):
        sheet, room = stamp.blank(way.lying)
        y = _before(sheet, table, room)
        y = _row(sheet, ("Student", table.heads), way, room, y, bold=True)
        for row in table.rows[page * way.many : (page + 1) * way.many]:
            y = _row(sheet, row, way, room, y, ruled=table.ruled)
        stamp.put(sheet, table.what, f"{page + 1} of {pages}" if pages > 1 else "")
        made.append(sheet)
    return made


def _heads(drawn: Drawn) -> tuple[str, ...]:
    """Names of the columns, as many as whoever has most questions needs."""
    numbers = next(iter(drawn.values()))
    most = {n: max(len(own[n].steps) for own in drawn.values()) for n in numbers}
    return tuple(f"{n}{MARKS[k]}" for n, many in most.items() for k in range(many))


def _legend(drawn: Drawn) -> str:
    """What the numbers of the columns stand for; the letters are those of the quiz."""
    own = next(iter(drawn.values()))
    return "; ".join(f"{n} {one.title}" for n, one in own.items()) + "."


def _widths(table: ClassTable) -> list[float]:
    """Of every column. [mm]"""
    found = []
    for k, head in enumerate(table.heads):
        cells = [width(cells[k], SMALL) for _, cells in table.rows]
        longest = max([width(head, SMALL, True), *cells])
        found.append(max(longest + BETWEEN, BOX if table.ruled else 0.0))
    return found


@dataclass(frozen=True, slots=True)
class _Way:
    """How a table falls on paper: its columns line by line, their widths [mm], height of a row
    [mm], rows of a page [-].
    """

    lying: bool
    lines: tuple[tuple[int, ...], ...]
    widths: tuple[float, ...]
    high: float
    many: int


def _way(table: ClassTable, stamp: ClassStamp, lying: bool) -> _Way:
    _, room = stamp.blank(lying)
    widths, wide = _widths(table), room.right - room.left - NAMES
    lines: list[list[int]] = [[]]
    for k, one in enumerate(widths):
        if lines[-1] and sum(widths[n] for n in lines[-1]) + one > wide:
            lines.append([])
        lines[-1].append(k)
    least = len(lines) * LINE + ABOVE
    before = sum(len(wrapped(text, room.right - room.left)) for text in table.before) * PITCH + 2.0
    left = room.top - room.bottom - before
    many = max(int(left / least) - 1, 1)
    high = min(max(left / (len(table.rows) + 1), least), TALLEST * len(lines))
    return _Way(lying, tuple(map(tuple, lines)), tuple(widths), high, many)


def _before(sheet: Sheet, table: ClassTable, room: Cell) -> float:
    y = room.top
    for text in table.before:
        for line in wrapped(text, room.right - room.left):
            y -= PITCH
            sheet.text(room.left, y, line, size=SMALL, ha="left")
    return y - 2.0


def _row(
    sheet: Sheet,
    row: tuple[str, Sequence[str]],
    way: _Way,
    room: Cell,
    top: float,
    ruled: bool = False,
    bold: bool = False,
) -> float:
    """One row; gives where it ends. [mm]"""
    name, cells = row
    bottom, high = top - way.high, way.high / len(way.lines)
    rise = (high - SMALL) / 2
    sheet.text(
        room.left,
        top - high + rise,
        cut_to(name, NAMES - BETWEEN, SMALL, bold),
        SMALL,
        "left",
        bold=bold,
    )
    for number, line in enumerate(way.lines, 1):
        x, y = room.left + NAMES, top - number * high
        for k in line:
            if cells[k]:
                sheet.text(x + way.widths[k] / 2, y + rise, cells[k], size=SMALL, bold=bold)
            if ruled:
                sheet.line([(x, y), (x, y + high)], "fine")
            x += way.widths[k]
        if ruled:
            sheet.line([(x, y), (x, y + high)], "fine")
            sheet.line([(room.left + NAMES, y), (x, y)], "fine")
    sheet.line([(room.left, bottom), (room.right, bottom)], "fine")
    return bottom
