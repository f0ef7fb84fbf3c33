"""A student's quiz: one page, what is told and drawn on the left, what is asked on the right, with
room to work.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from fireplace_calc.drawing.classroom.ruled_grid import given_grid
from fireplace_calc.drawing.classroom.stamped import ClassStamp
from fireplace_calc.drawing.lessons.exercise_pictures import exercise_picture
from fireplace_calc.drawing.sheets.lists import GAP, PITCH, wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.lessons import Exercise, ExerciseStep
from fireplace_calc.lessons.answers.given_figures import given_rows, given_table
from fireplace_calc.lessons.classroom.desk import MARKS

DRAWN = 0.47
"""Share of the width for the drawing and what is given. [-]"""
GUTTER = 3.0
"""Between text and the lines that part blocks. [mm]"""
TITLE_ROOM = 6.5
"""For the title of an exercise. [mm]"""
WORKING = 7.5
"""Least room to work over a line to write on. [mm]"""
HEIGHTS = (42.0, 50.0, 60.0, 72.0)
"""Of a drawing; the least at which no letter stands in its way is taken. [mm]"""


@dataclass(frozen=True, slots=True)
class QuizBlock:
    """One exercise, in lines of its two columns.

    Attributes
    ----------
    title : str
    picture : Sheet or None
        With a question mark at each answer.
    given : tuple of str
        Under the drawing.
    table : Sheet or None
        Under that, where figures are to be looked up.
    story : tuple of str
        Over the questions.
    asked : tuple of tuple of str
        A prompt each, in lines.
    """

    title: str
    picture: Sheet | None
    given: tuple[str, ...]
    table: Sheet | None
    story: tuple[str, ...]
    asked: tuple[tuple[str, ...], ...]

    @property
    def high(self) -> float:
        """Least height. [mm]"""
        drawn = sum(sheet.height for sheet in (self.picture, self.table) if sheet)
        left = len(self.given) * PITCH + (GAP if self.table else 0.0) + drawn + 2.0
        right = len(self.story) * PITCH + GAP
        right += sum(len(lines) * PITCH + WORKING for lines in self.asked)
        return TITLE_ROOM + max(left, right) + 2 * GUTTER


def quiz_blocks(drawn: Mapping[int, Exercise], units: str, wide: float) -> list[QuizBlock]:
    """Every exercise of one student, in lines.

    Parameters
    ----------
    drawn : mapping of int to Exercise
        By number. [-]
    units : str
    wide : float
        Of the page's room. [mm]
    """
    left, right = wide * DRAWN - GUTTER, wide * (1 - DRAWN) - GUTTER
    made = []
    for number, one in drawn.items():
        pairs = [(given.name, given.shown(units)) for given in one.given]
        given = "; ".join(f"{name}: {figure}" for name, figure in given_rows(pairs)) + "."
        table = given_table(pairs)
        asked = tuple(
            wrapped(_question(mark, step), right)
            for mark, step in zip(MARKS, one.steps, strict=False)
        )
        made.append(
            QuizBlock(
                f"{number}. {one.title}",
                least_picture(one, left),
                wrapped(given, left, True) if one.given else (),
                given_grid(table, left) if table else None,
                wrapped(one.story, right),
                asked,
            )
        )
    return made


def least_picture(drawn: Exercise, wide: float) -> Sheet | None:
    """The drawing of an exercise as low as it is clean; none where it has none.

    Parameters
    ----------
    drawn : Exercise
    wide : float
        [mm]
    """
    if drawn.figure is None:
        return None
    pictures = (exercise_picture(drawn, wide, high, letters=SMALL) for high in HEIGHTS)
    return next((picture for picture in pictures if not collisions(picture)), None)


def _question(mark: str, step: ExerciseStep) -> str:
    """What is asked, and what there is to choose from."""
    choice = f" ({', '.join(step.options)})" if step.options else ""
    return f"{mark}) {step.ask}{choice}"


def fitting(blocks: Sequence[QuizBlock], high: float) -> int:
    """How many of the exercises one page takes, from the first on. [-]"""
    many = 0
    for block in blocks:
        high -= block.high
        if high < 0:
            break
        many += 1
    return many


def quiz_page(blocks: Sequence[QuizBlock], stamp: ClassStamp, name: str, what: str) -> Sheet:
    """One student's page; height that is left over is room to work.

    Parameters
    ----------
    blocks : sequence of QuizBlock
        As many as ``fitting`` says.
    stamp : ClassStamp
    name : str
        Of the student.
    what : str
        For the foot.
    """
    sheet, room = stamp.blank()
    spare = (room.top - room.bottom - sum(block.high for block in blocks)) / max(len(blocks), 1)
    top = room.top
    for block in blocks:
        cell = Cell(room.left, top - block.high - spare, room.right, top)
        _block(sheet, block, cell)
        top = cell.bottom
    stamp.put(sheet, what, name)
    return sheet


def _block(sheet: Sheet, block: QuizBlock, cell: Cell) -> None:
    middle = cell.left + (cell.right - cell.left) * DRAWN
    sheet.line([(cell.left, cell.top), (cell.right, cell.top)], "seen")
    y = cell.top - GUTTER - TITLE
    sheet.text(cell.left, y, block.title, size=TITLE, ha="left", bold=True)
    top = y = y - (TITLE_ROOM - TITLE)
    if block.picture is not None:
        y -= block.picture.height
        sheet.add(moved(block.picture, cell.left, y))
    for line in block.given:
        sheet.text(cell.left, y - SMALL, line, size=SMALL, ha="left", bold=True)
        y -= PITCH
    if block.table is not None:
        sheet.add(moved(block.table, cell.left, y - GAP - block.table.height))
    left, many, y = middle + GUTTER, max(len(block.asked), 1), top
    for line in block.story:
        sheet.text(left, y - SMALL, line, size=SMALL, ha="left")
        y -= PITCH
    y -= GAP
    lines = sum(map(len, block.asked))
    pause = (y - cell.bottom - GUTTER - lines * PITCH) / many
    for asked in block.asked:
        for line in asked:
            sheet.text(left, y - SMALL, line, size=SMALL, ha="left")
            y -= PITCH
        y -= pause
        sheet.line([(left + 4, y + 1.0), (cell.right, y + 1.0)], "fine")


def moved(picture: Sheet, across: float, up: float) -> Sheet:
    """The same elsewhere on a sheet. [mm]"""
    by, made = np.array((across, up)), Sheet(picture.width, picture.height)
    for tone, polygons in picture.fills.items():
        made.fills[tone] = [[ring + by for ring in rings] for rings in polygons]
    for name, rings in picture.hatched.items():
        made.hatched[name] = [ring + by for ring in rings]
    for pen, lines in picture.lines.items():
        made.lines[pen] = [line + by for line in lines]
    made.hatches = [lines + by for lines in picture.hatches]
    made.labels = [replace(one, x=one.x + across, y=one.y + up) for one in picture.labels]
    return made
