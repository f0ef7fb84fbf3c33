"""What a client is given: whose names stand on it, which design is the chosen one, and a button for
each file.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from pathlib import Path
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign, Pictures, still_png
from fireplace_calc.drawing.client_pages.two_pages import client_pages
from fireplace_calc.editing.changes import all_inputs, change, value_of
from fireplace_calc.editing.jobs.names import one_line
from fireplace_calc.editing.jobs.options import shown
from fireplace_calc.exports.hand_over_files import write_hand_over
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Steps
from fireplace_calc.report.for_client.handed_over import MARK, mark_words, names_of
from fireplace_calc.report.yard.kept_list import kept_prices
from fireplace_calc.scene.records import Standpoint

FINER = 1.5
"""Dots that the page makes for each that the still would have, across and down. [-]"""
NOTHING = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010806000000"
    "1f15c4890000000d49444154789c6360000002000001e221bc330000000049454e44ae426082"
)
"""A picture of one dot, while it is only asked which pictures there are."""
Asked = tuple[Assessment, Standpoint, int, int]
NAMES = ("job.client", "job.drawn", "job.checked")
"""Inputs that stand on every sheet."""
THIS = "The design on the table"
"""The chosen one, where no option is."""
Make = Callable[[str, Callable[[Path], Steps]], None]


class ForClient:
    """Names and mark, kept with the job, and the files for a client.

    Parameters
    ----------
    panel : Host
        Whose design it is.
    make : callable
        Writes a file of a name by steps and hands it over.
    size : callable
        Gives the paper that is chosen.
    """

    def __init__(self, panel: Host, make: Make, size: Callable[[], str | None]) -> None:
        self.panel, self.make, self.size = panel, make, size
        self.names = {key: self._name(key) for key in NAMES}
        self.mark = w.FileUpload(
            accept=".png", description="Mark (PNG)", layout=w.Layout(width="auto")
        )
        self.mark.observe(lambda event: self._marked(event["new"]), "value")
        self.chosen = w.Dropdown(
            options=[THIS], description="Chosen", style={"description_width": "5em"}
        )
        self.by_page = w.Checkbox(
            description="Pictures lit by this page (sharper, takes a while)",
            indent=False,
            layout=w.Layout(width="auto"),
        )
        self.stage, self.said = w.VBox(), w.HTML()
        self.lit: asyncio.Task[None] | None = None
        files = [
            button("Two pages for the client", lambda: self._write("for-the-client.pdf")),
            button("First page as a picture", lambda: self._write("for-the-client.png")),
            button("Room that turns (HTML)", lambda: self._write("for-the-client.html")),
        ]
        said = html.remark(
            "Names stand on every sheet. For the client: the chosen fireplace large, the other"
            " options small; without a mark the initials of whoever drew it stand in a ring."
        )
        self.widget = w.VBox(
            [
                w.HTML(said),
                row([*self.names.values(), self.mark, self.chosen]),
                self.by_page,
                row(files),
                self.stage,
                self.said,
            ]
        )

    def update(self) -> None:
        """Names as the job has them, and the options there are."""
        for key, box in self.names.items():
            if box.value != (name := value_of(self.panel.design, key)):
                box.value = name
        called = [THIS, *self._called()]
        if list(self.chosen.options) != called:
            kept = self.chosen.value if self.chosen.value in called else THIS
            self.chosen.options, self.chosen.value = called, kept

    def _name(self, key: str) -> w.Text:
        box = w.Text(
            value=value_of(self.panel.design, key),
            description=all_inputs()[key].label,
            style={"description_width": "6em"},
            continuous_update=False,
        )
        box.observe(lambda event: self._named(key, one_line(event["new"])), "value")
        return box

    def _named(self, key: str, name: str) -> None:
        if value_of(self.panel.design, key) != name:
            self.panel.attempt(lambda: self.panel.put(change(self.panel.design, {key: name})))

    def _marked(self, files: Iterable[Mapping[str, Any]]) -> None:
        for file in files:
            self.panel.attempt(partial(self._take_mark, bytes(file["content"])))

    def _take_mark(self, content: bytes) -> None:
        words, word = self.panel.session.words, mark_words(content)
        if words.get(MARK, "") != word:
            words[MARK] = word
            self.panel.keep()

    def _called(self) -> list[str]:
        """Options by their names; one that is called as another before it gets its number too."""
        called: list[str] = []
        for option in shown(self.panel.session.shelf):
            twice = option.name in (*called, THIS)
            called.append(f"{option.name} ({option.number})" if twice else option.name)
        return called

    def designs(self) -> tuple[NamedDesign, list[NamedDesign]]:
        """The chosen one and the others, each called otherwise, under the names that the job has
        now. The design on the table is among them only where it is the chosen one.
        """
        session, named = self.panel.session, {"job": self.panel.design.job}
        made = [
            NamedDesign(name, assess(design.with_read(named), self.panel.pack))
            for name, design in zip(self._called(), session.options, strict=True)
        ]
        mine = next((one for one in made if one.name == self.chosen.value), None)
        if mine is None:
            name = self.panel.design.name.strip() or "This fireplace"
            mine = NamedDesign(name, self.panel.result)
            made = [one for one in made if one.result.design != mine.result.design]
        others = [one for one in made if one is not mine]
        taken = {one.name for one in others}
        return (
            NamedDesign(f"{mine.name}, chosen", mine.result) if mine.name in taken else mine
        ), others

    def _write(self, name: str) -> None:
        pages = not name.endswith(".html")
        if not (self.by_page.value and pages):
            self.make(name, partial(self._steps, still_png))
            return
        if self.lit is None or self.lit.done():
            self.lit = asyncio.get_running_loop().create_task(self._write_lit(name))

    def _steps(self, pictures: Pictures, path: Path) -> Steps:
        chosen, others = self.designs()
        names = names_of(self.panel.design, self.panel.session.words)
        units, size = self.panel.units, self.size()
        known = kept_prices(self.panel.session.words)
        yield from write_hand_over(
            path, chosen, others, names, units, size, known, pictures=pictures
        )

    async def _write_lit(self, name: str) -> None:
        """Let the page make every picture that the pages ask for, then write them. What it cannot
        make in time is drawn without it, and that is said.
        """
        from fireplace_calc.panels.scene.scene_view import SceneView  # wakes its script

        chosen, others = self.designs()
        asked: list[Asked] = []

        def noted(*picture: Any) -> bytes:
            asked.append(picture)
            return NOTHING

        client_pages(chosen, others, None, self.panel.units, self.size(), pictures=noted)
        made: dict[tuple[Any, ...], bytes] = {}
        scene = SceneView(chosen.result, units=self.panel.units, bare=True)
        self.stage.children = [scene]
        try:
            for number, (result, eye, wide, high) in enumerate(asked, 1):
                self.said.value = html.remark(f"Picture {number} of {len(asked)} is being lit.")
                scene.put(result)
                dots = (round(wide * FINER), round(high * FINER))
                made[result.design, eye] = await scene.picture(*dots, eye, scene.hour)
            self.said.value = ""
        except TimeoutError:
            self.said.value = html.remark(
                f"The page made {len(made)} of {len(asked)} pictures; the others are drawn without"
                " it."
            )
        finally:
            self.stage.children = []
            scene.close()

        def lit(result: Assessment, eye: Standpoint, wide: int, high: int) -> bytes:
            return made.get((result.design, eye)) or still_png(result, eye, wide, high)

        self.make(name, partial(self._steps, lit))
