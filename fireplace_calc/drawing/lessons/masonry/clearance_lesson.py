"""Clearances: wood behind the firebox and the mantel over the opening, from the side; or wood
beside a chimney.
"""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.lessons.masonry.plain_parts import lumber, upright_section
from fireplace_calc.lessons.course.marks import LessonMark

STUD = 3.5 * INCH
"""Of the framing, as drawn. [m]"""
UNDER, OVER = 0.45, 0.62
"""Of what is seen under and over the top of the opening. [m]"""
CHIMNEY = "Framing at the chimney"
"""Question of a rule that is measured at the chimney and not behind the firebox."""
ASIDE = 0.55
"""From the face of the breast to the flue beside it, where both are drawn apart. [m]"""


def draw_clearance_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    geometry = board.moment.assessment.geometry
    top, chimney = geometry.frame.opening_top, board.of("A").rule.question == CHIMNEY
    gaps = [one.design.clearance for one in (*board.moment.extremes, board.moment)]
    most = max((one.chimney if chimney else one.back) or 0.0 for one in gaps)
    needs = [one.of("A").need or 0.0 for one in board.moment.extremes]
    if chimney:
        start = _chimney(board, top)
    else:
        start = geometry.frame.block_back
        most = max(most, *needs)
        board.frame(-0.5, top - UNDER, start + most + STUD + 0.12, top + OVER)
        upright_section(board, geometry, outlined=False)
    _wood(board, start, top)
    _mantel(board, top)


def _chimney(board: LessonBoard, top: float) -> float:
    """The breast with its mantel, and apart from it a length of chimney; the place of the
    chimney's outer face. [m]
    """
    design, bore = board.moment.design, board.moment.assessment.geometry.frame.bore
    shell = design.chimney.wall + design.chimney.gap + bore.wall
    face = ASIDE + bore.depth + shell
    board.frame(-0.4, top - UNDER, face + 0.1 + STUD + 0.5, top + OVER)
    _, low, _, high = board.window
    lumber(board, (0.0, top, 0.2, high), "brick")
    lumber(board, (ASIDE - 0.1, low, ASIDE, high), "clay liner")
    lumber(board, (ASIDE, low, ASIDE + bore.depth, high), "soot")
    lumber(board, (ASIDE + bore.depth, low, ASIDE + bore.depth + bore.wall, high), "clay liner")
    lumber(board, (face - design.chimney.wall, low, face, high), "brick")
    at = [board.view.at(ASIDE + bore.depth / 2, low + 0.12)]
    board.say("flue", at, ("above",), "ink", False, False, 4, False)
    return face


def _wood(board: LessonBoard, face: float, top: float) -> None:
    """The framing, the gap before it, have and need."""
    mark, gaps = board.of("A"), board.moment.design.clearance
    chimney = mark.rule.question == CHIMNEY
    gap = (gaps.chimney if chimney else gaps.back) or 0.0
    _, low, _, high = board.window
    lumber(board, (face + gap, low, face + gap + STUD, high))
    if board.has("filled gap"):
        lumber(board, (face, low, face + gap, top), "mortar")
        at = board.along((face + gap / 2, top - 0.1), (face + gap / 2, low))
        board.say("mortar in the gap", at, ("left", "above"), "bad", rank=0)
    if mark.have is None or mark.need is None:
        return
    start = face + gap - mark.have  # from the face, or from the inside of the flue
    prefix = "A" if len(board.moment.marks) > 1 else ""
    for which, value, z in (("have", mark.have, top + 0.12), ("need", mark.need, top - 0.2)):
        if board.wants(mark, which):
            a, b = (start, z), (start + value, z)
            aside = [board.view.at(face + gap + STUD, z)] if chimney else None
            sides = ("right",) if chimney else ("left", "above", "below")
            board.measured(mark, which, a, b, sides, prefix, aside)
    if board.wants(mark, "need"):
        b = (start + mark.need, top)
        board.dashed([(b[0], low), (b[0], high)])
    if board.wants(mark, "gap") and mark.short:
        edge, need = start + mark.have, start + mark.need
        board.ghost_box(edge, low + 0.02, need, high - 0.02)
        beside = max(need, face + gap + STUD) if chimney else need
        at = board.along((beside, top + 0.45), (beside, top + 0.35))
        said = f"{prefix} {board.told(mark.gap)} short".strip()
        board.say(said, at, ("left", "right"), "bad", rank=0)


def _mantel(board: LessonBoard, top: float) -> None:
    """The mantel as a plain piece of wood: how far up, and how far out."""
    trim = board.moment.design.surround.trim
    if not trim:
        return
    low, out, high = top + trim[0].drawn_distance, trim[0].drawn_projection, trim[0].height
    lumber(board, (-out, low, 0.0, low + high))
    if board.has("mantel"):
        at = [board.view.at(-out, low + high)]
        board.say("mantel", at, ("left", "above"), "ink", False, False, 3)
    board.view.path([(-0.3, top), (0.0, top)], "fine", "soft")
    for mark, x in ((board.find("B"), -0.04), (board.find("C"), -0.2)):
        if mark is None or mark.have is None or mark.need is None:
            continue
        if mark.at_most:
            _outward(board, mark, low, high)
        else:
            _upward(board, mark, x - out, top)


def _upward(board: LessonBoard, mark: LessonMark, x: float, top: float) -> None:
    """From the top of the opening to the wood."""
    have, need = mark.have or 0.0, mark.need or 0.0
    if board.wants(mark, "have"):
        a, b = (x, top), (x, top + have)
        board.measured(mark, "have", a, b, ("left", "below", "right"), mark.letter)
    if board.wants(mark, "need"):
        a, b = (x - 0.06, top), (x - 0.06, top + need)
        board.measured(mark, "need", a, b, ("left", "below", "above"), mark.letter)
        board.dashed([(x - 0.1, top + need), (0.0, top + need)])
    if board.wants(mark, "gap") and mark.short:
        board.ghost_box(-0.06, top + have, 0.0, top + need)
        at = board.along((0.0, top + need), (0.0, top + have))
        said = f"{mark.letter} {board.told(mark.gap)} short"
        board.say(said, at, ("right", "above"), "bad", rank=0)


def _outward(board: LessonBoard, mark: LessonMark, low: float, high: float) -> None:
    """From the face to the front of the wood, which may stand out so far at most."""
    have, need, z = mark.have or 0.0, mark.need or 0.0, low + high + 0.04
    if board.wants(mark, "have"):
        board.measured(mark, "have", (-have, z), (0.0, z), ("above", "left"), mark.letter)
    if board.wants(mark, "need"):
        z += 0.05
        board.measured(mark, "need", (-need, z), (0.0, z), ("above", "left"), mark.letter)
        board.dashed([(-need, low - 0.05), (-need, z)])
    if board.wants(mark, "gap") and mark.short:
        board.ghost_box(-have, low - 0.015, -need, low + high + 0.015)
        at = board.along((-have, low), (-need, low))
        said = f"{mark.letter} {board.told(mark.gap)} too far"
        board.say(said, at, ("left", "below"), "bad", rank=0)
