"""A set as it grows: front, section on the center line, and from above the left corner."""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.setting.wording import card_title
from fireplace_calc.drawing.pieces.seen_parts import put_parts
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit, level, title
from fireplace_calc.geometry.visible.viewpoint import CORNER, FRONT, SECTION

SHARES = (("Front", FRONT, 0.36), ("Section on the center line", SECTION, 0.30), ("", CORNER, 0.34))
"""Views, from where, and how much of the cell's width they take. [-]"""
MARGINS = (6.0, 12.0, 6.0, 8.0)
LEVELS = 22.0
"""Room for the level at the side of the front. [mm]"""


def build_view(
    sheet: Sheet, cell: Cell, pictures: SetPictures, step: int, units: str = FEET_INCHES
) -> None:
    """Draw what stands after a step, three times, the piece just set marked.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    pictures : SetPictures
    step : int
        Nought is the bare footing. [-]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    count, card = pictures.standing(step), pictures.card(step)
    now = (pictures.name_drawn(card),) if card else ()
    cells = _cells(cell)
    boxes = [pictures.stages(eye).bounds(pictures.shown(step)) for _, eye, _ in SHARES]
    rooms = [(LEVELS, *MARGINS[1:]) if eye is FRONT else MARGINS for _, eye, _ in SHARES]
    every = list(zip(cells, boxes, rooms, strict=True))
    # One scale for all: a course is as high in one view as in the next.
    scale = max(fit(sheet, *one, LADDER)[1] for one in every)
    for (name, eye, _), (here, box, room) in zip(SHARES, every, strict=True):
        view, _ = fit(sheet, here, box, room, (scale,))
        put_parts(view, pictures.stages(eye).seen(count), now)
        if eye.tip == 0.0:
            ends = [(box[0] - 0.1, pictures.made.start), (box[2] + 0.1, pictures.made.start)]
            view.path(ends, "ground")
        if eye is FRONT and card is not None and card.placed is not None:
            x, y = view.at(box[0], card.placed.top)
            sheet.line([(x - 2.0, y), (x - 0.5, y)], "seen")
            sheet.text(x - 3.0, y, level(card.top, units), size=SMALL, ha="right", va="middle")
        words = name or (f"{step}. {card_title(card)}" if card else "The bare footing")
        title(sheet, here, words)


def _cells(cell: Cell) -> list[Cell]:
    left, found = cell.left, []
    for _, _, share in SHARES:
        right = left + share * (cell.right - cell.left)
        found.append(Cell(left, cell.bottom, right, cell.top))
        left = right
    return found


def build_sheet(pictures: SetPictures, step: int, units: str = FEET_INCHES) -> Sheet:
    """One step on a sheet of its own.

    Parameters
    ----------
    pictures : SetPictures
    step : int
        Nought is the bare footing. [-]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    sheet = Sheet(300.0, 186.0)
    build_view(sheet, Cell(0.0, 0.0, sheet.width, sheet.height), pictures, step, units)
    return sheet
