"""Section through the centre: what the smoke sees."""

from __future__ import annotations

from itertools import pairwise
from math import hypot

from fireplace_calc.base.printing import show
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.drawing.sheets.dimensions import (
    chain,
    level_marks,
    level_room,
    levels,
    notes,
    room_for,
)
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import cut_upright, lintel_bars, mantel_reach, set_joints
from fireplace_calc.drawing.views.face import hood_level
from fireplace_calc.drawing.views.laid_bricks import section_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    apart,
    break_line,
    earth,
    fit,
    key,
    length,
    level,
    lining_word,
    of_a_set,
    roomy,
    title,
)
from fireplace_calc.geometry.parts import Geometry

ABOVE = 0.45
"""How much of the flue is shown above the shoulder. [m]"""
STRINGS = 16.0
"""Room for the upright dimension strings. [mm]"""


def section(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the section into a cell of a sheet; the room is on the left."""
    f, d = geometry.frame, geometry.design
    talk = roomy(cell)
    top = min(f.shoulder_top + ABOVE, f.crown_bottom)
    front = -max(d.hearth.front, d.base.footing_projection, mantel_reach(geometry), 0.1) - 0.12
    back = f.block_back + d.base.footing_projection + 0.06
    marks = level_marks(_named(geometry), lambda z: level(z, units))
    words = _words(geometry, units) if talk else []
    left = room_for(text for _, text in words) + 6.0 if words else 3.0
    right = level_room(marks, not talk) + 7.0 + (STRINGS + 38.0 if talk else 0.0)
    view, denominator = fit(
        sheet,
        cell,
        (front, f.footing_bottom - 0.03, back, top + 0.03),
        (left, 27, right, 4),
        scales,
    )
    _ground(view, geometry, front, back)
    cut_upright(view, geometry, top)
    lintel_bars(view, geometry)
    _behind(view, geometry, top)
    _damper(view, geometry)
    _joints(view, geometry, top)
    break_line(view, f.flue_y - f.stack_depth, f.flue_y + f.stack_depth, top)
    _strings(view, cell, geometry, units)
    limits = (cell.bottom + 12, cell.top - 3)
    edge = view.at(back, 0)[0]
    if talk:
        _upright(view, cell, geometry, units, edge + 5.0)
    column = edge + (STRINGS + 5.0 if talk else 4.0)
    feet = [edge + STRINGS if talk else view.at(_face(geometry, z), 0)[0] + 0.9 for z, *_ in marks]
    floor = view.at(0, f.footing_bottom)[1] - 1.5
    levels(
        sheet,
        [(view.at(0, z)[1], value, name) for z, value, name in marks],
        feet,
        column,
        limits=(floor, cell.top - 3),
        stacked=not talk,
    )
    if talk:
        tips = sorted((view.at(*place), text) for place, text in words)
        notes(
            sheet,
            sorted(tips, key=lambda tip: tip[0][1]),
            view.at(front, 0)[0] - 3.0,
            side=-1,
            limits=limits,
        )
        key(sheet, column + level_room(marks, False) + 3.0, cell.bottom + 12, cell.right - 3)
    title(sheet, cell, "Section on the center line", name_scale(denominator) if name_scale else "")
    return view


def _named(geometry: Geometry) -> dict[str, float]:
    f = geometry.frame
    named = {
        "underside": f.footing_bottom,
        "footing": f.footing_top,
        "grade": f.grade,
        "floor": 0.0,
        "hearth": f.hearth,
        "back bend": f.back_bend,
        "opening top": f.opening_top,
        "throat": f.throat,
        "flue": f.flue_start,
        "shoulder": f.shoulder_top,
    }
    named |= hood_level(geometry)
    return named if f.spring >= f.opening_top else named | {"spring line": f.spring}


def _face(geometry: Geometry, z: float) -> float:
    """How far back the masonry reaches at a level. [m]"""
    f = geometry.frame
    if z <= f.footing_top:
        return f.block_back + geometry.design.base.footing_projection
    return f.block_back if z < f.shoulder_top - 1e-6 else f.flue_y + f.stack_depth


def _ground(view: View, geometry: Geometry, front: float, back: float) -> None:
    f, d = geometry.frame, geometry.design
    ext = -d.hearth.front if d.hearth.front > 0 else 0.0
    view.path([(front, 0.0), (ext, 0.0)], "ground")
    outside = d.chimney.location == "exterior"
    if f.grade < f.slab_bottom:
        earth(view, front, 0.0, f.grade)
    if f.grade < f.slab_bottom or outside:
        earth(view, f.block_back, back, f.grade)
    if not outside:
        view.path([(f.block_back, 0.0), (back, 0.0)], "ground")


def _behind(view: View, geometry: Geometry, top: float) -> None:
    """Edges beyond the cut plane: the jamb, the splayed side, the chamber's side."""
    f = geometry.frame
    section_lines(view, geometry)
    view.path([(0.0, f.hearth), (0.0, f.opening_top)], "seen")
    if f.hood > 0:
        view.path([(0.0, f.clear_top), (0.0, f.opening_top)], "cut")
    if f.breast > 0 and f.spring < f.opening_top:
        view.path([(f.breast, f.spring), (f.breast, f.opening_top)], "fine")
    view.path([(f.throat_front, f.throat), (f.depth, f.throat)], "fine")
    view.path(
        [(f.flue_y - f.bore.depth / 2, f.taper_top), (f.flue_y + f.bore.depth / 2, f.taper_top)],
        "fine",
    )


def _damper(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    if d.throat.damper == "throat":
        z = (
            f.throat
            if d.throat.damper_height is None
            else min(f.opening_top + d.throat.damper_height, f.taper_top)
        )
        deep = f.throat_back - f.throat_front
        view.path([(f.throat_front, z), (f.throat_front + deep * 0.35, z + deep * 0.85)], "cut")


def _joints(view: View, geometry: Geometry, top: float) -> None:
    """Joints between flue units, and between refractory sections where they are used."""
    f, d = geometry.frame, geometry.design
    step, z = d.flue.section_height + d.flue.joint, f.flue_start
    half, inside = f.unit_depth, f.bore.depth / 2
    while z < top:
        for side in (-1, 1):
            view.path([(f.flue_y + side * inside, z), (f.flue_y + side * half, z)], "seen")
        z += step
    wall, base = min(d.base.block_width, f.block_back / 2), lay_brickwork(geometry).base
    for z in base.tops[:-1] if base else ():
        view.path([(0.0, f.footing_top + z), (wall, f.footing_top + z)], "fine")
        view.path(
            [(f.block_back - wall, f.footing_top + z), (f.block_back, f.footing_top + z)], "fine"
        )
    set_joints(view, geometry, top)
    if d.method == "modular" and d.piece_set is None:
        z = f.hearth + d.firebox.section_height
        while z < f.throat:
            thick = d.firebox.lining_thickness * (hypot(1.0, f.lean) if z > f.back_bend else 1.0)
            view.path([(f.back_at(z), z), (f.back_at(z) + thick, z)], "fine")
            z += d.firebox.section_height


def _strings(view: View, cell: Cell, geometry: Geometry, units: str) -> None:
    f, d = geometry.frame, geometry.design
    limits = (cell.left + 2, cell.right - 2)
    line = view.at(0, f.footing_bottom)[1] - 4.6
    rows = [
        [0.0, f.throat_front, f.throat_back, f.depth, f.block_back],
        [-d.hearth.front, 0.0, f.depth, f.block_back],
    ]
    for name, stops in zip(("at the throat", "at the hearth"), rows, strict=True):
        row = apart(stops)
        texts = [length(b - a, units) for a, b in pairwise(row)]
        line -= chain(
            view.sheet, [view.at(y, 0)[0] for y in row], texts, line, limits=limits, name=name
        )


def _upright(view: View, cell: Cell, geometry: Geometry, units: str, line: float) -> None:
    """Strings of the heights: footing, base, slab and floor; opening, throat, smoke chamber; and
    the whole of it.
    """
    f = geometry.frame
    # under the footing stand the strings front to back
    limits = (view.at(0, f.footing_bottom)[1] - 2.5, cell.top - 2)
    row = apart(
        [
            f.footing_bottom,
            f.footing_top,
            f.slab_bottom,
            f.hearth,
            f.opening_top,
            f.throat,
            f.flue_start,
        ]
    )
    texts = [length(b - a, units) for a, b in pairwise(row)]
    stops = [view.at(0, z)[1] for z in row]
    feet = [view.at(_face(geometry, z), 0)[0] for z in row]
    used = chain(view.sheet, stops, texts, line, along="y", side=1, limits=limits, feet=feet)
    chain(
        view.sheet,
        [stops[0], stops[-1]],
        [length(row[-1] - row[0], units)],
        line + used,
        along="y",
        side=1,
        limits=limits,
    )


def over_opening(geometry: Geometry) -> tuple[tuple[float, float], str]:
    """What carries the wall over the opening, and where to point at it: of a steel angle, its level
    leg. [m]
    """
    f, lintel = geometry.frame, geometry.design.lintel
    if f.spring < f.opening_top:
        return (f.breast * 0.4, f.opening_top + lintel.height * 0.45), "arch"
    if lintel.material != "steel":
        return (f.breast * 0.4, f.opening_top + lintel.height * 0.45), "lintel"
    legs = lintel.legs(f.breast)
    return (legs.level * 0.8, f.opening_top + legs.thickness / 2), "lintel"


def _words(geometry: Geometry, units: str) -> list[tuple[tuple[float, float], str]]:
    """What is what, and where to point at it. [m]"""
    f, d = geometry.frame, geometry.design
    area = show(f.bore.table_area or f.bore.area, "area", units)
    kind = "round" if f.bore.round else "liner"
    reach = f.crown_bottom - 0.05
    items = [
        (
            (f.flue_y, min(f.shoulder_top + ABOVE * 0.5, reach)),
            f"flue {f.bore.label} {kind}, {area}",
        ),
        (
            (
                f.flue_y - f.bore.depth / 2 - f.bore.wall,
                f.taper_top + d.smoke_chamber.transition / 2,
            ),
            "transition",
        ),
        (((f.throat_front + f.depth) / 2, (f.throat + f.taper_top) / 2), "smoke chamber"),
        (
            (f.throat_front + 0.02, f.throat),
            "throat, damper" if d.throat.damper == "throat" else "throat",
        ),
        ((f.depth * 0.95, f.throat - 0.06), "smoke shelf"),
        over_opening(geometry),
        *([((0.0, (f.clear_top + f.opening_top) / 2), "metal hood")] if f.hood > 0 else []),
        ((f.depth * 0.45, f.hearth + (f.opening_top - f.hearth) * 0.4), "firebox"),
        ((f.depth + d.firebox.lining_thickness / 2, f.hearth + 0.1), lining_word(geometry)),
        ((-max(d.hearth.front, 0.05) * 0.75, f.extension_top - d.hearth.thickness * 0.5), "hearth"),
        ((f.block_back * 0.25, (f.slab_bottom + f.slab_top) / 2), "hearth slab"),
        ((d.base.block_width * 0.5, (f.footing_top + f.slab_bottom) / 2), "base"),
        ((0.0, (f.footing_bottom + f.footing_top) / 2), "footing"),
    ]
    if d.piece_set is not None:
        return of_a_set(items, geometry)
    return items if f.lean > 0 else [item for item in items if item[1] != "smoke shelf"]
