"""Hidden lines: they wait until everything in front of them is known, then all are cut at once.

Our own: a room has thousands of brick joints, each with other rings in front of it. Here all of
them meet all rings in a few passes of numpy, once a picture, as a moving slider needs;
``tests/bench/draw.py`` measures it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from fireplace_calc.base.arrays import BoolArray
from fireplace_calc.drawing.sheets.hatch import counted
from fireplace_calc.drawing.sheets.sheet import Sheet

Rings = Sequence[np.ndarray]
Lot = tuple[np.ndarray, Rings, Rings]
"""Segments, the rings they are seen within and the rings that hide them."""


class HiddenLines:
    """Lines of one sheet, each with the rings it is seen within and those that hide it. [mm]"""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self.waiting: list[Lot] = []
        self.pens: list[tuple[str, str, bool] | None] = []

    def lines(
        self,
        segments: np.ndarray,
        weight: str,
        within: Rings = (),
        behind: Rings = (),
        ink: str = "ink",
    ) -> None:
        """Lines of one pen, (k, 2, 2). [mm]"""
        self.waiting.append((segments, within, behind))
        self.pens.append((weight, ink, False))

    def outline(self, ring: np.ndarray, weight: str, behind: Rings = ()) -> None:
        """A closed line, whole where nothing hides any of it. [mm]"""
        self.waiting.append((sides(ring), (), behind))
        self.pens.append((weight, "ink", True))

    def hatch(self, segments: np.ndarray, within: Rings = (), behind: Rings = ()) -> None:
        """Fine lines, (k, 2, 2). [mm]"""
        self.waiting.append((segments, within, behind))
        self.pens.append(None)

    def lift(self) -> None:
        """Cut them all and put onto the sheet what is seen of them."""
        for pen, (segments, *_), kept in zip(
            self.pens, self.waiting, clipped_each(self.waiting), strict=True
        ):
            if pen is None:
                self.sheet.hatches.append(kept)
            elif pen[2] and len(kept) == len(segments) and np.allclose(kept, segments):
                self.sheet.line(segments[:, 0], *pen[:2], closed=True)
            else:
                for edge in kept:
                    self.sheet.line(edge, *pen[:2])
        self.waiting, self.pens = [], []


def sides(ring: np.ndarray) -> np.ndarray:
    """The sides of a ring as segments, (n, 2, 2)."""
    return np.stack([ring, np.concatenate([ring[1:], ring[:1]])], 1)


def near(rings: Iterable[np.ndarray], points: np.ndarray) -> list[np.ndarray]:
    """Those rings whose box overlaps the box of some points."""
    low, high = points.min(axis=0), points.max(axis=0)
    return [
        ring for ring in rings if (ring.min(axis=0) < high).all() and (ring.max(axis=0) > low).all()
    ]


def clipped(segments: np.ndarray, within: Rings, behind: Rings = ()) -> np.ndarray:
    """What of some segments lies in every ring of one kind and in none of the other; rings may be
    of any shape.

    Parameters
    ----------
    segments : array, (k, 2, 2)
        In any unit.
    within : sequence of array, each (n, 2)
        Kept inside of all of these.
    behind : sequence of array, each (n, 2)
        Hidden by these.

    Returns
    -------
    array, (m, 2, 2)
        In the same unit.

    Examples
    --------
    >>> square = np.array([(0, 0), (2, 0), (2, 2), (0, 2)])
    >>> clipped(np.array([[(-1.0, 1.0), (3.0, 1.0)]]), [], [square]).tolist()
    [[[-1.0, 1.0], [0.0, 1.0]], [[2.0, 1.0], [3.0, 1.0]]]
    """
    return clipped_each([(segments, within, behind)])[0]


def clipped_each(lots: Sequence[Lot]) -> list[np.ndarray]:
    """The same for several lots of segments, each with its own rings, all at once."""
    segments = np.concatenate([np.empty((0, 2, 2)), *(lot[0] for lot in lots)])
    kept, whose = CuttingRings(lots).cut(segments)
    ends = np.cumsum([len(lot[0]) for lot in lots])
    return np.split(kept, np.searchsorted(whose, ends[:-1])) if lots else []


class CuttingRings:
    """Rings, and for every segment those it is seen within and those that hide it.

    Parameters
    ----------
    lots : sequence of (segments, within, behind)
    """

    def __init__(self, lots: Sequence[Lot]) -> None:
        known = {id(ring): ring for _, within, behind in lots for ring in (*within, *behind)}
        number = {name: k for k, name in enumerate(known)}
        rings = list(known.values()) or [np.zeros((3, 2))]
        self.corners = np.concatenate(rings)
        self.sizes = np.array([len(ring) for ring in rings])
        ends = np.cumsum(self.sizes)
        self.starts = ends - self.sizes
        self.ways = np.empty_like(self.corners)
        self.ways[:-1] = self.corners[1:] - self.corners[:-1]
        self.ways[ends - 1] = self.corners[self.starts] - self.corners[ends - 1]
        self.low, self.high = (
            np.minimum.reduceat(self.corners, self.starts),
            np.maximum.reduceat(self.corners, self.starts),
        )
        self.lot = np.repeat(np.arange(len(lots)), [len(segments) for segments, _, _ in lots])
        self.many = np.array([len(within) + len(behind) for _, within, behind in lots], int)
        self.first = np.cumsum(self.many) - self.many
        self.ring = np.array(
            [number[id(ring)] for _, within, behind in lots for ring in (*within, *behind)], int
        )
        self.keeps = np.array(
            [
                kept
                for _, within, behind in lots
                for kept in [True] * len(within) + [False] * len(behind)
            ],
            bool,
        )

    def cut(self, segments: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """What is left of all segments, and of which one each piece is."""
        start, way = segments[:, 0], segments[:, 1] - segments[:, 0]
        pair, ring, _ = self._pairs(segments.min(axis=1), segments.max(axis=1), self.lot)
        which, side = self._sides(pair, ring)
        gap, e, w = self.corners[side] - start[which], self.ways[side], way[which]
        # start + t way meets corner + u side; parallel ones divide by nought and drop out below
        with np.errstate(divide="ignore", invalid="ignore"):
            cross = w[:, 0] * e[:, 1] - w[:, 1] * e[:, 0]
            t = (gap[:, 0] * e[:, 1] - gap[:, 1] * e[:, 0]) / cross
            u = (gap[:, 0] * w[:, 1] - gap[:, 1] * w[:, 0]) / cross
            hit = np.flatnonzero((t > 0) & (t < 1) & (u >= 0) & (u <= 1))
        # each segment from 0 by its hits to 1, in order; neighbors are its pieces
        every = np.arange(len(segments))
        whose = np.concatenate([every, which[hit], every])
        at = np.concatenate([np.zeros(len(every)), t[hit], np.ones(len(every))])
        order = np.lexsort((at, whose))
        whose, at = whose[order], at[order]
        good = (whose[1:] == whose[:-1]) & (at[1:] - at[:-1] > 1e-9)
        # a piece is seen where its middle is
        k, low, high = whose[:-1][good], at[:-1][good], at[1:][good]
        seen = self._seen(start[k] + way[k] * ((low + high) / 2)[:, None], self.lot[k])
        k, low, high = k[seen], low[seen, None], high[seen, None]
        return np.stack([start[k] + way[k] * low, start[k] + way[k] * high], 1), k

    def _pairs(
        self, low: np.ndarray, high: np.ndarray, lot: np.ndarray
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Everything of a lot with every ring of it whose box it meets, or that has to keep it."""
        which, step = counted(self.many[lot])
        entry = self.first[lot][which] + step
        ring, keeps = self.ring[entry], self.keeps[entry]
        meets = ((low[which] <= self.high[ring]) & (high[which] >= self.low[ring])).all(
            axis=1
        ) | keeps
        return which[meets], ring[meets], keeps[meets]

    def _sides(self, which: np.ndarray, ring: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """The same pairs with every side of the ring."""
        pair, step = counted(self.sizes[ring])
        return which[pair], self.starts[ring][pair] + step

    def _seen(self, points: np.ndarray, lot: np.ndarray) -> np.ndarray:
        """Which points lie in the rings that keep them and in none of those that hide, by counting
        the sides to their right.
        """
        pair, ring, keeps = self._pairs(points, points, lot)
        if not len(pair):
            return np.ones(len(points), bool)
        which, side = self._sides(pair, ring)
        (x, y), a, e = points[which].T, self.corners[side], self.ways[side]
        over = (a[:, 1] <= y) != (a[:, 1] + e[:, 1] <= y)
        with np.errstate(divide="ignore", invalid="ignore"):
            right = over & (x < a[:, 0] + (y - a[:, 1]) / e[:, 1] * e[:, 0])
        counts = self.sizes[ring]
        inside = np.add.reduceat(right, np.cumsum(counts) - counts, dtype=int) % 2 == 1
        seen: BoolArray = np.bincount(pair[inside != keeps], minlength=len(points)) == 0
        return seen
