"""Smoke chamber: how far its flattest wall leans, with the limit beside it."""

from __future__ import annotations

from math import tan

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.lessons.masonry.leaning import (
    draw_leaning_flue,
    lean_from_upright,
    run_and_rise,
)
from fireplace_calc.lessons.course.marks import LessonMark
from fireplace_calc.lessons.course.moments import LessonMoment

FLUE = "Lean of the flue"
"""Question of a rule that is about the flue and not the smoke chamber."""
LEAST = 0.5
"""Height over which a lean is drawn at least. [m]"""
Wall = tuple[float, float, float]
"""Of the flattest wall: foot and head from the middle of the flue, and how high. [m]"""


def draw_chamber_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    if board.of("A").rule.question == FLUE:
        draw_leaning_flue(board)
        return
    moments = (*board.moment.extremes, board.moment)
    outer = max(_flattest(one)[0] + one.design.smoke_chamber.wall for one in moments)
    high = max(_flattest(one)[2] for one in moments)
    board.frame(-outer - 0.4, -0.14, outer + 0.5, high + 0.2)
    foot, head, rise = _flattest(board.moment)
    _masonry(board, foot, head, rise)
    if board.has("run", "rise"):
        run_and_rise(board, (foot, 0.0), (head, rise))
    second = board.find("B")
    if second is not None:
        _wall(board, second, foot)
    lean_from_upright(board, board.of("A"), (-foot, 0.0), 0.9 * max(rise, LEAST))


def _flattest(moment: LessonMoment) -> Wall:
    """The wall that leans most: a side wall as the chamber is seen from the front, or the back or
    front one as it is seen from the side, turned so that it leans to the left.
    """
    f = moment.assessment.geometry.frame
    rise = f.taper_top - f.throat
    which = max(f.chamber_slopes, key=lambda name: f.chamber_slopes[name])
    half = f.bore.width / 2 if which == "sides" else f.bore.depth / 2
    return half + rise * tan(f.chamber_slopes[which]), half, rise


def _masonry(board: LessonBoard, foot: float, head: float, rise: float) -> None:
    """The chamber's air, and masonry round it: the wall that rule B is about on the right, and on
    the left, where names stand, masonry that goes on to the picture's edge.
    """
    view, sheet = board.view, board.sheet
    wall = board.moment.design.smoke_chamber.wall
    left, low, _, top = board.window
    air = [(-foot, low), (foot, low), (foot, 0.0), (head, rise), (head, top)]
    air += [(-x, z) for x, z in reversed(air[2:])]
    out = foot + wall
    outside = view.ring([(left, low), (out, low), (out, top), (left, top)])
    sheet.fill([outside, view.ring(air)[::-1]], "brick", layer=-3)
    view.path([(out, low), (out, top)], "cut")
    for sign in (-1.0, 1.0):
        edge = [(sign * foot, low), (sign * foot, 0.0), (sign * head, rise), (sign * head, top)]
        view.path(edge, "cut")
        if board.has("rough steps"):
            view.path(_steps(sign, foot, head, rise), "seen", "bad")
    if board.has("rough steps"):
        at = board.along((foot, 0.0), (head, rise))
        board.say("steps left rough", at, ("left", "right"), "bad", False, rank=2)


def _steps(sign: float, foot: float, head: float, rise: float) -> list[tuple[float, float]]:
    """Corbelled courses along a leaning wall. [m]"""
    count = max(3, round(rise / 0.075))
    run, up = (foot - head) / count, rise / count
    found = []
    for k in range(count):
        found += [(sign * (foot - k * run), k * up), (sign * (foot - k * run), (k + 1) * up)]
    return [*found, (sign * head, rise)]


def _wall(board: LessonBoard, mark: LessonMark, foot: float) -> None:
    """Rule B: the wall round the chamber, at its foot on the right, where it is thinnest."""
    if mark.have is None or mark.need is None or mark.kind != "length":
        return
    out = foot + max(mark.have, mark.need, board.moment.design.smoke_chamber.wall)
    for which, value, z in (("have", mark.have, -0.05), ("need", mark.need, 0.32)):
        if board.wants(mark, which):
            a, b = (foot, z), (foot + value, z)
            at = [board.view.at(out, z)]
            board.measured(mark, which, a, b, ("right",), "B", at)
    if board.wants(mark, "need"):
        board.dashed([(foot + mark.need, -0.1), (foot + mark.need, 0.37)])
