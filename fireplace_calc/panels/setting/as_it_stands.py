"""What level and tape say at each hold point: entered, kept, and the plan for what is left."""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import datetime
from html import escape
from pathlib import Path

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import WHOLE
from fireplace_calc.drawing.papers.as_built_record import lift_lengths, print_record
from fireplace_calc.drawing.pieces.built_picture import built_view
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.from_set.set_up import SetUp
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.setting.kept_record import KeptRecord
from fireplace_calc.panels.setting.measured_form import MeasuredForm
from fireplace_calc.pieces.standing.inspector_record import (
    HEADINGS,
    record_rows,
    record_table,
    tolerance_words,
)
from fireplace_calc.pieces.standing.next_beds import replan
from fireplace_calc.pieces.standing.what_is_left import Replan, lost_words

RECORD = "as-built.pdf"
"""What is printed for the inspector."""
MARGIN = 6.0
"""Round the picture. [mm]"""
SHARES = (9, 9, 8, 8, 9, 10, 10, 9, 12, 7, 9)
"""Columns of the record, in per cent."""


class AsItStands:
    """One job's record of what was measured, with the plan for what is left.

    Parameters
    ----------
    design : Design
        With a set.
    up : SetUp
        Of that design.
    pictures : SetPictures
        Of the same pieces.
    units : str
        ``feet-inches`` or ``millimetres``.
    keep : path, optional
        Folder that keeps the record after every entry; without one it is kept nowhere.
    now : callable
        Gives day and hour of an entry.

    Attributes
    ----------
    kept : KeptRecord
    form : MeasuredForm
    """

    def __init__(
        self,
        design: Design,
        up: SetUp,
        pictures: SetPictures,
        units: str,
        keep: str | os.PathLike[str] | None = None,
        now: Callable[[], datetime] = datetime.now,
    ) -> None:
        self.design, self.up, self.pictures, self.units, self.now = design, up, pictures, units, now
        self.kept = KeptRecord(design.name, up.plan.chain, keep)
        self.form = MeasuredForm(self.hold_points(), units)
        self.said, self.words, self.table = w.HTML(), w.HTML(), w.HTML()
        self.board = Board()
        buttons = row(
            [
                button("Enter", self.enter),
                button("Undo", self.undo),
                button("Print the record", self.print_record),
            ]
        )
        self.widget = w.VBox(
            [self.form.widget, buttons, self.said, self.words, self.board.widget, self.table]
        )
        self.said.value = html.remark(self.kept.said) if self.kept.said else ""
        self.show()
        self.form.choose(self.next_hold_point())

    def hold_points(self) -> tuple[str, ...]:
        """Lifts in the order in which they stand complete."""
        return tuple(card.lift for card in self.pictures.cards if card.hold is not None)

    def next_hold_point(self) -> str:
        """The lowest over all that stands; the last when all do."""
        chain = self.up.plan.chain
        measured = [n for n, _ in self.kept.built.standing(chain)]
        return chain[min(max(measured, default=-1) + 1, len(chain) - 1)].name

    def enter(self) -> None:
        """Take what stands in the boxes; what cannot be is answered and changes nothing."""
        try:
            top, typed = self.form.read(self.now().replace(microsecond=0))
            self.kept.put(self.kept.built.with_top(top), typed, self.units)
        except InputError as wrong:
            self.said.value = html.trouble(str(wrong))
            return
        self._after(f"Entered: {top.lift}.")
        self.form.clear(self.next_hold_point())

    def undo(self) -> None:
        """Take the last entry back into the boxes."""
        try:
            typed = self.kept.undo(self.units)
        except InputError as wrong:
            self.said.value = html.trouble(str(wrong))
            return
        if typed is None:
            self.said.value = html.heard(
                "Nothing to take back here. What was kept before stays in the record: measure it"
                " again and the later entry counts."
            )
            return
        self._after("Taken back; it stands in the boxes.")
        self.form.fill(typed)

    def print_record(self) -> None:
        """Write the record as a PDF beside what is kept, or where the notebook stands."""
        path = self.kept.beside(RECORD) or Path(RECORD)
        try:
            pages = print_record(self.design, self.kept.built, path, self.units)
        except InputError as wrong:
            self.said.value = html.trouble(str(wrong))
        else:
            self.said.value = html.heard(
                f"{path}: {pages} pages: the set as it stands, the record, lines to sign."
            )

    def read_in(self, units: str) -> None:
        """Take other units."""
        self.units = units
        self.form.read_in(units)
        self.show()

    def paint_on(self, paper: str) -> None:
        """Take other paper."""
        self.board.set_theme(paper)
        self.show()

    def _after(self, heard: str) -> None:
        self.show()
        self.said.value = html.heard(" ".join(filter(None, (heard, self.kept.said))))

    def show(self) -> None:
        """Bring plan, picture and record up to what was measured."""
        plan, built = self.up.plan, self.kept.built
        left = replan(plan.chain, plan.wanted, built, plan.start, self.units, plan.units)
        self.words.value = _left_words(left)
        sheet = Sheet(WIDTH, HEIGHT)
        cell = Cell(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
        built_view(sheet, cell, self.pictures, plan, built, self.units)
        self.board.show([(WHOLE, sheet)])
        rows = record_rows(
            plan.chain, plan.wanted, built, plan.start, plan.units, lift_lengths(self.up.assembly)
        )
        _, words = record_table(rows, self.units)
        self.table.value = (
            html.table("Record", SHARES, HEADINGS, map(html.row, words), 70.0)
            + html.remark(tolerance_words())
            if words
            else ""
        )


def _left_words(left: Replan) -> str:
    """What no joint cures first, while it can be lifted off; then doubts, then the next beds."""
    lost = [lost_words(one, left.units) for one in left.lost]
    alarm = "".join(f'<div class="trouble" role="alert">{escape(words)}</div>' for words in lost)
    others = "".join(html.remark(words) for words in left.sentences[len(lost) : -1])
    return f'{alarm}{others}<div class="sentence"><b>{escape(left.next_beds)}</b></div>'
