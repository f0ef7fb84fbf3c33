"""A design to look through: one view at a time, and its figures, a page of them at a time."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from itertools import groupby

import ipywidgets as w

from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import view_sheet
from fireplace_calc.drawing.sheets.sheet import Cell
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.panels.controls.choices import dropdown
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.teaching.beside_drawing import figure_list

VIEWS = {
    "Section": "section",
    "Front elevation": "front",
    "Plan": "plan",
    "Against the roof": "roof",
}
PAPER = Cell(0.0, 0.0, 165.0, 125.0)
"""Of a view: with half of a page for itself it stands beside the list without scrolling. [mm]"""
MOST_FIGURES = 9
"""On one page of figures. [-]"""
Figures = Sequence[tuple[str, str, str]]
"""Of a design, each as part, name and value."""


class DesignViews:
    """Views to choose from; nothing is shown before there is a design."""

    def __init__(self) -> None:
        self.design: Design | None = None
        self.units, self.view, self.board = "", "section", Board()
        chooser = dropdown("View", VIEWS, self.view, self.look, "18em", "4em")
        self.widget = w.VBox([chooser, self.board.widget])

    def show(self, design: Design, units: str) -> None:
        """Draw another design."""
        self.design, self.units = design, units
        self.look(self.view)

    def look(self, view: str) -> None:
        """Draw another view."""
        self.view = view
        if self.design is not None:
            geometry = build_geometry(self.design)
            self.board.show_whole(view_sheet(view, PAPER, geometry, self.units, own_paper=True))


class DesignFigures:
    """All figures of a design, as many parts to a page as stand beside a drawing."""

    def __init__(self) -> None:
        self.pages: dict[str, Figures] = {}
        self.text = w.HTML()
        self.chooser = dropdown("Figures", (), None, self.turn, "30em", "4em")
        self.widget = w.VBox([self.chooser, self.text])

    def show(self, figures: Figures) -> None:
        """Show those of another design, from the first page on."""
        self.pages = figure_pages(figures)
        self.chooser.options = tuple(self.pages)
        self.chooser.value = next(iter(self.pages), None)
        self.turn(self.chooser.value)

    def turn(self, page: str | None) -> None:
        """Show another page."""
        parts = groupby(self.pages.get(page or "", ()), key=lambda one: one[0])
        self.text.value = "".join(
            f'<div class="figures"><b>{escape(part)}</b>'
            f"{figure_list([one[1:] for one in held])}</div>"
            for part, held in parts
        )


def figure_pages(figures: Figures, most: int = MOST_FIGURES) -> dict[str, Figures]:
    """Parts that follow each other put together, as many as a page holds; by their names.

    Examples
    --------
    >>> list(figure_pages([("Throat", "Depth", "4 in"), ("Hearth", "Drop", "2 in")], 2))
    ['Throat, hearth']
    """
    pages: list[list[tuple[str, str, str]]] = []
    for _, held in groupby(figures, key=lambda one: one[0]):
        part = list(held)
        if pages and len(pages[-1]) + len(part) <= most:
            pages[-1] += part
        else:
            pages.append(part)
    return {", ".join(dict.fromkeys(one[0] for one in page)).capitalize(): page for page in pages}
