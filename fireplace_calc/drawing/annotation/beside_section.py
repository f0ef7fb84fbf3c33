"""What is written beside the live section."""

from __future__ import annotations

from itertools import pairwise

from fireplace_calc.base.printing import show
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.sheet import Cell, View
from fireplace_calc.drawing.views.face import hood_level
from fireplace_calc.drawing.views.layout import apart, length, lining_word, of_a_set
from fireplace_calc.geometry.parts import Geometry

ABOVE = 0.45
"""How much of the flue is shown above the shoulder. [m]"""


def section_levels(geometry: Geometry) -> dict[str, float]:
    """Levels at the side of the section by their names. [m]"""
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


def back_face(geometry: Geometry, z: float) -> float:
    """How far back the masonry reaches at a level. [m]"""
    f = geometry.frame
    if z <= f.footing_top:
        return f.block_back + geometry.design.base.footing_projection
    return f.block_back if z < f.shoulder_top - 1e-6 else f.flue_y + f.stack_depth


def section_strings(view: View, cell: Cell, geometry: Geometry, units: str) -> None:
    """Strings front to back under the footing: at the throat, and at the hearth."""
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


def upright_strings(view: View, cell: Cell, geometry: Geometry, units: str, line: float) -> None:
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
    feet = [view.at(back_face(geometry, z), 0)[0] for z in row]
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


def section_words(geometry: Geometry, units: str) -> list[tuple[tuple[float, float], str]]:
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
