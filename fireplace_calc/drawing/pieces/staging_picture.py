"""The site from above: piles to both sides of the walkway, pallets, mixer, and what is carried."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.setting.site_plan import Area
from fireplace_calc.build.setting.staging import StagedPile, StagingPlan, plan_staging
from fireplace_calc.build.setting.staging_wording import staging_words
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.dimensions import chain, room_for
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.survey.rings import clipped
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    break_line,
    fit,
    length,
    title,
)
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.set_up import set_of, set_up
from fireplace_calc.geometry.in_room.cut_corner import corner_of
from fireplace_calc.geometry.parts import Geometry

WIDTH, HEIGHT = 297.0, 210.0
"""A sheet of A4, lying. [mm]"""
WORDS = 84.0
"""Width of the words beside the drawing. [mm]"""
LINE, GAP, PITCH = 4.0, 2.0, 3.5
"""From line to line, between paragraphs, and from line to line on a pile. [mm]"""
BEYOND = 1.2
"""How much of a long walkway is drawn between the last pile and the pallet. [m]"""
ROUND = 0.35
"""Shown of the room round what stands in it. [m]"""


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What is drawn, after a long walkway was cut short. [m]"""

    front: Area
    areas: tuple[Area, ...]
    walkways: tuple[Area, ...]
    piles: tuple[StagedPile, ...]
    box: Area
    cut: bool


def has_set(geometry: Geometry) -> bool:
    """Whether there are pieces to put down."""
    return geometry.design.piece_set is not None


def staging(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw where the delivery is put down, the chimney's wall at the top."""
    return staging_view(sheet, cell, geometry.design, units, scales, name_scale)


def staging_view(
    sheet: Sheet,
    cell: Cell,
    design: Design,
    units: str = FEET_INCHES,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the site of a design with a set.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    design : Design
    units : str
        ``feet-inches`` or ``millimetres``.
    scales : iterable of float
        Denominators to choose from. [-]
    name_scale : callable or None
        Names the scale on paper.

    Returns
    -------
    View

    Raises
    ------
    InputError
        When the design has no set.
    """
    made = set_of(design, "there is nothing to put down")
    up = set_up(design)
    steps = order_of_setting(up.assembly, made.lining)
    corner = corner_of(design, build_geometry(design).frame) if design.breast.cornered else None
    plan = plan_staging(
        up.assembly, steps, design.work, design.house, design.breast.off_center, corner
    )
    drawn = _drawn(plan, up.assembly)
    split = cell.right - WORDS
    place = Cell(cell.left, cell.bottom, split, cell.top)
    view, denominator = fit(sheet, place, drawn.box, (14.0, 12.0, 4.0, 4.0), scales)
    _put_room(view, plan, drawn)
    for area in drawn.walkways:
        view.sheet.fill([view.ring(_ring(area))], "room floor", layer=-1)
        for x in (area[0], area[2]):
            view.path([(x, area[1]), (x, area[3])], "hidden", "soft")
    for one in drawn.piles:
        _put_pile(view, one, plan.spot, units)
    for n, area in enumerate(drawn.areas):
        _put_area(view, area, _area_words(plan, n, units))
    _put_ways(view, plan, drawn, units, place)
    y = cell.top - 8.0
    for words in staging_words(plan, units, assumed(design)):
        for line in wrapped(words, WORDS - 8.0):
            sheet.text(split + 4.0, y, line, size=SMALL, ha="left")
            y -= LINE
        y -= GAP
    title(sheet, place, "Staging", name_scale(denominator) if name_scale else "")
    return view


def staging_sheet(design: Design, units: str = FEET_INCHES) -> Sheet:
    """The site on a sheet of its own.

    Parameters
    ----------
    design : Design
        With a set.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    sheet = Sheet(WIDTH, HEIGHT)
    staging_view(sheet, Cell(4.0, 10.0, WIDTH - 2.0, HEIGHT - 2.0), design, units)
    return sheet


def _drawn(plan: StagingPlan, made: Assembly) -> _Drawn:
    reach = [extent(p.piece) for p in made.placed]
    front = (
        min(e[0] for e in reach),
        min(e[2] for e in reach),
        max(e[1] for e in reach),
        max(e[3] for e in reach),
    )
    piles = tuple(one for one in plan.piles if one.place is not None)
    spots = [_spot(one, plan.spot) for one in piles]
    low = min([-plan.site.off, *(a[1] for a in spots)])
    free = plan.site.away + low - BEYOND - plan.site.walkway
    shift = free if free > BEYOND else 0.0
    areas = tuple((a, b + shift, c, d + shift) for a, b, c, d in plan.areas)
    ways = tuple(
        (a, b + shift, c, d if n == 0 else d + shift)
        for n, (a, b, c, d) in enumerate(plan.site.walkways)
    )
    every = [front, *spots, *areas, *ways]
    box = (
        min(a[0] for a in every) - ROUND,
        min(a[1] for a in every) - ROUND,
        max(a[2] for a in every) + ROUND,
        max(a[3] for a in every) + ROUND,
    )
    return _Drawn(front, areas, ways, piles, box, shift > 0.0)


def _spot(one: StagedPile, size: tuple[float, float]) -> Area:
    x, y = one.place or (0.0, 0.0)
    wide, deep = size
    return x - wide / 2, y - deep / 2, x + wide / 2, y + deep / 2


def _ring(area: Area) -> list[tuple[float, float]]:
    x0, y0, x1, y1 = area
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def _put_room(view: View, plan: StagingPlan, drawn: _Drawn) -> None:
    """Walls as far as they are known and near, and the fireplace in its wall."""
    x0, y0, x1, y1 = drawn.box
    (left_end, right_end), corner = plan.site.span(0.0, 0.0), plan.site.corner
    left, right = max(x0, left_end), min(x1, right_end)
    view.path([(left, 0.0), (min(drawn.front[0], right), 0.0)], "cut")
    view.path([(max(drawn.front[2], left), 0.0), (right, 0.0)], "cut")
    if corner is not None:
        low = y0 if not drawn.cut else -plan.site.off  # farther off the floor is drawn shorter
        for line in corner.walls_before(0.0):
            for run in clipped(line, (x0, low, x1, y1)):
                view.path(run, "cut")
        view.cut([_ring(drawn.front)], "refractory", "seen")
        return
    low = -plan.site.away if plan.beyond else y0 if drawn.cut else max(y0, -plan.site.deep)
    for end in (-plan.site.half, plan.site.half):
        if isfinite(end) and x0 < end < x1:
            view.path([(end, 0.0), (end, low)], "cut")
    if low > y0 and not plan.beyond:
        view.path([(left, low), (right, low)], "cut")
    view.cut([_ring(drawn.front)], "refractory", "seen")


def _put_pile(view: View, one: StagedPile, size: tuple[float, float], units: str) -> None:
    area = _spot(one, size)
    ring = view.ring(_ring(area))
    view.sheet.fill([ring], "piece top")
    view.sheet.line(ring, "seen", closed=True)
    weight = weight_text(one.pile.weight, units).partition(" (")[0]
    _label(view, area, (one.pile.label, weight, f"step {one.pile.step}"))


def _put_area(view: View, area: Area, words: Sequence[str]) -> None:
    ring = view.ring(_ring(area))
    view.sheet.fill([ring], "wood")
    view.sheet.line(ring, "seen", closed=True)
    _label(view, area, words)


def _area_words(plan: StagingPlan, number: int, units: str) -> tuple[str, ...]:
    if number == 0:
        return "pallet", "all else"
    if number > len(plan.pallets):
        return ("mixer",)
    load = plan.pallets[number - 1]
    return "pallet", load.label, weight_text(load.weight, units).partition(" (")[0]


def _label(view: View, area: Area, words: Sequence[str]) -> None:
    """As many of the words as there is room for, the first first; turned where it is narrow."""
    wide = (area[2] - area[0]) * view.scale - 1.2
    high = (area[3] - area[1]) * view.scale - 1.2
    turned = room_for(words[:1], bold=True) > wide and high > wide
    along, across = (high, wide) if turned else (wide, high)
    lines = [line for line in words if room_for([line], bold=line is words[0]) <= along]
    lines = lines[: int(across / PITCH)]
    x, y = view.at((area[0] + area[2]) / 2, (area[1] + area[3]) / 2)
    for n, line in enumerate(lines):
        down = (n - (len(lines) - 1) / 2) * PITCH
        view.sheet.text(
            x + down if turned else x,
            y if turned else y - down,
            line,
            size=SMALL,
            va="middle",
            turned=turned,
            bold=line is words[0],
        )


def _put_ways(view: View, plan: StagingPlan, drawn: _Drawn, units: str, cell: Cell) -> None:
    """How far off the piles and the pallet stand, and the walkway's width."""
    site, side = plan.site, plan.site.walkway / 2
    edge = view.at(drawn.box[0], 0.0)[0]
    pallet = drawn.areas[0][3]
    stops = [view.at(0.0, y)[1] for y in (pallet, -site.off, 0.0)]
    chain(
        view.sheet,
        stops,
        [length(site.away - site.off, units), length(site.off, units)],
        edge - 4.0,
        along="y",
        limits=(cell.bottom + 8.0, cell.top - 2.0),
    )
    x0, x1 = view.at(-side, 0.0)[0], view.at(side, 0.0)[0]
    wide = length(site.walkway, units)
    if room_for([wide]) + 3.0 <= x1 - x0:
        chain(view.sheet, [x0, x1], [wide], view.at(0.0, -site.off / 2)[1])
    clear = (-site.off - pallet) * view.scale
    if clear > room_for(["walkway"]) + 4.0 and not drawn.cut:
        x, low = view.at(0.0, pallet)
        view.sheet.text(x, low + clear / 2, "walkway", size=SMALL, turned=True, va="middle")
    if drawn.cut:
        break_line(view, -side, side, pallet + BEYOND / 2)
