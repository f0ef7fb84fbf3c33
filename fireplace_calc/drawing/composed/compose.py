"""Views put together on one sheet. A view whose own numbers have not changed is not made again."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterator
from dataclasses import replace
from typing import Any

from fireplace_calc.base.units import FEET_INCHES, FOOT
from fireplace_calc.drawing.annotation.beside_section import ABOVE
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.roof.roof_lines import along
from fireplace_calc.drawing.roof.roof_marks import Limits
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.cuts import mantel_cuts, mantel_reach
from fireplace_calc.geometry.in_room.cut_corner import corner_of
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion import find_guides

WIDTH, HEIGHT = 300.0, 186.0
"""Of the sheet with all four views. [mm]"""
CELLS = {
    "front": Cell(0.0, 78.0, 106.0, HEIGHT),
    "plan": Cell(0.0, 0.0, 106.0, 78.0),
    "section": Cell(106.0, 0.0, 198.0, HEIGHT),
    "roof": Cell(198.0, 0.0, WIDTH, HEIGHT),
}
TURNS = ("front", "section", "roof", "plan")
"""Which view is drawn first."""
WHOLE = Cell(0.0, 0.0, WIDTH, HEIGHT)
LARGE = 200.0
"""Width from which a view on its own paper is hatched wider apart. [mm]"""
RULES = {
    "front": [(4.0, 78.4), (102.0, 78.4)],
    "section": [(106.4, 4.0), (106.4, HEIGHT - 4.0)],
    "roof": [(198.4, 4.0), (198.4, HEIGHT - 4.0)],
}
"""Fine lines between the cells. [mm]"""

_UPRIGHT = (
    "footing_bottom",
    "footing_top",
    "slab_bottom",
    "slab_top",
    "hearth",
    "extension_top",
    "back_bend",
    "spring",
    "opening_top",
    "throat",
    "taper_top",
    "flue_start",
    "block_top",
    "shoulder_top",
    "grade",
)
_DEEP = (
    "breast",
    "depth",
    "throat_front",
    "throat_back",
    "block_back",
    "flue_y",
    "unit_depth",
    "cavity_depth",
    "stack_depth",
)
_WIDE = (
    "half_width",
    "side_slope",
    "back_width",
    "block_half",
    "stack_half",
    "stack_middle",
    "depth",
    "throat_front",
    "throat_back",
    "block_back",
)


def reads(view: str, geometry: Geometry, limits: Limits | None = None) -> Hashable:
    """Every number and word a view is drawn from: two geometries that agree in these look the same.

    A view that is not named here is drawn again whenever anything of the design changes.

    A test draws random designs both ways and holds this.
    """
    d = geometry.design
    read = _read(view, geometry, limits)
    # A set whose file was edited may read off the same lengths and look another.
    return read if d.piece_set is None else (d.piece_set, d.pieces, read)


def _read(view: str, geometry: Geometry, limits: Limits | None) -> Hashable:
    f, d = geometry.frame, geometry.design

    def pick(names: tuple[str, ...]) -> tuple[float, ...]:
        return tuple(getattr(f, name) for name in names)

    box = (replace(d.firebox, jamb=FOOT), d.lintel, d.hearth, d.seat, d.method)
    head = (d.opening.head, d.opening.rise, d.opening.hood)
    if view == "plan":
        return (
            pick(_WIDE),
            f.second,
            d.firebox,
            d.hearth,
            d.seat,
            d.clearance,
            d.breast,
            corner_of(d, f),
            d.method,
            f.back_bend > f.hearth,
        )
    if view == "room":
        return (
            pick(_WIDE),
            pick(_UPRIGHT),
            f.offset,
            f.offset_bottom,
            f.offset_top,
            f.breast,
            f.crown_bottom,
            d.opening,
            d.firebox,
            d.lintel,
            d.hearth,
            d.seat,
            d.method,
            d.surround,
            d.mantel,
            d.brick,
            d.base,
            d.house,
            d.breast,
            corner_of(d, f),
            f.flue_y - f.stack_depth,
        )
    if view == "staging":
        room = (d.house.room_length, d.house.room_width)
        place = (d.breast.off_center, corner_of(d, f))
        return (d.opening, d.flue.sections, d.work, room, *place, d.told)
    if view == "front":
        top = max(d.house.ceiling, f.opening_top + 1.0)
        aside = (f.offset, f.offset_bottom, f.offset_top)
        return (
            pick(_WIDE),
            pick(_UPRIGHT),
            aside,
            f.breast,
            min(f.crown_bottom, top),
            d.opening,
            box,
            d.surround,
            d.mantel,
            d.brick,
            d.house.ceiling,
            d.base,
        )
    if view == "section":
        shown = min(f.shoulder_top + ABOVE, f.crown_bottom)
        laid = f.side_slope if geometry.facing_fire.material == "firebrick" else None
        return (
            pick(_UPRIGHT),
            pick(_DEEP),
            f.bore,
            f.offset,
            shown,
            head,
            tuple((part.material, *rings) for part, rings in mantel_cuts(geometry, shown)),
            mantel_reach(geometry),
            box,
            d.base,
            d.throat,
            d.smoke_chamber,
            replace(d.flue, sections=4),
            replace(d.chimney, liner_above=0.0),
            d.firebox.masonry,
            laid,
        )
    if view != "roof":
        return (d,)
    told = tuple(sorted((limits or {}).items()))
    return (
        pick(_UPRIGHT),
        f.crown_bottom,
        f.crown_top,
        f.liner_top,
        f.uphill_contact,
        f.highest_within_reach,
        f.highest_within_reach_is,
        along(geometry),
        f.second,
        f.stack_middle,
        d.roof,
        d.flue,
        d.chimney,
        d.house.ceiling,
        d.base,
        told,
    )


MOST_KEPT = 64
"""Sheets that are kept; beyond, the one goes that nobody has asked for longest. [-]"""
_kept: dict[Hashable, Sheet] = {}


def view_sheet(
    view: str,
    cell: Cell,
    geometry: Geometry,
    units: str,
    limits: Limits | None = None,
    shown: Collection[str] = (),
    own_paper: bool = False,
) -> Sheet:
    """One view in one cell; the very same sheet as long as what it is drawn from is the same."""
    key = (view, cell, units, reads(view, geometry, limits), frozenset(shown), own_paper)
    sheet = _kept.pop(key, None)
    if sheet is None:
        sheet = draw_view(view, cell, geometry, units, limits, shown, own_paper)
    _kept[key] = sheet  # what was asked last stands last
    if len(_kept) > MOST_KEPT:
        del _kept[next(iter(_kept))]
    return sheet


def draw_view(
    view: str,
    cell: Cell,
    geometry: Geometry,
    units: str,
    limits: Limits | None = None,
    shown: Collection[str] = (),
    own_paper: bool = False,
) -> Sheet:
    """One view in one cell, drawn afresh; in its room with those proportion guides that are
    ``shown``, by name. On its own paper the cell is the whole of the sheet.
    """
    large = cell.right - cell.left >= LARGE if own_paper else cell is WHOLE
    paper = (cell.right, cell.top) if own_paper else (WIDTH, HEIGHT)
    sheet = Sheet(*paper, hatch_size=CATALOGUE[view].broad if large else 1.0)
    more: dict[str, Any] = {"limits": limits} if view == "roof" else {}
    if view == "room" and shown:
        more = {"guides": [guide for guide in find_guides(geometry, units) if guide.name in shown]}
    CATALOGUE[view].draw(sheet, cell, geometry, units, **more)
    if not own_paper and not large and view in RULES:
        sheet.line(RULES[view], "fine", "soft")
    return sheet


def views(
    view: str,
    geometry: Geometry,
    units: str = FEET_INCHES,
    limits: Limits | None = None,
    shown: Collection[str] = (),
) -> Iterator[tuple[Cell, Sheet]]:
    """What a live picture shows: ``all`` four views in their cells, or one of them on the whole
    sheet; each made when asked for.
    """
    places = {name: CELLS[name] for name in TURNS} if view == "all" else {view: WHOLE}
    return (
        (cell, view_sheet(name, cell, geometry, units, limits, shown))
        for name, cell in places.items()
    )


def elevations(geometry: Geometry, units: str = FEET_INCHES, limits: Limits | None = None) -> Sheet:
    """One sheet with front elevation, plan, section and the whole height against the roof."""
    sheet = Sheet(WIDTH, HEIGHT)
    for _, part in views("all", geometry, units, limits):
        sheet.add(part)
    return sheet


def single(
    view: str, geometry: Geometry, units: str = FEET_INCHES, limits: Limits | None = None
) -> Sheet:
    """One view of ``CATALOGUE`` alone on a sheet of the same size."""
    return draw_view(view, WHOLE, geometry, units, limits)
