"""The record of what was measured as a PDF for the inspector: drawing, entries, lines to sign."""

from __future__ import annotations

import os
from datetime import date

from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.setting.cards import lift_length
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.pieces.built_picture import built_sheet
from fireplace_calc.drawing.pieces.set_pictures import pictures_of
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.from_set.set_up import SetUp, set_of, set_up
from fireplace_calc.pieces.standing.as_built import AsBuilt
from fireplace_calc.pieces.standing.inspector_record import (
    HEADINGS,
    record_rows,
    record_table,
    tolerance_words,
)
from fireplace_calc.pieces.standing.next_beds import replan

CAUTION = (
    "What was measured, as it was entered; nobody else has looked. Local code, its official and the"
    " maker of the set decide whether it will do."
)
WIDTH, HEIGHT = 297.0, 210.0
"""A sheet of A4, lying. [mm]"""
SHARES = (19, 18, 17, 17, 19, 21, 21, 19, 25, 17, 20)
"""Widths of the columns, against each other. [-]"""
TO_SIGN = ("Measured by", "Inspected by")
SIGN_ROOM, SIGN_NAMES, SIGN_DATE = 12.0, 26.0, 52.0
"""Height of a line to sign, room for its heading, and for the date at its end. [mm]"""


def lift_lengths(made: Assembly) -> dict[str, float]:
    """How long each lift is, by its name. [m]

    Parameters
    ----------
    made : Assembly
    """
    return {lift.name: lift_length(made, n) for n, lift in enumerate(made.lifts)}


def print_record(
    design: Design, built: AsBuilt, path: str | os.PathLike[str], units: str = FEET_INCHES
) -> int:
    """Write the record: the set as it stands, every entry with its tolerance, lines to sign.

    Parameters
    ----------
    design : Design
        With a set.
    built : AsBuilt
        What was measured on it.
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
        When the design has no set, an entry names no lift of it, or the file cannot be written.
    """
    set_of(design, "nothing of one can be measured")
    up = set_up(design)
    pictures = pictures_of(design)
    sheets = [built_sheet(pictures, up.plan, built, units), *_written(design, up, built, units)]
    mark = fingerprint(design)
    foot = f"{CAUTION} Inputs {mark}. {made_by()}."
    return write_book(sheets, path, f"{design.name}: as built", f"As built, inputs {mark}", foot)


def _written(design: Design, up: SetUp, built: AsBuilt, units: str) -> list[Sheet]:
    flow = TextFlow(WIDTH, HEIGHT, Cell(6.0, 12.0, WIDTH - 6.0, HEIGHT - 6.0))
    plan = up.plan
    rows = record_rows(
        plan.chain, plan.wanted, built, plan.start, plan.units, lift_lengths(up.assembly)
    )
    flow.heading("Record of what was measured")
    place = design.site.place or "Place not named"
    flow.words(
        f"Job: {built.job or design.name}. {place}. Set of pieces: {design.pieces.set}. Inputs"
        f" {fingerprint(design)}. Printed {date.today().isoformat()}."
    )
    flow.words(
        "Levels count from what the first bed lies on. Wanted is the plan that was in force when"
        f" the lift was set. {tolerance_words()}"
    )
    columns = tuple(Column(name, share) for name, share in zip(HEADINGS, SHARES, strict=True))
    _, words = record_table(rows, units)
    if words:
        flow.table(Table("Hold points", columns, words))
    else:
        flow.words("Nothing has been measured yet.", bold=True)
    measured = {n for n, _ in built.standing(plan.chain)}
    left = [lift.name for n, lift in enumerate(plan.chain) if n not in measured]
    if left:
        flow.words(f"Not measured: {', '.join(left)}.")
    flow.heading("What is left")
    for sentence in replan(plan.chain, plan.wanted, built, plan.start, units, plan.units).sentences:
        flow.words(sentence)
    _sign(flow)
    return flow.sheets


def _sign(flow: TextFlow) -> None:
    """Lines for whoever measured and whoever looked at it."""
    flow.room(SIGN_ROOM * len(TO_SIGN) + 4.0)
    left, right = flow.cell.left + 3, flow.cell.right - 3
    for who in TO_SIGN:
        flow.y -= SIGN_ROOM
        date_at = right - SIGN_DATE
        flow.sheet.text(left, flow.y, who, size=SMALL, ha="left")
        flow.sheet.line([(left + SIGN_NAMES, flow.y - 0.8), (date_at - 6, flow.y - 0.8)], "seen")
        flow.sheet.text(date_at, flow.y, "Date", size=SMALL, ha="left")
        flow.sheet.line([(date_at + 10, flow.y - 0.8), (right, flow.y - 0.8)], "seen")
