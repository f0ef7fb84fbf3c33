"""One input in a fold: ``field.js`` by itself, 44 pixels high, its error at the field."""

from __future__ import annotations

from typing import Any

import anywidget
import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.picture.sheet_page import elements_source
from fireplace_calc.panels.workbench.bench_page import FOLDER


class FieldBox(anywidget.AnyWidget):
    """A box or a list of words with its name.

    Attributes
    ----------
    value : object
        What stands in it: text, or one of ``options``; a whole number in a count.
    kind : str
        ``text``, ``count`` or ``choice``.
    description, tooltip, placeholder : str
        Its name, what it means, and what is allowed.
    options : tuple of str
        Words to choose from, or to pick while typing.
    disabled : bool
        Whether something else decides it; ``tooltip`` then says what.
    note : str
        What came of the answer, where that is worth a line.
    wrong : str
        What was wrong with the last answer, in one sentence.
    """

    _esm = elements_source() + page_source(FOLDER, "field.js", "field_box.js")
    _css = page_source(FOLDER, "field.css")
    value = traitlets.Any("").tag(sync=True)
    kind = traitlets.Enum(("text", "count", "choice"), "text").tag(sync=True)
    description = traitlets.Unicode().tag(sync=True)
    tooltip = traitlets.Unicode().tag(sync=True)
    placeholder = traitlets.Unicode().tag(sync=True)
    options = traitlets.Tuple().tag(sync=True)
    disabled = traitlets.Bool(False).tag(sync=True)
    note = traitlets.Unicode().tag(sync=True)
    wrong = traitlets.Unicode().tag(sync=True)

    @traitlets.validate("value")
    def _known(self, proposal: dict[str, Any]) -> Any:
        """A whole number where a count was typed as one; anything else goes on as it came."""
        value = proposal["value"]
        if self.kind == "count" and isinstance(value, str) and value.strip().lstrip("-").isdigit():
            return int(value)
        return value
