"""Arrows with their numbers, or with what was measured, each where nothing else is. [mm]"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from math import cos, hypot, pi, sin

import numpy as np

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES, draw_lines
from fireplace_calc.drawing.survey.spans_inside import INSIDE
from fireplace_calc.drawing.survey.spans_outside import OUTSIDE
from fireplace_calc.drawing.views.layout import fit, title
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.survey.asked.entry import SurveyEntry
from fireplace_calc.survey.asked.walk import NUMBER

BUBBLE, HEAD, AIR = 2.9, 1.7, 0.5
"""Radius round a number, length of an arrow's head, air round a word. [mm]"""
SCALES = (5, 6, 8, *range(10, 40, 2), *range(40, 100, 5), *range(100, 525, 25))
AWAY = (3.6, 5.0, 7.0, 9.5, 12.5, 16.0, 20.0, 25.0, 31.0, 38.0)
"""How far a number may stand from its arrow, the nearer the better. [mm]"""
ALONG = (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95)
TURNS = 16
SPANS = {**INSIDE, **OUTSIDE}
"""By the key of the entry, where its arrows run."""
Box = tuple[float, float, float, float]
Says = Callable[[SurveyEntry, str], str]
"""What stands at an arrow, from its entry and the name of its reading; nothing leaves it out."""


@dataclass
class _Arrow:
    start: Pair
    end: Pair
    text: str
    round: bool
    size: float


@dataclass
class _Taken:
    """What is on the sheet already: segments, and boxes of words. [mm]"""

    segments: np.ndarray
    boxes: list[tuple[float, float, float, float]] = field(default_factory=list)

    def crossings(self, box: tuple[float, float, float, float]) -> int:
        """How many lines pass through a box."""
        return int(_cross(self.segments, box).sum())

    def free(self, box: tuple[float, float, float, float]) -> bool:
        """Whether no word lies there."""
        return all(
            box[2] < b[0] or b[2] < box[0] or box[3] < b[1] or b[3] < box[1] for b in self.boxes
        )


def number_of(entry: SurveyEntry, reading: str) -> str:
    """The number at an arrow: of the entry, with a letter where readings have arrows of their own.

    Parameters
    ----------
    entry : SurveyEntry
    reading : str
        Its name; nothing where one arrow does for all.
    """
    letter = "abcd"[entry.readings.index(reading)] if reading else ""
    return f"{NUMBER[entry.key]}{letter}"


def arrow_sketch(
    sheet: Sheet,
    cell: Cell,
    name: str,
    geometry: Geometry,
    entries: Iterable[SurveyEntry],
    says: Says = number_of,
    under: Geometry | None = None,
    size: float = SMALL,
) -> View:
    """Draw a sketch into a cell, with an arrow for every entry that has its place on it.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    name : str
        Of ``SKETCHES``.
    geometry : Geometry
    entries : iterable of SurveyEntry
        Whose arrows are drawn.
    says : callable
        What stands at each arrow.
    under : Geometry or None
        Another one, in broken lines under it.
    size : float
        Of the letters at the arrows. [mm]
    """
    sketch = SKETCHES[name]
    window = sketch.window(geometry)
    if under is not None:
        window = _round_both(window, sketch.window(under))
    view, _ = fit(sheet, cell, window, (13, 12, 13, 6), SCALES)
    before = len(sheet.labels)
    if under is not None:
        draw_lines(view, name, under, window, "hidden")
    draw_lines(view, name, geometry, window)
    title(sheet, cell, f"{sketch.letter}  {sketch.title}")
    arrows = list(_arrows(view, name, geometry, entries, says, window, size))
    for arrow in arrows:
        _draw_arrow(sheet, arrow)
    taken = _Taken(_segments(sheet), [n.extent for n in sheet.labels[before:]])
    # Short arrows have the fewest places for their number.
    for arrow in sorted(arrows, key=_length):
        _put_number(sheet, cell, arrow, taken)
    return view


def _round_both(a: Box, b: Box) -> Box:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3])


def _arrows(
    view: View,
    name: str,
    geometry: Geometry,
    entries: Iterable[SurveyEntry],
    says: Says,
    window: Box,
    size: float,
) -> Iterator[_Arrow]:
    for entry in entries:
        for where, hold in SPANS.get(entry.key, ()):
            if where != name:
                continue
            spans = hold(geometry)
            for n, (start, end) in enumerate(spans):
                reading = entry.readings[n] if len(spans) > 1 else ""
                text = says(entry, reading)
                a, b = _inside(start, window), _inside(end, window)
                if text and hypot(b[0] - a[0], b[1] - a[1]) > 0:
                    yield _Arrow(view.at(*a), view.at(*b), text, says is number_of, size)


def _inside(point: Pair, window: Box) -> Pair:
    """A point, moved to the edge of what is shown where it lies beyond. [m]"""
    x, y = point
    return min(max(x, window[0]), window[2]), min(max(y, window[1]), window[3])


def _length(arrow: _Arrow) -> float:
    return hypot(arrow.end[0] - arrow.start[0], arrow.end[1] - arrow.start[1])


def _draw_arrow(sheet: Sheet, arrow: _Arrow) -> None:
    """A line with a head at both ends; heads point inward from outside where it is short. What has
    no length on the paper has a number alone.
    """
    if not (long := _length(arrow)):
        return
    (x0, y0), (x1, y1) = arrow.start, arrow.end
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    short = long < 3 * HEAD
    if short:
        sheet.line([(x0 - ux * 4, y0 - uy * 4), (x0, y0)], "flag")
        sheet.line([(x1, y1), (x1 + ux * 4, y1 + uy * 4)], "flag")
    else:
        sheet.line([arrow.start, arrow.end], "flag")
    for (x, y), way in ((arrow.start, -1.0 if short else 1.0), (arrow.end, 1.0 if short else -1.0)):
        for turn in (0.42, -0.42):
            c, s = cos(turn), sin(turn)
            hx, hy = way * (ux * c - uy * s) * HEAD, way * (ux * s + uy * c) * HEAD
            sheet.line([(x, y), (x + hx, y + hy)], "flag")


def _segments(sheet: Sheet) -> np.ndarray:
    found = [
        np.stack([line[:-1], line[1:]], axis=1)
        for lines in sheet.lines.values()
        for line in lines
        if len(line) > 1
    ]
    return np.concatenate(found) if found else np.empty((0, 2, 2))


def _cross(segments: np.ndarray, box: Box) -> np.ndarray:
    """Which segments pass through a box."""
    return passes(segments[:, 0], segments[:, 1], np.array([box]))[:, 0]


def _places(arrow: _Arrow) -> Iterator[tuple[float, Pair, Pair]]:
    """Where a number may stand: how far off, its middle, and where on the arrow it is led to."""
    (x0, y0), (x1, y1) = arrow.start, arrow.end
    long = _length(arrow) or 1.0
    nx, ny = -(y1 - y0) / long, (x1 - x0) / long
    for away in AWAY:
        for t in ALONG:
            foot = (x0 + t * (x1 - x0), y0 + t * (y1 - y0))
            for side in (1.0, -1.0):
                yield away, (foot[0] + side * nx * away, foot[1] + side * ny * away), foot
        foot = ((x0 + x1) / 2, (y0 + y1) / 2)
        for k in range(TURNS):
            turn = 2 * pi * (k + 0.5) / TURNS
            yield away + 1.0, (foot[0] + cos(turn) * away, foot[1] + sin(turn) * away), foot


def _put_number(sheet: Sheet, cell: Cell, arrow: _Arrow, taken: _Taken) -> None:
    """Write a number at the best free place, and lead to it from the arrow where it is far."""
    size = arrow.size
    wide = lettering.width(arrow.text, size, True)
    half = wide / 2 + AIR, 0.72 * size + AIR
    if arrow.round:
        half = wide / 2 + 1.4, BUBBLE * size / SMALL
    best: tuple[float, Pair, Pair] | None = None
    for away, (x, y), foot in _places(arrow):
        if best is not None and away >= best[0]:
            break
        box = (x - half[0], y - half[1], x + half[0], y + half[1])
        inner = (x - wide / 2 - 0.3, y - size * 0.75, x + wide / 2 + 0.3, y + size * 0.75)
        outside = (
            box[0] < cell.left
            or box[2] > cell.right
            or box[1] < cell.bottom + 7.0
            or box[3] > cell.top
        )
        if outside or not taken.free(box) or taken.crossings(inner):
            continue
        lead = np.array([[_edge((x, y), foot, half), foot]])
        if any(_cross(lead, other).any() for other in taken.boxes):
            continue
        cost = away + 1.5 * taken.crossings(box)
        if best is None or cost < best[0]:
            best = (cost, (x, y), foot)
    if best is not None:  # the list beside the sketch has it all
        _write_number(sheet, arrow, best[1], best[2], half, taken)


def _edge(middle: Pair, foot: Pair, half: Pair) -> Pair:
    """Where a leader leaves the number; at its foot where that is no farther."""
    dx, dy = foot[0] - middle[0], foot[1] - middle[1]
    far = hypot(dx, dy) or 1.0
    reach = min(half[0] / abs(dx / far) if dx else far, half[1] / abs(dy / far) if dy else far, far)
    return middle[0] + dx / far * reach, middle[1] + dy / far * reach


def _pill(x: float, y: float, half: Pair) -> list[Pair]:
    """A line round a number, its ends round."""
    out = max(half[0] - half[1], 0.0)
    turns = [(k - 6) * pi / 12 for k in range(13)]
    right = [(x + out + half[1] * cos(t), y + half[1] * sin(t)) for t in turns]
    left = [(x - out - half[1] * cos(t), y - half[1] * sin(t)) for t in turns]
    return [*right, *left, right[0]]


def _write_number(
    sheet: Sheet, arrow: _Arrow, middle: Pair, foot: Pair, half: Pair, taken: _Taken
) -> None:
    x, y = middle
    label = sheet.text(x, y, arrow.text, size=arrow.size, va="middle", bold=True)
    if arrow.round:
        sheet.line(_pill(x, y, half), "fine")
    edge = _edge(middle, foot, half)
    new = []
    if hypot(edge[0] - foot[0], edge[1] - foot[1]) > 1.2:
        sheet.line([edge, foot], "fine")
        new.append([edge, foot])
    left, bottom, right, top = label.extent
    taken.boxes.append(
        (x - half[0], y - half[1], x + half[0], y + half[1])
        if arrow.round
        else (left - AIR, bottom - AIR, right + AIR, top + AIR)
    )
    if new:
        taken.segments = np.concatenate([taken.segments, np.array(new)])
