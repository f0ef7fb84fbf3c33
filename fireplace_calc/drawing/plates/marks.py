"""Signs of a composed sheet: section marks, marks of details, titles, center and cutting lines.

A mark names a figure and the sheet it stands on. The number of that sheet is not known while a
sheet is drawn; ``on_sheet`` writes a place for it, which ``numbered`` fills in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet

SMALL, MIDDLE, LARGE = 2.5, 3.5, 5.0
"""Letters of a sheet: figures and notes, titles and marks, the job. ISO 3098, from memory. [mm]"""
RING = 4.6
"""Radius of the ring round a mark. [mm]"""
TITLE_ROOM = 11.0
"""Height of a title with its mark and scale. [mm]"""
_PENDING = "\x01"
_TURN = np.linspace(0.0, 2 * np.pi, 49)
_CIRCLE = np.stack([np.cos(_TURN), np.sin(_TURN)], 1)


def on_sheet(key: str) -> str:
    """A place for the number of the sheet on which a figure stands."""
    return _PENDING + key


def numbered(sheet: Sheet, numbers: Mapping[str, str]) -> None:
    """Fill in the numbers of sheets, by the keys of the figures on them.

    A figure that is on no sheet of the set leaves its place empty.
    """
    sheet.labels[:] = [
        replace(label, text=numbers.get(label.text[1:], ""))
        if label.text.startswith(_PENDING)
        else label
        for label in sheet.labels
    ]


def ring(sheet: Sheet, at: Pair, radius: float, weight: str = "seen") -> None:
    """A circle. [mm]"""
    sheet.line(_CIRCLE * radius + at, weight)


def mark(sheet: Sheet, at: Pair, name: str, key: str = "") -> None:
    """A ring with a figure's mark; with its key, the number of its sheet stands in the lower half.

    Parameters
    ----------
    sheet : Sheet
    at : float, float
        Middle of the ring. [mm]
    name : str
        The mark: a letter for a section or plan, a number for anything else.
    key : str
        Of the figure, where the mark sends the reader to it.
    """
    x, y = at
    sheet.fill([_CIRCLE * RING + at], "paper", layer=4)
    ring(sheet, at, RING)
    if not key:
        size = MIDDLE if len(name) == 1 else SMALL
        sheet.text(x, y, name, size=size, va="middle", bold=True)
        return
    sheet.line([(x - RING, y), (x + RING, y)], "fine")
    sheet.text(x, y + 0.8, name, size=SMALL, bold=True)
    sheet.text(x, y - 0.8, on_sheet(key), size=SMALL, va="top")


def section_mark(sheet: Sheet, at: Pair, name: str, way: Pair, key: str = "") -> None:
    """The mark of a cut, with a black arrow the way one looks.

    Parameters
    ----------
    sheet : Sheet
    at : float, float
        Middle of the ring. [mm]
    name : str
    way : float, float
        Which way one looks on the paper: one of (1, 0), (-1, 0), (0, 1), (0, -1).
    key : str
        Of the figure that shows the cut.
    """
    across = np.array((-way[1], way[0])) * RING * 1.0
    along = np.array(way)
    tip = np.asarray(at) + along * RING * 1.75
    base = np.asarray(at) + along * RING * 0.35
    sheet.fill([np.array([tip, base + across, base - across])], "ink", layer=3)
    mark(sheet, at, name, key)


def title(sheet: Sheet, at: Pair, name: str, text: str, scale: str = "", note: str = "") -> None:
    """A figure's title: its mark in a ring, its name over a line, scale and note under it.

    Parameters
    ----------
    sheet : Sheet
    at : float, float
        Left end, ``TITLE_ROOM`` below whatever stands over it. [mm]
    name : str
        The mark; empty for none.
    text, scale, note : str
    """
    x, y = at[0], at[1] + 5.4
    if name:
        mark(sheet, (x + RING, y), name)
        x += 2 * RING + 2.0
    below = ", ".join(filter(None, (scale, note)))
    wide = max(width(text, MIDDLE, True), width(below, SMALL)) + 2.0
    sheet.text(x, y + 1.9, text, size=MIDDLE, ha="left", bold=True)
    sheet.line([(x, y), (x + wide, y)], "seen")
    if below:
        sheet.text(x, y - 1.4, below, size=SMALL, ha="left", va="top")


def title_width(name: str, text: str, scale: str = "", note: str = "") -> float:
    """Width that such a title takes. [mm]"""
    below = ", ".join(filter(None, (scale, note)))
    wide = max(width(text, MIDDLE, True), width(below, SMALL)) + 2.0
    return wide + (2 * RING + 2.0 if name else 0.0)


def center_line(sheet: Sheet, start: Pair, end: Pair) -> None:
    """A long and short broken line. [mm]"""
    sheet.line([start, end], "center")


def cutting_plane(sheet: Sheet, start: Pair, end: Pair) -> None:
    """Where a section or plan is cut. [mm]"""
    sheet.line([start, end], "plane")
