"""The paper set: every sheet of it, black on white, written into one PDF while whoever waits looks
on.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from io import BytesIO

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.takeoff.cost import Price

Told = Callable[[int, int, str], None]
"""Called with how many sheets are done, of how many, and the name of the next."""


def printing(
    made: list[tuple[str, Sheet]], path: str | os.PathLike[str], result: Assessment
) -> Iterator[tuple[int, int, str]]:
    """Write sheets into one PDF, one by one, so that whoever waits can watch, and stop by closing
    the generator: then no file is left.

    Yields
    ------
    int, int, str
        How many sheets are done, of how many, and the name of the next.
    """
    from fireplace_calc.drawing.sheets.pdf import (
        PdfBook,  # here, so that a panel need not wait for what only papers use
    )

    held = BytesIO()
    book = PdfBook(
        held, result.design.name, f"Fireplace paper set, inputs {fingerprint(result.design)}"
    )
    for number, (name, sheet) in enumerate(made):
        yield number, len(made), name
        book.add(sheet)
    book.save()
    write_whole(path, held.getvalue())
    yield len(made), len(made), ""


def writing(
    result: Assessment,
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
) -> Iterator[tuple[int, int, str]]:
    """Draw the whole set sheet by sheet, then write it as ``printing`` does.

    While it is drawn nobody knows how many sheets there will be: as many are told as have been
    drawn and as there are still makers of sheets.
    """
    made = yield from whole_set.drawing(result, units, size, prices)
    yield from printing(made, path, result)


def paper_set(
    result: Assessment,
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
    told: Told | None = None,
) -> None:
    """Write the paper set as PDF; an earlier file is replaced only when the new one is whole.

    Parameters
    ----------
    result : Assessment
    path : path
        Of the PDF.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str or None
        ``letter``, ``11x17``, ``A4`` or ``A3``; else 11x17, or A3 for millimetres.
    prices : dict or None
        Price list by item; else the example list, which is invented.
    told : callable or None
        Hears how far it is.

    Raises
    ------
    InputError
        When there is no such paper, or the file cannot be written.
    """
    for done in writing(result, path, units, size, prices):
        if told:
            told(*done)
