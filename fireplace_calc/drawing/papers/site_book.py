"""Sheets for the site as one PDF, each with what has to be said at its foot."""

from __future__ import annotations

import os
from collections.abc import Sequence
from io import BytesIO

from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.editing.whole_files import write_whole

SMALLEST = 2.2
"""Letters of the foot. [mm]"""
EDGE, LINE = 6.0, 3.0
"""Left free beside the foot, and from line to line of it. [mm]"""


def write_book(
    sheets: Sequence[Sheet], path: str | os.PathLike[str], title: str, subject: str, foot: str
) -> int:
    """Write sheets, one a page.

    Parameters
    ----------
    sheets : sequence of Sheet
    path : path
        Of the PDF; an earlier file is replaced only when the new one is whole.
    title, subject : str
        Written into the file.
    foot : str
        Written at the foot of every page.

    Returns
    -------
    int
        Pages. [-]

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    written = BytesIO()
    book = PdfBook(written, title, subject)
    for sheet in sheets:
        lines = wrapped(foot, (sheet.width - 2 * EDGE) * SMALL / SMALLEST)
        for n, line in enumerate(reversed(lines)):
            sheet.text(EDGE, 4.0 + LINE * n, line, size=SMALLEST, ha="left")
        book.add(sheet)
    book.save()
    write_whole(path, written.getvalue())
    return len(sheets)
