"""A table that an exercise gives, ruled as on the page of a book."""

from __future__ import annotations

from itertools import accumulate

from fireplace_calc.drawing.sheets.lettering import unbroken, width
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.lessons.answers.given_figures import GivenTable

SIDE = 0.9
"""Left and right of what stands in a cell. [mm]"""


def _longest_word(text: str) -> float:
    """Room for a column of it. [mm]"""
    return max(width(word, SMALL) for word in unbroken(text) or [""]) + 2 * SIDE + 0.1


def given_grid(table: GivenTable, wide: float) -> Sheet:
    """Rows and columns under their names; every column takes its longest word, and an equal share
    of what is left.

    Parameters
    ----------
    table : GivenTable
    wide : float
        Of the whole; names too long for their column wrap. [mm]

    Returns
    -------
    Sheet
        As high as it needs, its foot at 0. [mm]
    """
    corner = table.corner + (f" ({table.unit})" if table.unit else "")
    named = [(corner, *table.columns), *((name, *texts) for name, texts in table.rows)]
    least = [max(map(_longest_word, column)) for column in zip(*named, strict=True)]
    share = (wide - sum(least)) / len(least)
    edges = [0.0, *accumulate(one + share for one in least)]
    rows = [
        [wrapped(text, edges[k + 1] - edges[k] - 2 * SIDE) for k, text in enumerate(row)]
        for row in named
    ]
    highs = [PITCH * max(map(len, row)) + SIDE for row in rows]
    sheet = Sheet(wide, sum(highs))
    top = sheet.height
    sheet.line([(0, top), (wide, top)], "fine")
    for row, high in zip(rows, highs, strict=True):
        for k, lines in enumerate(row):
            for line, text in enumerate(lines, 1):
                y = top - SIDE / 2 - line * PITCH + (PITCH - SMALL) / 2
                sheet.text(edges[k] + SIDE, y, text, size=SMALL, ha="left")
        top -= high
        sheet.line([(0, top), (wide, top)], "fine" if top < sheet.height - highs[0] else "seen")
    for x in edges:
        sheet.line([(x, 0), (x, sheet.height)], "fine")
    return sheet
