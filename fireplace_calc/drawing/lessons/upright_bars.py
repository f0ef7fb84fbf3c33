"""Have and need of what is no length: upright bars from one base line, on a scale of their own."""

from __future__ import annotations

from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.lessons.course.marks import LessonMark


def scale_bars(
    board: LessonBoard, mark: LessonMark, x: float, base: float, per: float, apart: float
) -> None:
    """Draw have and need side by side, and what is missing or too much as a ghost.

    Parameters
    ----------
    board : LessonBoard
    mark : LessonMark
    x, base : float
        Foot of the bar of have. [m]
    per : float
        Height of a bar for one unit of what is compared. [m a unit in SI]
    apart : float
        From have to need. [m]
    """
    if mark.have is None or mark.need is None:
        return
    board.per[mark.kind] = per * board.view.scale
    have, need = base + mark.have * per, base + mark.need * per
    board.view.path([(x - apart, base), (x + 2 * apart, base)], "fine", "soft")
    if board.has("need"):
        board.measured(mark, "need", (x + apart, base), (x + apart, need), ("right", "above"))
        board.dashed([(x - apart, need), (x + apart, need)])
    if board.has("have"):
        board.measured(mark, "have", (x, base), (x, have), ("left", "above"))
    if board.has("gap") and mark.short:
        half = apart / 3
        board.ghost([(x - half, have), (x - half, need), (x + half, need), (x + half, have)])
        said = "too much" if mark.at_most else "short"
        board.say(
            f"{board.told(mark.gap, mark.kind)} {said}",
            board.along((x, max(have, need)), (x, min(have, need))),
            ("left", "above", "right"),
            "bad",
            rank=0,
        )
