"""The client's bar: ``field.js`` of the workbench and ``client.js`` beside this file, as one module
of the browser.
"""

from __future__ import annotations

import anywidget
import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.picture.sheet_page import elements_source
from fireplace_calc.panels.workbench.bench_page import FOLDER as WORKBENCH

FOLDER = "panels/fireside"
"""Where its files are, within the package."""


class ClientPage(anywidget.AnyWidget):
    """What a client decides, what a slider stops at, and one line of what it comes to.

    Attributes
    ----------
    first : dict
        What it shows until the kernel answers: ``name``, ``fields``, ``stops`` and ``line``.
    said : str
        Answer to what was done last, as HTML.
    """

    _esm = elements_source() + page_source(WORKBENCH, "field.js") + page_source(FOLDER, "client.js")
    _css = page_source(WORKBENCH, "field.css") + page_source(FOLDER, "client.css")
    first = traitlets.Dict().tag(sync=True)
    said = traitlets.Unicode().tag(sync=True)
