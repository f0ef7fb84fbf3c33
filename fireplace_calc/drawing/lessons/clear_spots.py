"""Letters on a sheet at the first of some places where nothing is in their way."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.lessons.free_places import FreePlaces
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Sheet

LINE = 1.5
"""From row to row, in heights of a letter. [-]"""
UNDER, BORDER = 0.25, 0.3
"""What hangs under the base line, and air round a text, in heights of a letter. [-]"""
RINGS, TURNS = 60, 24
"""Places round the wanted one that are tried, nearest first. [-]"""
Place = TypeVar("Place", float, Array)


class ClearSpots(FreePlaces):
    """Free places for texts that have a place of their own: as near to it as may be.

    Parameters
    ----------
    sheet : Sheet
        With all its lines and hatching.

    Attributes
    ----------
    crowded : int
        Texts that stand where they were wanted, since nowhere was free. [-]
    """

    def __init__(self, sheet: Sheet) -> None:
        super().__init__(sheet, hatched=True)
        self.crowded = 0

    def _taking(self, boxes: Array) -> int:
        """Place of the first box that is free, the very first where none is; it is taken. [-]"""
        found = self.first(boxes)
        self.crowded += found is None
        at = found or 0
        self.taken.append(boxes[at])
        return at

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
        at = self._taking(boxes)
        x, y, turned = spots[at] if at < count else (*near[:, at - count].tolist(), False)
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
        x, y = tried[:, self._taking(boxes)].tolist()
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
