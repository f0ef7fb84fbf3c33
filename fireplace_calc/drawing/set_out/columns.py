"""Strings of heights with their names, columns of words, and words in a window of a hatch: what
stands beside and in the figures of a sheet. Everything in mm on paper.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.dimensions import TICK, dimension_string
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet, spread

PITCH, ROW = 3.9, 3.6
"""From one text of a string of heights to the next, from one row of a note to the next. [mm]"""
REACH = 4.4
"""From a string of heights to its texts, from the end of a note's leader to its knee. [mm]"""
AIR = 0.8
"""Between a text and a line. [mm]"""
_ROUND = np.stack([np.cos(np.linspace(0, 2 * np.pi, 17)), np.sin(np.linspace(0, 2 * np.pi, 17))], 1)

_BETWEEN = re.compile(r"(?<!\d) | (?!\d)")
"""Where a row may end: not between whole inches and their fraction, not within a grouped number."""

Word = tuple[Pair, str]
"""Where a note points, and what it says."""


def heights(
    sheet: Sheet,
    stops: Sequence[float],
    texts: Sequence[str],
    line: float,
    side: int,
    feet: Sequence[float],
    limits: tuple[float, float],
) -> None:
    """A string from bottom to top, its texts level beside it, spread apart where they crowd.

    Parameters
    ----------
    sheet : Sheet
    stops : sequence of float
        Places of the ticks, rising. [mm]
    texts : sequence of str
        One for each gap; an empty one leaves it without a figure.
    line : float
        Where the string stands. [mm]
    side : int
        1 for texts on the right, -1 for texts on the left.
    feet : sequence of float
        Where each extension line starts. [mm]
    limits : tuple of float
        Lowest and highest place of the texts. [mm]
    """
    gaps = [
        (low, high, text) for low, high, text in zip(stops, stops[1:], texts, strict=False) if text
    ]
    with dimension_string(sheet, stops, line, "y", feet):
        for low, high, _ in gaps:
            sheet.line([(line, low - 1.0), (line, high + 1.0)], "dimension", "dimension")
        ends = {stop for low, high, _ in gaps for stop in (low, high)}
        for stop, foot in zip(stops, feet, strict=True):
            if stop not in ends:
                continue
            tick = TICK * 0.7
            sheet.line(
                [(line - tick, stop - tick), (line + tick, stop + tick)], "flag", "dimension"
            )
            sheet.line([(foot, stop), (line + side * 0.8, stop)], "dimension", "dimension")
        middles = [(low + high) / 2 for low, high, _ in gaps]
        x, ha = line + side * REACH, "left" if side > 0 else "right"
        places = spread(middles, [PITCH] * len(gaps), *limits)
        for (_, _, text), middle, at in zip(gaps, middles, places, strict=True):
            sheet.line([(line, middle), (x - side * AIR, at)], "dimension", "dimension")
            sheet.text(x, at, text, size=SMALL, ha=ha, va="middle", ink="dimension")


def heights_width(texts: Sequence[str]) -> float:
    """Room beside the line of a string of heights. [mm]"""
    return REACH + max((width(text, SMALL) for text in texts), default=0.0)


def fits(places: Sequence[float], texts: Sequence[str], k: float) -> bool:
    """Whether every text of a string fits its gap.

    Parameters
    ----------
    places : sequence of float
        Stops. [m]
    texts : sequence of str
    k : float
        Paper to a metre. [mm/m]
    """
    return all(
        not text or width(text, SMALL) + 3.2 <= (high - low) * k
        for (low, high), text in zip(pairwise(places), texts, strict=True)
    )


def fits_within(places: Sequence[float], texts: Sequence[str], k: float) -> bool:
    """Whether every text but those of the ends fits its gap: these may stand beyond the ends. [m],
    [mm/m]
    """
    return len(texts) < 3 or fits(places[1:-1], texts[1:-1], k)


def row_words(items: Sequence[Word], room: float) -> list[tuple[Pair, list[str]]]:
    """Notes in rows no wider than there is room. [mm]"""
    return [(tip, rows_of(text, room)) for tip, text in items]


def rows_of(text: str, room: float) -> list[str]:
    """Words in rows no wider than there is room; a figure stays in one piece. [mm]

    >>> rows_of("bears 2 5/8 in on it", 20.0)
    ['bears 2 5/8', 'in on it']
    """
    rows: list[str] = []
    for word in _BETWEEN.split(text):
        if rows and width(f"{rows[-1]} {word}", SMALL) <= room:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return rows


def words_width(items: Sequence[tuple[Pair, list[str]]]) -> float:
    """Room beside a drawing for a column of notes with their leaders. [mm]"""
    return REACH + max((width(row, SMALL) for _, rows in items for row in rows), default=0.0)


def words(
    sheet: Sheet,
    items: Sequence[tuple[Pair, list[str]]],
    x: float,
    side: int,
    limits: tuple[float, float],
) -> list[str]:
    """A column of notes; each leader breaks once and ends in a dot.

    Parameters
    ----------
    sheet : Sheet
    items : sequence of tuple
        What each points at [mm], and its rows; what may be left out last.
    x : float
        Where the texts begin (``side`` 1) or end (``side`` -1). [mm]
    side : int
    limits : tuple of float
        Lowest and highest edge of the column. [mm]

    Returns
    -------
    list of str
        What found no room.
    """

    def room(rows: list[str]) -> float:
        return len(rows) * ROW + 1.2

    kept, lost = list(items), []
    while kept and sum(room(rows) for _, rows in kept) > limits[1] - limits[0]:
        lost.append(" ".join(kept.pop()[1]))
    kept.sort(key=lambda item: (item[0][1], item[0][0]))
    places = spread([tip[1] for tip, _ in kept], [room(rows) for _, rows in kept], *limits)
    for (tip, rows), at in zip(kept, places, strict=True):
        knee, end = x - side * (REACH - 1.0), x - side * AIR
        sheet.line([tip, (knee, at), (end, at)], "dimension")
        sheet.fill([_ROUND * 0.45 + tip], "ink", layer=9)
        for n, row in enumerate(rows):
            y = at + ((len(rows) - 1) / 2 - n) * ROW
            sheet.text(x, y, row, size=SMALL, ha="left" if side > 0 else "right", va="middle")
    return lost[::-1]


def windowed(sheet: Sheet, ring: Array, rows: Sequence[str], material: str) -> bool:
    """Write words into a broad cut, the hatch left out round them.

    Parameters
    ----------
    sheet : Sheet
    ring : array (n, 2)
        The cut; convex. [mm]
    rows : sequence of str
    material : str
        Of its hatch.

    Returns
    -------
    bool
        Whether there was room for them.
    """
    half = max(width(row, SMALL) for row in rows) / 2 + 1.2
    tall = len(rows) * ROW / 2 + 0.9
    (left, low), (right, high) = ring.min(axis=0), ring.max(axis=0)
    if right - left < 2 * half + 0.4 or high - low < 2 * tall + 0.4:
        return False
    start, end = segments(sheet)
    for up in (0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2):
        for along in (0.5, 0.35, 0.65, 0.2, 0.8):
            x = left + half + 0.2 + along * (right - left - 2 * half - 0.4)
            y = low + tall + 0.2 + up * (high - low - 2 * tall - 0.4)
            box = np.array([[x - half, y - tall, x + half, y + tall]])
            if not passes(start, end, box).any() and not _over_text(sheet, box[0]):
                a, b, c, d = box[0]
                sheet.hatched[material].append(np.array([(a, b), (c, b), (c, d), (a, d)]))
                for n, row in enumerate(rows):
                    up_by = ((len(rows) - 1) / 2 - n) * ROW
                    sheet.text(x, y + up_by, row, size=SMALL, va="middle")
                return True
    return False


def segments(sheet: Sheet) -> tuple[Array, Array]:
    """From and to of every line and course line of a sheet, (k, 2) each. [mm]"""
    lines = [line for drawn in sheet.lines.values() for line in drawn]
    starts = [line[:-1] for line in lines] + [made[:, 0] for made in sheet.hatches]
    ends = [line[1:] for line in lines] + [made[:, 1] for made in sheet.hatches]
    if not starts:
        return np.empty((0, 2)), np.empty((0, 2))
    return np.concatenate(starts), np.concatenate(ends)


def clear_of_text(sheet: Sheet, start: Pair, end: Pair) -> bool:
    """Whether a line would keep clear of every text that stands there already. [mm]"""
    boxes = np.array([label.extent for label in sheet.labels]).reshape(-1, 4)
    boxes = boxes + (-AIR, -AIR, AIR, AIR)
    return not passes(np.array([start]), np.array([end]), boxes).any()


def _over_text(sheet: Sheet, box: Array) -> bool:
    return any(
        box[0] < right and left < box[2] and box[1] < top and bottom < box[3]
        for left, bottom, right, top in (label.extent for label in sheet.labels)
    )
