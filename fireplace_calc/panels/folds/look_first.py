"""Look before you print: every sheet, view and chart on the screen as it will stand on paper, and
each on its own as a file.
"""

from __future__ import annotations

import base64
from collections.abc import Callable
from html import escape

import ipywidgets as w

from fireplace_calc.drawing.page.saved_picture import picture
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.exports.picture_files import NamedPicture, pictures
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps

WHOLE = "max-width:100%;max-height:78vh;width:auto;margin:auto"
"""How a picture is shown whole."""
WIDE = "max-width:none;width:100%"
"""How it is shown as wide as there is room."""
ZOOMS: dict[str, str | float] = {"whole sheet": WHOLE, "as wide as the page": WIDE}
ZOOMS |= {"true size": 1.0, "half as large again": 1.5, "double": 2.0}
"""What a zoom is called: how it is shown, or how many times larger than on paper [-]."""
MM_TO_SCREEN = 96 / 25.4
"""Dots of a page to a millimeter, as CSS has them. [1/mm]"""
Hand = Callable[[str, bytes], str]


class LookFirst:
    """Pictures of the papers with previous and next, and a zoom.

    Parameters
    ----------
    panel : Host
        Whose design it is.
    job : Job
        Shows how far it is.
    chosen : callable
        Gives units and paper as they are chosen.
    hand : callable
        Takes the end of a file's name and its content, hands it over, and says so.
    """

    def __init__(
        self, panel: Host, job: Job, chosen: Callable[[], tuple[str, str | None]], hand: Hand
    ) -> None:
        self.panel, self.job, self.chosen, self.hand = panel, job, chosen, hand
        self.made: list[NamedPicture] = []
        self.shown: tuple[object, ...] = ()
        self.painted: tuple[Sheet | None, str] = (None, "")
        self.begin = button("Look before you print", self.look)
        self.which = w.Dropdown(options=[], description="Shown", style={"description_width": "5em"})
        self.zoom = w.Dropdown(
            options=list(ZOOMS), description="Size", style={"description_width": "4em"}
        )
        for box in (self.which, self.zoom):
            box.observe(lambda _: self._show(), "value")
        self.page, self.said = w.HTML(), w.HTML()
        bar = [
            button("Previous", lambda: self._turn(-1)),
            self.which,
            button("Next", lambda: self._turn(1)),
            self.zoom,
            button("This one as SVG", lambda: self._save("svg")),
            button("This one as PNG", lambda: self._save("png")),
        ]
        self.open = w.VBox([row(bar), self.page], layout=w.Layout(display="none"))
        self.widget = w.VBox([self.said, self.open])

    def update(self) -> None:
        """Say so when what is shown is no longer the design."""
        if self.made and self.shown != self._now():
            self.said.value = html.remark(
                "The design, the paper or the units have changed since: look again."
            )

    def look(self) -> None:
        """Make every picture anew, and show the one that stood there."""
        self.job.run(self._make, self._made)

    def _now(self) -> tuple[object, ...]:
        return (self.panel.design, self.panel.pack, *self.chosen())

    def _make(self) -> Steps:
        yield 0, 1, "All of them are being drawn."
        units, size = self.chosen()
        made = pictures(self.panel.result, units, size)
        self.made, self.shown = made, self._now()
        yield 1, 1, ""

    def _made(self) -> str:
        names, before = [one.name for one in self.made], self.which.value
        self.which.options = names
        self.which.value = before if before in names else names[0]
        self.open.layout.display, self.said.value = "", ""
        self._show()
        sheets = sum(one.key.startswith("sheet-") for one in self.made)
        return f"{sheets} sheets, and {len(self.made) - sheets} views alone. Nothing was written."

    def _one(self) -> NamedPicture | None:
        return next((one for one in self.made if one.name == self.which.value), None)

    def _turn(self, by: int) -> None:
        names = list(self.which.options)
        if names:
            self.which.value = names[(names.index(self.which.value) + by) % len(names)]

    def _show(self) -> None:
        one = self._one()
        if one is None:
            return
        times = ZOOMS[self.zoom.value]
        style = (
            times
            if isinstance(times, str)
            else f"max-width:none;width:{one.sheet.width * times * MM_TO_SCREEN:.0f}px"
        )
        self.page.value = (
            f'<div tabindex="0" role="region" aria-label="{escape(one.name)}" style="overflow:auto;'
            'max-height:80vh;background:#fff;border:1px solid #767676">'
            f'<img alt="{escape(one.name)}, as it is printed" src="{self._address(one.sheet)}"'
            f' style="display:block;{style}"></div>'
        )

    def _address(self, sheet: Sheet) -> str:
        """A picture of a sheet as an address that holds it; kept while only the zoom changes."""
        if self.painted[0] is not sheet:
            held = base64.b64encode(picture(sheet)).decode()
            self.painted = (sheet, f"data:image/svg+xml;base64,{held}")
        return self.painted[1]

    def _save(self, kind: str) -> None:
        one = self._one()
        if one is not None:
            name = f"{one.key}.{kind}"
            self.panel.attempt(lambda: self._saved(name, picture(one.sheet, kind)))

    def _saved(self, name: str, content: bytes) -> None:
        self.said.value = html.heard(self.hand(name, content))
