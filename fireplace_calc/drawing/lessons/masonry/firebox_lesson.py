"""Firebox, lintel and throat: depth and throat from the side, the bearing from the front."""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.lessons.masonry.plain_parts import lumber, upright_section
from fireplace_calc.geometry.parts import Geometry

THROUGH = "Firebox wall"
"""Question of a rule that is measured through the wall behind the fire."""
FRONT = 0.62
"""From the face of the section to the middle of the view from the front. [m]"""
JAMB, HALF = 0.32, 0.3
"""Of the jamb and of the opening that the view from the front shows. [m]"""
OVER = 0.35
"""Of what is seen over the lintel. [m]"""


def draw_firebox_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    geometry = board.moment.assessment.geometry
    f = geometry.frame
    moments = (*board.moment.extremes, board.moment)
    back = max(one.assessment.geometry.frame.block_back for one in moments)
    high = max(one.assessment.geometry.frame.throat for one in moments)
    shift = -FRONT - JAMB
    board.frame(shift - HALF - 0.04, f.hearth - 0.22, back + 0.06, high + OVER)
    upright_section(board, geometry)
    left, low, _, top = board.window
    room = board.view.ring([(left, low), (-0.12, low), (-0.12, top), (left, top)])
    board.sheet.fill([room], "room wall", layer=-2.5)
    _bearing(board, geometry, shift)
    _depth(board, geometry)
    _throat(board, geometry)


def _depth(board: LessonBoard, geometry: Geometry) -> None:
    """Rule A: from the face to the back, at the floor."""
    f, mark = geometry.frame, board.of("A")
    start = f.depth if mark.rule.question == THROUGH else 0.0
    z = f.hearth + 0.07
    if mark.have is None or mark.need is None:
        return
    if board.wants(mark, "have"):
        a, b = (start, z), (start + mark.have, z)
        board.measured(mark, "have", a, b, ("above", "below"), mark.letter)
    if board.wants(mark, "need"):
        z = f.hearth + 0.24
        a, b = (start, z), (start + mark.need, z)
        board.measured(mark, "need", a, b, ("above", "below"), mark.letter)
        board.dashed([(b[0], f.hearth), (b[0], z + 0.05)])
    if board.wants(mark, "gap") and mark.short:
        low, high = f.hearth, f.hearth + 0.2
        near, far = start + mark.have, start + mark.need
        board.ghost_box(near, low, far, high)
        at = board.along((far, high), (far, low))
        board.say(f"A {board.told(mark.gap)} short", at, ("right", "above"), "bad", rank=0)


def _throat(board: LessonBoard, geometry: Geometry) -> None:
    """Rule C: from the top of the opening to the throat."""
    f, mark = geometry.frame, board.find("C")
    if mark is None or mark.have is None or mark.need is None:
        return
    x, top = (f.throat_front + f.throat_back) / 2, f.opening_top
    if board.wants(mark, "have"):
        a, b = (x, top), (x, top + mark.have)
        board.view.path([(0.0, top), (f.depth, top)], "fine", "soft")
        board.measured(mark, "have", a, b, ("right", "below", "left", "above"), "C")
    if board.wants(mark, "need"):
        x += 0.11
        a, b = (x, top), (x, top + mark.need)
        board.measured(mark, "need", a, b, ("right", "above", "left"), "C")
        board.dashed([(0.0, top + mark.need), (f.depth + 0.1, top + mark.need)])
    if board.wants(mark, "gap") and mark.short:
        low, high = top + mark.have, top + mark.need
        board.ghost_box(f.throat_front, low, f.throat_back, high)
        at = board.along((f.throat_back, high), (f.throat_back, low))
        board.say(f"C {board.told(mark.gap)} short", at, ("right", "above"), "bad", rank=0)


def _bearing(board: LessonBoard, geometry: Geometry, x: float) -> None:
    """Rule B: one end of the lintel, from the front; the jamb's edge stands at ``x``. [m]"""
    f, design, mark = geometry.frame, board.moment.design, board.find("B")
    top, view = f.opening_top, board.view
    bearing = design.lintel.bearing or 0.0
    low, high = top - 0.42, top + OVER
    lumber(board, (x, low, x + JAMB, top), "brick")
    lumber(board, (x - HALF, low, x, top), "soot")
    lumber(board, (x - HALF, top, x + JAMB, high), "brick")
    thick = max(design.lintel.height or 3 * INCH, 3 * INCH)
    lumber(board, (x - HALF, top, x + bearing, top + thick), "steel")
    board.view.path([(x, low), (x, top)], "cut")
    if board.has("short lintel"):
        at = board.along((x + bearing, top + thick), (x, top + thick))
        board.say("the lintel ends here", at, ("above", "right", "left"), "bad", False)
    if mark is None or mark.have is None or mark.need is None:
        return
    if board.wants(mark, "have"):
        z = top - 0.06
        a, b = (x, z), (x + mark.have, z)
        board.measured(mark, "have", a, b, ("below", "right", "left"), "B")
    if board.wants(mark, "need"):
        z = top - 0.2
        a, b = (x, z), (x + mark.need, z)
        board.measured(mark, "need", a, b, ("below", "right", "left"), "B")
        board.dashed([(x + mark.need, z - 0.03), (x + mark.need, top + thick)])
    if board.wants(mark, "gap") and mark.short:
        near, far = x + mark.have, x + mark.need
        board.ghost_box(near, top, far, top + thick)
        at = [view.at(far, top + thick)]
        board.say(f"B {board.told(mark.gap)} short", at, ("above", "right"), "bad", rank=0)
