"""A segmental head large enough to judge: ring, middle third, the line its thrust follows, and the
jamb that has to take it.
"""

from __future__ import annotations

from itertools import pairwise
from math import sin

from fireplace_calc.base.printing import show
from fireplace_calc.drawing.sheets.dimensions import chain, notes, room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.front_elevation import lintel_ring, opening_ring
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    break_line,
    fit,
    in_room,
    length,
    title,
)
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box
from fireplace_calc.rules.comparing import NOT_CHECKED
from fireplace_calc.structure import assess_structure
from fireplace_calc.structure.arch import Arch
from fireplace_calc.structure.arch_thrust import POINTS, THIRD

WITHIN = 180.0
"""Width from which the thrust is written within the arch. [mm]"""
UNDER, OVER = 0.30, 0.25
"""How much of the jamb and of the wall over the crown is shown. [m]"""


def has_arch(geometry: Geometry) -> bool:
    """Whether there is one to draw; the lintel of a set is none, whatever its soffit."""
    arched = geometry.frame.spring < geometry.frame.opening_top
    return arched and geometry.design.piece_set is None


def arch(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw the arched head of a design that has one, seen from the room."""
    f, d = geometry.frame, geometry.design
    structure = assess_structure(geometry)
    found = structure.arch
    checked = {f.key: f.verdict != NOT_CHECKED for f in structure.findings}
    assert found is not None, "the opening has a straight head: ask has_arch first"
    low, top = max(f.hearth, f.spring - UNDER), f.opening_top + d.lintel.height + OVER
    wide = cell.right - cell.left
    words = _words(found, checked, geometry, units)
    thrust = f"thrust {show(found.line.thrust, 'force', units)}"
    if wide < WITHIN:
        words.append((found.line_points[len(found.line_points) // 2], thrust))
    words = in_room(words, 0.42 * wide)
    margins = (18, 26, room_for(row for _, text in words for row in text.split("\n")) + 10.0, 8)
    view, denominator = fit(sheet, cell, (-f.block_half, low, f.block_half, top), margins, scales)
    _masonry(view, geometry, low, top)
    ring = found.ring
    for share in (1 / 3, 2 / 3):
        half = (ring.radius + share * ring.depth) * sin(ring.skew)
        view.path(
            [
                (x, found.spring + ring.at(x, share))
                for x in (half * (k / POINTS - 1) for k in range(2 * POINTS + 1))
            ],
            "hidden",
        )
    view.path(found.line_points, "cut")
    if wide >= WITHIN:
        sheet.text(*view.at(0.0, f.opening_top - 0.08), thrust, ha="center", va="top")
    _strings(view, cell, geometry, units)
    tips = sorted(((view.at(*place), text) for place, text in words), key=lambda tip: tip[0][1])
    notes(
        sheet,
        tips,
        view.at(f.block_half, 0)[0] + 5.0,
        side=1,
        limits=(cell.bottom + 10, cell.top - 4),
    )
    title(sheet, cell, "Arch and its thrust", name_scale(denominator) if name_scale else "")
    return view


def _masonry(view: View, geometry: Geometry, low: float, top: float) -> None:
    f = geometry.frame
    wall = view.ring(box(-f.block_half, f.block_half, low, top))
    view.sheet.fill([wall], "face", layer=-5)
    view.sheet.fill(
        [view.ring([p if p[1] > low else (p[0], low) for p in opening_ring(geometry)])],
        "soot",
        layer=-3,
    )
    for x in (-f.block_half, f.block_half, -f.half_width, f.half_width):
        view.path([(x, low), (x, top if abs(x) > f.half_width else f.spring)], "seen")
    for z in (low, top):
        break_line(view, -f.block_half, f.block_half, z)
    ring = lintel_ring(geometry)
    view.seen(ring, geometry.parts_by_name["arch"].material, "seen", layer=-1)


def _words(
    found: Arch, checked: dict[str, bool], geometry: Geometry, units: str
) -> list[tuple[tuple[float, float], str]]:
    """What is what, and where to point at it [m]; what is not checked is said to be so."""

    def doubt(key: str) -> str:
        return "" if checked[key] else ", wall alone (not checked)"

    f, ring = geometry.frame, found.ring
    end, crown = found.line_points[-1], found.spring + ring.at(f.half_width * 0.45, 2 / 3)
    held = "keeps to the middle third" if found.line.inside else "leaves the middle third"
    jamb = f.block_half - f.half_width
    return [
        ((f.half_width * 0.45, crown), f"middle third: within {THIRD:.2f} of the depth"),
        (
            found.line_points[len(found.line_points) * 7 // 8],
            f"line of thrust {held}: {found.line.eccentricity:.2f}{doubt('STR-16')}",
        ),
        (end, f"jamb held against {show(found.abutment_thrust, 'force', units)}"),
        (
            (f.half_width + jamb / 2, found.spring - 0.06),
            f"bed joint takes {show(found.friction, 'force', units)} by friction{doubt('STR-17')}",
        ),
        (
            (f.half_width + jamb / 2, found.spring - 0.16),
            f"safe against tipping {found.overturning:.1f} times{doubt('STR-18')}",
        ),
    ]


def _strings(view: View, cell: Cell, geometry: Geometry, units: str) -> None:
    f = geometry.frame
    foot = view.at(0, max(f.hearth, f.spring - UNDER))[1]
    across = [-f.block_half, -f.half_width, f.half_width, f.block_half]
    jamb = length(f.block_half - f.half_width, units)
    chain(
        view.sheet,
        [view.at(x, 0)[0] for x in across],
        [jamb, length(2 * f.half_width, units), jamb],
        foot - 6.0,
        limits=(cell.left + 2, cell.right - 2),
    )
    up, edge = (
        [f.spring, f.opening_top, f.opening_top + geometry.design.lintel.height],
        view.at(-f.block_half, 0)[0],
    )
    chain(
        view.sheet,
        [view.at(0, z)[1] for z in up],
        [length(b - a, units) for a, b in pairwise(up)],
        edge - 6.0,
        along="y",
        side=-1,
        limits=(foot - 2.5, cell.top - 2),  # under that stands the string across
        feet=[edge] * len(up),
    )
