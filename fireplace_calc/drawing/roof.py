"""The whole height against the roof, with the two clearances drawn where they are measured."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.drawing.sheet import Sheet, View
from fireplace_calc.drawing.strings import chain, levels, person
from fireplace_calc.drawing.style import SMALL
from fireplace_calc.drawing.views import LADDER, Cell, fit, length, title
from fireplace_calc.frame import REACH
from fireplace_calc.parts import Geometry
from fireplace_calc.units import show

Limits = Mapping[str, tuple[float | None, str]]
"""Required height of a clearance [m] and its verdict, by the name of the clearance."""

BAD = "falls short"


def roof(sheet: Sheet, cell: Cell, geometry: Geometry, units: str, limits: Limits | None = None, scales=LADDER,
         name_scale=None) -> None:
    """Draw the chimney and the roof, seen along the ridge, uphill to the right."""
    f, d = geometry.frame, geometry.design
    left, right = _width(geometry)
    top = max(f.liner_top, d.roof.ridge_level, f.highest_within_reach, 2.0) + 0.15
    bottom = min(f.footing_bottom, f.grade) - 0.05
    view, denominator = fit(sheet, cell, (left, bottom, right, top), (25, 11, 17, 9), scales)
    _house(view, geometry, left, right)
    _chimney(view, geometry)
    person(view, left + 0.5, f.grade)
    _clearances(view, cell, geometry, units, limits or {}, right)
    _levels(view, cell, geometry, units, left)
    title(sheet, cell, "Against the roof", name_scale(denominator) if name_scale else "")


def along(geometry: Geometry) -> tuple[float, float, float]:
    """Left and right end of the masonry block, and width of the stack, seen along the ridge. [m]"""
    f = geometry.frame
    if geometry.design.roof.ridge_runs == "along the opening":
        face = f.flue_y - f.stack_depth
        return face - f.block_back, face, 2 * f.stack_depth
    return -f.stack_half - f.block_half, f.block_half - f.stack_half, 2 * f.stack_half


def _ridge(geometry: Geometry) -> float:
    """Where the ridge stands, from the uphill chimney face. [m]"""
    roof = geometry.design.roof
    return -along(geometry)[2] / 2 if roof.position == "through the ridge" else roof.ridge_distance


def _eaves(geometry: Geometry, stack: float) -> float:
    """Where the downhill roof plane meets the eaves. [m]"""
    roof = geometry.design.roof
    low, _, _ = along(geometry)
    if roof.pitch <= 1e-6 or roof.eaves_level >= roof.ridge_level:
        return min(-stack, low) - 1.5
    reach = _ridge(geometry) - (roof.ridge_level - roof.eaves_level) / roof.pitch
    return min(max(reach, -12.0), -stack - 0.3)


def _width(geometry: Geometry) -> tuple[float, float]:
    low, high, stack = along(geometry)
    left = min(_eaves(geometry, stack), low) - 1.5
    near = [part.distance for part in geometry.design.roof.nearby if part.distance <= REACH * 1.3]
    return left, max(min(_ridge(geometry) + 0.8, REACH + 0.9), min(REACH, max([0.0, *near])) + 0.9, high + 0.3)


def roof_at(geometry: Geometry, u: float) -> float:
    """Level of the roof over a place, both slopes alike. [m]"""
    roof = geometry.design.roof
    return roof.ridge_level - roof.pitch * abs(_ridge(geometry) - u)


def _house(view: View, geometry: Geometry, left: float, right: float) -> None:
    f, d = geometry.frame, geometry.design
    _, _, stack = along(geometry)
    eaves, ridge = _eaves(geometry, stack), _ridge(geometry)
    lip = eaves - 0.35
    top_line = [(lip, roof_at(geometry, lip)), (ridge, d.roof.ridge_level), (right, roof_at(geometry, right))]
    if ridge >= right:
        top_line = [(lip, roof_at(geometry, lip)), (right, roof_at(geometry, right))]
    thick = 0.22
    view.seen([*top_line, *[(u, z - thick) for u, z in reversed(top_line)]], "roof", "seen", layer=-3)
    under = roof_at(geometry, eaves) - thick
    if under > 0.05:
        view.path([(eaves, f.grade), (eaves, under)], "seen")
    view.path([(left, f.grade), (min(eaves, 0.0) if under > 0.05 else right, f.grade)], "ground")
    view.path([(eaves, 0.0), (right, 0.0)], "seen")
    if d.house.ceiling < roof_at(geometry, eaves):
        view.path([(eaves, d.house.ceiling), (right, d.house.ceiling)], "fine")
    for part in d.roof.nearby:
        u, level = part.distance, part.level
        base = min(roof_at(geometry, min(u, right)), level - 0.05)
        far = min(u + 1.2, right)
        if far > u:
            view.seen([(u, base), (far, base), (far, level - 0.25), (u, level)], "wall", "seen", layer=-4)


def _chimney(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    low, high, stack = along(geometry)
    out = d.base.footing_projection
    view.path([(low - out, f.footing_bottom), (high + out, f.footing_bottom), (high + out, f.footing_top),
               (low - out, f.footing_top), (low - out, f.footing_bottom)], "hidden")
    view.seen([(low, f.footing_top), (high, f.footing_top), (high, f.flue_start), (low, f.flue_start)], "masonry", "seen", layer=-2)
    view.seen([(low, f.flue_start), (high, f.flue_start), (0.0, f.shoulder_top), (-stack, f.shoulder_top)], "masonry", "seen", layer=-2)
    view.seen([(-stack, f.shoulder_top), (0.0, f.shoulder_top), (0.0, f.crown_bottom), (-stack, f.crown_bottom)], "masonry", "seen",
              layer=-2)
    over, edge = d.chimney.overhang, f.crown_bottom + d.chimney.crown
    inset = d.chimney.wall + d.chimney.gap
    view.seen([(-stack - over, f.crown_bottom), (over, f.crown_bottom), (over, edge), (-inset, f.crown_top),
               (-stack + inset, f.crown_top), (-stack - over, edge)], "concrete", "seen", layer=-1)
    view.seen([(-stack + inset, f.crown_top), (-inset, f.crown_top), (-inset, f.liner_top), (-stack + inset, f.liner_top)],
              "clay liner", "seen", layer=-1)
    z, step = f.flue_start, d.flue.section_height + d.flue.joint
    ticks = []
    for k in range(d.flue.sections + 1):
        level = z + k * step
        ticks.append([view.at(-stack + inset, level), view.at(-inset, level)])
    for tick in ticks[:-1]:
        view.sheet.line(tick, "hidden", "soft")
    for x in (-stack + inset, -inset):
        view.path([(x, f.flue_start), (x, f.crown_bottom)], "hidden", "soft")


def _clearances(view: View, cell: Cell, geometry: Geometry, units: str, limits: Limits, right: float) -> None:
    f, d = geometry.frame, geometry.design
    sheet = view.sheet
    ridge = _ridge(geometry)
    reach = min(max(ridge, 0.0), REACH)
    nearby = next((p for p in d.roof.nearby if p.name == f.highest_within_reach_is), None)
    if nearby is not None:
        reach = nearby.distance
    if reach < 0.4:
        reach = min(REACH, right)
    top, contact, highest = (view.at(0, z)[1] for z in (f.crown_top, f.uphill_contact, f.highest_within_reach))
    sheet.line([view.at(0.0, f.crown_top), (view.at(right, 0)[0] + 2.0, top)], "hidden", "dimension")
    near, far = view.at(0, 0)[0] + 2.6, max(view.at(reach, 0)[0], view.at(0, 0)[0] + 9.0)
    _upright(sheet, near, contact, top, f.crown_top - f.uphill_contact, units, limits.get("contact"))
    _upright(sheet, far, highest, top, f.crown_top - f.highest_within_reach, units, limits.get("reach"))
    _, high, stack = along(geometry)
    line = max(view.at(0, f.liner_top)[1], view.at(0, d.roof.ridge_level)[1], highest, top) + 2.0
    if view.at(reach, 0)[0] - view.at(0, 0)[0] > 3.0:
        chain(sheet, [view.at(0, 0)[0], view.at(reach, 0)[0]], [length(reach, units)], line, side=1,
              limits=(cell.left + 2, cell.right - 2), feet=[max(top, contact), highest])


def _upright(sheet: Sheet, x: float, low: float, high: float, value: float, units: str, limit) -> None:
    """One height with its ticks, its value beside it, and what is asked for."""
    required, verdict = limit or (None, "")
    ink = "bad" if verdict == BAD else "dimension"
    a, b = min(low, high), max(low, high)
    sheet.line([(x, a), (x, b)], "flag", ink)
    for y in (low, high):
        sheet.line([(x - 1.0, y), (x + 1.0, y)], "flag", ink)
    text = length(value, units)
    if required is not None:
        text += f" of {length(required, units)}"
    middle = (a + b) / 2
    sheet.text(x + 1.0, middle, text, size=SMALL, ha="left", va="middle", ink=ink, bold=verdict == BAD)


def _levels(view: View, cell: Cell, geometry: Geometry, units: str, left: float) -> None:
    f, d = geometry.frame, geometry.design
    named = {"footing": f.footing_bottom, "grade": f.grade, "floor": 0.0, "flue start": f.flue_start, "eaves": d.roof.eaves_level,
             "contact": f.uphill_contact, "ridge": d.roof.ridge_level, "crown": f.crown_top, "flue top": f.liner_top}
    marks = sorted((view.at(0, z)[1], f"{name} {_high(z, units)}") for name, z in named.items())
    x = view.at(left, 0)[0]
    levels(view.sheet, marks, x - 0.5, x - 4.5, side=-1, limits=(cell.bottom + 9, cell.top - 2))
    low, high, stack = along(geometry)
    text = f"{d.flue.sections} flue sections"
    view.sheet.text(view.at(left, 0)[0], cell.top - 4.0, text, size=SMALL, ha="left", ink="ink")


def _high(z: float, units: str) -> str:
    return show(z, "length", units) if units == "feet-inches" else f"{z:.2f} m".replace("-0.00", "0.00")
