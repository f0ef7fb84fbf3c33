"""Letters on a sheet at the first of some places where nothing is in their way."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Sheet

LINE = 1.5
"""From row to row, in heights of a letter. [-]"""
UNDER, BORDER = 0.25, 0.3
"""What hangs under the base line, and air round a text, in heights of a letter. [-]"""
RINGS, TURNS = 60, 24
"""Places round the wanted one that are tried, nearest first. [-]"""


Place = TypeVar("Place", float, Array)


class ClearSpots:
    """What stands on a sheet when its lines are drawn, and every text that is written after.

    Parameters
    ----------
    sheet : Sheet
        With all its lines and hatching.
    """

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        drawn = [
            np.stack([line[:-1], line[1:]], axis=1)
            for lines in sheet.lines.values()
            for line in lines
            if len(line) > 1
        ]
        fine = sheet.fine_lines()
        self.ruled = np.concatenate([*drawn, fine]) if drawn or len(fine) else np.empty((0, 2, 2))
        self.taken: list[tuple[float, float, float, float]] = []

    def free(self, boxes: Array) -> IntArray:
        """Which boxes lie on the sheet and touch nothing."""
        inside = (boxes[:, :2] >= 0.2).all(axis=1)
        inside &= (boxes[:, 2] <= self.sheet.width - 0.2) & (boxes[:, 3] <= self.sheet.height - 0.2)
        for left, bottom, right, top in self.taken:
            inside &= (
                (boxes[:, 0] > right)
                | (boxes[:, 2] < left)
                | (boxes[:, 1] > top)
                | (boxes[:, 3] < bottom)
            )
        places = np.flatnonzero(inside)
        if len(self.ruled) and len(places):
            crossed = passes(self.ruled[:, 0], self.ruled[:, 1], boxes[places]).any(axis=0)
            places = places[~crossed]
        return places.astype(int)

    def first(self, boxes: Array) -> int:
        """Place of the first box that is free, the very first where none is. [-]"""
        for start in range(0, len(boxes), TURNS):
            found = self.free(boxes[start : start + TURNS])
            if len(found):
                return start + int(found[0])
        return 0

    def write(
        self,
        text: str,
        spots: Sequence[tuple[float, float, bool]],
        letters: float,
        bold: bool,
        ink: str,
    ) -> None:
        """Write a text with its middle at the first free of some spots, turned where it says so,
        else wherever is free near the first. [mm]
        """
        long, tall = lettering.width(text, letters, bold), letters
        x0, y0, _ = spots[0]
        near, count = _round(x0, y0, letters), len(spots)
        wanted = [_box(x, y, long, tall, turned, letters) for x, y, turned in spots]
        boxes = np.concatenate(
            [wanted, np.stack(_box(near[0], near[1], long, tall, False, letters), axis=1)]
        )
        at = self.first(boxes)
        x, y, turned = spots[at] if at < count else (*near[:, at - count].tolist(), False)
        self.taken.append(tuple(boxes[at]))
        if turned:
            self.sheet.text(x + tall / 2, y, text, letters, turned=True, bold=bold, ink=ink)
        else:
            self.sheet.text(x, y - tall / 2, text, letters, bold=bold, ink=ink)

    def write_rows(
        self, rows: Sequence[tuple[str, bool]], at: tuple[float, float], letters: float
    ) -> None:
        """Write rows over each other, their middle as near to a place as is free. [mm]"""
        long = max(lettering.width(text, letters, bold) for text, bold in rows)
        tall = letters * (1 + LINE * (len(rows) - 1))
        tried = np.concatenate([np.reshape(at, (2, 1)), _round(*at, letters)], axis=1)
        boxes = np.stack(_box(tried[0], tried[1], long, tall, False, letters), axis=1)
        place = self.first(boxes)
        self.taken.append(tuple(boxes[place]))
        x, y = tried[:, place].tolist()
        top = y + tall / 2 - letters
        for k, (text, bold) in enumerate(rows):
            self.sheet.text(x, top - k * LINE * letters, text, letters, bold=bold)


def _box(
    x: Place, y: Place, long: float, tall: float, turned: bool, letters: float
) -> tuple[Place, Place, Place, Place]:
    """Box of a text round its middle, with air; of many places at once. [mm]"""
    air = BORDER * letters
    if turned:
        return x - tall / 2 - air, y - long / 2 - air, x + tall / 2 + air, y + long / 2 + air
    low = y - tall / 2 - UNDER * letters
    return x - long / 2 - air, low - air / 2, x + long / 2 + air, y + tall / 2 + air


def _round(x: float, y: float, letters: float) -> Array:
    """Places round a point, ring after ring: one row of x, one of y. [mm]"""
    turns = np.arange(TURNS) * 2 * np.pi / TURNS
    reach = np.arange(1, RINGS + 1)[:, None] * letters / 2
    return np.stack([(x + reach * np.cos(turns)).ravel(), (y + reach * np.sin(turns)).ravel()])
