"""Half a plan cut through the back: wall, gap and wood, how hot the wood gets beside it, and the
lines that matter.
"""

from __future__ import annotations

from math import isnan

from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.geometry.polygons import box
from fireplace_calc.heat.telling import exactly
from fireplace_calc.lessons.worked_measures import ZERO

PER = 0.0036
"""Height of a bar for a kelvin. [m/K]"""
THROUGH = "Firebox wall"
"""Question of a rule that is measured through the wall and not in the gap."""
STUD = 0.089
"""Depth of a stud. [m]"""
HIGH = 0.62
"""Of the strip of wall that is shown. [m]"""
LINE = "years"
"""Key of the line beside the bars."""


def draw_heat_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    design = board.moment.design
    wall, gap = design.firebox.wall, design.clearance.back or 0.0
    lining = min(design.firebox.lining_thickness, wall)
    widest = max(
        one.design.firebox.wall + max(one.design.clearance.back or 0.0, one.of("A").need or 0.0)
        for one in board.moment.extremes
    )
    left = 0.45 if board.of("A").rule.question == THROUGH else 0.22
    board.frame(-left, -0.24, widest + STUD + 0.98, 0.98)
    view = board.view
    for a, b, tone in (
        (-0.18, 0.0, ""),
        (0.0, lining, "firebrick"),
        (lining, wall, "brick"),
        (wall + gap, wall + gap + STUD, "wood"),
    ):
        ring = box(a, b, 0.0, HIGH)
        if tone:
            board.sheet.fill([view.ring(ring)], tone, layer=-2)
            view.path([*ring, ring[0]], "cut")
    board.say("fire", [view.at(-0.1, HIGH / 2)], ("above",), "bad", False, rank=3)
    _rule(board, wall)
    _wood(board, wall + gap + STUD + 0.1)


def _rule(board: LessonBoard, wall: float) -> None:
    """Have and need of the code, at the gap or through the wall."""
    mark = board.of("A")
    if mark.have is None or mark.need is None:
        return
    start = 0.0 if mark.rule.question == THROUGH else wall
    if board.has("need"):
        a, b = (start, -0.14), (start + mark.need, -0.14)
        board.measured(mark, "need", a, b, ("below", "right", "left"))
        board.dashed([(start + mark.need, -0.16), (start + mark.need, HIGH)])
    if board.has("have"):
        a, b = (start, -0.05), (start + mark.have, -0.05)
        board.measured(mark, "have", a, b, ("left", "right", "below"))
    if board.has("gap") and mark.short:
        x, y = start + mark.have, start + mark.need
        board.ghost([(x, 0.0), (x, HIGH), (y, HIGH), (y, 0.0)])
        at = board.along((x, HIGH), (y, HIGH))
        board.say(f"{board.told(mark.gap)} short", at, ("above", "left", "right"), "bad", rank=0)


def _wood(board: LessonBoard, x: float) -> None:
    """Three bars of the wood's heat, over the room's, and the lines they are held against."""
    names, every = board.moment.names, board.has("rule")
    room = board.moment.design.house.indoor
    wanted = [n for n in ("kind", "middle", "hard") if every or board.has(n)]
    if isnan(names["hard"].value):
        return
    for line in heat_lines():
        if line.key == LINE and wanted:
            level = (line.celsius + ZERO - room) * PER
            ends = (x - 0.04, level), (x + 0.48, level)
            board.view.path(ends, "carried", "dimension")
            told = exactly(line.celsius, board.moment.units)
            board.say(
                f"{told}: {line.name}",
                [board.view.at(*ends[1]), board.view.at(*ends[0])],
                ("right", "above", "below", "left"),
                "dimension",
                False,
                False,
                rank=3,
            )
    for k, name in enumerate(wanted):
        told = board.moment.said(f"{{{name}}}")
        at, level = x + 0.2 * k, (names[name].value - room) * PER
        board.bar((at, 0.0), (at, level), "mark", "bad" if name == "hard" else "ink")
        board.say(
            f"{name} {told}",
            [board.view.at(at, level), *board.along((at, 0.0), (at, level))],
            ("above", "left", "right"),
            "ink",
            False,
            rank=1,
        )
    if board.has("later", "night after a soot fire") or every:
        said = board.moment.said("hottest {later} h after the fire is out")
        board.say(
            said, [board.view.at(x + 0.1, -0.02)], ("below", "right"), "soft", False, False, 4
        )
