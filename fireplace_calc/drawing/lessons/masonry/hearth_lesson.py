"""Hearths, from above: how far the hearth reaches in front of and beside the opening."""

from __future__ import annotations

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.geometry.polygons import box


def draw_hearth_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    design, moments = board.moment.design, (*board.moment.extremes, board.moment)
    half = design.opening.width / 2
    widest = max(
        one.design.opening.width / 2 + max(one.of("B").need or 0.0, one.design.hearth.side)
        for one in moments
    )
    deepest = max(max(one.of("A").need or 0.0, one.design.hearth.front) for one in moments)
    board.frame(-widest - 0.35, -deepest - 0.25, widest + 0.55, 0.45)
    _masonry(board, half)
    _front(board, half)
    _beside(board, half)
    if board.has("opening"):
        ends = (-half, 0.09), (half, 0.09)
        board.bar(*ends, "mark", "dimension")
        told = board.told(design.opening.width)
        board.say(f"opening {told}", board.along(*ends), ("above", "below"), "dimension", rank=2)
    if board.has("first drawing"):
        at = board.view.at(-half - design.hearth.side, -design.hearth.front)
        board.say("as first drawn", [at], ("below", "right"), "bad", big=False)


def _masonry(board: LessonBoard, half: float) -> None:
    """Block, firebox and hearth as they stand."""
    view, design = board.view, board.moment.design
    frame = board.moment.assessment.geometry.frame
    front, side = design.hearth.front, design.hearth.side
    ring = view.ring(box(-half - side, half + side, -front, 0.0))
    board.sheet.fill([ring], "tile", layer=-3)
    board.sheet.line(ring, "cut", closed=True)
    left, _, right, top = board.window
    block = view.ring(box(left, right, 0.0, top))
    inner = [
        (-half, 0.0),
        (half, 0.0),
        (frame.back_width / 2, frame.depth),
        (-frame.back_width / 2, frame.depth),
    ]
    board.sheet.fill([block, view.ring(inner)[::-1]], "brick", layer=-2)
    board.sheet.fill([view.ring(inner)], "firebrick", layer=-2.5)
    view.path([(left, 0.0), (-half, 0.0), *inner[:1:-1], (half, 0.0), (right, 0.0)], "cut")


def _front(board: LessonBoard, half: float) -> None:
    """Have and need in front of the opening."""
    mark = board.of("A")
    if mark.need is None or mark.have is None:
        return
    left, _, right, _ = board.window
    if board.wants(mark, "need"):
        x = -half * 0.35
        board.measured(mark, "need", (x, 0.0), (x, -mark.need), ("left", "right"), "A")
        board.dashed([(left, -mark.need), (right, -mark.need)])
    if board.wants(mark, "have"):
        x = half * 0.1
        board.measured(mark, "have", (x, 0.0), (x, -mark.have), ("right", "left"), "A")
    if board.wants(mark, "gap") and mark.short:
        reach = half + board.moment.design.hearth.side
        board.ghost(
            [(-reach, -mark.have), (reach, -mark.have), (reach, -mark.need), (-reach, -mark.need)]
        )
        board.say(
            f"{board.told(mark.gap)} short",
            board.along((reach, -mark.need), (-reach, -mark.need)),
            ("below", "above", "right"),
            "bad",
            rank=0,
        )


def _beside(board: LessonBoard, half: float) -> None:
    """Have and need on the right, and what is missing on both sides."""
    mark = board.of("B")
    if mark.need is None or mark.have is None:
        return
    front = board.moment.design.hearth.front
    if board.wants(mark, "need"):
        y = -front * 0.8
        a, b = (half, y), (half + mark.need, y)
        board.measured(mark, "need", a, b, ("below", "right", "above"), "B")
        board.view.path([(half, 0.0), (half, -front)], "hidden", "soft")
        board.dashed([(half + mark.need, 0.0), (half + mark.need, -front - 0.1)])
    if board.wants(mark, "have"):
        y = -front * 0.25
        a, b = (half, y), (half + mark.have, y)
        board.measured(mark, "have", a, b, ("below", "above", "right"), "B")
    if board.wants(mark, "gap") and mark.short:
        for sign in (-1.0, 1.0):
            near, far = sign * (half + mark.have), sign * (half + mark.need)
            board.ghost([(near, 0.0), (far, 0.0), (far, -front), (near, -front)])
        at = board.along((-half - mark.need, 0.0), (-half - mark.need, -front))
        board.say(f"{board.told(mark.gap)} short", at, ("left", "right", "below"), "bad", rank=0)
