"""Proportion guides laid over the face: broken lines, each named at the side with what it says of
the design.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Cell, View, spread
from fireplace_calc.drawing.sheets.style import SMALL, TEXT
from fireplace_calc.drawing.views.laid_bricks import kept_within
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.proportion import Guide

COLUMN = 70.0
"""Room for the names with what they say. [mm]"""
ROW, GAP = 3.9, 1.9
"""From line to line of a text, and between two guides. [mm]"""
HEAD = "Guides, not rules"
DOT = 0.5 * np.array([(np.cos(a), np.sin(a)) for a in np.arange(12) * np.pi / 6])
"""At the tip of a leader. [mm]"""


def guide_room(cell: Cell, guides: Sequence[Guide], words: bool) -> float:
    """Room the guides take at the right of a view. [mm]"""
    names = [lettering.width(guide.name, SMALL, bold=True) for guide in guides]
    return (COLUMN if words else max(names)) + 9.0 if guides else 4.0


def wrapped(text: str, wide: float, size: float = SMALL) -> list[str]:
    """A text in lines no wider than so much.

    Parameters
    ----------
    text : str
    wide, size : float
        Of a line, and height of its letters. [mm]

    Returns
    -------
    list of str
        One a line.

    Examples
    --------
    >>> wrapped("guide, not a rule", 22.0)
    ['guide, not a', 'rule']
    """
    whole = re.sub(r"(?<=\d) (?=\d{3}\b|%|mm\b|m\b|ft\b|in\b)", "\u00a0", text)
    return lettering.in_rows(whole, wide, size)


def overlay(view: View, guides: Sequence[Guide], window: Polygon, cell: Cell, words: bool) -> None:
    """Draw guides and name them.

    Parameters
    ----------
    view : View
    guides : sequence of Guide
        Those that are switched on.
    window : Polygon
        What the picture shows. [m]
    cell : Cell
        Of the view. [mm]
    words : bool
        Whether there is room for what they say beside their names.
    """
    if not guides:
        return
    frame = view.ring(window)
    right, bottom, top = frame[:, 0].max(), cell.bottom + 13.0, cell.top - 3.0
    tips: list[np.ndarray | None] = []
    for guide in guides:
        runs = [pair for line in guide.lines for pair in pairwise(line)]
        drawn = np.array(runs).reshape(-1, 2, 2) * view.scale + (view.x0, view.y0)
        if runs and ((drawn < frame.min(axis=0)) | (drawn > frame.max(axis=0))).any():
            drawn = kept_within(drawn, frame)
        for piece in drawn:
            view.sheet.line(piece, "guide", "guide")
        ends = drawn.reshape(-1, 2)
        tips.append(
            ends[np.lexsort((ends[:, 1], np.round(ends[:, 0], 6)))[-1]] if len(ends) else None
        )
    x = right + 7.0
    view.sheet.text(x, top - TEXT, HEAD, size=TEXT, ha="left", bold=True, ink="guide")
    levels = [bottom if tip is None else float(tip[1]) for tip in tips]
    order = sorted(range(len(guides)), key=levels.__getitem__)
    blocks = _blocks([guides[k] for k in order], top - TEXT - 3.0 - bottom, words)
    sizes = [len(block) * ROW + GAP for block in blocks]
    wanted = [levels[k] + ROW / 2 - size / 2 for k, size in zip(order, sizes, strict=True)]
    for k, block, size, middle in zip(
        order, blocks, sizes, spread(wanted, sizes, bottom, top - TEXT - 3.0), strict=True
    ):
        first = middle + size / 2 - GAP / 2 - ROW / 2
        tip = tips[k]
        if tip is not None:
            view.sheet.fill([DOT + tip], "guide", layer=9)
            view.sheet.line(
                [(tip[0], tip[1]), (right + 1.5, first), (x - 0.8, first)], "dimension", "guide"
            )
        for row, text in enumerate(block):
            ink = "guide" if row == 0 else "ink"
            view.sheet.text(
                x,
                first - row * ROW,
                text,
                size=SMALL,
                ha="left",
                va="middle",
                bold=row == 0,
                ink=ink,
            )


def _blocks(guides: Sequence[Guide], high: float, words: bool) -> list[list[str]]:
    """Name, what it says and its source; without the sources, or with the names alone, where there
    is no room for more.
    """
    names = [
        [guide.name + (", from memory" if guide.source.confidence == "memory" else "")]
        for guide in guides
    ]
    if not words:
        return [[guide.name] for guide in guides]
    says = [
        [*name, *wrapped(guide.sentence, COLUMN)] for name, guide in zip(names, guides, strict=True)
    ]
    known = [
        [*block, *wrapped(f"Source: {guide.source.text}; {guide.source.confidence}.", COLUMN)]
        for block, guide in zip(says, guides, strict=True)
    ]
    return next(
        (blocks for blocks in (known, says) if sum(len(b) * ROW + GAP for b in blocks) <= high),
        names,
    )
