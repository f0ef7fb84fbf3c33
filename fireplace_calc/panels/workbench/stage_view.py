"""Which views stand on the stage, laid out for its size."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import TURNS
from fireplace_calc.drawing.composed.marked_check import marked
from fireplace_calc.drawing.page.stage import (
    DRAFT,
    MARKED,
    SHARES,
    PageStage,
    stage_cells,
    stage_views,
)
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.panels.picture.live_stage import LiveStage, Place, Shown
from fireplace_calc.panels.picture.view_pane import ViewPane
from fireplace_calc.rules import Finding


class StageView(ViewPane):
    """The live picture on a page's stage.

    Parameters
    ----------
    stage : LiveStage
    view : str
        What is drawn first, one of ``VIEWS``.
    stamp : callable, optional
        A number to tell with the picture, from the design: for a benchmark.
    """

    def __init__(
        self, stage: LiveStage, view: str = "all", stamp: Callable[[Design], int] | None = None
    ) -> None:
        self.stage = stage
        super().__init__(view, stamp)

    def make_screen(self) -> None:
        """The stage is there already."""

    @property
    def theme(self) -> str:
        """Paper it is drawn on, for folds that draw too."""
        return self.stage.theme

    def set_theme(self, theme: str) -> None:
        """Draw on light, dark or print paper."""
        self.stage.set_theme(theme)

    def resize(self, wide: float, high: float) -> bool:
        """Take the stage's size; whether anything has to be drawn again. [px]"""
        before, self.stage.size = self.stage.size, (wide, high)
        return before != self.stage.size

    def live(
        self, view: str, geometry: Geometry, units: str, findings: Iterable[Finding]
    ) -> Iterator[Shown]:
        """The sheets of a view, laid out for the stage as it is."""
        cut = stage_cells(view, *self.stage.size)
        places = places_on(cut)
        views = stage_views(view, geometry, units, findings, self.guides, cut)
        return ((name, places[name], cell, sheet) for name, cell, sheet in views)

    def check(self, finding: Finding, geometry: Geometry, units: str) -> Iterable[Shown]:
        """The sheet of a check where it is measured, laid out for the stage."""
        ((name, paper),) = stage_cells(MARKED, *self.stage.size).cells.items()
        return [(name, (0.0, 0.0, 1.0, 1.0), paper, marked(finding, geometry, units, paper))]

    def charts(self, drawn: Iterable[tuple[str, Cell, Sheet]]) -> Iterable[Shown]:
        """The draft's pictures where the views stand."""
        places = places_on(stage_cells(DRAFT, *self.stage.size))
        return [(name, places[name], cell, sheet) for name, cell, sheet in drawn]

    def lead(self, design: Design, pack: str, units: str) -> bool:
        """Draw what needs no more than the geometry, on the stage as it is."""
        self.draft_pictures.cells = stage_cells(DRAFT, *self.stage.size).cells
        return super().lead(design, pack, units)

    def _paint(self, shown: Iterable[Any], design: Design) -> None:
        self.stage.show(shown, self._stamp(design))


def places_on(cut: PageStage) -> dict[str, Place]:
    """Where each view's canvas stands: four in three columns, fewer in a row that is swept along.

    Returns
    -------
    dict
        Left, top, width and height, in shares of what is seen at once. [-]
    """
    if cut.count < len(TURNS):
        share = 1 / cut.count
        return {name: (k * share, 0.0, share, 1.0) for k, name in enumerate(cut.cells)}
    left, middle, upper = SHARES["left"], SHARES["section"], SHARES["front"]
    return {
        "front": (0.0, 0.0, left, upper),
        "plan": (0.0, upper, left, 1 - upper),
        "section": (left, 0.0, middle, 1.0),
        "roof": (left + middle, 0.0, 1 - left - middle, 1.0),
    }
