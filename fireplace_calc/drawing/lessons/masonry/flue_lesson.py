"""Opening and flue: both holes to one scale, and the flue that the opening asks for."""

from __future__ import annotations

from math import pi, sqrt

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.geometry.polygons import box
from fireplace_calc.lessons.course.marks import LessonMark
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.lessons.course.sums import NUMBER

BETWEEN = 0.5
"""From the opening to the flue, as drawn. [m]"""
MASONRY = 0.18
"""Of masonry drawn round the opening. [m]"""


def draw_flue_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    moments: tuple[LessonMoment, ...] = (*board.moment.extremes, board.moment)
    half = max(one.design.opening.width for one in moments) / 2
    high = max(one.design.opening.height for one in moments)
    radius = max(_radius(one, value) for one in moments for value in _both(one.of("A")))
    middle = half + BETWEEN + radius
    board.frame(-half - MASONRY, -0.2, middle + radius + 0.35, max(high, 2 * radius) + 0.25)
    _opening(board)
    _flue(board, middle, high / 2)


def _both(mark: LessonMark) -> list[float]:
    return [value for value in (mark.have, mark.need) if value is not None]


def _bore(moment: LessonMoment) -> Bore:
    return moment.assessment.geometry.frame.bore


def _area(moment: LessonMoment, value: float) -> float:
    """Area of a figure of the rule: an area, a share of the opening, or a flue so many across.
    [m2]
    """
    kind = moment.of("A").kind
    if kind == "length":
        bore = _bore(moment)
        return value**2 * (pi / 4 if bore.round else bore.depth / bore.width)
    opening = moment.design.opening
    return value if kind == "area" else value * opening.width * opening.height


def _told(board: LessonBoard, mark: LessonMark, value: float) -> str:
    """A figure of the rule as its name says it."""
    if mark.kind == NUMBER:
        return f"{100 * value:.1f} %"
    return board.told(value, mark.kind)


def _radius(moment: LessonMoment, value: float) -> float:
    """Half the outline's largest side. [m]"""
    ring = _outline(moment, value)
    return float(np.abs(ring).max())


def _outline(moment: LessonMoment, value: float) -> Array:
    """The flue's own shape, as large as a figure of the rule says, about its middle. [m]"""
    return _ring(_bore(moment), _area(moment, value))


def _ring(bore: Bore, area: float) -> Array:
    """A flue's shape with another area, about its middle. [m]"""
    if bore.round:
        turn = np.linspace(0.0, 2 * pi, 73)[:-1]
        ring = np.stack([np.cos(turn), np.sin(turn)], axis=1)
        return ring * sqrt(area / (36 * np.sin(2 * pi / 72)))
    half = np.array([bore.width, bore.depth]) / 2
    ring = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)]) * half
    return ring * sqrt(area / (bore.width * bore.depth))


def _opening(board: LessonBoard) -> None:
    """The hole that takes in air, with the raise at its foot."""
    design, view = board.moment.design, board.view
    half, high = design.opening.width / 2, design.opening.height
    outer = view.ring(box(-half - MASONRY, half + MASONRY, 0.0, high + MASONRY))
    inner = view.ring(box(-half, half, 0.0, high))
    board.sheet.fill([outer, inner[::-1]], "brick", layer=-3)
    board.sheet.fill([inner], "soot", layer=-2)
    board.sheet.line(inner, "cut", closed=True)
    board.sheet.line(outer, "fine", closed=True)  # so that no name stands half on the masonry
    raised = design.opening.extension
    if raised > 0:
        standard = high - raised
        board.dashed([(-half, standard), (half, standard)], "soft")
        ink = "bad" if board.has("raised on the same flue") else "dimension"
        ends = (half * 0.7, standard), (half * 0.7, high)
        if board.has("raised on the same flue", "opening", "rule"):
            board.bar(*ends, "mark", ink)
            at = board.along(*ends)
            board.say(f"raised {board.told(raised)}", at, ("left", "below"), ink, rank=2)
    if board.has("opening", "rule"):
        area = board.told(design.opening.width * high, "area")
        at = [view.at(0.0, high * 0.32)]
        board.say(f"opening {area}", at, ("above", "below", "left"), rank=1)
    for ends, sides, value in (
        (((-half, -0.08), (half, -0.08)), ("below",), design.opening.width),
        (((-half * 0.85, 0.0), (-half * 0.85, high)), ("right",), high),
    ):
        board.bar(*ends, "mark", "soft")
        board.say(board.told(value), board.along(*ends), sides, "ink", False, False, 3)


def _flue(board: LessonBoard, x: float, z: float) -> None:
    """The flue as it is and as it must be, one about the other."""
    mark, view = board.of("A"), board.view
    if mark.have is None:
        bore = _bore(board.moment)
        ring = _ring(bore, bore.area)
        board.sheet.fill([view.ring(ring + (x, z))], "clay liner", layer=-2)
        board.sheet.line(view.ring(ring + (x, z)), "seen", closed=True)
        return
    rings = {
        which: view.ring(_outline(board.moment, value) + (x, z))
        for which, value in (("have", mark.have), ("need", mark.need))
        if value is not None
    }
    board.sheet.fill([rings["have"]], "clay liner", layer=-2)
    board.sheet.line(rings["have"], "seen", closed=True)
    ink = "bad" if mark.short else "good"
    if board.has("need") and "need" in rings and mark.need is not None:
        board.sheet.line(rings["need"], "need", "ink", closed=True)
        top = rings["need"][:, 1].max(), rings["have"][:, 1].max()
        at = [(view.at(x, z)[0], max(top))]
        said = f"need {_told(board, mark, mark.need)}"
        board.say(said, at, ("above", "left", "right"), rank=0)
    if board.has("have"):
        board.sheet.line(rings["have"], "have", ink, closed=True)
        low = min(ring[:, 1].min() for ring in rings.values())
        at = [(view.at(x, z)[0], low)]
        said = f"have {_told(board, mark, mark.have)}"
        board.say(said, at, ("below", "left", "right"), ink=ink, rank=0)
    if board.has("gap") and mark.short:
        board.say(
            f"{_told(board, mark, mark.gap)} short",
            [view.at(x, z)],
            ("above", "below", "left"),
            "bad",
            rank=1,
        )
    if board.has("rule", "opening"):
        opening = board.moment.design.opening
        share = opening.width * opening.height / _area(board.moment, mark.have)
        at = [view.at(x, z)]
        board.say(
            f"1/{share:.1f} of the opening", at, ("below", "above"), "ink", False, False, 3, False
        )
