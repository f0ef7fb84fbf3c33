"""The pieces somebody casts himself as a PDF: each drawn, the form of each, castable, cautions."""

from __future__ import annotations

import os

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.casting.forms_wording import (
    HEADINGS,
    casting_cautions,
    form_words,
    forms_summary,
)
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.pieces.pallet_picture import pallet_sheets
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.assembled.assembly import Assembly

WIDTH, HEIGHT = 297.0, 210.0
"""A sheet of A4, lying. [mm]"""
SHARES = (9, 18, 80, 9, 14, 25, 9)
"""Widths of the columns, against each other. [-]"""
CAUTION = (
    "Arithmetic, not permission. Nobody has cast these pieces: the maker of the castable, an"
    " engineer and the local code decide."
)


def forms_table(made: Assembly, units: str = FEET_INCHES) -> Table:
    """The list of forms.

    Parameters
    ----------
    made : Assembly
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    columns = tuple(Column(name, share) for name, share in zip(HEADINGS, SHARES, strict=True))
    return Table(
        "Forms to build", columns, form_words(made, units), before=forms_summary(made, units)
    )


def forms_sheets(
    made: Assembly, said: tuple[str, ...] = (), units: str = FEET_INCHES
) -> list[Sheet]:
    """Sheets of the list, with what differs from the laid fireplace and what can hurt.

    Parameters
    ----------
    made : Assembly
    said : tuple of str
        What differs.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    flow = TextFlow(WIDTH, HEIGHT, Cell(6.0, 12.0, WIDTH - 6.0, HEIGHT - 6.0))
    flow.table(forms_table(made, units))
    for title, sentences in (
        ("Otherwise than laid", said),
        ("Before you cast", casting_cautions(units=units)),
    ):
        if sentences:
            flow.heading(title)
            for sentence in sentences:
                flow.words(sentence)
    return flow.sheets


def print_forms(
    made: Assembly,
    path: str | os.PathLike[str],
    said: tuple[str, ...] = (),
    units: str = FEET_INCHES,
) -> int:
    """Write every piece drawn, and the list of forms.

    Parameters
    ----------
    made : Assembly
    path : path
        Of the PDF; an earlier file is replaced only when the new one is whole.
    said : tuple of str
        What differs from the fireplace the pieces were cut from.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    int
        Pages. [-]

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    sheets = [*pallet_sheets(made, units), *forms_sheets(made, said, units)]
    return write_book(sheets, path, "Pieces to cast", CAUTION, CAUTION)
