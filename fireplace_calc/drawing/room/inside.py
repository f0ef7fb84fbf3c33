"""The firebox as it is seen through its opening: floor, splayed sides, raked back and throat, each
computed from the geometry.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.drawing.room.eye import Eye
from fireplace_calc.drawing.sheets.hatch import lines_in
from fireplace_calc.drawing.sheets.hidden_lines import HiddenLines
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.front_elevation import opening_ring
from fireplace_calc.drawing.views.laid_bricks import kept_within
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import overlap

STEPS = 6
"""Points along the edge where an arch dies into a splayed side."""


def _head(geometry: Geometry) -> np.ndarray:
    """Lower edge of the head at the face, from right to left. [m]"""
    return np.array(opening_ring(geometry)[2:], dtype=float)


def lit_ring(geometry: Geometry, eye: Eye) -> tuple[np.ndarray, np.ndarray]:
    """What of the opening is not the underside of its head, and what of that lies behind the
    breast. [m]

    Parameters
    ----------
    geometry : Geometry
    eye : Eye

    Returns
    -------
    array, array
        Two rings as they show; the second is convex. [m]
    """
    f, head = geometry.frame, _head(geometry)
    rising = head[::-1]
    far = f.half_at(f.breast)
    deep = np.linspace(0.0, f.breast, STEPS)
    half = f.half_width - f.side_slope * deep
    side = eye.see(np.stack([half, deep, np.interp(half, rising[:, 0], rising[:, 1])], 1))
    middle = head[np.abs(head[:, 0]) < far - 1e-9]
    back = eye.see(np.stack([middle[:, 0], np.full(len(middle), f.breast), middle[:, 1]], 1))
    edge = np.concatenate([side, back, (side * (-1.0, 1.0))[::-1]])
    edge[:, 1] = np.minimum(edge[:, 1], np.interp(edge[:, 0], rising[:, 0], rising[:, 1]))
    inner = edge[STEPS - 1 : len(edge) - STEPS + 1]
    low = eye.see([(far, f.breast, f.hearth)])[0, 0]
    foot = np.array([(-f.half_width, f.hearth), (f.half_width, f.hearth)])
    return np.concatenate([foot, edge]), np.concatenate(
        [[(-low, f.hearth), (low, f.hearth)], inner]
    )


def faces(geometry: Geometry) -> Iterator[tuple[str, list[tuple[float, float, float]]]]:
    """Every face behind the opening by its tone, in the order in which they are painted. [m]"""
    f = geometry.frame
    bend, low, high = min(f.back_bend, f.throat), f.half_at(f.depth), f.half_at(f.throat_back)
    front = f.half_at(f.throat_front)
    yield (
        "box back",
        [
            (-low, f.depth, f.hearth),
            (low, f.depth, f.hearth),
            (low, f.depth, bend),
            (-low, f.depth, bend),
        ],
    )
    yield (
        "box rake",
        [
            (-low, f.depth, bend),
            (low, f.depth, bend),
            (high, f.throat_back, f.throat),
            (-high, f.throat_back, f.throat),
        ],
    )
    yield (
        "box floor",
        [
            (-f.half_width, 0.0, f.hearth),
            (f.half_width, 0.0, f.hearth),
            (low, f.depth, f.hearth),
            (-low, f.depth, f.hearth),
        ],
    )
    yield (
        "box dark",
        [
            (-high, f.throat_back, f.throat),
            (high, f.throat_back, f.throat),
            (front, f.throat_front, f.throat),
            (-front, f.throat_front, f.throat),
        ],
    )


def draw_inside(
    view: View, hidden: HiddenLines, geometry: Geometry, eye: Eye, hidden_by: list[np.ndarray]
) -> None:
    """Paint the firebox behind its opening. What stands before it hides its lines. [mm]"""
    sheet, f = view.sheet, geometry.frame
    opening = np.array(opening_ring(geometry), dtype=float)
    lit, rear = lit_ring(geometry, eye)
    bricks = geometry.facing_fire.material == "firebrick"
    sheet.fill([view.ring(opening)], "box dark", layer=-7)
    sheet.fill([view.ring(lit)], "box side", layer=-6)
    lines = []
    for layer, (tone, ring) in enumerate(faces(geometry)):
        seen = eye.see(ring)
        shown = np.array(
            overlap(seen.tolist(), (opening if tone == "box floor" else rear).tolist())
        )
        if len(shown) < 3 or (tone == "box dark" and eye.level >= f.throat):
            continue
        sheet.fill([view.ring(shown)], tone, layer=-5 + (layer > 0) + (layer > 1))
        if tone == "box dark" or (tone == "box rake" and not bricks):
            hidden.hatch(
                lines_in([view.ring(shown)], 90.0, 2.0 if tone == "box rake" else 0.45),
                behind=hidden_by,
            )
        lines += [(a, b) for a, b in zip(seen, np.roll(seen, -1, axis=0), strict=True)]
    head = np.stack([lit[2:-1], lit[3:]], 1)
    below = (
        head[:, :, 1].max(axis=1)
        < np.interp(head[:, :, 0].mean(axis=1), *_head(geometry)[::-1].T) - 1e-6
    )

    def behind_opening(segments: np.ndarray) -> tuple[np.ndarray, list[np.ndarray]]:
        """On paper, and the ring they are seen in; as long as no underside is seen that is convex,
        and held against at once.
        """
        if below.any():
            return view.ring(segments), [view.ring(lit)]
        return view.ring(kept_within(segments, opening)), []

    edges, within = behind_opening(np.array(lines))
    hidden.lines(edges, "fine", within, hidden_by)
    hidden.lines(view.ring(head[below]), "fine", behind=hidden_by)
    joints = [eye.see(_over(spots, f.hearth)) for spots in _joints(geometry)]
    if joints:
        hidden.hatch(*behind_opening(np.concatenate(joints)), hidden_by)


def _over(segments: np.ndarray, level: float) -> np.ndarray:
    """What of some segments lies on a level or over it, (k, 2, 3): the lining goes down to the
    slab, behind the paving. [m]
    """
    z = segments[:, :, 2]
    shown = z.max(axis=1) >= level - 1e-9
    kept, z = segments[shown], z[shown]
    share = np.clip((level - z) / np.where(z[:, ::-1] == z, 1.0, z[:, ::-1] - z), 0.0, 1.0)
    above: Array = kept + np.where(z < level, share, 0.0)[:, :, None] * (kept[:, ::-1] - kept)
    return above


def _joints(geometry: Geometry) -> Iterator[np.ndarray]:
    """Every brick of the lining and the floor, or the joints between refractory sections, (k, 2,
    3). [m]
    """
    f = geometry.frame
    work = lay_brickwork(geometry)
    if work.floor is not None:
        edges = work.floor.edges
        yield np.concatenate([edges, np.full((len(edges), 2, 1), f.hearth)], 2)
    lining = geometry.facing_fire.material
    if lining == "steel":
        return
    if lining != "firebrick":
        yield from _sections(geometry)
        return
    splay, lean = hypot(1.0, f.side_slope), hypot(1.0, f.lean)
    for layout in work.lining:
        u, v = layout.edges[:, :, 0], layout.edges[:, :, 1]
        if layout.face.name == "back":
            yield np.stack([u, np.full_like(u, f.depth), v], 2)
        elif layout.face.name == "raked back":
            z = f.back_bend + v / lean
            yield np.stack([u, f.depth - f.lean * (z - f.back_bend), z], 2)
        else:
            right = np.stack([f.half_width - f.side_slope * u / splay, u / splay, v], 2)
            yield right
            yield right * (-1.0, 1.0, 1.0)


def _sections(geometry: Geometry) -> Iterator[np.ndarray]:
    f = geometry.frame
    for z in section_joints(geometry):
        y = f.back_at(z)
        half = f.half_at(y)
        yield np.array(
            [
                [(-half, y, z), (half, y, z)],
                [(half, y, z), (f.half_width, 0.0, z)],
                [(-half, y, z), (-f.half_width, 0.0, z)],
            ]
        )
