"""The picture of a lesson at one place of its controls, for page and paper alike."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from fireplace_calc.drawing.lessons.board import SHARE, LessonBoard
from fireplace_calc.drawing.lessons.cropped import crop
from fireplace_calc.drawing.lessons.draft_lesson import draw_draft_lesson
from fireplace_calc.drawing.lessons.heat_lesson import draw_heat_lesson
from fireplace_calc.drawing.lessons.lifting_lesson import draw_lifting_lesson
from fireplace_calc.drawing.lessons.masonry.chamber_lesson import draw_chamber_lesson
from fireplace_calc.drawing.lessons.masonry.clearance_lesson import draw_clearance_lesson
from fireplace_calc.drawing.lessons.masonry.firebox_lesson import draw_firebox_lesson
from fireplace_calc.drawing.lessons.masonry.flue_lesson import draw_flue_lesson
from fireplace_calc.drawing.lessons.masonry.hearth_lesson import draw_hearth_lesson
from fireplace_calc.drawing.lessons.masonry.roof_lesson import draw_roof_lesson
from fireplace_calc.drawing.lessons.setting_lesson import draw_setting_lesson
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons.course.moments import LessonMoment

DRAWINGS: dict[str, Callable[[LessonBoard], None]] = {
    "opening and flue": draw_flue_lesson,
    "clearances and mantel": draw_clearance_lesson,
    "firebox and throat": draw_firebox_lesson,
    "smoke chamber": draw_chamber_lesson,
    "roof": draw_roof_lesson,
    "hearths": draw_hearth_lesson,
    "draft": draw_draft_lesson,
    "heat in the plan": draw_heat_lesson,
    "beds of a set": draw_setting_lesson,
    "lifting a piece": draw_lifting_lesson,
}
"""By the names that lesson files use."""


def lesson_board(
    moment: LessonMoment,
    shows: Iterable[str],
    wide: float,
    high: float,
    screen: float | None = None,
) -> LessonBoard:
    """Draw a lesson's picture; its names are still to be placed.

    Parameters
    ----------
    moment : LessonMoment
    shows : iterable of str
        Marks to draw: ``have``, ``need``, ``gap``, ``rule``, and those of the drawing.
    wide, high : float
        Of the picture. [mm]
    screen : float, optional
        Height of the screen, from which letters take their size; by default such that the picture
        has ``SHARE`` of it. [mm]

    Returns
    -------
    LessonBoard
    """
    board = LessonBoard(moment, frozenset(shows), wide, high, screen or high / SHARE)
    DRAWINGS[moment.lesson.picture.draw](board)
    crop(board.sheet)
    return board


def lesson_picture(
    moment: LessonMoment,
    shows: Iterable[str],
    wide: float,
    high: float,
    screen: float | None = None,
) -> list[tuple[Cell, Sheet]]:
    """A lesson's picture, ready to be painted.

    Parameters
    ----------
    moment : LessonMoment
    shows : iterable of str
        As for ``lesson_board``.
    wide, high, screen : float
        As for ``lesson_board``. [mm]

    Returns
    -------
    list of (Cell, Sheet)
        One cell with one sheet.
    """
    board = lesson_board(moment, shows, wide, high, screen)
    board.finish()
    return [(Cell(0.0, 0.0, wide, high), board.sheet)]
