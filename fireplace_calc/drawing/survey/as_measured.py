"""What was measured, on paper: sketches with figures, what is doubtful, measured beside drawn."""

from __future__ import annotations

import os

from fireplace_calc.assessment import DEFAULT_PACK, assess
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.sheets.lists import TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.survey.numbered import arrow_sketch, number_of
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.drawing.survey.survey_words import doubt_parts, survey_parts
from fireplace_calc.drawing.survey.to_take_along import CAUTION, PAPER_SIZES
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.survey.asked.entry import SurveyEntry
from fireplace_calc.survey.asked.walk import WALK
from fireplace_calc.survey.beside import value_words
from fireplace_calc.survey.from_survey import Surveyed

EDGE, FOOT = 6.0, 12.0
"""Left free at the sides and at the foot. [mm]"""


def measured_design(told: Surveyed) -> Design:
    """The design that was measured.

    Parameters
    ----------
    told : Surveyed

    Raises
    ------
    InputError
        When the entries make none.
    """
    if told.design is None:
        why = f"Nothing can be drawn. {told.trouble}"
        raise InputError(why, "survey", "entries that go together")
    return told.design


def measured_view(
    sheet: Sheet,
    cell: Cell,
    name: str,
    told: Surveyed,
    drawn: Design | None = None,
    units: str = FEET_INCHES,
    size: float = SMALL,
) -> None:
    """A sketch of what stands, each figure where it was measured.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    name : str
        Of ``SKETCHES``.
    told : Surveyed
    drawn : Design or None
        Drawn under it in broken lines.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : float
        Of the letters. [mm]

    Raises
    ------
    InputError
        When the entries make no design.
    """
    design = measured_design(told)

    def says(entry: SurveyEntry, reading: str) -> str:
        one = told.readings[entry.key]
        value = one.given.get(reading) if reading else one.taken
        if value is None:
            return ""
        return f"{number_of(entry, reading)}: {value_words(entry, value, units)}"

    under = None if drawn is None or drawn == design else build_geometry(drawn)
    arrow_sketch(sheet, cell, name, build_geometry(design), WALK, says, under, size)


def measured_sheets(
    told: Surveyed,
    drawn: Design,
    pack: str = DEFAULT_PACK,
    units: str = FEET_INCHES,
    paper: str = "letter",
) -> list[Sheet]:
    """Every sheet: what is doubtful first, then the tables, then the sketches.

    Parameters
    ----------
    told : Surveyed
    drawn : Design
        Of the job, or the usual one.
    pack : str
        Which code to check against.
    units : str
        ``feet-inches`` or ``millimetres``.
    paper : str
        ``letter`` or ``a4``.

    Raises
    ------
    InputError
        When the entries make no design.
    """
    design = measured_design(told)
    width, height = PAPER_SIZES[paper]
    flow = TextFlow(width, height, Cell(EDGE, FOOT, width - EDGE, height - EDGE))
    flow.heading(f"{design.name}: as measured")
    result = assess(design, pack)
    for part in (*doubt_parts(told, result, units), *survey_parts(told, drawn, units)):
        if isinstance(part, str):
            flow.words(part)
        else:
            flow.table(part)
    sheets = flow.sheets
    half = width / 2
    names = list(SKETCHES)
    for n in range(0, len(names), 2):
        sheet = Sheet(width, height)
        for left, name in zip((EDGE, half + 2.0), names[n : n + 2], strict=False):
            cell = Cell(left, FOOT, left + half - EDGE - 2.0, height - EDGE)
            measured_view(sheet, cell, name, told, drawn, units)
        sheets.append(sheet)
    return sheets


def print_measured(
    path: str | os.PathLike[str],
    told: Surveyed,
    drawn: Design,
    pack: str = DEFAULT_PACK,
    units: str = FEET_INCHES,
    paper: str = "letter",
) -> int:
    """Write what was measured.

    Parameters
    ----------
    path : path
        Of the PDF; an earlier file is replaced only when the new one is whole.
    told : Surveyed
    drawn : Design
        Of the job, or the usual one.
    pack : str
        Which code to check against.
    units : str
        ``feet-inches`` or ``millimetres``.
    paper : str
        ``letter`` or ``a4``.

    Returns
    -------
    int
        Pages. [-]

    Raises
    ------
    InputError
        When the entries make no design, or the file cannot be written.
    """
    sheets = measured_sheets(told, drawn, pack, units, paper)
    mark = fingerprint(measured_design(told))
    foot = f"{CAUTION} Inputs {mark}. Broken lines: as drawn."
    return write_book(sheets, path, "As measured", f"Survey, inputs {mark}", foot)
