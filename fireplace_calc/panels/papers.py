"""Save, open and print: papers that show how far they are and can be stopped, a spreadsheet, a drawing file, the design itself."""

from __future__ import annotations

import asyncio
import base64
import re
import tempfile
from collections.abc import Callable, Iterator
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING

import ipywidgets as w

from fireplace_calc.design import Design
from fireplace_calc.designfile import load_text, text_of
from fireplace_calc.drawing.onesheet import check_sheet, hand_over
from fireplace_calc.drawing.papers import PAPERS, USUAL, writing
from fireplace_calc.exports import read_back, write_dxf, write_spreadsheet
from fireplace_calc.panels import html
from fireplace_calc.panels.folds import Fold
from fireplace_calc.takeoff import prices
from fireplace_calc.units import InputError

if TYPE_CHECKING:
    from fireplace_calc.panels.panel import Panel

KINDS = {"pdf": "application/pdf", "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "dxf": "image/vnd.dxf",
         "toml": "application/toml"}
Told = Iterator[tuple[int, int, str]]


class Papers(Fold):
    """One button a paper; the file comes as a link, and in the folder that keeps the work where there is one."""


    def __init__(self, panel: Panel):
        super().__init__(panel)
        self.task: asyncio.Task | None = None
        self.size = w.Dropdown(options={"usual for the units": None} | {name: name for name in PAPERS}, description="Paper size",
                               style={"description_width": "7em"})
        self.bar = w.IntProgress(description="Sheets", layout=w.Layout(visibility="hidden"))
        self.stop = self._button("Stop", self._stopped)
        self.stop.disabled = True
        self.link, self.status = w.HTML(), w.HTML()
        self.upload = w.FileUpload(accept=".toml", description="Open a design file", layout=w.Layout(width="auto"))
        self.upload.observe(lambda event: self._opened(event["new"]), "value")
        wrap = w.Layout(flex_flow="row wrap")
        self.widget = w.VBox([
            w.HBox([self.size, self._button("Paper set", lambda: self.make("papers.pdf", self._papers)),
                    self._button("Sheet to hand over", lambda: self.make("hand-over.pdf", self._hand_over)),
                    self._button("Check sheet", lambda: self.make("check-sheet.pdf", self._check_sheet)),
                    self._button("Order as a spreadsheet", lambda: self.make("order.xlsx", self._order)),
                    self._button("Drawing file (DXF)", lambda: self.make("drawings.dxf", self._drawings))], layout=wrap),
            w.HBox([self._button("Design file", lambda: self._hand("design.toml", text_of(panel.design).encode())), self.upload],
                   layout=wrap),
            w.HBox([self.bar, self.stop]), self.status, self.link])

    def _button(self, label: str, act: Callable[[], None]) -> w.Button:
        made = w.Button(description=label, layout=w.Layout(width="auto"))
        made.on_click(lambda _: act())
        return made

    # -- what is written ---------------------------------------------------------------------------
    def _papers(self, path: Path) -> Told:
        yield from writing(self.panel.result, path, self.panel.units, self.size.value or USUAL[self.panel.units])

    def _hand_over(self, path: Path) -> Told:
        from fireplace_calc.assess import assess

        options = [assess(option, self.panel.pack) for option in self.panel.desk.options]
        yield from hand_over(self.panel.result, options, path, self.panel.units, self.size.value, self.panel.easel.guides)

    def _check_sheet(self, path: Path) -> Told:
        yield from check_sheet(self.panel.result, path, self.panel.units, self.size.value)

    def _order(self, path: Path) -> Told:
        write_spreadsheet(self.panel.result, prices(), path)
        yield 1, 1, ""

    def _drawings(self, path: Path) -> Told:
        write_dxf(self.panel.result, path, self.panel.units)
        yield 1, 1, ""

    # -- how it is written -------------------------------------------------------------------------
    def make(self, name: str, write: Callable[[Path], Told]) -> None:
        """Write one file, a step at a time, so that controls answer and Stop is heard between two steps."""
        if self.task is not None and not self.task.done():
            return
        try:
            self.task = asyncio.get_running_loop().create_task(self._making(name, write))
        except RuntimeError:  # no loop: a script or a test
            asyncio.run(self._making(name, write))

    async def _making(self, name: str, write: Callable[[Path], Told]) -> None:
        self.stop.disabled, self.link.value, self.status.value = False, "", ""
        self.bar.layout.visibility = "visible"
        try:
            with tempfile.TemporaryDirectory() as folder:
                path = Path(folder) / name
                for done, of, sheet in write(path):
                    self.bar.max, self.bar.value = max(of, 1), done
                    self.status.value = html.remark(f"{done} of {of} sheets. {sheet}")
                    await asyncio.sleep(0)
                self._hand(name, read_back(path))
        except asyncio.CancelledError:
            self.status.value = html.remark("Stopped; nothing was written.")
        except InputError as wrong:
            self.status.value = html.trouble(str(wrong))
        finally:
            self.stop.disabled, self.bar.layout.visibility = True, "hidden"

    def _stopped(self) -> None:
        if self.task is not None:
            self.task.cancel()

    def _hand(self, name: str, content: bytes) -> None:
        """Give a file as a link, and lay it beside what is kept."""
        stem = re.sub(r"[^a-z0-9]+", "-", self.panel.design.name.lower()).strip("-") or "fireplace"
        name = f"{stem}-{name}"
        kept = self.panel.desk.lay(name, content)
        where = f" It also lies in {kept}." if kept else ""
        data = base64.b64encode(content).decode()
        self.status.value = html.remark(f"Done: {len(content) / 1000:,.0f} kB.{where}")
        self.link.value = f'<a download="{escape(name)}" href="data:{KINDS[name.rpartition(".")[2]]};base64,{data}">Take {escape(name)}</a>'

    def _opened(self, files: tuple) -> None:
        """Take a design file up; a wrong one changes nothing and is answered in one sentence."""
        for file in files:
            self.panel.tried(lambda file=file: self.panel.put(_read(bytes(file["content"]), file["name"])))


def _read(content: bytes, name: str) -> Design:
    try:
        return load_text(content.decode(), name)
    except UnicodeDecodeError:
        raise InputError(f"{name} is no text file; a design file is UTF-8 text.", "design file", "a TOML file", name) from None
