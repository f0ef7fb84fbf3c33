"""A free place for a label: the first of many that touches no line and no other label."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import chain

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Pair, Sheet

AIR = 0.35
"""Between a label and a line, as a share of its letters. [-]"""
ROW = 1.45
"""From row to row of a label, as a share of its letters. [-]"""
UNDER = 0.22
"""What hangs under the base line, as a share of the letters. [-]"""
FEW = 64
"""Places looked at together: the first one that is free is mostly among them. [-]"""
_SIDES = {"right": (1.0, 0.0), "left": (-1.0, 0.0), "above": (0.0, 1.0), "below": (0.0, -1.0)}


@dataclass(frozen=True)
class Wanted:
    """A label that waits for its place.

    Attributes
    ----------
    text : str
    anchors : sequence of pair
        Points it may stand beside, the best first. [mm]
    sides : sequence of str
        On which side of them, the best first.
    size : float
        Of its letters. [mm]
    ink : str
    bold : bool
    must : bool
        Left out where there is no room, unless it must be there.
    """

    text: str
    anchors: Sequence[Pair]
    sides: Sequence[str] = ("right", "left", "above", "below")
    size: float = 5.0
    ink: str = "ink"
    bold: bool = True
    must: bool = True
    rows: tuple[tuple[str, ...], ...] = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "rows", ((self.text,), *_in_two(self.text)))


def _in_two(text: str) -> list[tuple[str, str]]:
    """A text in two rows: behind ``have`` or ``need``, before ``short``, else in the middle."""
    words = lettering.unbroken(text)
    if len(words) < 2:
        return []
    cut = min(range(1, len(words)), key=lambda k: abs(2 * k - len(words)))
    cut = next((k + 1 for k, word in enumerate(words) if word in ("have", "need")), cut)
    cut = len(words) - 1 if words[-1] == "short" else cut
    return [(" ".join(words[:cut]), " ".join(words[cut:]))]


class FreePlaces:
    """What stands on a sheet when its lines are drawn, and every text that is written after.

    Parameters
    ----------
    sheet : Sheet
        With all its lines.
    hatched : bool
        Whether a text must keep off hatching and fine lines too.
    """

    def __init__(self, sheet: Sheet, hatched: bool = False) -> None:
        self.sheet = sheet
        segments = [
            np.stack([line[:-1], line[1:]], axis=1)
            for lines in sheet.lines.values()
            for line in lines
            if len(line) > 1
        ]
        self.ruled = np.concatenate(
            [np.empty((0, 2, 2)), *segments, *([sheet.fine_lines()] if hatched else [])]
        )
        self.taken: list[Array] = []

    def first(self, boxes: Array) -> int | None:
        """The first box, its air included, that touches nothing and lies on the sheet. [mm]"""
        near = self._first_of(boxes[:FEW])
        if near is not None:
            return near
        far = self._first_of(boxes[FEW:])
        return None if far is None else FEW + far

    def _first_of(self, boxes: Array) -> int | None:
        good = (boxes[:, :2] > 0).all(axis=1)
        good &= (boxes[:, 2] < self.sheet.width) & (boxes[:, 3] < self.sheet.height)
        for other in self.taken:
            apart = (boxes[:, :2] > other[2:]).any(axis=1)
            good &= apart | (boxes[:, 2:] < other[:2]).any(axis=1)
        places = np.flatnonzero(good)
        for few in np.array_split(places, range(FEW, len(places), FEW)):
            free = few
            if len(self.ruled) and len(few):
                crossed = passes(self.ruled[:, 0], self.ruled[:, 1], boxes[few]).any(axis=0)
                free = few[~crossed]
            if len(free):
                return int(free[0])
        return None


def put_labels(sheet: Sheet, wanted: Sequence[Wanted]) -> list[tuple[Wanted, float]]:
    """Write labels, each on the first free place; lines are to be drawn before.

    Parameters
    ----------
    sheet : Sheet
    wanted : sequence of Wanted
        The most important first.

    Returns
    -------
    list of (Wanted, float)
        Each label that was written, and how far from the nearest anchor it stands. [mm]
    """
    free = FreePlaces(sheet)
    placed = []
    for one in wanted:
        found = _free(one, free)
        if found is None:
            continue
        rows, box = found
        free.taken.append(_grown(box, one))
        _write(sheet, one, rows, box)
        placed.append((one, _off(one, box)))
    return placed


def _off(one: Wanted, box: Array) -> float:
    """How far a label stands from the nearest of its anchors. [mm]"""
    points = np.asarray(one.anchors, dtype=float)
    reach = np.maximum(np.maximum(box[:2] - points, points - box[2:]), 0.0)
    return float(np.hypot(*reach.T).min())


def _grown(boxes: Array, one: Wanted) -> Array:
    """Boxes with the air round them. [mm]"""
    air = AIR * one.size
    grown: Array = boxes + np.array([-air, -air, air, air])
    return grown


def _free(one: Wanted, free: FreePlaces) -> tuple[tuple[str, ...], Array] | None:
    """Rows and box of the first free place: beside an anchor in one row or two, side after side,
    else the nearest anywhere.
    """
    beside = [
        (rows, _beside(one, side, gap, _size(rows, one)))
        for gap in (0.6, 1.1)
        for side in one.sides
        for rows in one.rows
    ]
    anywhere = ((rows, _anywhere(free.sheet, one, _size(rows, one))) for rows in one.rows)
    for rows, boxes in chain(beside, anywhere):
        at = free.first(_grown(boxes, one))
        if at is not None:
            return rows, boxes[at]
    return (beside[0][0], beside[0][1][0]) if one.must else None


def _size(rows: tuple[str, ...], one: Wanted) -> Pair:
    wide = max(lettering.width(row, one.size, one.bold) for row in rows)
    return wide, one.size * (1 + UNDER + ROW * (len(rows) - 1))


def _beside(one: Wanted, side: str, gap: float, size: Pair) -> Array:
    """Boxes on one side of each anchor; over and under also moved along."""
    found = []
    dx, dy = _SIDES[side]
    for x, y in one.anchors:
        cx = x + dx * (size[0] / 2 + gap * one.size)
        cy = y + dy * (size[1] / 2 + gap * one.size)
        found.append((cx, cy))
        if dx == 0:
            found += [(cx + k * size[0] * 0.45, cy) for k in (1, -1)]
    return _boxes(np.array(found), size)


def _anywhere(sheet: Sheet, one: Wanted, size: Pair) -> Array:
    """Boxes on a raster over the sheet, the nearest to the first anchor first."""
    step = one.size / 2
    x = np.arange(size[0] / 2, max(sheet.width - size[0] / 2, size[0] / 2) + step, step)
    y = np.arange(size[1] / 2, max(sheet.height - size[1] / 2, size[1] / 2) + step, step)
    middles = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)
    off = np.abs(middles - np.asarray(one.anchors[0])) - np.asarray(size) / 2
    return _boxes(middles[np.argsort(np.hypot(*np.maximum(off, 0.0).T), kind="stable")], size)


def _boxes(middles: Array, size: Pair) -> Array:
    half = np.array(size) / 2
    return np.concatenate([middles - half, middles + half], axis=1)


def _write(sheet: Sheet, one: Wanted, rows: tuple[str, ...], box: Array) -> None:
    x = (box[0] + box[2]) / 2
    top = box[3] - one.size
    for k, row in enumerate(rows):
        sheet.text(
            x, top - k * ROW * one.size, row, one.size, "center", "base", bold=one.bold, ink=one.ink
        )
