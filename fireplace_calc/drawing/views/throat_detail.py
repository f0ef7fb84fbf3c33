"""Throat and smoke chamber in section, large enough to build from."""

from __future__ import annotations

from itertools import pairwise
from math import degrees

from fireplace_calc.drawing.annotation.beside_section import over_opening
from fireplace_calc.drawing.sheets.dimensions import chain, notes, room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.cuts import cut_parts, lintel_bars, set_joints
from fireplace_calc.drawing.views.laid_bricks import section_lines
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    apart,
    break_line,
    fit,
    flue_size,
    in_room,
    key,
    length,
    of_a_set,
    title,
)
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box, overlap

KEY = 165.0
"""Width from which the key of the hatches stands beside it. [mm]"""
UNDER, OVER = 0.12, 0.22
"""How much of the opening and of the flue is shown. [m]"""


def detail(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw throat, smoke shelf, smoke chamber and foot of the flue; the room is on the left."""
    f, d = geometry.frame, geometry.design
    low, top = max(f.opening_top - UNDER, f.hearth), min(f.flue_start + OVER, f.crown_bottom)
    window = box(-0.02, f.block_back + 0.02, low, top)
    wide = cell.right - cell.left
    words = in_room(_words(geometry), 0.3 * wide)
    right = 62 if wide > KEY else 24
    view, denominator = fit(
        sheet,
        cell,
        (-0.02, low, f.block_back + 0.02, top),
        (room_for(row for _, text in words for row in text.split("\n")) + 8.0, 24, right, 8),
        scales,
    )
    section_lines(view, geometry, window)
    cut_parts(
        view,
        [(p, [c for q in p.section() if len(c := overlap(q, window)) > 2]) for p in geometry.parts],
        low,
        top,
    )
    lintel_bars(view, geometry)
    set_joints(view, geometry, top, low)
    view.path([(f.throat_front, f.throat), (f.depth, f.throat)], "fine")
    if f.hood > 0:
        view.path([(0.0, max(f.clear_top, low)), (0.0, f.opening_top)], "cut")
    view.path(
        [(f.flue_y - f.bore.depth / 2, f.taper_top), (f.flue_y + f.bore.depth / 2, f.taper_top)],
        "fine",
    )
    if d.throat.damper == "throat":
        deep = f.throat_back - f.throat_front
        view.path(
            [(f.throat_front, f.throat), (f.throat_front + deep * 0.35, f.throat + deep * 0.85)],
            "cut",
        )
    for z in (low, top):
        break_line(view, 0.0, f.block_back, z)
    _strings(view, cell, geometry, units)
    tips = sorted(((view.at(*place), text) for place, text in words), key=lambda tip: tip[0][1])
    notes(sheet, tips, view.at(-0.02, 0)[0] - 4.0, side=-1, limits=(cell.bottom + 10, cell.top - 4))
    if wide > KEY:
        key(sheet, view.at(f.block_back, 0)[0] + 26.0, cell.bottom + 12, cell.right - 3)
    title(sheet, cell, "Throat and smoke chamber", name_scale(denominator) if name_scale else "")
    return view


def _strings(view: View, cell: Cell, geometry: Geometry, units: str) -> None:
    f = geometry.frame
    foot = view.at(0, max(f.opening_top - UNDER, f.hearth))[1]
    across = apart([0.0, f.throat_front, f.throat_back, f.depth, f.block_back])
    chain(
        view.sheet,
        [view.at(y, 0)[0] for y in across],
        [length(b - a, units) for a, b in pairwise(across)],
        foot - 5.0,
        limits=(cell.left + 2, cell.right - 2),
        name="at the throat",
    )
    up = apart([f.opening_top, f.throat, f.taper_top, f.flue_start])
    edge = view.at(f.block_back, 0)[0]
    chain(
        view.sheet,
        [view.at(0, z)[1] for z in up],
        [length(b - a, units) for a, b in pairwise(up)],
        edge + 8.0,
        along="y",
        side=1,
        limits=(cell.bottom + 9, cell.top - 2),
        feet=[edge + 1.0] * len(up),
    )


def _words(geometry: Geometry) -> list[tuple[tuple[float, float], str]]:
    """What is what, and where to point at it. [m]"""
    f, d = geometry.frame, geometry.design
    lean = max(f.chamber_slopes.values())
    lined = d.smoke_chamber.lining or "parged"
    words = [
        over_opening(geometry),
        ((f.throat_front + 0.01, f.throat), "damper" if d.throat.damper == "throat" else "throat"),
        (
            ((f.throat_front + f.flue_y - f.bore.depth / 2) / 2, (f.throat + f.taper_top) / 2),
            f"chamber {lined}, leans {degrees(lean):.0f} deg at most",
        ),
        (
            (
                max(f.flue_y - f.bore.depth / 2 - f.bore.wall, 0.01),
                (f.taper_top + f.flue_start) / 2,
            ),
            "transition",
        ),
        ((f.flue_y, min(f.flue_start + OVER * 0.6, f.crown_bottom)), f"flue {flue_size(f.bore)}"),
    ]
    if d.piece_set is not None:
        return of_a_set(words, geometry)
    return [*words, ((f.depth * 0.97, f.throat - 0.03), "smoke shelf")] if f.lean > 0 else words
