"""A design to look through: its views, one or all at once, and its figures in two columns."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import ipywidgets as w

from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.live import live_views
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.panels.controls.choices import dropdown, row
from fireplace_calc.panels.picture.board import Board

VIEWS = {
    "All four views": "all",
    "Front elevation": "front",
    "Section": "section",
    "Plan": "plan",
    "Against the roof": "roof",
}
COLUMNS = (Column("Part", 18), Column("Figure", 34), Column("", 26)) * 2
NO_FIGURE = ("", "", "")


class DesignViews:
    """Views to choose from; nothing is shown before there is a design.

    Parameters
    ----------
    beside : iterable of Widget
        What stands in one row with the chooser.
    """

    def __init__(self, beside: Iterable[w.Widget] = ()) -> None:
        self.design: Design | None = None
        self.units, self.view, self.board = "", "all", Board()
        chooser = dropdown("View", VIEWS, self.view, self.look, "18em", "4em")
        self.widget = w.VBox([row([chooser, *beside]), self.board.widget])

    def show(self, design: Design, units: str) -> None:
        """Draw another design."""
        self.design, self.units = design, units
        self.look(self.view)

    def look(self, view: str) -> None:
        """Draw another view."""
        self.view = view
        if self.design is not None:
            self.board.show(live_views(view, build_geometry(self.design), self.units, ()))


def figure_table(title: str, rows: Sequence[tuple[str, str, str]]) -> Table:
    """Figures of a design, each as part, name and value."""
    half = -(-len(rows) // 2)
    right = (*rows[half:], *[NO_FIGURE] * (2 * half - len(rows)))
    pairs = zip(rows[:half], right, strict=True)
    return Table(title, COLUMNS, tuple((*one, *other) for one, other in pairs))
