"""Labels that overlap, or that a line crosses."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import BoolArray
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL


def collisions(sheet: Sheet) -> list[str]:
    """What a draughtsman would send back: letters over letters, lines or hatching, anything off the
    paper.

    Returns
    -------
    list of str
        One sentence each; empty when the sheet is clean.
    """
    found = []
    boxes = [label.extent for label in sheet.labels]
    for label, (left, bottom, right, top) in zip(sheet.labels, boxes, strict=True):
        if left < 0 or bottom < 0 or right > sheet.width or top > sheet.height:
            found.append(f"text {label.text!r} leaves the sheet")
        if label.size < SMALL - 1e-9:
            found.append(f"text {label.text!r} is smaller than {SMALL} mm")
    for i, (label, a) in enumerate(zip(sheet.labels, boxes, strict=True)):
        for other, b in zip(sheet.labels[i + 1 :], boxes[i + 1 :], strict=True):
            if (
                a[0] < b[2] - 0.05
                and b[0] < a[2] - 0.05
                and a[1] < b[3] - 0.05
                and b[1] < a[3] - 0.05
            ):
                found.append(f"text {label.text!r} lies over text {other.text!r}")
    inner = np.array([(b[0] + 0.1, b[1] + 0.1, b[2] - 0.1, b[3] - 0.1) for b in boxes]).reshape(
        -1, 4
    )
    for (weight, _), polylines in sheet.lines.items():
        for line in polylines:
            if (
                line[:, 0].min() < -0.01
                or line[:, 1].min() < -0.01
                or line[:, 0].max() > sheet.width + 0.01
                or line[:, 1].max() > sheet.height + 0.01
            ):
                found.append(f"a {weight} line leaves the sheet")
            found += [
                f"text {sheet.labels[k].text!r} lies across a {weight} line"
                for k in np.nonzero(_crossed(line, inner).any(axis=0))[0]
            ]
    hatching = sheet.fine_lines()
    return found + [
        f"text {sheet.labels[k].text!r} lies across hatching"
        for k in np.nonzero(passes(hatching[:, 0], hatching[:, 1], inner).any(axis=0))[0]
    ]


def _crossed(line: np.ndarray, boxes: np.ndarray) -> np.ndarray:
    """Which segments of a polyline pass through which boxes."""
    return passes(line[:-1], line[1:], boxes)


def passes(start: np.ndarray, end: np.ndarray, boxes: np.ndarray) -> np.ndarray:
    """Which segments pass through which boxes, by clipping (Liang and Barsky).

    Parameters
    ----------
    start, end : array (k, 2)
        Of the segments. [mm]
    boxes : array (n, 4)
        Left, bottom, right, top. [mm]

    Returns
    -------
    array (k, n) of bool
    """
    a, d = start[:, None, :], (end - start)[:, None, :]
    with np.errstate(divide="ignore", invalid="ignore"):
        low, high = (boxes[None, :, :2] - a) / d, (boxes[None, :, 2:] - a) / d
    still = d == 0
    inside = (a >= boxes[None, :, :2]) & (a <= boxes[None, :, 2:])
    enter = np.where(still, np.where(inside, -np.inf, np.inf), np.minimum(low, high))
    leave = np.where(still, np.where(inside, np.inf, -np.inf), np.maximum(low, high))
    crossed: BoolArray = np.maximum(enter.max(axis=2), 0.0) < np.minimum(leave.min(axis=2), 1.0)
    return crossed
