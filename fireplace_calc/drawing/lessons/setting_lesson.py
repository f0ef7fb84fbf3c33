"""Pieces of a set on their beds: where the top comes to, and the level that is wanted."""

from __future__ import annotations

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.geometry.polygons import box

WIDE = 0.61
"""Of a piece. [m]"""


def draw_setting_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    values, mark = board.moment.values, board.of("A")
    pieces, high = round(values["pieces"].value), values["piece"].value
    wanted, joint = values["wanted"].value, values["joint"].value
    beds = [joint] * pieces
    if board.has("thick last bed"):
        beds[-1] = wanted - pieces * high - (pieces - 1) * joint
    top = max(
        max(one.of("A").have or 0.0, one.of("A").need or 0.0) for one in board.moment.extremes
    )
    board.frame(-0.55, -0.12, WIDE + 0.55, top + 0.1)
    left, low, right, _ = board.window
    slab = board.view.ring(box(left, right, low, 0.0))
    board.sheet.fill([slab], "firebrick", layer=-3)
    board.view.path([(left, 0.0), (right, 0.0)], "cut")
    _stack(board, beds, high)
    if mark.have is None or mark.need is None:
        return
    if board.has("need"):
        x = WIDE + 0.12
        board.measured(mark, "need", (x, 0.0), (x, mark.need), ("right", "left"))
        board.dashed([(-0.2, mark.need), (x, mark.need)])
    if board.has("have"):
        board.measured(mark, "have", (-0.12, 0.0), (-0.12, mark.have), ("left", "right"))
    if board.has("gap") and mark.short and not board.has("thick last bed"):
        board.ghost([(0.0, mark.have), (0.0, mark.need), (WIDE, mark.need), (WIDE, mark.have)])
        board.say(
            f"{board.told(mark.gap)} off",
            board.along((WIDE, max(mark.have, mark.need)), (0.0, max(mark.have, mark.need))),
            ("above", "right"),
            "bad",
            rank=0,
        )


def _stack(board: LessonBoard, beds: list[float], high: float) -> None:
    """Beds and pieces from the hearth up."""
    z = 0.0
    for k, bed in enumerate(beds):
        mortar = board.view.ring(box(0.0, WIDE, z, z + bed))
        piece = board.view.ring(box(0.0, WIDE, z + bed, z + bed + high))
        board.sheet.fill([mortar], "soot", layer=-1)
        board.sheet.fill([piece], "refractory", layer=-2)
        board.sheet.line(piece, "cut", closed=True)
        last = k == len(beds) - 1
        if board.has("beds", "rule") or (last and board.has("thick last bed")):
            thick = last and board.has("thick last bed")
            board.say(
                f"bed {board.told(bed)}",
                [board.view.at(WIDE / 2, z + bed + high * share) for share in (0.25, 0.4)],
                ("above",),
                "bad" if thick else "dimension",
                thick,
                rank=2,
                must=thick,
            )
        if board.has("pieces") and not board.has("beds"):
            board.say(
                board.told(high),
                [board.view.at(WIDE / 2, z + bed + high * 0.55)],
                ("above", "right"),
                "ink",
                False,
                rank=3,
                must=k == 0,
            )
        z += bed + high
