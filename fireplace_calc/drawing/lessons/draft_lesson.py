"""A section of house and chimney: the warm column, what pulls, what takes from it, and how fast air
moves in through the opening.
"""

from __future__ import annotations

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.lessons.upright_bars import scale_bars
from fireplace_calc.geometry.polygons import box

PER = 12.0
"""Height of a bar for a meter a second, in parts of a meter. [s]"""
PASCAL = 0.3
"""Height of a bar for one pascal. [m/Pa]"""


def draw_draft_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    f, d = board.moment.assessment.geometry.frame, board.moment.design
    top = max(one.assessment.geometry.frame.liner_top for one in board.moment.extremes)
    board.frame(-4.6, -0.35, 5.4, top + 0.5)
    left, _, right, _ = board.window
    half, wall = 0.19, 0.12
    view = board.view
    view.path([(left, 0.0), (right, 0.0)], "ground")
    _house(board, left, d.house.ceiling)
    opening = f.hearth + d.opening.height
    mouth = [(-0.55, f.hearth), (half, f.hearth), (half, f.liner_top)]
    way = [*mouth, (-half, f.liner_top), (-half, opening + 0.9), (-0.55, opening)]
    masonry = [
        (-0.55 - wall, opening),
        (-0.55, opening),
        (-half, opening + 0.9),
        (-half, f.crown_top),
        (-half - wall, f.crown_top),
        (-half - wall, opening + 1.2),
        (-0.55 - wall, opening + 0.9),
    ]
    back = box(half, half + 2 * wall, 0.0, f.crown_top)
    floor = box(-1.2, half, 0.0, f.hearth)
    for ring in (masonry, back, floor):
        board.sheet.fill([view.ring(ring)], "brick", layer=-2)
        view.path([*ring, ring[0]], "cut")
    board.sheet.fill([view.ring(way)], "clay liner", layer=-3)
    if board.has("column", "rule"):
        a, b = (half + 0.75, opening), (half + 0.75, f.liner_top)
        board.bar(a, b, "tick", "dimension")
        told = board.told(b[1] - a[1])
        board.say(f"column {told}", board.along(a, b), ("right", "left"), "dimension", False)
    _pascals(board)
    scale_bars(board, board.of("A"), -2.2, 0.0, PER, 0.6)
    if board.has("kitchen fan on"):
        board.say(
            f"fan takes {board.told(d.house.exhaust, 'flow')}",
            [view.at(-3.0, 3.4)],
            ("above", "left", "right"),
            "bad",
            False,
        )


def _house(board: LessonBoard, left: float, ceiling: float) -> None:
    """Ceiling and roof over the room, as far as the chimney."""
    eaves, pitch = ceiling + 0.15, board.moment.design.roof.pitch
    board.view.path([(left, ceiling), (-0.75, ceiling)], "seen", "soft")
    board.view.path([(left, eaves + (-0.3 - left) * pitch), (-0.3, eaves)], "seen", "soft")


def _pascals(board: LessonBoard) -> None:
    """The pull as a bar, and beside it what the way and the house take of it."""
    names, x, base = board.moment.names, 2.3, 0.0
    every = board.has("rule")
    if every or board.has("pull"):
        pull = names["pull"].value
        _upright(
            board, x, base, base + pull * PASCAL, f"pull {board.told(pull, 'pressure')}", "ink"
        )
    foot = base
    for name, told in (("lost", "lost on the way"), ("house", "house takes")):
        value = names[name].value
        if every or board.has(name):
            said = f"{told} {board.told(value, 'pressure')}"
            _upright(board, x + 0.6, foot, foot + value * PASCAL, said, "dimension")
        foot += max(value, 0.0) * PASCAL


def _upright(board: LessonBoard, x: float, low: float, high: float, said: str, ink: str) -> None:
    board.bar((x, low), (x, high), "mark", ink)
    board.say(
        said,
        board.along((x, low), (x, high)),
        ("right", "left", "above"),
        ink,
        False,
        rank=2,
        must=False,
    )
