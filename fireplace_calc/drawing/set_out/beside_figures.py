"""What stands beside the figures of a set-out sheet: the legend of its hatches, and its notes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork.courses.odd import odd_courses
from fireplace_calc.drawing.plates.hatch_key import NAMES
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.set_out.columns import rows_of, segments
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.cuts import SOLID
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall

ROW, SWATCH = 3.7, 6.4
"""Height of a row of a note, and of a row of the legend. [mm]"""
LETTERED = 5.0
"""From the number of a note to its text. [mm]"""
APART = 3.0
"""Least air between two things on a sheet. [mm]"""
ODD, SHORT = 2, 3
"""So many sentences on courses that do not come out whole, so many of what falls short. [-]"""
MEASURE = (
    "Measure widths from the center line, depths from the face of the opening, levels from the"
    " finished floor. No string is closed: what is fitted at site has no figure."
)


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Something of text or swatches that needs a place.

    Attributes
    ----------
    width, height : float
        [mm]
    rows : tuple
        What is written into it.
    """

    width: float
    height: float
    rows: tuple[tuple[str, ...], ...]


def hatches_of(sheet: Sheet) -> list[str]:
    """Materials that are cut on a sheet, in the order in which they were drawn."""
    drawn = dict.fromkeys(name for _, name in sheet.fills)
    return [name for name in drawn if name in sheet.hatched or name in SOLID]


def legend_block(sheet: Sheet, columns: int) -> TextBlock:
    """Room for the legend in so many columns, each as wide as its longest name."""
    called = {NAMES.get(name, name): name for name in reversed(hatches_of(sheet))}
    words, names = list(called)[::-1], list(called.values())[::-1]
    wide = sum(_column_widths(words, columns))
    return TextBlock(wide, _rows(words, columns) * SWATCH, tuple(zip(names, words, strict=True)))


def _rows(words: Sequence[str], columns: int) -> int:
    return max(-(-len(words) // columns), 1)


def _column_widths(words: Sequence[str], columns: int) -> list[float]:
    """Width of each column of the legend. [mm]"""
    rows = _rows(words, columns)
    return [
        11.0 + max(width(word, SMALL) for word in words[n : n + rows]) + APART
        for n in range(0, len(words), rows)
    ]


def draw_legend(sheet: Sheet, block: TextBlock, columns: int, left: float, top: float) -> None:
    """Draw every hatch with its name, column by column. [mm]"""
    words = [word for _, word in block.rows]
    rows, x = _rows(words, columns), left
    for n, wide in enumerate(_column_widths(words, columns)):
        for m, (name, word) in enumerate(block.rows[n * rows : (n + 1) * rows]):
            y = top - SWATCH * (m + 1) + 1.0
            ring = np.array([(x, y), (x + 9.0, y), (x + 9.0, y + 4.4), (x, y + 4.4)])
            sheet.fill([ring], name, None if name in SOLID else name)
            sheet.line(ring, "seen", closed=True)
            sheet.text(x + 11.0, y + 2.2, word, size=SMALL, ha="left", va="middle")
        x += wide


def said_of(result: Assessment, units: str) -> list[str]:
    """Notes of the sheet: how to measure, what is drawn otherwise than asked, which courses are
    cut, what falls short.

    Parameters
    ----------
    result : Assessment
    units : str

    Returns
    -------
    list of str
    """
    least = '1/16"' if units == FEET_INCHES else "1 mm"
    said = [f"{MEASURE} Each figure is rounded once, to {least}."]
    said += list(result.geometry.frame.adjusted)
    odd = odd_courses(result.geometry, units)
    if odd:
        more = f" {len(odd) - ODD} more: see the cut list." if len(odd) > ODD else ""
        said.append(" ".join(odd[:ODD]) + more)
    fallen = shortfall(result)
    if fallen.code:
        told = "; ".join(short_words(finding, units) for finding in fallen.code[:SHORT])
        rest = len(fallen.code) - SHORT
        said.append(f"FALLS SHORT: {told}{f'; and {rest} more' if rest > 0 else ''}.")
    said.append(f"Not checked: {fallen.open}; see the inspector's page.")
    return said


def note_block(said: Sequence[str], wide: float) -> TextBlock:
    """Room for numbered notes in a width. [mm]"""
    rows = tuple(tuple(rows_of(text, wide - LETTERED - 0.5)) for text in said)
    return TextBlock(wide, sum(len(each) * ROW + 0.9 for each in rows), rows)


def draw_notes(sheet: Sheet, block: TextBlock, left: float, top: float) -> None:
    """Write numbered notes. [mm]"""
    y = top - SMALL
    for n, rows in enumerate(block.rows, 1):
        sheet.text(left, y, f"{n}", size=SMALL, ha="left", bold=True)
        for row in rows:
            sheet.text(left + LETTERED, y, row, size=SMALL, ha="left")
            y -= ROW
        y -= 0.9


def open_ground(sheet: Sheet) -> Array:
    """Where a sheet is still empty, ``APART`` from all that is drawn on it.

    Parameters
    ----------
    sheet : Sheet

    Returns
    -------
    array of float
        Running sums, over rows and columns of 1 mm, of what is taken; nought before the first. [-]
    """
    taken = np.zeros((int(sheet.height) + 2, int(sheet.width) + 2))

    def take(boxes: Array) -> None:
        low = np.floor(np.maximum(boxes[:, :2] - APART, 0.0)).astype(int)
        high = np.ceil(boxes[:, 2:] + APART).astype(int)
        for (x0, y0), (x1, y1) in zip(low, high, strict=True):
            taken[y0:y1, x0:x1] = 1.0

    take(np.array([label.extent for label in sheet.labels]).reshape(-1, 4))
    rings = [np.asarray(ring[0]) for polygons in sheet.fills.values() for ring in polygons]
    take(np.array([(*r.min(axis=0), *r.max(axis=0)) for r in rings]).reshape(-1, 4))
    start, end = segments(sheet)
    parts = max(int(np.abs(end - start).max(initial=1.0) // 6.0) + 1, 1)
    slant = (np.abs(end - start) > 1.0).all(axis=1)  # a slanted line takes steps, not its box
    take(np.concatenate([np.minimum(start, end), np.maximum(start, end)], 1)[~slant])
    way = (end - start)[slant] / parts
    for n in range(parts):
        a, b = start[slant] + way * n, start[slant] + way * (n + 1)
        take(np.concatenate([np.minimum(a, b), np.maximum(a, b)], 1))
    return np.pad(taken.cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))


def free_place(ground: Array, fields: Sequence[Cell], block: TextBlock) -> Cell | None:
    """A place for a block where nothing stands.

    Parameters
    ----------
    ground : array
        As ``open_ground`` gives it.
    fields : sequence of Cell
        Where it may stand, the best first. [mm]
    block : TextBlock

    Returns
    -------
    Cell or None
        In the first field with room, as low and then as far left as it goes.
    """
    wide, high = max(int(np.ceil(block.width)), 1), max(int(np.ceil(block.height)), 1)
    used = ground[high:, wide:] - ground[:-high, wide:] - ground[high:, :-wide]
    free = used + ground[:-high, :-wide] < 0.5
    for cell in fields:
        x0, y0 = int(np.ceil(cell.left)), int(np.ceil(cell.bottom))
        x1, y1 = int(cell.right) - wide + 1, int(cell.top) - high + 1
        if x1 <= x0 or y1 <= y0:
            continue
        found = np.argwhere(free[y0:y1, x0:x1])
        if len(found):
            y, x = found[0]
            left, low = float(x0 + x), float(y0 + y)
            return Cell(left, low, left + block.width, low + block.height)
    return None
