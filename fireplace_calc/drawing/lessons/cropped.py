"""A sheet cut off at its own edges, for a picture that shows part of a larger drawing."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.survey.rings import clipped


def crop(sheet: Sheet) -> None:
    """Cut off all lines and areas that leave a sheet; labels stay."""
    window = (0.0, 0.0, sheet.width, sheet.height)
    for pen, lines in list(sheet.lines.items()):
        sheet.lines[pen] = [
            np.array(run)
            for line in lines
            for run in clipped([(float(x), float(y)) for x, y in line], window)
        ]
    for tone, polygons in list(sheet.fills.items()):
        kept = [[_ring_inside(ring, window) for ring in rings] for rings in polygons]
        sheet.fills[tone] = [
            [ring for ring in rings if len(ring) > 2] for rings in kept if len(rings[0]) > 2
        ]
        if not sheet.fills[tone]:
            del sheet.fills[tone]


def _ring_inside(ring: Array, window: tuple[float, float, float, float]) -> Array:
    """What of a polygon lies in a window, side by side (Sutherland and Hodgman)."""
    points = [np.asarray(point, dtype=float) for point in ring]
    for axis, limit, sign in (
        (0, window[0], 1.0),
        (1, window[1], 1.0),
        (0, window[2], -1.0),
        (1, window[3], -1.0),
    ):
        made = []
        for k, point in enumerate(points):
            before = points[k - 1]
            inside, was = sign * (point[axis] - limit) >= 0, sign * (before[axis] - limit) >= 0
            if inside != was:
                share = (limit - before[axis]) / (point[axis] - before[axis])
                made.append(before + share * (point - before))
            if inside:
                made.append(point)
        points = made
    return np.array(points).reshape(-1, 2)
