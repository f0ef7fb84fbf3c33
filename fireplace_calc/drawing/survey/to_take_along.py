"""The sheet to take along: sketches with numbered arrows, lines to write on, what stays unseen."""

from __future__ import annotations

import os
from collections.abc import Sequence

from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.survey.entry_rows import EntryRow, draw_row, entry_row
from fireplace_calc.drawing.survey.invented import sketched
from fireplace_calc.drawing.survey.numbered import arrow_sketch
from fireplace_calc.survey.asked.entry import HIDDEN, ROOF, ROOM, STATIONS, UP
from fireplace_calc.survey.asked.walk import WALK
from fireplace_calc.survey.kept import Survey
from fireplace_calc.survey.unseen import CAUTIONS, UNSEEN

PAPER_SIZES = {"letter": (279.4, 215.9), "a4": (297.0, 210.0)}
"""Lying. [mm]"""
EDGE, GUTTER, HEAD, FOOT = 9.0, 8.0, 17.0, 16.0
"""Left free at the sides, between the halves, for the head and for the foot. [mm]"""
SHOWN: dict[str, tuple[str, ...]] = {
    ROOM: ("front", "plan", "section"),
    UP: ("section", "plan"),
    ROOF: ("roof", "top"),
    HIDDEN: ("plan", "roof", "section"),
}
"""Sketches of each station, in the order of its sheets."""
CAUTION = (
    "What was measured, by whoever signed. A survey is no inspection: local code, the building"
    " official and a licensed chimney professional decide before any fire is lit."
)
TO_WRITE = ("Job", "Measured by", "Date")


def survey_sheets(
    paper: str = "letter", units: str = FEET_INCHES, survey: Survey | None = None
) -> list[Sheet]:
    """Every sheet; beside the signs of trouble stands what no survey sees.

    Parameters
    ----------
    paper : str
        ``letter`` or ``a4``.
    units : str
        ``feet-inches`` or ``millimetres``.
    survey : Survey or None
        What was entered already is written in.

    Returns
    -------
    list of Sheet

    Raises
    ------
    InputError
        For another paper.
    """
    if paper not in PAPER_SIZES:
        raise InputError(
            f"Paper is {paper!r}, but there are only {' and '.join(PAPER_SIZES)}.",
            "paper",
            ", ".join(PAPER_SIZES),
            paper,
        )
    width, height = PAPER_SIZES[paper]
    half = (width - 2 * EDGE - GUTTER) / 2
    cells = [Cell(left, FOOT, left + half, height - HEAD) for left in (EDGE, EDGE + half + GUTTER)]
    sheets: list[Sheet] = []
    for station in STATIONS:
        rows = [entry_row(e, half, units, survey) for e in WALK if e.station == station]
        opening = CAUTIONS if station == ROOM else ()
        columns = _columns(rows, cells[0], opening)
        shown = list(SHOWN.get(station, ()))
        while columns:
            sheet = Sheet(width, height)
            # The last column takes all sketches that are left.
            own = shown[:1] if len(columns) > 1 else list(shown)
            del shown[: len(own)]
            _head(sheet, station, survey)
            places = cells[1:] if own else cells
            for cell in places:
                if columns:
                    _column(sheet, cell, columns.pop(0), opening if not sheets else ())
            _sketches(sheet, cells[0], own, station)
            sheets.append(sheet)
    _unseen(sheets[-1], cells[1])
    for n, sheet in enumerate(sheets, 1):
        text = f"Sheet {n} of {len(sheets)}"
        sheet.text(width - EDGE, height - 7.5, text, size=SMALL, ha="right")
    return sheets


def _high(sentences: Sequence[str], wide: float) -> float:
    lines = sum(len(wrapped(sentence, wide)) for sentence in sentences)
    return lines * PITCH + len(sentences) * 1.2 + TITLE + 4.0 if sentences else 0.0


def _columns(rows: Sequence[EntryRow], cell: Cell, opening: Sequence[str]) -> list[list[EntryRow]]:
    """Rows dealt out to columns; the first one has the cautions on top."""
    columns: list[list[EntryRow]] = [[]]
    left = cell.top - cell.bottom - _high(opening, cell.right - cell.left)
    for row in rows:
        if row.high > left:
            columns.append([])
            left = cell.top - cell.bottom
        columns[-1].append(row)
        left -= row.high
    return columns


def _head(sheet: Sheet, station: str, survey: Survey | None) -> None:
    """Where one stands, and lines for the job."""
    y = sheet.height - 7.5
    title = sheet.text(EDGE, y, station, size=TITLE, ha="left", bold=True)
    x, end = title.extent[2] + 8.0, sheet.width - EDGE - 26.0
    room = (end - x) / len(TO_WRITE)
    for n, name in enumerate(TO_WRITE):
        start = x + n * room
        sheet.text(start, y, name, size=SMALL, ha="left")
        start += lettering.width(name, SMALL) + 1.5
        sheet.line([(start, y - 0.8), (x + (n + 1) * room - 4.0, y - 0.8)], "seen")
        if name == TO_WRITE[0] and survey is not None and survey.name:
            job = wrapped(survey.name, x + room - 4.0 - start)[0]
            sheet.text(start + 0.5, y, job, size=SMALL, ha="left")


def _column(sheet: Sheet, cell: Cell, rows: Sequence[EntryRow], opening: Sequence[str]) -> None:
    y = cell.top
    if opening:
        y = _sentences(sheet, cell, "Before you begin", opening)
    for row in rows:
        draw_row(sheet, row, cell.left, y, cell.right - cell.left)
        y -= row.high


def _sentences(sheet: Sheet, cell: Cell, title: str, sentences: Sequence[str]) -> float:
    """A title and short paragraphs; gives the level under them. [mm]"""
    y = cell.top - TITLE
    sheet.text(cell.left, y, title, size=TITLE, ha="left", bold=True)
    y -= 1.5
    for sentence in sentences:
        for line in wrapped(sentence, cell.right - cell.left):
            y -= PITCH
            sheet.text(cell.left, y, line, size=SMALL, ha="left")
        y -= 1.2
    return y - 2.5


def _sketches(sheet: Sheet, cell: Cell, names: Sequence[str], station: str) -> None:
    """Sketches of one sheet, over each other."""
    entries = [entry for entry in WALK if entry.station == station]
    for n, name in enumerate(names):
        step = (cell.top - cell.bottom) / len(names)
        part = Cell(cell.left, cell.top - (n + 1) * step, cell.right, cell.top - n * step)
        arrow_sketch(sheet, part, name, sketched(), entries)


def _unseen(sheet: Sheet, cell: Cell) -> None:
    """What no survey sees, and how one would find out."""
    sheet.text(
        cell.left, cell.top - TITLE, "Not seen by this survey", size=TITLE, ha="left", bold=True
    )
    wide, y = cell.right - cell.left, cell.top - TITLE - 1.5
    for one in UNSEEN:
        lines = [
            *((line, True) for line in wrapped(f"{one.what}.", wide, True)),
            *((line, False) for line in wrapped(f"{one.why} {one.how}", wide)),
        ]
        for line, bold in lines:
            y -= PITCH
            sheet.text(cell.left, y, line, size=SMALL, ha="left", bold=bold)
        y -= 1.6


def print_survey(
    path: str | os.PathLike[str],
    paper: str = "letter",
    units: str = FEET_INCHES,
    survey: Survey | None = None,
) -> int:
    """Write the sheets to take along.

    Parameters
    ----------
    path : path
        Of the PDF; an earlier file is replaced only when the new one is whole.
    paper : str
        ``letter`` or ``a4``.
    units : str
        ``feet-inches`` or ``millimetres``.
    survey : Survey or None
        What was entered already is written in.

    Returns
    -------
    int
        Pages. [-]

    Raises
    ------
    InputError
        For another paper, or when the file cannot be written.
    """
    sheets = survey_sheets(paper, units, survey)
    foot = f"{CAUTION} {made_by()}."
    return write_book(sheets, path, "Measure what stands", "Survey of a fireplace", foot)
