"""The cards of a set as a PDF: one page a step, to take to the wall."""

from __future__ import annotations

import os
from io import BytesIO

from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.pieces.card_picture import card_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.geometry.from_set.set_up import set_up

CAUTION = (
    "Arithmetic, not permission. Weigh a piece before you trust its weight; the maker of the set,"
    " the local code, licensed engineers and the mason on site decide."
)


def print_cards(design: Design, path: str | os.PathLike[str], units: str = FEET_INCHES) -> int:
    """Write the card of every step, in order, each on a page of its own.

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
    made = design.piece_set
    if made is None:
        raise InputError(
            "The design is built without a set of pieces, so there are no cards to print.",
            "Set of pieces",
            "the name of a set",
            design.pieces.set,
        )
    pictures = SetPictures(set_up(design).assembly, made.lining)
    written = BytesIO()
    book = PdfBook(written, f"{design.name}: piece by piece", CAUTION)
    for card in pictures.cards:
        sheet = card_sheet(pictures, card.number, units)
        sheet.text(6.0, 4.0, CAUTION, size=2.2, ha="left")
        book.add(sheet)
    book.save()
    write_whole(path, written.getvalue())
    return len(pictures.cards)
