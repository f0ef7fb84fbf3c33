"""Outlines of the letters on a drawing, read from a file, so that a first picture asks no font.

``python -m fireplace_calc.drawing.page.glyphs`` writes the file anew from the font.
"""

from __future__ import annotations

import json
from functools import cache
from itertools import chain
from pathlib import Path
from typing import Any

import numpy as np

CAP = 0.73
"""Height of a capital over the size of the font. [-]"""
GRAIN = 1000
"""Steps to the height of a capital. [-]"""
FAMILY = "DejaVu Sans"
FILE = Path(__file__).with_name("glyphs.json")
LETTERS = "".join(map(chr, range(32, 127))) + "°±²³µ·¼½¾×÷é–—’”′″⁄⅐⅛⅜⅝⅞−√☐✓✗"
"""Every letter the file holds; another one is taken from the font when it is written."""
_FINE = 32.0
"""Dots to the height of a capital, when the curves of a letter are made into chords that keep
within a part of a dot. [-]
"""

Glyph = list[Any]
"""How far the next letter stands, then each ring as x, y, x, y. [1/1000 of a capital's height]"""


@cache
def glyph_table() -> dict[str, Glyph]:
    """Every letter's outline, as the page is told it.

    Returns
    -------
    dict
        By weight and letter, ``rA`` plain and ``bA`` bold. [1/1000 of a capital's height]
    """
    table: dict[str, Glyph] = json.loads(FILE.read_text(encoding="utf-8"))
    return table


@cache
def glyph(letter: str, bold: bool) -> Glyph:
    """Outline of one letter; one that the file does not hold is taken from the font."""
    return glyph_table().get(glyph_key(letter, bold)) or glyph_of_font(letter, bold)


def glyph_key(letter: str, bold: bool) -> str:
    """Name of a letter in the table."""
    return ("b" if bold else "r") + letter


def glyph_of_font(letter: str, bold: bool) -> Glyph:
    """Outline of one letter, asked of the font itself."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.path import Path as Outline
    from matplotlib.textpath import TextPath

    prop = FontProperties(family=FAMILY, weight="bold" if bold else "normal")

    def drawn(text: str) -> Any:
        return TextPath((0, 0), text, size=1.0 / CAP, prop=prop)

    # a space has no outline: what stands behind it tells how wide it is
    wide = drawn(f"|{letter}|").vertices[:, 0].max() - drawn("||").vertices[:, 0].max()
    made: Glyph = [round(GRAIN * float(wide))]
    if letter.isspace():
        return made
    shape = drawn(letter)
    rings = Outline(shape.vertices * _FINE, shape.codes).to_polygons()
    made += [
        np.rint(np.asarray(ring) / _FINE * GRAIN).astype(int).ravel().tolist() for ring in rings
    ]
    return made


def written() -> str:
    """The file, as the font of this machine gives it."""
    every = {
        glyph_key(letter, bold): glyph_of_font(letter, bold)
        for bold, letter in chain.from_iterable(
            ((bold, letter) for letter in LETTERS) for bold in (False, True)
        )
    }
    rows = (
        f"{json.dumps(name)}:{json.dumps(g, separators=(',', ':'))}" for name, g in every.items()
    )
    return "{" + ",\n".join(rows) + "}\n"


if __name__ == "__main__":
    FILE.write_text(written(), encoding="utf-8")
