"""The delivery as a sheet to tick off: every mark drawn, with its count, size and weight."""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.setting.pallet_list import PalletRow, pallet_rows
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_parts
from fireplace_calc.drawing.sheets.dimensions import room_for
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.layout import LADDER, fit, length
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.visible.stages import seen_alone
from fireplace_calc.geometry.visible.viewpoint import CORNER

WIDTH, HEIGHT = 210.0, 297.0
"""A sheet of A4, upright. [mm]"""
ACROSS, DOWN = 3, 6
"""Marks on one sheet. [-]"""
HEAD, FOOT, END = 18.0, 18.0, 9.0
"""Room for the title, under a piece for its words, and at the foot of the sheet. [mm]"""
LINE = 3.6
"""From line to line. [mm]"""
BOXES, BOX = 19.0, 3.0
"""Where the boxes to tick begin, and the side of one. [mm]"""


def pallet_sheets(made: Assembly, units: str = FEET_INCHES) -> list[Sheet]:
    """Sheets of the delivery, all pieces at one scale.

    Parameters
    ----------
    made : Assembly
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    list of Sheet
    """
    rows = pallet_rows(made)
    drawn = [seen_alone(row.piece, CORNER) for row in rows]
    wide, high = (WIDTH - 8.0) / ACROSS, (HEIGHT - HEAD - END) / DOWN
    inner = Cell(0.0, 0.0, wide - 4.0, high - FOOT)
    scratch = Sheet(WIDTH, HEIGHT)
    margins = (1.0, 1.0, 1.0, 1.0)
    scale = max(fit(scratch, inner, bounds_of(parts), margins, LADDER)[1] for parts in drawn)
    each, sheets = ACROSS * DOWN, []
    whole = f"{sum(r.count for r in rows)} pieces, {weight_text(sum(r.whole for r in rows), units)}"
    for first in range(0, len(rows), each):
        sheet = Sheet(WIDTH, HEIGHT)
        sheet.text(6.0, HEIGHT - 8.0, "On the pallet", size=TITLE, ha="left", bold=True)
        note = f"{whole}; count what came, and what came whole, before the first bed is spread"
        sheet.text(6.0, HEIGHT - 14.0, note, size=SMALL, ha="left", ink="soft")
        for k, (row, parts) in enumerate(
            zip(rows[first : first + each], drawn[first : first + each], strict=True)
        ):
            left = 4.0 + (k % ACROSS) * wide
            bottom = HEIGHT - HEAD - (k // ACROSS + 1) * high
            place = Cell(left + 2.0, bottom + FOOT, left + wide - 2.0, bottom + high)
            view, _ = fit(sheet, place, bounds_of(parts), margins, (scale,))
            put_parts(view, parts)
            _write(sheet, left + 3.0, bottom + FOOT - 4.0, row, units)
        sheets.append(sheet)
    return sheets


def _write(sheet: Sheet, left: float, y: float, row: PalletRow, units: str) -> None:
    mark = f"{row.piece.mark} x {row.count}"
    sheet.text(left, y, mark, size=SMALL, ha="left", bold=True)
    x0, x1, y0, y1, _, high = extent(row.piece)
    lines = (
        *wrapped(row.piece.name, WIDTH / ACROSS - 6.0),
        f"{length(x1 - x0, units)} x {length(y1 - y0, units)}, {length(high, units)} high",
        weight_text(row.each, units) + (" each" if row.count > 1 else ""),
    )
    for n, words in enumerate(lines, 1):
        sheet.text(left, y - LINE * n, words, size=SMALL, ha="left")
    x, low = max(left + BOXES, left + room_for([mark], bold=True) + 3.0), y - 0.4
    for word in ("here", "short", "broken"):
        corners = [(x, low), (x + BOX, low), (x + BOX, low + BOX), (x, low + BOX)]
        sheet.line(corners, "seen", closed=True)
        sheet.text(x + BOX + 1.0, y, word, size=SMALL, ha="left")
        x += BOX + room_for([word]) + 2.2
