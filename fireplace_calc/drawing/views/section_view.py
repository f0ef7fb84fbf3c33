"""Section through the centre: what the smoke sees."""

from __future__ import annotations

from math import hypot

from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.drawing.annotation.beside_section import (
    ABOVE,
    back_face,
    section_levels,
    section_strings,
    section_words,
    upright_strings,
)
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.sheets.dimensions import notes, room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import cut_upright, lintel_bars, mantel_reach, set_joints
from fireplace_calc.drawing.views.laid_bricks import section_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    break_line,
    earth,
    fit,
    key,
    level,
    roomy,
    title,
)
from fireplace_calc.geometry.parts import Geometry

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
    f = geometry.frame
    talk = roomy(cell)
    top = min(f.shoulder_top + ABOVE, f.crown_bottom)
    front, back = section_ends(geometry)
    marks = level_marks(section_levels(geometry), lambda z: level(z, units))
    words = section_words(geometry, units) if talk else []
    left = room_for(text for _, text in words) + 6.0 if words else 3.0
    right = level_room(marks, not talk) + 7.0 + (STRINGS + 38.0 if talk else 0.0)
    view, denominator = fit(
        sheet,
        cell,
        (front, f.footing_bottom - 0.03, back, top + 0.03),
        (left, 27, right, 4),
        scales,
    )
    draw_section_cut(view, geometry, top)
    section_strings(view, cell, geometry, units)
    highest = cell.top - 3
    edge = view.at(back, 0)[0]
    if talk:
        upright_strings(view, cell, geometry, units, edge + 5.0)
    column = edge + (STRINGS + 5.0 if talk else 4.0)
    feet = [
        edge + STRINGS if talk else view.at(back_face(geometry, z), 0)[0] + 0.9 for z, *_ in marks
    ]
    floor = view.at(0, f.footing_bottom)[1] - 1.5
    levels(
        sheet,
        [(view.at(0, z)[1], value, name) for z, value, name in marks],
        feet,
        column,
        limits=(floor, highest),
        stacked=not talk,
    )
    if talk:
        tips = sorted((view.at(*place), text) for place, text in words)
        notes(
            sheet,
            sorted(tips, key=lambda tip: tip[0][1]),
            view.at(front, 0)[0] - 3.0,
            side=-1,
            limits=(cell.bottom + 12, highest),
        )
        key(sheet, column + level_room(marks, False) + 3.0, cell.bottom + 12, cell.right - 3)
    title(sheet, cell, "Section on the center line", name_scale(denominator) if name_scale else "")
    return view


def section_ends(geometry: Geometry) -> tuple[float, float]:
    """From where to where the section is drawn, front to back, with some ground on either side.
    [m]
    """
    f, d = geometry.frame, geometry.design
    out = d.base.footing_projection
    front = -max(d.hearth.front, out, mantel_reach(geometry), 0.1) - 0.12
    return front, f.block_back + out + 0.06


def draw_section_cut(view: View, geometry: Geometry, top: float) -> None:
    """Draw the section on the center line up to a level, where it breaks off.

    Parameters
    ----------
    view : View
    geometry : Geometry
    top : float
        [m]
    """
    f = geometry.frame
    _ground(view, geometry, *section_ends(geometry))
    cut_upright(view, geometry, top)
    lintel_bars(view, geometry)
    _behind(view, geometry, top)
    _damper(view, geometry)
    _joints(view, geometry, top)
    break_line(view, f.flue_y - f.stack_depth, f.flue_y + f.stack_depth, top)


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
    f, d, found = geometry.frame, geometry.design, course_list(geometry)
    half, inside = f.unit_depth, f.bore.depth / 2
    flue = found.of("flue liner") or found.of("flue casing")
    for z in (f.flue_start, *(course.top for course in flue[:-1])):
        for side in (-1, 1) if z < top else ():
            view.path([(f.flue_y + side * inside, z), (f.flue_y + side * half, z)], "seen")
    wall = min(d.base.block_width, f.block_back / 2)
    for course in found.of("base walls")[:-1]:
        view.path([(0.0, course.top), (wall, course.top)], "fine")
        view.path([(f.block_back - wall, course.top), (f.block_back, course.top)], "fine")
    set_joints(view, geometry, top)
    if d.piece_set is None and geometry.facing_fire.material == "refractory":
        for z in section_joints(geometry):
            thick = d.firebox.lining_thickness * (hypot(1.0, f.lean) if z > f.back_bend else 1.0)
            view.path([(f.back_at(z), z), (f.back_at(z) + thick, z)], "fine")
