"""Save, open and print: a look first, papers that show how far they are and can be stopped, a
spreadsheet, a drawing file, the design itself.
"""

from __future__ import annotations

import base64
import tempfile
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import assess
from fireplace_calc.base.printing import grouped
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.drawing.papers.full_papers import writing
from fireplace_calc.drawing.papers.one_sheet import check_sheet, hand_over
from fireplace_calc.drawing.plates.sizes import PAPERS
from fireplace_calc.editing.designfile import save
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.jobs.names import file_stem
from fireplace_calc.exports import read_back, write_dxf, write_spreadsheet
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import Fold
from fireplace_calc.panels.folds.for_client import ForClient
from fireplace_calc.panels.folds.look_first import LookFirst
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.report.yard.kept_list import kept_prices

KINDS = {
    "pdf": "application/pdf",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "dxf": "image/vnd.dxf",
    "toml": "application/toml",
    "png": "image/png",
    "svg": "image/svg+xml",
    "html": "text/html",
}


class Papers(Fold):
    """One button a paper; the file comes as a link, and in the folder that keeps the work where
    there is one.
    """

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.job, self.link = Job("sheets"), w.HTML()
        self.size = w.Dropdown(
            options={"usual for these units": ""} | {name: name for name in PAPERS},
            value="",
            description="Paper size",
            style={"description_width": "6em"},
        )
        self.units = w.Dropdown(
            options={"as on the screen": "", "feet and inches": FEET_INCHES}
            | {"millimeters": MILLIMETRES},
            value="",
            description="Units",
            style={"description_width": "4em"},
        )
        self.upload = w.FileUpload(
            accept=".toml", description="Open a design file", layout=w.Layout(width="auto")
        )
        self.upload.observe(lambda event: self._opened(event["new"]), "value")
        files = [
            button("Paper set", lambda: self.make("papers.pdf", self._papers)),
            button("Sheet to hand over", lambda: self.make("hand-over.pdf", self._hand_over)),
            button("Check sheet", lambda: self.make("check-sheet.pdf", self._check_sheet)),
            button("Order as a spreadsheet", lambda: self.make("order.xlsx", self._order)),
            button("Drawing file (DXF)", lambda: self.make("drawings.dxf", self._drawings)),
        ]
        design = button("Design file", lambda: self.make("design.toml", self._design))
        self.for_client = ForClient(panel, self.make, lambda: self.size.value or None)
        self.look: LookFirst = LookFirst(panel, self.job, self._chosen, self._hand)
        for box in (self.size, self.units):
            box.observe(lambda _: self.look.update(), "value")
        self.widget = w.VBox(
            [
                row([self.size, self.units, self.look.begin]),
                row(files),
                self.look.widget,
                self.for_client.widget,
                row([design, self.upload]),
                self.job.widget,
                self.link,
            ]
        )

    def update(self) -> None:
        """Names and options as the job has them; what is shown may be of an earlier design."""
        self.for_client.update()
        self.look.update()

    def _chosen(self) -> tuple[str, str | None]:
        """Units and paper."""
        return self.units.value or self.panel.units, self.size.value or None

    # -- what is written --------------------------------------------------------------------------
    def _papers(self, path: Path) -> Steps:
        known = kept_prices(self.panel.session.words)
        yield from writing(self.panel.result, path, *self._chosen(), prices=known)

    def _hand_over(self, path: Path) -> Steps:
        options = [assess(option, self.panel.pack) for option in self.panel.session.options]
        yield from hand_over(
            self.panel.result,
            options,
            path,
            *self._chosen(),
            self.panel.view_pane.guides,
        )

    def _check_sheet(self, path: Path) -> Steps:
        yield from check_sheet(self.panel.result, path, *self._chosen())

    def _design(self, path: Path) -> Steps:
        save(self.panel.design, path)
        yield 1, 1, ""

    def _order(self, path: Path) -> Steps:
        write_spreadsheet(self.panel.result, kept_prices(self.panel.session.words), path)
        yield 1, 1, ""

    def _drawings(self, path: Path) -> Steps:
        write_dxf(self.panel.result, path, self._chosen()[0])
        yield 1, 1, ""

    # -- how it is written ------------------------------------------------------------------------
    def make(self, name: str, write: Callable[[Path], Steps]) -> None:
        """Write one file and hand it over."""
        self.link.value = ""
        folder = tempfile.TemporaryDirectory()
        path = Path(folder.name) / name

        def hand() -> str:
            with folder:  # held until then
                return self._hand(name, read_back(path))

        self.job.run(lambda: write(path), hand)

    def _hand(self, name: str, content: bytes) -> str:
        """Give a file as a link, lay it beside what is kept, and say so."""
        name = f"{file_stem(self.panel.design.name, self.panel.session.words)}-{name}"
        kept = self.panel.session.lay(name, content)
        self.panel.keep()
        where = f" It is also in {kept}." if kept else ""
        data, kind = base64.b64encode(content).decode(), KINDS[name.rpartition(".")[2]]
        self.link.value = (
            f'<a download="{escape(name)}" href="data:{kind};base64,{data}">'
            f"Download {escape(name)}</a>"
        )
        return f"Done: {grouped(len(content) / 1000)} kB.{where}"

    def _opened(self, files: Iterable[Mapping[str, Any]]) -> None:
        """Take a design file up; a wrong one changes nothing and is answered in one sentence."""
        for file in files:
            self.panel.attempt(partial(self._open, file))

    def _open(self, file: Mapping[str, Any]) -> None:
        self.panel.put(load_text(bytes(file["content"]), file["name"]))
