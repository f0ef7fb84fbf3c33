"""The whole height against the roof, with the two clearances drawn where they are measured."""

from __future__ import annotations

from fireplace_calc.brickwork.courses import Course, course_list
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.roof.cap import draw_cap, over_flue
from fireplace_calc.drawing.roof.roof_lines import (
    _eaves,
    _named,
    _ridge,
    _shift,
    _width,
    along,
    roof_at,
)
from fireplace_calc.drawing.roof.roof_marks import Limits, _clearances, _heights, _high
from fireplace_calc.drawing.room.for_scale import person
from fireplace_calc.drawing.sheets.dimensions import room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.layout import LADDER, ScaleName, Scales, earth, fit, roomy, title
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box

THICK, WALL = 0.22, 0.3
"""Of the roof, and from its edge to the face of the wall, as drawn. [m]"""


def roof(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    limits: Limits | None = None,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the chimney and the roof, seen along the ridge, uphill to the right."""
    f, d = geometry.frame, geometry.design
    top = (
        max(
            f.highest + over_flue(geometry),
            f.highest_within_reach,
            min(d.roof.ridge_level, f.highest_within_reach + 1.0),
            2.0,
        )
        + 0.1
    )
    bottom = min(f.footing_bottom, f.grade, f.uphill_contact, f.highest_within_reach) - 0.05
    left, right = _width(geometry, 1.1 * (top - bottom) if roomy(cell) else 0.0)
    marks = level_marks(_named(geometry), lambda z: _high(z, units))
    heights = _heights(geometry, units, limits or {})
    values = room_for((t for _, lines, _ in heights for t in lines), bold=True)
    margins = (level_room(marks, not roomy(cell)) + 6.0, 9.0, values + 5.0, 11.0)
    view, denominator = fit(sheet, cell, (left, bottom, right, top), margins, scales)
    draw_house(view, geometry, left, right, (bottom, top))
    draw_chimney(view, geometry)
    person(view, along(geometry)[0] - 0.55, 0.0)
    _clearances(view, cell, geometry, units, heights, right)
    x = view.at(left, 0)[0]
    levels(
        sheet,
        [(view.at(0, z)[1], value, name) for z, value, name in marks],
        [x - 0.4] * len(marks),
        x - 4.6,
        side=-1,
        limits=(cell.bottom + 10, cell.top - 6),
        stacked=not roomy(cell),
    )
    title(
        sheet,
        cell,
        f"Against the roof, {d.flue.sections} sections",
        name_scale(denominator) if name_scale else "",
    )
    return view


def draw_house(
    view: View,
    geometry: Geometry,
    left: float,
    right: float,
    within: tuple[float, float] = (-1e3, 1e3),
) -> None:
    """Roof, walls, ceiling, floor and ground; what meets the chimney stops at it, and what falls
    below or rises above the levels that are drawn ends there.
    """
    f, d = geometry.frame, geometry.design
    for part in d.roof.nearby:
        _nearby(view, geometry, (part.drawn_distance, part.drawn_level), right, within)
    down, up = _eaves(geometry)
    run = max(d.roof.ridge_level - THICK - within[0], 0.0) / max(d.roof.pitch, 1e-9)
    hidden = max(d.roof.ridge_level - within[1], 0.0) / max(d.roof.pitch, 1e-9)
    ridge = _ridge(geometry)
    low = max(left, down, ridge - run)
    high = min(right, up, ridge - hidden if hidden else ridge + run)
    for a, b in _beside_stack(geometry, low, high):
        _slope(view, geometry, a, b, down, up)
    inner, outer = (
        (max(left, down + WALL), left < down + WALL),
        (min(right, up - WALL), right > up - WALL),
    )
    for (u, here), s in ((inner, -1.0), (outer, 1.0)):
        foot, head = max(f.grade, f.footing_bottom), roof_at(geometry, u) - THICK
        if (
            here
            and left < u < right
            and head > foot
            and not along(geometry)[0] < u < along(geometry)[1]
        ):
            view.path([(u, foot), (u, head)], "seen")
            view.path(
                [
                    (u - s * WALL / 2, foot),
                    (u - s * WALL / 2, roof_at(geometry, u - s * WALL / 2) - THICK),
                ],
                "fine",
            )
    ends = (inner[0], outer[0])
    first, last, stack = along(geometry)
    _level_line(view, 0.0, ends, (first, last), "seen")
    _ceiling(view, geometry, ends)
    earth(view, left, first, f.grade)
    earth(view, last, right, f.grade)


def _ceiling(view: View, geometry: Geometry, ends: tuple[float, float]) -> None:
    """Ceiling of the room, as far as it lies under the roof."""
    f, ceiling, ridge = geometry.frame, geometry.design.house.ceiling, _ridge(geometry)
    pitch, over = geometry.design.roof.pitch, geometry.design.roof.ridge_level - THICK - ceiling
    if over <= 0:
        return
    run = over / pitch if pitch > 0 else 1e3
    first, last, stack = along(geometry)
    aside = _shift(geometry, ceiling)
    gap = (aside - stack, aside) if ceiling > f.shoulder_top else (first, last)
    if ceiling > f.crown_bottom:
        gap = (ends[0], ends[0])
    _level_line(view, ceiling, (max(ends[0], ridge - run), min(ends[1], ridge + run)), gap, "fine")


def _level_line(
    view: View, z: float, ends: tuple[float, float], gap: tuple[float, float], weight: str
) -> None:
    """A level line that stops at the chimney."""
    for a, b in ((ends[0], min(gap[0], ends[1])), (max(gap[1], ends[0]), ends[1])):
        if b > a:
            view.path([(a, z), (b, z)], weight)


def _beside_stack(geometry: Geometry, low: float, high: float) -> list[tuple[float, float]]:
    """The roof left and right of the stack, or in one piece where the chimney does not reach it.
    [m]
    """
    f, (_, _, stack) = geometry.frame, along(geometry)
    if f.crown_bottom < f.downhill_contact:
        return [(low, high)] if high > low else []
    return [(a, b) for a, b in ((low, min(-stack, high)), (max(0.0, low), high)) if b > a]


def _slope(view: View, geometry: Geometry, a: float, b: float, down: float, up: float) -> None:
    """A stretch of roof, open where the drawing ends and closed at its eaves."""
    ridge = _ridge(geometry)
    at = [a, *([ridge] if a < ridge < b else []), b]
    upper = [(u, roof_at(geometry, u)) for u in at]
    lower = [(u, z - THICK) for u, z in upper]
    view.sheet.fill([view.ring([*upper, *reversed(lower)])], "roof", layer=-3)
    view.path(upper, "seen")
    view.path(lower, "seen")
    for u, end in ((a, down), (b, up)):
        if abs(u - end) < 1e-9:
            view.path([(u, roof_at(geometry, u)), (u, roof_at(geometry, u) - THICK)], "seen")


def _nearby(
    view: View,
    geometry: Geometry,
    head: tuple[float, float],
    right: float,
    within: tuple[float, float],
) -> None:
    """A dormer, parapet or other roof, standing on the slope; one that rises above what is drawn is
    open there.
    """
    (u, top), (low, high) = head, within
    far = min(u + 1.2, right)
    if far <= u + 0.3 or top <= roof_at(geometry, u) + 0.05 or top < low:
        return
    feet = [
        (at, max(min(roof_at(geometry, at), top - less), low))
        for at, less in ((u, 0.05), (far, 0.3))
    ]
    heads = [(far, top - 0.25), (u, top)] if top <= high else [(far, high), (u, high)]
    if top <= high:
        view.seen([*feet, *heads], "wall", "seen", layer=-4)
    elif max(z for _, z in feet) < high:
        view.sheet.fill([view.ring([*feet, *heads])], "wall", layer=-4)
        view.path([heads[1], *feet, heads[0]], "seen")


def draw_chimney(view: View, geometry: Geometry) -> None:
    """Chimney from its side, its flue sections counted inside; hidden lines under the ground."""
    f, d = geometry.frame, geometry.design
    low, high, stack = along(geometry)
    out = d.base.footing_projection
    view.path(
        [
            (low, f.footing_top),
            (low - out, f.footing_top),
            (low - out, f.footing_bottom),
            (high + out, f.footing_bottom),
            (high + out, f.footing_top),
            (high, f.footing_top),
        ],
        "hidden",
    )
    for u in (low, high):
        view.path([(u, f.footing_top), (u, f.grade)], "hidden")
    foot = max(f.grade, f.footing_top)
    bends = [z for z in (f.shoulder_top, f.offset_top) if z < f.crown_bottom]
    rising = [(_shift(geometry, z), z) for z in sorted({*bends, f.crown_bottom})]
    outline = [
        (low, foot),
        (high, foot),
        (high, f.block_top),
        *rising,
        *((u - stack, z) for u, z in reversed(rising)),
        (low, f.block_top),
    ]
    view.seen(outline, "masonry", "seen", layer=-2)
    over, edge = d.chimney.overhang, f.crown_bottom + d.chimney.crown
    inset = d.chimney.wall + d.chimney.gap
    view.seen(
        [
            (-stack - over, f.crown_bottom),
            (over, f.crown_bottom),
            (over, edge),
            (-inset, f.crown_top),
            (-stack + inset, f.crown_top),
            (-stack - over, edge),
        ],
        "concrete",
        "seen",
        layer=-1,
    )
    for inside, low, high, courses in _flues(geometry, stack):
        view.seen(box(*inside, f.crown_top, high), "clay liner", "seen", layer=-1)
        draw_cap(view, geometry, *inside, high)
        rising = [
            (_shift(geometry, z), z) for z in sorted({low, *bends, f.crown_bottom}) if z >= low
        ]
        flue = [
            *((u + inside[1], z) for u, z in rising),
            *((u + inside[0], z) for u, z in reversed(rising)),
        ]
        view.seen(flue, "clay liner", "fine", layer=-1)
        for z in (course.top for course in courses[:-1]):
            if z < f.crown_bottom:
                view.path([(u + _shift(geometry, z), z) for u in inside], "fine")


def _flues(
    geometry: Geometry, stack: float
) -> list[tuple[tuple[float, float], float, float, tuple[Course, ...]]]:
    """Sides of every flue as it is seen, counted from the uphill face where the stack leaves the
    roof, the levels of its ends, and its courses; the nearer flue last. [m]
    """
    f, d = geometry.frame, geometry.design
    inset = d.chimney.wall + d.chimney.gap
    found = course_list(geometry)
    own = found.of("flue liner") or found.of("flue casing")
    if f.second is None:
        return [((-stack + inset, -inset), f.flue_start, f.liner_top, own)]
    aside = d.roof.ridge_runs == "along the opening"
    first = (0.0, f.unit_depth if aside else f.unit_half, f.flue_start, f.liner_top, own)
    other = (
        0.0 if aside else f.second.x,
        f.second.unit_depth if aside else f.second.unit_half,
        f.second.start,
        f.second.top,
        found.of("second flue liner"),
    )
    middle = -stack / 2 if aside else -f.stack_half - f.stack_middle
    return [
        ((middle + x - half, middle + x + half), low, high, courses)
        for x, half, low, high, courses in (other, first)
    ]
