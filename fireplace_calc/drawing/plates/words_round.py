"""A figure with words in a column beside it, dimension strings under and beside it: all of it
outside of what is drawn, so that no text stands on a line at any scale.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.dimensions import NOTE, chain, room_for
from fireplace_calc.drawing.sheets.lettering import in_rows, width
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet, View, spread
from fireplace_calc.drawing.views.layout import apart, length

WIDTHS = (30.0, 36.0, 42.0, 50.0, 60.0)
"""Of a column of notes: the narrowest in which they stand no higher than the drawing. [mm]"""
KNEE, TO_TEXT, AIR = 3.4, 1.0, 2.4
"""Level stretch of a leader, from it to the text, and from the knee to the drawing. [mm]"""
FIRST, ONE, TWO = 7.4, 2.0, 10.4
"""From the drawing to a string, and what it takes beyond its line, with one row of texts and with a
second for those that are wider than their gap. [mm]
"""
TIGHT = 3.3
"""What a text needs of its gap beside itself, or it stands in the second row. [mm]"""
Point = tuple[float, float]
Note = tuple[Point, str]
"""Where it points, and its words. [m]"""
_DOT = np.stack([np.cos(a := np.linspace(0, 2 * np.pi, 17)), np.sin(a)], 1) * 0.45


@dataclass(frozen=True, slots=True)
class Sizes:
    """One string of dimensions.

    Attributes
    ----------
    stops : tuple of float
        Places along it; those that fall together are one. [m]
    foot : float
        Where its extension lines begin, across. [m]
    name : str
        What it measures, where there is room.
    plain : tuple of int
        Gaps without a figure, by their number: what stands on another sheet. Of a string with them
        no stops fall together.
    """

    stops: tuple[float, ...]
    foot: float
    name: str = ""
    plain: tuple[int, ...] = ()


def callouts(
    sheet: Sheet,
    items: Sequence[tuple[Pair, Sequence[str]]],
    x: float,
    side: int,
    limits: tuple[float, float],
) -> None:
    """A column of notes with leaders that break once and end in a dot; no two leaders cross.

    Parameters
    ----------
    sheet : Sheet
    items : sequence of (point, rows)
        What each points at [mm], and its rows of text.
    x : float
        Inner edge of the column. [mm]
    side : int
        -1 for a column at the left of the drawing, 1 for one at its right.
    limits : float, float
        Lowest and highest place. [mm]
    """
    column = sorted(items, key=lambda item: item[0][1])
    knee = x - side * (TO_TEXT + KNEE)
    for _ in range(len(column) ** 2):
        heights = [_height(len(rows)) for _, rows in column]
        places = spread([tip[1] for tip, _ in column], heights, *limits)
        knees = [
            (knee, at + SMALL * NOTE * (len(rows) - 1) / 2)
            for at, (_, rows) in zip(places, column, strict=True)
        ]
        wrong = next(
            (
                n
                for n in range(len(column) - 1)
                if _cross(knees[n], column[n][0], knees[n + 1], column[n + 1][0])
            ),
            None,
        )
        if wrong is None:
            break
        column[wrong : wrong + 2] = column[wrong : wrong + 2][::-1]
    for (tip, rows), (_, y) in zip(column, knees if column else [], strict=True):
        sheet.line([(x - side * TO_TEXT, y), (knee, y), tip], "dimension", "soft")
        sheet.fill([_DOT + tip], "ink", layer=9)
        for k, row in enumerate(rows):
            at = y - k * SMALL * NOTE
            sheet.text(x, at, row, size=SMALL, ha="left" if side > 0 else "right", va="middle")


def _height(rows: int) -> float:
    return SMALL * (NOTE * (rows - 1) + 1.7)


def _cross(a: Pair, b: Pair, c: Pair, d: Pair) -> bool:
    """Whether two stretches cross."""

    def turn(p: Pair, q: Pair, r: Pair) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


def annotated(
    key: str,
    box: Extent,
    draw: Callable[[View], None],
    units: str,
    scales: Sequence[float],
    left: Sequence[Note] = (),
    right: Sequence[Note] = (),
    below: Sequence[Sizes] = (),
    beside: Sequence[Sizes] = (),
    above: Sequence[Sizes] = (),
    note: str = "",
    edge: float = 3.0,
    strings_left: bool = False,
) -> Figure:
    """A figure that writes round itself.

    Parameters
    ----------
    key : str
        Of ``MARKED``.
    box : Extent
        What ``draw`` keeps within. [m]
    draw : callable
    units : str
    scales : sequence of float
        Denominators, the largest scale first. [-]
    left, right : sequence of Note
        Columns of notes.
    below, above, beside : sequence of Sizes
        Strings under it, over it, and upright at its right, the nearest first; beside them no
        notes stand at the right.
    note : str
        After the scale.
    edge : float
        Room on a side with nothing on it, for break lines and ends of center lines. [mm]
    strings_left : bool
        Upright strings stand at the left, and notes at the right alone.

    Returns
    -------
    Figure
    """
    strings = [[s for s in side if len(apart([*s.stops])) > 1] for side in (below, beside, above)]

    def written(drawn: float) -> list[list[tuple[Point, list[str]]]]:
        return [_rows(side, drawn) for side in (left, right)]

    def wanting(drawn: float) -> float:
        """How much higher than the drawing the notes beside it stand. [mm]"""
        columns = [sum(_height(len(told)) for _, told in side) for side in written(drawn)]
        return max(0.0, max(columns) - drawn)

    def room(denominator: float) -> Extent:
        k = 1000 / denominator
        low, beyond, high = (_lines(side, units, k)[-1] if side else edge for side in strings)
        drawn = (box[3] - box[1]) * k
        rows = written(drawn)
        margins = [
            room_for(row for _, told in side for row in told) + KNEE + TO_TEXT + AIR + 0.5
            if side
            else edge
            for side in rows
        ]
        more = wanting(drawn)
        # beside strings no leader may begin, so what notes need more stands at the other end, or
        # between the drawing and what is strung under it
        over, under = (more / 2, more / 2)
        if strings[0] or strings[2]:
            over, under = (0.0, more) if strings[2] else (more, 0.0)
        if strings[0]:
            low += under
        at_left, at_right = margins
        if strings_left:
            at_left = max(at_left, beyond)
        else:
            at_right = max(at_right, beyond)
        return at_left, max(low, under), at_right, max(high, over)

    def paint(view: View) -> None:
        draw(view)
        (x0, y0), (x1, y1) = view.at(box[0], box[1]), view.at(box[2], box[3])
        _, under, _, over = room(1000 / view.scale)
        drop = wanting(y1 - y0) if strings[0] and strings[2] else 0.0
        limits = (y0 - drop if strings[0] else y0 - under, y1 if strings[2] else y1 + over)
        rows = written(y1 - y0)
        placed = [[(view.at(*tip), told) for tip, told in side] for side in rows]
        callouts(view.sheet, placed[0], x0 - AIR - KNEE - TO_TEXT, -1, limits)
        callouts(view.sheet, placed[1], x1 + AIR + KNEE + TO_TEXT, 1, limits)
        k, (low, beside_it, high) = view.scale, strings
        for string, far in zip(low, _lines(low, units, k), strict=False):
            _string(view, string, units, y0 - drop - far, "x", -1, (x0 - 2, x1 + 2))
        for string, far in zip(beside_it, _lines(beside_it, units, k), strict=False):
            at, side = (x0 - far, -1) if strings_left else (x1 + far, 1)
            _string(view, string, units, at, "y", side, (y0 - 2, y1 + 2))
        for string, far in zip(high, _lines(high, units, k), strict=False):
            _string(view, string, units, y1 + far, "x", 1, (x0 - 2, x1 + 2))

    mark, name = marked(key)
    return Figure(key, mark, name, box, room, paint, tuple(scales), note)


def _rows(notes: Sequence[Note], high: float) -> list[tuple[Point, list[str]]]:
    """Notes in rows of the narrowest column that is not higher than that. [mm]"""
    made: list[tuple[Point, list[str]]] = []
    for wide in WIDTHS:
        made = [(tip, _split(text, wide)) for tip, text in notes]
        if sum(_height(len(rows)) for _, rows in made) <= high:
            break
    return made


def _split(text: str, wide: float) -> list[str]:
    """A note in rows; a tape fraction stays with its inches. [mm]"""
    whole = re.sub(r"(\d) (\d+/\d+)", "\\1\u00a0\\2", text)
    return [row.replace("\u00a0", " ") for row in in_rows(whole, wide, SMALL)]


def _lines(strings: Sequence[Sizes], units: str, k: float) -> list[float]:
    """How far from the drawing each string runs, and last where the room they take ends. [mm]"""
    at, made = 0.0, []
    for string in strings:
        stops, texts = _told(string, units)
        gaps = zip(texts, pairwise(stops), strict=True)
        two = any(text and width(text, SMALL) + TIGHT > (b - a) * k for text, (a, b) in gaps)
        made.append(at + FIRST)
        at += FIRST + (TWO if two else ONE)
    return [*made, at]


def _told(string: Sizes, units: str) -> tuple[list[float], list[str]]:
    """Stops of a string [m], and what is written between them."""
    stops = [*string.stops] if string.plain else apart([*string.stops])
    gaps = pairwise(stops)
    return stops, [
        "" if n in string.plain else length(b - a, units) for n, (a, b) in enumerate(gaps)
    ]


def _string(
    view: View,
    string: Sizes,
    units: str,
    line: float,
    along: str,
    side: int,
    limits: tuple[float, float],
) -> None:
    stops, texts = _told(string, units)
    upright = along == "y"
    foot = view.at(string.foot, 0)[0] if upright else view.at(0, string.foot)[1]
    chain(
        view.sheet,
        [view.at(0, s)[1] if upright else view.at(s, 0)[0] for s in stops],
        texts,
        line,
        along=along,
        side=side,
        limits=limits,
        feet=[foot] * len(stops),
        name=string.name,
        composed=True,
    )
