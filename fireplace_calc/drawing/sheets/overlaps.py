"""Labels that overlap, or that a line crosses."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.drawing.sheets.lettering import outline
from fireplace_calc.drawing.sheets.sheet import Label, Sheet
from fireplace_calc.drawing.sheets.style import SMALL

SIGNS = 1.0
"""Fills on a layer from here on are arrows, dots and discs of marks. [-]"""


def collisions(sheet: Sheet, clear: float = 0.0) -> list[str]:
    """What a draughtsman would send back: letters over letters, lines or hatching, anything off the
    paper.

    Parameters
    ----------
    sheet : Sheet
    clear : float
        Least air between a letter and any line, hatch, arrow or mark; with nought only what is
        crossed counts, and arrows and marks are not looked at. [mm]

    Returns
    -------
    list of str
        One sentence each; empty when the sheet is clean.
    """
    found = []
    labels, boxes = sheet.labels, np.array([n.extent for n in sheet.labels]).reshape(-1, 4)
    for label, (left, bottom, right, top) in zip(labels, boxes, strict=True):
        if left < 0 or bottom < 0 or right > sheet.width or top > sheet.height:
            found.append(f"text {label.text!r} leaves the sheet")
        if label.size < SMALL - 1e-9:
            found.append(f"text {label.text!r} is smaller than {SMALL} mm")
    low, high = boxes[:, None, :2], boxes[None, :, 2:] - 0.05
    over = ((low < high) & (low.swapaxes(0, 1) < high.swapaxes(0, 1))).all(axis=2)
    found += [
        f"text {labels[i].text!r} lies over text {labels[k].text!r}"
        for i, k in np.argwhere(np.triu(over, 1))
    ]
    inner = boxes + (0.1, 0.1, -0.1, -0.1)
    if clear > 0:
        inner = np.array([_tight(label, clear) for label in labels]).reshape(-1, 4)
        found += _at_signs(sheet, inner)
    found += _lines_at_fault(sheet, inner)
    hatching = sheet.fine_lines()
    crossed = passes(hatching[:, 0], hatching[:, 1], inner).any(axis=0)
    return found + [
        f"text {labels[k].text!r} lies across hatching" for k in np.flatnonzero(crossed)
    ]


def _lines_at_fault(sheet: Sheet, boxes: Array) -> list[str]:
    """Lines that leave the sheet or pass through a box, in the order they were drawn."""
    weights = [weight for (weight, _), lines in sheet.lines.items() for _ in lines]
    if not weights:
        return []
    drawn = [line for lines in sheet.lines.values() for line in lines]
    points, line = _points(drawn)
    edge = np.array((sheet.width, sheet.height)) + 0.01
    outside = line[((points < -0.01) | (points > edge)).any(axis=1)]
    faults = [(k, -1, f"a {weights[k]} line leaves the sheet") for k in set(outside.tolist())]
    for k, n in _crossed(points, line, boxes):
        text = sheet.labels[n].text
        faults.append((k, n, f"text {text!r} lies across a {weights[k]} line"))
    return [said for _, _, said in sorted(faults)]


def _points(drawn: list[Array]) -> tuple[Array, IntArray]:
    """Points of all lines after each other, and which line each is of."""
    return np.concatenate(drawn), np.repeat(np.arange(len(drawn)), list(map(len, drawn)))


def _crossed(points: Array, line: IntArray, boxes: Array) -> set[tuple[int, int]]:
    """Which lines pass through which boxes."""
    joined = line[:-1] == line[1:]
    segment, box = np.nonzero(passes(points[:-1][joined], points[1:][joined], boxes))
    return set(zip(line[:-1][joined][segment].tolist(), box.tolist(), strict=True))


def passes(start: Array, end: Array, boxes: Array) -> BoolArray:
    """Which segments pass through which boxes, by clipping (Liang and Barsky) of those that come
    near at all.

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
    low, high = np.minimum(start, end)[:, None], np.maximum(start, end)[:, None]
    found: BoolArray = np.all((low <= boxes[:, 2:]) & (high >= boxes[:, :2]), axis=2)
    segment, box = np.nonzero(found)
    a, d, zone = start[segment], (end - start)[segment], boxes[box]
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = (zone[:, :2] - a) / d, (zone[:, 2:] - a) / d
    still = d == 0  # such a one is near, so it runs within the box on that axis
    enter = np.where(still, -np.inf, np.minimum(one, other)).max(axis=1)
    leave = np.where(still, np.inf, np.maximum(one, other)).min(axis=1)
    found[segment, box] = np.maximum(enter, 0.0) < np.minimum(leave, 1.0)
    return found


def _tight(label: Label, clear: float) -> tuple[float, float, float, float]:
    """Box of a text with air round it; under its base line as far as its letters reach there."""
    left, bottom, right, top = label.extent
    points = outline(label.text, label.bold)[0]
    spare = (0.22 + min(points[:, 1].min(initial=0.0), 0.0)) * label.size
    if label.turned:
        right -= spare
    else:
        bottom += spare
    air = clear - 0.02  # what is set at just so much is not too near
    return left - air, bottom - air, right + air, top + air


def _at_signs(sheet: Sheet, boxes: Array) -> list[str]:
    """Arrows, dots and discs of marks that a text or somebody else's line comes across."""
    signs = [
        (tone, np.min(ring, axis=0), np.max(ring, axis=0))
        for (layer, tone), polygons in sheet.fills.items()
        if layer >= SIGNS and tone in ("ink", "paper", "soft")
        for ring, *_ in polygons
    ]
    if not signs:
        return []
    tones, lows, highs = (np.array(each) for each in zip(*signs, strict=True))
    paper = tones == "paper"

    def free(low: Array, high: Array) -> BoolArray:
        """Whether things belong to no mark: they do not lie within its disc."""
        inside = (low[:, None] > lows[paper] - 0.2) & (high[:, None] < highs[paper] + 0.2)
        apart: BoolArray = ~inside.all(axis=2).any(axis=1)
        return apart

    at = np.array([(label.x, label.y) for label in sheet.labels]).reshape(-1, 2)
    over = (boxes[:, None, :2] < highs).all(axis=2) & (boxes[:, None, 2:] > lows).all(axis=2)
    over &= free(at, at)[:, None]
    middle, reach = (lows + highs) / 2, (highs - lows) * 0.3
    ruled = np.flatnonzero(paper | (reach[:, 0] > 0.4))
    cores = np.concatenate([middle - reach, middle + reach], axis=1)[ruled]
    drawn = [line for lines in sheet.lines.values() for line in lines]
    through = [0] * len(signs)
    for k, n in _crossed(*_points(drawn), cores) if drawn else ():
        low, high, sign = np.min(drawn[k], axis=0), np.max(drawn[k], axis=0), ruled[n]
        sticks_out = (low < lows[sign]).any() or (high > highs[sign]).any()
        through[sign] += bool(sticks_out and free(low[None], high[None])[0])
    found = []
    for n in range(len(signs)):
        found += [
            f"text {sheet.labels[k].text!r} lies over a mark or an arrow"
            for k in np.flatnonzero(over[:, n])
        ]
        found += ["a line runs through a mark or an arrow"] * through[n]
    return found
