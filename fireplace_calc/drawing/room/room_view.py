"""The fireplace in its room, as somebody standing sees it: wall, ceiling, floor, mantel, hearth, a
person, the firebox in depth.

Everything in the plane of the face is to scale and in its true place; what lies behind it or stands
before it is drawn in one-point perspective. The floor is ruled in squares of a foot or 300 mm.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.brickwork.arch_ring import voussoirs
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.room.eye import Block
from fireplace_calc.drawing.room.for_scale import somebody
from fireplace_calc.drawing.room.guide_lines import guide_room, overlay
from fireplace_calc.drawing.room.inside import draw_inside
from fireplace_calc.drawing.room.room_caption import caption
from fireplace_calc.drawing.room.room_scene import Scene, _named, scene, standing_out
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.hidden_lines import HiddenLines, near, sides
from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, View
from fireplace_calc.drawing.views.cuts import clip_top
from fireplace_calc.drawing.views.face import (
    COVERED,
    block_front,
    face_joints,
    hood_ring,
    jamb_ends,
)
from fireplace_calc.drawing.views.front_elevation import lintel_ring, opening_ring
from fireplace_calc.drawing.views.layout import (
    LADDER,
    ScaleName,
    Scales,
    fit,
    length,
    level,
    roomy,
    title,
)
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box, overlap
from fireplace_calc.proportion import (
    Guide,
    wall_top,
)
from fireplace_calc.takeoff.facing import head_shows

FACES = {"brick": "brick", "stone": "stone", "plaster": "face", "tile": "tile"}


def room(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
    guides: Sequence[Guide] = (),
) -> View:
    """Draw the fireplace in its room into a cell of a sheet; the window comes back for whoever
    marks something on it.
    """
    f = geometry.frame
    words = roomy(cell)
    marks = level_marks(_named(geometry), lambda z: level(z, units)) if words else []
    left = level_room(marks, False) + 9.0 if marks else 3.0
    right, foot = guide_room(cell, guides, words), 25.0 if words else 20.0
    s = scene(
        geometry, (cell.right - cell.left - left - right) / (cell.top - cell.bottom - foot - 3.0)
    )
    (x0, z0), (x1, z1) = s.window[0], s.window[2]
    view, denominator = fit(sheet, cell, (x0, z0, x1, z1), (left, foot, right, 3.0), scales)
    draw_room(view, geometry, s, units)
    overlay(view, guides, s.window, cell, words)
    edge, foot = view.at(x0, z0)
    levels(
        sheet,
        [(view.at(0, z)[1], value, name) for z, value, name in marks],
        [edge - 1.0] * len(marks),
        edge - 6.5,
        side=-1,
        limits=(cell.bottom + 10, cell.top - 3),
    )
    stops = [view.at(x, 0)[0] for x in (-f.block_half, -f.half_width, f.half_width, f.block_half)]
    jamb = length(f.block_half - f.half_width, units)
    chain(
        sheet,
        stops,
        [jamb, length(2 * f.half_width, units), jamb],
        foot - 4.5,
        limits=(cell.left + 2, cell.right - 2),
    )
    title(sheet, cell, "In its room", name_scale(denominator) if name_scale else "")
    if words and not name_scale:
        caption(sheet, cell, geometry, s, units)
    return view


def draw_room(view: View, geometry: Geometry, s: Scene, units: str, leveled: bool = True) -> None:
    """The picture alone, without a word; with the eye's level on the wall, or without."""
    sheet = view.sheet
    covers = somebody(view, s.eye, s.person)
    blocks = [*s.hearth, *sorted(s.trim, key=lambda b: b.before(s.eye), reverse=True)]
    outlines = [view.ring(b.outline(s.eye)) for b in blocks]
    hidden_by, hidden = [*outlines, covers], HiddenLines(sheet)
    breast = np.array(standing_out(geometry, s), dtype=float)
    _shell(view, hidden, s, [view.ring(breast), *hidden_by], units)
    _breast(view, hidden, geometry, s, breast, hidden_by)
    if leveled:
        wall = view.ring(s.eye.see([(x, s.back, z) for x, z in s.wall]))
        line = view.ring(np.array([[(-9e2, s.eye.level), (9e2, s.eye.level)]]))
        within = [view.ring(s.window), wall]
        hidden.lines(line, "hidden", within, [view.ring(breast), *hidden_by], ink="soft")
    opening = opening_ring(geometry)
    hood = [view.ring(ring) for ring in [hood_ring(geometry, opening)] if ring]
    draw_inside(view, hidden, geometry, s.eye, [*hidden_by, *hood])
    hidden.outline(view.ring(opening), "cut", hidden_by)
    for ring in hood:
        view.sheet.fill([ring], "metal", layer=-2.5)
        hidden.outline(ring, "seen", hidden_by)
    for k, block in enumerate(blocks):
        tone, layer = block.tone, -4 if k < len(s.hearth) else -2
        behind = [*outlines[k + 1 :], covers]
        _block(view, hidden, geometry, block, s, behind, tone, layer + k / 100)
    hidden.lift()


def _shell(
    view: View, hidden: HiddenLines, s: Scene, hidden_by: list[np.ndarray], units: str
) -> None:
    """Wall, side walls, floor and ceiling, and the squares of the floor."""
    (a, _), (b, top) = s.wall[0], s.wall[2]
    y, wall, out = -s.depth, s.back, s.out(-s.depth)
    window = view.ring(s.window)

    def plane(tone: str, spots: list[tuple[float, float, float]], layer: int) -> np.ndarray:
        ring = np.array(overlap(s.eye.see(spots).tolist(), s.window))
        if len(ring) > 2:
            view.sheet.fill([view.ring(ring)], tone, layer=layer)
        return ring

    def level_plane(tone: str, z: float) -> np.ndarray:
        return plane(tone, [(a, wall, z), (b, wall, z), (b + out, y, z), (a - out, y, z)], -10)

    ends = ((a, 0), (b, 0), (b, top), (a, top))
    plane("room wall", [(x, wall, z) for x, z in ends], -10)
    floor = level_plane("room floor", 0.0)
    level_plane("room ceiling", top)
    corners: list[list[tuple[float, float, float]]] = []
    for side, end in ((a, a - out), (b, b + out)):
        upright = [(side, wall, 0), (end, y, 0), (end, y, top), (side, wall, top)]
        plane("room side", upright, -10)
        corners += [[(side, wall, z), (end, y, z)] for z in (0.0, top)] + [
            [(side, wall, 0), (side, wall, top)]
        ]
    edges = [*corners, *([(a, wall, z), (b, wall, z)] for z in (0, top))]
    hidden.lines(view.ring(s.eye.see(np.array(edges))), "seen", [window], hidden_by)
    step = 12 * INCH if units == FEET_INCHES else 0.3
    k = s.eye.size(wall)
    first, last = max(a - out, s.window[0][0] / k), min(b + out, s.window[1][0] / k)
    n = np.arange(np.ceil(first / step), np.floor(last / step) + 1) * step
    rows = np.arange(np.floor(-wall / step) + 1, np.floor(s.depth / step) + 1) * step
    squares = [[(x, wall - max(a - x, x - b, 0.0), 0.0), (x, y, 0.0)] for x in n] + [
        [(a - s.out(-r), -r, 0.0), (b + s.out(-r), -r, 0.0)] for r in rows
    ]
    hidden.hatch(view.ring(s.eye.see(squares)), [view.ring(floor)], hidden_by)
    view.sheet.line(window, "seen", closed=True)


def _breast(
    view: View,
    hidden: HiddenLines,
    geometry: Geometry,
    s: Scene,
    ring: np.ndarray,
    hidden_by: list[np.ndarray],
) -> None:
    """Masonry in the wall with its face and lintel, up to the ceiling."""
    f, d, top = geometry.frame, geometry.design, wall_top(geometry)
    shown, window = view.ring(ring), view.ring(s.window)
    inside = np.array(
        overlap(ring.tolist(), box(s.window[0][0], s.window[1][0], -1.0, 99.0)), dtype=float
    )
    faced = np.array(clip_top(inside.tolist(), face_end(geometry, top)))
    view.sheet.fill([view.ring(inside)], FACES["plaster"], layer=-9)
    view.sheet.fill([view.ring(faced)], FACES[d.surround.face], layer=-8.9)
    hidden.lines(sides(shown), "seen", [window], hidden_by)
    arched, hole = f.spring < f.opening_top, view.ring(opening_ring(geometry))
    holes = list(hidden_by)
    if head_shows(geometry):
        head, under = view.ring(lintel_ring(geometry)), [view.ring(box(-99.0, 99.0, -1.0, top))]
        material = (geometry.parts_by_name.get("arch") or geometry.parts_by_name["lintel"]).material
        view.sheet.fill([view.ring(clip_top(lintel_ring(geometry), top))], material, layer=-8)
        hidden.lines(sides(head), "seen", under, hidden_by)
        if arched:
            half = len(head) // 2
            for joints in voussoirs(geometry, head[:half], head[half:][::-1]):
                hidden.hatch(joints, under, hidden_by)
            hole = np.concatenate([hole[:3], head[len(head) // 2 :][::-1], hole[-1:]])
        else:
            holes.append(head)
    holes.append(hole)
    for end, beds in jamb_ends(geometry):
        holes.append(view.ring(end))
        view.sheet.fill([holes[-1]], geometry.facing_fire.material, layer=-8)
        hidden.lines(sides(holes[-1]), "seen", behind=hidden_by)
        hidden.hatch(view.ring(beds), behind=hidden_by)
    _face(view, geometry, [view.ring(faced)], holes, view.at(0.0, f.hearth))


def _face(
    view: View,
    geometry: Geometry,
    rings: list[np.ndarray],
    holes: list[np.ndarray],
    origin: Pair,
    scale: float | None = None,
) -> None:
    """Bond of the face to scale: brick, tile, or coursed rubble; plaster has none. [mm]"""
    face = geometry.design.surround.face
    if face == "plaster":
        return
    k, holes = scale or view.scale, near(holes, np.concatenate(rings))
    view.sheet.hatches.append(face_joints(geometry, rings, holes, origin, k))


def _block(
    view: View,
    hidden: HiddenLines,
    geometry: Geometry,
    block: Block,
    s: Scene,
    hidden_by: list[np.ndarray],
    tone: str,
    layer: float,
) -> None:
    """A layer of the hearth or a piece of the mantel, side by side as it is seen."""
    for name, ring in block.faces(s.eye):
        shown = view.ring(ring)
        covered = tone == COVERED
        bare = FACES[geometry.design.surround.face] if covered else tone
        view.sheet.fill([shown], "box side" if name == "underside" else bare, layer=layer)
        hidden.lines(sides(shown), "seen", [view.ring(s.window)], hidden_by)
        k = view.scale * s.eye.size(block.y)
        shown = np.array(overlap(shown.tolist(), view.ring(s.window).tolist())).reshape(-1, 2)
        if not len(shown):
            continue
        if name == "front" and covered:
            origin = view.at(*s.eye.see([(0.0, block.y, geometry.frame.hearth)])[0])
            _face(view, geometry, [shown], near(hidden_by, shown), origin, k)
        elif name == "front" and tone == "block":
            origin = view.at(*s.eye.see([(0.0, block.y, 0.0)])[0])
            hidden.hatch(block_front(geometry) * k + origin, [shown], near(hidden_by, shown))
