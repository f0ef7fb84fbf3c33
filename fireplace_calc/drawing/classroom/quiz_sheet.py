"""A student's quiz: one page, what is told and drawn on the left, what is asked on the right, with
room to work.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.drawing.classroom.stamped import ClassStamp
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.lessons import Exercise, ExerciseStep

TOLD = 0.5
"""Share of the width for what is told and drawn. [-]"""
GUTTER = 3.0
"""Between text and the lines that part blocks. [mm]"""
TITLE_ROOM = 6.5
"""For the title of an exercise. [mm]"""
WORKING = 7.5
"""Least room to work over a line to write on. [mm]"""
MARKS = "abcdefgh"
"""Of the questions of one exercise."""


@dataclass(frozen=True, slots=True)
class QuizBlock:
    """One exercise in lines of its two columns.

    Attributes
    ----------
    title : str
    told : tuple of str
        Story, then what is given.
    bold : int
        First line of what is given. [-]
    asked : tuple of tuple of str
        A prompt each, in lines.
    """

    title: str
    told: tuple[str, ...]
    bold: int
    asked: tuple[tuple[str, ...], ...]

    @property
    def high(self) -> float:
        """Least height. [mm]"""
        left = len(self.told) * PITCH + 2.0
        right = sum(len(lines) * PITCH + WORKING for lines in self.asked)
        return TITLE_ROOM + max(left, right) + 2 * GUTTER


def quiz_blocks(drawn: Sequence[Exercise], units: str, wide: float) -> list[QuizBlock]:
    """Every exercise of one student, in lines.

    Parameters
    ----------
    drawn : sequence of Exercise
    units : str
    wide : float
        Of the page's room. [mm]
    """
    left, right = wide * TOLD - 2 * GUTTER, wide * (1 - TOLD) - 2 * GUTTER
    made = []
    for number, one in enumerate(drawn, 1):
        given = "; ".join(f"{given.name}: {given.shown(units)}" for given in one.given) + "."
        story = wrapped(one.story, left)
        asked = tuple(
            wrapped(_question(mark, step), right)
            for mark, step in zip(MARKS, one.steps, strict=False)
        )
        told = (*story, *wrapped(given, left, True))
        made.append(QuizBlock(f"{number}. {one.title}", told, len(story), asked))
    return made


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
    middle = cell.left + (cell.right - cell.left) * TOLD
    sheet.line([(cell.left, cell.top), (cell.right, cell.top)], "seen")
    y = cell.top - GUTTER - TITLE
    sheet.text(cell.left, y, block.title, size=TITLE, ha="left", bold=True)
    top = y - (TITLE_ROOM - TITLE)
    for number, line in enumerate(block.told):
        bold = number >= block.bold
        y = top - number * PITCH - SMALL
        sheet.text(cell.left, y, line, size=SMALL, ha="left", bold=bold)
    left, many = middle + GUTTER, max(len(block.asked), 1)
    lines = sum(map(len, block.asked))
    pause = (top - cell.bottom - GUTTER - lines * PITCH) / many
    y = top
    for asked in block.asked:
        for line in asked:
            sheet.text(left, y - SMALL, line, size=SMALL, ha="left")
            y -= PITCH
        y -= pause
        sheet.line([(left + 4, y + 1.0), (cell.right, y + 1.0)], "fine")
