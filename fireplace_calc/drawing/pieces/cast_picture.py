"""Every piece that is to be cast on one sheet: mark, count and weight under each."""

from __future__ import annotations

from math import ceil, sqrt

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.casting.forms_list import form_rows
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_parts
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.visible.stages import seen_alone
from fireplace_calc.geometry.visible.viewpoint import CORNER

FOOT, GAP = 9.0, 2.0
"""Room for the words under a piece, and beside it. [mm]"""
LINE = 3.6
"""From line to line. [mm]"""


def cast_view(sheet: Sheet, cell: Cell, made: Assembly, units: str = FEET_INCHES) -> None:
    """Draw one piece of every form, all at one scale; marks that share a form stand together.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        Where on the paper. [mm]
    made : Assembly
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    rows = form_rows(made)
    own = [row for row in rows if row.form == row.piece.mark]
    drawn = [seen_alone(row.piece, CORNER) for row in own]
    across = ceil(sqrt(len(own) * (cell.right - cell.left) / (cell.top - cell.bottom)))
    wide = (cell.right - cell.left) / across
    high = (cell.top - cell.bottom) / ceil(len(own) / across)
    inner = Cell(0.0, 0.0, wide - 2 * GAP, high - FOOT)
    margins = (0.0, 0.0, 0.0, 0.0)
    scratch = Sheet(cell.right, cell.top)
    scale = max(fit(scratch, inner, bounds_of(parts), margins, LADDER)[1] for parts in drawn)
    for k, (row, parts) in enumerate(zip(own, drawn, strict=True)):
        left = cell.left + (k % across) * wide
        bottom = cell.top - (k // across + 1) * high
        place = Cell(left + GAP, bottom + FOOT, left + wide - GAP, bottom + high)
        view, _ = fit(sheet, place, bounds_of(parts), margins, (scale,))
        put_parts(view, parts)
        same = [one for one in rows if one.form == row.form]
        marks = ", ".join(f"{one.piece.mark} x {one.count}" for one in same)
        middle = left + wide / 2
        sheet.text(middle, bottom + FOOT - LINE, marks, size=SMALL, bold=True)
        weight = weight_text(row.weight, units)
        sheet.text(middle, bottom + FOOT - 2 * LINE, weight, size=SMALL)
