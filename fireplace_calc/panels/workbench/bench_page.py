"""The workbench's page: what every page with sheets has, ``field.js`` and ``workbench.js`` beside
this file, as one module of the browser.
"""

from __future__ import annotations

import anywidget
import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.html import STYLE
from fireplace_calc.panels.picture.sheet_page import framed_source, framed_style, sheets_source

FOLDER = "panels/workbench"
"""Where its files are, within the package."""


class BenchPage(anywidget.AnyWidget):
    """Bar, tabs, controls, stage and strip.

    Attributes
    ----------
    first : dict
        What it shows until the kernel answers: ``tabs``, ``lists``, ``fields``, ``strip``,
        ``stage`` and the ``bodies`` of its sheets.
    glyphs : dict
        Outline of every letter, by face and letter.
    said : str
        Answer to what was done last, as HTML.
    """

    _esm = sheets_source() + framed_source() + page_source(FOLDER, "field.js", "workbench.js")
    _css = (
        STYLE.replace("<style>", "").replace("</style>", "")
        + framed_style()
        + page_source(FOLDER, "field.css", "workbench.css")
    )
    first = traitlets.Dict().tag(sync=True)
    glyphs = traitlets.Dict().tag(sync=True)
    said = traitlets.Unicode().tag(sync=True)


class StageAnswer:
    """The sentence over the picture; ``value`` is HTML, as of any other widget of words."""

    def __init__(self, page: BenchPage) -> None:
        self.page = page

    @property
    def value(self) -> str:
        """As it stands."""
        return str(self.page.said)

    @value.setter
    def value(self, text: str) -> None:
        self.page.said = text
