"""A thin line from a name that had to stand aside to the thing it names."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.lessons.clear_spots import ClearSpots
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Pair

NEAR = 1.5
"""A name that stands nearer than this needs no line, in heights of a letter. [-]"""
DOT = 0.12
"""Half of the dot at the end of a line, in heights of a letter. [-]"""


def lead_words(
    clear: ClearSpots,
    placed: Iterable[tuple[Pair, Array]],
    outlines: Sequence[Array],
    letters: float,
) -> None:
    """Draw a line from each name that stands aside to its place, where that lies within the thing:
    in the open air there is nothing to point at.

    Parameters
    ----------
    clear : ClearSpots
        With every text that was written.
    placed : iterable of (pair, array)
        The place of each name, and the box that it was written in. [mm]
    outlines : sequence of array
        Lines of the drawing, without its strings. [mm]
    letters : float
        Height of a letter. [mm]
    """
    for at, box in placed:
        point = np.asarray(at)
        start = np.clip(point, box[:2], box[2:])
        if np.hypot(*(point - start)) <= NEAR * letters or not within(point, outlines):
            continue
        others = [taken for taken in clear.taken if taken is not box]
        if others and passes(start[None], point[None], np.stack(others)).any():
            continue
        clear.sheet.line([tuple(start), tuple(point)], "fine", "dimension")
        reach = DOT * letters
        ring = point + reach * np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)])
        clear.sheet.line([tuple(corner) for corner in ring], "seen", "dimension", closed=True)


def within(point: Array, outlines: Sequence[Array]) -> bool:
    """Whether lines stand on both sides of a point, left and right or above and below. [mm]

    Examples
    --------
    >>> walls = [np.array([(0.0, 0.0), (0.0, 9.0)]), np.array([(4.0, 0.0), (4.0, 9.0)])]
    >>> within(np.array([2.0, 5.0]), walls), within(np.array([6.0, 5.0]), walls)
    (True, False)
    >>> within(np.array([0.0, 5.0]), walls)  # on one of the lines
    False
    """
    ends = [np.stack([line[:-1], line[1:]], axis=1) for line in outlines if len(line) > 1]
    segments = np.concatenate([np.empty((0, 2, 2)), *ends])
    for axis in (0, 1):
        across = segments[:, :, 1 - axis] - point[1 - axis]
        cut = segments[across[:, 0] * across[:, 1] < 0]
        share = across[across[:, 0] * across[:, 1] < 0]
        ratio = share[:, 0] / (share[:, 0] - share[:, 1])
        met = cut[:, 0, axis] + ratio * (cut[:, 1, axis] - cut[:, 0, axis])
        if (met < point[axis]).any() and (met > point[axis]).any():
            return True
    return False
