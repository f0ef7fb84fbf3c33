"""The front as a drawing file shows it: every outline closed, every brick a piece."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, hypot

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.arch_ring import laid_arch
from fireplace_calc.brickwork.layout import Layout
from fireplace_calc.brickwork.seen.coursing_of_face import (
    bonded_units,
    coursed_face,
    face_joint_widths,
)
from fireplace_calc.drawing.views.cuts import clip_top
from fireplace_calc.drawing.views.face import (
    COVERED,
    face_joints,
    hearth_front,
    hood_ring,
    jamb_ends,
    open_ring,
    seat_fronts,
)
from fireplace_calc.drawing.views.front_elevation import breast_ring, lintel_ring, opening_ring
from fireplace_calc.exports.cad.true_view import PieceShape, TrueView, box_of
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.bodies import kept_inside
from fireplace_calc.geometry.mantel.edges import face_end
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Point, Polygon, box, overlap
from fireplace_calc.scene.layouts.arch import arch_units
from fireplace_calc.takeoff.facing import head_shows


def front_view(geometry: Geometry) -> TrueView:
    """The front at full height, on the center line and the finished floor.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    TrueView
    """
    f = geometry.frame
    seen = [*_outlines(geometry)]
    joints = np.concatenate([_stone(geometry), *(beds for _, beds in jamb_ends(geometry))])
    return TrueView(
        "front",
        "Front elevation",
        seen=seen,
        pieces=[*_lining(geometry), *_face(geometry), *_arch(geometry)],
        lines=[("joints", joints)] if len(joints) else (),
        marks=_levels(geometry),
        spots=[*_spots(geometry, seen)],
        measured_from=((0.0, f.half_width, f.block_half), (0.0, f.hearth, f.opening_top)),
        middle=True,
        box=box_of(ring for _, ring in seen),
        split=f.block_top,
    )


def _outlines(geometry: Geometry) -> Iterator[tuple[str, Polygon]]:
    """Everything the room sees, and the chimney over it, by layer. [m]"""
    f, d = geometry.frame, geometry.design
    opening = opening_ring(geometry)
    yield "outline", breast_ring(geometry, f.crown_bottom)
    yield "outline", opening
    yield geometry.facing_fire.material, _back(geometry)
    if hood := hood_ring(geometry, opening):
        yield "metal", hood
    head = geometry.parts_by_name.get("arch") or geometry.parts_by_name["lintel"]
    yield head.material if head_shows(geometry) else "hidden", lintel_ring(geometry)
    for end, _ in jamb_ends(geometry):
        yield geometry.facing_fire.material, end
    if d.hearth.front > 0:
        half = f.half_width + d.hearth.side
        low = f.extension_top - d.hearth.thickness
        yield (
            geometry.parts_by_name["hearth extension"].material,
            box(-half, half, low, f.extension_top),
        )
        yield from _under(hearth_front(geometry))
    yield from _under(seat_fronts(geometry))
    for part in mantel_parts(geometry):
        for run in part.group.runs:
            yield part.tone, run.front
    for name in ("crown", "flue liner", "second flue liner"):
        yield from _over_the_roof(geometry, name)


def _under(fronts: Iterator[tuple[str, Polygon]]) -> Iterator[tuple[str, Polygon]]:
    for material, ring in fronts:
        yield "outline" if material == COVERED else material, ring


def _back(geometry: Geometry) -> Polygon:
    """The fireback as it shows through the opening. [m]"""
    f = geometry.frame
    low, top = f.half_at(f.depth), f.opening_top
    bend, high = min(f.back_bend, top), f.half_at(f.back_at(top))
    whole = ((-low, f.hearth), (low, f.hearth), (low, bend), (high, top), (-high, top))
    return tuple(overlap((*whole, (-low, bend)), opening_ring(geometry)))


def _over_the_roof(geometry: Geometry, name: str) -> Iterator[tuple[str, Polygon]]:
    """What stands over the chimney's walls, from the front. [m]"""
    part = geometry.parts_by_name.get(name)
    bottom = geometry.frame.crown_bottom if name == "crown" else geometry.frame.crown_top
    if part is None or part.top <= bottom + 1e-6:
        return
    inside = 1e-7  # a solid is not cut at its very ends
    ends = []
    for z in (bottom + inside, part.top - inside):
        xs = [x for ring in part.plan(z)[0] for x, _ in ring]
        ends.append((min(xs), max(xs)))
    (a, b), (c, d) = ends
    yield part.material, ((a, bottom), (b, bottom), (d, part.top), (c, part.top))


def _spots(geometry: Geometry, seen: list[tuple[str, Polygon]]) -> Iterator[Point]:
    """Corners that dimensions fix; of a curve its ends and its crown. [m]"""
    f, d = geometry.frame, geometry.design
    arched = f.spring < f.opening_top
    curved = {opening_ring(geometry), lintel_ring(geometry), _back(geometry)} if arched else set()
    if arched:
        curved.add(hood_ring(geometry, opening_ring(geometry)))
        yield from ((f.half_width, f.hearth), (f.half_width, f.spring), (0.0, f.opening_top))
        yield (0.0, f.opening_top + d.lintel.height)
        if geometry.design.piece_set is not None:
            yield (f.half_width + (d.lintel.bearing or 0.0), f.opening_top + d.lintel.height)
        yield (f.half_at(f.depth), f.hearth)
        yield (f.half_at(f.depth), min(f.back_bend, f.opening_top))
        if f.hood > 0:
            yield (f.half_width, f.clear_top)
    for _, ring in seen:
        if ring not in curved:
            yield from ring


def _levels(geometry: Geometry) -> dict[str, float]:
    f, d = geometry.frame, geometry.design
    named = {"floor": 0.0, "hearth": f.hearth, "opening top": f.opening_top}
    named["ceiling"] = max(d.house.ceiling, f.opening_top + 0.3)
    return named | {"top of chimney": f.crown_top}


# -- pieces ---------------------------------------------------------------------------------------
def from_the_front(layout: Layout, geometry: Geometry) -> Iterator[list[Polygon]]:
    """Every piece of one face of the lining as the room sees it; of a side on both. [m]"""
    f = geometry.frame
    rings = [np.asarray(piece.ring) for piece in layout.pieces]
    if layout.face.name == "back":
        yield [tuple(map(tuple, ring.tolist())) for ring in rings]
    elif layout.face.name == "raked back":
        up = hypot(1.0, f.lean)
        yield [tuple((x, y / up + f.back_bend) for x, y in ring.tolist()) for ring in rings]
    else:
        slant = f.side_slope / hypot(1.0, f.side_slope)
        for side in (1, -1):
            yield [
                tuple((side * (f.half_width - slant * x), y) for x, y in ring.tolist())
                for ring in rings
            ]


def _lining(geometry: Geometry) -> Iterator[PieceShape]:
    region = [open_ring(geometry, opening_ring(geometry))]
    for layout in lay_brickwork(geometry).lining:
        for rings in from_the_front(layout, geometry):
            for ring in kept_inside(rings, region):
                yield PieceShape("firebrick", ring)


def _face_region(geometry: Geometry) -> tuple[Polygon, list[Polygon]]:
    """The face, and what stands before it or in it. [m]"""
    f, d = geometry.frame, geometry.design
    ceiling = max(d.house.ceiling, f.opening_top + 0.3)
    face = clip_top(breast_ring(geometry, ceiling), face_end(geometry, ceiling))
    holes = [opening_ring(geometry), *(end for end, _ in jamb_ends(geometry))]
    holes += [run.front for part in mantel_parts(geometry) for run in part.group.runs]
    holes += [ring for _, ring in seat_fronts(geometry)]
    if head_shows(geometry):
        holes.append(lintel_ring(geometry))
    if d.hearth.front > 0 and f.extension_top > 0:
        half = f.half_width + d.hearth.side
        holes.append(box(-half, half, -0.1, f.extension_top))
    return tuple(face), holes


def _face(geometry: Geometry) -> Iterator[PieceShape]:
    """Facing brick or tile in its bond, set out from the middle of the hearth."""
    surround = geometry.design.surround
    if surround.face in ("stone", "plaster"):
        return
    face, holes = _face_region(geometry)
    bond, (left, low, right, top) = coursed_face(geometry), box_of([face])
    origin = geometry.frame.hearth
    start = -ceil(-left / bond.module) - 1
    under = (-ceil(max(origin - low, 0.0) / bond.course) - 1) // bond.repeat * bond.repeat
    modules = ceil((right - start * bond.module) / bond.module) + 1
    rows = ceil((top - origin) / bond.course) - under
    laid = bonded_units(bond, face_joint_widths(geometry), modules, rows)
    laid = laid + (start * bond.module, origin + under * bond.course)
    rings = [tuple(map(tuple, ring)) for ring in laid.tolist()]
    for ring in kept_inside(rings, [face], holes):
        yield PieceShape("tile" if surround.face == "tile" else "facing brick", ring)


def _stone(geometry: Geometry) -> Array:
    """Joints of a stone face, set out from the middle of the hearth, (k, 2, 2). [m]"""
    if geometry.design.surround.face != "stone":
        return np.empty((0, 2, 2))
    face, holes = _face_region(geometry)
    origin = 0.0, geometry.frame.hearth
    return face_joints(geometry, [np.array(face)], [np.array(hole) for hole in holes], origin, 1.0)


def _arch(geometry: Geometry) -> Iterator[PieceShape]:
    laid = laid_arch(geometry)
    if laid is None or not head_shows(geometry):
        return
    ring = geometry.parts_by_name["arch"].adds[0]
    assert isinstance(ring, ArchRing)
    for unit in arch_units(ring, laid):
        yield PieceShape("arch brick", tuple(map(tuple, unit.tolist())))
