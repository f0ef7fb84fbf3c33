"""The page of a search for faults: three views of a design, all its figures, and boxes for the
numbers of the rules that are broken; and the list that they are looked up in.
"""

from __future__ import annotations

from itertools import groupby

from fireplace_calc.drawing.classroom.quiz_sheet import GUTTER, TITLE_ROOM, moved
from fireplace_calc.drawing.classroom.stamped import ClassStamp
from fireplace_calc.drawing.composed.compose import draw_view
from fireplace_calc.drawing.sheets.lists import GAP, PITCH, wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons import Exercise
from fireplace_calc.lessons.classroom.desk import MARKS
from fireplace_calc.lessons.fault_hunt.hunting import checklist
from fireplace_calc.lessons.fault_hunt.search_of_class import broken_many

NAMES = 36.0
"""For the part of the fireplace, before its figures. [mm]"""
BOX = (14.0, 8.0)
"""To write a number into. [mm]"""
BETWEEN = 12.0
"""From box to box, for its letter. [mm]"""
TO_WRITE = (
    "Write the number it has on the list to look down.",
    "Write the numbers they have on the list to look down.",
)
BESIDE = 97.0
"""Least width of the views at the right; below it letters would meet. [mm]"""
FRONT = 0.4
"""Of the height at the right for the front, over the roof. [-]"""


def search_page(
    number: int, drawn: Exercise, stamp: ClassStamp, name: str = "", what: str = ""
) -> Sheet:
    """One student's page of one search.

    Parameters
    ----------
    number : int
        Of the exercise. [-]
    drawn : Exercise
        A search.
    stamp : ClassStamp
    name : str
        Of the student.
    what : str
        For the foot.
    """
    sheet, room = stamp.blank()
    y = room.top - GUTTER - TITLE
    sheet.line([(room.left, room.top), (room.right, room.top)], "seen")
    sheet.text(room.left, y, f"{number}. {drawn.title}", size=TITLE, ha="left", bold=True)
    y -= TITLE_ROOM - TITLE
    told = f"{broken_many(drawn.level)} {TO_WRITE[drawn.level > 1]}"
    left = room.right - len(drawn.steps) * (BOX[0] + BETWEEN)
    y = _lines(sheet, room.left, y, wrapped(told, left - room.left - GUTTER))
    _boxes(sheet, left, room.top - GUTTER, drawn)
    low = room.bottom + _figures(None, drawn, room, 0.0)
    _figures(sheet, drawn, room, low)
    _views(sheet, drawn, Cell(room.left, low + GUTTER, room.right, y - GUTTER))
    stamp.put(sheet, what, name)
    return sheet


def list_sheet(stamp: ClassStamp) -> Sheet:
    """The list to look down, the same for the whole class, each rule with its number."""
    sheet, room = stamp.blank()
    y, number = room.top - GUTTER - TITLE, 0
    sheet.text(room.left, y, "List to look down", size=TITLE, ha="left", bold=True)
    y -= TITLE_ROOM - TITLE
    for part, rules in checklist(stamp.task.pack, stamp.task.edition):
        y -= GAP
        sheet.text(room.left, y - SMALL, part, size=SMALL, ha="left", bold=True)
        y -= PITCH
        for _, rule in rules:
            number += 1
            sheet.text(room.left + 6, y - SMALL, str(number), size=SMALL, ha="right")
            y = _lines(sheet, room.left + 9, y, wrapped(rule, room.right - room.left - 9))
    stamp.put(sheet, "List to look down, one for every table")
    return sheet


def _lines(sheet: Sheet, left: float, top: float, lines: tuple[str, ...]) -> float:
    for line in lines:
        sheet.text(left, top - SMALL, line, size=SMALL, ha="left")
        top -= PITCH
    return top


def _boxes(sheet: Sheet, left: float, top: float, drawn: Exercise) -> None:
    wide, high = BOX
    for k, _ in enumerate(drawn.steps):
        x = left + k * (wide + BETWEEN) + BETWEEN - 6
        sheet.text(x, top - high / 2 - SMALL / 2, f"{MARKS[k]})", size=SMALL, ha="left")
        at = x + 6
        ring = [(at, top), (at + wide, top), (at + wide, top - high), (at, top - high)]
        sheet.line(ring, "seen", closed=True)


def _figures(sheet: Sheet | None, drawn: Exercise, room: Cell, top: float) -> float:
    """All figures, a part to a paragraph, from a height down; how high they are. [mm]"""
    y = top
    for part, held in groupby(drawn.given, key=lambda one: one.group):
        told = "; ".join(f"{one.name}: {one.shown(drawn.units)}" for one in held)
        lines = wrapped(f"{told}.", room.right - room.left - NAMES)
        if sheet is not None:
            sheet.text(room.left, y - SMALL, part, size=SMALL, ha="left", bold=True)
            _lines(sheet, room.left + NAMES, y, lines)
        y -= PITCH * len(lines)
    return top - y


def _views(sheet: Sheet, drawn: Exercise, room: Cell) -> None:
    """The section, and beside it front and roof; the roof alone where both would be crowded."""
    assert drawn.design is not None
    geometry = build_geometry(drawn.design)
    wide, high = room.right - room.left, room.top - room.bottom

    def view(name: str, width: float, height: float) -> Sheet:
        cell = Cell(0.0, 0.0, width, height)
        return draw_view(name, cell, geometry, drawn.units, own_paper=True)

    left = wide - BESIDE
    front = view("front", BESIDE, FRONT * high)
    roof = view("roof", BESIDE, (1 - FRONT) * high)
    if collisions(front) or collisions(roof):
        roof = view("roof", BESIDE, high)
    else:
        sheet.add(moved(front, room.left + left, room.top - front.height))
    sheet.add(moved(roof, room.left + left, room.bottom))
    sheet.add(moved(view("section", left, high), room.left, room.bottom))
