"""A rod in strips: how a height is shared out over a sheet, and at what scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork.courses import Course
from fireplace_calc.drawing.plates.marks import SMALL, title_width
from fireplace_calc.drawing.rods.marked_lanes import FACED, SET, Lane, NamedLevel, course_name
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.views.layout import level

PITCH = 3.9
"""Least from figure to figure in a column. [mm]"""
LANE_WIDE = 9.0
"""Of a lane of the batten. [mm]"""
AIR = 2.4
"""Between a figure and the line that leads to it. [mm]"""
BESIDE = 6.8
"""For the lines that lead to a column at the left. [mm]"""
NUMBER = 8.4
"""Room for the number of a course of brick. [mm]"""
MOST_COLUMNS = 4
LONG = 18
"""Letters of a name that stands in one row. [-]"""
SCALES = {FEET_INCHES: (16, 24, 32, 48, 64, 96), "millimetres": (20, 25, 50, 100)}
"""Denominators of a rod, the largest scale first. [-]"""

CONTINUED, LONGEST_SCALE = "The rod, continued", '3/32" = 1\'-0"'
"""In the title of a strip."""


@dataclass(frozen=True, slots=True)
class RodStrip:
    """Part of a rod.

    Attributes
    ----------
    bottom, top : float
        [m]
    named : float
        Width of the names with their levels. [mm]
    figures : dict
        Width of a column of figures, by its lane. [mm]
    titled : float
        Width of its title. [mm]
    """

    bottom: float
    top: float
    named: float
    figures: dict[str, float]
    titled: float = 0.0

    def holds(self, level_: float) -> bool:
        """Whether a level stands on it. [m]"""
        return self.bottom - 1e-6 <= level_ <= self.top + 1e-6


@dataclass(frozen=True, slots=True)
class RodPlan:
    """How a rod is drawn.

    Attributes
    ----------
    strips : tuple of RodStrip
    denominator : float
    columns : int
        Of the figures of brick. [-]
    """

    strips: tuple[RodStrip, ...]
    denominator: float
    columns: int


def staggered(levels: Sequence[float], denominator: float) -> int:
    """Columns in which figures of some levels stand clear of one another. [-]

    Parameters
    ----------
    levels : sequence of float
        Rising. [m]
    denominator : float

    Examples
    --------
    >>> staggered([0.0, 0.0677, 0.1354, 0.2031], 24.0)
    2
    """
    count = 1
    while any(
        (levels[n + count] - levels[n]) * 1000 / denominator < PITCH
        for n in range(len(levels) - count)
    ):
        count += 1
    return count


def plan_rod(
    all_lanes: Sequence[Lane],
    names: Sequence[NamedLevel],
    units: str,
    wide: float,
    high: float,
    cut: float,
) -> RodPlan:
    """The largest scale at which the whole rod stands in so much room.

    Parameters
    ----------
    all_lanes : sequence of Lane
    names : sequence of NamedLevel
    units : str
    wide, high : float
        Room. [mm]
    cut : float
        Level at which a strip may well end: the shoulder. [m]

    Returns
    -------
    RodPlan
        On as few sheets as can be, then at the largest scale.
    """
    low = min(names[0].level, *(lane.courses[0].bottom for lane in all_lanes))
    top = max(names[-1].level, *(lane.courses[-1].top for lane in all_lanes))
    best: tuple[int, RodPlan] | None = None
    for denominator in SCALES[units]:
        brick = next((lane for lane in all_lanes if lane.name == FACED), None)
        columns = staggered([c.top for c in brick.courses], denominator) if brick else 0
        if columns > MOST_COLUMNS:
            continue
        shared = _shared(low, top, cut, high * denominator / 1000)
        ends = [
            level_
            for bounds in pairwise(shared)
            for level_ in _parted(bounds, all_lanes, names, units, high)
        ]
        strips = tuple(_strip(a, b, all_lanes, names, units) for a, b in pairwise([*ends, top]))
        plan = RodPlan(strips, denominator, columns)
        crowded = any(
            crowd(strip, all_lanes, names, units)
            > 1.0 + (strip.top - strip.bottom) * 1000 / denominator
            for strip in strips
        )
        too_wide = any(strip_width(plan, strip, all_lanes) > wide for strip in strips)
        sheets = len(on_sheets(plan, all_lanes, wide)) + 50 * crowded + 100 * too_wide
        if best is None or sheets < best[0]:
            best = sheets, plan
    assert best is not None
    return best[1]


def _columns(
    strip: RodStrip, all_lanes: Sequence[Lane], names: Sequence[NamedLevel], units: str
) -> list[list[float]]:
    """Levels of what stands in one column each, a level for every row: figures, names. [m]"""
    rows = [one.level for one in names if strip.holds(one.level) for _ in name_rows(one, units)]
    figures = [
        sorted(c.top for c in lane.courses if strip.holds(c.top))
        for lane in all_lanes
        if lane.name != FACED
    ]
    return [rows, *figures]


def crowd(
    strip: RodStrip, all_lanes: Sequence[Lane], names: Sequence[NamedLevel], units: str
) -> float:
    """Height that the fullest column of figures or names needs. [mm]"""
    return PITCH * max(map(len, _columns(strip, all_lanes, names, units)))


def _parted(
    bounds: tuple[float, float],
    all_lanes: Sequence[Lane],
    names: Sequence[NamedLevel],
    units: str,
    high: float,
) -> list[float]:
    """Where strips begin that part a height so that each has room for its fullest column. [m]"""
    ends = [*bounds]
    while True:
        for n, (low, top) in enumerate(pairwise(ends)):
            fullest = max(_columns(RodStrip(low, top, 0.0, {}), all_lanes, names, units), key=len)
            middle = fullest[len(fullest) // 2] if fullest else low
            if PITCH * len(fullest) > high and low + 1e-3 < middle < top - 1e-3:
                ends.insert(n + 1, middle)
                break
        else:
            return ends[:-1]


def strip_width(plan: RodPlan, strip: RodStrip, all_lanes: Sequence[Lane]) -> float:
    """Width of a strip with everything beside it. [mm]"""
    wide = strip.named + BESIDE + AIR
    for lane in all_lanes:
        if lane.name == FACED:
            wide += LANE_WIDE + plan.columns * strip.figures[FACED]
        elif lane.name == SET:
            wide += LANE_WIDE + strip.figures[SET] + BESIDE
        elif any(c.top > strip.bottom and c.bottom < strip.top for c in lane.courses):
            wide += AIR + LANE_WIDE + BESIDE + strip.figures[lane.name]
    return max(wide, strip.titled)


def on_sheets(plan: RodPlan, all_lanes: Sequence[Lane], wide: float) -> list[list[RodStrip]]:
    """Strips sheet by sheet, as many side by side as there is room for.

    Parameters
    ----------
    plan : RodPlan
    all_lanes : sequence of Lane
    wide : float
        Room. [mm]
    """
    sheets: list[list[RodStrip]] = [[]]
    used = 0.0
    for strip in plan.strips:
        each = strip_width(plan, strip, all_lanes)
        if sheets[-1] and used + each > wide:
            sheets.append([])
            used = 0.0
        sheets[-1].append(strip)
        used += each
    return sheets


def name_rows(one: NamedLevel, units: str) -> list[str]:
    """A name and its level, in rows where several names share it."""
    *before, last = one.name.split(", ") if len(one.name) > LONG else [one.name]
    rows: list[str] = []
    for word in before:
        if rows and len(rows[-1]) + len(word) < LONG:
            rows[-1] += f" {word},"
        else:
            rows.append(f"{word},")
    return [*rows, f"{last}  {level(one.level, units)}"]


def _strip(
    bottom: float,
    top: float,
    all_lanes: Sequence[Lane],
    names: Sequence[NamedLevel],
    units: str,
) -> RodStrip:
    """A strip, and how wide what stands beside it is."""
    bare = RodStrip(bottom, top, 0.0, {})
    rows = [
        width(row, SMALL, n.measured)
        for n in names
        if bare.holds(n.level)
        for row in name_rows(n, units)
    ]
    figures = {}
    for lane in all_lanes:
        faced, here = lane.name == FACED, [c for c in lane.courses if bare.holds(c.top)]
        texts = [level(c.top, units) if faced else figure(c, units) for c in here]
        widest = max((width(text, SMALL) for text in texts), default=0.0)
        figures[lane.name] = widest + 2.0 + (NUMBER if faced else 0.0)
    titled = title_width("11", CONTINUED, LONGEST_SCALE, reach(bare, units))
    return RodStrip(bottom, top, max(rows, default=0.0), figures, titled)


def reach(strip: RodStrip, units: str) -> str:
    """From which level to which a strip runs, as its title says it."""
    return f"from {level(strip.bottom, units)} to {level(strip.top, units)}"


def figure(course: Course, units: str) -> str:
    """Name and top of a course that is set; a star where it is cut."""
    return f"{course_name(course)}  {level(course.top, units)}{'*' if course.cut else ''}"


def _shared(low: float, top: float, cut: float, most: float) -> list[float]:
    """Ends of strips no higher than so much; one ends at the cut where that needs none more. [m]"""
    count = ceil((top - low) / most - 1e-9)
    below, above = ceil((cut - low) / most - 1e-9), ceil((top - cut) / most - 1e-9)
    if low < cut < top and below + above == count:
        ends = [low + (cut - low) * n / below for n in range(below)]
        ends += [cut + (top - cut) * n / above for n in range(above + 1)]
    else:
        ends = [low + (top - low) * n / count for n in range(count + 1)]
    return ends
