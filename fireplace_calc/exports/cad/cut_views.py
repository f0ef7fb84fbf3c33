"""Section and plans as a drawing file shows them: what is cut is outlined, hatched, dimensioned."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import hypot
from typing import Any

import numpy as np

from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.drawing.annotation.beside_section import section_levels
from fireplace_calc.drawing.views.chimney_plan import cut_level
from fireplace_calc.drawing.views.cuts import mantel_cuts
from fireplace_calc.exports.cad.true_view import (
    BEYOND,
    CutShape,
    PieceShape,
    TrueView,
    box_of,
    corners,
)
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.bodies import kept_inside, plan_rings
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.pieces.roles import PARTS

Draws = Callable[[Any], None]


def section_view(geometry: Geometry, draws: Draws | None = None) -> TrueView:
    """The section on the center line at full height; the room is on the left.

    Parameters
    ----------
    geometry : Geometry
    draws : callable or None
        Draws the pieces of a set in place of the parts that they make up.

    Returns
    -------
    TrueView
    """
    f = geometry.frame
    every = [
        CutShape(part.material, tuple(tuple(ring) for ring in rings))
        for part in geometry.parts
        if (rings := part.section())
    ]
    every += [
        CutShape(part.material, tuple(rings)) for part, rings in mantel_cuts(geometry, BEYOND)
    ]
    names = [part.name for part in geometry.parts if part.section()]
    of_set = [draws is not None and name in PARTS for name in names]
    cuts = [cut for k, cut in enumerate(every) if k >= len(of_set) or not of_set[k]]
    seen: list[tuple[str, Polygon]] = []
    if f.hood > 0:
        seen.append(("metal", ((0.0, f.clear_top), (0.0, f.opening_top))))
    # Face and finished floor, whatever stands there, and the middle of the flue.
    middle = [(f.flue_y, f.flue_start), (f.flue_y, f.crown_top)]
    spots = [(0.0, 0.0), *middle, *corners(every, seen)]
    return TrueView(
        "section",
        "Section on the center line",
        cuts=cuts,
        seen=seen,
        pieces=[*_beyond(geometry), *_courses(geometry)],
        lines=[("center-lines", np.array([middle]))],
        marks=_levels(geometry),
        spots=spots,
        measured_from=(
            (0.0, f.throat_front, f.throat_back, f.depth, f.block_back, f.flue_y),
            (0.0, f.footing_bottom, f.hearth, f.opening_top, f.throat, f.flue_start, f.crown_top),
        ),
        box=box_of([spots]),
        split=f.taper_top,
        more=draws,
    )


def _levels(geometry: Geometry) -> dict[str, float]:
    f = geometry.frame
    return section_levels(geometry) | {"crown": f.crown_top, "top of liner": f.liner_top}


def _beyond(geometry: Geometry) -> Iterator[PieceShape]:
    """Bricks of the side that is seen beyond the cut."""
    f = geometry.frame
    along = hypot(1.0, f.side_slope)
    over = [box(-1.0, BEYOND, f.hearth, BEYOND)]
    for layout in lay_brickwork(geometry).lining:
        if layout.face.name == "side":
            rings = [
                tuple((x / along + f.lining_front, y) for x, y in piece.ring)
                for piece in layout.pieces
            ]
            for ring in kept_inside(rings, over):
                yield PieceShape("firebrick", ring)


def _courses(geometry: Geometry) -> Iterator[PieceShape]:
    """Every course of what is laid or set in courses, where the section cuts it."""
    if geometry.design.piece_set is not None:
        return  # a set's own pieces stand there
    listed = course_list(geometry)
    for part in geometry.parts:
        within = [tuple(ring) for ring in part.section()]
        bands = [box(-BEYOND, BEYOND, one.bottom, one.top) for one in listed.of(part.name)]
        if within and bands:
            for ring in kept_inside(bands, within):
                yield PieceShape(part.name, ring)


def plan_level(geometry: Geometry) -> float:
    """Where the plan at the hearth is cut. [m]"""
    f = geometry.frame
    return f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))


def hearth_plan(geometry: Geometry, draws: Draws | None = None) -> TrueView:
    """The plan at the hearth with every brick of its floor; the room is below."""
    f, d = geometry.frame, geometry.design
    cuts = [*_cut(geometry, plan_level(geometry), draws is not None)]
    inside = (
        (-f.half_width, 0.0),
        (f.half_width, 0.0),
        (f.half_at(f.depth), f.depth),
        (-f.half_at(f.depth), f.depth),
    )
    seen: list[tuple[str, Polygon]] = [(geometry.under_fire.material, inside)]
    if d.hearth.front > 0:
        half = f.half_width + d.hearth.side
        slab = box(-half, half, -d.hearth.front, 0.0)
        seen.append((geometry.parts_by_name["hearth extension"].material, slab))
        if seat := geometry.parts_by_name.get(SEAT[0]):
            seen += [(seat.material, tuple(ring)) for ring in seat.plan(seat.top)[0]]
    every = [*_cut(geometry, plan_level(geometry), False)]
    spots = [*corners(every, seen), (0.0, f.throat_front), (0.0, f.throat_back)]
    floor = lay_brickwork(geometry).floor
    pieces = [PieceShape("firebrick", piece.ring) for piece in floor.pieces] if floor else []
    return TrueView(
        "hearth plan",
        "Plan at the hearth",
        cuts=cuts,
        seen=seen,
        pieces=pieces,
        spots=spots,
        measured_from=((0.0, f.half_width, f.block_half), (0.0, f.depth, f.block_back)),
        middle=True,
        box=box_of([spots]),
        more=draws,
    )


def level_plans(geometry: Geometry) -> Iterator[tuple[float, TrueView]]:
    """Plans of base, throat, flue and chimney head, each with the level of its cut; the room is
    below. What a second flue needs is in them.

    Yields
    ------
    float, TrueView
        [m]
    """
    f = geometry.frame
    levels = {
        "Plan at the base": (f.footing_top + min(f.slab_bottom, f.grade + 1.0)) / 2,
        "Plan at the throat": f.throat + 1e-6,
        "Plan at the flue": cut_level(geometry),
    }
    for name, z in levels.items():
        cuts = [*_cut(geometry, z, False)]
        if not cuts:
            continue
        seen: list[tuple[str, Polygon]] = []
        pieces: list[PieceShape] = []
        if name == "Plan at the base":
            pieces = [*_blocks(geometry)]
            footing = geometry.parts_by_name["footing"]
            rings = footing.plan((footing.bottom + footing.top) / 2)[0]
            seen = [(footing.material, tuple(ring)) for ring in rings]
        spots = [*corners(cuts, seen)]
        middle = 0.0 if name != "Plan at the flue" else f.shift_at(z)
        yield (
            z,
            TrueView(
                name.lower(),
                name,
                cuts=cuts,
                seen=seen,
                pieces=pieces,
                spots=spots if middle == 0.0 else [*spots, (0.0, f.flue_y)],
                measured_from=((0.0, middle), (0.0, f.flue_y)),
                middle=True,
                box=box_of([spots]),
            ),
        )


def _blocks(geometry: Geometry) -> Iterator[PieceShape]:
    """The first course of block of the base, as it is laid."""
    for course in lay_brickwork(geometry).block_courses[:1]:
        for ring, _ in course.blocks:
            yield PieceShape("block", tuple(ring))


def _cut(geometry: Geometry, z: float, without_set: bool) -> Iterator[CutShape]:
    """What a level cuts, part by part."""
    for part in geometry.parts:
        if without_set and part.name in PARTS:
            continue
        if rings := plan_rings(part, z):
            yield CutShape(part.material, tuple(rings))
