"""Sheets on a page of the browser: lines and letters on a canvas of their own (``stage.js`` and
``painting.js`` beside this file).
"""

from __future__ import annotations

import anywidget
import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.drawing.page.glyphs import glyph_table

FOLDER = "panels/picture"
"""Where the files are, within the package."""
SHEETS_STYLE = """
.fireplace-canvases { position: relative; width: calc(100% - 2px); max-width: 1050px; margin: 1px;
  aspect-ratio: 300 / 186; overflow: hidden;
  box-shadow: 0 0 0 1px var(--jp-border-color2, #d5d8da); }
.fireplace-canvases[hidden] { display: none; }
.fireplace-canvases .fp-sheet { position: absolute; display: block; contain: strict; }
"""
"""A place for sheets, as wide as there is room for."""


def elements_source() -> str:
    """What every page of ours makes its elements with."""
    return page_source(FOLDER, "elements.js")


def sheets_source() -> str:
    """The same, and what a page with sheets needs besides."""
    return page_source(FOLDER, "elements.js", "painting.js", "stage.js")


def framed_source() -> str:
    """What a page needs that has a notebook's cell, or the whole window, to itself."""
    return page_source(FOLDER, "framed.js")


def framed_style() -> str:
    """How such a page stands: its root is of the class ``fp-bench``."""
    return page_source(FOLDER, "framed.css")


class SheetTraits(anywidget.AnyWidget):
    """What a page with sheets is told of them.

    Attributes
    ----------
    glyphs : dict
        Outline of every letter, by face and letter.
    drawn : dict
        ``stage`` and ``bodies``, as ``LiveStage.message`` gives them; empty hides the place.
    """

    glyphs = traitlets.Dict().tag(sync=True)
    drawn = traitlets.Dict().tag(sync=True)

    @traitlets.default("glyphs")
    def _letters(self) -> object:
        return glyph_table()


class SheetPage(SheetTraits):
    """Sheets and nothing else.

    Attributes
    ----------
    wide : int
        How wide the page has made their place, in tens; nought before it has told. [px]
    """

    wide = traitlets.Int(0).tag(sync=True)
    _esm = sheets_source() + page_source(FOLDER, "sheet_page.js")
    _css = SHEETS_STYLE
