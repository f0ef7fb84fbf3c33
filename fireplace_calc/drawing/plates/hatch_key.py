"""What the hatches of a sheet mean, in columns."""

from __future__ import annotations

import numpy as np

from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import in_rows, width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.cuts import SOLID

NAMES = {"parging": "chamber lining", "metal": "sheet metal"}
"""Materials whose hatch is called otherwise in a legend."""
PATCH = (8.0, 4.0)
"""Width and height of a sample. [mm]"""
ROW = 6.0
"""From one sample to the next under it. [mm]"""


def hatched(sheet: Sheet) -> list[str]:
    """Materials that are hatched, or filled, on a sheet, in the order they were drawn."""
    return list(
        dict.fromkeys(name for _, name in sheet.fills if name in sheet.hatched or name in SOLID)
    )


def _columns(sheet: Sheet, high: float) -> list[list[tuple[str, str, float]]]:
    """Material, word and width of the column, column by column."""
    rows = max(int((high + 0.5) // ROW), 1)
    names = hatched(sheet)
    made = []
    for first in range(0, len(names), rows):
        here = [(name, NAMES.get(name, name)) for name in names[first : first + rows]]
        wide = PATCH[0] + 1.6 + max(width(word, SMALL) for _, word in here) + 4.0
        made.append([(name, word, wide) for name, word in here])
    return made


def legend_width(sheet: Sheet, high: float) -> float:
    """Width that the legend of a sheet takes in a cell so high. [mm]"""
    return sum(column[0][2] for column in _columns(sheet, high))


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
    for column in _columns(sheet, cell.top - cell.bottom):
        for n, (name, word, _) in enumerate(column):
            y = cell.top - 1.0 - PATCH[1] - n * ROW
            ring = np.array([(0, 0), (PATCH[0], 0), PATCH, (0, PATCH[1])]) + (x, y)
            sheet.fill([ring], name, None if name in SOLID else name)
            sheet.line(ring, "seen", closed=True)
            at = y + PATCH[1] / 2
            sheet.text(x + PATCH[0] + 1.6, at, word, size=SMALL, ha="left", va="middle")
        x += column[0][2]
    y = cell.top - 1.0 - SMALL
    for said in notes:
        split = in_rows(said, cell.right - x, SMALL)
        if max(width(row, SMALL) for row in split) > cell.right - x:
            break
        if y - (len(split) - 1) * SMALL * 1.5 < cell.bottom:
            break
        for row in split:
            sheet.text(x, y, row, size=SMALL, ha="left")
            y -= SMALL * 1.5
        y -= SMALL * 0.6
    return x
