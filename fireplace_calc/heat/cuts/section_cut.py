"""The section on the center line, from the slab to above the shoulder, in cells.

It shows where the heat goes up: lining, smoke shelf, chamber, flue. Beside the middle it is cooler
than here; for wood behind the firebox the plan is the better cut.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.tables.heat import FlueFire, WallFire
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.heat.conduction.exchange import between
from fireplace_calc.heat.conduction.grading import Cells, graded
from fireplace_calc.heat.conduction.mesh import (
    HELD,
    Film,
    Gap,
    HeatMesh,
    NotWorked,
    Room,
    Solid,
    Space,
)
from fireplace_calc.heat.conduction.raster import apart, in_any, inside, the_narrow_way
from fireplace_calc.heat.cuts.from_geometry import framing, solid
from fireplace_calc.heat.cuts.wall_plan import (
    FIRE,
    MASONRY_SENDS,
    OUTDOORS,
    ROOM,
    STUD_DEEP,
    WOOD_SENDS,
)

GAS = "gas"
ABOVE = 0.6
"""How much of the chimney is cut above the shoulder. [m]"""
SECTION = Cells(0.015, 1.6, 0.09)
"""At rest."""
HOT = ("firebox air", "smoke chamber air", "flue air")
FREE, OUTSIDE, BEHIND, UPRIGHT, LYING, BURNING, DRAWING = range(7)
"""Places of the spaces in the stuff of a section."""


def section_mesh(
    geometry: Geometry,
    fire: WallFire,
    flue: FlueFire,
    cells: Cells = SECTION,
) -> HeatMesh:
    """The section in cells: x is the depth behind the face, y the level. [m]

    Parameters
    ----------
    geometry : Geometry
    fire : WallFire
        In the firebox.
    flue : FlueFire
        What goes up: in smoke chamber and flue.
    cells : Cells
        How fine.

    Returns
    -------
    HeatMesh
        Driven by ``fire``, ``gas``, ``room`` and ``outdoors``.

    Raises
    ------
    NotWorked
        When nothing is known of a material, or how much air is left behind is not known.
    """
    f, design = geometry.frame, geometry.design
    low, high = f.slab_bottom, f.shoulder_top + ABOVE
    free = design.chimney.location == "exterior"
    air = design.clearance.back
    if not free and air is None:
        raise NotWorked("How much air is left behind the masonry is not known.")
    plane = f.block_back + (air or 0.0)
    far = plane + (0.3 if free else STUD_DEEP)
    parts = [part for part in geometry.parts if part.material != "air"]
    solids = [(solid(p.material), rings) for p in parts if (rings := _rings(p, low, high))]
    open_ = [(name, _rings(geometry.by_name[name], low, high)) for name in HOT]
    front = min(0.0, *(y for _, rings in solids for ring in rings for y, _ in ring)) - 0.05
    xs = {front, f.block_back, plane, far}
    ys = {low, high, 0.0}
    for _, rings in (*solids, *open_):
        xs |= {min(max(y, front), far) for ring in rings for y, _ in ring}
        ys |= {min(max(z, low), high) for ring in rings for _, z in ring}
    grading = cells.finest, cells.growth, cells.most, cells.least
    x, y = (graded(_thinned(stops, cells.finest), *grading) for stops in (xs, ys))
    at_x, at_y = np.meshgrid((x[1:] + x[:-1]) / 2, (y[1:] + y[:-1]) / 2)
    inner = between(MASONRY_SENDS, MASONRY_SENDS)
    stuff: list[Solid | Space] = [
        Room(ROOM, MASONRY_SENDS),
        Room(OUTDOORS if free else ROOM, MASONRY_SENDS),
        Gap(0, between(MASONRY_SENDS, WOOD_SENDS), fire.air),
        Gap(0, inner),
        Gap(1, inner),
        Film(FIRE, HELD if fire.film is None else fire.film),
        Film(GAS, flue.film),
    ]
    which = np.full(at_x.shape, FREE)
    block = box(0.0, f.block_back, low, f.block_top)
    which[inside(block, at_x, at_y)] = LYING
    which[in_any(tuple(_rings(geometry.outer, low, high)), at_x, at_y)] = LYING
    for body, rings in solids:
        here = in_any(tuple(rings), at_x, at_y)
        which[here] = len(stuff)
        stuff.append(body)
    for name, rings in open_:
        which[in_any(tuple(rings), at_x, at_y)] = BURNING if name == HOT[0] else DRAWING
    the_narrow_way(which, LYING, UPRIGHT, x, y)
    behind = (at_x > f.flue_y) & (which == FREE)
    which[behind] = OUTSIDE if free else BEHIND
    if not free:
        which[at_x > plane] = len(stuff)
        stuff.append(framing().wood)
    edges: dict[str, Space] = {"right": Room(OUTDOORS if free else ROOM, WOOD_SENDS)}
    return HeatMesh(x, y, stuff, which, edges)


def _rings(part: Part, low: float, high: float) -> list[Polygon]:
    """Those outlines of a part's section that reach between two levels."""
    return [
        ring
        for ring in part.section()
        if max(z for _, z in ring) > low + 1e-6 and min(z for _, z in ring) < high - 1e-6
    ]


def _thinned(stops: set[float], least: float) -> list[float]:
    """Stops with no two nearer than a third of a cell, so that no cell is a sliver. [m]"""
    kept = apart(stops)
    thin = [kept[0]]
    for stop in kept[1:-1]:
        if stop - thin[-1] > least / 3 and kept[-1] - stop > least / 3:
            thin.append(stop)
    return [*thin, kept[-1]]
