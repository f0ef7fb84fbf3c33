"""The drawing set on paper: one view a page, at a true round scale, black on white."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import matplotlib
from matplotlib.backends.backend_pdf import FigureCanvasPdf, PdfPages
from matplotlib.figure import Figure

from fireplace_calc.assess import Assessment
from fireplace_calc.drawing.canvas import paint
from fireplace_calc.drawing.front import front
from fireplace_calc.drawing.live import roof_limits
from fireplace_calc.drawing.plan import plan
from fireplace_calc.drawing.roof import roof
from fireplace_calc.drawing.section import section
from fireplace_calc.drawing.sheet import Cell, Sheet
from fireplace_calc.drawing.style import SMALL, TITLE
from fireplace_calc.drawing.views import ARCHITECT
from fireplace_calc.units import FEET_INCHES, FOOT, InputError

PAPER = {FEET_INCHES: (279.4, 215.9), "millimetres": (297.0, 210.0)}
"""Letter and A4, lying. [mm]"""
EDGE, FOOT_ROOM = 8.0, 21.0
"""Margin all round, and the strip at the foot for the title block. [mm]"""
CAUTION = "For planning only. Local code, its official and licensed practice decide. Do not build from what is not checked."
VIEWS = {"Front elevation": front, "Section": section, "Plan": plan, "Against the roof": roof}


def pages(result: Assessment, units: str) -> Iterator[tuple[str, Sheet]]:
    """One sheet after another, each with its title block; a view is drawn at the largest round scale that fits."""
    wide, high = PAPER[units]
    for number, (name, view) in enumerate(VIEWS.items(), 1):
        sheet = Sheet(wide, high)
        told: list[float] = []

        def scale_name(denominator: float, told: list[float] = told) -> str:
            told.append(denominator)
            return ARCHITECT[units][denominator]

        more = {"limits": roof_limits(result.findings)} if view is roof else {}
        view(sheet, Cell(EDGE, EDGE + FOOT_ROOM, wide - EDGE, high - EDGE), result.geometry, units, scales=ARCHITECT[units],
             name_scale=scale_name, **more)
        _block(sheet, result, name, f"sheet {number} of {len(VIEWS)}", told[0], units)
        yield name, sheet


def _block(sheet: Sheet, result: Assessment, name: str, number: str, denominator: float, units: str) -> None:
    """Frame, title block and scale bar."""
    left, right, low, line = EDGE, sheet.width - EDGE, EDGE, EDGE + FOOT_ROOM - 1.0
    sheet.line([(left, low), (right, low), (right, sheet.height - EDGE), (left, sheet.height - EDGE)], "seen", closed=True)
    sheet.line([(left, line), (right, line)], "seen")
    design = result.design
    sheet.text(left + 3, low + 13.4, design.name, size=TITLE, ha="left", bold=True)
    place = design.site.place or "place not named"
    sheet.text(left + 3, low + 8.2, f"{place}. Checked against {result.pack}. {date.today().isoformat()}", size=SMALL, ha="left")
    invented = " Invented example." if "invented" in (design.note + design.site.place).lower() else ""
    sheet.text(left + 3, low + 3.4, CAUTION + invented, size=SMALL, ha="left")
    sheet.text(right - 3, low + 13.4, f"{name}, {number}", size=SMALL, ha="right", bold=True)
    unit, word = (FOOT, "ft") if units == FEET_INCHES else (1.0, "m")
    step = unit * 1000 / denominator
    count = max(int(50 / step), 1)
    start = right - 3 - count * step
    for k in range(count):
        x = start + k * step
        sheet.line([(x, low + 8.0), (x + step, low + 8.0), (x + step, low + 9.2), (x, low + 9.2)], "fine", closed=True)
        if k % 2 == 0:
            sheet.fill([[(x, low + 8.0), (x + step, low + 8.0), (x + step, low + 9.2), (x, low + 9.2)]], "ink")
    sheet.text(start - 1.5, low + 7.6, f"{count} {word}", size=SMALL, ha="right")


def drawing_set(result: Assessment, path: str | os.PathLike, units: str = FEET_INCHES) -> None:
    """Write the drawing set as PDF; an earlier file is replaced only when the new one is whole.

    Parameters
    ----------
    result : Assessment
    path : path
        Of the PDF.
    units : str
        ``feet-inches`` draws on letter, ``millimetres`` on A4.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    path = Path(path)
    try:
        handle, made = tempfile.mkstemp(suffix=".pdf", dir=path.parent)
        os.close(handle)
        try:
            with matplotlib.rc_context({"pdf.fonttype": 42}):
                info = {"Title": result.design.name, "Subject": "Fireplace drawing set", "CreationDate": None}
                with PdfPages(made, metadata=info) as book:
                    for _, sheet in pages(result, units):
                        figure = Figure(figsize=(sheet.width / 25.4, sheet.height / 25.4))
                        FigureCanvasPdf(figure)
                        paint(figure.add_axes((0, 0, 1, 1)), sheet, "print")
                        book.savefig(figure)
            os.chmod(made, 0o644)
            os.replace(made, path)
        finally:
            if os.path.exists(made):
                os.unlink(made)
    except OSError as trouble:
        raise InputError(f"{path} cannot be written: {trouble.strerror}.", "--out", "a folder that can be written to", str(path)) from None
