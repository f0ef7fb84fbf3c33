"""One strip of a rod: the batten in lanes, figures at the right, levels with names at the left."""

from __future__ import annotations

from collections.abc import Sequence

from fireplace_calc.brickwork.courses import Course
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.rods.marked_lanes import (
    FACED,
    LINED,
    SET,
    Lane,
    NamedLevel,
    course_name,
)
from fireplace_calc.drawing.rods.strips import (
    AIR,
    BESIDE,
    LANE_WIDE,
    NUMBER,
    PITCH,
    RodPlan,
    RodStrip,
    crowd,
    figure,
    name_rows,
)
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Sheet, spread
from fireplace_calc.drawing.views.layout import level

HEADINGS = {SET: "set", LINED: "lining", FACED: "brick"}
KNEE, SLANT = 1.8, 3.0
"""Of a line to a figure: straight out, then to the figure's height. [mm]"""
EVERY = 3
"""Of brick courses every so many is bold, to count by. [-]"""


class StripDrawing:
    """Draws one strip.

    Parameters
    ----------
    sheet : Sheet
    plan : RodPlan
    strip : RodStrip
    left : float
        Where names begin. [mm]
    room : float, float
        Paper's levels between which it stands. [mm]
    units : str
    """

    def __init__(
        self,
        sheet: Sheet,
        plan: RodPlan,
        strip: RodStrip,
        left: float,
        room: tuple[float, float],
        units: str,
    ) -> None:
        self.sheet, self.plan, self.strip, self.units = sheet, plan, strip, units
        self.foot, self.scale = room[0], 1000 / plan.denominator
        self.left, self.room = left, room

    def y(self, z: float) -> float:
        """Paper level of a level. [mm]"""
        return self.foot + (z - self.strip.bottom) * self.scale

    def draw(self, all_lanes: Sequence[Lane], names: Sequence[NamedLevel]) -> None:
        """Names, figures of what is set, the batten, figures of brick; from the left."""
        plan, strip = self.plan, self.strip
        needed, drawn = crowd(strip, all_lanes, names, self.units), self.y(strip.top) - self.foot
        if needed > drawn:  # its figures reach beyond it, above and below
            self.foot += (min(needed, self.room[1] - self.room[0]) - drawn) / 2
        own = [lane for lane in all_lanes if lane.name in (SET, FACED)]
        rest = [lane for lane in all_lanes if lane not in own]
        batten = self.left + strip.named + BESIDE
        batten += sum(strip.figures[SET] + BESIDE for lane in own if lane.name == SET)
        right = self._batten(own, batten)
        end = batten
        for lane in own:
            if lane.name == SET:
                self._beside(lane, batten, end - KNEE, -1)
                end -= strip.figures[SET] + BESIDE
        self._names(names, batten, right, end)
        faced = [lane for lane in own if lane.name == FACED]
        self._staggered(faced, right)
        x = right + AIR + (plan.columns * strip.figures[FACED] if faced else 0.0) + AIR
        for lane in rest:
            if self._here(lane):
                self._beside(lane, self._batten([lane], x), x + LANE_WIDE + KNEE, 1)

    def _batten(self, all_lanes: Sequence[Lane], left: float) -> float:
        """Lanes side by side, as high as their courses reach; gives the right edge."""
        sheet, low, top = self.sheet, self.y(self.strip.bottom), self.y(self.strip.top)
        if all(lane.name not in (SET, FACED) for lane in all_lanes):
            courses = [course for lane in all_lanes for course in lane.courses]
            low = max(low, self.y(min(course.bottom for course in courses)))
            top = min(top, self.y(max(course.top for course in courses)))
        right = left + LANE_WIDE * len(all_lanes)
        for n, lane in enumerate(all_lanes):
            x = left + n * LANE_WIDE
            sheet.line([(x, low), (x, top)], "seen")
            sheet.text(x + LANE_WIDE / 2, top + 2.2, HEADINGS[lane.name], size=SMALL)
            self._marks(lane, x)
        sheet.line([(right, low), (right, top)], "seen")
        for y in (low, top):
            sheet.line([(left, y), (right, y)], "seen")
        return right

    def _here(self, lane: Lane) -> list[Course]:
        """Courses whose tops stand on this strip."""
        return [
            course
            for course in lane.courses
            if self.strip.bottom + 1e-6 < course.top <= self.strip.top + 1e-6
        ]

    def _marks(self, lane: Lane, x: float) -> None:
        """Top and bed of every course across its lane, and its name where there is room."""
        low, top = self.y(self.strip.bottom), self.y(self.strip.top)
        edges = [self.y(z) for course in lane.courses for z in (course.bottom, course.top)]
        named: list[float] = []
        for course in lane.courses:
            foot, head = self.y(course.bottom), self.y(course.top)
            for y, weight in ((foot, "dimension"), (head, "seen")):
                if low + 1e-6 < y < top - 1e-6:
                    self.sheet.line([(x, y), (x + LANE_WIDE, y)], weight)
            name, foot, head = course_name(course), max(foot, low), min(head, top)
            half = (foot + head) / 2
            room = head - foot > 2 * SMALL and width(name, SMALL) < LANE_WIDE - 1.6
            # parts side by side
            room = room and not any(abs(y - half) < SMALL for y in edges)
            room = room and not any(abs(y - half) < PITCH for y in named)
            if lane.name != FACED and room:
                named.append(half)
                middle = x + LANE_WIDE / 2, half
                self.sheet.text(*middle, name, SMALL, va="middle")

    def _beside(self, lane: Lane, x: float, knee: float, side: int) -> None:
        """Figures of one lane in one column, each with its line; ``side`` -1 for the left."""
        courses = sorted(self._here(lane), key=lambda course: course.top)
        wanted = [self.y(course.top) for course in courses]
        far = knee + side * SLANT
        ha = "right" if side < 0 else "left"
        for course, y, at in zip(courses, wanted, self._spread(wanted), strict=True):
            line = [(x, y), (knee, y), (far, at), (far + side * 1.0, at)]
            self.sheet.line(line, "dimension")
            text = figure(course, self.units)
            self.sheet.text(far + side * 1.8, at, text, SMALL, ha=ha, va="middle")

    def _staggered(self, faced: list[Lane], right: float) -> None:
        """Figures of brick in staggered columns."""
        for lane in faced:
            for n, course in enumerate(self._here(lane)):
                y, column = self.y(course.top), n % self.plan.columns
                at = right + AIR + column * self.strip.figures[FACED]
                self.sheet.line([(right, y), (right + 1.2, y)], "dimension")
                bold, end = course.number % EVERY == 0, at + NUMBER - 1.4
                name = course_name(course)
                self.sheet.text(end, y, name, SMALL, ha="right", va="middle", bold=bold)
                text = level(course.top, self.units)
                self.sheet.text(at + NUMBER, y, text, SMALL, ha="left", va="middle")

    def _spread(self, wanted: list[float]) -> list[float]:
        return spread(wanted, [PITCH] * len(wanted), *self._limits(PITCH * len(wanted), 6.0))

    def _limits(self, needed: float, over: float) -> tuple[float, float]:
        """Between which paper's levels a column stands: beside the strip while it has room there.
        [mm]
        """
        low, top = self.y(self.strip.bottom) - 2.0, self.y(self.strip.top) + over
        if needed <= top - low:
            return low, top
        return self.room[0] - 2.0, self.room[1] + over

    def _named(self, names: Sequence[NamedLevel]) -> list[NamedLevel]:
        return [one for one in names if self.strip.holds(one.level)]

    def _names(self, names: Sequence[NamedLevel], batten: float, right: float, end: float) -> None:
        """Names with their levels left of all figures; a short line at the batten."""
        here = self._named(names)
        wanted = [self.y(one.level) for one in here]
        rows = [name_rows(one, self.units) for one in here]
        sizes = [PITCH * len(texts) for texts in rows]
        low, top = self._limits(sum(sizes), 8.0)
        # the level stands in the last row, and the line leads to it
        middles = [y + PITCH * (len(t) - 1) / 2 for y, t in zip(wanted, rows, strict=True)]
        places = spread(middles, sizes, low, top)
        for one, y, middle, texts in zip(here, wanted, places, rows, strict=True):
            at = middle - PITCH * (len(texts) - 1) / 2
            tip = end - KNEE - SLANT
            self.sheet.line([(end - KNEE, y), (tip, at), (tip - 1.0, at)], "dimension")
            for n, text in enumerate(reversed(texts)):
                place = tip - 1.8, at + n * PITCH
                bold = one.measured
                self.sheet.text(*place, text, SMALL, ha="right", va="middle", bold=bold)
            weight = "flag" if one.measured else "dimension"
            self.sheet.line([(batten - 1.6, y), (batten, y)], weight)
            if one.measured:
                self.sheet.line([(right, y), (right + 1.2, y)], weight)
