"""Painting sheets onto the pages of a PDF: true size, black on white, text that can be searched."""

from __future__ import annotations

import os
from typing import BinaryIO

import matplotlib
import numpy as np
from matplotlib.path import Path
from reportlab import rl_config
from reportlab.lib.colors import HexColor
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from fireplace_calc.base.resources import made_by
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.ink_layers import MM_TO_POINTS, Layer, layers
from fireplace_calc.drawing.sheets.sheet import Label, Sheet
from fireplace_calc.drawing.sheets.style import THEMES, Theme

FONTS = {False: "DejaVuSans", True: "DejaVuSans-Bold"}
"""The same letters as on the screen, plain and bold."""
BUTT, ROUND, MITRE, NON_ZERO = 0, 1, 0, 1


def _fonts() -> None:
    for name in FONTS.values():
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(
                TTFont(
                    name, os.path.join(matplotlib.get_data_path(), "fonts", "ttf", f"{name}.ttf")
                )
            )


def can_be_printed(text: str) -> bool:
    """Whether the font of the papers has every letter of a text.

    >>> can_be_printed("Zoë"), can_be_printed("\N{CJK UNIFIED IDEOGRAPH-5C0F}")
    (True, False)
    """
    _fonts()
    return all(ord(letter) in pdfmetrics.getFont(FONTS[True]).face.charToGlyph for letter in text)


class PdfBook:
    """A PDF that is filled page by page.

    Parameters
    ----------
    path : str
        Of the file.
    title, subject : str
        Written into it.
    theme : str
        How it is painted; print is black on white.
    """

    def __init__(
        self, path: str | BinaryIO, title: str, subject: str, theme: str = "print"
    ) -> None:
        _fonts()
        self.theme: Theme = THEMES[theme]
        self.canvas = Canvas(path, pageCompression=1, invariant=1)
        self.canvas.setTitle(title)
        self.canvas.setSubject(subject)
        self.canvas.setAuthor(made_by())
        self.canvas.setCreator(made_by())
        self.canvas.setProducer(made_by())

    def add(self, sheet: Sheet) -> None:
        """One sheet, one page of its own size."""
        self.canvas.setPageSize((sheet.width * MM_TO_POINTS, sheet.height * MM_TO_POINTS))
        for layer in layers(sheet, self.theme, letters=False):
            self._stroke(layer)
        for label in sheet.labels:
            self._write(label)
        self.canvas.showPage()

    def save(self) -> None:
        """Write the file."""
        finish(self.canvas)

    def _stroke(self, layer: Layer) -> None:
        canvas = self.canvas
        canvas.setFillColor(HexColor(layer.face or "#000000"))
        canvas.setStrokeColor(HexColor(layer.edge or "#000000"))
        canvas.setLineWidth(layer.width * MM_TO_POINTS)
        canvas.setLineCap(BUTT if layer.dashes else ROUND)
        canvas.setLineJoin(MITRE)
        canvas.setDash([d * MM_TO_POINTS for d in layer.dashes] if layer.dashes else [])
        canvas.drawPath(
            PDFPathObject([_written(layer.path)]),
            stroke=int(layer.edge is not None),
            fill=int(layer.face is not None),
            fillMode=NON_ZERO,
        )

    def _write(self, n: Label) -> None:
        canvas = self.canvas
        x, y = (
            c * MM_TO_POINTS
            for c in lettering.base(n.x, n.y, n.text, n.size, n.ha, n.va, n.turned, n.bold)
        )
        canvas.setFillColor(HexColor(getattr(self.theme, n.ink)))
        canvas.setFont(FONTS[n.bold], lettering.font_size(n.size) * MM_TO_POINTS)
        if not n.turned:
            canvas.drawString(x, y, n.text)
            return
        canvas.saveState()
        canvas.translate(x, y)
        canvas.rotate(90)
        canvas.drawString(0, 0, n.text)
        canvas.restoreState()


def finish(canvas: Canvas) -> None:
    """Write what a canvas holds, packed as bytes: as letters, which only mail of old asked for, a
    file is a quarter larger and takes longer to write than to draw.

    Parameters
    ----------
    canvas : Canvas
    """
    letters, rl_config.useA85 = rl_config.useA85, 0
    try:
        canvas.save()
    finally:
        rl_config.useA85 = letters


def _written(path: Path) -> str:
    """A path of straight lines as a page has it, to a thousandth of a point: all of its figures in
    one go, since one by one they take longer than the drawing.
    """
    steps = [
        "%.3f %.3f m" if code == Path.MOVETO else "%.3f %.3f l" for code in np.asarray(path.codes)
    ]
    return " ".join(steps) % tuple((np.asarray(path.vertices) * MM_TO_POINTS).ravel().tolist())
