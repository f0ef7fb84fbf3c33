"""What every picture of a lesson is drawn on: bars, ghosts and names of have and need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from fireplace_calc.drawing.lessons.free_places import Wanted, put_labels
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet, View
from fireplace_calc.lessons.course.marks import LessonMark
from fireplace_calc.lessons.course.moments import LessonMoment
from fireplace_calc.lessons.course.place_values import written
from fireplace_calc.lessons.course.sums import Amount

SHARE = 0.74
"""Of the screen's height that a picture has. [-]"""
BIG, MID = 0.028, 0.0215
"""Letters of have, need and figures, and of everything else, as a share of the screen's height."""
TICK = 2.0
"""Half of the stroke at either end of a bar. [mm]"""
MARGIN = 3.0
"""Free at the edge of the picture. [mm]"""


@dataclass
class LessonBoard:
    """One picture while it is drawn.

    Attributes
    ----------
    moment : LessonMoment
    shows : frozenset of str
        Which marks are drawn.
    wide, high : float
        Of the picture. [mm]
    screen : float
        Height of the screen that it is shown on. [mm]
    sheet : Sheet
    view : View
        Set by ``frame``.
    per : dict
        Length of a bar of what is no length, by kind. [mm a unit in SI]
    """

    moment: LessonMoment
    shows: frozenset[str]
    wide: float
    high: float
    screen: float
    sheet: Sheet = field(init=False)
    view: View = field(init=False)
    wanted: list[tuple[int, Wanted]] = field(default_factory=list)
    per: dict[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.sheet = Sheet(self.wide, self.high)
        self.big, self.mid = BIG * self.screen, MID * self.screen

    def frame(self, left: float, bottom: float, right: float, top: float) -> View:
        """Set the window on the model so that all of it is seen, in the middle. [m]"""
        wide, high = self.wide - 2 * MARGIN, self.high - 2 * MARGIN
        scale = min(wide / (right - left), high / (top - bottom))
        self.view = View(
            self.sheet,
            (self.wide - (right + left) * scale) / 2,
            (self.high - (top + bottom) * scale) / 2,
            scale,
        )
        return self.view

    @property
    def window(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of what the sheet shows. [m]"""
        view = self.view
        return (
            -view.x0 / view.scale,
            -view.y0 / view.scale,
            (self.wide - view.x0) / view.scale,
            (self.high - view.y0) / view.scale,
        )

    def has(self, *marks: str) -> bool:
        """Whether any of these marks is to be drawn."""
        return bool(self.shows.intersection(marks))

    def of(self, letter: str) -> LessonMark:
        """Have and need of one rule."""
        return self.moment.of(letter)

    def find(self, letter: str) -> LessonMark | None:
        """The same, or nothing where the reader's lesson has no such rule."""
        return next((mark for mark in self.moment.marks if mark.letter == letter), None)

    def wants(self, mark: LessonMark, which: str) -> bool:
        """Whether have, need or gap of a rule is to be drawn: of all rules, or of this one."""
        return self.has(which, f"{which} {mark.letter}")

    def told(self, value: float, kind: str = "length") -> str:
        """A figure in the reader's units. [SI]"""
        return written(Amount(value, kind), self.moment.units)

    def bar(self, a: Pair, b: Pair, pen: str = "mark", ink: str = "ink") -> None:
        """A bar from one point of the model to another, with a stroke at either end. [m]"""
        ends = np.array([self.view.at(*a), self.view.at(*b)])
        self.sheet.line(ends, pen, ink)
        run = ends[1] - ends[0]
        long = float(np.hypot(*run))
        if long > 0:
            across = np.array([-run[1], run[0]]) / long * TICK
            for end in ends:
                self.sheet.line([end - across, end + across], "tick", ink)

    def dashed(self, points: Sequence[Pair], ink: str = "ink", pen: str = "carried") -> None:
        """A broken line through points of the model. [m]"""
        self.view.path(points, pen, ink)

    def ghost(self, points: Sequence[Pair]) -> None:
        """The outline of what is missing, or too much. [m]"""
        if self.moment.short:
            self.view.path([*points, points[0]], "ghost", "bad")

    def ghost_box(self, left: float, bottom: float, right: float, top: float) -> None:
        """The same of an upright rectangle. [m]"""
        self.ghost([(left, bottom), (right, bottom), (right, top), (left, top)])

    def along(self, a: Pair, b: Pair) -> list[Pair]:
        """Points along a bar that a name may stand beside, the middle first. [mm]"""
        start, end = np.array(self.view.at(*a)), np.array(self.view.at(*b))
        return [
            tuple(start + (end - start) * share)
            for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0)
        ]

    def say(
        self,
        text: str,
        at: Sequence[Pair],
        sides: Sequence[str] = ("right", "left", "above", "below"),
        ink: str = "ink",
        big: bool = True,
        bold: bool = True,
        rank: int = 1,
        must: bool = True,
    ) -> None:
        """A name beside one of some points, placed when all lines are drawn. [mm]"""
        size = self.big if big else self.mid
        self.wanted.append((rank, Wanted(text, at, sides, size, ink, bold, must)))

    def measured(
        self,
        mark: LessonMark,
        which: str,
        a: Pair,
        b: Pair,
        sides: Sequence[str] = ("right", "left", "above", "below"),
        prefix: str = "",
        at: Sequence[Pair] | None = None,
    ) -> None:
        """The bar of have or need with its name and figure, from one point to another. [m]

        Parameters
        ----------
        mark : LessonMark
        which : str
            ``have`` or ``need``.
        a, b : pair
            Ends of the bar; as far from each other as the figure says. [m]
        sides : sequence of str
            Where its name may stand, the best first.
        prefix : str
            Letter of the rule, where there are several.
        at : sequence of pair, optional
            Points its name may stand beside, where those along the bar have no room. [mm]
        """
        value = mark.have if which == "have" else mark.need
        if value is None:
            return
        ink = "ink" if which == "need" else ("bad" if mark.short else "good")
        self.bar(a, b, which, ink)
        most = " at most" if which == "need" and mark.at_most else ""
        name = f"{prefix} {which}{most}".strip()
        self.say(
            f"{name} {self.told(value, mark.kind)}", at or self.along(a, b), sides, ink, rank=0
        )

    def finish(self) -> list[tuple[Wanted, float]]:
        """Write all names, and say how far each stands from its thing. [mm]"""
        ordered = [one for _, one in sorted(self.wanted, key=lambda pair: pair[0])]
        return put_labels(self.sheet, ordered)
