"""Somebody who lifts a piece, seen from the side: weight, reach and height of the hands."""

from __future__ import annotations

from math import atan2, cos, hypot, pi, sin

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.lessons.upright_bars import scale_bars
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.geometry.polygons import box

SHIN, THIGH, BACK, ARM = 0.43, 0.44, 0.50, 0.32
"""Of a body of middling height; the arm twice. [m]"""
HEAD = 0.105
PER = 1.9 / 56.0
"""Height of a bar for a kilogram. [m/kg]"""
PIECE = 0.30
"""Side of the piece. [m]"""


def draw_lifting_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    reach, height = board.moment.values["reach"].value, board.moment.values["height"].value
    view = board.frame(-0.7, -0.25, 2.85, 2.1)
    left, _, right, _ = board.window
    view.path([(left, 0.0), (right, 0.0)], "ground")
    lifted = 0.0
    if board.has("piece on a ladder"):
        lifted = _ladder(board)
    _body(board, reach, height, lifted)
    piece = view.ring(
        box(reach - PIECE / 2, reach + PIECE / 2, lifted + height - 0.02, lifted + height + 0.26)
    )
    board.sheet.fill([piece], "refractory", layer=3)
    board.sheet.line(piece, "cut", closed=True)
    _tapes(board, reach, height, lifted)
    scale_bars(board, board.of("A"), 1.75, 0.0, PER, 0.22)


def _tapes(board: LessonBoard, reach: float, height: float, lifted: float) -> None:
    """Reach and height of the hands, where the tape is held."""
    if board.has("reach", "rule"):
        ends = (0.0, -0.09), (reach, -0.09)
        board.bar(*ends, "tick", "dimension")
        board.view.path([(reach, -0.09), (reach, lifted + height)], "hidden", "soft")
        board.say(
            f"reach {board.told(reach)}",
            board.along(*ends),
            ("below", "right", "left"),
            "dimension",
            False,
        )
    if board.has("height", "rule") and height > 0 and not lifted:
        x = reach + PIECE / 2 + 0.08
        board.bar((x, 0.0), (x, height), "tick", "dimension")
        board.say(
            f"hands {board.told(height)}",
            board.along((x, 0.0), (x, height)),
            ("right", "left"),
            "dimension",
            False,
        )


def _body(board: LessonBoard, reach: float, height: float, lifted: float) -> None:
    """Legs, back and arms so bent that the hands are where they have to be."""
    hip, shoulder = _bent(reach, height)
    knee = _joint((0.0, 0.06), hip, SHIN, THIGH, 1.0)
    elbow = _joint(shoulder, (reach, height), ARM, ARM, -1.0)
    head = _beyond(hip, shoulder, HEAD + 0.03)
    hand = (reach, height)
    for limb, thick in (
        ([(-0.03, 0.04), (0.17, 0.03)], 0.06),
        ([(0.0, 0.06), knee], 0.09),
        ([knee, hip], 0.13),
        ([hip, shoulder], 0.19),
        ([shoulder, elbow], 0.085),
        ([elbow, hand], 0.07),
    ):
        ring = _capsule(limb[0], limb[1], thick / 2)
        shown = [(x, z + lifted) for x, z in ring]
        board.sheet.fill([board.view.ring(shown)], "person", layer=4 if hand in limb else 2)
    ring = [(x, z + lifted) for x, z in _capsule(head, head, HEAD)]
    board.sheet.fill([board.view.ring(ring)], "person", layer=2)


def _capsule(a: Pair, b: Pair, half: float) -> list[Pair]:
    """Outline of a limb: round at both ends."""
    way = atan2(b[1] - a[1], b[0] - a[0])
    turns = [way + pi / 2 + k * pi / 8 for k in range(9)]
    return [(a[0] + half * cos(t), a[1] + half * sin(t)) for t in turns] + [
        (b[0] + half * cos(t + pi), b[1] + half * sin(t + pi)) for t in turns
    ]


def _bent(reach: float, height: float) -> tuple[Pair, Pair]:
    """Hip and shoulder for a place of the hands: the least bend from which the arms get there."""
    best: tuple[float, Pair, Pair] | None = None
    for drop in range(11):
        hip = (-0.03 - 0.022 * drop, 0.06 + (SHIN + THIGH) * 0.99 - 0.045 * drop)
        for lean in range(19):
            angle = lean * 5 * pi / 180
            shoulder = (hip[0] + BACK * sin(angle), hip[1] + BACK * cos(angle))
            over = hypot(reach - shoulder[0], height - shoulder[1]) - 2 * ARM * 0.97
            cost = max(over, 0.0) * 50 + drop * 0.1 + lean * 0.06
            if best is None or cost < best[0]:
                best = cost, hip, shoulder
    assert best is not None
    return best[1], best[2]


def _joint(a: Pair, b: Pair, near: float, far: float, side: float) -> Pair:
    """Knee or elbow between two points: two circles meet, on one side."""
    long = min(max(hypot(b[0] - a[0], b[1] - a[1]), abs(near - far) + 1e-6), near + far)
    along = (near**2 - far**2 + long**2) / (2 * long)
    off = max(near**2 - along**2, 0.0) ** 0.5 * side
    way = atan2(b[1] - a[1], b[0] - a[0])
    return a[0] + along * cos(way) + off * sin(way), a[1] + along * sin(way) - off * cos(way)


def _beyond(a: Pair, b: Pair, far: float) -> Pair:
    """Past the second point, on the line from the first."""
    long = hypot(b[0] - a[0], b[1] - a[1])
    return b[0] + (b[0] - a[0]) / long * far, b[1] + (b[1] - a[1]) / long * far


def _ladder(board: LessonBoard) -> float:
    """A ladder that somebody stands on; gives the height of the rung. [m]"""
    foot, top = (-0.06, 0.0), (0.44, 2.0)
    for shift in (0.0, 0.06):
        board.view.path([(foot[0] + shift, 0.0), (top[0] + shift, top[1])], "cut", "ink")
    for k in range(1, 7):
        z = k * 0.29
        x = foot[0] + (top[0] - foot[0]) * z / 2.0
        board.view.path([(x, z), (x + 0.06, z)], "mark", "ink")
    board.say("one hand, no footing", [board.view.at(-0.2, 1.3)], ("left", "above"), "bad", False)
    return 0.29
