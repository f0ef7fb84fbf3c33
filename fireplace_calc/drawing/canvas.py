"""Painting a sheet: onto any Axes, or into one picture that is kept and drawn again and again.

Only vertices change from one picture to the next. Letters are outlines, so nothing is laid out twice.
"""

from __future__ import annotations

import io

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.collections import LineCollection
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from fireplace_calc.drawing import lettering
from fireplace_calc.drawing.sheet import Sheet
from fireplace_calc.drawing.style import DASHES, THEMES, WEIGHT, Theme

MM_TO_POINTS = 72 / 25.4
HATCH_WEIGHT = 0.10
"""Of a hatch line. [mm]"""

_EMPTY = Path(np.zeros((1, 2)), [Path.MOVETO])


def _compound(polygons: list[list[np.ndarray]]) -> Path:
    """One path of many closed rings; a ring inside another is a hole."""
    rings = [_oriented(ring, k == 0) for polygon in polygons for k, ring in enumerate(polygon)]
    vertices = np.concatenate([np.concatenate([ring, ring[:1]]) for ring in rings])
    codes = np.full(len(vertices), Path.LINETO, Path.code_type)
    ends = np.cumsum([len(ring) + 1 for ring in rings])
    codes[ends - 1] = Path.CLOSEPOLY
    codes[np.concatenate([[0], ends[:-1]])] = Path.MOVETO
    return Path(vertices, codes)


def _oriented(ring: np.ndarray, outer: bool) -> np.ndarray:
    x, y = ring[:, 0], ring[:, 1]
    ccw = np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)) > 0
    return ring if ccw == outer else ring[::-1]


def _letters(labels) -> Path:
    placed = [lettering.place(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold) for n in labels]
    return Path(np.concatenate([v for v, _ in placed]), np.concatenate([c for _, c in placed]))


class Painter:
    """Puts sheets onto one Axes; artists are made once for each layer and kept."""

    def __init__(self, ax, theme: str = "light"):
        self.ax, self.theme = ax, THEMES[theme]
        ax.set_axis_off()
        self.kept: dict[tuple, object] = {}

    def set_theme(self, theme: str) -> None:
        """Change colours; the next sheet is painted afresh."""
        self.theme = THEMES[theme]
        for artist in self.kept.values():
            artist.remove()
        self.kept.clear()

    def paint(self, sheet: Sheet) -> None:
        """Bring every artist up to date with a sheet."""
        theme, touched = self.theme, set()
        self.ax.set_xlim(0, sheet.width)
        self.ax.set_ylim(0, sheet.height)
        for (layer, tone), polygons in sheet.fills.items():
            touched.add(self._patch(("fill", layer, tone), _compound(polygons), theme.tones.get(tone) or _ink(theme, tone),
                                    1 + layer / 10))
        if sheet.hatches:
            touched.add(self._segments(("hatch",), np.concatenate(sheet.hatches), HATCH_WEIGHT, theme.soft, 2))
        for (weight, ink), polylines in sheet.lines.items():
            touched.add(self._segments((weight, ink), polylines, WEIGHT[weight], _ink(theme, ink), 3, DASHES.get(weight)))
        for ink in {label.ink for label in sheet.labels}:
            touched.add(self._patch(("letters", ink), _letters([n for n in sheet.labels if n.ink == ink]), _ink(theme, ink), 5))
        for key, artist in self.kept.items():
            if artist.get_visible() != (key in touched):
                artist.set_visible(key in touched)

    def _patch(self, key: tuple, path: Path, colour: str, order: float) -> tuple:
        if key in self.kept:
            self.kept[key].set_path(path)
        else:
            self.kept[key] = self.ax.add_patch(PathPatch(path, facecolor=colour, edgecolor="none", linewidth=0, zorder=order))
        return key

    def _segments(self, key: tuple, segments, weight: float, colour: str, order: float, dashes=None) -> tuple:
        if key in self.kept:
            self.kept[key].set_segments(segments)
        else:
            style = "solid" if dashes is None else (0, tuple(d / weight for d in dashes))
            self.kept[key] = self.ax.add_collection(LineCollection(
                segments, linewidths=weight * MM_TO_POINTS, colors=colour, linestyles=[style], zorder=order, capstyle="round",
            ), autolim=False)
        return key


def _ink(theme: Theme, name: str) -> str:
    return getattr(theme, name)


def paint(ax, sheet: Sheet, theme: str = "light") -> None:
    """Paint a sheet once onto an Axes."""
    ax.set_aspect("equal")
    ax.set_facecolor(THEMES[theme].paper)
    Painter(ax, theme).paint(sheet)


class Picture:
    """One figure on its Agg canvas, kept for as long as the panel lives.

    Parameters
    ----------
    width, height : float
        Of the sheet. [mm]
    dots : float
        Screen dots to a millimetre. [1/mm]
    """

    def __init__(self, width: float, height: float, dots: float = 4.0, theme: str = "light"):
        self.figure = Figure(figsize=(width / 25.4, height / 25.4), dpi=dots * 25.4, facecolor=THEMES[theme].paper)
        self.canvas = FigureCanvasAgg(self.figure)
        self.ax = self.figure.add_axes((0, 0, 1, 1))
        self.painter = Painter(self.ax, theme)

    def set_theme(self, theme: str) -> None:
        """Change between light, dark and print."""
        self.figure.set_facecolor(THEMES[theme].paper)
        self.painter.set_theme(theme)

    def draw(self, sheet: Sheet) -> np.ndarray:
        """Paint a sheet and return its dots, (height, width, 4)."""
        self.painter.paint(sheet)
        self.canvas.draw()
        dots = np.asarray(self.canvas.buffer_rgba())
        if sheet.stamp is not None:
            bits = [(sheet.stamp >> k) & 1 for k in range(16)]
            for k, bit in enumerate(bits):
                dots[-3:, 3 * k:3 * k + 3, :3] = 255 * bit
        return dots

    def png(self, sheet: Sheet) -> bytes:
        """The sheet as PNG, packed fast rather than small."""
        from PIL import Image

        out = io.BytesIO()
        dots = self.draw(sheet)
        Image.fromarray(np.ascontiguousarray(dots[:, :, :3])).save(out, "PNG", compress_level=1)
        return out.getvalue()

    def jpeg(self, sheet: Sheet) -> bytes:
        """The sheet as JPEG of high quality, without colour subsampling; quicker to pack than PNG."""
        from PIL import Image

        out = io.BytesIO()
        dots = self.draw(sheet)
        Image.fromarray(np.ascontiguousarray(dots[:, :, :3])).save(out, "JPEG", quality=90, subsampling=0)
        return out.getvalue()
