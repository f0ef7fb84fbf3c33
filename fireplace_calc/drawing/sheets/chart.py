"""A plain chart on a sheet: two axes with round figures, curves, a band, a mark where the design
stands.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from matplotlib.ticker import MaxNLocator

from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, spread
from fireplace_calc.drawing.sheets.style import SMALL, TEXT

ROW = 3.9
"""Least distance of two texts one above the other. [mm]"""


@lru_cache(maxsize=256)
def round_steps(low: float, high: float, most: int) -> tuple[float, ...]:
    """Round figures from end to end, no more than so many.

    Examples
    --------
    >>> round_steps(0.0, 1.3, 6)
    (0.0, 0.25, 0.5, 0.75, 1.0, 1.25)
    """
    for count in (most, most - 1):  # the locator counts gaps: one figure more where both ends fit
        placed = MaxNLocator(count, steps=[1, 2, 2.5, 5, 10]).tick_values(low, high)
        near = 1e-9 * (high - low)
        figures = tuple(round(float(v), 10) for v in placed if low - near <= v <= high + near)
        if len(figures) <= most:
            break
    return figures


@dataclass(frozen=True, slots=True)
class Chart:
    """A window on a sheet: figures in, paper millimetres out, each axis with a scale of its own.

    Attributes
    ----------
    sheet : Sheet
    box : Cell
        The plot itself, labels outside of it. [mm]
    across, up : tuple of float
        Figures at both ends of the axes.
    """

    sheet: Sheet
    box: Cell
    across: Pair
    up: Pair

    def at(self, x: float, y: float) -> Pair:
        """Paper place of a pair of figures. [mm]"""
        b = self.box
        return (
            b.left + (x - self.across[0]) / (self.across[1] - self.across[0]) * (b.right - b.left),
            b.bottom + (y - self.up[0]) / (self.up[1] - self.up[0]) * (b.top - b.bottom),
        )

    def places(self, xs: Iterable[float], ys: Iterable[float]) -> np.ndarray:
        """Paper places of many, (k, 2). [mm]"""
        return np.array([self.at(x, y) for x, y in zip(xs, ys, strict=True)])

    def frame(self, title_across: str, title_up: str = "") -> None:
        """Both axes, and their names."""
        b = self.box
        self.sheet.line([(b.left, b.top), (b.left, b.bottom), (b.right, b.bottom)], "seen")
        self.sheet.text((b.left + b.right) / 2, b.bottom - 9.8, title_across, size=SMALL)
        if title_up:
            self.sheet.text(b.left, b.top + 2.0, title_up, size=SMALL, ha="left")

    def ticks_across(self, figures: Sequence[float], write: Callable[[float], str]) -> None:
        """Marks and figures along the foot."""
        for figure in figures:
            x, y = self.at(figure, self.up[0])
            self.sheet.line([(x, y), (x, y - 1.2)], "fine")
            self.sheet.text(x, y - 5.4, write(figure), size=SMALL)

    def ticks_up(self, figures: Sequence[float], write: Callable[[float], str]) -> None:
        """Marks and figures at the left."""
        for figure in figures:
            x, y = self.at(self.across[0], figure)
            self.sheet.line([(x, y), (x - 1.2, y)], "fine")
            self.sheet.text(x - 3.0, y, write(figure), size=SMALL, ha="right", va="middle")

    def curve(
        self, xs: Iterable[float], ys: Iterable[float], weight: str = "cut", ink: str = "ink"
    ) -> None:
        """A line through figures."""
        self.sheet.line(self.places(xs, ys), weight, ink)

    def band(
        self, xs: Iterable[float], low: Iterable[float], high: Iterable[float], tone: str = "soot"
    ) -> None:
        """What lies between two lines."""
        ring = np.concatenate([self.places(xs, low), self.places(xs, high)[::-1]])
        self.sheet.fill([ring], tone)
        self.sheet.line(self.places(xs, low), "fine")
        self.sheet.line(self.places(xs, high), "fine")

    def level(self, y: float, weight: str = "hidden", ink: str = "bad") -> None:
        """A figure held right across."""
        self.sheet.line([self.at(self.across[0], y), self.at(self.across[1], y)], weight, ink)

    def mark(self, x: float, y: float, radius: float = 1.5) -> None:
        """Where the design stands: a ring with a cross, so that it shows on any ground and in
        black.
        """
        cx, cy = self.at(x, y)
        turn = np.linspace(0.0, 2 * np.pi, 25)
        ring = np.stack([cx + radius * np.cos(turn), cy + radius * np.sin(turn)], axis=1)
        self.sheet.fill([ring], "air", layer=2)
        self.sheet.line(ring, "flag", "good")
        arm = 1.6 * radius
        self.sheet.line([(cx - arm, cy), (cx + arm, cy)], "seen", "good")
        self.sheet.line([(cx, cy - arm), (cx, cy + arm)], "seen", "good")

    def names_right(self, places: Sequence[float], words: Sequence[str]) -> None:
        """Names of curves beside their ends, moved apart where they would touch."""
        order = np.argsort(places)
        wanted = [self.at(0.0, places[k])[1] for k in order]
        put = spread(wanted, [ROW] * len(wanted), self.box.bottom - 1.0, self.box.top + 4.0)
        for k, y in zip(order, put, strict=True):
            self.sheet.text(self.box.right + 3.0, y, words[k], size=SMALL, ha="left", va="middle")


def lines_of_text(
    sheet: Sheet,
    left: float,
    top: float,
    texts: Iterable[str],
    size: float = TEXT,
    gap: float = 4.4,
) -> float:
    """Texts one under the other; the level under the last. [mm]"""
    for text in texts:
        top -= gap
        sheet.text(left, top, text, size=size, ha="left")
    return top
