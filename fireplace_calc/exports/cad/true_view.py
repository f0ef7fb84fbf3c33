"""One view of a drawing file: what it shows, in meters, before a pen draws it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from math import atan2, remainder, tau
from typing import Any

from fireplace_calc.base.arrays import Array
from fireplace_calc.exports.cad.tied_places import SAME, Gap, half_of, span_rows
from fireplace_calc.geometry.polygons import Point, Polygon

LETTERS = 0.05
"""Height of figures and words: 2.5 mm at 1:20. [m]"""
LEAST, ROW = 0.24, 0.13
"""Gap that a figure needs; from one row of dimensions to the next. [m]"""
OUT = 0.15
"""From a view to its first row of dimensions. [m]"""

BEYOND = 99.0
"""Farther than anything reaches. [m]"""
BENT, CURVE = 0.27, 10
"""A corner turns by at least so much [rad]; so many flatter ones make a curve [-]."""


@dataclass(frozen=True, slots=True)
class CutShape:
    """What is cut of one part: outlines and the holes in them, whatever lies in an odd number."""

    material: str
    rings: tuple[Polygon, ...]


@dataclass(frozen=True, slots=True)
class PieceShape:
    """One brick, section or stone in its place: what it is called, and its outline. [m]"""

    name: str
    ring: Polygon


@dataclass(frozen=True, slots=True)
class TrueView:
    """One view.

    Attributes
    ----------
    key, name : str
    box : tuple of float
        Left, bottom, right, top of all of it. [m]
    cuts : sequence of CutShape
        Outlined on the layer of their material, and hatched.
    seen : sequence of (str, Polygon)
        Material or other layer, and closed outline of what lies beyond the cut. [m]
    pieces : sequence of PieceShape
        Each becomes an insert.
    lines : sequence of (str, array (k, 2, 2))
        Layer, and segments. [m]
    marks : dict
        Levels by their names. [m]
    spots : sequence of Point
        Points that dimensions fix; the corners of cuts and seen are among them. [m]
    measured_from : tuple of two lists
        Places across and up that a mason measures from. [m]
    middle : bool
        Whether widths count from a center line at nought, both sides alike.
    split : float
        Level over which a place across that is new is dimensioned from above. [m]
    more : callable or None
        Draws what else there is, once the view has its place.
    """

    key: str
    name: str
    box: tuple[float, float, float, float]
    cuts: Sequence[CutShape] = ()
    seen: Sequence[tuple[str, Polygon]] = ()
    pieces: Sequence[PieceShape] = ()
    lines: Sequence[tuple[str, Array]] = ()
    marks: dict[str, float] = field(default_factory=dict)
    spots: Sequence[Point] = ()
    measured_from: tuple[Sequence[float], Sequence[float]] = ((0.0,), (0.0,))
    middle: bool = False
    split: float = BEYOND
    more: Callable[[Any], None] | None = None

    def rows_across(self) -> list[list[Gap]]:
        """Rows of dimensions under the view."""
        return span_rows(self._places(self._low()), self.measured_from[0], LEAST)

    def rows_over(self) -> list[list[Gap]]:
        """Rows of dimensions over the view: what only stands in its upper part, from nought."""
        low = self._places(self._low())
        high = [x for x in self._places(self.spots) if all(abs(x - known) > SAME for known in low)]
        return span_rows([0.0, *high], (0.0,), LEAST) if high else []

    def _low(self) -> list[Point]:
        """Points that are dimensioned from below."""
        return [spot for spot in self.spots if spot[1] <= self.split + SAME]

    def _places(self, spots: Sequence[Point]) -> list[float]:
        places = [x for x, _ in spots]
        return [0.0, *half_of(places)] if self.middle else places

    def rows_up(self) -> list[list[Gap]]:
        """Rows of dimensions to the right of the view."""
        return span_rows([y for _, y in self.spots], self.measured_from[1], LEAST)

    def room(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top with dimensions, marks and name. [m]"""
        left, low, right, top = self.box
        low -= OUT + ROW * len(self.rows_across()) + 6 * LETTERS
        top += OUT + ROW * len(self.rows_over()) if self.split < BEYOND else 0.0
        right += OUT + ROW * len(self.rows_up()) + (1.4 if self.marks else 0.2)
        return left - 0.2, low, right, top + 0.2


def box_of(rings: Iterable[Sequence[Point]]) -> tuple[float, float, float, float]:
    """Left, bottom, right, top of some outlines. [m]"""
    points = [point for ring in rings for point in ring]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def corners(cuts: Sequence[CutShape], seen: Sequence[tuple[str, Polygon]] = ()) -> Iterator[Point]:
    """Every corner of what is cut and seen; of a curve where it reaches farthest. [m]"""
    for cut in cuts:
        for ring in cut.rings:
            yield from ring_corners(ring)
    for _, ring in seen:
        yield from ring_corners(ring)


def ring_corners(ring: Sequence[Point]) -> Iterator[Point]:
    """Corners of one outline, likewise. [m]"""
    turns = []
    for k, here in enumerate(ring):
        before, after = ring[k - 1], ring[(k + 1) % len(ring)]
        turn = atan2(after[1] - here[1], after[0] - here[0])
        turn -= atan2(here[1] - before[1], here[0] - before[0])
        turns.append(abs(remainder(turn, tau)))
    curved = sum(turn < BENT for turn in turns) >= CURVE
    for point, turn in zip(ring, turns, strict=True):
        if not curved or turn >= BENT:
            yield point
    if curved:
        for axis in (0, 1):
            yield min(ring, key=lambda point: point[axis])
            yield max(ring, key=lambda point: point[axis])
