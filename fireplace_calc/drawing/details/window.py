"""A window of the section at a large scale: what lies in it, and where the thing goes on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from fireplace_calc.drawing.plates.figure import Extent
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.cuts import cut_parts
from fireplace_calc.drawing.views.laid_bricks import kept_within
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Point, Polygon, box, chords, overlap
from fireplace_calc.pieces.roles import PARTS

Cuts = list[tuple[Part, list[Polygon]]]
BETWEEN = 0.03
"""Material no farther apart than this shares a break line. [m]"""


def window_cuts(geometry: Geometry, window: Extent) -> Cuts:
    """What of every part's section lies in a window.

    Parameters
    ----------
    geometry : Geometry
    window : Extent
        Front, bottom, back, top. [m]
    """
    zone = box(window[0], window[2], window[1], window[3])
    found = [
        (part, [tuple(c) for q in part.section() if len(c := overlap(q, zone)) > 2])
        for part in geometry.parts
    ]
    return [(part, rings) for part, rings in found if rings]


def draw_window(
    view: View,
    geometry: Geometry,
    window: Extent,
    extra: Iterable[tuple[Part, Sequence[Sequence[Point]]]] = (),
) -> None:
    """Draw what the section cuts in a window, joints of a set with it, and break lines where it
    goes on.

    Parameters
    ----------
    view : View
    geometry : Geometry
    window : Extent
        Front, bottom, back, top. [m]
    extra : iterable of Part and rings
        What else is cut.
    """
    cuts = window_cuts(geometry, window)
    cut_parts(view, [*cuts, *extra], window[1], window[3], sides=(window[0], window[2]))
    _set_beds(view, geometry, cuts, window)
    breaks(view, [ring for _, rings in cuts for ring in rings], window)


def _set_beds(view: View, geometry: Geometry, cuts: Cuts, window: Extent) -> None:
    """Beds between the pieces of a set."""
    levels = [z for bed in geometry.frame.beds for z in bed if window[1] < z < window[3]]
    for part, rings in cuts:
        if part.name not in PARTS or part.name == "flue casing":
            continue
        for ring in rings:
            turned = tuple((z, y) for y, z in ring)
            for z in levels:
                for front, back in chords(turned, z):
                    view.path([(front, z), (back, z)], "fine")


def breaks(view: View, rings: Iterable[Polygon], window: Extent) -> None:
    """Break lines along the sides of a window that cut material meets.

    Parameters
    ----------
    view : View
    rings : iterable of Polygon
        What is cut. [m]
    window : Extent
        Left, bottom, right, top. [m]
    """
    told = list(rings)
    for side, place in ((1, window[1]), (1, window[3]), (0, window[0]), (0, window[2])):
        spans = sorted(
            tuple(sorted((a[1 - side], b[1 - side])))
            for ring in told
            for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)
            if abs(a[side] - place) < 1e-6 and abs(b[side] - place) < 1e-6
        )
        merged: list[list[float]] = []
        for low, high in spans:
            if merged and low - merged[-1][1] < BETWEEN:
                merged[-1][1] = max(merged[-1][1], high)
            elif high - low > 1e-6:
                merged.append([low, high])
        for low, high in merged:
            ends = [(low, place), (high, place)] if side else [(place, low), (place, high)]
            zigzag(view, *ends)


def zigzag(view: View, start: Point, end: Point) -> None:
    """A break line between two places, a little longer than what is broken off."""
    a, b = np.array(view.at(*start)), np.array(view.at(*end))
    long = float(np.hypot(*(b - a)))
    along = (b - a) / long
    across = np.array((-along[1], along[0]))
    middle = (a + b) / 2
    step = min(1.5, long / 4)
    view.sheet.line(
        [
            a - along * 1.2,
            middle - along * step,
            middle - along * step / 3 + across * step,
            middle + along * step / 3 - across * step,
            middle + along * step,
            b + along * 1.2,
        ],
        "fine",
    )


def clipped(view: View, lines: Iterable[Sequence[Point]], window: Extent, weight: str) -> None:
    """Draw what of some lines lies in a window. [m]"""
    pieces = [(a, b) for line in lines for a, b in zip(line, line[1:], strict=False)]
    zone = np.array(box(window[0], window[2], window[1], window[3]))
    for a, b in kept_within(np.array(pieces, dtype=float).reshape(-1, 2, 2), zone):
        view.path([tuple(a), tuple(b)], weight)
