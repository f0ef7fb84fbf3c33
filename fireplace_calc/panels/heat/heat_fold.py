"""How hot what burns beside it becomes: the map at an hour, the curves, what is worth how much."""

from __future__ import annotations

import asyncio
from contextlib import suppress
from typing import Any

import ipywidgets as w

from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import WIDTH
from fireplace_calc.drawing.heat.curves import Reach
from fireplace_calc.drawing.heat.one_sheet_of_heat import heat_sheet
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.answer import EVENING, fires_behind, heat_steps
from fireplace_calc.heat.conduction.grading import COARSE, MOVING
from fireplace_calc.heat.conduction.mesh import NotWorked
from fireplace_calc.heat.cuts.behind import STANDS, WallRun, one_fire, three_fires
from fireplace_calc.heat.cuts.section_run import SectionRun, burn_section
from fireplace_calc.heat.findings import judgement
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import dropdown, row
from fireplace_calc.panels.controls.controls import Measure
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.folds.questions import FindingList
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.picture.sheet_page import SheetPage
from fireplace_calc.report.heat import growth_report, heat_report

BURNS = {
    "4 h, an evening": (4.0, 1),
    "8 h, a long evening": (8.0, 1),
    "24 h, a day": (24.0, 1),
    "4 h every evening of a week": (4.0, 7),
}
MIDDLE = 1
DOTS = 3.5
"""Of the page to a millimeter of the picture: so its letters can be read. [px]"""
FIRST_SHARES = (8, 16, 16, 16, 60)
"""Widths of the columns of the first fires, whose last holds sentences. [-]"""
CUTS = {"in plan, mid firebox": "plan", "in section, center line": "section"}


class Heat(Fold):
    """The heat of the design as it stands: coarse while a hand moves, the rest when it rests.

    Attributes
    ----------
    runs : tuple of WallRun or None
        What is on the picture at rest; None where it cannot be worked.
    drawn, worked : Design or None
        Whose picture stands there, and whose runs these are.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.runs: tuple[WallRun, ...] | None = None
        self.known: Any = None
        self.burns, self.which, self.cut = (EVENING, 1), MIDDLE, "plan"
        self.section: tuple[Any, SectionRun] | None = None
        self.drawn: Design | None = None
        self.worked: Design | None = None
        fires = {fire.named: n for n, fire in enumerate(wall_fires().values())}
        self.length = dropdown("Fire burns", BURNS, self.burns, self._burns, "22.5em", "5.5em")
        self.fire = dropdown("Map of", fires, MIDDLE, self._fire, "29.6em", "4em")
        self.cuts = dropdown("Shown", CUTS, self.cut, self._cut, "18.2em", "3.7em")
        for box in (self.length, self.fire, self.cuts):
            box.layout.max_width = "calc(100% - 10px)"  # of a phone
        self.hour = Measure(
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
        self.page = SheetPage()
        self.page.observe(lambda _: self.draw(), "wide")
        self.board = Board(self.page)
        self.job = Job("steps", writes=False)
        self.widget = w.VBox(
            [
                w.HTML(html.remark(STANDS)),
                self.said,
                row([self.length, self.fire, self.cuts]),
                self.hour,
                self.board.widget,
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

    def _cut(self, cut: str) -> None:
        self.cut = cut
        self.draw()

    def _in_section(self, run: WallRun) -> SectionRun | None:
        """The section with this fire, worked out once; none where the plan is asked for."""
        if self.cut == "plan":
            return None
        days = round((run.out - run.burns) / 24) + 1
        key = self.panel.design, run.fire, self.burns
        if self.section is None or self.section[0] != key:
            geometry, until = self.panel.result.geometry, float(self.hour.max)
            self.section = key, burn_section(geometry, run.fire, run.burns, until, days)
        return self.section[1]

    def lead(self) -> None:
        """The map of the fire that is shown, coarse, while a hand moves: its words and figures, the
        other fires, and what burns for days wait until it rests.
        """
        (hours, days), design = self.burns, self.panel.design
        if self.runs is None or days > 1 or self.drawn is design:
            return
        fire, geometry = self.runs[self.which].fire, build_geometry(design)
        with suppress(NotWorked):  # said at rest
            run = one_fire(geometry, fire, hours, MOVING)
            hour, section = self._hour_of(run), None
            if self.cut != "plan":
                section = burn_section(geometry, fire, hours, max(hour, hours), 1, MOVING)
            self._draw((run,), 0, geometry, section, Reach.of(self.runs))

    def update(self) -> None:
        """The picture of the design as it stands; then all that takes longer, step by step."""
        panel, (hours, days) = self.panel, self.burns
        self.board.set_theme(panel.view_pane.theme)
        key = self._key()
        if self.known == key:
            self.draw()
            return
        try:
            geometry = panel.result.geometry
            if self.drawn is not panel.design or self.runs is None or days > 1:
                self._show(tuple(three_fires(geometry, hours, COARSE, days)))
        except NotWorked as why:
            self._nothing(why)
        self.job.run(self._steps, lambda: self._ready(key))

    def _key(self) -> Any:
        return self.panel.design, self.panel.pack, self.panel.units, self.burns

    def _show(self, runs: tuple[WallRun, ...]) -> None:
        """Runs in a sentence and in the picture."""
        self.runs, self.worked = runs, self.panel.design
        self.said.value = html.remark(heat_report.reach_sentence(runs, self.panel.units))
        self.hour.max = round(float(max(run.times[-1] for run in runs)), 1)
        self.draw()

    def draw(self) -> None:
        """The map at the hour of the slider, or at the last that there is of this fire."""
        if self.runs is None:
            return
        if self.worked is not self.panel.design:  # a hand moves, and they are of an earlier one
            self.drawn = None
            self.lead()
            return
        section = self._in_section(self.runs[self.which])
        self._draw(self.runs, self.which, self.panel.result.geometry, section)

    def _hour_of(self, run: WallRun) -> float:
        return round(min(float(self.hour.value), float(run.times[-1])), 1)

    def _draw(
        self,
        runs: tuple[WallRun, ...],
        which: int,
        geometry: Geometry,
        section: SectionRun | None,
        reach: Reach | None = None,
    ) -> None:
        self.drawn, hour = self.panel.design, self._hour_of(runs[which])
        wide, units = self.page.wide / DOTS or WIDTH, self.panel.units
        self.board.show_whole(heat_sheet(geometry, runs, which, hour, units, section, wide, reach))

    def _nothing(self, why: NotWorked) -> None:
        self.runs, self.drawn, self.said.value = None, None, html.remark(str(why))
        self.board.clear()

    def _steps(self) -> Steps:
        """All the rest piece by piece, and no further once the hand has moved on; what is on the
        picture first.
        """
        geometry, (hours, days), key = self.panel.result.geometry, self.burns, self._key()
        shown = fires_behind(hours) if days == 1 else ()
        for step in heat_steps(geometry, hours if shown else EVENING):
            if shown and step[0] == len(shown):
                self._fine(geometry, hours)
            yield step
            if key != self._key():
                return

    def _fine(self, geometry: Geometry, hours: float) -> None:
        try:
            self._show(tuple(geometry.once(one) for one in fires_behind(hours)))
        except NotWorked as why:
            self._nothing(why)

    def _ready(self, key: Any) -> str:
        panel = self.panel
        if key != self._key():
            asyncio.get_running_loop().call_soon(self.update)
            return ""
        self.known = key
        self.list.show(judgement(panel.result.heat, panel.units), "What the heat says")
        self.more.value = html.flow(heat_words(panel))
        return ""


def heat_words(panel: Host) -> list[str | Table]:
    """Everything else there is to say, as paragraphs and tables, the clearance first."""
    result, units = panel.result, panel.units
    heat = result.heat

    def table(title: str, head: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> Table:
        shares = FIRST_SHARES if head is heat_report.FIRSTS else (34, *[16] * (len(head) - 1))
        return Table(title, tuple(map(Column, head, shares)), rows)

    said: list[str | Table] = [STANDS]
    runs = [run for many in (heat.evening, heat.day) if many for run in many]
    if runs:
        rows = heat_report.fire_rows(tuple(runs), units)
        said.append(table("Wood behind the firebox", heat_report.FIRES, rows))
    if heat.worth:
        rows = heat_report.worth_rows(result, units)
        said.append(table("What is worth how much", heat_report.WORTHS, rows))
    if heat.flue:
        rows = heat_report.flue_rows(result, units)
        said.append(table("Floor and roof framing beside the flue", heat_report.FLUES, rows))
    if heat.hearth:
        rows = heat_report.fire_rows(heat.hearth, units)
        said += [
            table("Wood left under the hearth slab", heat_report.FIRES, rows),
            heat_report.under_sentence(result, units),
        ]
    if heat.trim:
        rows = heat_report.trim_rows(result)
        said.append(table("Radiation on mantel and trim", heat_report.TRIM, rows))
    said.append(heat_report.keep_off_sentence(result, units))
    rows = heat_report.room_rows(result, units)
    said.append(table("Heat the room gets", heat_report.ROOM, rows))
    said.append(heat_report.room_sentence(result, units))
    rows = growth_report.growth_rows(result, units)
    said.append(table("What grows, and the gap it asks for", growth_report.GROWS, rows))
    said.append(growth_report.growth_sentence(units))
    said += filter(None, [growth_report.pull_sentence(result, units)])
    rows = heat_report.first_rows(result, units)
    said.append(table("First fires, one a day, each from cold", heat_report.FIRSTS, rows))
    return [*said, *heat_report.sources(units)]
