"""A sheet's lines, areas and letters as layers of equal ink and weight."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np
from matplotlib.path import Path

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Label, Sheet
from fireplace_calc.drawing.sheets.style import DASHES, WEIGHT, Theme

MM_TO_POINTS = 72 / 25.4


HATCH_WEIGHT = 0.10
"""Of a hatch line. [mm]"""


@dataclass(frozen=True, slots=True)
class Layer:
    """One path with one pen: filled with ``face`` or drawn with ``edge``, ``width`` in mm;
    ``crisp`` on whole dots.
    """

    path: Path
    face: str | None = None
    edge: str | None = None
    width: float = 0.0
    dashes: tuple[float, ...] | None = None
    crisp: bool = False

    @property
    def cap(self) -> Literal["butt", "projecting", "round"]:
        """How its lines end, as matplotlib calls it."""
        if self.dashes or self.edge is None:
            return "butt"
        return "projecting" if self.width == HATCH_WEIGHT else "round"


def layers(sheet: Sheet, theme: Theme, letters: bool = True) -> Iterator[Layer]:
    """The sheet from back to front, with its letters as outlines or without them."""
    for tone, path in _areas(sorted(sheet.fills.items(), key=lambda fill: fill[0][0])):
        yield Layer(path, face=theme.tones.get(tone) or getattr(theme, tone))
    fine = sheet.fine_lines()
    if len(fine):
        yield Layer(_dashes(fine), edge=theme.soft, width=HATCH_WEIGHT)
    for weight, ink, crisp, path in _strokes(sheet.lines):
        yield Layer(
            path,
            edge=getattr(theme, ink),
            width=WEIGHT[weight],
            dashes=DASHES.get(weight),
            crisp=crisp,
        )
    for ink in sorted({label.ink for label in sheet.labels}) if letters else ():
        yield Layer(_letters(n for n in sheet.labels if n.ink == ink), face=getattr(theme, ink))


def _areas(
    fills: list[tuple[tuple[float, str], list[list[np.ndarray]]]],
) -> Iterator[tuple[str, Path]]:
    """Closed rings of each tone as one path; a ring inside another runs the other way round and is
    a hole.
    """
    if not fills:
        return
    rings = [ring for _, polygons in fills for polygon in polygons for ring in polygon]
    holes = np.array(
        [k > 0 for _, polygons in fills for polygon in polygons for k in range(len(polygon))]
    )
    starts = _starts(rings)
    x, y = np.concatenate(rings).T
    after = np.arange(1, len(x) + 1)
    after[np.append(starts[1:], len(x)) - 1] = starts
    # twice the signed area of each ring tells which way it runs (shoelace)
    twice = np.add.reduceat(x * y[after] - x[after] * y, starts)
    turned = iter(
        [
            ring[::-1] if back else ring
            for ring, back in zip(rings, (twice > 0) == holes, strict=True)
        ]
    )
    for (_, tone), polygons in fills:
        closed = [
            part
            for polygon in polygons
            for _ in polygon
            for ring in (next(turned),)
            for part in (ring, ring[:1])
        ]
        yield tone, _path(*_joined(closed, _starts(closed)[::2]))


def _strokes(
    lines: dict[tuple[str, str], list[np.ndarray]],
) -> Iterator[tuple[str, str, bool, Path]]:
    """Polylines of each pen as at most two paths, and whether its lines may be moved onto whole
    dots: a curve or a slant would wobble.
    """
    runs = [run for polylines in lines.values() for run in polylines]
    if not runs:
        return
    starts = _starts(runs)
    vertices, codes = _joined(runs, starts)
    # even: this vertex lies level or plumb with the one before it in its polyline
    even = np.ones(len(vertices), bool)
    even[1:] = (np.abs(vertices[1:] - vertices[:-1]) < 1e-6).any(axis=1)
    even[starts] = True
    crisp = np.repeat(np.logical_and.reduceat(even, starts), [len(run) for run in runs])
    end = 0
    for (weight, ink), polylines in lines.items():
        begin, end = end, end + sum(map(len, polylines))
        for kind in (False, True):
            chosen = begin + np.flatnonzero(crisp[begin:end] == kind)
            if len(chosen):
                yield weight, ink, kind, _path(vertices[chosen], codes[chosen])


def _starts(runs: list[np.ndarray]) -> np.ndarray:
    """Where each run begins when they stand one after the other."""
    return np.cumsum([0, *map(len, runs[:-1])])


def _joined(runs: list[np.ndarray], starts: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    vertices = np.concatenate(runs)
    codes = np.full(len(vertices), Path.LINETO, Path.code_type)
    codes[starts] = Path.MOVETO
    return vertices, codes


def _path(vertices: np.ndarray, codes: np.ndarray) -> Path:
    # Path() checks every vertex again, which a moving slider pays for in each picture
    made: Path = Path._fast_from_codes_and_verts(  # type: ignore[attr-defined]  # not in the stubs
        vertices, codes
    )
    return made


def _dashes(segments: np.ndarray) -> Path:
    codes = np.empty(2 * len(segments), Path.code_type)
    codes[::2], codes[1::2] = Path.MOVETO, Path.LINETO
    return _path(segments.reshape(-1, 2), codes)


def _letters(labels: Iterable[Label]) -> Path:
    placed = [
        lettering.place(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold) for n in labels
    ]
    return _path(np.concatenate([v for v, _ in placed]), np.concatenate([c for _, c in placed]))
