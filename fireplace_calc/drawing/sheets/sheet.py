"""A sheet is a list of what to draw, in mm on paper, made before anything is painted.

So one drawing goes to a screen, to paper or to a file, and a test can ask where every letter and
line lies.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

import numpy as np

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.hatch import hatch_lines
from fireplace_calc.drawing.sheets.style import HATCHES, TEXT

Pair = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Label:
    """One text in its place."""

    x: float
    y: float
    text: str
    size: float = TEXT
    ha: str = "center"
    va: str = "base"
    turned: bool = False
    bold: bool = False
    ink: str = "ink"

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top. [mm]"""
        return lettering.extent(
            self.x, self.y, self.text, self.size, self.ha, self.va, self.turned, self.bold
        )


@dataclass(frozen=True, slots=True)
class DimensionString:
    """One dimension string as it stands on a sheet, so that a drawing file can dimension anew.

    Attributes
    ----------
    stops : tuple of float
        Places of the ticks along the string. [mm]
    line : float
        Where the string runs, across its direction. [mm]
    along : str
        ``x`` or ``y``.
    feet : tuple of float
        Where each extension line starts, across; empty without them. [mm]
    drawn : dict
        Weight and ink to which of the polylines of that pen draw the string.
    written : tuple of int
        First of the labels that belong to it, and the one after the last.
    """

    stops: tuple[float, ...]
    line: float
    along: str
    feet: tuple[float, ...]
    drawn: dict[tuple[str, str], tuple[int, int]]
    written: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Cell:
    """Room for one view on a sheet. [mm]"""

    left: float
    bottom: float
    right: float
    top: float

    def meets(self, other: Cell) -> bool:
        """Whether two lie over each other."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )


@dataclass
class Sheet:
    """Everything on one piece of paper.

    Attributes
    ----------
    width, height : float
        Of the paper. [mm]
    fills : dict
        Layer and tone to lists of polygons, each a list of rings. Within a layer a tone that is
        used first is painted first; what overlaps in several tones takes layers of its own.
    hatches : list of array (k, 2, 2)
        Fine segments such as brick courses.
    hatched : dict
        Material to the rings of all that is cut of it; hatched together when the sheet is painted.
    lines : dict
        Weight and ink to lists of polylines.
    labels : list of Label
    measured : list of DimensionString
        Dimension strings among lines and labels; those of a sheet that was added are not.
    hatch_size : float
        How much wider apart than usual hatch lines stand: the larger what is hatched, the wider
        (common practice). [-]
    """

    width: float
    height: float
    fills: dict[tuple[float, str], list[list[np.ndarray]]] = field(
        default_factory=lambda: defaultdict(list)
    )
    hatches: list[np.ndarray] = field(default_factory=list)
    hatched: dict[str, list[np.ndarray]] = field(default_factory=lambda: defaultdict(list))
    lines: dict[tuple[str, str], list[np.ndarray]] = field(
        default_factory=lambda: defaultdict(list)
    )
    labels: list[Label] = field(default_factory=list)
    measured: list[DimensionString] = field(default_factory=list)
    hatch_size: float = 1.0

    def fill(
        self,
        rings: Sequence[np.ndarray | Sequence[Pair]],
        tone: str,
        hatch: str | None = None,
        layer: float = 0,
    ) -> None:
        """Fill a polygon with holes, and hatch it as a cut material."""
        drawn = [np.asarray(r, dtype=float) for r in rings if len(r) > 2]
        if not drawn:
            return
        self.fills[layer, tone].append(drawn)
        if hatch in HATCHES:
            self.hatched[hatch] += drawn

    def fine_lines(self) -> np.ndarray:
        """Every hatch and course line, (k, 2, 2). [mm]"""
        made = [
            hatch_lines(rings, HATCHES[name], self.hatch_size)
            for name, rings in self.hatched.items()
        ]
        return (
            np.concatenate([*self.hatches, *made]) if self.hatches or made else np.empty((0, 2, 2))
        )

    def add(self, other: Sheet) -> None:
        """Put everything of another sheet onto this one."""
        for tone, polygons in other.fills.items():
            self.fills[tone] += polygons
        for name, rings in other.hatched.items():
            self.hatched[name] += rings
        for pen, polylines in other.lines.items():
            self.lines[pen] += polylines
        self.hatches += other.hatches
        self.labels += other.labels

    def line(
        self,
        points: Iterable[Pair] | np.ndarray,
        weight: str = "seen",
        ink: str = "ink",
        closed: bool = False,
    ) -> None:
        """Draw a polyline."""
        points = np.asarray(points, dtype=float)
        self.lines[weight, ink].append(np.concatenate([points, points[:1]]) if closed else points)

    def text(
        self,
        x: float,
        y: float,
        text: str,
        size: float = TEXT,
        ha: str = "center",
        va: str = "base",
        turned: bool = False,
        bold: bool = False,
        ink: str = "ink",
    ) -> Label:
        """Write a text and say where it lies."""
        label = Label(x, y, text, size, ha, va, turned, bold, ink)
        self.labels.append(label)
        return label


@dataclass(frozen=True, slots=True)
class View:
    """A window on a sheet: model metres in, paper millimetres out, through one scale.

    Attributes
    ----------
    sheet : Sheet
    x0, y0 : float
        Where the model's origin lies on the paper. [mm]
    scale : float
        Paper millimetres to a model metre. [mm/m]
    """

    sheet: Sheet
    x0: float
    y0: float
    scale: float

    def at(self, x: float, y: float) -> Pair:
        """Paper place of a model point. [mm]"""
        return (self.x0 + x * self.scale, self.y0 + y * self.scale)

    def ring(self, polygon: Iterable[Pair]) -> np.ndarray:
        """Paper ring of a model polygon. [mm]"""
        return np.asarray(polygon, dtype=float) * self.scale + (self.x0, self.y0)

    def cut(
        self,
        rings: Iterable[Iterable[Pair]],
        material: str,
        weight: str = "cut",
        tone: str | None = None,
    ) -> None:
        """A material in the cut plane: tone, hatch, heavy outline."""
        placed = [self.ring(r) for r in rings]
        self.sheet.fill(placed, tone or material, material)
        for ring in placed:
            self.sheet.line(ring, weight, closed=True)

    def seen(
        self,
        polygon: Iterable[Pair],
        tone: str | None = None,
        weight: str = "seen",
        layer: int = 0,
        ink: str = "ink",
    ) -> None:
        """A surface that lies behind the cut."""
        ring = self.ring(polygon)
        if tone:
            self.sheet.fill([ring], tone, layer=layer)
        self.sheet.line(ring, weight, ink, closed=True)

    def path(self, points: Iterable[Pair], weight: str = "seen", ink: str = "ink") -> None:
        """A polyline in model metres."""
        self.sheet.line(self.ring(points), weight, ink)


def spread(wanted: Sequence[float], sizes: Sequence[float], low: float, high: float) -> list[float]:
    """Move labels along a line as little as possible until none overlaps its neighbour.

    Parameters
    ----------
    wanted : sequence of float
        Where each would like its middle, in rising order. [mm]
    sizes : sequence of float
        Room each takes. [mm]
    low, high : float
        Ends of the line; kept where there is room for all. [mm]

    Returns
    -------
    list of float
        Where each comes to lie.

    Examples
    --------
    >>> spread([0.0, 1.0, 10.0], [4.0, 4.0, 4.0], -50, 50)
    [-1.5, 2.5, 10.0]
    """
    if not wanted:
        return []
    shifts, total = [], 0.0
    for i, size in enumerate(sizes):
        total += size / 2 + (sizes[i - 1] / 2 if i else 0.0)
        shifts.append(total)
    blocks: list[list[float]] = []
    for value, shift in zip(wanted, shifts, strict=True):
        blocks.append([value - shift, 1.0])
        while len(blocks) > 1 and blocks[-2][0] > blocks[-1][0]:
            mean, count = blocks.pop()
            blocks[-1] = [
                (blocks[-1][0] * blocks[-1][1] + mean * count) / (blocks[-1][1] + count),
                blocks[-1][1] + count,
            ]
    placed = [mean for mean, count in blocks for _ in range(int(count))]
    placed = [min(max(p, low), high - sum(sizes)) for p in placed]
    return [p + s for p, s in zip(placed, shifts, strict=True)]
