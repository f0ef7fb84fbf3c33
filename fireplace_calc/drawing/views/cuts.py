"""What lies in the cut plane: hatched, heavy against air, thin where two materials meet."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import cos, inf, pi, sin
from typing import Any

import numpy as np

from fireplace_calc.base.tables.bars import reinforcing_bar
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Point, Polygon, chords
from fireplace_calc.pieces.roles import PARTS

EVEN = 2e-3
"""Places nearer than this are one. [mm]"""
NARROW = 1.0
"""What is narrower, air or material, is edged with the thinner pen, or it would fill up. [mm]"""
SOLID = frozenset({"steel"})
"""Materials so thin in a section that they are filled, not hatched."""

Run = list[Any]
"""Of one straight line: from, to [mm], weight, whether the solid lies on its left; its end and its
weight may still change.
"""
Edge = tuple[float, float, bool, str, bool]
"""Of a part: from and to along its straight line [mm], whether the solid lies on its left, the
material, whether it is thin.
"""


def lintel_bars(view: View, geometry: Geometry) -> None:
    """Bars of a lintel in reinforced masonry, as dots where they are told; else nothing."""
    lintel, f = geometry.design.lintel, geometry.frame
    if lintel.material != "reinforced masonry" or f.spring < f.opening_top:
        return
    if lintel.bars is None or lintel.bar is None or lintel.bar_center is None:
        return
    round_it = [(cos(k * pi / 8), sin(k * pi / 8)) for k in range(16)]
    radius, z = reinforcing_bar(lintel.bar).diameter / 2, f.opening_top + lintel.bar_center
    for n in range(lintel.bars):
        y = f.breast * (n + 0.5) / lintel.bars
        dot = view.ring([(y + radius * a, z + radius * b) for a, b in round_it])
        view.sheet.fill([dot], "steel", None)


def cut_parts(
    view: View,
    cuts: Iterable[tuple[Part, Sequence[Sequence[Point]]]],
    *stops: float,
    sides: Sequence[float] = (),
    holes: bool = False,
) -> None:
    """Draw parts in the cut plane.

    Edges that lie on one straight line are compared along it, so nothing is drawn twice and a joint
    inside one material is not drawn at all. Nothing is drawn along ``stops``, levels where an
    upright section breaks off, and ``sides``, where it ends left or right. [m] With ``holes``
    a ring that runs clockwise is a hole in the others of its part.
    """
    taken = [(part.material, list(polygons)) for part, polygons in cuts]
    named = [(material, polygon) for material, polygons in taken for polygon in polygons]
    if not named:
        return
    sizes = np.array([len(polygon) for _, polygon in named])
    points = view.ring([point for _, polygon in named for point in polygon])
    rings = iter(np.split(points, np.cumsum(sizes)[:-1]))
    for material, polygons in taken:
        own, hatch = [next(rings) for _ in polygons], None if material in SOLID else material
        for together in [own] if holes else [[ring] for ring in own]:
            view.sheet.fill(together, material, hatch)
    whole = [n for n, (_, polygons) in enumerate(taken) for _ in polygons] if holes else None
    lines = _edges(points, sizes, [material for material, _ in named], whole)
    ends = [(1.0, 0.0, view.at(0.0, stop)[1]) for stop in stops]
    ends += [(0.0, 1.0, -view.at(side, 0.0)[0]) for side in sides]
    found = [
        (key, run)
        for key, edges in lines.items()
        if not any(key[:2] == end[:2] and abs(key[2] - end[2]) < 0.011 for end in ends)
        for run in _runs(edges)
    ]
    for level in (False, True) if holes else (False,):
        _thinned(
            [
                (key[2] if level else -key[2], run)
                for key, run in found
                if key[1 if level else 0] == 0.0 and run[2] == "cut"
            ],
            -1 if level else 1,
        )
    for (ux, uy, away), (low, high, weight, _) in found:
        view.sheet.line([(ux * t - uy * away, uy * t + ux * away) for t in (low, high)], weight)


def _thinned(lines: list[tuple[float, Run]], way: int) -> None:
    """Give the thinner pen to what lies near what it faces, of lines that run one way. Each comes
    with its place across; ``way`` is 1 where the right of a line counts up, -1 where it counts
    down. [mm]
    """
    for x, run in lines:
        for other, facing in lines:
            if (
                0.0 < (other - x) * (way if run[3] else -way) < NARROW
                and run[3] != facing[3]
                and run[0] < facing[1]
                and facing[0] < run[1]
            ):
                run[2] = "seen"


def _edges(
    points: np.ndarray, sizes: np.ndarray, materials: list[str], whole: list[int] | None = None
) -> dict[tuple[float, float, float], list[Edge]]:
    """Edges of rings by the straight line they lie on: its direction, and how far it passes the
    origin. [mm] With the numbers of the parts they make up, a clockwise ring is a hole.
    """
    ends = np.cumsum(sizes)
    after = np.arange(1, len(points) + 1)
    after[ends - 1] = ends - sizes
    p, q = points, points[after]
    d = q - p
    long = np.hypot(d[:, 0], d[:, 1])
    twice = np.add.reduceat(p[:, 0] * q[:, 1] - q[:, 0] * p[:, 1], ends - sizes)
    round_it = np.add.reduceat(long, ends - sizes)
    if whole is None:
        thin = np.abs(twice) / round_it < NARROW
    else:
        thin = (np.abs(np.bincount(whole, twice)) / np.bincount(whole, round_it) < NARROW)[whole]
    with np.errstate(invalid="ignore", divide="ignore"):
        u = d / long[:, None]
    back = (u[:, 0] < -1e-6) | ((u[:, 0] < 1e-6) & (u[:, 1] < 0))
    left = np.repeat((twice > 0) | (whole is not None), sizes) ^ back
    u[back] *= -1
    away = u[:, 0] * p[:, 1] - u[:, 1] * p[:, 0]
    along = np.sort(
        np.round(np.stack([(u * p).sum(axis=1), (u * q).sum(axis=1)], axis=1), 3), axis=1
    )
    keys = np.column_stack([np.round(u, 4), np.round(away, 2)]) + 0.0
    real = np.nonzero(long > EVEN)[0].tolist()
    keys, along, left = keys.tolist(), along.tolist(), left.tolist()
    whose, thin = np.repeat(np.arange(len(sizes)), sizes).tolist(), thin.tolist()
    lines = defaultdict(list)
    for k in real:
        lines[tuple(keys[k])].append((*along[k], left[k], materials[whose[k]], thin[whose[k]]))
    return lines


def _runs(edges: list[Edge]) -> list[Run]:
    """What is drawn along one straight line."""
    runs: list[Run] = []
    for low, high in pairwise(sorted({t for edge in edges for t in edge[:2]})):
        here = [edge for edge in edges if edge[0] <= low + EVEN and edge[1] >= high - EVEN]
        if not here or high - low <= EVEN:
            continue
        sides, materials = {edge[2] for edge in here}, {edge[3] for edge in here}
        if len(sides) == 2 and len(materials) == 1:
            continue
        heavy = len(sides) == 1 and not materials <= SOLID and not all(edge[4] for edge in here)
        weight = "cut" if heavy else "seen"
        if runs and runs[-1][2:] == [weight, True in sides] and low - runs[-1][1] < EVEN:
            runs[-1][1] = high
        else:
            runs.append([low, high, weight, True in sides])
    return runs


def clip_top(polygon: Polygon, top: float) -> Polygon:
    """What of an upright polygon lies under a level; nothing of one that only touches it. [m]"""
    if max(z for _, z in polygon) <= top:
        return polygon
    kept: list[tuple[float, float]] = []
    for (ax, az), (bx, bz) in zip(polygon, [*polygon[1:], polygon[0]], strict=True):
        if az < top:
            kept.append((ax, az))
        if (az < top) != (bz < top):
            t = (top - az) / (bz - az)
            kept.append((ax + t * (bx - ax), top))
    return tuple(kept)


def set_joints(view: View, geometry: Geometry, top: float, bottom: float = -inf) -> None:
    """Bed joints of a set where the section cuts them, between two levels. [m]"""
    levels = [z for bed in geometry.frame.beds for z in bed]
    levels = [z for z in levels if bottom < z < top]
    if not levels:
        return
    for part in geometry.parts:
        if part.name not in PARTS or part.name == "flue casing":
            continue
        for polygon in part.section():
            turned = tuple((z, y) for y, z in polygon)
            for z in levels:
                for front, back in chords(turned, z):
                    view.path([(front, z), (back, z)], "fine")


def cut_upright(view: View, geometry: Geometry, top: float) -> None:
    """Draw the upright section on the center line up to a level, the mantel with it. [m]"""
    cuts = [(p, [c for q in p.section() if len(c := clip_top(q, top)) > 2]) for p in geometry.parts]
    cut_parts(view, [*cuts, *mantel_cuts(geometry, top)], top)


def mantel_cuts(geometry: Geometry, top: float) -> list[tuple[Part, list[Polygon]]]:
    """Every piece over the opening, as it is cut.

    Parameters
    ----------
    geometry : Geometry
    top : float
        Level at which the section breaks off. [m]

    Returns
    -------
    list of Part and list of Polygon
        [m]
    """
    ceiling = min(top, max(geometry.design.house.ceiling, geometry.frame.opening_top))
    found: list[tuple[Part, list[Polygon]]] = []
    for part in mantel_parts(geometry):
        rings = [
            ring
            for run in part.group.runs
            if run.bounds[0] < 0 < run.bounds[1] and run.bounds[2] > 0
            for ring in [clip_top(run.section, ceiling)]
            if len(ring) > 2
        ]
        if rings:
            found.append((Part(part.name, part.tone, ()), rings))
    return found


def mantel_reach(geometry: Geometry) -> float:
    """How far mantel and trim stand out over the opening; nought without any.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [m]
    """
    return max(
        (run.bounds[2] for part in mantel_parts(geometry) for run in part.group.runs),
        default=0.0,
    )
