"""The whole height against the roof, with the two clearances drawn where they are measured."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.drawing.sheet import Cell, Sheet, View, spread
from fireplace_calc.drawing.strings import chain, level_marks, levels, person, room_for
from fireplace_calc.drawing.style import SMALL
from fireplace_calc.drawing.views import LADDER, fit, length, title
from fireplace_calc.frame import REACH
from fireplace_calc.parts import Geometry
from fireplace_calc.units import MILLIMETRES, show

Limits = Mapping[str, tuple[float | None, str]]
"""Required height of a clearance [m] and its verdict, by the name of the clearance."""

BAD = "falls short"
THICK = 0.22
"""Of the roof, as drawn. [m]"""


def roof(sheet: Sheet, cell: Cell, geometry: Geometry, units: str, limits: Limits | None = None, scales=LADDER,
         name_scale=None) -> None:
    """Draw the chimney and the roof, seen along the ridge, uphill to the right."""
    f, d = geometry.frame, geometry.design
    left, right = _width(geometry)
    top = max(f.liner_top, f.highest_within_reach, min(d.roof.ridge_level, f.highest_within_reach + 1.0), 2.0) + 0.1
    bottom = min(f.footing_bottom, f.grade, f.uphill_contact, f.highest_within_reach) - 0.05
    marks = level_marks(_named(geometry), lambda z: _high(z, units))
    heights = _heights(geometry, units, limits or {})
    margins = (room_for(text for _, text in marks) + 7.0, 9.0, room_for(t for _, lines, _ in heights for t in lines) + 5.0, 11.0)
    view, denominator = fit(sheet, cell, (left, bottom, right, top), margins, scales)
    _house(view, geometry, left, right)
    _chimney(view, geometry)
    person(view, along(geometry)[0] - 0.55, 0.0)
    _clearances(view, cell, geometry, units, heights, right)
    x = view.at(left, 0)[0]
    levels(sheet, [(view.at(0, z)[1], text) for z, text in marks], x - 0.4, x - 4.6, side=-1, limits=(cell.bottom + 9, cell.top - 8))
    title(sheet, cell, f"Against the roof, {d.flue.sections} sections", name_scale(denominator) if name_scale else "")


def _named(geometry: Geometry) -> dict[str, float]:
    f, d = geometry.frame, geometry.design
    named = {"footing": f.footing_bottom, "grade": f.grade, "floor": 0.0, "flue start": f.flue_start, "roof contact": f.uphill_contact,
             "crown": f.crown_top, "flue top": f.liner_top}
    if d.roof.ridge_level <= max(f.liner_top, f.highest_within_reach + 1.0):
        named["ridge"] = d.roof.ridge_level
    return named


def along(geometry: Geometry) -> tuple[float, float, float]:
    """Left and right end of the masonry block, and width of the stack, seen along the ridge. [m]

    Places count from the uphill face of the chimney.
    """
    f = geometry.frame
    if geometry.design.roof.ridge_runs == "along the opening":
        face = f.flue_y - f.stack_depth
        return face - f.block_back, face, 2 * f.stack_depth
    return -f.stack_half - f.block_half, f.block_half - f.stack_half, 2 * f.stack_half


def _ridge(geometry: Geometry) -> float:
    """Where the ridge stands, from the uphill chimney face. [m]"""
    roof = geometry.design.roof
    return -along(geometry)[2] / 2 if roof.position == "through the ridge" else roof.ridge_distance


def _width(geometry: Geometry) -> tuple[float, float]:
    low, high, _ = along(geometry)
    near = [part.distance for part in geometry.design.roof.nearby if part.distance <= REACH * (1 + 1e-9)]
    ridge = _ridge(geometry)
    return low - 1.0, max(min(max(ridge, 0.0) + 0.5, REACH + 0.4), max([0.0, *near]) + 1.0, high + 0.5)


def roof_at(geometry: Geometry, u: float) -> float:
    """Level of the roof over a place, both slopes alike. [m]

    Parameters
    ----------
    geometry : Geometry
    u : float
        From the uphill chimney face, uphill positive. [m]
    """
    roof = geometry.design.roof
    return roof.ridge_level - roof.pitch * abs(_ridge(geometry) - u)


def _house(view: View, geometry: Geometry, left: float, right: float) -> None:
    f, d = geometry.frame, geometry.design
    ridge = _ridge(geometry)
    if d.roof.pitch > 0:
        spread_out = (d.roof.ridge_level - max(0.0, f.grade) - THICK) / d.roof.pitch if f.downhill_contact > 0 else 0.0
        low, high = max(left, ridge - spread_out), min(right, ridge + spread_out)
    else:
        low, high = left, right
    line = [(u, roof_at(geometry, u)) for u in sorted({low, high, *([ridge] if low < ridge < high else [])})]
    if high > low:
        view.seen([*line, *[(u, z - THICK) for u, z in reversed(line)]], "roof", "seen", layer=-3)
    view.path([(left, 0.0), (right, 0.0)], "seen")
    view.path([(left, f.grade), (right, f.grade)], "ground")
    if d.house.ceiling < min(z for _, z in line) - THICK:
        view.path([(left, d.house.ceiling), (right, d.house.ceiling)], "fine")
    for part in d.roof.nearby:
        u, level = part.distance, part.level
        far = min(u + 1.2, right)
        if far > u + 0.3 and level > roof_at(geometry, u) + 0.05:
            view.seen([(u, min(roof_at(geometry, u), level - 0.05)), (far, min(roof_at(geometry, far), level - 0.3)), (far, level - 0.25),
                       (u, level)], "wall", "seen", layer=-4)


def _chimney(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    low, high, stack = along(geometry)
    out = d.base.footing_projection
    view.path([(low - out, f.footing_bottom), (high + out, f.footing_bottom), (high + out, f.footing_top),
               (low - out, f.footing_top), (low - out, f.footing_bottom)], "hidden")
    outline = [(low, f.footing_top), (high, f.footing_top), (high, f.flue_start), (0.0, f.shoulder_top), (0.0, f.crown_bottom),
               (-stack, f.crown_bottom), (-stack, f.shoulder_top), (low, f.flue_start)]
    view.seen(outline, "masonry", "seen", layer=-2)
    over, edge = d.chimney.overhang, f.crown_bottom + d.chimney.crown
    inset = d.chimney.wall + d.chimney.gap
    view.seen([(-stack - over, f.crown_bottom), (over, f.crown_bottom), (over, edge), (-inset, f.crown_top),
               (-stack + inset, f.crown_top), (-stack - over, edge)], "concrete", "seen", layer=-1)
    view.seen([(-stack + inset, f.crown_top), (-inset, f.crown_top), (-inset, f.liner_top), (-stack + inset, f.liner_top)],
              "clay liner", "seen", layer=-1)
    view.seen([(-stack + inset, f.flue_start), (-inset, f.flue_start), (-inset, f.crown_bottom), (-stack + inset, f.crown_bottom)],
              "clay liner", "fine", layer=-1)
    step = d.flue.section_height + d.flue.joint
    for k in range(1, d.flue.sections):
        z = f.flue_start + k * step
        if z < f.crown_bottom:
            view.path([(-stack + inset, z), (-inset, z)], "fine")


def _heights(geometry: Geometry, units: str, limits: Limits) -> list[tuple[str, list[str], str]]:
    """The two heights over the roof: name, lines of text, ink."""
    f = geometry.frame
    made = []
    for name, value in (("reach", f.crown_top - f.highest_within_reach), ("contact", f.crown_top - f.uphill_contact)):
        required, verdict = limits.get(name, (None, ""))
        lines = [_short(value, units)]
        if required is not None:
            lines.append(f"{'short of' if verdict == BAD else 'asked:'} {_short(required, units)}")
        made.append((name, lines, "bad" if verdict == BAD else "dimension"))
    return made


def _clearances(view: View, cell: Cell, geometry: Geometry, units: str, heights: list[tuple[str, list[str], str]], right: float) -> None:
    f, d = geometry.frame, geometry.design
    sheet = view.sheet
    reach = min(max(_ridge(geometry), 0.0), REACH)
    nearby = next((p for p in d.roof.nearby if p.name == f.highest_within_reach_is), None)
    if nearby is not None:
        reach = nearby.distance
    edge = view.at(right, 0)[0]
    top = view.at(0, f.crown_top)[1]
    sheet.line([view.at(0.0, f.crown_top), (edge + 1.5, top)], "hidden", "dimension")
    places = {"contact": view.at(0, 0)[0] + 2.2, "reach": min(max(view.at(reach, 0)[0], view.at(0, 0)[0] + 6.0), edge - 0.5)}
    lows = {"contact": f.uphill_contact, "reach": f.highest_within_reach}
    middles = []
    for name, lines, ink in heights:
        x, low = places[name], view.at(0, lows[name])[1]
        sheet.line([(x, low), (x, top)], "flag", ink)
        for y in (low, top):
            sheet.line([(x - 0.9, y), (x + 0.9, y)], "flag", ink)
        middles.append(((low + top) / 2, x, lines, ink))
    if reach > 0.3:
        line = max(view.at(0, max(f.liner_top, f.highest_within_reach, roof_at(geometry, reach)))[1], top) + 3.0
        chain(sheet, [view.at(0, 0)[0], view.at(reach, 0)[0]], [_short(reach, units)], line, side=1, limits=(cell.left + 2, cell.right - 2))
    _beside(sheet, sorted(middles, key=lambda m: m[0]), edge + 3.0, (cell.bottom + 14, cell.top - 10))


def _beside(sheet: Sheet, middles: list, x: float, limits: tuple[float, float]) -> None:
    """Values in the margin, each with a leader to the height it belongs to."""
    rows = [SMALL * 1.5 * len(lines) + 2.0 for _, _, lines, _ in middles]
    for (y, tip, lines, ink), at in zip(middles, spread([m[0] for m in middles], rows, *limits), strict=True):
        sheet.line([(tip, y), (x - 0.8, at)], "dimension", ink)
        first = at + SMALL * 0.75 * (len(lines) - 1)
        for k, text in enumerate(lines):
            sheet.text(x, first - k * SMALL * 1.5, text, size=SMALL, ha="left", va="middle", ink=ink, bold=k == 0)


def _short(value: float, units: str) -> str:
    return f"{value:.2f} m" if units == MILLIMETRES else length(value, units)


def _high(z: float, units: str) -> str:
    return f"{z:.2f} m".replace("-0.00", "0.00") if units == MILLIMETRES else show(z, "length", units)
