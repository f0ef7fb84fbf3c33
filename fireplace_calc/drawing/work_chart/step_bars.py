"""Rows of the chart: a step's number, name, what it takes, and its bar against the working days,
with the wait after it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.build import Plan, WorkStep
from fireplace_calc.build.steps import ready_at
from fireplace_calc.drawing.plates.bands import BESIDE, PITCH, Together, edges
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import Column, wrapped
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet
from fireplace_calc.drawing.work_chart.at_hand import (
    hands,
    lies_ready,
    numbers,
    on_days,
    straight_after,
    whole_counts,
)

BAR = 2.6
"""Height of a bar. [mm]"""
OVER, UNDER = 0.8, 1.45
"""Over the capitals of a row, and from its last line to the line below. [mm]"""
LEAST_BAR = 0.5
"""A bar is drawn at least so long. [mm]"""
NARROW = 300.0
"""A chart less wide has fewer columns. [mm]"""
DAY_ROOM = 4.8
"""A day's number needs so much. [mm]"""
ENDS = 3.0
"""Left free at both ends of the days. [mm]"""
STEPS_OF_DAYS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000)
WAIT_HATCH = "brick"
"""How a wait is hatched."""
DAYS = ("Working day (days off not counted)", "Working day", "Day")
LEGEND = 60.0
"""Width of the legend, with the air beside it. [mm]"""
LEGEND_WORDS = (
    "work at the wall",
    "wait: nothing is put on it",
    "wait beside the work",
    "somebody looks first",
)
LINE = 5.4
"""From line to line of the legend. [mm]"""
INSPECTED = ("inspection", "test")
"""Kinds of hold points at which somebody else looks."""


@dataclass(frozen=True, slots=True)
class DayAxis:
    """Working days across the chart.

    Attributes
    ----------
    left, right : float
        Where the first morning and the last evening lie. [mm]
    days : float
        From one to the other. [d]
    every : int
        Days from line to line. [-]
    """

    left: float
    right: float
    days: float
    every: int

    def x(self, day: float) -> float:
        """Where a time lies. [mm]"""
        return self.left + (self.right - self.left) * min(day, self.days) / self.days

    @property
    def lines(self) -> list[float]:
        """Times with an upright line. [d]"""
        return [float(n) for n in range(0, int(self.days) + 1, self.every)]


def day_axis(left: float, right: float, days: float) -> DayAxis:
    """Working days over a width, with as many lines as have room for their number. [mm]"""
    whole = float(max(1, -int(-days // 1)))
    left, right = left + ENDS, right - ENDS
    room = max(DAY_ROOM, width(f"{whole:.0f}", SMALL) + 1.2)
    every = next(n for n in STEPS_OF_DAYS if n * (right - left) / whole >= room or n >= whole)
    return DayAxis(left, right, whole, every)


def last_moment(plan: Plan) -> float:
    """When the work is done and every wait is over. [d]"""
    return max(
        (t for s in plan.steps for t in (s.end, *(ready_at(s, w) for w in s.waits))), default=0.0
    )


def columns(wide: float) -> tuple[Column, ...]:
    """Columns of the chart; the last holds the days. Shares are millimeters. On a narrow sheet the
    cards alone say what is checked.
    """
    name, check = (59.5, 25.5) if wide >= NARROW else (46.0, 0.0)
    number, after, hours, day, who = 7.0, 13.5, 12.5, 13.5, 13.5
    rest = wide - sum((name, check, number, after, hours, day, who))
    taken = min(max(0.4 * rest, 40.0), 92.0)
    return (
        Column("", number),
        Column("Step", name),
        Column("After", after),
        Column("At hand", taken),
        *((Column("Check", check),) if check else ()),
        Column("Hours", hours, "right"),
        Column("Day", day, "right"),
        Column("Hands", who, "right"),
        Column("", rest - taken),
    )


def heads(plan: Plan, wide: float) -> list[Together]:
    """Headings over the rows, and the numbers of the days."""
    shape = columns(wide)
    at = edges(shape, wide)
    axis = day_axis(at[-2], at[-1], last_moment(plan))
    high = OVER + SMALL + PITCH + UNDER

    def paint(sheet: Sheet, left: float, top: float) -> None:
        y = top - OVER - SMALL
        for n, column in enumerate(shape[:-1]):
            x = at[n + 1] - BESIDE if column.ha == "right" else at[n]
            sheet.text(left + x, y - PITCH, column.heading, SMALL, column.ha, bold=True)
        said = next(t for t in DAYS if width(t, SMALL, True) <= at[-1] - axis.left or t == DAYS[-1])
        sheet.text(left + axis.left, y, said, SMALL, "left", bold=True)
        for day in axis.lines:
            ha, x = ("center", axis.x(day + 0.5)) if axis.every == 1 else ("left", axis.x(day))
            told = f"{day + 1:.0f}"
            ends = x + width(told, SMALL) * (0.5 if axis.every == 1 else 1.0)
            if day + 1 <= axis.days and ends <= axis.right + ENDS:
                sheet.text(left + x, y - PITCH, told, SMALL, ha)
        sheet.line([(left, top - high), (left + wide, top - high)], "cut")

    return [Together(high, paint, leads=True)]


def step_rows(plan: Plan, units: str, wide: float) -> list[Together]:
    """A row for every step.

    Parameters
    ----------
    plan : Plan
    units : str
    wide : float
        Of the chart. [mm]

    Returns
    -------
    list of Together
    """
    shape = columns(wide)
    at = edges(shape, wide)
    axis = day_axis(at[-2], at[-1], last_moment(plan))
    return [
        _row(step, [texts[column.heading] for column in shape[:-1]], shape, at, axis)
        for step, texts in zip(plan.steps, row_texts(plan, units), strict=True)
    ]


def row_texts(plan: Plan, units: str) -> list[dict[str, str]]:
    """Words of every row under their headings."""
    found, after = [], straight_after(plan)
    for step, counts in zip(plan.steps, whole_counts(plan.steps), strict=True):
        people, hoist = hands(plan, step)
        kinds = dict.fromkeys(hold.kind for hold in step.hold_points)
        found.append(
            {
                "": str(step.number),
                "Step": step.name,
                "After": numbers(after[step.number]),
                "At hand": lies_ready(step, counts, units),
                "Check": ", ".join(kinds),
                "Hours": f"{step.hours:.1f}",
                "Day": on_days(step),
                "Hands": f"{people}, h" if hoist else f"{people}",
            }
        )
    return found


def _row(
    step: WorkStep,
    texts: Sequence[str],
    shape: Sequence[Column],
    at: Sequence[float],
    axis: DayAxis,
) -> Together:
    cells = [wrapped(text, at[n + 1] - at[n] - BESIDE, bold=n == 1) for n, text in enumerate(texts)]
    high = OVER + SMALL + (max(map(len, cells)) - 1) * PITCH + UNDER

    def paint(sheet: Sheet, left: float, top: float) -> None:
        for n, cell in enumerate(cells):
            right = shape[n].ha == "right"
            x = left + (at[n + 1] - BESIDE if right else at[n])
            for k, text in enumerate(cell):
                if text:
                    y = top - OVER - SMALL - k * PITCH
                    sheet.text(x, y, text, SMALL, shape[n].ha, bold=n == 1)
        low = top - high
        sheet.line([(left, low), (left + at[-1], low)], "fine")
        kept = _bars(sheet, step, axis, left, top)
        for day in axis.lines:
            x = left + axis.x(day)
            if not any(a <= x <= b for a, b in kept):
                sheet.line([(x, top), (x, low)], "fine")

    return Together(high, paint)


def _bars(sheet: Sheet, step: WorkStep, axis: DayAxis, left: float, top: float) -> list[Pair]:
    """Bar and waits of a step; gives where an upright line would cut through them or a text."""
    y = top - OVER - SMALL
    start, end = left + axis.x(step.start), left + axis.x(step.end)
    end = max(end, start + LEAST_BAR)
    bar(sheet, start, end, y)
    kept = [(start, end)]
    if any(hold.kind in INSPECTED for hold in step.hold_points):
        diamond(sheet, start - 2.0, y + BAR / 2)
        kept.append((start - 3.6, start))
    waits = [w for w in step.waits if w.days > 0]
    if waits:
        long = max(waits, key=lambda w: ready_at(step, w))
        over = left + axis.x(ready_at(step, long))
        begin = end if long.counts_from == "end" else max(start, end)
        if over > begin + LEAST_BAR:
            wait(sheet, begin, over, y, long.holds_up)
            said = f"{long.days:g} d"
            room = width(said, SMALL)
            if over + 1.2 + room <= left + axis.right + ENDS:
                sheet.text(over + 1.2, y, said, SMALL, "left")
                kept.append((begin, over + 2.2 + room))
            else:
                kept.append((begin, over))
    return kept


def _box(start: float, end: float, y: float) -> list[Pair]:
    return [(start, y), (end, y), (end, y + BAR), (start, y + BAR)]


def bar(sheet: Sheet, start: float, end: float, y: float) -> None:
    """Work at the wall, black. [mm]"""
    sheet.fill([_box(start, end, y)], "ink", layer=0.5)
    sheet.line(_box(start, end, y), "fine", closed=True)


def wait(sheet: Sheet, start: float, end: float, y: float, holds_up: bool) -> None:
    """A wait: hatched where nothing is laid on it, open where it runs beside the work. [mm]"""
    if holds_up:
        sheet.fill([_box(start, end, y)], "air", WAIT_HATCH)
    sheet.line(_box(start, end, y), "seen" if holds_up else "hidden", closed=True)


def diamond(sheet: Sheet, x: float, y: float) -> None:
    """Somebody else has to look. [mm]"""
    ring = [(x - 1.4, y), (x, y + 1.2), (x + 1.4, y), (x, y - 1.4)]
    sheet.fill([ring], "ink", layer=0.5)


def legend(sheet: Sheet, paper: Paper) -> None:
    """What the bars mean, beside the title block; ``LEGEND`` wide. [mm]"""
    cell = paper.strip
    x, y = cell.left, cell.top - 4.0
    bar(sheet, x, x + 12.0, y)
    wait(sheet, x, x + 12.0, y - LINE, True)
    wait(sheet, x, x + 12.0, y - 2 * LINE, False)
    diamond(sheet, x + 6.0, y - 3 * LINE + BAR / 2)
    for said in LEGEND_WORDS:
        sheet.text(x + 15.0, y + 0.1, said, SMALL, "left")
        y -= LINE
    sheet.text(cell.left + 6.0, y + 0.1, "2, h", SMALL)
    sheet.text(cell.left + 15.0, y + 0.1, "people, and a hoist", SMALL, "left")
