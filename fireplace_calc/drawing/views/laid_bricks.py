"""The brick layout on the views: floor in plan, back and sides from the front, a side in the
section.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

import numpy as np

from fireplace_calc.brickwork import Layout, lay_brickwork
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon, box


def kept_within(segments: np.ndarray, ring: np.ndarray) -> np.ndarray:
    """What of some segments lies inside a convex ring.

    Parameters
    ----------
    segments : array, (k, 2, 2)
        In any unit.
    ring : array, (n, 2)
        Convex, either way round.

    Returns
    -------
    array, (m, 2, 2)
        In the same unit.
    """
    here = np.asarray(ring, dtype=float)
    along = np.roll(here, -1, axis=0) - here
    turn = np.sign(
        (
            np.roll(here, -1, axis=0)[:, 0] * here[:, 1]
            - here[:, 0] * np.roll(here, -1, axis=0)[:, 1]
        ).sum()
    )
    inward = np.stack([along[:, 1], -along[:, 0]], 1) * turn
    start = segments @ inward.T - (inward * here).sum(axis=1)
    first, last = start[:, 0], start[:, 1]
    fall = first - last
    with np.errstate(divide="ignore", invalid="ignore"):
        t = first / fall
    enter = np.where(
        (first < 0) & (last >= 0), t, np.where((first < 0) & (last < 0), 2.0, 0.0)
    ).max(axis=1)
    leave = np.where((first >= 0) & (last < 0), t, 1.0).min(axis=1)
    good = leave - enter > 1e-9
    a, way = segments[good, 0], segments[good, 1] - segments[good, 0]
    return np.stack([a + way * enter[good, None], a + way * leave[good, None]], 1)


def floor_lines(view: View, geometry: Geometry) -> None:
    """Every brick of the floor, in plan."""
    floor = lay_brickwork(geometry).floor
    if floor is not None:
        view.sheet.hatches.append(_placed(view, floor.edges))


def front_lines(view: View, geometry: Geometry, opening: np.ndarray) -> None:
    """Every brick of the lining that is seen through the opening, the sides foreshortened by their
    splay.
    """
    for edges in from_the_room(geometry, (opening - (view.x0, view.y0)) / view.scale):
        view.sheet.hatches.append(_placed(view, edges))


def from_the_room(geometry: Geometry, opening: np.ndarray) -> Iterator[np.ndarray]:
    """Every brick of the lining as it shows through the opening, face by face, (k, 2, 2). [m]"""
    for layout in lay_brickwork(geometry).lining:
        for edges in _as_seen_from_the_room(layout, geometry):
            yield kept_within(edges, opening)


def section_lines(view: View, geometry: Geometry, window: Polygon | None = None) -> None:
    """Every brick of the side beyond the cut, over the floor or within a window. [m]"""
    f = geometry.frame
    over = box(-1.0, 9.0, f.hearth, 99.0) if window is None else window
    for layout in lay_brickwork(geometry).lining:
        if layout.face.name == "side":
            edges = layout.edges / (hypot(1.0, f.side_slope), 1.0) + (f.lining_front, 0.0)
            view.sheet.hatches.append(_placed(view, kept_within(edges, np.array(over))))


def _as_seen_from_the_room(layout: Layout, geometry: Geometry) -> Iterator[np.ndarray]:
    f, edges = geometry.frame, layout.edges
    if layout.face.name == "back":
        yield edges
    elif layout.face.name == "raked back":
        yield edges / (1.0, hypot(1.0, f.lean)) + (0.0, f.back_bend)
    else:
        slant = f.side_slope / hypot(1.0, f.side_slope)
        right = np.stack([f.half_width - slant * edges[:, :, 0], edges[:, :, 1]], 2)
        yield right
        yield right * (-1.0, 1.0)


def _placed(view: View, edges: np.ndarray) -> np.ndarray:
    return edges * view.scale + (view.x0, view.y0)
