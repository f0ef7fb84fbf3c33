"""Pages painted: as a PDF whose text can be searched, or each as a picture."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING

from fireplace_calc.base.resources import made_by
from fireplace_calc.drawing.client_pages.leaf import FONTS, PAPER, POINT, Leaf, font_file, letters

if TYPE_CHECKING:
    from PIL.Image import Image

SHARPNESS = 150
"""Of a page as a picture. [dots/in]"""
FINER = 2
"""Dots drawn for each that is kept, across and down. [-]"""


def as_pdf(pages: Sequence[Leaf], title: str) -> bytes:
    """Pages as one PDF, true to size.

    Parameters
    ----------
    pages : sequence of Leaf
    title : str
        Written into it.

    Returns
    -------
    bytes
    """
    # here, so that whoever writes no page need not wait
    from reportlab.lib.colors import HexColor
    from reportlab.lib.utils import ImageReader
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

    from fireplace_calc.drawing.sheets.pdf import finish

    for name, family in FONTS.items():
        if family not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(family, font_file(name)))
    file = BytesIO()
    canvas = Canvas(file, pageCompression=1, invariant=1)
    canvas.setTitle(title)
    for say in (canvas.setAuthor, canvas.setCreator, canvas.setProducer):
        say(made_by())
    for page in pages:
        canvas.setPageSize((page.width / POINT, page.height / POINT))
        for one in page.pictures:
            canvas.drawImage(
                ImageReader(BytesIO(one.file)),
                one.x / POINT,
                (page.height - one.y - one.height) / POINT,
                one.width / POINT,
                one.height / POINT,
                mask="auto",
            )
        for stroke in page.strokes:
            canvas.setStrokeColor(HexColor(stroke.color))
            canvas.setLineWidth(stroke.width / POINT)
            (x0, y0), (x1, y1) = (
                (x / POINT, (page.height - y) / POINT) for x, y in (stroke.start, stroke.end)
            )
            (canvas.ellipse if stroke.ring else canvas.line)(x0, y0, x1, y1)
        for line in page.words:
            canvas.setFillColor(HexColor(line.color))
            canvas.setFont(FONTS[line.font], line.size)
            base = line.y + line.size * POINT
            canvas.drawString(line.x / POINT, (page.height - base) / POINT, line.text)
        canvas.showPage()
    finish(canvas)
    return file.getvalue()


def as_png(page: Leaf, sharpness: int = SHARPNESS) -> bytes:
    """One page as a picture.

    Parameters
    ----------
    page : Leaf
    sharpness : int
        Dots to an inch. [1/in]

    Returns
    -------
    bytes
        PNG.
    """
    file = BytesIO()
    # Drawn finer and made smaller: letters keep their distances.
    _dots(page, FINER * sharpness).reduce(FINER).save(file, "PNG", dpi=(sharpness, sharpness))
    return file.getvalue()


def _dots(page: Leaf, sharpness: int) -> Image:
    from PIL import Image, ImageDraw

    k = sharpness / 25.4
    made = Image.new("RGB", (round(page.width * k), round(page.height * k)), PAPER)
    pen = ImageDraw.Draw(made)
    for one in page.pictures:
        left, top, right, bottom = (round(edge * k) for edge in one.box)
        size = (max(right - left, 1), max(bottom - top, 1))
        picture = (
            Image.open(BytesIO(one.file)).convert("RGBA").resize(size, Image.Resampling.LANCZOS)
        )
        made.paste(picture, (left, top), picture)
    for stroke in page.strokes:
        width = max(round(stroke.width * k), 1)
        ends = [(x * k, y * k) for x, y in (stroke.start, stroke.end)]
        if stroke.ring:
            pen.ellipse(ends, outline=stroke.color, width=width)
        else:
            pen.line(ends, fill=stroke.color, width=width)
    for line in page.words:
        base = (line.y + line.size * POINT) * k
        font = letters(line.font, round(line.size * POINT * k))
        pen.text((line.x * k, base), line.text, fill=line.color, font=font, anchor="ls")
    return made
