"""A lean from upright, have and need as angles; and a flue that leans."""

from __future__ import annotations

from math import cos, degrees, hypot, sin

import numpy as np

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.lessons.course.marks import LessonMark

UPRIGHT = 0.3
"""Of flue that is drawn over and under the leaning part. [m]"""


def run_and_rise(board: LessonBoard, foot: Pair, head: Pair) -> None:
    """How far a line goes aside and up, as bars. [m]"""
    corner = (foot[0], head[1])
    board.dashed([foot, corner], "soft")
    run = abs(head[0] - foot[0])
    for name, a, b, sides in (
        ("run", head, corner, ("above", "right", "below")),
        ("rise", foot, corner, ("right", "left")),
    ):
        if board.has(name):
            long = run if name == "run" else head[1] - foot[1]
            board.bar(a, b, "mark", "dimension")
            said = f"{name} {board.told(long)}"
            board.say(said, board.along(a, b), sides, "dimension", False, rank=2)


def lean_from_upright(board: LessonBoard, mark: LessonMark, base: Pair, long: float) -> None:
    """Two lines from one foot with an arc each: the lean that there is, and the limit.

    Parameters
    ----------
    board : LessonBoard
    mark : LessonMark
        In radians.
    base : pair
        The foot of both. [m]
    long : float
        Of the lines. [m]
    """
    if mark.have is None or mark.need is None:
        return
    prefix = "A " if len(board.moment.marks) > 1 else ""
    board.dashed([base, (base[0], base[1] + long)], "soft")
    for which, lean, ink, far in (
        ("have", mark.have, "bad" if mark.short else "good", 0.55),
        ("need", mark.need, "ink", 0.8),
    ):
        if not board.wants(mark, which):
            continue
        tip = (base[0] + long * sin(lean), base[1] + long * cos(lean))
        board.view.path([base, tip], which, ink)
        turn = np.linspace(0.0, lean, 24)
        arc = [
            (base[0] + far * long * sin(turned), base[1] + far * long * cos(turned))
            for turned in turn
        ]
        board.view.path(arc, "flag", ink)
        most = " at most" if which == "need" else ""
        said = f"{prefix}{which}{most} {round(degrees(lean), 1):g}°"
        at = [board.view.at(*tip), board.view.at(*arc[12]), *board.along(base, tip)]
        board.say(said, at, ("right", "above", "left", "below"), ink, rank=0)
    if board.wants(mark, "gap") and mark.short:
        tip = (base[0] + long * sin(mark.have), base[1] + long * cos(mark.have))
        said = f"{prefix}{round(degrees(mark.gap), 1):g}° too flat"
        board.say(said, board.along(base, tip), ("below", "right", "above"), "bad", rank=1)


def draw_leaning_flue(board: LessonBoard) -> None:
    """A flue that moves over while it rises, from the front."""
    moments = (*board.moment.extremes, board.moment)
    half = board.moment.assessment.geometry.frame.bore.width / 2
    over, rise = (board.moment.values[name].value for name in ("over", "rise"))
    widest = max(one.values["over"].value for one in moments)
    highest = max(one.values["rise"].value for one in moments)
    wall = 0.14
    board.frame(-half - wall - 0.2, -UPRIGHT, widest + half + wall + 0.6, highest + UPRIGHT)
    _, low, _, top = board.window
    middle = [(0.0, low), (0.0, 0.0), (over, rise), (over, top)]
    for aside, tone, layer in ((half + wall, "brick", -3.0), (half, "clay liner", -2.0)):
        sides = [[(x + sign * aside, z) for x, z in middle] for sign in (-1.0, 1.0)]
        ring = board.view.ring([*sides[0], *sides[1][::-1]])
        board.sheet.fill([ring], tone, layer=layer)
        for side in sides:
            board.view.path(side, "cut" if tone == "brick" else "seen")
    if board.has("rough steps"):
        _rough(board, (-half, 0.0), (over - half, rise))
    if board.has("run", "rise"):
        run_and_rise(board, (0.0, 0.0), (over, rise))
    lean_from_upright(board, board.of("A"), (0.0, 0.0), 0.9 * min(rise, 0.6))


def _rough(board: LessonBoard, foot: Pair, head: Pair) -> None:
    """Steps along a leaning wall, left rough."""
    count = max(3, round(hypot(head[0] - foot[0], head[1] - foot[1]) / 0.09))
    run, up = (head[0] - foot[0]) / count, (head[1] - foot[1]) / count
    steps = []
    for k in range(count):
        x = foot[0] + k * run
        steps += [(x, foot[1] + k * up), (x, foot[1] + (k + 1) * up)]
    board.view.path([*steps, head], "seen", "bad")
    at = board.along(foot, head)
    board.say("steps left rough", at, ("left", "above"), "bad", False, rank=2)
