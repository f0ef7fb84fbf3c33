"""Height over the roof: have and need at the uphill face, and what stands near."""

from __future__ import annotations

from math import atan, cos, sin

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.lessons.board import LessonBoard
from fireplace_calc.drawing.roof.roof_lines import along
from fireplace_calc.drawing.roof.roof_view import draw_chimney, draw_house
from fireplace_calc.drawing.sheets.sheet import Pair
from fireplace_calc.lessons.course.marks import LessonMark
from fireplace_calc.lessons.course.measures import reach_of
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.rules.comparing import reaches

SIDE = 1.75
"""Left of the chimney, for need and its name. [m]"""
PAST = 0.75
"""Beyond what counts. [m]"""


class RoofPicture:
    """The house and its chimney, cropped to where the rule is."""

    def __init__(self, board: LessonBoard) -> None:
        self.board, moment = board, board.moment
        self.geometry = moment.assessment.geometry
        self.f = self.geometry.frame
        self.stack = along(self.geometry)[2]
        self.base = self.f.uphill_contact
        self.far = reach_of(moment.book)
        self.ridge = moment.design.roof.ridge_distance
        self.reach = min(self.ridge, self.far)
        self.high = self.base + moment.names["climb"].value
        self.top = self.base + max(
            max(mark.have or 0.0, mark.need or 0.0)
            for each in (*moment.extremes, moment)
            for mark in _upright(each)
        )
        side = SIDE if moment.units == FEET_INCHES else SIDE + 0.5
        self.view = board.frame(
            -self.stack - side, self.base - 0.75, self.widest() + PAST, self.top + 0.75
        )
        self.left, _, self.right, _ = board.window

    def widest(self) -> float:
        """How far the picture reaches from the uphill face: as far as anything is measured. [m]"""
        return self.far if self.board.of("B").rule.plus else max(self.far, self.ridge)

    def ground(self) -> None:
        """The house; beyond the reach nothing counts, and is shaded."""
        board = self.board
        _, low, right, high = board.window
        if any(mark.rule.plus for mark in board.moment.marks):
            zone = [(self.far, low), (right, low), (right, high), (self.far, high)]
            board.sheet.fill([self.view.ring(zone)], "soot", layer=-9)
            past, _ = self.view.at((self.far + right) / 2, 0.0)
            told = f"past {board.told(self.far)}"
            board.say(told, [(past, board.high - board.mid)], ("below",), "soft", False, False, 4)
        draw_house(self.view, self.geometry, self.left, right)
        draw_chimney(self.view, self.geometry)

    def upright(self) -> None:
        """Have and need over the roof, where they are measured."""
        board, moment = self.board, self.board.moment
        marks = _upright(moment)
        if not marks:
            return
        mark = min(marks, key=lambda one: one.spare)
        left = -self.stack - 0.45
        if board.has("need") and mark.need is not None:
            need = self.base + mark.need
            self.named(mark, "need", (left, self.base), (left, need), ("left", "right"))
            board.dashed([(left, need), (self.right, need)])
            self.level_of_base(left)
        if board.has("have") and mark.have is not None:
            top = self.base + mark.have
            self.named(mark, "have", (0.16, self.base), (0.16, top), ("right", "left"))
            if mark.short and mark.need is not None and board.has("gap"):
                need = self.base + mark.need
                board.ghost([(-self.stack, top), (-self.stack, need), (0.0, need), (0.0, top)])
                board.say(
                    f"{board.told(mark.gap)} short",
                    [self.view.at(-self.stack / 2, need)],
                    ("above", "left", "right"),
                    "bad",
                    rank=0,
                )

    def named(self, mark: LessonMark, which: str, a: Pair, b: Pair, sides: tuple[str, ...]) -> None:
        """A bar of have or need, with its letter where another rule's stands beside it."""
        alone = self.board.of("B").rule.plus
        self.board.measured(mark, which, a, b, sides, "" if alone else mark.letter)

    def level_of_base(self, left: float) -> None:
        """The level from which both are measured."""
        self.view.path(
            [(left - 0.15, self.base), (max(self.reach, 0.2), self.base)], "fine", "soft"
        )

    def near(self) -> None:
        """What rule B adds over the highest spot within reach, and the level tape to it."""
        board = self.board
        mark = board.of("B")
        if not mark.rule.plus or mark.need is None:
            return
        rule_decides = board.moment.decides.letter == "B"
        if board.has("climb") or (board.has("rule") and rule_decides):
            self.level_of_base(0.0)
            board.bar((self.reach, self.base), (self.reach, self.high), "mark", "soft")
            board.say(
                f"roof climbs {board.told(self.high - self.base)}",
                board.along((self.reach, self.base), (0.0, self.base)),
                ("below", "above", "right"),
                big=False,
                bold=False,
                rank=3,
                must=False,
            )
        if board.has("need B") or (board.has("rule") and rule_decides):
            a, b = (self.reach, self.high), (self.reach, self.base + mark.need)
            board.bar(a, b, "mark", "dimension")
            board.say(
                f"B {board.told(b[1] - a[1])}", board.along(a, b), ("left", "right"), "dimension"
            )
        if board.has("reach", "rule"):
            self.tape()

    def tape(self) -> None:
        """A level tape from the nearest face, over everything."""
        board = self.board
        z = self.top + 0.3
        if self.reach > 0.05:
            board.bar((0.0, z), (self.reach, z), "mark", "good")
            board.dashed([(self.reach, z), (self.reach, self.high)], "soft", "hidden")
        near = reaches(self.far, self.ridge)
        told = board.told(self.ridge if near else self.far)
        board.say(
            f"ridge {told} away, level" if near else f"{told} level: stop here",
            board.along((0.0, z), (self.reach, z)),
            ("above", "below", "right"),
            "good",
            big=False,
            rank=2,
        )

    def first(self) -> None:
        """What rule A asks for, by itself."""
        mark = self.board.of("A")
        if self.board.has("need A") and mark.need is not None:
            left = -self.stack - 0.2
            a, b = (left, self.base), (left, self.base + mark.need)
            self.board.bar(a, b, "mark", "dimension")
            self.level_of_base(left)
            told = self.board.told(mark.need)
            self.board.say(f"A {told}", self.board.along(a, b), ("left", "right"), "dimension")

    def sideways(self) -> None:
        """Level from the outlet to the roof, in a book that measures it so."""
        board = self.board
        mark = board.of("B")
        if mark.rule.plus or mark.have is None or mark.need is None:
            return
        if mark.finding is None or "sideways" not in mark.finding.title:
            return
        z = self.f.liner_top
        if board.has("have"):
            board.measured(mark, "have", (0.0, z), (mark.have, z), ("below", "above"), "B")
        if board.has("need"):
            over = z + 0.28
            board.measured(mark, "need", (0.0, over), (mark.need, over), ("above", "below"), "B")
            board.dashed([(mark.need, over + 0.2), (mark.need, self.base)])

    def slope_tape(self) -> None:
        """The fault: a tape laid on the slope."""
        board = self.board
        if not board.has("slope tape"):
            return
        pitch = board.moment.design.roof.pitch
        lean, off = atan(pitch), 0.1
        end = self.far * cos(lean)
        foot = (-off * sin(lean), self.base + off * cos(lean))
        head = (foot[0] + end, foot[1] + end * pitch)
        board.bar(foot, head, "mark", "bad")
        board.say(
            f"{board.told(self.far)} on the slope",
            board.along(foot, head),
            ("below", "right", "left", "above"),
            "bad",
        )


def draw_roof_lesson(board: LessonBoard) -> None:
    """Draw all marks that are wanted."""
    picture = RoofPicture(board)
    picture.ground()
    picture.upright()
    picture.first()
    picture.near()
    picture.sideways()
    picture.slope_tape()


def _upright(moment: LessonMoment) -> list[LessonMark]:
    """Rules that are measured upward."""
    return [
        mark
        for mark in moment.marks
        if mark.have is not None and (mark.letter == "A" or mark.rule.plus)
    ]
