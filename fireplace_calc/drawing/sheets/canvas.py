"""Painting a sheet: onto any Axes, or straight into a picture that is drawn again and again.

A sheet becomes a few layers, each one path with one pen. Letters are outlines, so nothing is laid
out twice; and the picture asks Agg itself, so no artist stands between a layer and its dots.
"""

from __future__ import annotations

import io
from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np
from matplotlib.backend_bases import GraphicsContextBase
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.colors import to_rgba
from matplotlib.patches import PathPatch
from matplotlib.transforms import Affine2D, Bbox

from fireplace_calc.drawing.sheets.ink_layers import HATCH_WEIGHT, MM_TO_POINTS, Layer, layers
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def paint(ax: Axes, sheet: Sheet, theme: str = "light") -> None:
    """Paint a sheet once onto an Axes."""
    ax.set_axis_off()
    ax.set_aspect("equal")
    ax.set_xlim(0, sheet.width)
    ax.set_ylim(0, sheet.height)
    for order, layer in enumerate(layers(sheet, THEMES[theme])):
        style = (
            "solid" if layer.dashes is None else (0, tuple(d / layer.width for d in layer.dashes))
        )
        ax.add_patch(
            PathPatch(
                layer.path,
                facecolor=layer.face or "none",
                edgecolor=layer.edge or "none",
                fill=bool(layer.face),
                linewidth=layer.width * MM_TO_POINTS,
                linestyle=style,
                capstyle="butt" if layer.dashes else "round",
                joinstyle="miter",
                zorder=order + 1,
            )
        )


class Picture:
    """One drawing surface, kept for as long as the panel lives.

    Parameters
    ----------
    width, height : float
        Of the sheet. [mm]
    dots : float
        Screen dots to a millimetre. [1/mm]
    theme : str
        ``light``, ``dark`` or ``print``.
    """

    def __init__(
        self, width: float, height: float, dots: float = 3.5, theme: str = "light"
    ) -> None:
        self.dots = dots
        self.set_theme(theme)
        self.renderer = RendererAgg(round(width * dots), round(height * dots), dots * 25.4)
        self.transform = Affine2D().scale(dots)

    def set_theme(self, theme: str) -> None:
        """Change between light, dark and print."""
        self.theme = THEMES[theme]
        self.shown: dict[Cell, Sheet] = {}
        self.paper = np.array(np.multiply(to_rgba(self.theme.paper), 255), np.uint8).view(
            np.uint32
        )[0]

    def draw(self, views: Iterable[tuple[Cell, Sheet]]) -> np.ndarray:
        """Paint views, each in its cell; one that is already there, the very same sheet, is left
        alone.

        Parameters
        ----------
        views : sequence of (Cell, Sheet)
            Cells do not overlap; nothing of a sheet lies outside its cell.

        Returns
        -------
        array, (height, width, 4)
            Dots, red green blue and one to spare; the next picture is painted over them.
        """
        buffer, views = np.asarray(self.renderer.buffer_rgba()), list(views)
        if {cell for cell, _ in views} != set(self.shown):
            buffer.view(np.uint32).fill(self.paper)
            self.shown = {}
        for cell, sheet in views:
            if self.shown.get(cell) is not sheet:
                self._put(buffer, cell, sheet)
        return buffer

    def _place(self, buffer: np.ndarray, cell: Cell) -> tuple[slice, slice]:
        high = buffer.shape[0]
        left, right = round(cell.left * self.dots), round(cell.right * self.dots)
        return slice(
            high - round(cell.top * self.dots), high - round(cell.bottom * self.dots)
        ), slice(left, right)

    def _put(self, buffer: np.ndarray, cell: Cell, sheet: Sheet) -> None:
        buffer.view(np.uint32)[self._place(buffer, cell)] = self.paper
        gc = self.renderer.new_gc()
        gc.set_clip_rectangle(
            Bbox(np.multiply(((cell.left, cell.bottom), (cell.right, cell.top)), self.dots))
        )
        gc.set_joinstyle("miter")
        for layer in layers(sheet, self.theme):
            self._stroke(gc, layer)
        self.shown = {there: one for there, one in self.shown.items() if not there.meets(cell)} | {
            cell: sheet
        }

    def _stroke(self, gc: GraphicsContextBase, layer: Layer) -> None:
        gc.set_linewidth(layer.width * self.dots)
        gc.set_snap(layer.crisp)
        if layer.edge is None:
            face = to_rgba(layer.face or "none")
            self.renderer.draw_path(gc, layer.path, self.transform, face)
            return
        gc.set_foreground(layer.edge)
        gc.set_capstyle(
            "butt" if layer.dashes else "projecting" if layer.width == HATCH_WEIGHT else "round"
        )
        gc.set_dashes(0, [d * self.dots for d in layer.dashes] if layer.dashes else None)
        self.renderer.draw_path(gc, layer.path, self.transform, None)

    def png(self, views: Iterable[tuple[Cell, Sheet]]) -> bytes:
        """The views as PNG, without loss."""
        from PIL import Image

        out = io.BytesIO()
        Image.fromarray(np.ascontiguousarray(self.draw(views)[:, :, :3])).save(
            out, "PNG", compress_level=6
        )
        return out.getvalue()
