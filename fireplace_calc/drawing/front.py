"""Front elevation: what the room sees."""

from __future__ import annotations

from math import asin, cos, sin

import numpy as np
from matplotlib.path import Path

from fireplace_calc.drawing.hatch import lines_in
from fireplace_calc.drawing.sheet import Sheet, View
from fireplace_calc.drawing.strings import chain, person
from fireplace_calc.drawing.views import LADDER, Cell, clip_top, fit, length, title
from fireplace_calc.parts import Geometry
from fireplace_calc.solids import box
from fireplace_calc.units import INCH

COURSE, BRICK = (2 + 2 / 3) * INCH, 8 * INCH
"""Face coursing: three courses to 8 in, bricks of 8 in with their joint (common practice). [m]"""


def front(sheet: Sheet, cell: Cell, geometry: Geometry, units: str, scales=LADDER, name_scale=None) -> None:
    """Draw the front elevation into a cell of a sheet."""
    f, d = geometry.frame, geometry.design
    ceiling = max(d.house.ceiling, f.opening_top + 0.3)
    wide = max(f.block_half, f.half_width + d.hearth.side) + 0.08
    view, denominator = fit(sheet, cell, (-wide, _foot(geometry) - 0.02, wide + 0.72, ceiling), (16, 22, 3, 3), scales)
    _room(view, geometry, ceiling, wide)
    _breast(view, geometry, ceiling)
    _firebox(view, geometry)
    _lintel(view, geometry)
    _hearth(view, geometry)
    person(view, wide + 0.36, 0.0)
    _strings(view, cell, geometry, units, wide)
    title(sheet, cell, "Front elevation", name_scale(denominator) if name_scale else "")


def _foot(geometry: Geometry) -> float:
    """Lowest level drawn: the floor, or the underside of a hearth let into it. [m]"""
    f, d = geometry.frame, geometry.design
    return min(0.0, f.extension_top - d.hearth.thickness) if d.hearth.front > 0 else 0.0


def _room(view: View, geometry: Geometry, ceiling: float, wide: float) -> None:
    view.path([(-wide - 0.05, 0.0), (wide + 0.72, 0.0)], "ground")
    view.path([(-wide - 0.05, ceiling), (wide + 0.72, ceiling)], "cut")


def _outline(geometry: Geometry, ceiling: float) -> tuple:
    f = geometry.frame
    full = ((-f.block_half, 0.0), (f.block_half, 0.0), (f.block_half, f.flue_start), (f.stack_half, f.shoulder_top),
            (f.stack_half, f.crown_bottom), (-f.stack_half, f.crown_bottom), (-f.stack_half, f.shoulder_top),
            (-f.block_half, f.flue_start))
    return clip_top(full, ceiling)


def opening_ring(geometry: Geometry, grow: float = 0.0) -> tuple:
    """Clear opening as seen from the front; grown, the outside of the arch ring. [m]"""
    f = geometry.frame
    w = f.half_width
    rise = f.opening_top - f.spring
    if rise <= 0:
        return ((-w, f.hearth), (w, f.hearth), (w, f.opening_top), (-w, f.opening_top))
    radius = (w * w + rise * rise) / (2 * rise)
    half = asin(min(w / radius, 1.0))
    centre = f.opening_top - radius
    arc = [((radius + grow) * sin(a), centre + (radius + grow) * cos(a)) for a in np.linspace(half, -half, 25)]
    return (*arc,) if grow else ((-w, f.hearth), (w, f.hearth), *arc)


def _breast(view: View, geometry: Geometry, ceiling: float) -> None:
    f, d = geometry.frame, geometry.design
    ring = view.ring(_outline(geometry, ceiling))
    view.sheet.fill([ring], "face", layer=-5)
    view.sheet.line(ring, "seen", closed=True)
    if d.surround.face in ("plaster", "tile"):
        return
    hole = view.ring(opening_ring(geometry))
    rings = [ring, hole]
    if d.opening.head == "segmental":
        rings = [ring, np.concatenate([hole[:2], view.ring(opening_ring(geometry, d.lintel.height))])]
    rings += [view.ring(piece) for piece in _trim(geometry)]
    _courses(view, rings, f.hearth, 1.9 if d.surround.face == "stone" else 1.0)


def _courses(view: View, rings: list[np.ndarray], start: float, coarse: float) -> None:
    """Bed joints, and head joints in running bond, of whole courses inside a face."""
    course, brick = COURSE * view.scale * coarse, BRICK * view.scale * coarse
    origin = view.at(0.0, start)
    low, high = rings[0][:, 1].min(), rings[0][:, 1].max()
    beds = lines_in(rings, 0.0, course, origin[1] % course)
    if not len(beds):
        return
    rows = np.arange(np.floor((low - origin[1]) / course), np.ceil((high - origin[1]) / course))
    reach = np.ceil((rings[0][:, 0].max() - origin[0]) / brick) + 1
    x = np.arange(-reach, reach + 1) * brick
    middle = np.stack([(origin[0] + x[None, :] + np.where(rows % 2, brick / 2, 0.0)[:, None]).ravel(),
                       np.repeat(origin[1] + (rows + 0.5) * course, x.size)], 1)
    half = course / 2 * 0.999
    inside = Path(rings[0]).contains_points(middle - (0, half)) & Path(rings[0]).contains_points(middle + (0, half))
    for hole in rings[1:]:
        inside &= ~Path(hole).contains_points(middle)
    heads = middle[inside]
    view.sheet.hatches += [beds, np.stack([heads - (0, half), heads + (0, half)], 1)]


def _firebox(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    opening = view.ring(opening_ring(geometry))
    view.sheet.fill([opening], "soot", layer=-3)
    top = f.opening_top
    back = [(-f.half_at(f.depth), f.hearth), (f.half_at(f.depth), f.hearth)]
    bend = min(f.back_bend, top)
    back.append((f.half_at(f.depth), bend))
    if top > bend:
        half = f.half_at(f.back_at(top))
        back += [(half, top), (-half, top)]
    back.append((-f.half_at(f.depth), bend))
    shown = [(x, z) for x, z in back]
    if f.spring < top:
        shown = [(x, min(z, f.spring + (top - f.spring) * 0.85)) for x, z in back]
    view.seen(shown, "firebrick" if d.method == "laid" else "refractory", "fine", layer=-2)
    view.path([(-f.half_at(f.depth), bend), (f.half_at(f.depth), bend)], "fine")
    height = d.firebox.section_height if d.method == "modular" else 2.625 * INCH
    ring = view.ring(shown)
    view.sheet.hatches.append(lines_in([ring], 0.0, height * view.scale, view.at(0, f.hearth)[1] % (height * view.scale)))
    view.sheet.line(opening, "cut", closed=True)


def _lintel(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    if d.opening.head == "segmental":
        outside = opening_ring(geometry, d.lintel.height)
        inside = opening_ring(geometry)[2:]
        ring = [*inside, *reversed(outside)]
        view.seen(ring, "brick", "seen", layer=-1)
        count = max(int(round(2 * f.half_width / (2.6 * INCH))) | 1, 3)
        a, b = view.ring(inside), view.ring(outside)
        at = np.linspace(0, 24, count + 1)
        pick = np.arange(25)
        for t in at:
            view.sheet.line([[np.interp(t, pick, a[:, 0]), np.interp(t, pick, a[:, 1])],
                             [np.interp(t, pick, b[:, 0]), np.interp(t, pick, b[:, 1])]], "fine")
        return
    half = f.half_width + (d.lintel.bearing or 0.0)
    top = f.opening_top + d.lintel.height
    shape = box(-half, half, f.opening_top, top)
    if d.lintel.material == "steel":
        view.path([*shape, shape[0]], "hidden")
    else:
        view.seen(shape, geometry.by_name["lintel"].material, "seen", layer=-1)


def _hearth(view: View, geometry: Geometry) -> None:
    f, d = geometry.frame, geometry.design
    if d.hearth.front > 0:
        half, bottom = f.half_width + d.hearth.side, f.extension_top - d.hearth.thickness
        view.seen([(-half, bottom), (half, bottom), (half, f.extension_top), (-half, f.extension_top)], "stone", "seen", layer=1)
        if bottom > 0.005:
            view.seen([(-half, 0.0), (half, 0.0), (half, bottom), (-half, bottom)], "face", "seen", layer=1)
    for piece in _trim(geometry):
        view.seen(piece, "wood", "seen", layer=2)


def _trim(geometry: Geometry) -> list[tuple]:
    """Every piece of mantel and trim as it is seen from the front. [m]"""
    f, made = geometry.frame, []
    for piece in geometry.design.surround.trim:
        if piece.place == "above":
            low, half = f.opening_top + piece.distance, min(f.block_half, f.half_width + max(piece.distance, 0.1))
            made.append(box(-half, half, low, low + piece.height))
        else:
            near = f.half_width + piece.distance
            made += [box(s * near, s * (near + piece.height), f.hearth, f.opening_top) for s in (-1, 1)]
    return made


def _strings(view: View, cell: Cell, geometry: Geometry, units: str, wide: float) -> None:
    f, d = geometry.frame, geometry.design
    sheet = view.sheet
    floor = view.at(0, _foot(geometry))[1]
    stops = [view.at(x, 0)[0] for x in (-f.block_half, -f.half_width, f.half_width, f.block_half)]
    line = floor - 4.5
    limits = (cell.left + 2, cell.right - 2)
    used = chain(sheet, stops, [length(f.block_half - f.half_width, units), length(2 * f.half_width, units),
                                length(f.block_half - f.half_width, units)], line, limits=limits, feet=[floor - 0.6] * 4)
    chain(sheet, [stops[0], stops[-1]], [length(2 * f.block_half, units)], line - used, limits=limits)
    at = [f.hearth, f.hearth + d.opening.standard_height, f.opening_top]
    texts = [length(d.opening.standard_height, units), length(d.opening.extension, units)]
    if d.opening.extension < 1e-9:
        at, texts = at[:2], texts[:1]
    if f.hearth > 1e-9:
        at, texts = [0.0, *at], [length(f.hearth, units), *texts]
    x = view.at(-wide, 0)[0] - 2.0
    stops = [view.at(0, z)[1] for z in at]
    foot = view.at(-f.block_half, 0)[0]
    used = chain(sheet, stops, texts, x, along="y", side=-1, limits=(cell.bottom + 2, cell.top - 2), feet=[foot] * len(stops))
    if len(texts) > 1:
        chain(sheet, [stops[0], stops[-1]], [length(f.opening_top - at[0], units)], x - used, along="y", side=-1,
              limits=(cell.bottom + 2, cell.top - 2))
