"""A sheet as the page is sent it: pens and labels to read, points as 16-bit numbers."""

from __future__ import annotations

from typing import Any

import numpy as np
from matplotlib.path import Path

from fireplace_calc.drawing.page.glyphs import glyph, glyph_key, glyph_table
from fireplace_calc.drawing.page.page_renderer import CAPS, FINE, Drawn
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.ink_layers import layers
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES

FARTHEST = 2**15 - 1
"""Largest number of 16 bits with a sign. [-]"""


def page_message(sheet: Sheet, theme: str, cell: Cell) -> tuple[dict[str, Any], bytes]:
    """What ``painting.js`` draws one cell of a sheet from.

    Parameters
    ----------
    sheet : Sheet
    theme : str
        ``light``, ``dark`` or ``print``.
    cell : Cell
        What the page's canvas shows of the sheet. [mm]

    Returns
    -------
    dict
        ``box``: left, bottom, width and height of the cell [mm]; ``labels``: place [mm], text,
        height [mm], turned, bold, ink; ``pens`` as in ``Drawn``; ``count`` of points; ``grain``:
        steps to a millimeter [1/mm]; ``glyphs``: letters that the page's table lacks.
    bytes
        Points, then the lengths of their runs.
    """
    box = [cell.left, cell.bottom, cell.right - cell.left, cell.top - cell.bottom]
    return packed_drawing(drawn_sheet(sheet, theme), box)


def drawn_sheet(sheet: Sheet, theme: str) -> Drawn:
    """What a Figure of the sheet hands to a page, without the Figure: a moving hand waits for it.

    Parameters
    ----------
    sheet : Sheet
    theme : str
        ``light``, ``dark`` or ``print``.
    """
    inks, drawn = THEMES[theme], Drawn()
    for layer in layers(sheet, inks, letters=False):
        dashes = [round(length, 3) for length in layer.dashes] if layer.dashes else None
        ends = CAPS[layer.cap]
        pen = [layer.face, layer.edge, round(layer.width, 3), dashes, ends, layer.crisp, None]
        codes: Any = layer.path.codes
        drawn.add(pen, np.asarray(layer.path.vertices), np.flatnonzero(codes == Path.MOVETO))
    for n in sheet.labels:
        x, y = lettering.base(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold)
        ink = getattr(inks, n.ink)
        drawn.labels.append(
            [round(x, 2), round(y, 2), n.text, round(n.size, 3), n.turned, n.bold, ink]
        )
    return drawn


def packed_drawing(drawn: Drawn, box: list[float]) -> tuple[dict[str, Any], bytes]:
    """What was drawn, packed for the page.

    Parameters
    ----------
    drawn : Drawn
    box : list of float
        Left, bottom, width and height of what the page's canvas shows. [mm]

    Returns
    -------
    dict, bytes
        As ``page_message`` gives them.
    """
    points = np.concatenate([np.empty((0, 2)), *drawn.points]) - box[:2]
    runs = np.concatenate([np.empty(0), *drawn.runs])
    farthest, grain = float(np.abs(points).max(initial=0.0)), FINE
    while farthest * grain > FARTHEST:
        grain //= 2
    told = {
        "box": [round(side, 3) for side in box],
        "grain": grain,
        "pens": drawn.pens,
        "count": len(points),
        "labels": drawn.labels,
    }
    table = glyph_table()
    if lacking := {(letter, n[5]) for n in drawn.labels for letter in n[2]} - _KNOWN:
        _KNOWN.update(one for one in lacking if glyph_key(*one) in table)
        if more := {glyph_key(*one): glyph(*one) for one in lacking - _KNOWN}:
            told["glyphs"] = more
    return told, np.rint(points * grain).astype("<i2").tobytes() + runs.astype("<u2").tobytes()


_KNOWN: set[tuple[str, bool]] = set()
"""Letters and weights that were found in the table."""
