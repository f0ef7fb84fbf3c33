"""The design as it stands cut into pieces: one slider, every piece drawn, the list of forms."""

from __future__ import annotations

import base64
import tempfile
from html import escape
from pathlib import Path

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.build.casting.forms_wording import casting_cautions
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.papers.casting_list import forms_table, print_forms
from fireplace_calc.drawing.pieces.cast_picture import cast_view
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.exports import read_back
from fireplace_calc.geometry.assembled.assembly import Assembly, as_wanted
from fireplace_calc.geometry.casting.cutting import CastSet, cut_into_pieces
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.pieces.choice import choose

LEAST, MOST, STEP, USUAL = 20, 250, 5, 60
"""Range, steps and first place of the slider. [kg]"""
MARGIN = 6.0
"""Round the picture. [mm]"""
NAME = "cast-set"
"""Of the set's file."""


class PiecesToCast(Fold):
    """Cut the design, draw its pieces, list their forms; both files are handed over as links.

    Attributes
    ----------
    slider : IntSlider
        Heaviest piece. [kg]
    made : CastSet or None
        Nothing where the design cannot be cut.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.made: CastSet | None = None
        self.slider = w.IntSlider(
            value=USUAL,
            min=LEAST,
            max=MOST,
            step=STEP,
            description="Heaviest piece [kg]",
            continuous_update=False,
            style={"description_width": "10em"},
            layout=w.Layout(width="100%", max_width="40em"),
        )
        self.slider.observe(lambda _: self.update(), "value")
        self.said, self.list, self.link = w.HTML(), w.HTML(), w.HTML()
        self.board = Board()
        files = [
            button("Set file", self.hand_set),
            button("Pieces and forms (PDF)", self.hand_forms),
        ]
        self.widget = w.VBox(
            [self.slider, self.said, row(files), self.link, self.board.widget, self.list]
        )

    def update(self) -> None:
        """Cut the design as it stands."""
        self.link.value = ""
        units, most = self.panel.units, float(self.slider.value)
        try:
            wish = CastingWish(most=most, units=units)
            self.made = cut_into_pieces(self.panel.design, wish, NAME)
        except InputError as wrong:
            self.made = None
            self.said.value, self.list.value = html.remark(str(wrong)), ""
            self.board.clear()
            return
        said = f"No piece over {weight_text(most, units)}."
        self.said.value = html.remark(" ".join((said, *self.made.said)))
        warned = casting_cautions(units=units)
        self.list.value = html.flow([forms_table(self._stood(), units), *warned])
        sheet = Sheet(WIDTH, HEIGHT)
        cell = Cell(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
        cast_view(sheet, cell, self._stood(), units)
        self.board.show([(WHOLE, sheet)])

    def _stood(self) -> Assembly:
        assert self.made is not None
        return as_wanted(choose(self.made.made, self.made.choice))

    def hand_set(self) -> None:
        """Give the set's file."""
        if self.made is not None:
            self._hand(f"{NAME}.toml", "application/toml", self.made.text.encode())

    def hand_forms(self) -> None:
        """Give the pieces drawn and the list of forms."""
        if self.made is None:
            return
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "forms.pdf"
            print_forms(self._stood(), path, self.made.said, self.panel.units)
            self._hand(f"{NAME}-forms.pdf", "application/pdf", read_back(path))

    def _hand(self, name: str, kind: str, content: bytes) -> None:
        """Give a file as a link, and lay it beside what is kept."""
        kept = self.panel.session.lay(name, content)
        where = f" It is also in {escape(str(kept))}." if kept else ""
        data = base64.b64encode(content).decode()
        self.link.value = (
            f'<a download="{name}" href="data:{kind};base64,{data}">Download {name}</a>{where}'
        )
