"""A page of pictures and words, laid out once and painted as PDF or as dots."""

from __future__ import annotations

import os
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

import matplotlib

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

POINT = 25.4 / 72
"""[mm]"""
LEADING = 1.3
"""From one line of letters to the next, over their size. [-]"""
FONTS = {"plain": "STIXGeneral", "bold": "STIXGeneralBol", "italic": "STIXGeneralItalic"}
"""Letters of a page, by files that come with matplotlib under an open license."""
PAPER, INK, SOFT, RULE = "#ffffff", "#2a2521", "#6d645b", "#b6a58d"
FINEST = 20
"""Letters are measured as large as so many dots a point. [-]"""


def font_file(name: str) -> str:
    """Where the letters of one of ``FONTS`` stand."""
    return os.path.join(matplotlib.get_data_path(), "fonts", "ttf", f"{FONTS[name]}.ttf")


@lru_cache(maxsize=16)
def letters(name: str, dots: int) -> FreeTypeFont:
    """Letters of a font, so many dots high."""
    from PIL import ImageFont  # here, so that whoever writes no page need not wait

    return ImageFont.truetype(font_file(name), dots)


def measured(text: str, size: float, font: str = "plain") -> float:
    """How wide a text is. [mm]

    Parameters
    ----------
    text : str
    size : float
        Of its letters, in points. [-]
    font : str
        One of ``FONTS``.
    """
    return float(letters(font, 10 * FINEST).getlength(text)) / (10 * FINEST) * size * POINT


def broken(text: str, size: float, width: float, font: str = "plain") -> list[str]:
    """A text in lines that are not wider than told; a word that is too long for one is cut.

    Parameters
    ----------
    text : str
    size : float
        Of its letters, in points. [-]
    width : float
        [mm]
    font : str
        One of ``FONTS``.
    """
    lines, line = [], ""
    waiting = text.split()[::-1]
    while waiting:
        word = waiting.pop()
        longer = f"{line} {word}".strip()
        if measured(longer, size, font) <= width:
            line = longer
            continue
        if line:
            lines.append(line)
        line = word
        if measured(word, size, font) > width and len(word) > 1:
            fits = (
                n for n in range(len(word) - 1, 1, -1) if measured(word[:n], size, font) <= width
            )
            cut = next(fits, 1)
            lines.append(word[:cut])
            waiting.append(word[cut:])
            line = ""
    return [*lines, line] if line else lines


@dataclass(frozen=True, slots=True)
class LineOfText:
    """One line of letters: its left end and upper edge [mm], and its size in points. [-]"""

    x: float
    y: float
    text: str
    size: float
    font: str
    color: str

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom. [mm]"""
        right = self.x + measured(self.text, self.size, self.font)
        return self.x, self.y, right, self.y + LEADING * self.size * POINT


@dataclass(frozen=True, slots=True)
class Shown:
    """A picture, as a PNG or JPEG, and the place that it fills: left, top, width, height. [mm]"""

    x: float
    y: float
    width: float
    height: float
    file: bytes

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom. [mm]"""
        return self.x, self.y, self.x + self.width, self.y + self.height


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line from one point to another, or a ring in the box between them. [mm]"""

    start: tuple[float, float]
    end: tuple[float, float]
    width: float
    color: str = RULE
    ring: bool = False


@dataclass
class Leaf:
    """A page; counted from its upper left corner, downward.

    Attributes
    ----------
    width, height : float
        [mm]
    words, pictures, strokes : list
        What stands on it.
    """

    width: float
    height: float
    words: list[LineOfText] = field(default_factory=list)
    pictures: list[Shown] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)

    def write(
        self,
        x: float,
        y: float,
        width: float,
        text: str,
        size: float,
        font: str = "plain",
        color: str = INK,
        right: bool = False,
    ) -> float:
        """Write a paragraph from its upper left corner on; gives where it ends. [mm]

        Parameters
        ----------
        x, y, width : float
            Of its column. [mm]
        text : str
        size : float
            Of its letters, in points. [-]
        font : str
            One of ``FONTS``.
        color : str
        right : bool
            Whether its lines end together instead.
        """
        for line in broken(text, size, width, font):
            at = x + width - measured(line, size, font) if right else x
            self.words.append(LineOfText(at, y, line, size, font, color))
            y += LEADING * size * POINT
        return y

    def show(self, x: float, y: float, width: float, height: float, file: bytes) -> None:
        """Lay a picture into a box. [mm]"""
        self.pictures.append(Shown(x, y, width, height, file))

    @property
    def foot(self) -> float:
        """Lower edge of all that stands on it. [mm]"""
        words = [one.box[3] for one in self.words]
        pictures = [one.box[3] for one in self.pictures]
        return max((*words, *pictures, *(one.end[1] for one in self.strokes)), default=0.0)

    def lower(self, by: float) -> None:
        """Move all that stands on it down. [mm]"""
        self.words = [replace(one, y=one.y + by) for one in self.words]
        self.pictures = [replace(one, y=one.y + by) for one in self.pictures]
        self.strokes = [
            replace(s, start=(s.start[0], s.start[1] + by), end=(s.end[0], s.end[1] + by))
            for s in self.strokes
        ]

    def rule(self, x: float, y: float, width: float, heavy: float = 0.25) -> None:
        """A level line. [mm]"""
        self.strokes.append(Stroke((x, y), (x + width, y), heavy))
