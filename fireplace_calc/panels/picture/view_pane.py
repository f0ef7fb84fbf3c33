"""The live picture: one view or four, on light, dark or print paper, or one check where it is
measured.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.composed.live import CLEARANCES, live_views
from fireplace_calc.drawing.composed.marked_check import can_show, marked
from fireplace_calc.drawing.composed.marked_places import PLACES
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.panels import html
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.picture.draft_pictures import DraftPictures
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.gathering import gather_facts

VIEWS = {
    "All four views": "all",
    **{view.label: view.key for view in CATALOGUE.values()},
    "Draft": "draft",
}


class ViewPane:
    """What is drawn, and on which paper.

    Parameters
    ----------
    view : str
        What is drawn first, one of ``VIEWS``.
    stamp : callable, optional
        A number to paint into the picture, from the design.
    """

    def __init__(self, view: str = "all", stamp: Callable[[Design], int] | None = None) -> None:
        self.view, self.marked, self.stamp = view, "", stamp
        self.guides: set[str] = set()
        self.remark = ""
        self.draft_pictures = DraftPictures()
        self.make_screen()

    def make_screen(self) -> None:
        """Where it is shown."""
        self.board = Board()

    @property
    def theme(self) -> str:
        """Paper it is drawn on, for folds that draw too."""
        return self.board.stage.theme

    def set_theme(self, theme: str) -> None:
        """Draw on light, dark or print paper."""
        self.board.set_theme(theme)

    def resize(self, wide: float, high: float) -> bool:
        """Take the page's size; whether anything has to be drawn again. A board keeps its. [px]"""
        return False

    def lead(self, design: Design, pack: str, units: str) -> bool:
        """Draw what needs no more than the geometry, before anything else is worked out; false when
        the view needs more.
        """
        self.remark = ""
        if self.marked or (self.view == "draft" and not self.draft_pictures.known):
            return False
        if self.view == "draft":
            self._paint(self.charts(self.draft_pictures.moving(design, units)), design)
            return True
        made, view = build_geometry(design), self.view
        if view in CATALOGUE and not CATALOGUE[view].suits(made):
            view, self.remark = "front", html.remark(CATALOGUE[view].otherwise)
        self._paint(
            self.live(view, made, units, PACKS[pack].check(gather_facts(made), CLEARANCES)),
            design,
        )
        return True

    def follow(self, result: Assessment, units: str) -> str:
        """Draw what needs the whole assessment.

        Returns
        -------
        str
            A remark, when a check has no place on this design.
        """
        if not self.marked:
            self._paint(self.charts(self.draft_pictures.whole(result, units)), result.design)
            return ""
        finding = next(f for f in result.findings if f.key == self.marked)
        if can_show(finding):
            self._paint(self.check(finding, result.geometry, units), result.design)
            return ""
        self._paint(
            self.live(PLACES[self.marked][0], result.geometry, units, result.findings),
            result.design,
        )
        return html.remark(
            f"{finding.title} ({finding.key}) {finding.said} here. {finding.note}"
            f" {to_enter(finding)}".rstrip()
        )

    def live(
        self, view: str, geometry: Geometry, units: str, findings: Iterable[Finding]
    ) -> Iterable[Any]:
        """The sheets of a view, each with its place."""
        return live_views(view, geometry, units, findings, self.guides)

    def charts(self, drawn: Iterable[tuple[str, Cell, Sheet]]) -> Iterable[Any]:
        """The draft's pictures, each with its place."""
        return [(cell, sheet) for _, cell, sheet in drawn]

    def check(self, finding: Finding, geometry: Geometry, units: str) -> Iterable[Any]:
        """The sheet of a check where it is measured, with its place."""
        return [(WHOLE, marked(finding, geometry, units))]

    def on_idle(self, result: Assessment, units: str) -> None:
        """Bring up to date what is too slow for a moving hand."""
        if self.view == "draft" and not self.marked:
            charts = self.charts(self.draft_pictures.whole(result, units))
            self._paint(charts, result.design)

    def _stamp(self, design: Design) -> int | None:
        return None if self.stamp is None else self.stamp(design)

    def _paint(self, shown: Iterable[Any], design: Design) -> None:
        self.board.show(shown, self._stamp(design))


def pointable(pack: str) -> dict[str, str]:
    """Checks of a book that have a place on a view, to choose from."""
    return {"none": ""} | {
        f"{rule.title} ({rule.key})": rule.key for rule in PACKS[pack].rules if rule.key in PLACES
    }
