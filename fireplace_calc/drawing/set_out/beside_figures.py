"""What stands beside the figures of a set-out sheet: the legend of its hatches, and its notes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import in_rows, width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.cuts import SOLID
from fireplace_calc.drawing.views.layout import NAMES
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall

ROW, SWATCH = 3.7, 6.4
"""Height of a row of a note, and of a row of the legend. [mm]"""
LETTERED = 5.0
"""From the number of a note to its text. [mm]"""
APART = 4.0
"""Least air between two things on a sheet. [mm]"""
MEASURE = (
    "Measure widths from the center line, depths from the face of the opening, levels from the"
    " finished floor. No string is closed: what is fitted at site has no figure."
)


@dataclass(frozen=True, slots=True)
class Block:
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


def legend_block(sheet: Sheet, columns: int) -> Block:
    """Room for the legend in so many columns."""
    names = hatches_of(sheet)
    words = [NAMES.get(name, name) for name in names]
    rows = -(-len(names) // columns)
    wide = 12.0 + max((width(word, SMALL) for word in words), default=0.0) + APART
    return Block(wide * columns, rows * SWATCH, tuple(zip(names, words, strict=True)))


def draw_legend(sheet: Sheet, block: Block, columns: int, left: float, top: float) -> None:
    """Draw every hatch with its name, column by column. [mm]"""
    rows, pitch = -(-len(block.rows) // columns), block.width / columns
    for n, (name, word) in enumerate(block.rows):
        x, y = left + pitch * (n // rows), top - SWATCH * (n % rows + 1) + 1.0
        ring = np.array([(x, y), (x + 9.0, y), (x + 9.0, y + 4.4), (x, y + 4.4)])
        sheet.fill([ring], name, None if name in SOLID else name)
        sheet.line(ring, "seen", closed=True)
        sheet.text(x + 11.0, y + 2.2, word, size=SMALL, ha="left", va="middle")


def said_of(result: Assessment, units: str, lost: Sequence[str] = ()) -> list[str]:
    """Notes of the sheet: how to measure, what is drawn otherwise than asked, what falls short.

    Parameters
    ----------
    result : Assessment
    units : str
    lost : sequence of str
        What found no room beside its figure.

    Returns
    -------
    list of str
    """
    least = '1/16"' if units == FEET_INCHES else "1 mm"
    said = [f"{MEASURE} Each figure is rounded once, to {least}."]
    said += list(result.geometry.frame.adjusted)
    if lost:
        said.append("; ".join(lost) + ".")
    fallen = shortfall(result)
    if fallen.code:
        told = "; ".join(short_words(finding, units) for finding in fallen.code[:3])
        more = len(fallen.code) - 3
        told += f"; and {more} more" if more > 0 else ""
        said.append(f"FALLS SHORT: {told}.")
    open_ones = f"Not checked: {fallen.open}; see the inspector's page."
    said.append(open_ones)
    return said


def note_block(said: Sequence[str], wide: float) -> Block:
    """Room for numbered notes in a width. [mm]"""
    rows = tuple(tuple(in_rows(text, wide - LETTERED - 0.5, SMALL)) for text in said)
    return Block(wide, sum(len(each) * ROW + 0.9 for each in rows), rows)


def draw_notes(sheet: Sheet, block: Block, left: float, top: float) -> None:
    """Write numbered notes. [mm]"""
    y = top - SMALL
    for n, rows in enumerate(block.rows, 1):
        sheet.text(left, y, f"{n}", size=SMALL, ha="left", bold=True)
        for row in rows:
            sheet.text(left + LETTERED, y, row, size=SMALL, ha="left")
            y -= ROW
        y -= 0.9


def free_place(taken: Sequence[Cell], fields: Sequence[Cell], block: Block) -> Cell | None:
    """A place for a block that meets nothing.

    Parameters
    ----------
    taken : sequence of Cell
        What stands there already. [mm]
    fields : sequence of Cell
        Where it may stand, the best first. [mm]
    block : Block

    Returns
    -------
    Cell or None
        The first of the lowest, leftmost ones that is free.
    """
    for cell in fields:
        xs = sorted({cell.left, *(t.right + APART for t in taken)})
        ys = sorted({cell.bottom, *(t.top + APART for t in taken)})
        for y, x in product(ys, xs):
            place = Cell(x, y, x + block.width, y + block.height)
            inside = (
                x >= cell.left - 1e-6
                and y >= cell.bottom - 1e-6
                and place.right <= cell.right + 1e-6
                and place.top <= cell.top + 1e-6
            )
            if inside and not any(place.meets(other) for other in taken):
                return place
    return None
