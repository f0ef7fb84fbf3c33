"""Letters as outlines, measured and cached, so that a label costs no layout when the picture is
drawn again.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from functools import lru_cache
from itertools import accumulate

import numpy as np
from matplotlib.path import Path

from fireplace_calc.drawing.page.glyphs import CAP, GRAIN, glyph


@lru_cache(maxsize=512)
def _glyph(letter: str, bold: bool) -> tuple[np.ndarray, np.ndarray, float]:
    """Outline of one letter whose capitals are 1 high, and how far the next one stands."""
    advance, *rings = glyph(letter, bold)
    points = [np.reshape(ring, (-1, 2)) / GRAIN for ring in rings]
    codes = [[Path.MOVETO, *[Path.LINETO] * (len(ring) - 2), Path.CLOSEPOLY] for ring in points]
    return (
        np.concatenate([np.empty((0, 2)), *points]),
        np.array([code for ring in codes for code in ring], Path.code_type),
        advance / GRAIN,
    )


@lru_cache(maxsize=4096)
def outline(text: str, bold: bool = False) -> tuple[np.ndarray, np.ndarray, float]:
    """Vertices, codes and width of a text whose capitals are 1 high; origin at the left end of the
    base line.

    A slider writes new numbers all the time, but always with the same letters: only those are
    looked up in the font.
    """
    vertices, codes, at = [], [], 0.0
    for letter in text:
        points, kinds, advance = _glyph(letter, bold)
        vertices.append(points + (at, 0.0))
        codes.append(kinds)
        at += advance
    return (
        (np.concatenate(vertices), np.concatenate(codes), at)
        if text
        else (np.empty((0, 2)), np.empty(0, Path.code_type), 0.0)
    )


@lru_cache(maxsize=16384)
def _advanced(text: str, bold: bool) -> float:
    """Width of a text whose capitals are 1 high, without its outline."""
    at = 0.0
    for letter in text:
        at += _glyph(letter, bold)[2]
    return at


def width(text: str, size: float, bold: bool = False) -> float:
    """Width of a text with capitals ``size`` high, in the same unit."""
    return _advanced(text, bold) * size


def fitting(text: str, room: float, size: float, bold: bool = False) -> int:
    """How many letters of a text, from its first on, have room in a width in the same unit. [-]

    Examples
    --------
    >>> fitting("A very long name of a small hut", 30.0, 2.5)
    15
    """
    ends = accumulate(_glyph(letter, bold)[2] for letter in text)
    return bisect_right(list(ends), room, key=lambda end: end * size)


_INSIDE_A_FIGURE = re.compile(r"(?<=\d) (?=\d+/\d)")


def unbroken(words: str) -> list[str]:
    """Words that a row may end behind: a whole number stays with its fraction.

    Examples
    --------
    >>> unbroken('cut to 2 1/4" high')
    ['cut', 'to', '2 1/4"', 'high']
    """
    kept = _INSIDE_A_FIGURE.sub("\N{NO-BREAK SPACE}", words)
    return [word.replace("\N{NO-BREAK SPACE}", " ") for word in kept.split(" ")]


def in_rows(words: str, room: float, size: float, bold: bool = False) -> list[str]:
    """Words in as many rows as they need, in the same unit; none is wider than there is room but
    a single word, and no row ends inside a figure of the tape.
    """
    rows: list[str] = []
    for word in unbroken(words):
        if rows and width(f"{rows[-1]} {word}", size, bold) <= room:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return rows


_ACROSS = {"left": 0.0, "center": -0.5, "right": -1.0}
_UP = {"base": 0.0, "middle": -0.5, "top": -1.0}


def place(
    x: float, y: float, text: str, size: float, ha: str, va: str, turned: bool, bold: bool
) -> tuple[np.ndarray, np.ndarray]:
    """Outline of a text in place; ``turned`` reads from the right."""
    vertices, codes, wide = outline(text, bold)
    local = (vertices + (_ACROSS[ha] * wide, _UP[va])) * size
    if turned:
        local = local[:, ::-1] * (-1.0, 1.0)
    return local + (x, y), codes


def base(
    x: float, y: float, text: str, size: float, ha: str, va: str, turned: bool, bold: bool
) -> tuple[float, float]:
    """Left end of a text's base line, where a font starts to write it."""
    along, up = _ACROSS[ha] * width(text, size, bold), _UP[va] * size
    return (x - up, y + along) if turned else (x + along, y + up)


def font_size(size: float) -> float:
    """Of the font whose capitals are ``size`` high, in the same unit."""
    return size / CAP


def extent(
    x: float, y: float, text: str, size: float, ha: str, va: str, turned: bool, bold: bool
) -> tuple[float, float, float, float]:
    """Box of a text: left, bottom, right, top. Descenders are counted in."""
    wide = width(text, size, bold)
    left, bottom = _ACROSS[ha] * wide, _UP[va] * size
    box = (left, bottom - 0.22 * size, left + wide, bottom + size)
    if turned:
        box = (-box[3], box[0], -box[1], box[2])
    return (x + box[0], y + box[1], x + box[2], y + box[3])
