"""The fireplace cut open, as the background of a lesson: tones and outlines, no hatching, so that
names can stand on it.
"""

from __future__ import annotations

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.geometry.parts import Geometry

Window = tuple[float, float, float, float]
"""Left, bottom, right, top. [m]"""


def upright_section(board: LessonBoard, geometry: Geometry, outlined: bool = True) -> None:
    """Every part as the upright cut on the center line shows it, the room on the left.

    Parameters
    ----------
    board : LessonBoard
        With its window set; left to right is front to back.
    geometry : Geometry
    outlined : bool
        Else tones only, so that names find room on them.
    """
    for part in geometry.parts:
        for polygon in part.section():
            ring = board.view.ring(polygon)
            board.sheet.fill([ring], part.material, layer=-3)
            if outlined:
                board.sheet.line(ring, "seen", closed=True)


def lumber(board: LessonBoard, window: Window, tone: str = "timber") -> None:
    """Something framed, or another plain thing, as a filled box. [m]"""
    left, low, right, high = window
    ring = board.view.ring([(left, low), (right, low), (right, high), (left, high)])
    board.sheet.fill([ring], tone, layer=-2)
    board.sheet.line(ring, "seen", closed=True)
