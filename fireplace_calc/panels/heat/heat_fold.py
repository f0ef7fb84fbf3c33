"""How hot what burns beside it becomes: the map at an hour, the curves, what is worth how much."""

from __future__ import annotations

import asyncio
from typing import Any

import ipywidgets as w

from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.heat.one_sheet_of_heat import heat_sheet
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.heat.cuts.behind import COARSE, STANDS, WallRun, three_fires
from fireplace_calc.heat.cuts.from_geometry import NotWorked
from fireplace_calc.heat.findings import judgement
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import dropdown, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.folds.questions import FindingList
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.report.heat import heat_report

BURNS = {
    "4 h, an evening": (4.0, 1),
    "8 h, a long evening": (8.0, 1),
    "24 h, a day": (24.0, 1),
    "4 h every evening of a week": (4.0, 7),
}
MIDDLE = 1


class Heat(Fold):
    """The heat of the design as it stands: coarse while a hand moves, the rest on request.

    Attributes
    ----------
    runs : tuple of WallRun or None
        What is on the picture; None where it cannot be worked.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.runs: tuple[WallRun, ...] | None = None
        self.known: Any = None
        self.burns, self.which = (8.0, 1), MIDDLE
        fires = {fire.label: n for n, fire in enumerate(wall_fires().values())}
        self.length = dropdown("Fire burns", BURNS, self.burns, self._burns, "18em", "6em")
        self.fire = dropdown("Map of", fires, MIDDLE, self._fire, "26em", "5em")
        self.hour = w.FloatSlider(
            value=11.0,
            min=0.0,
            max=30.0,
            step=0.5,
            readout_format=".1f",
            description="Hours after lighting",
            style={"description_width": "11em"},
            layout=w.Layout(width="100%", max_width="44em"),
        )
        self.hour.observe(lambda _: self.draw(), "value")
        self.said, self.more = w.HTML(), w.HTML()
        self.list = FindingList(panel, "Finding, mode, confidence")
        self.board = Board()
        self.job = Job("steps", writes=False)
        self.widget = w.VBox(
            [
                w.HTML(html.remark(STANDS)),
                row([self.length, self.fire]),
                self.hour,
                self.board.widget,
                self.said,
                self.job.widget,
                self.list.widget,
                self.more,
            ]
        )

    def _burns(self, hours: tuple[float, int]) -> None:
        self.burns = hours
        self.update()

    def _fire(self, which: int) -> None:
        self.which = which
        self.draw()

    def update(self) -> None:
        """The picture of the design as it stands; then all that takes longer, step by step."""
        panel = self.panel
        hours, days = self.burns
        self.hour.max = 24.0 * days + 6.0
        try:
            self.runs = tuple(three_fires(panel.result.geometry, hours, COARSE, days))
        except NotWorked as why:
            self.runs, self.said.value = None, html.remark(str(why))
            self.board.clear()
        else:
            self.said.value = html.remark(heat_report.reach_sentence(self.runs, panel.units))
            self.draw()
        key = panel.design, panel.pack, panel.units
        if self.known != key:
            self.job.run(self._steps, lambda: self._ready(key))

    def draw(self) -> None:
        """The map at the hour of the slider."""
        if self.runs is None:
            return
        geometry, units = self.panel.result.geometry, self.panel.units
        sheet = heat_sheet(geometry, self.runs, self.which, float(self.hour.value), units)
        self.board.show([(WHOLE, sheet)])

    def _steps(self) -> Steps:
        yield 0, 2, "wood, flue and mantel"
        _ = self.panel.result.heat
        yield 1, 2, "findings"

    def _ready(self, key: Any) -> str:
        panel = self.panel
        if key != (panel.design, panel.pack, panel.units):
            asyncio.get_running_loop().call_soon(self.update)
            return ""
        self.known = key
        self.list.show(judgement(panel.result.heat), "What the heat says")
        self.more.value = html.flow(heat_words(panel))
        return ""


def heat_words(panel: Host) -> list[str | Table]:
    """Everything else there is to say, as paragraphs and tables."""
    result, units = panel.result, panel.units
    heat = result.heat

    def table(title: str, head: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> Table:
        shares = (34, *[16] * (len(head) - 1))
        return Table(title, tuple(map(Column, head, shares)), rows)

    said: list[str | Table] = []
    runs = [run for many in (heat.evening, heat.day) if many for run in many]
    if runs:
        rows = heat_report.fire_rows(tuple(runs), units)
        said.append(table("Wood behind the firebox", heat_report.FIRES, rows))
    if heat.worth:
        rows = heat_report.worth_rows(result, units)
        said.append(table("What is worth how much", heat_report.WORTHS, rows))
    if heat.flue:
        rows = heat_report.flue_rows(result, units)
        said.append(table("Wood beside the flue", heat_report.FLUES, rows))
    if heat.trim:
        rows = heat_report.trim_rows(result)
        said.append(table("Radiation on mantel and trim", heat_report.TRIM, rows))
    said.append(heat_report.keep_off_sentence(result, units))
    said.append(heat_report.room_sentence(result, units))
    return [*said, *heat_report.sources()]
