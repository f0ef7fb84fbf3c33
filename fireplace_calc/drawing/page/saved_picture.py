"""A sheet as a picture on its own: SVG or PNG, of its right size in millimeters."""

from __future__ import annotations

import io
import re

from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.page.sheet_artist import sheet_figure
from fireplace_calc.drawing.sheets.sheet import Sheet

KINDS = ("svg", "png")
"""Ends of names of picture files."""
DOTS = 200.0
"""Of a PNG to an inch. [1/in]"""


def picture(sheet: Sheet, kind: str = "svg", theme: str = "print") -> bytes:
    """A sheet as the content of a picture file.

    Parameters
    ----------
    sheet : Sheet
    kind : str
        ``svg`` has letters as outlines, so that it looks the same whichever fonts there are;
        ``png`` has ``DOTS`` to an inch, and says so.
    theme : str
        ``light``, ``dark`` or ``print``.

    Returns
    -------
    bytes
        As large on paper as the sheet.

    Raises
    ------
    InputError
        When there is no such kind.
    """
    known_kind(kind)
    held, figure = io.BytesIO(), sheet_figure(sheet, theme)
    if kind == "png":
        figure.savefig(held, format="png", dpi=DOTS, metadata={"Software": made_by()})
        return held.getvalue()
    figure.savefig(held, format="svg", metadata={"Creator": made_by(), "Date": None})
    size = f'width="{sheet.width:.10g}mm" height="{sheet.height:.10g}mm"'
    written = held.getvalue().decode()
    return re.sub(r'width="[\d.]+pt" height="[\d.]+pt"', size, written, count=1).encode()


def known_kind(kind: str) -> str:
    """A kind of picture that there is, or a sentence that says which there are.

    Raises
    ------
    InputError
        When there is no such kind.
    """
    if kind not in KINDS:
        raise InputError(
            f"Pictures are {kind!r}, but there are only {' and '.join(KINDS)}.",
            "Pictures",
            " or ".join(KINDS),
            kind,
        )
    return kind
