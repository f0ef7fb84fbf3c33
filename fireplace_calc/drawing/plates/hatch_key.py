"""What the hatches of a sheet mean, in columns."""

from __future__ import annotations

import numpy as np

from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import in_rows, width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.cuts import SOLID

NAMES = {"parging": "chamber lining", "metal": "sheet metal", "timber": "wood"}
"""Materials whose hatch is called otherwise in a legend."""
PATCH = (8.0, 3.8)
"""Width and height of a sample. [mm]"""
ROWS = (6.0, 4.9)
"""From one sample to the next under it: closer where the columns would be too wide. [mm]"""


def hatched(sheet: Sheet) -> list[str]:
    """Materials that are hatched, or filled, on a sheet, in the order they were drawn."""
    return list(
        dict.fromkeys(name for _, name in sheet.fills if name in sheet.hatched or name in SOLID)
    )


def _columns(sheet: Sheet, cell: Cell) -> tuple[list[list[tuple[str, str, float]]], float]:
    """Material, word and width of the column, column by column; and from row to row: in the order
    they were drawn, closer, or with the long words in one column. [mm]
    """
    names = {NAMES.get(name, name): name for name in reversed(hatched(sheet))}
    told = list(names)[::-1]
    long = sorted(told, key=lambda word: -width(word, SMALL))
    made: list[list[tuple[str, str, float]]] = []
    for row, words in ((ROWS[0], told), (ROWS[1], told), (ROWS[1], long)):
        rows = max(int((cell.top - cell.bottom + 0.5) // row), 1)
        made = []
        for first in range(0, len(words), rows):
            here = words[first : first + rows]
            wide = PATCH[0] + 1.6 + max(width(word, SMALL) for word in here) + 4.0
            made.append([(names[word], word, wide) for word in here])
        if sum(column[0][2] for column in made) - 4.0 <= cell.right - cell.left:
            break
    return made, row


def legend_fits(sheet: Sheet, cell: Cell) -> bool:
    """Whether a cell holds the legend of a sheet."""
    return sum(column[0][2] for column in _columns(sheet, cell)[0]) <= cell.right - cell.left + 4.0


def legend(sheet: Sheet, cell: Cell, notes: tuple[str, ...] = ()) -> float:
    """Every hatch of a sheet with its name, column by column from the left.

    Parameters
    ----------
    sheet : Sheet
        With all that is drawn on it.
    cell : Cell
        Where it stands: of a sheet the strip left of its title block. [mm]
    notes : tuple of str
        Sentences behind the columns, each where it still has room.

    Returns
    -------
    float
        Right end of what was written. [mm]
    """
    x = cell.left
    columns, row = _columns(sheet, cell)
    for column in columns:
        for n, (name, word, _) in enumerate(column):
            y = cell.top - 1.0 - PATCH[1] - n * row
            ring = np.array([(0, 0), (PATCH[0], 0), PATCH, (0, PATCH[1])]) + (x, y)
            sheet.fill([ring], name, None if name in SOLID else name)
            sheet.line(ring, "seen", closed=True)
            at = y + PATCH[1] / 2
            sheet.text(x + PATCH[0] + 1.6, at, word, size=SMALL, ha="left", va="middle")
        x += column[0][2]
    y = cell.top - 1.0 - SMALL
    for said in notes:
        split = in_rows(said, cell.right - x, SMALL)
        if max(width(line, SMALL) for line in split) > cell.right - x:
            break
        if y - (len(split) - 1) * SMALL * 1.5 < cell.bottom:
            break
        for line in split:
            sheet.text(x, y, line, size=SMALL, ha="left")
            y -= SMALL * 1.5
        y -= SMALL * 0.6
    return x
