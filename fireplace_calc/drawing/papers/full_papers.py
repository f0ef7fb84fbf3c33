"""The paper set: drawings at a true round scale, then findings, order and order of work, black on
white, ready to print.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from io import BytesIO
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, FOOT, InputError
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.papers.written_sheets import tables
from fireplace_calc.drawing.plates.title_block import elided
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.layout import ARCHITECT
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.takeoff.cost import Price

PAPERS = {
    "letter": (279.4, 215.9),
    "11x17": (431.8, 279.4),
    "A4": (297.0, 210.0),
    "A3": (420.0, 297.0),
}
"""All lying. [mm]"""
USUAL = {FEET_INCHES: "letter", "millimetres": "A4"}
"""Paper of each unit system, where nobody asks for another."""
EDGE, FOOT_ROOM = 8.0, 21.0
"""Margin all round, and the strip at the foot for the title block. [mm]"""
CAUTION = (
    "For planning only. Local code, its official and licensed practice decide. Do not build from"
    " what is not checked."
)
Told = Callable[[int, int, str], None]
"""Called with how many sheets are done, of how many, and the name of the next."""


def paper(units: str, name: str | None = None) -> tuple[float, float]:
    """Width and height of a paper. [mm]

    Raises
    ------
    InputError
        When there is no such paper.
    """
    name = name or USUAL[units]
    if name not in PAPERS:
        raise InputError(
            f"Paper is {name!r}, but there are only {', '.join(PAPERS)}.",
            "Paper",
            ", ".join(PAPERS),
            name,
        )
    return PAPERS[name]


def pages(
    result: Assessment,
    units: str,
    size: str | None = None,
    drawings_only: bool = False,
    prices: Mapping[str, Price] | None = None,
) -> list[tuple[str, Sheet]]:
    """Every sheet with its title block; a view is drawn at the largest round scale that fits."""
    wide, high = paper(units, size)
    cell = place(wide, high)
    made: list[tuple[str, Sheet, float | None]] = [*_drawn(result, units, wide, high, cell)]
    if not drawings_only:
        for name, parts in tables(result, units, prices):
            flow = TextFlow(wide, high, cell)
            for part in parts:
                flow.words(part) if isinstance(part, str) else flow.table(part)
            made += [(name, sheet, None) for sheet in flow.sheets]
    return blocked(made, result, units)


def blocked(
    made: Sequence[tuple[str, Sheet, float | None]], result: Assessment, units: str
) -> list[tuple[str, Sheet]]:
    """The same sheets with their title blocks; each has its name and, on a drawing, its scale
    denominator.
    """
    for number, (name, sheet, denominator) in enumerate(made, 1):
        _block(sheet, result, name, f"sheet {number} of {len(made)}", denominator, units)
    return [(name, sheet) for name, sheet, _ in made]


def place(wide: float, high: float) -> Cell:
    """What the margin and the title block leave of a sheet. [mm]"""
    return Cell(EDGE, EDGE + FOOT_ROOM, wide - EDGE, high - EDGE)


def _drawn(
    result: Assessment, units: str, wide: float, high: float, cell: Cell
) -> Iterator[tuple[str, Sheet, float]]:
    for view in CATALOGUE.values():
        if not view.title or not view.suits(result.geometry):
            continue
        sheet = Sheet(wide, high)
        told: list[float] = []

        def scale_name(denominator: float, told: list[float] = told) -> str:
            told.append(denominator)
            return ARCHITECT[units][denominator]

        more: dict[str, Any] = (
            {"limits": roof_limits(result.findings)} if view.key == "roof" else {}
        )
        view.draw(
            sheet,
            cell,
            result.geometry,
            units,
            scales=ARCHITECT[units],
            name_scale=scale_name,
            **more,
        )
        yield (
            (
                "Block layout"
                if view.key == "bricks" and not lay_brickwork(result.geometry).layouts
                else view.title
            ),
            sheet,
            told[0],
        )


def _block(
    sheet: Sheet, result: Assessment, name: str, number: str, denominator: float | None, units: str
) -> None:
    """Frame, title block and, on a drawing, scale bar."""
    left, right, low, line = EDGE, sheet.width - EDGE, EDGE, EDGE + FOOT_ROOM - 1.0
    sheet.line(
        [(left, low), (right, low), (right, sheet.height - EDGE), (left, sheet.height - EDGE)],
        "seen",
        closed=True,
    )
    sheet.line([(left, line), (right, line)], "seen")
    design = result.design
    told = f"{name}, {number}"
    room = right - left - 12 - width(told, SMALL, True)
    named = elided(design.name, room, TITLE, True)
    sheet.text(left + 3, low + 13.4, named, size=TITLE, ha="left", bold=True)
    place = elided(design.site.place, 78.0, SMALL) or "place not named"
    sheet.text(
        left + 3,
        low + 8.2,
        f"{place}. Checked against {result.pack}. {date.today().isoformat()}. Inputs"
        f" {fingerprint(design)}.",
        size=SMALL,
        ha="left",
    )
    invented = (
        " Invented example." if "invented" in (design.note + design.site.place).lower() else ""
    )
    sheet.text(left + 3, low + 3.4, CAUTION + invented, size=SMALL, ha="left")
    sheet.text(right - 3, low + 13.4, told, size=SMALL, ha="right", bold=True)
    sheet.text(right, low - 3.2, made_by(), size=SMALL, ha="right")
    if denominator is None:
        return
    unit, word = (FOOT, "ft") if units == FEET_INCHES else (1.0, "m")
    step = unit * 1000 / denominator
    while step > 50:
        unit, word = (unit / 12, "in") if word == "ft" else (unit / 10, "dm")
        step = unit * 1000 / denominator
    count = max(int(50 / step), 1)
    start = right - 3 - count * step
    for k in range(count):
        x = start + k * step
        sheet.line(
            [(x, low + 8.0), (x + step, low + 8.0), (x + step, low + 9.2), (x, low + 9.2)],
            "fine",
            closed=True,
        )
        if k % 2 == 0:
            sheet.fill(
                [[(x, low + 8.0), (x + step, low + 8.0), (x + step, low + 9.2), (x, low + 9.2)]],
                "ink",
            )
    sheet.text(start - 1.5, low + 7.6, f"{count} {word}", size=SMALL, ha="right")


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
    drawings_only: bool = False,
    prices: Mapping[str, Price] | None = None,
) -> Iterator[tuple[int, int, str]]:
    """The paper set as ``printing`` writes it."""
    return printing(pages(result, units, size, drawings_only, prices), path, result)


def paper_set(
    result: Assessment,
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
    drawings_only: bool = False,
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
        ``letter``, ``11x17``, ``A4`` or ``A3``; else letter, or A4 for millimetres.
    drawings_only : bool
        Leave out the written sheets.
    prices : dict or None
        Price list by item; else the example list, which is invented.
    told : callable or None
        Hears how far it is.

    Raises
    ------
    InputError
        When there is no such paper, or the file cannot be written.
    """
    for done in writing(result, path, units, size, drawings_only, prices):
        if told:
            told(*done)
