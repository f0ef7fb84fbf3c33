"""A fireplace that stands, entered in walking order, and what comes of it."""

from __future__ import annotations

import base64
import tempfile
from collections.abc import Callable, Mapping
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import assess
from fireplace_calc.base.printing import messages_in
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.survey.as_measured import measured_view, print_measured
from fireplace_calc.drawing.survey.invented import sketched
from fireplace_calc.drawing.survey.numbered import arrow_sketch
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.drawing.survey.survey_words import doubt_parts, gaps, survey_parts
from fireplace_calc.drawing.survey.to_take_along import print_survey
from fireplace_calc.exports import read_back
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.reader_units import with_unit
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.survey.survey_page import SurveyPage
from fireplace_calc.panels.survey.survey_telling import FOUND, RESULTS, page_of
from fireplace_calc.survey.asked.entry import ROOM, STATIONS
from fireplace_calc.survey.asked.walk import ENTRY_OF, WALK
from fireplace_calc.survey.from_survey import Surveyed, surveyed
from fireplace_calc.survey.kept import LONGEST, Survey

MARGIN, LETTERS = 4.0, 4.0
"""Round the picture, and height of its letters: large enough on a page of 900 dots. [mm]"""
TAKEN = "The measured fireplace is on the table. Undo brings back the one before."


class MeasureWhatStands(Fold):
    """Entries in the order of the walk, what was found, and measured beside drawn.

    Attributes
    ----------
    page : SurveyPage
    station : str
        Where whoever measures stands, or which result is shown.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.station, self.sketch, self.said = ROOM, "", ""
        self.refused: dict[str, tuple[str, str]] = {}
        self._known: tuple[Survey, str, Surveyed] | None = None
        self._mine = panel.session.history
        self.page, self.found, self.link = SurveyPage(), w.HTML(), w.HTML()
        self.board = Board(self.page)
        self.widget = w.VBox([self.page, self.link, self.found])
        self.page.on_msg(lambda _, content, __: self.hear(content))

    def read(self) -> Surveyed:
        """The survey as it reads, worked out once for each state of it."""
        survey, units = self.panel.session.survey, self.panel.units
        if self._known is None or self._known[0] is not survey or self._known[1] != units:
            with messages_in(units):
                self._known = survey, units, surveyed(survey)
        return self._known[2]

    # -- what comes from the page -----------------------------------------------------------------
    def hear(self, told: Mapping[str, Any]) -> None:
        """Take one message; what is refused is said where it was typed.

        Parameters
        ----------
        told : mapping
            ``do`` what, with the ``box``, ``key``, ``station``, ``text`` it is about.
        """
        acts: dict[str, Callable[[Mapping[str, Any]], None]] = {
            "put": self._put,
            "out": self._out,
            "at": self._at,
            "sketch": self._sketch,
            "name": self._name,
            "back": lambda _: self._back(),
            "take": lambda _: self._take(),
            "print": self._print,
        }
        self.said = ""
        self._follow_job()
        try:
            acts.get(str(told.get("do")), lambda _: None)(told)
        except InputError as wrong:
            self.said = str(wrong)
        self.update()

    def _put(self, told: Mapping[str, Any]) -> None:
        box, text = str(told.get("box")), str(told.get("text", ""))
        entry = ENTRY_OF.get(box)
        if entry is None:
            return
        self.refused.pop(box, None)
        whole = with_unit(text.strip(), entry.spec, self.panel.units, entry.fills)
        try:
            did = f"{box} {whole}, measured" if whole else f"{box} not measured any more"
            self._keep(self.panel.session.survey.put(box, whole), did)
        except InputError as wrong:
            self.refused[box] = text[:LONGEST], str(wrong)

    def _out(self, told: Mapping[str, Any]) -> None:
        key = str(told.get("key"))
        self.refused = {b: v for b, v in self.refused.items() if ENTRY_OF[b].key != key}
        so = bool(told.get("on"))
        did = f"{key}: {'cannot be reached' if so else 'can be reached after all'}"
        self._keep(self.panel.session.survey.cannot_reach(key, so), did)

    def _at(self, told: Mapping[str, Any]) -> None:
        station = str(told.get("station"))
        if station in (*STATIONS, *RESULTS):
            self.station = station

    def _sketch(self, told: Mapping[str, Any]) -> None:
        name = str(told.get("name"))
        self.sketch = name if name in SKETCHES else ""

    def _name(self, told: Mapping[str, Any]) -> None:
        name = str(told.get("text", ""))
        self._keep(self.panel.session.survey.named(name), f"Survey of {name}")

    def _keep(self, survey: Survey, did: str) -> None:
        self.panel.session.measure(survey, f"{did[:1].upper()}{did[1:]}")
        self.panel.keep()

    def _back(self) -> None:
        """Take the last entry back."""
        self.refused.clear()
        session = self.panel.session
        if session.measured_last and self.panel.attempt(session.undo):
            self.panel.catch_up()

    def _take(self) -> None:
        """Lay the measured fireplace on the table."""
        design = self.read().design
        if design is not None:
            self.panel.put(design)
            self.said = TAKEN

    def _print(self, told: Mapping[str, Any]) -> None:
        panel = self.panel
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "survey.pdf"
            if told.get("what") == "sheets":
                print_survey(path, units=panel.units, survey=panel.session.survey)
                self._hand("survey-sheets.pdf", read_back(path))
            else:
                print_measured(path, self.read(), panel.design, panel.pack, panel.units)
                self._hand("as-measured.pdf", read_back(path))

    def _hand(self, name: str, content: bytes) -> None:
        """Give a paper as a link, and lay it beside what is kept."""
        kept = self.panel.session.lay(name, content)
        where = f" It is also in {escape(str(kept))}." if kept else ""
        data = base64.b64encode(content).decode()
        self.link.value = (
            f'<a download="{name}" href="data:application/pdf;base64,{data}">Download {name}</a>'
            f"{where}"
        )

    def _follow_job(self) -> None:
        """Where another job has been opened, forget what was typed for the one before."""
        if self.panel.session.history is not self._mine:
            self._mine = self.panel.session.history
            self.refused.clear()

    # -- what is shown ----------------------------------------------------------------------------
    def update(self) -> None:
        """Bring page and words up to the survey and the design as they stand."""
        told, panel = self.read(), self.panel
        self._follow_job()
        self.page.shown = page_of(
            panel.session.survey,
            told,
            self.station,
            self.sketch,
            panel.units,
            self.refused,
            self.said,
            panel.session.measured_last,
        )
        self.found.value = self._words(told)
        self._draw()

    def _words(self, told: Surveyed) -> str:
        panel = self.panel
        if self.station not in RESULTS:
            return ""
        if told.design is None:
            return html.remark(f"Nothing can be drawn. {told.trouble}")
        if not panel.session.survey.told:
            return html.remark("Nothing has been entered yet: everything below would be usual.")
        if self.station == FOUND:
            result = assess(told.design, panel.pack)
            return html.flow([*doubt_parts(told, result, panel.units), *told.said, *gaps(told)])
        return html.flow(survey_parts(told, panel.design, panel.units))

    def _draw(self) -> None:
        """The sketch that is wanted: where to hold the tape, or what was measured there."""
        told, name = self.read(), self.sketch
        if not name or (self.station in RESULTS and told.design is None):
            self.board.clear()
            return
        sheet = Sheet(WIDTH, HEIGHT)
        cell = Cell(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
        if self.station in STATIONS:
            entries = [entry for entry in WALK if entry.station == self.station]
            arrow_sketch(sheet, cell, name, sketched(), entries, size=LETTERS)
        else:
            drawn, units = self.panel.design, self.panel.units
            measured_view(sheet, cell, name, told, drawn, units, LETTERS)
        self.board.show([(WHOLE, sheet)])
