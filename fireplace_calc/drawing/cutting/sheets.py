"""Sheets to cut and lay from: layouts with every cut marked, the cut list, the arch, templates."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork.cutting.bevel_cuts import bevels
from fireplace_calc.brickwork.cutting.cut_marks import cut_list_of
from fireplace_calc.brickwork.cutting.set_arch import arch_setting
from fireplace_calc.drawing.cutting.arch_drawn import arch_figure
from fireplace_calc.drawing.cutting.arch_rows import arch_blocks
from fireplace_calc.drawing.cutting.before_words import before_laying
from fireplace_calc.drawing.cutting.list_rows import all_blocks
from fireplace_calc.drawing.cutting.marked_faces import laid_figures
from fireplace_calc.drawing.cutting.templates import template_figures
from fireplace_calc.drawing.plates.bands import BETWEEN, LEAST, Bands, Together, lowest, split
from fireplace_calc.drawing.plates.figure import Figure, Plate
from fireplace_calc.drawing.plates.fill_sheets import around, chosen_scales, filled
from fireplace_calc.drawing.plates.sizes import AIR, SCALES, Paper
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.takeoff.cost import Price

NAME, LAYOUT, LIST = "Layout and cut list", "Layout", "Cut list"
LAID = {
    FEET_INCHES: (8.0, 12.0, 16.0, 24.0, 32.0, 48.0),
    "millimetres": (10.0, 20.0, 25.0, 40.0, 50.0),
}
"""Denominators of the layouts, the largest scale first. [-]"""
TOGETHER, APART = (20.0, 25.0), (20.0, 16.0, 12.0, 8.0)
"""Smallest scales tried, by their denominators, with the list beside the layouts and without: the
first at which every mark stands clear. [-]
"""
BLOCK = 1.6
"""A course of block may be drawn so much smaller than a face of brick beside the list. [-]"""
CLEAR = 0.7
"""Between letters and lines. [mm]"""
WIDE = 91.4
"""Of a column of the list. [mm]"""


def figures(result: Assessment, units: str) -> list[Figure]:
    """Layouts in the order they are built, the arch, templates at full size.

    Parameters
    ----------
    result : Assessment
    units : str
    """
    geometry = result.geometry
    made = laid_figures(geometry, LAID[units])
    arch = arch_figure(geometry, units, LAID[units])
    templates = template_figures(bevels(cut_list_of(geometry)), arch_setting(geometry), units)
    return [*made, *([arch] if arch else []), *templates]


def plates(
    result: Assessment, units: str, on: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """Sheets of the cuts; the list stands beside the layouts where one sheet holds both.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    prices : dict or None
        Not read.
    """
    geometry = result.geometry
    arch, drawn = arch_setting(geometry), figures(result, units)
    said = [*before_laying(geometry, units)]
    blocks = all_blocks(cut_list_of(geometry), said, units, WIDE)
    if arch:
        blocks += arch_blocks(arch, units, WIDE)
    made: list[Plate] = []
    for least in TOGETHER:
        made = _together(blocks, drawn, on, units, least) or []
        if made and _clean(made):
            return made
    for least in APART:
        made = _apart(blocks, drawn, on, units, least)
        if _clean(made):
            return made
    return made


def _clean(made: Sequence[Plate]) -> bool:
    return not any(collisions(plate.sheet, CLEAR) for plate in made)


def _together(
    blocks: Sequence[Together], drawn: Sequence[Figure], on: Paper, units: str, least: float
) -> list[Plate] | None:
    """One sheet with the list in its upper right corner, in the columns that leave the figures
    the most room; None where that does not hold it.
    """
    cell, found = on.field, []
    drawn = [replace(f, scales=tuple(s for s in f.scales if s <= _least(f, least))) for f in drawn]
    for columns in range(1, int((cell.right - cell.left + BETWEEN) / (WIDE + BETWEEN)) + 1):
        high = lowest(blocks, columns, cell.top - cell.bottom)
        if high is None:
            continue
        left = cell.right - columns * WIDE - (columns - 1) * BETWEEN
        listed = Cell(left, cell.top - high, cell.right, cell.top)
        block = replace(on.block, left=on.block.left - AIR, top=on.block.top + AIR)
        plate = around(NAME, drawn, on, SCALES[units], (listed, block))
        if plate is not None:
            found.append((plate.denominator or 0.0, columns, left, plate))
    if not found:
        return None
    _, columns, left, plate = min(found, key=lambda one: one[:2])
    _write(plate.sheet, blocks, columns, left, cell)
    return [plate]


def _least(figure: Figure, least: float) -> float:
    return least * BLOCK if figure.key.startswith("block") else least


def _write(sheet: Sheet, blocks: Sequence[Together], columns: int, left: float, cell: Cell) -> None:
    high = lowest(blocks, columns, cell.top - cell.bottom) or cell.top - cell.bottom
    for n, column in enumerate(split(blocks, columns, high)[0]):
        y = cell.top
        for block in column:
            block.paint(sheet, left + n * (WIDE + BETWEEN), y)
            y -= block.high


def _apart(
    blocks: Sequence[Together], drawn: Sequence[Figure], on: Paper, units: str, least: float
) -> list[Plate]:
    """The list in columns, and layouts on sheets of their own; where the list leaves room on its
    one sheet, the first of them stand under it.
    """
    wide = on.field.right - on.field.left
    bands = Bands(on)
    bands.band(blocks, max(int((wide + BETWEEN) // (WIDE + BETWEEN)), 1))
    listed = [Plate(LIST, sheet) for sheet in bands.sheets]
    made = filled(LAYOUT, drawn, on, SCALES[units], least=least) if drawn else []
    if len(listed) == 1:
        under = replace(on.field, top=bands.y - BETWEEN)
        half = (len(drawn) - 1) // 2  # rather than a sheet with the last one or two alone
        for count in (*range(half, 0, -1), *range(len(drawn) - 1, half, -1)):
            first = _under(bands.sheets[0], drawn[:count], on, units, under, least)
            rest = filled(LAYOUT, drawn[count:], on, SCALES[units], least=least)
            if first and len(rest) <= len(made):
                return [first, *rest]
    return [*made, *listed]


def _under(
    sheet: Sheet, drawn: Sequence[Figure], on: Paper, units: str, room: Cell, least: float
) -> Plate | None:
    """A list with figures under it; None where they do not fit."""
    scales = SCALES[units]
    size = room.right - room.left, room.top - room.bottom
    good = [replace(f, scales=tuple(s for s in f.scales if s <= least)) for f in drawn]
    if size[1] < LEAST or not all(f.scales for f in good):
        return None
    if chosen_scales(good, scales, *size) is None:
        return None
    (plate,) = filled(NAME, good, on, scales, room, least)
    plate.sheet.add(sheet)
    return plate
