"""A set as a PDF to take to the wall: what has to be on the pallet, where it is put down, the story
pole, and a card for every step.
"""

from __future__ import annotations

import os

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.pieces.card_picture import card_sheet
from fireplace_calc.drawing.pieces.pallet_picture import pallet_sheets
from fireplace_calc.drawing.pieces.pole_picture import pole_sheet
from fireplace_calc.drawing.pieces.set_pictures import pictures_of
from fireplace_calc.drawing.pieces.staging_picture import staging_sheet
from fireplace_calc.geometry.from_set.set_up import set_of, set_up

CAUTION = (
    "Arithmetic, not permission. Weigh a piece before you trust its weight; the maker of the set,"
    " the local code, licensed engineers and the mason on site decide."
)


def print_cards(design: Design, path: str | os.PathLike[str], units: str = FEET_INCHES) -> int:
    """Write the delivery, the staging, the story pole, and the card of every step, each on its
    page.

    Parameters
    ----------
    design : Design
        With a set.
    path : path
        Of the PDF; an earlier file is replaced only when the new one is whole.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    int
        Pages. [-]

    Raises
    ------
    InputError
        When the design has no set, or the file cannot be written.
    """
    set_of(design, "there are no cards to print")
    up = set_up(design)
    pictures = pictures_of(design)
    sheets = [
        *pallet_sheets(up.assembly, units),
        staging_sheet(design, units),
        pole_sheet(pictures, up.plan, units),
        *(card_sheet(pictures, card.number, units) for card in pictures.cards),
    ]
    return write_book(sheets, path, f"{design.name}: piece by piece", CAUTION, CAUTION)
