"""The lesson's page, drawn by ``lesson.js`` and ``lesson_screens.js`` beside this file."""

from __future__ import annotations

import anywidget
import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.picture.sheet_page import framed_source, framed_style, sheets_source

FOLDER = "panels/lesson"
"""Where its files are, within the package."""


class LessonPage(anywidget.AnyWidget):
    """Heading, screens, picture and words.

    Attributes
    ----------
    first : dict
        What it shows until the kernel answers, as ``LessonDesk.told`` gives it.
    glyphs : dict
        Outline of every letter, by face and letter.
    """

    _esm = sheets_source() + framed_source() + page_source(FOLDER, "lesson_screens.js", "lesson.js")
    _css = framed_style() + page_source(FOLDER, "lesson.css")
    first = traitlets.Dict().tag(sync=True)
    glyphs = traitlets.Dict().tag(sync=True)

    def __repr__(self) -> str:
        """What a notebook has where the page is not drawn."""
        return "The page of a lesson"
