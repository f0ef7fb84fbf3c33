"""A card: the piece on what already stands, its place from above, and what to know of it."""

from __future__ import annotations

from math import radians

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.setting.cards import SettingCard
from fireplace_calc.build.setting.wording import card_cautions, card_title, card_words
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_parts
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.layout import LADDER, fit, length
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.visible.stages import SeenPart
from fireplace_calc.geometry.visible.viewpoint import CORNER, Viewpoint

ABOVE = Viewpoint(0.0, radians(90))
BELOW = 1.3
"""How much of what stands under a piece is shown. [m]"""
HEADS, LINE, GAP = 24.0, 4.0, 1.6
"""Width of the headings; from line to line; between paragraphs. [mm]"""
WIDTH, HEIGHT = 297.0, 210.0
"""A sheet of A4, lying. [mm]"""
FOOT = 6.0
"""Left free at the foot of a sheet. [mm]"""


def card_view(
    sheet: Sheet, cell: Cell, pictures: SetPictures, step: int, units: str = FEET_INCHES
) -> None:
    """Draw the card of a step.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    pictures : SetPictures
    step : int
        From 1. [-]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    card = pictures.cards[step - 1]
    middle = cell.left + 0.52 * (cell.right - cell.left)
    split = cell.bottom + 0.36 * (cell.top - cell.bottom)
    _standing(sheet, Cell(cell.left, split, middle, cell.top), pictures, step)
    _from_above(sheet, Cell(cell.left, cell.bottom, middle, split), pictures, step, units)
    write_card(sheet, Cell(middle, cell.bottom, cell.right, cell.top), card, units)


def card_sheet(pictures: SetPictures, step: int, units: str = FEET_INCHES) -> Sheet:
    """The card of a step on a sheet of its own.

    Parameters
    ----------
    pictures : SetPictures
    step : int
        From 1. [-]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    sheet = Sheet(WIDTH, HEIGHT)
    card_view(sheet, Cell(2.0, FOOT, WIDTH - 2.0, HEIGHT), pictures, step, units)
    return sheet


def write_card(sheet: Sheet, cell: Cell, card: SettingCard, units: str = FEET_INCHES) -> float:
    """Write the words of a card.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    card : SettingCard
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    float
        Where the last line ends. [mm]
    """
    left, y = cell.left + 4.0, cell.top - 9.0
    sheet.text(left, y, f"Step {card.number} of {card.of}", size=SMALL, ha="left", ink="soft")
    y -= 6.5
    sheet.text(left, y, card_title(card), size=TITLE, ha="left", bold=True)
    y -= 3.0
    for head, words in card_words(card, units):
        y -= LINE + GAP
        sheet.text(left, y, head, size=SMALL, ha="left", bold=True)
        y = _lines(sheet, left + HEADS, y, words, cell.right - 4.0)
    y -= GAP
    for words in card_cautions(card):
        y -= LINE + GAP
        sheet.text(left, y, "!", size=SMALL, ha="left", bold=True, ink="bad")
        y = _lines(sheet, left + 4.0, y, words, cell.right - 4.0)
    return y


def _lines(sheet: Sheet, left: float, y: float, words: str, right: float) -> float:
    for n, line in enumerate(wrapped(words, right - left)):
        y -= LINE if n else 0.0
        sheet.text(left, y, line, size=SMALL, ha="left")
    return y


def _near(pictures: SetPictures, step: int, eye: Viewpoint) -> list[SeenPart]:
    """What is seen of pieces not too far under the last one set; lower ones hide none of it."""
    count = pictures.standing(step)
    set_so_far = pictures.drawn[:count]
    if not count:
        return []
    last = set_so_far[-1]
    low = (last.level if last is not pictures.brick else last.top) - BELOW
    shown = {p.name for p in set_so_far if p.top > low}
    return [part for part in pictures.stages(eye).seen(count) if part.name in shown]


def _standing(sheet: Sheet, cell: Cell, pictures: SetPictures, step: int) -> None:
    parts = _near(pictures, step, CORNER)
    if not parts:
        return
    view, _ = fit(sheet, cell, bounds_of(parts), (6.0, 6.0, 6.0, 6.0), LADDER)
    put_parts(view, parts, (pictures.name_drawn(pictures.cards[step - 1]),))


def _from_above(sheet: Sheet, cell: Cell, pictures: SetPictures, step: int, units: str) -> None:
    """The piece from above, with its distances from the front line and the center line."""
    parts = _near(pictures, step, ABOVE)
    card = pictures.cards[step - 1]
    if not parts or card.placed is None:
        return
    x0, y0, x1, y1 = bounds_of(parts)
    reach = max(-x0, x1)
    box = (-reach, min(y0, 0.0), reach, y1)
    view, _ = fit(sheet, cell, box, (24.0, 15.0, 8.0, 6.0), LADDER)
    put_parts(view, parts, (card.name,))
    view.path([(-reach - 0.03, 0.0), (reach + 0.03, 0.0)], "guide", "guide")
    view.path([(0.0, box[1] - 0.03), (0.0, y1 + 0.03)], "guide", "guide")
    left, right, front, _, _, _ = extent(card.placed.piece)
    stops = sorted({round(s, 6) for s in (left, 0.0, right)})
    foot = view.at(0.0, box[1])[1]
    chain(
        sheet,
        [view.at(s, 0.0)[0] for s in stops],
        [length(b - a, units) for a, b in zip(stops, stops[1:], strict=False)],
        foot - 5.0,
        limits=(cell.left + 2, cell.right - 2),
    )
    if front > 1e-6:
        edge = view.at(-reach, 0.0)[0]
        chain(
            sheet,
            [view.at(0.0, s)[1] for s in (0.0, front)],
            [length(front, units)],
            edge - 5.0,
            along="y",
            limits=(cell.bottom + 2, cell.top - 2),
        )
