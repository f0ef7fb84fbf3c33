"""Dimension strings, level marks, notes: the annotation a drawing is read by. Everything in mm on
paper.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from math import cos, pi, sin

import numpy as np

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import DimensionString, Sheet, spread
from fireplace_calc.drawing.sheets.style import SMALL, TEXT

NOTE = 1.4
"""Of one row of a note over the next, in heights of a letter. [-]"""
TICK, CLEAR, ROW = 1.1, 0.7, 4.4
"""Half length of a tick; air between a letter and a line; height of one row of a dimension string.
[mm]
"""


COMPOSED = 1.2
"""Air between a figure and its string on a composed sheet: a fraction's stroke goes down. [mm]"""
BASE = 1.6
"""From a leader to the base line of a text: a fraction's stroke goes down. [mm]"""


def chain(
    sheet: Sheet,
    stops: Sequence[float],
    texts: Sequence[str],
    line: float,
    along: str = "x",
    side: int = -1,
    limits: tuple[float, float] = (0.0, 1e3),
    feet: Sequence[float] | None = None,
    name: str = "",
    composed: bool = False,
    lost: list[str] | None = None,
) -> float:
    """Draw one dimension string; texts that are wider than their gap move to a second row with a
    leader.

    Parameters
    ----------
    sheet : Sheet
    stops : sequence of float
        Places of the ticks along the string, rising; one more than there are texts. [mm]
    texts : sequence of str
        One for each gap; an empty one leaves its gap without a figure.
    line : float
        Where the string runs, across its direction. [mm]
    along : str
        ``x`` for a string left to right, ``y`` for one bottom to top.
    side : int
        -1 when the object lies above (or right of) the string, +1 when it lies below (or left).
    limits : tuple of float
        How far second-row texts may spread. [mm]
    feet : sequence of float, optional
        Where each extension line starts, across; none are drawn without. [mm]
    name : str
        What it measures, written beyond its right end, else its left, where there is room.
    composed : bool
        For a composed sheet: all letters of one size, ``CLEAR`` from any line, and a text that does
        not fit an end's gap stands beyond that end where there is room.
    lost : list of str, optional
        Takes every text that found no place within the limits; without it they are written all the
        same.

    Returns
    -------
    float
        Room taken on the far side of the string, for the next one. [mm]
    """
    with dimension_string(sheet, stops, line, along, feet):
        return _string(sheet, stops, texts, line, along, side, limits, feet, name, composed, lost)


@contextmanager
def dimension_string(
    sheet: Sheet,
    stops: Sequence[float],
    line: float,
    along: str,
    feet: Sequence[float] | None = None,
) -> Iterator[None]:
    """What is drawn meanwhile is kept with the sheet as one dimension string.

    Parameters
    ----------
    sheet : Sheet
    stops : sequence of float
        As ``chain`` has it, and so are the others. [mm]
    line : float
        [mm]
    along : str
    feet : sequence of float, optional
        [mm]
    """
    before = {pen: len(lines) for pen, lines in sheet.lines.items()}
    first = len(sheet.labels)
    yield
    drawn = {
        pen: (before.get(pen, 0), len(lines))
        for pen, lines in sheet.lines.items()
        if len(lines) > before.get(pen, 0)
    }
    sheet.measured.append(
        DimensionString(
            tuple(stops), line, along, tuple(feet or ()), drawn, (first, len(sheet.labels))
        )
    )


def _string(
    sheet: Sheet,
    stops: Sequence[float],
    texts: Sequence[str],
    line: float,
    along: str,
    side: int,
    limits: tuple[float, float],
    feet: Sequence[float] | None,
    name: str,
    composed: bool,
    lost: list[str] | None,
) -> float:
    turned = along == "y"

    def put(a: float, b: float) -> tuple[float, float]:
        return (b, a) if turned else (a, b)

    sheet.line([put(stops[0] - 1.0, line), put(stops[-1] + 1.0, line)], "dimension", "dimension")
    for i, stop in enumerate(stops):
        sheet.line(
            [put(stop - TICK * 0.7, line - TICK * 0.7), put(stop + TICK * 0.7, line + TICK * 0.7)],
            "flag",
            "dimension",
        )
        if feet is not None:
            sheet.line(
                [put(stop, feet[i] + side * 0.8), put(stop, line + side * 0.8)],
                "dimension",
                "dimension",
            )
    outside: list[tuple[float, float, str]] = []
    ends, sizes = [stops[0], stops[-1]], (SMALL,) if composed else (TEXT, SMALL)
    air, edge = (COMPOSED, 3.2) if composed else (CLEAR, 2.0)
    for low, high, text in zip(stops, stops[1:], texts, strict=False):
        if high - low < 1e-6 or not text:
            continue
        size = next(
            (size for size in sizes if lettering.width(text, size) + edge <= high - low),
            None,
        )
        if size is None:
            outside.append((low, high, text))
            continue
        x, y = put((low + high) / 2, line - air if turned else line + air)
        sheet.text(x, y, text, size=size, turned=turned, ink="dimension")
    if (
        composed
        and not turned
        and all(ends[0] == low or ends[1] == high for low, high, _ in outside)
    ):
        outside = [gap for gap in outside if not _beyond(sheet, gap, ends, line, limits)]
    if outside:
        ends += _second_row(
            sheet,
            [((a + b) / 2, text) for a, b, text in outside],
            line,
            turned,
            side,
            limits,
            put,
            lost,
        )
    right, left = max(ends) + 2.5, min(ends) - 2.5
    long = lettering.width(name, SMALL)
    if name and right + long <= limits[1]:
        sheet.text(right, line, name, size=SMALL, ha="left", va="middle", ink="soft")
    elif name and left - long >= limits[0]:
        sheet.text(left, line, name, size=SMALL, ha="right", va="middle", ink="soft")
    return 2 * ROW + 1.0 if outside else ROW + 0.6


def _beyond(
    sheet: Sheet,
    gap: tuple[float, float, str],
    ends: list[float],
    line: float,
    limits: tuple[float, float],
) -> bool:
    """Whether the text of an end's gap was written beyond that end, on the line; only of a string
    left to right.
    """
    low, high, text = gap
    long = lettering.width(text, SMALL)
    for end, sign, ha in ((ends[0], -1, "right"), (ends[1], 1, "left")):
        at = end + sign * (1.0 + 1.1 * CLEAR)
        room = limits[0] <= at - long if sign < 0 else at + long <= limits[1]
        if end in (low, high) and end not in ends[2:] and room:
            sheet.text(at, line, text, size=SMALL, ha=ha, va="middle", ink="dimension")
            ends += [end, at + sign * long]
            return True
    return False


def _second_row(
    sheet: Sheet,
    outside: list[tuple[float, str]],
    line: float,
    turned: bool,
    side: int,
    limits: tuple[float, float],
    put: Callable[[float, float], tuple[float, float]],
    lost: list[str] | None,
) -> list[float]:
    """Texts that found no room between their ticks, each with a leader; gives where leaders end."""
    while lost is not None and outside:
        if sum(lettering.width(text, SMALL) + 1.6 for _, text in outside) <= limits[1] - limits[0]:
            break
        lost.append(outside.pop()[1])
    sizes = [lettering.width(text, SMALL) + 1.6 for _, text in outside]
    places = spread([m for m, _ in outside], sizes, *limits)
    row = line + side * (ROW + (CLEAR if turned else 0.0))
    near, far = line + side * 0.3, row + (SMALL + CLEAR if side < 0 else -BASE)
    if turned:
        far = row + (BASE if side < 0 else -SMALL - CLEAR)
    for (middle, text), at in zip(outside, places, strict=True):
        sheet.line([put(middle, near), put(at, far)], "dimension", "dimension")
        sheet.text(*put(at, row), text, size=SMALL, turned=turned, ink="dimension")
    return places


def room_for(texts: Iterable[str], size: float = SMALL, bold: bool = False) -> float:
    """Width of the widest of some texts. [mm]"""
    return max((lettering.width(text, size, bold) for text in texts), default=0.0)


def note(
    sheet: Sheet, tip: tuple[float, float], x: float, y: float, text: str, ha: str = "left"
) -> None:
    """A word with a leader to what it names; the tip gets a dot. Of several rows the leader comes
    to the first.
    """
    rows = text.split("\n")
    y += SMALL * NOTE * (len(rows) - 1) / 2
    end = x - 0.7 if ha == "left" else x + 0.7
    sheet.line([tip, (end, y)], "dimension", "soft")
    sheet.fill([_ROUND * 0.45 + tip], "soft", layer=9)
    for k, row in enumerate(rows):
        sheet.text(x, y - k * SMALL * NOTE, row, size=SMALL, ha=ha, va="middle", ink="ink")


def notes(
    sheet: Sheet,
    items: Sequence[tuple[tuple[float, float], str]],
    x: float,
    side: int = 1,
    limits: tuple[float, float] = (0.0, 1e3),
) -> None:
    """A column of notes, each beside what it names as nearly as the others allow. Items run bottom
    to top; a text may have several rows. [mm]
    """
    sizes = [SMALL * (NOTE * text.count("\n") + 1.6) for _, text in items]
    places = spread([tip[1] for tip, _ in items], sizes, *limits)
    for (tip, text), at in zip(items, places, strict=True):
        note(sheet, tip, x, at, text, "left" if side > 0 else "right")


_ROUND = np.array([(cos(i * pi / 12), sin(i * pi / 12)) for i in range(24)])
