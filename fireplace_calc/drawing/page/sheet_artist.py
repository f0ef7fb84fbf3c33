"""A sheet as one Artist: the same on the page's canvas, on Agg, in an SVG and in a PDF."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from matplotlib.artist import Artist
from matplotlib.backend_bases import GraphicsContextBase, RendererBase
from matplotlib.colors import to_rgba
from matplotlib.font_manager import FontProperties
from matplotlib.transforms import Affine2D

from fireplace_calc.drawing.page.glyphs import FAMILY
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.ink_layers import MM_TO_POINTS, Layer, layers
from fireplace_calc.drawing.sheets.sheet import Label, Sheet
from fireplace_calc.drawing.sheets.style import THEMES

if TYPE_CHECKING:
    from matplotlib.figure import Figure


class SheetArtist(Artist):
    """Draws a sheet on whatever renderer it is given.

    Parameters
    ----------
    sheet : Sheet
    theme : str
        ``light``, ``dark`` or ``print``.

    Notes
    -----
    A renderer of dots is handed letters as outlines, which it puts where the page puts them; every
    other one is handed texts, which a PDF keeps as texts that can be searched.
    """

    def __init__(self, sheet: Sheet, theme: str = "light") -> None:
        super().__init__()
        self.sheet, self.theme = sheet, THEMES[theme]

    def draw(self, renderer: RendererBase) -> None:
        """Hand every layer and every label over."""
        if not self.get_visible():
            return
        dotted = hasattr(renderer, "buffer_rgba")
        scale: Any = renderer.points_to_pixels(MM_TO_POINTS)
        transform, gc = Affine2D().scale(scale), renderer.new_gc()
        gc.set_joinstyle("miter")
        for layer in layers(self.sheet, self.theme, letters=dotted):
            self._stroke(renderer, gc, layer, transform)
        if not dotted:
            high = self.sheet.height if renderer.flipy() else None
            for label in self.sheet.labels:
                gc.set_foreground(getattr(self.theme, label.ink))
                _write(renderer, gc, label, scale, high)
        gc.restore()

    def _stroke(
        self, renderer: RendererBase, gc: GraphicsContextBase, layer: Layer, transform: Affine2D
    ) -> None:
        gc.set_snap(layer.crisp)
        if layer.edge is None:
            gc.set_linewidth(0.0)
            renderer.draw_path(gc, layer.path, transform, to_rgba(layer.face or "none"))
            return
        gc.set_linewidth(layer.width * MM_TO_POINTS)
        gc.set_foreground(layer.edge)
        gc.set_capstyle(layer.cap)
        gc.set_dashes(0, [d * MM_TO_POINTS for d in layer.dashes] if layer.dashes else None)
        renderer.draw_path(gc, layer.path, transform, None)


@lru_cache(maxsize=64)
def _font(size: float, bold: bool) -> FontProperties:
    return FontProperties(
        family=FAMILY,
        size=lettering.font_size(size) * MM_TO_POINTS,
        weight="bold" if bold else "normal",
    )


def _write(
    renderer: RendererBase, gc: GraphicsContextBase, n: Label, scale: float, high: float | None
) -> None:
    x, y = lettering.base(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold)
    up = y if high is None else high - y
    angle = 90.0 if n.turned else 0.0
    renderer.draw_text(gc, x * scale, up * scale, n.text, _font(n.size, n.bold), angle)


def sheet_figure(sheet: Sheet, theme: str = "light") -> Figure:
    """A Figure of the sheet's own size that holds nothing but the sheet.

    Parameters
    ----------
    sheet : Sheet
    theme : str
        ``light``, ``dark`` or ``print``.

    Returns
    -------
    Figure
        ``savefig`` writes it as SVG, PDF or PNG; ``PageCanvas`` hands it to a page.
    """
    from matplotlib.figure import Figure

    made = Figure((sheet.width / 25.4, sheet.height / 25.4), facecolor=THEMES[theme].paper)
    made.add_artist(SheetArtist(sheet, theme))
    return made
